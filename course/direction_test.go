package course

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/pymaxion/geographiclib-go/geodesic"
	"pgregory.net/rapid"
)

// A leg of a track that is laid out for a test.
type layout struct{ azimuth, length float64 } // degrees, m

// laid returns the distances and, by GeographicLib, the positions of a track.
func laid(lat, lon float64, legs []layout) (x []float64, track []Position) {
	x, track = []float64{0}, []Position{NewPosition(lat, lon)}
	for _, l := range legs {
		end := geodesic.WGS84.Direct(lat, lon, l.azimuth, l.length)
		lat, lon = end.Lat2, end.Lon2
		x, track = append(x, x[len(x)-1]+l.length), append(track, NewPosition(lat, lon))
	}
	return x, track
}

func tracked(t testing.TB, x []float64, track []Position, o Options) *Course {
	t.Helper()
	o.Track = track
	c, err := New(x, make([]float64, len(x)), o)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// checkDirection wants a mean direction, and the heading that belongs to it.
func checkDirection(t *testing.T, c *Course, from, to, east, north, tolerance float64) {
	t.Helper()
	e, n, ok := c.Direction(from, to)
	if !ok || !(math.Hypot(e-east, n-north) <= tolerance) {
		t.Errorf("Direction(%g, %g) = %.9f, %.9f, %v, want %.9f, %.9f", from, to, e, n, ok, east, north)
	}
	h, length := c.Heading(from, to), math.Hypot(east, north)
	if length == 0 {
		if !math.IsNaN(h) {
			t.Errorf("Heading(%g, %g) = %g where the directions cancel", from, to, h)
		}
		return
	}
	want := math.Atan2(east, north) * 180 / math.Pi
	if !(math.Abs(turn(want, h)) <= 90*tolerance/length) || !(h >= 0 && h < 360) {
		t.Errorf("Heading(%g, %g) = %g, want %g", from, to, h, want)
	}
}

func TestDirectionOfStraightLines(t *testing.T) {
	t.Parallel()
	for _, o := range []Options{{}, {Smoothing: AsGiven}, {Length: 1230}, {Grid: 37}} {
		for _, tt := range []struct{ lat, azimuth, east, north float64 }{
			{45, 0, 0, 1},
			{0, 90, 1, 0},
			{-70, 180, 0, -1},
			{0, 270, -1, 0},
			{0, 30, 0.5, math.Sqrt(3) / 2},
		} {
			x, track := laid(tt.lat, 179.999, slices.Repeat([]layout{{tt.azimuth, 7}}, 200))
			c := tracked(t, x, track, o)
			checkDirection(t, c, 0, c.Length(), tt.east, tt.north, 1e-7)
			checkDirection(t, c, 3, 4, tt.east, tt.north, 1e-7)
			checkDirection(t, c, -50, 1e9, tt.east, tt.north, 1e-7)
			for from := 0.0; from < c.Length(); from += 13.7 { // where rounding shows most
				if east, north, _ := c.Direction(from, from+1e-3); math.Hypot(east, north) > 1+1e-15 {
					t.Errorf("azimuth %g, at %g m: length %.16g", tt.azimuth, from, math.Hypot(east, north))
				}
			}
		}
	}
}

// A square of 1 km sides that lies evenly on both sides of the equator, so that the
// sides along it are alike.
func TestDirectionOfSquareLoop(t *testing.T) {
	t.Parallel()
	const half = 0.0045
	corners := []Position{
		NewPosition(-half, 10), NewPosition(half, 10), NewPosition(half, 10+2*half),
		NewPosition(-half, 10+2*half), NewPosition(-half, 10),
	}
	x := []float64{200, 1200, 2200, 3200, 4200} // not from 0
	for _, o := range []Options{{}, {Smoothing: AsGiven}, {Grid: 20}, {Length: 4000}} {
		c := tracked(t, x, corners, o)
		for _, tt := range []struct{ from, to, east, north float64 }{
			{0, 1000, 0, 1},
			{1000, 2000, 1, 0},
			{2000, 3000, 0, -1},
			{3000, 4000, -1, 0},
			{0, 2000, 0.5, 0.5},
			{900, 1300, 0.75, 0.25},
			{2500, 3500, -0.5, -0.5},
			{0, 3000, 1.0 / 3, 0},
			{0, 4000, 0, 0},
		} {
			checkDirection(t, c, tt.from, tt.to, tt.east, tt.north, 1e-7)
		}
	}
}

// Out and back over crooked ground: each half has a direction, the whole has none.
func TestDirectionOutAndBackCancels(t *testing.T) {
	t.Parallel()
	random := rand.New(rand.NewPCG(5, 6))
	legs := make([]layout, 500)
	for i := range legs {
		legs[i] = layout{60 + 80*random.Float64(), 2 + 30*random.Float64()}
	}
	x, track := laid(62, -20, legs)
	for i := len(legs) - 1; i >= 0; i-- {
		x, track = append(x, x[len(x)-1]+legs[i].length), append(track, track[i])
	}
	for _, o := range []Options{{}, {Smoothing: AsGiven}, {Length: 10_000}} {
		c := tracked(t, x, track, o)
		half := c.Length() / 2
		checkDirection(t, c, 0, 2*half, 0, 0, 1e-10)
		east, north, _ := c.Direction(0, half)
		if h := c.Heading(0, half); !(h > 60 && h < 140) {
			t.Errorf("out: heading %g", h)
		}
		checkDirection(t, c, half, 2*half, -east, -north, 1e-10)
	}
}

// drawTrack draws a crooked track at the latitudes where people live.
func drawTrack(t *rapid.T) (legs []layout, x []float64, track []Position) {
	n := rapid.IntRange(1, 100).Draw(t, "legs")
	for range n {
		legs = append(legs, layout{rapid.Float64Range(0, 360).Draw(t, "azimuth"), rapid.Float64Range(0.5, 50).Draw(t, "length")})
	}
	x, track = laid(rapid.Float64Range(-60, 60).Draw(t, "latitude"), rapid.Float64Range(-180, 180).Draw(t, "longitude"), legs)
	return legs, x, track
}

// The mean between two points of the profile is that of the track that was laid out,
// summed the slow way. An azimuth at the middle of a leg of 50 m differs from that at
// its start by up to 25 m/6356 km · tan 62°, which is 8e-6.
func TestDirectionIsMeanOfTrack(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		legs, x, track := drawTrack(t)
		scale := rapid.Float64Range(0.5, 2).Draw(t, "scale")
		o := Options{Track: track, Length: scale * x[len(x)-1], Smoothing: rapid.SampledFrom([]float64{AsGiven, 0, 40}).Draw(t, "smoothing")}
		c, err := New(x, make([]float64, len(x)), o)
		if err != nil {
			t.Fatal(err)
		}
		i := rapid.IntRange(0, c.Len()-2).Draw(t, "from")
		j := rapid.IntRange(i+1, c.Len()-1).Draw(t, "to")
		from, _ := c.Point(i)
		to, _ := c.Point(j)
		var east, north float64
		for k, l := range legs {
			if run := min(scale*x[k+1], to) - max(scale*x[k], from); run > 0 {
				sin, cos := math.Sincos(l.azimuth * math.Pi / 180)
				east, north = east+run*sin/(to-from), north+run*cos/(to-from)
			}
		}
		e, n, ok := c.Direction(from, to)
		if !ok || !(math.Hypot(e-east, n-north) <= 1e-5) {
			t.Fatalf("Direction(%g, %g) = %.9f, %.9f, %v, want %.9f, %.9f", from, to, e, n, ok, east, north)
		}
	})
}

