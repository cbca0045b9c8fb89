package duration_test

import (
	"math"
	"testing"
	"time"

	"isoeffort.example/effort/duration"
)

// fourCurves are one of each kind.
func fourCurves() []duration.Curve {
	return []duration.Curve{
		duration.PowerLaw{HourPower: 14.5, Endurance: 0.1},
		shaped(0.05, 0.5),
		duration.Hyperbolic{Critical: 14, Reserve: 900},
		duration.Logarithmic{Nominal: 18, Long: 0.09},
	}
}

// Differences come within 1e-9 of what a curve knows of its slope.
func TestExponentByDifferences(t *testing.T) {
	t.Parallel()
	for _, c := range fourCurves() {
		for at := 2 * time.Second; at < 100*time.Hour; at = at * 3 / 2 {
			got, want := duration.Exponent(plain{c}, at), duration.Exponent(c, at)
			if !(math.Abs(got-want) < 1e-9) {
				t.Errorf("%+v at %v: %.12g, want %.12g", c, at, got, want)
			}
		}
	}
}

// At a break the differences give the mean of both sides.
func TestExponentAtBreak(t *testing.T) {
	t.Parallel()
	l := duration.Logarithmic{Nominal: 18, Short: 0.13, Long: 0.09}
	near(t, "by differences", duration.Exponent(plain{l}, 6*time.Minute), 0.11, 1e-4)
	near(t, "its own", duration.Exponent(l, 6*time.Minute), 0.09, 1e-14)
}

// Every curve says what it rests on, and that it was made for times of its span.
func TestAbout(t *testing.T) {
	t.Parallel()
	for _, c := range fourCurves() {
		about := c.(interface{ About() duration.About }).About()
		shortest, longest := c.(duration.Analytic).Span()
		if about.Name == "" || about.Source == "" || about.Population == "" || about.Outside == "" {
			t.Errorf("%+v", about)
		}
		if !(shortest < about.From && about.From < about.To && about.To < longest) {
			t.Errorf("%s: made for %v to %v", about.Name, about.From, about.To)
		}
		if about.Holds(about.From-1) || !about.Holds(about.From) || !about.Holds(about.To) || about.Holds(about.To+1) {
			t.Errorf("%s: ends of what it was made for", about.Name)
		}
	}
}
