package course

import (
	"fmt"
	"math"
	"slices"

	"pgregory.net/rapid"
)

// drawFull draws a course of every make: smoothed or not, with a track or without, with
// landmarks, some at one place (those that are not are over a millimetre apart: rounding
// does not change their order), and stretches that overlap.
func drawFull(t *rapid.T, label string) *Course {
	n := rapid.IntRange(2, 60).Draw(t, label+" points")
	x, z, track := []float64{0}, []float64{700}, []Position{NewPosition(46, 9)}
	for range n - 1 {
		step := rapid.Float64Range(5, 200).Draw(t, "step")
		heading := rapid.Float64Range(0, 2*math.Pi).Draw(t, "heading")
		last := track[len(track)-1]
		x = append(x, x[len(x)-1]+step)
		z = append(z, min(max(z[len(z)-1]+step*rapid.Float64Range(-0.7, 0.7).Draw(t, "gradient"), 0), 3000))
		track = append(track, NewPosition(last.Lat()+step/111_000*math.Cos(heading), last.Lon()+step/77_000*math.Sin(heading)))
	}
	length := x[len(x)-1]
	o := Options{
		Name: label, Smoothing: rapid.SampledFrom([]float64{AsGiven, 0, 40}).Draw(t, "smoothing"),
		Track: track, Warnings: []string{"mended " + label},
	}
	if rapid.Bool().Draw(t, "without track") {
		o.Track = nil
	}
	for i := range rapid.IntRange(0, 5).Draw(t, "landmarks") {
		at := rapid.SampledFrom([]float64{0, 1, 0.5, float64(rapid.IntRange(0, 1000).Draw(t, "landmark")) / 1000}).Draw(t, "at")
		o.Landmarks = append(o.Landmarks, Landmark{Name: string(rune('A' + i%3)), Distance: at * length, Kind: Kind(i % 3), Note: label})
	}
	for range rapid.IntRange(0, 4).Draw(t, "stretches") {
		from := rapid.Float64Range(0, 0.99).Draw(t, "from")
		o.Stretches = append(o.Stretches, Stretch{
			From: from * length, To: (from + (1-from)*rapid.Float64Range(0.001, 1).Draw(t, "to")) * length,
			Surface: rapid.Float64Range(1, 2).Draw(t, "surface"), Braking: rapid.Float64Range(0, 2).Draw(t, "braking"),
		})
	}
	c, err := New(x, z, o)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// The accuracy that the doc comments claim for distances; ascents sum up to 10⁴ m of
// rounded differences.
const (
	slack       = 1e-9 // m
	slackAscent = 1e-8 // m
)

// differs says how two courses that should be the same differ, "" if they do not. The
// first one's points must be there in the second to the last bit of their elevation.
func differs(a, b *Course) string {
	if math.Abs(a.Length()-b.Length()) > slack || a.Name() != b.Name() || a.Smoothing() != b.Smoothing() || a.HasTrack() != b.HasTrack() {
		return fmt.Sprintf("%q %g m, smoothed over %g m, track %v; %q %g m, %g m, %v",
			a.Name(), a.Length(), a.Smoothing(), a.HasTrack(), b.Name(), b.Length(), b.Smoothing(), b.HasTrack())
	}
	// Those carried; of two grounds equally steep either may be doubted.
	if !slices.Equal(a.warnings, b.warnings) {
		return fmt.Sprintf("warnings %q, %q", a.warnings, b.warnings)
	}
	for i := range a.Len() {
		x, z := a.Point(i)
		k, _ := slices.BinarySearch(b.distance, x-slack)
		if k == b.Len() || math.Abs(b.distance[k]-x) > slack || b.elevation[k] != z {
			return fmt.Sprintf("no point at %g m, %g m high", x, z)
		}
	}
	r, s := a.Relief(), b.Relief()
	if math.Abs(r.Ascent-s.Ascent) > slackAscent || math.Abs(r.Descent-s.Descent) > slackAscent {
		return fmt.Sprintf("relief %+v, %+v", r, s)
	}
	return differsBeside(a, b)
}

// differsBeside compares what is not the profile, the ground halfway between any two
// places where it changes.
func differsBeside(a, b *Course) string {
	if len(a.landmarks) != len(b.landmarks) {
		return fmt.Sprintf("landmarks %+v, %+v", a.landmarks, b.landmarks)
	}
	for i, l := range a.landmarks {
		m := b.landmarks[i]
		if off := math.Abs(l.Distance - m.Distance); off > slack || l.Name != m.Name || l.Kind != m.Kind || l.Note != m.Note || m.Distance < 0 || m.Distance > b.Length() {
			return fmt.Sprintf("landmark %+v, %+v", l, m)
		}
	}
	edges := slices.Concat([]float64{0}, a.Edges(), b.Edges(), []float64{a.Length()})
	slices.Sort(edges)
	for i := 1; i < len(edges); i++ {
		from, to := edges[i-1], edges[i]
		if to-from < 1e-6 {
			continue
		}
		s, u := a.Ground((from + to) / 2)
		if v, w := b.Ground((from + to) / 2); s != v || u != w {
			return fmt.Sprintf("ground at %g m: %g, %g and %g, %g", (from+to)/2, s, u, v, w)
		}
		e, n, _ := a.Direction(from, to)
		f, o, _ := b.Direction(from, to)
		if off := math.Hypot(e-f, n-o) * (to - from); off > 4*slack {
			return fmt.Sprintf("direction %g to %g m off by %g m", from, to, off)
		}
	}
	return ""
}

func must(t interface{ Fatal(...any) }) func(*Course, error) *Course {
	return func(c *Course, err error) *Course {
		if err != nil {
			t.Fatal(err)
		}
		return c
	}
}
