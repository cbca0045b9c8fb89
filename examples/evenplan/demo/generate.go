//go:build ignore

// Generate writes course.gpx, the noisy recording of a course that does not exist: a
// loop around Orrowmay, an invented island in the open ocean.
//
//	go run generate.go
//
// The true course is built first: a profile of cosine ramps (profile), laid along a line
// whose heading is a sum of sines (heading) on the WGS84 ellipsoid. Then a recorder
// passes over it (record) that takes a point every 15 to 30 m, strays sideways and in
// height, stops once for 120 m and loses six heights. The seed is fixed, so the file comes
// out the same each time; a processor that fuses multiplication and addition may change a
// last digit.
package main

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"log"
	"math"
	"math/rand/v2"
	"os"
)

const (
	length = 86_400 // m, horizontal, as the profile's pieces add up to
	quay   = 6.0    // m, height of the start

	scatter     = 1.7    // m, SD sideways, independent from point to point, east and north
	stray       = 1.5    // m, SD sideways, correlated over strayScale, east and north
	strayScale  = 100.0  // m
	heightNoise = 0.8    // m, SD of heights, independent from point to point
	drift       = 2.0    // m, SD of heights, correlated over driftScale
	driftScale  = 1000.0 // m

	pauseAt = 47_300.0 // m from the start; the last point before it is the last of the first segment
	pause   = 120.0    // m without points
)

// withoutHeight lists the points, counted from 0, that lack <ele>.
var withoutHeight = map[int]bool{412: true, 1190: true, 1191: true, 2044: true, 2787: true, 3505: true}

// A piece of the profile rises by half a cosine wave: level at both ends, so that pieces
// join without a kink, and steepest in the middle, π/2 times its mean gradient.
type piece struct {
	length, rise float64 // m
	climb        string  // for the pieces of a climb: its name
}

// The climbs that make the story.
const (
	first  = "Tallowmast Brow"
	low    = "Pennyoar Bank"
	tall   = "Wickerlamp Height"
	hump   = "Pintlehook"
	long   = "Glimmerstow Edge"
	decoy  = "Snuffer's Knoll"
	hard   = "Emberlatch"
	middle = "Netmender's Gate"
	third  = "Oarsmith's Bench"
	late   = "Lampwright's Stair"
)

var profile = []piece{
	// The harbour town, then lanes with an orchard on either side.
	{3000, 3, ""},
	{1000, 24, ""},
	{800, -18, ""},
	{900, 22, ""},
	{700, -20, ""},
	{900, 23, ""},
	{1200, -13, ""},
	{1800, 122, first},
	{1400, -82, ""},
	{1100, 52, low},
	{1400, -58, ""},
	{700, 22, ""},
	{1000, -30, ""},
	// The two big climbs of the first half.
	{1500, 93, tall},
	{300, 5, tall},
	{1400, 92, tall},
	{1500, -84, ""},
	{1000, 70, hump},
	{1700, -106, ""},
	{600, 18, ""},
	{800, -22, ""},
	{2100, 126, long},
	{500, 6, long},
	{2400, 148, long},
	{1700, -98, ""},
	{600, 24, ""},
	{1700, -119, ""},
	// The decoy, a short breath, and the climb it is taken for.
	{1250, 66, decoy},
	{700, -36, ""},
	{1050, 84, hard},
	{250, 5, hard},
	{1100, 93, hard},
	// Eleven kilometres to make up time.
	{3700, -122, ""},
	{3100, -92, ""},
	{500, 6, ""},
	{3850, -124, ""},
	// The rolling middle, with two climbs in it.
	{440, 24, ""},
	{410, -22, ""},
	{330, 21, ""},
	{350, -25, ""},
	{600, 28, ""},
	{520, -24, ""},
	{360, 23, ""},
	{390, -25, ""},
	{1200, 68, middle},
	{200, 2, middle},
	{1200, 80, middle},
	{2200, -126, ""},
	{380, 22, ""},
	{420, -25, ""},
	{700, 28, ""},
	{640, -26, ""},
	{300, 19, ""},
	{310, -18, ""},
	{450, 25, ""},
	{400, -24, ""},
	{380, 23, ""},
	{420, -26, ""},
	{540, 27, ""},
	{560, -25, ""},
	{400, 24, ""},
	{450, -26, ""},
	{320, 20, ""},
	{330, -21, ""},
	{1800, 116, third},
	{2100, -124, ""},
	{430, 25, ""},
	{470, -26, ""},
	{330, 20, ""},
	{350, -22, ""},
	{650, 28, ""},
	{700, -27, ""},
	{390, 24, ""},
	{360, -22, ""},
	{480, 26, ""},
	{510, -25, ""},
	{340, 22, ""},
	{380, -24, ""},
	{640, 27, ""},
	{600, -26, ""},
	{570, 24, ""},
	{400, -22, ""},
	// The late climb, the run-in and the quays.
	{900, 62, late},
	{200, 3, late},
	{850, 57, late},
	{2100, -86, ""},
	{650, 18, ""},
	{2400, -104, ""},
	{400, 4, ""},
	{1000, -46, ""},
	{1100, -2, ""},
	{900, 1, ""},
}

