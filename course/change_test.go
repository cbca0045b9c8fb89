package course

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func TestReversingTwiceIsTheIdentity(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		c := drawFull(t, "one")
		twice := c.Reverse().Reverse()
		if d := differs(c, twice); d != "" || twice.Len() != c.Len() {
			t.Fatal(d)
		}
	})
}

func TestReverseRunsTheOtherWay(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		c := drawFull(t, "one")
		r, length := c.Reverse(), c.Length()
		a, b := c.Relief(), r.Relief()
		if math.Abs(a.Ascent-b.Descent) > slackAscent || math.Abs(a.Descent-b.Ascent) > slackAscent || r.Length() != length {
			t.Fatalf("%+v, reversed %+v, %g m", a, b, r.Length())
		}
		from := rapid.Float64Range(0, 0.9).Draw(t, "from") * length
		to := from + 0.1*length
		e, n, ok := c.Direction(from, to)
		f, o, ok2 := r.Direction(length-to, length-from)
		if ok != ok2 || !(math.Hypot(e+f, n+o) <= 1e-7) {
			t.Fatalf("direction %g, %g and back %g, %g", e, n, f, o)
		}
		if there, back := c.Elevation(from), r.Elevation(length-from); !(math.Abs(there-back) <= slack) {
			t.Fatalf("%g m high there, %g back", there, back)
		}
		x := rapid.Float64Range(0, 1).Draw(t, "x") * length
		s, u := c.Ground(x)
		if v, w := r.Ground(length - x); (s != v || u != w) && !slices.ContainsFunc(c.Edges(), func(e float64) bool { return math.Abs(e-x) < slack }) {
			t.Fatalf("ground %g, %g there, %g, %g back", s, u, v, w)
		}
		for _, l := range c.Landmarks() {
			l.Distance = length - l.Distance
			if !slices.Contains(r.Landmarks(), l) {
				t.Fatalf("%+v is not among %+v", l, r.Landmarks())
			}
		}
	})
}

func TestPartsJoinedAreTheWhole(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		c := drawFull(t, "one")
		cuts := []float64{0, c.Length()}
		for range rapid.IntRange(0, 4).Draw(t, "cuts") {
			cut := rapid.Float64Range(0.01, 0.99).Draw(t, "cut") * c.Length()
			if rapid.Bool().Draw(t, "at a point") {
				cut, _ = c.Point(rapid.IntRange(0, c.Len()-1).Draw(t, "point"))
			}
			cuts = append(cuts, cut)
		}
		if len(c.landmarks) > 0 {
			cuts = append(cuts, c.landmarks[0].Distance)
		}
		slices.Sort(cuts)
		cuts = slices.CompactFunc(cuts, func(a, b float64) bool { return math.Abs(b-a) < 1e-3 })
		cuts[len(cuts)-1] = c.Length()
		var parts []*Course
		ascent := 0.0
		for i := 1; i < len(cuts); i++ {
			p := must(t)(c.Part(cuts[i-1], cuts[i]))
			if want := c.ReliefBetween(cuts[i-1], cuts[i]); math.Abs(p.Relief().Ascent-want.Ascent) > slackAscent || p.Length() != cuts[i]-cuts[i-1] {
				t.Fatalf("part %g to %g m: %+v, want %+v", cuts[i-1], cuts[i], p.Relief(), want)
			}
			e, n, _ := p.Direction(0, p.Length())
			if f, o, _ := c.Direction(cuts[i-1], cuts[i]); !(math.Hypot(e-f, n-o)*p.Length() <= 4*slack) {
				t.Fatalf("part %g to %g m: direction %g, %g, want %g, %g", cuts[i-1], cuts[i], e, n, f, o)
			}
			ascent += p.Relief().Ascent
			parts = append(parts, p)
		}
		if d := differs(c, must(t)(Join(parts...))); d != "" {
			t.Fatal(d)
		}
	})
}

func TestLapsMultiply(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		c := drawFull(t, "one")
		if rapid.Bool().Draw(t, "closed") {
			c = must(t)(c.OutAndBack())
		}
		n := rapid.IntRange(1, 6).Draw(t, "laps")
		laps, err := c.Laps(n)
		if step := c.Elevation(c.Length()) - c.Elevation(0); math.Abs(step)*float64(n-1) > maxStep {
			return // see TestJoinRefuses
		}
		must(t)(laps, err)
		a, b, k := c.Relief(), laps.Relief(), float64(n)
		if math.Abs(laps.Length()-k*c.Length()) > k*slack || math.Abs(b.Ascent-k*a.Ascent) > k*slackAscent || math.Abs(b.Descent-k*a.Descent) > k*slackAscent {
			t.Fatalf("%d laps of %+v, %g m make %+v, %g m", n, a, c.Length(), b, laps.Length())
		}
		e, o, ok := c.Direction(0, c.Length())
		if f, p, ok2 := laps.Direction(0, laps.Length()); ok != ok2 || !(math.Hypot(e-f, o-p) <= 1e-9) {
			t.Fatalf("direction %g, %g, of laps %g, %g", e, o, f, p)
		}
		// What stands on a lap stands on every one, and nothing between them.
		i := rapid.IntRange(0, n-1).Draw(t, "lap")
		lap := must(t)(laps.Part(float64(i)*c.Length(), min(float64(i+1)*c.Length(), laps.Length())))
		if d := differsBeside(c, withoutEnds(c, lap)); d != "" && c.Length() > 1 {
			t.Fatal(d)
		}
	})
}

