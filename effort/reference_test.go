package effort

import (
	"math"
	"testing"

	"isoeffort.example/course"
)

// profile makes a course of a height function over length metres, a point every step.
func profile(t testing.TB, length, step float64, height func(x float64) float64) *course.Course {
	t.Helper()
	n := int(math.Round(length / step))
	x, z := make([]float64, n+1), make([]float64, n+1)
	for i := range x {
		x[i] = length * float64(i) / float64(n)
		z[i] = height(x[i])
	}
	c, err := course.New(x, z, course.Options{Smoothing: course.AsGiven})
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func slope(i float64) func(float64) float64 { return func(x float64) float64 { return i * x } }

func oneHill(x float64) float64 { return 100 * (1 - math.Cos(2*math.Pi*x/20000)) }

func waves(x float64) float64 { return 0.008*x + 60*math.Sin(2*math.Pi*x/8000) }

// The reference runs of the model: from a separate implementation with fine fixed steps,
// without minimum bouts or holding back, at a budget of 1.
func TestReferenceRuns(t *testing.T) {
	t.Parallel()
	for _, r := range []struct {
		name                  string
		length                float64
		height                func(float64) float64
		athlete               Athlete
		drag                  float64
		intensity, time, half float64
		walking               float64
	}{
		{"level 10 km", 10_000, slope(0), Athlete{HourPower: 12, Endurance: 0.0566, Braking: 1}, 0, 1.0110, 2967.4, 1483.7, 0},
		{"level marathon", 42_195, slope(0), Athlete{HourPower: 12, Endurance: 0.0566, Braking: 1}, 0, 0.9273, 13650.4, 6825.2, 0},
		{"level marathon, fade", 42_195, slope(0), Athlete{HourPower: 14, Endurance: 0.1, Fade: 0.02, Braking: 1}, 0, 0.8817, 12685.0, 6246.9, 0},
		{"level marathon, late fade", 42_195, slope(0), Athlete{HourPower: 14, Endurance: 0.1, Fade: 0.02, FadeShape: 1.3, Braking: 1}, 0, 0.8812, 12752.8, 6258.5, 0},
		{"level 100 km, early fade", 100_000, slope(0), Athlete{HourPower: 14, Endurance: 0.1, Fade: 0.05, FadeShape: 0.5, Braking: 1}, 0, 0.7930, 36603.4, 17384.2, 0},
		{"level marathon, air", 42_195, slope(0), Athlete{HourPower: 16, Endurance: 0.08, Fade: 0.02, Braking: 1}, 0.01, 0.9138, 11108.0, 5483.3, 0},
		{"+5 % for 5 km", 5000, slope(0.05), Athlete{HourPower: 12, Endurance: 0.08, Fade: 0.02, Braking: 1}, 0, 1.0540, 1864.5, 929.7, 0},
		{"-10 % for 5 km", 5000, slope(-0.1), Athlete{HourPower: 12, Endurance: 0.08, Fade: 0.02, Braking: 1}, 0, 1.0916, 1204.1, 601.0, 0},
		{"+20 % for 3 km", 3000, slope(0.2), Athlete{HourPower: 12, Endurance: 0.08, Fade: 0.02, Braking: 1}, 0, 1.0390, 2232.3, 1112.9, 1},
		{"one hill", 20_000, oneHill, Athlete{HourPower: 14, Endurance: 0.08, Fade: 0.02, Braking: 1}, 0, 0.9654, 5589.5, 2993.1, 0},
		{"waves", 80_000, waves, Athlete{HourPower: 11, Endurance: 0.1, Fade: 0.02, Braking: 1}, 0, 0.8104, 37992.6, 18450.7, 0.424},
		{"waves, braking", 80_000, waves, Athlete{HourPower: 11, Endurance: 0.1, Fade: 0.02, Braking: 2}, 0, 0.8070, 39246.7, 19043.5, 0.421},
		{"waves, slow", 80_000, waves, Athlete{HourPower: 9, Endurance: 0.1, Fade: 0.02, Braking: 1}, 0, 0.8170, 44269.1, 21394.6, 0.817},
	} {
		t.Run(r.name, func(t *testing.T) {
			g, err := NewGround(profile(t, r.length, 10, r.height), 0)
			if err != nil {
				t.Fatal(err)
			}
			in, err := NewIntegrator(g, r.athlete, Surroundings{Drag: r.drag})
			if err != nil {
				t.Fatal(err)
			}
			s, err := in.Solve(State{}, Demand{})
			if err != nil {
				t.Fatal(err)
			}
			within := func(what string, got, want, tolerance float64) {
				t.Helper()
				if !(math.Abs(got-want) <= tolerance) {
					t.Errorf("%s: %.6g, want %.6g within %.2g", what, got, want, tolerance)
				}
			}
			moving := s.Finish().Moving
			within("intensity", s.Intensity, r.intensity, 0.001*r.intensity)
			within("time", moving, r.time, 0.001*r.time)
			within("first half", s.At(r.length/2).Moving, r.half, 0.001*r.half)
			within("walking share", s.WalkingTime(0, r.length)/moving, r.walking, 0.01)
			within("budget", s.Finish().Spent, 1, 1e-9)
			if in.Sweeps() > 8 {
				t.Errorf("%d sweeps", in.Sweeps())
			}
			t.Logf("eps %.4f time %.1f half %.1f walk %.4f sweeps %d", s.Intensity, moving, s.At(r.length/2).Moving, s.WalkingTime(0, r.length)/moving, in.Sweeps())
		})
	}
}