// The mean over two neighbouring ranges is that of their means, and none is longer
// than 1.
func TestDirectionAddsUp(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		_, x, track := drawTrack(t)
		c, err := New(x, make([]float64, len(x)), Options{Track: track})
		if err != nil {
			t.Fatal(err)
		}
		cuts := rapid.SliceOfN(rapid.Float64Range(0, c.Length()), 3, 3).Draw(t, "cuts")
		slices.Sort(cuts)
		var east, north [3]float64
		for i, r := range [3][2]float64{{cuts[0], cuts[1]}, {cuts[1], cuts[2]}, {cuts[0], cuts[2]}} {
			east[i], north[i], _ = c.Direction(r[0], r[1])
			if length := math.Hypot(east[i], north[i]); !(length <= 1+1e-15) {
				t.Fatalf("length %.17g", length)
			}
			east[i], north[i] = east[i]*(r[1]-r[0]), north[i]*(r[1]-r[0])
		}
		if off := math.Hypot(east[0]+east[1]-east[2], north[0]+north[1]-north[2]); !(off <= 1e-9) {
			t.Fatalf("over %v the parts are off by %g m", cuts, off)
		}
	})
}

// A recorder that jumps by 3 m (SD, east and north, each point by itself) on legs of
// 10 m, on a straight course at 60°: the mean heading over 500 m as run turns by
// 3√2/500 radians, 0.49° (SD) or less, since most ends of ranges lie between two points
// and have the mean of their jumps; so by more than 2.2°, four and a half times that,
// less than once in 100 000 ranges. Distances are measured along the jumps, as a reader of files
// does it: the length of the mean is that of 10 m to the Rice mean of 10 m and 3√2 m,
// 10.96 m.
func TestDirectionUnderJitter(t *testing.T) {
	t.Parallel()
	random := rand.New(rand.NewPCG(7, 8))
	const points, sd, want = 10_001, 3, 60
	track, x := make([]Position, points), make([]float64, points)
	line := geodesic.WGS84.DirectLine(0, 10, want, 10*points)
	for i := range track {
		at := line.Position(float64(i) * 10)
		at = geodesic.WGS84.Direct(at.Lat2, at.Lon2, 90, sd*random.NormFloat64())
		at = geodesic.WGS84.Direct(at.Lat2, at.Lon2, 0, sd*random.NormFloat64())
		track[i] = NewPosition(at.Lat2, at.Lon2)
		if i > 0 {
			x[i] = x[i-1] + track[i-1].Distance(track[i])
		}
	}
	c := tracked(t, x, track, Options{})
	const ranges = (points - 1) / 50
	sum, worst := 0.0, 0.0
	for i := range ranges {
		step := c.Length() / ranges // 500 m as run
		off := turn(want, c.Heading(float64(i)*step, float64(i+1)*step))
		sum, worst = sum+off*off, max(worst, math.Abs(off))
	}
	// Of 200 ranges the SD itself has a spread of 5 %: three of those are allowed.
	expected := sd * math.Sqrt2 / 500 * 180 / math.Pi
	if rms := math.Sqrt(sum / ranges); rms > 1.15*expected || worst > 4.5*expected {
		t.Errorf("heading off by %.2f° (SD), at worst %.2f°; expected %.2f° (SD)", rms, worst, expected)
	} else {
		t.Logf("heading off by %.2f° (SD), at worst %.2f°; expected %.2f° (SD)", rms, worst, expected)
	}
	east, north, _ := c.Direction(0, c.Length())
	if length := math.Hypot(east, north); !(math.Abs(length-10/10.96) <= 0.005) {
		t.Errorf("mean direction of length %.3f, want %.3f", length, 10/10.96)
	}
}
