package course

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

// longest finds climbs by what they are said to be: of all stretches whose start is
// their lowest point and whose end is their highest, that rise by least and in which
// nothing falls by as much, those that lie in no longer one. Of equal lows at the start
// it takes the last, of equal highs at the end the first, as is said.
func longest(z []float64, least float64) []leg {
	var all []leg
	for a := range z {
		for b := a + 1; b < len(z); b++ {
			if isClimb(z[a:b+1], least) {
				all = append(all, leg{a, b})
			}
		}
	}
	var found []leg
	for _, l := range all {
		if slices.ContainsFunc(all, func(m leg) bool { return m != l && m.low <= l.low && m.top >= l.top }) {
			continue
		}
		low, top := l.low, l.top
		for i := l.low; i <= l.top; i++ {
			if z[i] == z[l.low] {
				low = i
			}
			if back := l.top + l.low - i; z[back] == z[l.top] {
				top = back
			}
		}
		found = append(found, leg{low, top})
	}
	return found
}

func isClimb(z []float64, least float64) bool {
	last := len(z) - 1
	if !(z[last]-z[0] >= least) || slices.Min(z) < z[0] || slices.Max(z) > z[last] {
		return false
	}
	for i := range z {
		for j := i + 1; j < len(z); j++ {
			if z[i]-z[j] >= least {
				return false
			}
		}
	}
	return true
}

// prominent finds the tops by their prominence over the lows on either side.
func prominent(z []float64, least float64) []int {
	var tops []int
	for b := range z {
		before, after := math.Inf(1), math.Inf(-1)
		for i := b; i >= 0 && z[i] <= z[b]; i-- {
			if i < b && z[i] == z[b] && before > z[b]-least {
				before = math.Inf(1) // of equal highs with no such low between, the first is the top
				break
			}
			before = min(before, z[i])
		}
		for i := b; i < len(z); i++ {
			if z[i] > z[b] {
				after = slices.Min(z[b:i])
				break
			}
		}
		if z[b]-before >= least && z[b]-after >= least {
			tops = append(tops, b)
		}
	}
	return tops
}

// randomProfile returns a wandering or a jagged profile; every other one has whole
// elevations, many of them equal.
func randomProfile(random *rand.Rand, k int) (x, z []float64, least float64) {
	n := 2 + random.IntN(39)
	x, z = make([]float64, n), make([]float64, n)
	for i := 1; i < n; i++ {
		x[i] = x[i-1] + 1 + 300*random.Float64()
		z[i] = 300 * random.Float64()
		if k%4 < 2 {
			z[i] = z[i-1] + 60*(random.Float64()-0.5)
		}
	}
	least = 1 + 80*random.Float64()
	if k%2 == 0 {
		for i := range z {
			z[i] = math.Round(z[i] / 5)
		}
		least = math.Round(1 + least/8)
	}
	return x, z, least
}

func TestClimbsByBruteForce(t *testing.T) {
	t.Parallel()
	random := rand.New(rand.NewPCG(1, 2))
	total := 0
	for k := range 1000 {
		x, z, least := randomProfile(random, k)
		c := asGiven(t, x, z)
		o := ClimbOptions{LeastRise: least, Gentle: -1}
		want := longest(z, least)
		total += len(want)
		if got := c.find(o); !slices.Equal(got, want) {
			t.Fatalf("profile %d, least %g of %v: %v, want %v", k, least, z, got, want)
		}
		var tops []int
		for _, l := range want {
			tops = append(tops, l.top)
		}
		if got := prominent(z, least); !slices.Equal(got, tops) {
			t.Fatalf("profile %d, least %g of %v: tops by prominence %v, by stretches %v", k, least, z, got, tops)
		}
		// The rise itself as the measure; the place where a height is regained is rounded.
		o.Least, o.Measure = least, func(from, to float64) float64 { return c.Elevation(to) - c.Elevation(from) + 1e-9 }
		o.LeastRise = 0
		if got := c.find(o); !slices.Equal(got, want) {
			t.Fatalf("profile %d, least %g of %v: measured %v, want %v", k, least, z, got, want)
		}
		back := slices.Clone(z)
		slices.Reverse(back)
		descents := c.Descents(ClimbOptions{LeastRise: least, Gentle: -1})
		want = longest(back, least)
		slices.Reverse(want)
		got := make([]leg, len(descents))
		for i, d := range descents {
			got[i] = leg{len(z) - 1 - slices.Index(x, d.Foot), len(z) - 1 - slices.Index(x, d.Start)}
			if d.Drop != z[slices.Index(x, d.Start)]-z[slices.Index(x, d.Foot)] {
				t.Fatalf("drop %g of %+v", d.Drop, d)
			}
		}
		if !slices.Equal(got, want) {
			t.Fatalf("profile %d, least %g of %v: descents %v, want %v", k, least, z, got, want)
		}
	}
	if total < 2000 {
		t.Errorf("only %d climbs on 1000 profiles", total)
	}
}

