package effort_test

import (
	"math"
	"testing"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/effort/curve"
	"isoeffort.example/effort/efforttest"
	"pgregory.net/rapid"
)

// opaque hides that a curve is separable.
type opaque struct{ of effort.Curve }

func (o opaque) Power(speed, gradient float64) float64 { return o.of.Power(speed, gradient) }

// own is a user's separable curve: the model's by another type.
type own struct{ effort.Separable }

// broken is a curve by a function.
type broken func(speed, gradient float64) float64

func (b broken) Power(speed, gradient float64) float64 { return b(speed, gradient) }

// wavy is 30 km of hills up to 15 % steep, with a rough stretch.
func wavy(t testing.TB) *course.Course {
	t.Helper()
	var x, z []float64
	for d := 0.0; d <= 30_000; d += 20 {
		x, z = append(x, d), append(z, 700+60*math.Sin(d/400)+20*math.Sin(d/90))
	}
	c, err := course.New(x, z, course.Options{
		Smoothing: course.AsGiven, Stretches: []course.Stretch{{From: 5000, To: 9000, Surface: effort.DirtRoad, Braking: 1.5}},
	})
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// solved is the solution by curves, with bouts if asked for.
func solved(t testing.TB, k effort.Curves, c *course.Course, a effort.Athlete, d effort.Demand) effort.Solution {
	t.Helper()
	g, err := k.Ground(c, 0)
	if err != nil {
		t.Fatal(err)
	}
	in, err := effort.NewIntegrator(g, a, effort.Surroundings{Drag: effort.DefaultDrag, HeadWind: 1})
	if err != nil {
		t.Fatal(err)
	}
	s, err := in.Solve(effort.State{}, d)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// A user's curves that are the model's lead to the model's solution: within 1e-9 if they
// say that they are separable, and within 1e-8 if they do not, because what the mean
// gradient misses is added per metre, exactly for curves of this kind. The rest is the
// table of the walk, good to 3e-9, and its slopes.
func TestOwnCurvesAreTheModels(t *testing.T) {
	t.Parallel()
	for _, power := range []float64{8, 12} {
		for _, d := range []effort.Demand{{}, {ShortestBout: 60}, {Moving: 16_000}} {
			a := effort.Usual(power)
			model := solved(t, effort.Curves{}, wavy(t), a, d)
			for _, c := range []struct {
				name   string
				curves effort.Curves
				within float64
			}{
				{"separable", effort.Curves{Run: own{effort.MinettiRunning{}}, Walk: own{effort.LooneyWalking{}}}, 1e-9},
				{"by name", effort.Curves{Run: effort.MinettiRunning{}, Walk: effort.LooneyWalking{}}, 0},
				{"opaque", effort.Curves{Run: opaque{effort.MinettiRunning{}}, Walk: opaque{effort.LooneyWalking{}}}, 1e-8},
				{"opaque run", effort.Curves{Run: opaque{effort.MinettiRunning{}}}, 1e-8},
				{"opaque walk", effort.Curves{Walk: opaque{effort.LooneyWalking{}}}, 1e-8},
			} {
				got, want := solved(t, c.curves, wavy(t), a, d), model
				for name, off := range map[string]float64{
					"time": got.Finish().Moving/want.Finish().Moving - 1, "intensity": got.Intensity/want.Intensity - 1,
					"half-way": got.At(15_000).Moving/want.At(15_000).Moving - 1,
				} {
					if math.Abs(off) > c.within {
						t.Errorf("%g W/kg, %+v, %s: %s %.2g off", power, d, c.name, name, off)
					}
				}
			}
		}
	}
}

// On a slope of one gradient there is no mean to miss: speeds are the model's to 1e-8.
func TestOwnCurvesOnASlope(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		i, p := rapid.Float64Range(-0.5, 0.5).Draw(t, "gradient"), rapid.Float64Range(2, 25).Draw(t, "power")
		model, err := effort.NewSlope(effort.Usual(12), i, effort.Surroundings{})
		if err != nil {
			t.Fatal(err)
		}
		hidden, err := effort.Curves{Run: opaque{effort.MinettiRunning{}}, Walk: opaque{effort.LooneyWalking{}}}.Slope(effort.Usual(12), i, effort.Surroundings{})
		if err != nil {
			t.Fatal(err)
		}
		for name, v := range map[string][2]float64{
			"run": {hidden.Run(p).Speed, model.Run(p).Speed}, "walk": {hidden.Walk(p).Speed, model.Walk(p).Speed},
			"power": {hidden.Power(effort.Walk, 1.3), model.Power(effort.Walk, 1.3)},
		} {
			if math.Abs(v[0]/v[1]-1) > 1e-8 {
				t.Errorf("%s: %.10g, model %.10g", name, v[0], v[1])
			}
		}
	})
}

