package course

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/pymaxion/geographiclib-go/geodesic"
)

// turn is the angle in degrees from one heading to another, −180 to 180.
func turn(from, to float64) float64 { return math.Remainder(to-from, 360) }

// TestHeadingAgainstGeographicLib holds Heading to the accuracy of its comment, and the
// heading of a leg at its middle to the same. Every other leg starts near the date line,
// and the first run diagonally over the equator, where a chord differs most from a
// geodesic.
func TestHeadingAgainstGeographicLib(t *testing.T) {
	t.Parallel()
	random := rand.New(rand.NewPCG(3, 4))
	for _, tt := range []struct{ shortest, longest float64 }{{1, 10}, {10, 1000}, {1000, 10_000}} {
		worst, worstMiddle := 0.0, 0.0 // shares of what is allowed
		for i := range 4000 {
			lat, lon, azimuth := 160*random.Float64()-80, 360*random.Float64()-180, 360*random.Float64()
			length := tt.shortest + random.Float64()*(tt.longest-tt.shortest)
			switch {
			case i < 4:
				lat, azimuth, length = 0, 45+90*float64(i), tt.longest
			case i%2 == 0:
				lon = 180 - 1e-5*random.Float64()
			}
			from, to, _ := geodesicLeg(lat, lon, azimuth, length)
			want := geodesic.WGS84.Inverse(from.Lat(), from.Lon(), to.Lat(), to.Lon())
			middle := geodesic.WGS84.Direct(from.Lat(), from.Lon(), want.Azi1, want.S12/2)
			allowed := 5e-7/length + 1e-7*length*length/1e8
			off := math.Abs(turn(want.Azi1, from.Heading(to))) / allowed
			offMiddle := math.Abs(turn(middle.Azi2, compass(from.direction(to)))) / allowed
			worst, worstMiddle = max(worst, off), max(worstMiddle, offMiddle)
			if !(off <= 1 && offMiddle <= 1) {
				t.Errorf("%.9f, %.9f azimuth %.3f, %.1f m: off by %.2g, at the middle by %.2g", lat, lon, azimuth, length, off*allowed, offMiddle*allowed)
			}
		}
		t.Logf("%g to %g m: %.0f %% of the error allowed, at the middle %.0f %%", tt.shortest, tt.longest, 100*worst, 100*worstMiddle)
	}
}

// Vincenty's example again, as in TestDistanceOfVincentysExample: the azimuths at its
// two ends are 306° 52' 05.37" and 127° 10' 25.07" (second-hand). The leg of 55 km is
// longer than those that Heading states its accuracy for; the error grows with the
// square of the length, so to 55² / 10² times 1e-7 degrees, 0.011".
func TestHeadingOfVincentysExample(t *testing.T) {
	t.Parallel()
	degrees := func(d, m, s float64) float64 { return d + m/60 + s/3600 }
	flinders := NewPosition(-degrees(37, 57, 3.72030), degrees(144, 25, 29.52440))
	buninyong := NewPosition(-degrees(37, 39, 10.15610), degrees(143, 55, 35.38390))
	const tolerance = (0.011 + 0.005) / 3600 // and half the last digit printed
	if got, want := flinders.Heading(buninyong), degrees(306, 52, 5.37); !(math.Abs(got-want) <= tolerance) {
		t.Errorf("Heading = %.8f, want %.8f", got, want)
	}
	if got, want := buninyong.Heading(flinders), degrees(127, 10, 25.07); !(math.Abs(got-want) <= tolerance) {
		t.Errorf("Heading back = %.8f, want %.8f", got, want)
	}
}

func TestHeadingAtTheEdges(t *testing.T) {
	t.Parallel()
	for _, tt := range []struct {
		name         string
		lat, lon     float64
		toLat, toLon float64
		want         float64
	}{
		{"north", 45, 10, 45.001, 10, 0},
		{"east on the equator", 0, 10, 0, 10.001, 90},
		{"south", 45, 10, 44.999, 10, 180},
		{"west on the equator", 0, 10, 0, 9.999, 270},
		{"east across the date line", 0, 179.9995, 0, -179.9995, 90},
		{"west across the date line", 0, -179.9995, 0, 179.9995, 270},
		{"over the north pole", 89.999, 30, 89.999, -150, 0},
		{"over the south pole", -89.999, 30, -89.999, -150, 180},
		{"from the north pole along its own meridian", 90, 30, 89.999, 30, 180},
		{"from the north pole along another meridian", 90, 30, 89.999, 70, 140},
		{"from the south pole along another meridian", -90, 30, -89.999, 70, 40},
	} {
		got := NewPosition(tt.lat, tt.lon).Heading(NewPosition(tt.toLat, tt.toLon))
		if !(math.Abs(turn(tt.want, got)) <= 1e-7) || !(got >= 0 && got < 360) {
			t.Errorf("%s: Heading = %.9f, want %g", tt.name, got, tt.want)
		}
	}
}

func TestHeadingOfNothing(t *testing.T) {
	t.Parallel()
	here, nowhere := NewPosition(50, 10), Position{}
	for _, leg := range [][2]Position{
		{here, here},
		{here, nowhere},
		{nowhere, here},
		{nowhere, nowhere},
		{here, NewPosition(math.NaN(), 10)},
		{NewPosition(50, math.Inf(1)), here},
	} {
		if got := leg[0].Heading(leg[1]); !math.IsNaN(got) {
			t.Errorf("%v to %v: Heading = %g, want NaN", leg[0], leg[1], got)
		}
	}
}

// Directions that a rounding leaves a hair west of north are north, not 360°.
func TestCompassStaysBelow360(t *testing.T) {
	t.Parallel()
	for _, east := range []float64{-1e-18, -1e-15, -5e-324} {
		if got := compass(east, 1); !(got >= 0 && got < 360) {
			t.Errorf("compass(%g, 1) = %g", east, got)
		}
	}
}

func BenchmarkHeading(b *testing.B) {
	p, q := NewPosition(47, 8), NewPosition(47.0001, 8.0001)
	b.ReportAllocs()
	for b.Loop() {
		p.Heading(q)
	}
}
