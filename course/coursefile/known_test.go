package coursefile

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"isoeffort.example/course"
	heights "isoeffort.example/course/elevation"
)

// drifting is a track of 20 km over waves of 40 m, seen by a barometer that has wandered
// by 30 m at the end, with waypoints that know the ground: on it at both ends and in the
// middle, and one 200 m beside it that is 80 m too high.
func drifting() string {
	r := rand.New(rand.NewPCG(3, 4))
	var b strings.Builder
	b.WriteString("<gpx>\n")
	for _, w := range []struct {
		name string
		i    int
		east float64 // degrees, of 72 km here
		up   float64 // m
	}{{"Gate", 0, 0, 0}, {"Mill", 1000, 0, 0}, {"Yard", 2000, 0, 0}, {"Tower", 500, 0.0028, 80}} {
		fmt.Fprintf(&b, "<wpt lat='%.6f' lon='%.4f'><ele>%.2f</ele><name>%s</name></wpt>\n", driftLat(w.i), w.east, waves(w.i)+w.up, w.name)
	}
	b.WriteString("<trk><trkseg>\n")
	for i := range 2001 {
		fmt.Fprintf(&b, "<trkpt lat='%.6f' lon='0'><ele>%.2f</ele></trkpt>\n", driftLat(i), waves(i)+30*float64(i)/2000+0.5*r.NormFloat64())
	}
	return b.String() + "</trkseg></trk></gpx>\n"
}

func driftLat(i int) float64  { return 50 + 9e-5*float64(i) } // 10 m
func waves(point int) float64 { return 500 + 20*math.Sin(2*math.Pi*float64(point)/200) }

func TestKnownHeightsRemoveADrift(t *testing.T) {
	t.Parallel()
	list := func(text string) []Landmark {
		l, err := ReadLandmarks(strings.NewReader("name,distance_m,elevation_m\n"+text), Options{})
		if err != nil {
			t.Fatal(err)
		}
		return l
	}
	atEnd := list(fmt.Sprintf("A,0,%g\nB,20000,%g\nC,10000,\n", waves(0), waves(2000)))
	for _, tt := range []struct {
		name  string
		o     Options
		drift float64 // m, left at the end
		warns string
	}{
		{"none", Options{}, 30, ""},
		{"waypoints", Options{WaypointHeights: true}, 0, `1 waypoint elevation more than 25 m beside the course, first "Tower" at line 5: not used to clean`},
		{"not asked for", Options{Landmarks: atEnd}, 30, ""},
		{"list", Options{Landmarks: atEnd, ListedHeights: true}, 0, "drift removed"},
		{"the list before the waypoint", Options{
			Landmarks: list(fmt.Sprintf("yard,20000,%g\n", waves(2000)+10)), ListedHeights: true, WaypointHeights: true,
		}, 10, "drift removed"},
	} {
		tt.o.Length, tt.o.Clean = 20_000, &heights.Options{}
		c, err := ReadGPX(strings.NewReader(drifting()), tt.o)
		if err != nil {
			t.Fatal(err)
		}
		// A known height has an SD of 1 m and is drawn by its neighbours, a smoothed one
		// of this noise one of 0.2 m; 10 km on, a barometer's walk is good for 8 m.
		if left := c.Elevation(20_000) - waves(2000); !near(left, tt.drift, 3) {
			t.Errorf("%s: %+.1f m at the end, want %+.1f", tt.name, left, tt.drift)
		}
		if w := strings.Join(c.Warnings(), "\n"); !strings.Contains(w, tt.warns) {
			t.Errorf("%s: no %q in\n%s", tt.name, tt.warns, w)
		}
	}
	if c, err := ReadGPX(strings.NewReader(drifting()), Options{WaypointHeights: true}); err != nil || !strings.Contains(strings.Join(c.Warnings(), "\n"), "only cleaning does") {
		t.Errorf("%v", err)
	}
}

// Options are not changed by reading.
func TestKnownHeightsLeaveTheOptionsAlone(t *testing.T) {
	t.Parallel()
	o := Options{Clean: &heights.Options{Known: make([]heights.Height, 0, 9)}, WaypointHeights: true}
	if _, err := ReadGPX(strings.NewReader(drifting()), o); err != nil {
		t.Fatal(err)
	}
	if k := o.Clean.Known; len(k) != 0 || k[:1][0] != (heights.Height{}) {
		t.Errorf("%v", k[:1])
	}
}

// What is missing is given to the cleaner as missing, at distances scaled piece by piece:
// the course is what the cleaner makes of the heights that are there.
func TestMissingHeightsAreCleanedAsMissing(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(5, 6))
	var b strings.Builder
	b.WriteString("<gpx><wpt lat='50.045' lon='0'><name>Mill</name></wpt><trk><trkseg>\n")
	var at []course.Position
	var z []float64
	for i := range 1001 {
		h := math.Round(100*(waves(i)+0.8*r.NormFloat64())) / 100
		ele := fmt.Sprintf("<ele>%.2f</ele>", h)
		if i < 3 || i > 480 && i < 530 || i == 700 || i > 997 {
			h, ele = math.NaN(), ""
		}
		fmt.Fprintf(&b, "<trkpt lat='%.6f' lon='0'>%s</trkpt>\n", driftLat(i), ele)
		at, z = append(at, course.NewPosition(driftLat(i), 0)), append(z, h)
	}
	b.WriteString("</trkseg></trk></gpx>")
	c, err := ReadGPX(strings.NewReader(b.String()), Options{
		Length: 10_000, Landmarks: []Landmark{stated("Mill", 5200)}, Clean: &heights.Options{},
	})
	if err != nil {
		t.Fatal(err)
	}
	x := measured(at)
	half, whole := x[500], x[1000]
	for i := range x {
		if x[i] <= half {
			x[i] *= 5200 / half
		} else {
			x[i] = 5200 + (x[i]-half)*4800/(whole-half)
		}
	}
	x[1000] = 10_000
	want, err := heights.Clean(x, z, heights.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if c.Len() != len(want.Distance) {
		t.Fatalf("%d points, want %d", c.Len(), len(want.Distance))
	}
	for i := range want.Distance {
		// The waypoint stands at a point to within the flat triangle's rounding, some µm.
		if _, z := c.Point(i); !near(z, want.Elevation[i], 1e-3) {
			t.Fatalf("%.4f m up at %g m, want %.4f", z, want.Distance[i], want.Elevation[i])
		}
	}
	w := strings.Join(c.Warnings(), "\n")
	if !strings.Contains(w, "elevation missing at 56 of 1001 points, first at line 2: filled by the cleaning of the heights") || !strings.Contains(w, "no heights, now filled") {
		t.Error(w)
	}
}
