package write_test

import (
	"bytes"
	"errors"
	"math"
	"strings"
	"testing"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/course/coursefile"
	"isoeffort.example/plan"
	"isoeffort.example/plan/write"
)

// winding is an invented course of 20 km that knows where it is.
func winding(t testing.TB, landmarks ...course.Landmark) *course.Course {
	t.Helper()
	var x, z []float64
	var track []course.Position
	lat, lon := 47.0, 8.0
	for d := 0.0; d <= 20_000; d += 20 {
		x, z = append(x, d), append(z, 500+100*math.Sin(d/1500))
		track = append(track, course.NewPosition(lat, lon))
		heading := 2 * math.Sin(d/3000)
		lat += 20 * math.Cos(heading) / 111_200
		lon += 20 * math.Sin(heading) / 75_900
	}
	c, err := course.New(x, z, course.Options{Name: "Winding <Way> & Back", Track: track, Landmarks: landmarks})
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// A written plan reads back as GPX with every place, in order, at its planned time, on the
// course.
func TestGPX(t *testing.T) {
	t.Parallel()
	c := winding(t, course.Landmark{Name: "Hut", Distance: 8000, Kind: course.Station}, course.Landmark{Name: "Bridge", Distance: 14_000})
	p := planned(t, c, 13, plan.Race{
		Start: time.Date(2026, 6, 14, 5, 30, 0, 0, time.FixedZone("", 7200)), StartDelay: time.Minute,
		Stops: []plan.Stop{{Distance: 8000, Duration: 5 * time.Minute}}, Cutoffs: []plan.Cutoff{{Name: "Gate", Distance: 11_000, Time: 3 * time.Hour}},
	})
	var out bytes.Buffer
	if err := write.GPX(&out, p, plan.AtLandmarks); err != nil {
		t.Fatal(err)
	}
	r, err := coursefile.ReadRecording(&out, coursefile.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if len(r.Waypoints) != 5 || len(r.Tracks) != 1 {
		t.Fatalf("%d waypoints, %d tracks", len(r.Waypoints), len(r.Tracks))
	}
	for i, want := range []struct {
		name, text string
		distance   float64
	}{{"Hut", "stop 5:00", 8000}, {"Gate", "cutoff 3:00:00", 11_000}, {"Bridge", "14.0 km", 14_000}, {"Finish", "20.0 km", 20_000}} {
		w := r.Waypoints[i+1] // after the start
		at, _ := c.Position(want.distance)
		if !strings.HasPrefix(w.Name, want.name) || !strings.Contains(w.Description, want.text) {
			t.Errorf("waypoint %q: %q", w.Name, w.Description)
		}
		if off := at.Distance(course.NewPosition(w.Lat, w.Lon)); off > 0.02 {
			t.Errorf("%s is %g m off", w.Name, off)
		}
		if want := p.Race.Start.Add(p.Elapsed(want.distance)).Round(time.Second); !w.Time.Equal(want) {
			t.Errorf("%s at %v, planned %v", w.Name, w.Time, want)
		}
	}
	points := r.Tracks[0].Segments[0].Points
	for i := 1; i < len(points); i++ {
		if !points[i].Time.After(points[i-1].Time) {
			t.Fatalf("point %d at %v after %v", i, points[i].Time, points[i-1].Time)
		}
	}
	if last := points[len(points)-1].Time; !last.Equal(p.Race.Start.Add(p.Gun).Round(time.Second)) {
		t.Errorf("the track ends at %v", last)
	}
	again, err := r.Course(coursefile.Options{})
	if err != nil || math.Abs(again.Length()-20_000) > 60 {
		t.Errorf("read again it is %.0f m long: %v", again.Length(), err)
	}
}

func TestGPXWithoutTrackOrTime(t *testing.T) {
	t.Parallel()
	var out bytes.Buffer
	if err := write.GPX(&out, planned(t, lamps(t, 10_000, 1, "Lamp"), 12, plan.Race{}), plan.AtLandmarks); !errors.Is(err, write.ErrNoTrack) || out.Len() > 0 {
		t.Errorf("no track: %v", err)
	}
	if err := write.GPX(&out, planned(t, winding(t), 12, plan.Race{}), 5000); err != nil || strings.Contains(out.String(), "<time>") {
		t.Errorf("no start: %v", err)
	}
}
