package coursefile

import (
	"math"
	"sort"

	"isoeffort.example/course"
)

// Bounds of what a stated distance may say of a waypoint's place. [Our own]
const (
	leastStretch = 0.8 // of a piece between neighbouring marks, over that of the whole course
	mostStretch  = 1.25
)

// endSlack is how near to an end of the course a landmark stands at it, as package course
// has it.
const endSlack = 0.5 // m

// knots map distances on the profile to those of the race, both ascending.
type knots struct{ profile, race []float64 }

// forward returns the race distance of one on the profile; beyond the ends the outer
// pieces go on.
func (k knots) forward(profile float64) float64 { return knots{k.race, k.profile}.back(profile) }

// back returns the distance on the profile of a race distance; beyond the ends the outer
// pieces go on.
func (k knots) back(race float64) float64 {
	i := sort.SearchFloat64s(k.race, race)
	i = min(max(i, 1), len(k.race)-1)
	share := (race - k.race[i-1]) / (k.race[i] - k.race[i-1])
	return k.profile[i-1] + share*(k.profile[i]-k.profile[i-1])
}

// marks pairs the landmarks of the list with the waypoints of their names, in the order
// of the race, and returns those that can be marks and the knots between them. It takes
// part only in scaling to Length. One that would stretch a piece out of proportion is
// left out with a warning.
func (p *profile) marks(placed []course.Landmark, o Options) ([]course.Mark, knots) {
	first, last := p.distance[0], p.distance[len(p.distance)-1]
	k := knots{[]float64{first}, []float64{0}}
	if !(o.Length > 0) || !(last > first) {
		return nil, knots{[]float64{first, first + 1}, []float64{0, 1}}
	}
	sites, listed := byName(placed), map[string]int{}
	for _, l := range o.Landmarks {
		listed[nameKey(l.Name)]++
	}
	var marks []course.Mark
	for _, l := range byDistance(o.Landmarks) {
		at := sites[nameKey(l.Name)]
		if len(at) != 1 || listed[nameKey(l.Name)] > 1 || at[0] <= first+endSlack || at[0] >= last-endSlack || !(l.Distance > 0 && l.Distance < o.Length) {
			continue
		}
		if n := len(k.race) - 1; !fits(at[0]-k.profile[n], l.Distance-k.race[n], (last-first)/o.Length) ||
			!fits(last-at[0], o.Length-l.Distance, (last-first)/o.Length) {
			p.warn("the stated distance of %q, %.1f km, does not fit its waypoint at km %.1f: its place was not used to scale",
				l.Name, l.Distance/1000, (at[0]-first)/1000)
			continue
		}
		marks = append(marks, course.Mark{Profile: at[0] - first, Race: l.Distance})
		k.profile, k.race = append(k.profile, at[0]), append(k.race, l.Distance)
	}
	k.profile, k.race = append(k.profile, last), append(k.race, o.Length)
	return marks, k
}

// fits reports whether a piece of the profile may be so long in the race, scale being the
// whole profile's length over the race's.
func fits(profile, race, scale float64) bool {
	stretch := race * scale / profile
	return profile > 0 && stretch >= leastStretch && stretch <= mostStretch && !math.IsInf(stretch, 0)
}

// byName returns the distances of the landmarks of each name.
func byName(placed []course.Landmark) map[string][]float64 {
	sites := map[string][]float64{}
	for _, l := range placed {
		sites[nameKey(l.Name)] = append(sites[nameKey(l.Name)], l.Distance)
	}
	return sites
}

func byDistance(list []Landmark) []Landmark {
	list = append([]Landmark(nil), list...)
	sort.SliceStable(list, func(i, j int) bool { return list[i].Distance < list[j].Distance })
	return list
}
