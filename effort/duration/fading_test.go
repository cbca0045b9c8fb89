package duration_test

import (
	"testing"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/effort/duration"
)

// uniform goes through the model's own time: the budget's one relative intensity, power
// as the work so far leaves it, by Runge and Kutta's fourth-order steps of the hour.
func uniform(a effort.Athlete, hours float64) (power float64) {
	const steps = 20_000
	intensity := a.Intensity(hours)
	rate := func(work float64) float64 { return intensity * a.Capability(work) / a.HourPower }
	work, dt := 0.0, hours/steps
	for range steps {
		k1 := rate(work)
		k2 := rate(work + dt/2*k1)
		k3 := rate(work + dt/2*k2)
		k4 := rate(work + dt*k3)
		work += dt / 6 * (k1 + 2*k2 + 2*k3 + k4)
	}
	return work * a.HourPower / hours
}

// Fades of every shape, by another method.
func TestFadingByTime(t *testing.T) {
	t.Parallel()
	for _, shape := range []float64{0.1, 0.4, 0.99, 1, 1.3, 2} {
		for _, fade := range []float64{0.001, 0.03, 0.5} {
			for _, hours := range []float64{0.1, 1, 10, 48} {
				f := shaped(fade, shape)
				near(t, "power", f.Power(time.Duration(hours*float64(time.Hour))), uniform(f.Athlete, hours), 1e-11)
			}
		}
	}
}

// The integrator, running all the way on level ground, within the model's 0.1 %.
func TestFadingAgainstIntegrator(t *testing.T) {
	t.Parallel()
	for _, f := range []duration.Fading{shaped(0.02, 1), shaped(0.04, 0.5), shaped(0.03, 1.3), shaped(0, 1)} {
		for _, metres := range []float64{3000, 30_000, 120_000} {
			c, err := course.New([]float64{0, metres}, []float64{0, 0}, course.Options{Smoothing: course.AsGiven})
			if err != nil {
				t.Fatal(err)
			}
			g, err := effort.NewGround(c, 0)
			if err != nil {
				t.Fatal(err)
			}
			in, err := effort.NewIntegrator(g, f.Athlete, effort.Surroundings{})
			if err != nil {
				t.Fatal(err)
			}
			s, err := in.Solve(effort.State{}, effort.Demand{Gaits: make([]effort.Gait, g.Len())})
			if err != nil {
				t.Fatal(err)
			}
			got, err := duration.TimeAt(f, metres, duration.LevelCost(0))
			if err != nil {
				t.Fatal(err)
			}
			near(t, "time", got.Seconds(), s.Finish().Moving, 1e-3)
		}
	}
}
