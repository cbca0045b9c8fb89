package course

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/pymaxion/geographiclib-go/geodesic"
)

// geodesicLeg returns a position and the one that lies a distance away along an azimuth,
// according to GeographicLib, and the geodesic between them, whose end has been
// rounded to a float64 of degrees.
func geodesicLeg(lat, lon, azimuth, length float64) (from, to Position, geodesicLength float64) {
	end := geodesic.WGS84.Direct(lat, lon, azimuth, length)
	from, to = NewPosition(lat, lon), NewPosition(end.Lat2, end.Lon2)
	return from, to, geodesic.WGS84.Inverse(lat, lon, end.Lat2, end.Lon2).S12
}

// TestDistanceAgainstGeographicLib holds Distance to the accuracy of its comment, with
// the least favourable lines, along the equator and across it, among the random ones.
func TestDistanceAgainstGeographicLib(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	for _, tt := range []struct{ shortest, longest, tolerance float64 }{
		{0.1, 1000, 1e-7},
		{1000, 10_000, 1e-5},
		{10_000, 100_000, 0.01},
	} {
		worst := 0.0
		for i := range 1000 {
			lat, lon, azimuth := 180*random.Float64()-90, 360*random.Float64()-180, 360*random.Float64()
			length := tt.shortest + random.Float64()*(tt.longest-tt.shortest)
			if i < 8 {
				lat, azimuth, length = 0, 45*float64(i), tt.longest
			}
			from, to, want := geodesicLeg(lat, lon, azimuth, length)
			got := from.Distance(to)
			worst = max(worst, math.Abs(got-want))
			if math.Abs(got-want) > tt.tolerance {
				t.Errorf("%.9f, %.9f azimuth %.3f: Distance = %.10f, GeographicLib %.10f", lat, lon, azimuth, got, want)
			}
		}
		t.Logf("%g to %g m: worst error %.2g m", tt.shortest, tt.longest, worst)
	}
}

// TestDistanceAddsUp walks geodesics of 100 km in legs of 25 m.
func TestDistanceAddsUp(t *testing.T) {
	const legs, step = 4000, 25
	worst := 0.0
	for lat := -80.0; lat <= 80; lat += 20 {
		for _, azimuth := range []float64{0, 30, 60, 90} {
			line := geodesic.WGS84.DirectLine(lat, 179.9, azimuth, legs*step)
			sum, last := 0.0, NewPosition(lat, 179.9)
			for i := 1; i <= legs; i++ {
				end := line.Position(float64(i) * step)
				next := NewPosition(end.Lat2, end.Lon2)
				sum += last.Distance(next)
				last = next
			}
			off := math.Abs(sum/(legs*step) - 1)
			worst = max(worst, off)
			if off > 1e-12 {
				t.Errorf("latitude %g, azimuth %g: sum %.9f m", lat, azimuth, sum)
			}
		}
	}
	t.Logf("worst relative error %.2g", worst)
}

// Vincenty 1975, Survey Review 23(176):88, as GeoScience manuals repeat it for the
// datum GDA94: Flinders Peak to Buninyong, 54 972.271 m (second-hand; its ellipsoid
// GRS80 differs from WGS84 by 0.1 mm in the minor axis).
func TestDistanceOfVincentysExample(t *testing.T) {
	degrees := func(d, m, s float64) float64 { return d + m/60 + s/3600 }
	flinders := NewPosition(-degrees(37, 57, 3.72030), degrees(144, 25, 29.52440))
	buninyong := NewPosition(-degrees(37, 39, 10.15610), degrees(143, 55, 35.38390))
	if got := flinders.Distance(buninyong); math.Abs(got-54972.271) > 0.001 {
		t.Errorf("Distance = %.4f", got)
	}
}

func TestDistanceAtTheEdges(t *testing.T) {
	for _, tt := range []struct {
		name             string
		lat, lon         float64
		toLat, toLon     float64
		metres, accuracy float64
	}{
		{"identical points", 12.3456789, -98.7654321, 12.3456789, -98.7654321, 0, 0},
		{"the date line is one meridian", 10, 180, 10, -180, 0, 1e-8},
		{"across the date line", 0, 179.9995, 0, -179.9995, 111.319491, 1e-6},
		{"the pole has every longitude", 90, 0, 90, 137, 0, 1e-8},
		{"across the north pole", 89.999, 0, 89.999, 180, 223.387959, 1e-6},
		{"across the south pole", -89.999, 20, -89.999, -160, 223.387959, 1e-6},
	} {
		a, b := NewPosition(tt.lat, tt.lon), NewPosition(tt.toLat, tt.toLon)
		for _, got := range []float64{a.Distance(b), b.Distance(a)} {
			if math.Abs(got-tt.metres) > tt.accuracy {
				t.Errorf("%s: Distance = %.9f, want %.9f", tt.name, got, tt.metres)
			}
		}
	}
	if got := NewPosition(0, 0).Distance(NewPosition(0, 180)); math.IsNaN(got) {
		t.Error("Distance between antipodes is NaN")
	}
}

func TestPositionKeepsDegrees(t *testing.T) {
	if p := NewPosition(-45.5, 170.25); p.Lat() != -45.5 || p.Lon() != 170.25 {
		t.Errorf("got %g, %g", p.Lat(), p.Lon())
	}
}

func BenchmarkDistance(b *testing.B) {
	p, q := NewPosition(47, 8), NewPosition(47.0001, 8.0001)
	b.ReportAllocs()
	for b.Loop() {
		p.Distance(q)
	}
}
