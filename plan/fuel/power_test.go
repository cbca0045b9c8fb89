package fuel

import (
	"math"
	"testing"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/plan"
)

// The power is that of the plan's own passage: gone over again, with walks, held back,
// delays and stops, it takes the plan's moving time to a millisecond.
func TestPowerIsThePlans(t *testing.T) {
	t.Parallel()
	c, err := course.New([]float64{0, 10_000, 20_000, 50_000}, []float64{0, 1200, 100, 300}, course.Options{})
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range []plan.Race{
		{},
		{Ease: true, Walks: plan.Walks{Every: time.Hour}, Stops: []plan.Stop{{Distance: 9_000, Duration: time.Minute}}},
		{Share: 0.5, StartDelay: time.Minute, HoldBack: 0.05},
	} {
		p, err := plan.Even(c, effort.Usual(12), r)
		if err != nil {
			t.Fatal(err)
		}
		m := &maker{p: p}
		again, err := m.again()
		if err != nil {
			t.Fatal(err)
		}
		if d := again.Finish().Moving - p.Moving.Seconds(); math.Abs(d) > 0.001 {
			t.Errorf("%+v: %g s from the plan", r, d)
		}
		if m.net < 3 || m.net > 12 {
			t.Errorf("%g W/kg for a runner of 12 W/kg", m.net)
		}
	}
}
