package coursefile

import (
	"fmt"
	"strings"
	"testing"

	"isoeffort.example/course"
)

// marked is a track of n points 0.01° of latitude apart, with waypoints at some of them.
func marked(n int, sites map[string]int) string {
	var b strings.Builder
	b.WriteString("<gpx>")
	for name, i := range sites {
		fmt.Fprintf(&b, "<wpt lat='%.2f' lon='0'><name>%s</name></wpt>\n", 50+0.01*float64(i), name)
	}
	b.WriteString("<trk><trkseg>")
	for i := range n {
		fmt.Fprintf(&b, "<trkpt lat='%.2f' lon='0'><ele>%d</ele></trkpt>\n", 50+0.01*float64(i), 10*i)
	}
	return b.String() + "</trkseg></trk></gpx>"
}

func stated(name string, distance float64) Landmark {
	return Landmark{Landmark: course.Landmark{Name: name, Distance: distance}}
}

// The waypoint stands at half of the profile, 50 m up; the race states it at 5300 of 10 000 m.
// So the ground at 5300 m is 50 m up, and that at 2650 m a quarter of the way: 25 m.
func TestStatedDistancesScalePiecewise(t *testing.T) {
	t.Parallel()
	o := Options{Length: 10_000, Smoothing: course.AsGiven, Landmarks: []Landmark{stated("mill", 5300), stated("Gate", 2650)}}
	c, err := ReadGPX(strings.NewReader(marked(11, map[string]int{"Mill": 5})), o)
	if err != nil {
		t.Fatal(err)
	}
	for _, tt := range []struct{ at, z float64 }{{2650, 25}, {5300, 50}, {7650, 75}, {10_000, 100}} {
		// Legs of equal latitude differ by 1e-6 of their length on the ellipsoid.
		if z := c.Elevation(tt.at); !near(z, tt.z, 1e-3) {
			t.Errorf("%g m up at %g m, want %g", z, tt.at, tt.z)
		}
	}
	for i, want := range []float64{2650, 5300} {
		if l := c.Landmarks()[i]; len(c.Landmarks()) != 2 || !near(l.Distance, want, 1e-6) {
			t.Errorf("%+v, want at %g m", l, want)
		}
	}
	if w := strings.Join(c.Warnings(), "\n"); !strings.Contains(w, "%") {
		t.Errorf("no percentage in %q", w)
	}
}

// A stated distance far from its waypoint does not bend the course.
func TestStatedDistanceThatDoesNotFit(t *testing.T) {
	t.Parallel()
	o := Options{Length: 10_000, Smoothing: course.AsGiven, Landmarks: []Landmark{stated("Mill", 9000)}}
	c, err := ReadGPX(strings.NewReader(marked(11, map[string]int{"Mill": 5})), o)
	if err != nil {
		t.Fatal(err)
	}
	if z, l := c.Elevation(5000), c.Landmarks()[0]; !near(z, 50, 1e-3) || !near(l.Distance, 9000, 1e-6) {
		t.Errorf("%g m up, %+v", z, l)
	}
	if w := strings.Join(c.Warnings(), "\n"); !strings.Contains(w, `stated distance of "Mill"`) {
		t.Errorf("%q", w)
	}
}
