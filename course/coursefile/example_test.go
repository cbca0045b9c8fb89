package coursefile_test

import (
	"fmt"
	"os"
	"strings"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/course/coursefile"
	"isoeffort.example/course/elevation"
)

// A file with two tracks over the same ground: the warning lists them, and one is chosen.
func ExampleRecording_Course() {
	r, err := coursefile.OpenRecording("../../testdata/gpx/odd/alternatives.gpx", coursefile.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	for i, t := range r.Tracks {
		fmt.Printf("%d %s %.0f m\n", i+1, t.Name, t.Length())
	}
	c, err := r.Course(coursefile.Options{Track: 2})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%s, %.0f m, %d warnings\n", c.Name(), c.Length(), len(c.Warnings()))
	// Output:
	// 1 Long Way 890 m
	// 2 Short Way 890 m
	// Short Way, 890 m, 0 warnings
}

// Landmarks of a race's own list stand at their distances on the measured course.
func ExampleReadLandmarks() {
	list, err := coursefile.ReadLandmarks(strings.NewReader(`name,distance_m,kind,cutoff,note
Upper Well,4000,station,1:30:00,water only
Knoll,6500,top,,
Old Mill,9000,station,11:15,
`), coursefile.Options{File: "landmarks.csv"})
	if err != nil {
		fmt.Println(err)
		return
	}
	c, err := coursefile.ReadCSV(strings.NewReader("distance_m,elevation_m\n0,200\n9700,500\n"),
		coursefile.Options{Length: 10_000, Landmarks: list})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range c.Sections() {
		fmt.Printf("%s to %s: %.0f m\n", s.From.Name, s.To.Name, s.To.Distance-s.From.Distance)
	}
	start := time.Date(2030, 6, 1, 8, 0, 0, 0, time.UTC)
	for _, l := range list {
		if !l.Cutoff.IsZero() {
			fmt.Printf("%s closes %v after the start\n", l.Name, l.Cutoff.After(start))
		}
	}
	// Output:
	// Start to Upper Well: 4000 m
	// Upper Well to Knoll: 2500 m
	// Knoll to Old Mill: 2500 m
	// Old Mill to Finish: 1000 m
	// Upper Well closes 1h30m0s after the start
	// Old Mill closes 3h15m0s after the start
}

// A list of stated distances scales a track piece by piece: the mill of the track is the
// mill of the list, and the ground before and behind it is scaled by itself.
func ExampleReadGPX_statedDistances() {
	list, err := coursefile.ReadLandmarks(strings.NewReader(`name,distance_m,kind
Mill,1200,station
Gate,1600,
`), coursefile.Options{File: "landmarks.csv"})
	if err != nil {
		fmt.Println(err)
		return
	}
	track := `<gpx><wpt lat="50.01" lon="-20"><name>Mill</name></wpt>
<trk><trkseg>
<trkpt lat="50.00" lon="-20"><ele>200</ele></trkpt>
<trkpt lat="50.01" lon="-20"><ele>230</ele></trkpt>
<trkpt lat="50.02" lon="-20"><ele>250</ele></trkpt>
</trkseg></trk></gpx>`
	c, err := coursefile.ReadGPX(strings.NewReader(track), coursefile.Options{
		Length: 2200, Landmarks: list, Smoothing: course.AsGiven,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, l := range c.Landmarks() {
		fmt.Printf("%s at %.0f m, %.0f m high\n", l.Name, l.Distance, c.Elevation(l.Distance))
	}
	for _, w := range c.Warnings() {
		fmt.Println(w)
	}
	// Output:
	// Mill at 1200 m, 230 m high
	// Gate at 1600 m, 238 m high
	// the profile was scaled by +7.9 % from 0.00 to 1.20 km to meet stated distances
	// the profile was scaled by -10.1 % from 1.20 to 2.20 km to meet stated distances
}

// A barometer has drifted by 12 m on the way. The heights of the landmarks are those of a
// map, and cleaning brings the recording to them.
func ExampleReadCSV_knownHeights() {
	list, err := coursefile.ReadLandmarks(strings.NewReader(`name,distance_m,elevation_m
Yard,0,300
Knoll,10000,300
`), coursefile.Options{File: "landmarks.csv"})
	if err != nil {
		fmt.Println(err)
		return
	}
	var profile strings.Builder
	fmt.Fprintln(&profile, "distance_m,elevation_m")
	for x := 0; x <= 10_000; x += 20 {
		fmt.Fprintf(&profile, "%d,%.2f\n", x, 300+12*float64(x)/10_000)
	}
	for _, known := range []bool{false, true} {
		c, err := coursefile.ReadCSV(strings.NewReader(profile.String()), coursefile.Options{
			Landmarks: list, Clean: &elevation.Options{}, ListedHeights: known,
		})
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%.0f m high at the end\n", c.Elevation(10_000))
	}
	// Output:
	// 312 m high at the end
	// 300 m high at the end
}

func ExampleWriteGPX() {
	r := &coursefile.Recording{
		Name: "Ridge Round",
		Tracks: []coursefile.Track{{Name: "Ridge", Segments: []coursefile.Segment{{Points: []coursefile.Point{
			{Lat: 50, Lon: -20, Elevation: 100},
			{Lat: 50.001, Lon: -20, Elevation: 110.5, Time: time.UnixMilli(1_900_000_000_125)},
		}}}}},
	}
	if err := coursefile.WriteGPX(os.Stdout, r); err != nil {
		fmt.Println(err)
	}
	// Output:
	// <?xml version="1.0" encoding="UTF-8"?>
	// <gpx version="1.1" creator="isoeffort" xmlns="http://www.topografix.com/GPX/1/1">
	// <metadata><name>Ridge Round</name></metadata>
	// <trk><name>Ridge</name>
	// <trkseg>
	// <trkpt lat="50" lon="-20"><ele>100</ele></trkpt>
	// <trkpt lat="50.001" lon="-20"><ele>110.5</ele><time>2030-03-17T17:46:40.125Z</time></trkpt>
	// </trkseg>
	// </trk>
	// </gpx>
}

func ExampleWriteCSV() {
	c, err := course.New([]float64{0, 50, 100}, []float64{100, 110, 105.5}, course.Options{Smoothing: course.AsGiven, Length: 200})
	if err != nil {
		fmt.Println(err)
		return
	}
	if err := coursefile.WriteCSV(os.Stdout, c); err != nil {
		fmt.Println(err)
	}
	// Output:
	// distance_m,elevation_m
	// 0,100
	// 100,110
	// 200,105.5
}
