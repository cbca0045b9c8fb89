package treadmill_test

import (
	"encoding/json"
	"math"
	"os"
	"testing"

	"isoeffort.example/effort/treadmill"
)

// goldenCase is what testdata/golden.py writes: exact rational arithmetic, with which
// numpy agrees.
type goldenCase struct {
	Name          string      `json:"name"`
	Degree        int         `json:"degree"`
	KnownVariance bool        `json:"known_variance"`
	Points        []point     `json:"points"`
	Coefficients  []float64   `json:"coefficients"`
	Covariance    [][]float64 `json:"covariance"`
	ResidualSD    float64     `json:"residual_sd"`
	Freedom       int         `json:"degrees_of_freedom"`
	At, Cost, SE  []float64
	LeftOut       []leftOut `json:"left_out"`
}

type point struct{ Gradient, Cost, Weight float64 }

type leftOut struct {
	Gradient, Cost, Predicted float64
	Points                    int
}

// goldenTolerance is the relative accuracy claimed against exact arithmetic. Coefficients
// are looked at relative to themselves, covariances to the standard deviations.
const goldenTolerance = 1e-8

func goldenCases(t *testing.T) []goldenCase {
	t.Helper()
	text, err := os.ReadFile("testdata/golden.json")
	if err != nil {
		t.Fatal(err)
	}
	var file struct{ Cases []goldenCase }
	if err := json.Unmarshal(text, &file); err != nil || len(file.Cases) != 6 {
		t.Fatalf("%v, %d cases", err, len(file.Cases))
	}
	return file.Cases
}

func (g goldenCase) fit(t *testing.T) *treadmill.Curve {
	t.Helper()
	var points []treadmill.Point
	for _, p := range g.Points {
		points = append(points, treadmill.Point{Gradient: p.Gradient, Cost: p.Cost, Weight: p.Weight})
	}
	return mustFit(t, points, treadmill.Options{Degree: g.Degree, KnownVariance: g.KnownVariance})
}

func TestGolden(t *testing.T) {
	t.Parallel()
	for _, g := range goldenCases(t) {
		t.Run(g.Name, func(t *testing.T) {
			t.Parallel()
			c := g.fit(t)
			for k, got := range c.Coefficients() {
				near(t, "coefficient", got, g.Coefficients[k], goldenTolerance*math.Abs(g.Coefficients[k]))
			}
			cov := c.Covariance()
			for i, row := range g.Covariance {
				for j, want := range row {
					near(t, "covariance", cov.At(i, j), want, goldenTolerance*math.Sqrt(g.Covariance[i][i]*g.Covariance[j][j]))
				}
			}
			near(t, "residual SD", c.ResidualSD(), g.ResidualSD, goldenTolerance*g.ResidualSD)
			if c.DegreesOfFreedom() != g.Freedom {
				t.Errorf("%d degrees of freedom, want %d", c.DegreesOfFreedom(), g.Freedom)
			}
			for k, i := range g.At {
				near(t, "cost", c.PerMetre(i), g.Cost[k], goldenTolerance*g.Cost[k])
				near(t, "SE", c.SE(i), g.SE[k], goldenTolerance*g.SE[k])
			}
		})
	}
}

func TestGoldenLeaveOneGradientOut(t *testing.T) {
	t.Parallel()
	for _, g := range goldenCases(t) {
		t.Run(g.Name, func(t *testing.T) {
			t.Parallel()
			l, err := g.fit(t).LeaveOneGradientOut()
			if err != nil || len(l.Gradients) != len(g.LeftOut) {
				t.Fatalf("%v, %d gradients, want %d", err, len(l.Gradients), len(g.LeftOut))
			}
			all, inner := 0.0, 0.0
			for k, want := range g.LeftOut {
				got, end := l.Gradients[k], k == 0 || k == len(g.LeftOut)-1
				if got.Gradient != want.Gradient || got.Points != want.Points || got.End != end {
					t.Errorf("got %+v, want %+v", got, want)
				}
				miss := want.Predicted - want.Cost
				near(t, "cost left out", got.Cost, want.Cost, goldenTolerance*want.Cost)
				near(t, "predicted", got.Predicted, want.Predicted, goldenTolerance*math.Abs(want.Predicted))
				near(t, "error", got.Error, miss, goldenTolerance*want.Cost)
				all += miss * miss
				if !end {
					inner += miss * miss
				}
			}
			n := float64(len(g.LeftOut))
			near(t, "RMS", l.RMS, math.Sqrt(all/n), goldenTolerance*l.RMS)
			near(t, "inner RMS", l.InnerRMS, math.Sqrt(inner/(n-2)), goldenTolerance*10)
		})
	}
}

// near reports a number that is further from what it should be than a tolerance.
func near(t testing.TB, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s %.17g, want %.17g within %.2g: off by %.2g", what, got, want, tolerance, got-want)
	}
}

func mustFit(t testing.TB, points []treadmill.Point, o treadmill.Options) *treadmill.Curve {
	t.Helper()
	c, err := treadmill.Fit(points, o)
	if err != nil {
		t.Fatal(err)
	}
	return c
}
