package coursefile

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"isoeffort.example/course"
)

// measured returns the distances along positions.
func measured(at []course.Position) []float64 {
	distance := make([]float64, len(at))
	for i := 1; i < len(at); i++ {
		distance[i] = distance[i-1] + at[i-1].Distance(at[i])
	}
	return distance
}

// walk returns a course of random turns.
func walk(random *rand.Rand, points int) []course.Position {
	lat, lon, heading := 50.0, -20.0, 0.0
	var at []course.Position
	for range points {
		at = append(at, course.NewPosition(lat, lon))
		heading += random.NormFloat64() * 0.4
		step := random.Float64() * 0.002
		lat, lon = lat+step*math.Cos(heading), lon+step*math.Sin(heading)
	}
	return at
}

// TestPassesLeapOverNothing compares passes with a search of every leg in pieces of a
// metre or so.
func TestPassesLeapOverNothing(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	for range 30 {
		at := walk(random, 200)
		distance := measured(at)
		near := at[random.IntN(len(at))]
		w := course.NewPosition(near.Lat()+random.NormFloat64()*0.002, near.Lon()+random.NormFloat64()*0.002)
		best, where := math.Inf(1), 0.0
		for i := 1; i < len(at); i++ {
			for k := range 200 {
				f := float64(k) / 199
				q := course.NewPosition(at[i-1].Lat()+f*(at[i].Lat()-at[i-1].Lat()), at[i-1].Lon()+f*(at[i].Lon()-at[i-1].Lon()))
				if off := w.Distance(q); off < best {
					best, where = off, distance[i-1]+f*(distance[i]-distance[i-1])
				}
			}
		}
		got, _ := passes(w, at, distance)
		if best > reach+1 && got == nil {
			continue
		}
		nearest := slices.MinFunc(got, func(a, b pass) int { return int(math.Copysign(1, a.offset-b.offset)) })
		if math.Abs(nearest.offset-best) > 0.5 {
			t.Errorf("nearest place %.2f m off at %.1f m, want %.2f at %.1f", nearest.offset, nearest.distance, best, where)
		}
	}
}

// TestNearestOnFlatTriangle holds nearest to the 5 cm of its comment.
func TestNearestOnFlatTriangle(t *testing.T) {
	for _, length := range []float64{10, 100, 1000} {
		// Along a meridian, and aside from it along a parallel of the same latitude.
		degrees := length / 111_229
		a, b, foot := course.NewPosition(50, -20), course.NewPosition(50+degrees, -20), course.NewPosition(50+0.3*degrees, -20)
		for _, aside := range []float64{0, 4e-5, 5e-4, 5e-3} {
			w := course.NewPosition(foot.Lat(), foot.Lon()+aside)
			got := nearest(w.Distance(a), w.Distance(b), 0, a.Distance(b))
			if off := foot.Distance(w); math.Abs(got.distance-a.Distance(foot)) > 0.05 || math.Abs(got.offset-off) > 0.05 {
				t.Errorf("leg of %g m: %.4f m along and %.4f m off, want %.4f and %.4f", length, got.distance, got.offset, a.Distance(foot), off)
			}
		}
	}
}

func TestNearestBeyondTheEnds(t *testing.T) {
	for _, tt := range []struct {
		fromStart, fromEnd, start, end float64
		want                           pass
	}{
		{5, 15, 100, 110, pass{100, 5}},
		{15, 5, 100, 110, pass{110, 5}},
		{7, 7, 100, 100, pass{100, 7}}, // a leg without length
		{5, 5, 100, 110, pass{105, 0}},
	} {
		if got := nearest(tt.fromStart, tt.fromEnd, tt.start, tt.end); got != tt.want {
			t.Errorf("got %v, want %v", got, tt.want)
		}
	}
}

func TestPassesNeedRoomBetweenThem(t *testing.T) {
	// Out and back; a place 90 m before the turn is passed twice within 180 m.
	var at []course.Position
	for i := range 21 {
		at = append(at, course.NewPosition(50+0.001*float64(min(i, 20-i)), -20))
	}
	distance := measured(at)
	for _, tt := range []struct {
		beforeTurn float64 // degrees
		want       int
	}{{0, 1}, {0.0008, 1}, {0.0012, 2}, {0.005, 2}} {
		if got, _ := passes(course.NewPosition(50.01-tt.beforeTurn, -20), at, distance); len(got) != tt.want {
			t.Errorf("%g° before the turn: %v, want %d", tt.beforeTurn, got, tt.want)
		}
	}
}

func TestKindOf(t *testing.T) {
	for text, want := range map[string]course.Kind{
		"":                 course.Place,
		"Aid Station":      course.Station,
		"AIDSTATION":       course.Station,
		"first-aid":        course.Station,
		"Drinking Water":   course.Station,
		"Waterpoint":       course.Station,
		"food":             course.Station,
		"Control 7":        course.Station,
		"Hill, food":       course.Station,
		"Summit":           course.Top,
		"peaks":            course.Top,
		"TOP":              course.Top,
		"Hilltop":          course.Top,
		"Start of climb":   course.Top,
		"Bus Stop":         course.Place,
		"Maiden":           course.Place,
		"Waterfall":        course.Place,
		"Flag, Blue":       course.Place,
		"Waterfall, water": course.Station,
	} {
		if got := kindOf(text); got != want {
			t.Errorf("%q is a %v, want %v", text, got, want)
		}
	}
}

func TestOneLine(t *testing.T) {
	for _, tt := range []struct{ text, want string }{
		{" Up\r\n\tto  \u00a0 2\u2028", "Up to 2"},
		{"a\x00b\x1b[31m\u202ec\ufeff", "ab[31mc"},
		{"\n", ""},
		{strings.Repeat("ö", 11), strings.Repeat("ö", 10) + "…"},
		{strings.Repeat("ö", 10), strings.Repeat("ö", 10)},
		{"zero\u200cwidth", "zero\u200cwidth"},
	} {
		if got := oneLine(tt.text, 10); got != tt.want {
			t.Errorf("%q became %q, want %q", tt.text, got, tt.want)
		}
	}
}

// A course that winds within 1 km and as many waypoints as are allowed is the slowest
// there is.
// The short way for plain texts does what the long way does, on which a character that is
// dropped sends a text.
func TestOneLineOfPlainTexts(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.StringMatching(`[ a~\t]{0,7}`).Draw(t, "text")
		most := rapid.IntRange(1, 8).Draw(t, "most")
		if short, long := oneLine(s, most), oneLine("\x01"+s, most); short != long {
			t.Fatalf("%q, want %q", short, long)
		}
	})
}

func BenchmarkPasses(b *testing.B) {
	random := rand.New(rand.NewPCG(5, 6))
	var at []course.Position
	for range 100_000 {
		at = append(at, course.NewPosition(50+0.008*random.Float64(), -20+0.012*random.Float64()))
	}
	distance := measured(at)
	w := course.NewPosition(50.004, -20.006)
	b.ReportAllocs()
	for b.Loop() {
		passes(w, at, distance)
	}
}
