package coursefile

import (
	"math"
	"slices"

	"isoeffort.example/course"
)

// maxLegs is how many legs of a course may be looked at for all waypoints together: some
// two seconds. On a course that leads on it is some hundreds for each.
const maxLegs = 10_000_000

// place turns waypoints into landmarks on the course and warns of those that it leaves
// out and of those whose pass it had to choose.
func (p *profile) place(sites []site, o Options) []course.Landmark {
	var seen []sighted
	var nameless, far, late []site
	budget := maxLegs
	for _, s := range sites {
		if s.landmark.Name == "" {
			nameless = append(nameless, s)
			continue
		}
		if len(seen) == MaxWaypoints || budget <= 0 {
			late = append(late, s)
			continue
		}
		ways, legs := passes(s.at, p.track, p.distance)
		budget -= legs
		if len(ways) == 0 {
			far = append(far, s)
			continue
		}
		seen = append(seen, sighted{s, ways})
	}
	p.warnOfLost(len(sites), nameless, far, late)
	return p.choosePasses(seen, o)
}

// A sighted waypoint is one by which the course comes.
type sighted struct {
	site
	ways []pass
}

// choosePasses places each waypoint at one of its passes, and remembers the elevations.
func (p *profile) choosePasses(seen []sighted, o Options) []course.Landmark {
	placed, sightings := make([]course.Landmark, len(seen)), make([]course.Sighting, len(seen))
	stated := p.stated(o)
	for i, s := range seen {
		placed[i], sightings[i] = s.landmark, course.Sighting{Passes: distances(s.ways), Stated: stated[nameKey(s.landmark.Name)]}
	}
	for i, distance := range course.ChoosePasses(sightings) {
		placed[i].Distance = distance
		s := seen[i]
		if math.IsNaN(s.elevation) {
			continue
		}
		at := slices.IndexFunc(s.ways, func(w pass) bool { return w.distance == distance })
		p.spots = append(p.spots, spot{placed[i], s.elevation, s.ways[at].offset, s.line})
	}
	p.warnOfChoices(placed, sightings)
	return placed
}

// stated returns the distances of the list by name, on the scale of the profile, which
// tell apart the passes of a waypoint. A name listed twice does not.
func (p *profile) stated(o Options) map[string]float64 {
	scale, length := 1.0, p.distance[len(p.distance)-1]
	if o.Length > 0 {
		scale = length / o.Length
	}
	at, times := map[string]float64{}, map[string]int{}
	for _, l := range o.Landmarks {
		key := nameKey(l.Name)
		at[key] = l.Distance * scale
		if times[key]++; times[key] > 1 {
			at[key] = 0 // not known
		}
	}
	return at
}

func (p *profile) warnOfLost(all int, nameless, far, late []site) {
	if len(nameless) > 0 {
		p.warn("%d of %s left out for want of a name%s", len(nameless), counted(all, "waypoint"), firstAt(nameless[0].line))
	}
	if len(far) > 0 {
		p.warn("%d of %s left out, being over %d m from the course, first %q%s",
			len(far), counted(all, "waypoint"), reach, far[0].landmark.Name, atLine(far[0].line))
	}
	if len(late) > 0 {
		p.warn("%d of %s left out, there being too many to place, first %q%s",
			len(late), counted(all, "waypoint"), late[0].landmark.Name, atLine(late[0].line))
	}
}

func (p *profile) warnOfChoices(placed []course.Landmark, sightings []course.Sighting) {
	several, first := 0, 0
	for i, s := range sightings {
		if len(s.Passes) > 1 && !(s.Stated > 0) {
			if several == 0 {
				first = i
			}
			several++
		}
	}
	if several > 0 {
		ways := sightings[first].Passes
		p.warn("%d of %s lie where the course comes by more than once, first %q by km %.1f and %.1f: placed by their order in the file, that one at km %.1f",
			several, counted(len(placed), "waypoint"), placed[first].Name, ways[0]/1000, ways[1]/1000, placed[first].Distance/1000)
	}
}

func distances(ways []pass) []float64 {
	along := make([]float64, len(ways))
	for i, w := range ways {
		along[i] = w.distance
	}
	return along
}