// height returns the true height in metres at s metres from the start.
func height(s float64) float64 {
	z := quay
	for _, p := range profile {
		if s < p.length {
			return z + p.rise*(1-math.Cos(math.Pi*s/p.length))/2
		}
		z += p.rise
		s -= p.length
	}
	return z
}

// A wave of the heading; the line swings to either side by the angle turn.
type wave struct {
	length      float64 // m
	turn, phase float64 // rad
}

// winding shapes the line. The first two waves were sought by trial so that the loop
// comes back to some 300 m from where it began.
var winding = []wave{
	{length, 0.0329, 0},
	{length, -0.0882, math.Pi / 2},
	{length / 2.0, 0.35, 0.4},
	{length / 3.0, 0.45, 2.1},
	{length / 5.0, 0.30, 5.0},
	{7300, 0.40, 1.3},
	{3100, 0.35, 3.9},
	{1270, 0.25, 0.8},
}

// heading returns the direction of the line in radians clockwise from north: one full turn
// around the island, and the winding.
func heading(s float64) float64 {
	angle := 2*math.Pi*s/length - 0.3
	for _, w := range winding {
		angle += w.turn * math.Sin(2*math.Pi*s/w.length+w.phase)
	}
	return angle
}

// A spot is a place on the WGS84 ellipsoid in degrees.
type spot struct{ lat, lon float64 }

// start lies far from any land.
var start = spot{44.56, -31.36}

// moved returns the spot some metres to the east and north, by the ellipsoid's radii of
// curvature along the meridian, M = a(1−e²)/w³, and across it, N = a/w, with
// w² = 1 − e² sin²φ.
func (p spot) moved(east, north float64) spot {
	const a, f = 6378137.0, 1 / 298.257223563 // NIMA TR8350.2, third edition, table 3.1
	const e2 = f * (2 - f)
	sin, cos := math.Sincos(p.lat * math.Pi / 180)
	w := math.Sqrt(1 - e2*sin*sin)
	return spot{
		lat: p.lat + north/(a*(1-e2)/(w*w*w))*180/math.Pi,
		lon: p.lon + east/(a/w*cos)*180/math.Pi,
	}
}

// walk returns the spot at each whole metre of the course, from 0 to length.
func walk() []spot {
	line := make([]spot, length+1)
	line[0] = start
	for i := 1; i <= length; i++ {
		sin, cos := math.Sincos(heading(float64(i) - 0.5))
		line[i] = line[i-1].moved(sin, cos)
	}
	return line
}

// along returns the spot at s metres from the start.
func along(line []spot, s float64) spot {
	i := min(int(s), length-1)
	part := s - float64(i)
	p, q := line[i], line[i+1]
	return spot{lat: p.lat + part*(q.lat-p.lat), lon: p.lon + part*(q.lon-p.lon)}
}

// A wander is an error that lasts: a first-order autoregressive process whose correlation
// falls by e over scale metres.
type wander struct{ sd, scale, value float64 }

func newWander(sd, scale float64, rng *rand.Rand) *wander {
	return &wander{sd: sd, scale: scale, value: sd * rng.NormFloat64()}
}

// after returns the error at the next point, step metres on.
func (w *wander) after(step float64, rng *rand.Rand) float64 {
	keep := math.Exp(-step / w.scale)
	w.value = keep*w.value + w.sd*math.Sqrt(1-keep*keep)*rng.NormFloat64()
	return w.value
}

// A point as recorded.
type point struct {
	spot
	height float64 // m, NaN where it was lost
}

// record passes over the true line and returns the track's two segments.
func record(line []spot, rng *rand.Rand) [2][]point {
	east, north := newWander(stray, strayScale, rng), newWander(stray, strayScale, rng)
	up := newWander(drift, driftScale, rng)
	var track [2][]point
	segment, step := 0, 0.0
	for i, s := 0, 0.0; ; i++ {
		dx := east.after(step, rng) + scatter*rng.NormFloat64()
		dy := north.after(step, rng) + scatter*rng.NormFloat64()
		z := height(s) + up.after(step, rng) + heightNoise*rng.NormFloat64()
		if withoutHeight[i] {
			z = math.NaN()
		}
		track[segment] = append(track[segment], point{along(line, s).moved(dx, dy), z})
		if s == length {
			return track
		}
		before := s
		s = min(s+15+15*rng.Float64(), length)
		if before < pauseAt && s >= pauseAt {
			segment, s = 1, before+pause
		}
		step = s - before
	}
}

