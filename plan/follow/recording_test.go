package follow_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/plan"
	"isoeffort.example/plan/follow"
)

// halting puts halts into a recording, at distances along it. The recording wanders by 0.15
// m/s meanwhile, a fix each ten seconds.
func halting(a follow.Actual, halts map[float64]time.Duration) follow.Actual {
	out := follow.Actual{Gun: a.Gun}
	var later time.Duration
	wandered := 0.0
	for i, f := range a.Fixes {
		if i > 0 {
			for at, took := range halts {
				if a.Fixes[i-1].Distance < at && at <= f.Distance {
					start := a.Fixes[i-1]
					for s := 10 * time.Second; s <= took; s += 10 * time.Second {
						wandered += 1.5
						out.Fixes = append(out.Fixes, follow.Fix{Distance: start.Distance + wandered, Time: start.Time.Add(later + s)})
					}
					later += took
				}
			}
		}
		out.Fixes = append(out.Fixes, follow.Fix{Distance: f.Distance + wandered, Time: f.Time.Add(later)})
	}
	return out
}

// Halts are found where and as long as they were, told from slow going, and taken out of the
// effort: moving times stay the plan's.
func TestHaltsAreFound(t *testing.T) {
	t.Parallel()
	c := profile(t, 30_000, rolling, course.Landmark{Name: "Mill", Distance: 15_000, Kind: course.Station})
	p := even(t, c, effort.Usual(12), plan.Race{Step: 25, Share: 0.7, Stops: []plan.Stop{{Distance: 15_000, Duration: 3 * time.Minute}}})
	a := halting(recorded(p, p.Traverse(), asPlanned), map[float64]time.Duration{
		6_010: 2 * time.Minute, 9_010: 40 * time.Second, 22_010: 10 * time.Minute, 27_010: 70 * time.Second,
	})
	d, err := follow.Review(p, a, follow.DebriefOptions{Every: 5000})
	if err != nil {
		t.Fatal(err)
	}
	want := []follow.Halt{
		{Distance: 6_000, Took: 2 * time.Minute},
		{Distance: 15_000, Took: 3 * time.Minute, Planned: 3 * time.Minute, Place: "Mill"},
		{Distance: 22_000, Took: 10 * time.Minute},
		{Distance: 27_000, Took: 70 * time.Second},
	}
	if len(d.Halts) != len(want) {
		t.Fatalf("%+v", d.Halts)
	}
	// The 40 s are too short to be told from slow going.
	for i, h := range d.Halts {
		if math.Abs(h.Distance-want[i].Distance) > 60 || (h.Took-want[i].Took).Abs() > 10*time.Second || h.Planned != want[i].Planned || h.Place != want[i].Place {
			t.Errorf("%+v, not %+v", h, want[i])
		}
	}
	if off := d.Moving - p.Moving - 40*time.Second; off.Abs() > 15*time.Second {
		t.Errorf("moving %v, planned %v", d.Moving, p.Moving)
	}
	close(t, "budget", d.Budget/p.Budget, 1, 0.03)
	for _, s := range d.Sections {
		if lost := s.Lost.Abs(); lost > 10*time.Second && s.To != 10_000 {
			t.Errorf("%+v", s)
		}
	}
}

// A stroll up the steepest ground, at less than 0.3 m/s, is no halt.
func TestSlowIsNoHalt(t *testing.T) {
	t.Parallel()
	p := even(t, profile(t, 12_000, steep), effort.Usual(6), plan.Race{Step: 25, Share: 0.01})
	d, err := follow.Review(p, recorded(p, p.Traverse(), asPlanned), follow.DebriefOptions{})
	if err != nil {
		t.Fatal(err)
	}
	if len(d.Halts) != 0 {
		t.Errorf("%+v at a mean of %.2f m/s", d.Halts, 12_000/d.Moving.Seconds())
	}
}

// A recording that reads long by the same share everywhere is laid over the course; one
// out by more is said to be rough.
func TestScale(t *testing.T) {
	t.Parallel()
	p := even(t, profile(t, 30_000, rolling), effort.Usual(13), plan.Race{Step: 25})
	for _, scale := range []float64{1.02, 0.95, 1.1} {
		a := recorded(p, p.Traverse(), asPlanned)
		for i := range a.Fixes {
			a.Fixes[i].Distance = 700 + a.Fixes[i].Distance*scale
		}
		d, err := follow.Review(p, a, follow.DebriefOptions{Every: 5000})
		if err != nil {
			t.Fatal(err)
		}
		close(t, "scale", d.Scale, 1/scale, 1e-9)
		if rough := math.Abs(1/scale-1) > 0.03; rough != (len(d.Warnings) > 0) {
			t.Errorf("%g: %v", scale, d.Warnings)
		}
		for _, s := range d.Sections {
			if s.Lost.Abs() > 10*time.Millisecond {
				t.Errorf("%g: %+v", scale, s)
			}
		}
	}
}

// The wait behind the line is no halt, and the line is passed when it ends.
func TestWaitBeforeTheLine(t *testing.T) {
	t.Parallel()
	p := even(t, profile(t, 20_000, rolling), effort.Usual(13), plan.Race{Step: 25, StartDelay: 4 * time.Minute})
	a := recorded(p, p.Traverse(), asPlanned)
	var wait []follow.Fix
	for s := time.Duration(0); s < 4*time.Minute; s += 5 * time.Second {
		wait = append(wait, follow.Fix{Time: gun.Add(s)})
	}
	a.Fixes = slices.Concat(wait, a.Fixes)
	d, err := follow.Review(p, a, follow.DebriefOptions{})
	if err != nil {
		t.Fatal(err)
	}
	if d.Line != 4*time.Minute || len(d.Halts) != 0 || d.Late.Abs() > 5*time.Millisecond {
		t.Errorf("line %v, halts %+v, late %v", d.Line, d.Halts, d.Late)
	}
}

// A debrief does not depend on how dense a recording is.
func TestDensity(t *testing.T) {
	t.Parallel()
	p := even(t, profile(t, 30_000, rolling), effort.Usual(13), plan.Race{Step: 25})
	dense := paced(t, p, func(s float64) float64 { return 1.03 - 0.08*s }, 0)
	sparse := follow.Actual{Gun: dense.Gun}
	r := rand.New(rand.NewPCG(4, 4))
	for i, f := range dense.Fixes {
		if i == 0 || i == len(dense.Fixes)-1 || r.IntN(4) == 0 {
			sparse.Fixes = append(sparse.Fixes, f)
		}
	}
	a, err := follow.Review(p, dense, follow.DebriefOptions{Every: 5000})
	if err != nil {
		t.Fatal(err)
	}
	b, err := follow.Review(p, sparse, follow.DebriefOptions{Every: 5000})
	if err != nil {
		t.Fatal(err)
	}
	close(t, "budget", b.Budget, a.Budget, 2e-3*a.Budget)
	close(t, "tilt", b.Pacing.Tilt, a.Pacing.Tilt, 5e-3)
	close(t, "even time", b.EvenMoving.Seconds(), a.EvenMoving.Seconds(), 3)
}
