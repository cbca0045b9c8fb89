package write

import (
	"errors"
	"fmt"
	"io"
	"math"
	"strings"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/course/coursefile"
	"isoeffort.example/internal/page"
	"isoeffort.example/internal/say"
	"isoeffort.example/plan"
	"isoeffort.example/plan/caution"
	"isoeffort.example/plan/forecast"
)

// ErrNoTrack is the error for a plan of a course that does not know where it is.
var ErrNoTrack = errors.New("write: the course has no track: its places are not known")

// trackSpacing is how far apart the points of a written track are, in metres, at most.
const trackSpacing = 50

// GPX prints a plan as a GPX 1.1 document: a waypoint for each split of a spacing and for
// each cutoff, named by its place and gun time, and the course as a track. Where the race has a start
// time, both carry the planned time of arrival, halts included.
//
// The error is ErrNoTrack, one of package coursefile's, or the writer's. GPX panics where
// plan.Splits does.
func GPX(w io.Writer, p *plan.Plan, every plan.Spacing) error {
	if !p.Course.HasTrack() {
		return ErrNoTrack
	}
	name := page.Plain(p.Course.Name())
	r := &coursefile.Recording{
		Name:        strings.TrimSpace(name + " even-effort plan"),
		Description: strings.TrimSpace(forecast.Warning(1, p.Budget) + " " + fmt.Sprintf("Finish %s gun time. %s", say.HMS(p.Gun), caution.English()[caution.First])),
	}
	t := sheet{plan: p, units: unitsOf(every)}
	r.Waypoints = t.stations(every)
	r.Tracks = []coursefile.Track{{Name: r.Name, Segments: []coursefile.Segment{{Points: trackOf(p)}}}}
	return coursefile.WriteGPX(w, r)
}

// stations are the waypoints.
func (t *sheet) stations(every plan.Spacing) (out []coursefile.Waypoint) {
	p := t.plan
	from := 0.0
	out = append(out, coursefile.Waypoint{Point: pointAt(p, 0, p.Race.StartDelay), Name: "Start " + say.HMS(p.Race.StartDelay)})
	for _, s := range p.Splits(every) {
		for _, extra := range t.extras(from, s.Distance) {
			out = append(out, t.waypoint(p.Between(from, extra.Distance), extra.Name))
			from = extra.Distance
		}
		w := t.waypoint(s, t.place(s))
		if s.Landmark != nil && s.Landmark.Kind == course.Station {
			w.Type = s.Landmark.Kind.String()
		}
		out = append(out, w)
		from = s.Distance
	}
	return out
}

func (t *sheet) waypoint(s plan.Split, place string) coursefile.Waypoint {
	at := t.units.At(s.Distance)
	if place == "" {
		place = at
	}
	text := []string{at, "gun time " + say.HMS(s.Elapsed)}
	for _, m := range t.plan.Cutoffs {
		if m.Distance == s.Distance {
			text = append(text, "cutoff "+say.HMS(m.Limit)+risk(m))
		}
	}
	for _, stop := range t.plan.Stops {
		if stop.Distance == s.Distance {
			text = append(text, "stop "+say.Short(stop.Duration))
		}
	}
	return coursefile.Waypoint{
		Point: pointAt(t.plan, s.Distance, s.Elapsed), Name: page.Clip(place, 40) + " " + say.HMS(s.Elapsed),
		Description: strings.Join(text, ", "),
	}
}

// risk says how a plan stands to a cutoff, where that is not well.
func risk(m plan.Margin) string {
	switch {
	case m.InHand < 0:
		return ", missed by " + spare(m.InHand)
	case m.AtRisk:
		return ", at risk: " + spare(m.InHand) + " in hand"
	}
	return ""
}

// pointAt is a place of the course, with the time so long after the gun if there is a
// start.
func pointAt(p *plan.Plan, distance float64, elapsed time.Duration) coursefile.Point {
	at, _ := p.Course.Position(distance)
	point := coursefile.Point{Lat: rounded(at.Lat(), 1e7), Lon: rounded(at.Lon(), 1e7), Elevation: rounded(p.Course.Elevation(distance), 10)}
	if !p.Race.Start.IsZero() {
		point.Time = p.Race.Start.Add(elapsed).UTC().Round(time.Second)
	}
	return point
}

// rounded keeps so many parts of one: a centimetre of place, a decimetre of height.
func rounded(v, parts float64) float64 { return math.Round(v*parts) / parts }

// trackOf is the course as points, evenly spaced.
func trackOf(p *plan.Plan) []coursefile.Point {
	length := p.Course.Length()
	n := int(math.Ceil(length / trackSpacing))
	points := []coursefile.Point{pointAt(p, 0, p.Race.StartDelay)}
	for i := 1; i <= n; i++ {
		d := length * float64(i) / float64(n)
		points = append(points, pointAt(p, d, p.Elapsed(d)))
	}
	return points
}