// A landmark becomes a waypoint beside the course.
type landmark struct {
	at               float64 // m from the start
	name, kind, note string
}

var landmarks = []landmark{
	{10_300, first, "top", "The first climb done; the whole bay lies below"},
	{11_500, "Pennyoar Green", "aid station", "Water, fruit"},
	{19_100, tall, "top", "A cairn with a lamp on it"},
	{21_600, hump, "aid station", "Water, fruit, broth, drop bags"},
	{29_700, long, "top", "The longest climb of the day"},
	{32_500, "Kelpwright's Yard", "aid station", "Water, fruit, salted potatoes"},
	{34_950, decoy, "top", "Looks like the big one and is not"},
	{38_050, hard, "top", "The highest place on the course"},
	{43_200, "Half-Lamp Stone", "place", "Half way"},
	{44_000, "Mossbell Barn", "aid station", "Water, bread, broth, a place to sit, drop bags"},
	{55_200, middle, "aid station", "Water, fruit, broth"},
	{66_200, third, "aid station", "Water, sweet tea, bread"},
	{75_700, "Wherryfold", "aid station", "Water, broth, last food before the finish"},
	{77_850, late, "top", "The last climb; downhill to the harbour"},
}

func writeWaypoints(out *bytes.Buffer, line []spot, rng *rand.Rand) {
	for _, l := range landmarks {
		sin, cos := math.Sincos(heading(l.at))
		aside := 20*rng.Float64() - 10
		p := along(line, l.at).moved(aside*cos, -aside*sin)
		fmt.Fprintf(out, "<wpt lat=\"%.6f\" lon=\"%.6f\"><name>%s</name><desc>%s</desc><type>%s</type></wpt>\n",
			p.lat, p.lon, escaped(l.name), escaped(l.note), l.kind)
	}
}

func writeTrack(out *bytes.Buffer, track [2][]point) {
	fmt.Fprint(out, "<trk><name>The Orrowmay Lantern Round</name>\n")
	for _, segment := range track {
		fmt.Fprint(out, "<trkseg>\n")
		for _, p := range segment {
			fmt.Fprintf(out, "<trkpt lat=\"%.6f\" lon=\"%.6f\">", p.lat, p.lon)
			if !math.IsNaN(p.height) {
				fmt.Fprintf(out, "<ele>%.1f</ele>", p.height)
			}
			fmt.Fprint(out, "</trkpt>\n")
		}
		fmt.Fprint(out, "</trkseg>\n")
	}
	fmt.Fprint(out, "</trk>\n")
}

func escaped(text string) string {
	var b bytes.Buffer
	if err := xml.EscapeText(&b, []byte(text)); err != nil {
		log.Fatal(err)
	}
	return b.String()
}

// printTruth reports what a reader of the file should find.
func printTruth() {
	at, z, ascent, descent := 0.0, quay, 0.0, 0.0
	foot, base := 0.0, quay
	for i, p := range profile {
		if p.climb != "" && profile[i-1].climb != p.climb {
			foot, base = at, z
		}
		at, z = at+p.length, z+p.rise
		ascent, descent = ascent+max(p.rise, 0), descent+max(-p.rise, 0)
		if p.climb != "" && profile[i+1].climb != p.climb {
			fmt.Printf("%-18s %5.2f to %5.2f km, %3.0f m up to %3.0f m\n", p.climb, foot/1000, at/1000, z-base, z)
		}
	}
	if at != length {
		log.Fatalf("the pieces of the profile add up to %g m, not %d m", at, length)
	}
	fmt.Printf("true length %d m, ascent %.0f m, descent %.0f m\n", length, ascent, descent)
}

func main() {
	log.SetFlags(0)
	printTruth()
	rng := rand.New(rand.NewPCG(864, 2050))
	line := walk()
	var out bytes.Buffer
	fmt.Fprint(&out, xml.Header+`<gpx version="1.1" creator="examples/evenplan/demo/generate.go" xmlns="http://www.topografix.com/GPX/1/1">
<metadata><name>The Orrowmay Lantern Round, an invented course</name></metadata>
`)
	writeWaypoints(&out, line, rng)
	writeTrack(&out, record(line, rng))
	fmt.Fprint(&out, "</gpx>\n")
	if err := os.WriteFile("course.gpx", out.Bytes(), 0o644); err != nil {
		log.Fatal(err)
	}
}