// Published curves make plans of hills, in Solve with bouts and goals; Pandolf's, which is
// wrong downhill and says so, of climbs.
func TestPublishedCurvesSolve(t *testing.T) {
	t.Parallel()
	up, err := course.New([]float64{0, 4000, 6000, 9000}, []float64{200, 500, 500, 1100}, course.Options{Smoothing: course.AsGiven})
	if err != nil {
		t.Fatal(err)
	}
	for _, k := range []struct {
		name   string
		curves effort.Curves
		course *course.Course
	}{
		{"ACSM running", effort.Curves{Run: curve.ACSMRunning{}}, wavy(t)},
		{"ACSM walking", effort.Curves{Walk: curve.ACSMWalking{}}, wavy(t)},
		{"ACSM", effort.Curves{Run: curve.ACSMRunning{}, Walk: curve.ACSMWalking{}}, wavy(t)},
		{"Pandolf and Santee", effort.Curves{Walk: curve.PandolfSantee{Load: 5}}, wavy(t)},
		{"Minetti walking", effort.Curves{Walk: effort.MinettiWalking{}}, wavy(t)},
		{"Pandolf, up", effort.Curves{Walk: curve.Pandolf{Load: 5}}, up},
	} {
		for _, power := range []float64{7, 10, 15} {
			for _, d := range []effort.Demand{{}, {ShortestBout: 60}, {Moving: k.course.Length() / 2}} {
				s := solved(t, k.curves, k.course, effort.Usual(power), d)
				if pace := s.Finish().Moving / k.course.Length(); !(pace > 0.15 && pace < 2) {
					t.Errorf("%s, %g W/kg, %+v: %g s for a metre", k.name, power, d, pace)
				}
			}
		}
	}
}

// The model's own curves keep the laws over the ranges that they state.
func TestOwnLaws(t *testing.T) {
	t.Parallel()
	for _, c := range []interface {
		effort.Curve
		About() effort.About
	}{effort.MinettiRunning{}, effort.LooneyWalking{}, effort.MinettiWalking{}} {
		about := c.About()
		for _, v := range efforttest.Violations(c, efforttest.Domain{Gradient: about.Gradient, Speed: about.Speed}) {
			t.Errorf("%T: %v", c, v)
		}
	}
}

// A curve that breaks the laws is an error, from Ground or NewIntegrator or Solve: no
// panic, no speed that comes of the bracket's end, and not a long wait.
func TestBrokenCurves(t *testing.T) {
	t.Parallel()
	for name, b := range map[string]broken{
		"NaN":      func(_, _ float64) float64 { return math.NaN() },
		"infinite": func(_, _ float64) float64 { return math.Inf(1) },
		"negative": func(v, _ float64) float64 { return -3.6 * v },
		"zero":     func(_, _ float64) float64 { return 0 },
		"constant": func(_, _ float64) float64 { return 8 },
		"falling":  func(v, _ float64) float64 { return 20 / v },
		"NaN down": func(v, i float64) float64 { return v * math.Sqrt(9+100*i) },
	} {
		for gait, k := range map[string]effort.Curves{"run": {Run: b}, "walk": {Walk: b}} {
			for _, d := range []effort.Demand{{}, {Moving: 16_000, ShortestBout: 60}} {
				start := time.Now()
				if s, err := tried(t, name+" "+gait, k, wavy(t), d); err == nil {
					t.Errorf("%s %s, %+v: %+v at %g", name, gait, d, s, d.Moving)
				}
				if took := time.Since(start); took > 5*time.Second {
					t.Errorf("%s %s: %v", name, gait, took)
				}
			}
		}
	}
}

// tried is the finish by curves of someone who walks and runs.
func tried(t *testing.T, name string, k effort.Curves, c *course.Course, d effort.Demand) (finish effort.State, err error) {
	t.Helper()
	defer func() {
		if r := recover(); r != nil {
			t.Errorf("%s, %+v: panic: %v", name, d, r)
			err = effort.ErrDemand
		}
	}()
	g, err := k.Ground(c, 0)
	if err != nil {
		return finish, err
	}
	in, err := effort.NewIntegrator(g, effort.Usual(8), effort.Surroundings{})
	if err != nil {
		return finish, err
	}
	s, err := in.Solve(effort.State{}, d)
	if err != nil {
		return finish, err
	}
	return s.Finish(), nil
}
