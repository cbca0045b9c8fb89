package coursefile

import (
	"bytes"
	"math"
	"os"
	"strings"
	"testing"

	"github.com/pymaxion/geographiclib-go/geodesic"
	"github.com/tkrajina/gpxgo/gpx"

	"isoeffort.example/course"
)

// checkDirections holds what the direction of every course that was read must hold; it
// is called by checkCourse.
func checkDirections(t *testing.T, c *course.Course) {
	t.Helper()
	for i := range 8 {
		from, to := c.Length()*float64(i)/8, c.Length()*float64(i+1)/8
		east, north, ok := c.Direction(from, to)
		if length := math.Hypot(east, north); ok != (c.HasTrack() && from < to) || !(length <= 1+1e-15) {
			t.Fatalf("%g to %g m: direction %g, %g, %v", from, to, east, north, ok)
		}
		if h := c.Heading(from, to); !math.IsNaN(h) && !(ok && h >= 0 && h < 360) {
			t.Fatalf("%g to %g m: heading %g", from, to, h)
		}
	}
}

func TestHeadingsOfOddFiles(t *testing.T) {
	t.Parallel()
	nan := math.NaN()
	for _, tt := range []struct {
		file           string
		from, to, want float64
	}{
		{"out-and-back", 0, 2224, 0},
		{"out-and-back", 2225, 4449, 180},
		{"out-and-back", 0, 1e9, nan},
		{"date-line", 0, 14_000, 90},
	} {
		c, err := Open(testdata+"gpx/odd/"+tt.file+".gpx", Options{Smoothing: course.AsGiven})
		if err != nil {
			t.Error(err)
			continue
		}
		got := c.Heading(tt.from, tt.to)
		if off := math.Remainder(got-tt.want, 360); !(math.Abs(off) <= 1e-6) && !(math.IsNaN(got) && math.IsNaN(tt.want)) {
			t.Errorf("%s, %g to %g m: heading %g, want %g", tt.file, tt.from, tt.to, got, tt.want)
		}
	}
}

// placesOf reads the points of a file by gpxgo alone, those at the place of the one
// before left out.
func placesOf(t *testing.T, name string) (places []gpx.GPXPoint) {
	t.Helper()
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	document, err := gpx.ParseBytes(text)
	if err != nil {
		t.Fatal(err)
	}
	var all []gpx.GPXPoint
	for _, track := range document.Tracks {
		for _, s := range track.Segments {
			all = append(all, s.Points...)
		}
	}
	for _, r := range document.Routes {
		all = append(all, r.Points...)
	}
	for _, p := range all {
		if n := len(places); n == 0 || p.Latitude != places[n-1].Latitude || p.Longitude != places[n-1].Longitude {
			places = append(places, p)
		}
	}
	return places
}

// The direction over 40 legs of a real file times their length is the straight line
// from the first to the last point, which GeographicLib measures. Meridians converge:
// over L metres of ground, north turns by up to L/R tan φ, which displaces the end by up
// to L times that; to third order the curved ground adds L³/R².
func TestDirectionsOfRealFiles(t *testing.T) {
	t.Parallel()
	for _, file := range []string{"hilly-72km.gpx", "long-route-166km.gpx"} {
		places := placesOf(t, testdata+"gpx/"+file)
		c, err := Open(testdata+"gpx/"+file, Options{Smoothing: course.AsGiven})
		if err != nil || c.Len() != len(places) {
			t.Fatalf("%s: %d places, %v", file, len(places), err)
		}
		worst := 0.0
		for i := 40; i < len(places); i += 40 {
			a, b := places[i-40], places[i]
			line := geodesic.WGS84.Inverse(a.Latitude, a.Longitude, b.Latitude, b.Longitude)
			sin, cos := math.Sincos(line.Azi1 * math.Pi / 180)
			from, _ := c.Point(i - 40)
			to, _ := c.Point(i)
			ground, radius := to-from, 6.356e6
			allowed := ground*ground/radius*math.Tan(a.Latitude*math.Pi/180) + ground*ground*ground/radius/radius + 1e-6
			east, north, ok := c.Direction(from, to)
			off := math.Hypot(east*ground-line.S12*sin, north*ground-line.S12*cos)
			worst = max(worst, off/ground)
			if !ok || !(off <= allowed) {
				t.Errorf("%s, %.0f to %.0f m: off by %.3f m, allowed %.3f m", file, from, to, off, allowed)
			}
		}
		t.Logf("%s: worst error %.2g of the ground", file, worst)
	}
}

// On the grid the direction over a kilometre stays that of the track as given.
func TestSmoothingKeepsDirections(t *testing.T) {
	t.Parallel()
	name := testdata + "gpx/hilly-72km.gpx"
	given, err := Open(name, Options{Smoothing: course.AsGiven})
	if err != nil {
		t.Fatal(err)
	}
	smoothed, err := Open(name, Options{})
	if err != nil {
		t.Fatal(err)
	}
	for from := 0.0; from+1000 < given.Length(); from += 1000 {
		e1, n1, _ := given.Direction(from, from+1000)
		e2, n2, _ := smoothed.Direction(from, from+1000)
		// Inside a piece of the grid a place along it may be out by half of it at most,
		// at either end.
		if off := math.Hypot(e1-e2, n1-n2); off > 2*course.DefaultGrid/2.0/1000 {
			t.Errorf("from %g m: %.4f, %.4f on the grid, %.4f, %.4f as given", from, e2, n2, e1, n1)
		}
	}
}

func TestCSVHasNoDirection(t *testing.T) {
	t.Parallel()
	c, err := ReadCSV(strings.NewReader("distance_m,elevation_m\n0,100\n1000,120\n"), Options{})
	if err != nil {
		t.Fatal(err)
	}
	if _, _, ok := c.Direction(0, 1000); ok || c.HasTrack() || !math.IsNaN(c.Heading(0, 1000)) {
		t.Error("a course without positions knows a direction")
	}
}

func TestLengthKeepsDirections(t *testing.T) {
	t.Parallel()
	text := generated(3000)
	given, err := ReadGPX(bytes.NewReader(text), Options{Smoothing: course.AsGiven})
	if err != nil {
		t.Fatal(err)
	}
	scaled, err := ReadGPX(bytes.NewReader(text), Options{Smoothing: course.AsGiven, Length: 2 * given.Length()})
	if err != nil {
		t.Fatal(err)
	}
	for from := 0.0; from < given.Length(); from += 500 {
		e1, n1, _ := given.Direction(from, from+500)
		e2, n2, _ := scaled.Direction(2*from, 2*(from+500))
		if !(math.Hypot(e1-e2, n1-n2) <= 1e-9) {
			t.Errorf("from %g m: %g, %g, at twice the length %g, %g", from, e1, n1, e2, n2)
		}
	}
}
