package brief

import (
	"math"

	"isoeffort.example/course"
	"isoeffort.example/internal/page"
)

// sectionsOf is in how many sections a course of a length in metres is told: two for
// 10 km, five for a marathon, seven for 85 km and ten for 170 km. [Our own]
func sectionsOf(length float64) int {
	return min(max(int(math.Round(0.75*math.Sqrt(length/1000))), 1), 12)
}

// leastSection is the length of the least section, in those of equal ones. [Our own]
const leastSection = 0.35

// divide divides the course into sections.
func (t *teller) divide() {
	if t.laps > 1 {
		t.divideLaps()
		return
	}
	n := sectionsOf(t.length)
	from, fromName := 0.0, landmark(t.plan.Course, 0)
	for i := 1; i <= n; i++ {
		to, name := t.length, landmark(t.plan.Course, t.length)
		if i < n {
			to, name = t.boundary(float64(i)*t.length/float64(n), t.length/float64(n))
			if least := leastSection * t.length / float64(n); to-from < least || t.length-to < least {
				continue
			}
		}
		t.section(Section{From: from, To: to, FromName: fromName, ToName: name})
		from, fromName = to, name
	}
}

// boundary is where a section may end near a place: at a landmark, a station before
// others, or else at a whole number of the unit, and off the climbs.
func (t *teller) boundary(near, length float64) (float64, string) {
	best, name, least := math.NaN(), "", 0.4*length
	for _, l := range t.plan.Course.Landmarks() {
		off := math.Abs(l.Distance - near)
		if l.Kind == course.Station {
			off /= 2
		}
		if off < least && l.Name != "" {
			best, name, least = l.Distance, page.Plain(l.Name), off
		}
	}
	if name != "" {
		return best, name
	}
	unit := t.measure.unit()
	at := math.Round(near/unit) * unit
	for _, c := range t.climbs {
		if at <= c.Start || at >= c.Top {
			continue
		}
		if at = c.Start; near-c.Start > c.Top-near {
			at = c.Top
		}
	}
	return at, ""
}

// divideLaps makes a section of the first lap, of the last, and of what lies between.
func (t *teller) divideLaps() {
	lap := t.lap()
	t.section(Section{From: 0, To: lap, FirstLap: 1, LastLap: 1})
	if t.laps > 2 {
		t.section(Section{From: lap, To: t.length - lap, FirstLap: 2, LastLap: t.laps - 1})
	}
	t.section(Section{From: t.length - lap, To: t.length, FirstLap: t.laps, LastLap: t.laps})
}

func (t *teller) section(s Section) {
	s.Arrival = t.elapsed(s.To)
	s.Clock = t.clock(s.Arrival)
	t.sections = append(t.sections, s)
}

// sectionAt is the index of the section of a place; where two meet, the later.
func (t *teller) sectionAt(distance float64) int {
	for i := len(t.sections) - 1; i > 0; i-- {
		if distance >= t.sections[i].From {
			return i
		}
	}
	return 0
}