// The ends of a climb are cut where the height over a line of the gentle gradient is
// least and greatest: of all pairs the one between which it rises most.
func TestTrimByBruteForce(t *testing.T) {
	t.Parallel()
	random := rand.New(rand.NewPCG(3, 4))
	for k := range 1000 {
		x, z, least := randomProfile(random, k)
		for _, l := range longest(z, least) {
			best := math.Inf(-1)
			for a := l.low; a <= l.top; a++ {
				for b := a; b <= l.top; b++ {
					best = max(best, z[b]-gentle*x[b]-(z[a]-gentle*x[a]))
				}
			}
			got := trim(x, z, gentle, l)
			rise := z[got.top] - gentle*x[got.top] - (z[got.low] - gentle*x[got.low])
			if !(math.Abs(rise-best) < 1e-9) || got.low < l.low || got.top > l.top {
				t.Fatalf("%v of %v, %v cut to %v, %g over the line, want %g", l, x, z, got, rise, best)
			}
		}
	}
}

// The steepest 100 m, against windows tried every centimetre, which may miss the best
// place by 5 mm on either side: by 1e-4 of the change of gradient there.
func TestSteepest(t *testing.T) {
	t.Parallel()
	random := rand.New(rand.NewPCG(7, 8))
	for range 20 {
		x, z := []float64{0}, []float64{0}
		for x[len(x)-1] < 400 {
			x = append(x, x[len(x)-1]+5+60*random.Float64())
			z = append(z, z[len(z)-1]+8*random.Float64())
		}
		c := asGiven(t, x, z)
		climbs := c.ClimbsWith(ClimbOptions{LeastRise: 1, Gentle: -1})
		if len(climbs) != 1 {
			t.Fatalf("%d climbs", len(climbs))
		}
		best, steepestPiece := 0.0, 0.0
		for from := 0.0; from+100 <= c.Length(); from += 0.01 {
			best = max(best, c.Gradient(from, from+100))
		}
		for i := 1; i < len(x); i++ {
			steepestPiece = max(steepestPiece, c.Gradient(x[i-1], x[i]))
		}
		if got := climbs[0].Steepest; !(got >= best-1e-12 && got <= best+1e-4*steepestPiece) {
			t.Errorf("steepest 100 m %.6f, tried %.6f", got, best)
		}
	}
	short := asGiven(t, []float64{0, 20, 80}, []float64{0, 10, 31}).Climbs(0)
	if len(short) != 1 || short[0].Steepest != 31.0/80 {
		t.Errorf("of 80 m: %+v", short)
	}
}

func TestHumps(t *testing.T) {
	t.Parallel()
	x := []float64{0, 1000, 1500, 2500, 2700, 3700, 5000}
	c := asGiven(t, x, []float64{0, 100, 80, 180, 175, 275, 0}, Landmark{Name: "Beacon", Distance: 3700, Kind: Top}, Landmark{Name: "Shelf", Distance: 1020, Kind: Top})
	climbs := c.Climbs(0)
	if len(climbs) != 1 || climbs[0].Name != "Beacon" {
		t.Fatalf("%+v", climbs)
	}
	for _, tt := range []struct {
		least float64
		want  string
	}{
		{0, "[Shelf Beacon]"}, // the dip of 5 m is smaller than a third of 30 m
		{5, "[Shelf climb from 1.5 to 2.5 km Beacon]"},
		{21, "[]"},
	} {
		names := []string{}
		for _, h := range c.Humps(climbs[0], ClimbOptions{LeastRise: tt.least}) {
			names = append(names, h.Label())
		}
		if got := fmt.Sprint(names); got != tt.want {
			t.Errorf("least %g: %v, want %v", tt.least, got, tt.want)
		}
	}
	if got := c.Humps(Climb{Start: math.NaN(), Top: 4}, ClimbOptions{}); got != nil {
		t.Errorf("of a climb at NaN: %+v", got)
	}
}
