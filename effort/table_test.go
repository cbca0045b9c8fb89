package effort

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// The tables that stand for the powers in the inner loop are as good as they say.
func TestWalkingBaseTable(t *testing.T) {
	t.Parallel()
	table := baseTable()
	for v := baseLow; v < 4.2; v += 0.00037 {
		got, gotSlope := baseFast(table, LooneyWalking{}, v)
		want, wantSlope := walkingBaseAndSlope(v)
		if math.Abs(got/want-1) > 3e-9 || math.Abs(gotSlope/wantSlope-1) > 1e-6 {
			t.Fatalf("at %g m/s: relative error %.2g, of the slope %.2g", v, got/want-1, gotSlope/wantSlope-1)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		v := rapid.Float64Range(0, 10).Draw(t, "speed")
		got, _ := baseFast(table, LooneyWalking{}, v)
		near(t, "base", got, walkingBase(v), 3e-9*walkingBase(v))
	})
}

func TestFadeTable(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		shape := rapid.Float64Range(0.1, 2).Draw(t, "shape")
		most := rapid.Float64Range(0.1, 60).Draw(t, "most")
		var clock fadeClock
		clock.set(shape, most, 1000)
		for range 20 {
			work := rapid.Float64Range(0, 1.1*most).Draw(t, "work")
			want := fadeTime(work, shape)
			near(t, "fade time", clock.time(work), want, 6e-8)
		}
	})
}
