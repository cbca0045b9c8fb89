package coursefile

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

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

// Landmarks within half a metre of an end stand at it and scale nothing; no list of
// distances makes marks that package course refuses.
func TestNoListMakesBadMarks(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		var text strings.Builder
		text.WriteString("<gpx>")
		var list []Landmark
		for i := range rapid.IntRange(1, 4).Draw(t, "landmarks") {
			name := fmt.Sprint("L", i/2)
			x := rapid.OneOf(rapid.Float64Range(0, 11_000), rapid.Float64Range(0, 2), rapid.Float64Range(11_119, 11_122)).Draw(t, "at")
			fmt.Fprintf(&text, "<wpt lat='%.9f' lon='0'><name>%s</name></wpt>", 50+x/111_200, name)
			list = append(list, stated(name, rapid.OneOf(rapid.Just(x), rapid.Float64Range(0, 11_000)).Draw(t, "stated")))
		}
		text.WriteString(strings.TrimPrefix(marked(11, nil), "<gpx>"))
		c, err := ReadGPX(strings.NewReader(text.String()), Options{Length: 11_122, Smoothing: course.AsGiven, Landmarks: list})
		if err != nil {
			t.Fatal(err)
		}
		for _, l := range list {
			if !slices.ContainsFunc(c.Landmarks(), func(m course.Landmark) bool { return m.Name == l.Name && near(m.Distance, l.Distance, 1e-6) }) {
				t.Fatalf("%+v not in %+v", l, c.Landmarks())
			}
		}
	})
}

// The course comes by the mill twice, at 2 and at 8 of 10 km. The stated distance says
// which is meant, and scales there.
func TestStatedDistanceTellsThePass(t *testing.T) {
	t.Parallel()
	var b strings.Builder
	b.WriteString("<gpx><wpt lat='50.02' lon='0'><name>Mill</name></wpt><trk><trkseg>")
	for i := range 11 {
		fmt.Fprintf(&b, "<trkpt lat='%.2f' lon='0'><ele>%d</ele></trkpt>", 50+0.01*float64(min(i, 10-i)), 10*i)
	}
	b.WriteString("</trkseg></trk></gpx>")
	for _, o := range []Options{{Length: 10_000}, {}} {
		o.Smoothing, o.Landmarks = course.AsGiven, []Landmark{stated("Mill", 8200)}
		c, err := ReadGPX(strings.NewReader(b.String()), o)
		if err != nil {
			t.Fatal(err)
		}
		// With a length the mill's 80 m come to stand at 8200 m; without, a metre is one of
		// the 11 122 m of the track, of which each 1112 m gain 10.
		want := 80.0
		if o.Length == 0 {
			want = 8200 / c.Length() * 100
		}
		if z := c.Elevation(8200); !near(z, want, 1e-2) || strings.Contains(fmt.Sprint(c.Warnings()), "more than once") {
			t.Errorf("%g m up, want %g; %q", z, want, c.Warnings())
		}
	}
}

// A landmark off the course is refused with the line of the list that it was read from.
func TestLandmarkOffTheCourseNamesItsLine(t *testing.T) {
	t.Parallel()
	list, err := ReadLandmarks(strings.NewReader("name,distance_m\nMill,5000\nFar,10001\n"), Options{File: "list.csv"})
	if err != nil {
		t.Fatal(err)
	}
	_, err = ReadGPX(strings.NewReader(marked(11, nil)), Options{File: "f", Length: 10_000, Landmarks: list})
	if err == nil || !errors.Is(err, course.ErrOffCourse) || err.Error() != `list.csv:3: landmark "Far" at 10001 m of 10000 m: place beyond the course` {
		t.Error(err)
	}
}