// withoutEnds takes from a lap what the neighbouring laps have put at its ends.
func withoutEnds(c, lap *Course) *Course {
	lap.landmarks = slices.DeleteFunc(lap.landmarks, func(l Landmark) bool {
		return !slices.ContainsFunc(c.landmarks, func(m Landmark) bool {
			return m.Name == l.Name && m.Kind == l.Kind && math.Abs(m.Distance-l.Distance) <= slack
		})
	})
	return lap
}

func TestJoinAddsUp(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawFull(t, "one"), drawFull(t, "two")
		whole, err := Join(a, b)
		if step := a.Elevation(a.Length()) - b.Elevation(0); math.Abs(step) > maxStep {
			return
		}
		must(t)(whole, err)
		p, q, r := a.Relief(), b.Relief(), whole.Relief()
		if math.Abs(p.Ascent+q.Ascent-r.Ascent) > slackAscent || math.Abs(p.Descent+q.Descent-r.Descent) > slackAscent || math.Abs(a.Length()+b.Length()-whole.Length()) > slack {
			t.Fatalf("%+v and %+v make %+v", p, q, r)
		}
		if got, want := len(whole.Landmarks()), len(a.Landmarks())+len(b.Landmarks()); got != want { // their notes differ
			t.Fatalf("%d landmarks, want %d", got, want)
		}
		if whole.Name() != "one" || whole.HasTrack() != (a.HasTrack() && b.HasTrack()) || r.Smoothing != max(p.Smoothing, q.Smoothing) {
			t.Fatalf("%q, track %v, %+v", whole.Name(), whole.HasTrack(), r)
		}
		for _, w := range []string{"mended one", "mended two"} {
			if !slices.Contains(whole.Warnings(), w) {
				t.Fatalf("%q is not among %q", w, whole.Warnings())
			}
		}
		x := rapid.Float64Range(0, 1).Draw(t, "x") * b.Length()
		s, u := b.Ground(x)
		if v, w := whole.Ground(a.Length() + x); (s != v || u != w) && !slices.ContainsFunc(b.Edges(), func(e float64) bool { return math.Abs(e-x) < slack }) {
			t.Fatalf("ground at %g m of the second: %g, %g, want %g, %g", x, v, w, s, u)
		}
	})
}

func TestStartingElsewhereTwiceIsTheLoop(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		loop := must(t)(drawFull(t, "one").OutAndBack())
		loop.landmarks = slices.DeleteFunc(loop.landmarks, func(l Landmark) bool { return l.Distance == 0 || l.Distance == loop.Length() })
		at, _ := loop.Point(rapid.IntRange(1, loop.Len()-2).Draw(t, "point"))
		if slices.ContainsFunc(loop.landmarks, func(l Landmark) bool { return math.Abs(l.Distance-at) < 1e-6 }) {
			return // it would stand at both ends
		}
		moved := must(t)(loop.StartAt(at))
		if math.Abs(moved.Relief().Ascent-loop.Relief().Ascent) > slackAscent || moved.Elevation(0) != loop.Elevation(at) {
			t.Fatalf("%+v, moved %+v", loop.Relief(), moved.Relief())
		}
		if d := differs(loop, must(t)(moved.StartAt(loop.Length()-at))); d != "" {
			t.Fatal(d)
		}
	})
}

func TestOutAndBackHasNoDirection(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		c := must(t)(drawFull(t, "one").OutAndBack())
		east, north, _ := c.Direction(0, c.Length())
		if r := c.Relief(); math.Abs(r.Ascent-r.Descent) > slackAscent || math.Hypot(east, north) > 1e-10 {
			t.Fatalf("%+v, direction %g, %g", r, east, north)
		}
		if d := differs(c, c.Reverse()); d != "" {
			t.Fatal(d)
		}
	})
}

func TestResampling(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		c := drawFull(t, "one")
		r := must(t)(c.Resample(rapid.Float64Range(1, 500).Draw(t, "spacing")))
		if r.Length() != c.Length() {
			t.Fatalf("%g m, was %g m", r.Length(), c.Length())
		}
		spacing, steepest, turning := r.distance[1], 0.0, 0
		for i := 1; i < c.Len(); i++ {
			steepest = max(steepest, math.Abs(c.Gradient(c.distance[i-1], c.distance[i])))
		}
		for i := 1; i < r.Len(); i++ {
			if p := c.ReliefBetween(r.distance[i-1], r.distance[i]); min(p.Ascent, p.Descent) > 1e-9 {
				turning++
			}
		}
		a, b := c.Relief(), r.Relief()
		up, down := a.Ascent-b.Ascent, a.Descent-b.Descent
		if bound := float64(turning) * spacing * steepest / 2; !(up >= -slackAscent && up <= bound+slackAscent) || math.Abs(up-down) > slackAscent {
			t.Fatalf("ascent %g less, descent %g less; bound %g", up, down, bound)
		}
		if e, n, _ := r.Direction(0, spacing); c.HasTrack() {
			if f, o, _ := c.Direction(0, spacing); !(math.Hypot(e-f, n-o)*spacing <= 4*slack) {
				t.Fatalf("direction %g, %g, was %g, %g", e, n, f, o)
			}
		}
		if !slices.Equal(r.Landmarks(), c.Landmarks()) || !slices.Equal(r.Edges(), c.Edges()) || r.Smoothing() != c.Smoothing() {
			t.Fatal("what stands on it has changed")
		}
	})
}
