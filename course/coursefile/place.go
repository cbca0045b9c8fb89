package coursefile

import (
	"slices"
	"sort"

	"isoeffort.example/course"
)

// place turns waypoints into landmarks on the course and warns of those that it leaves
// out and of those whose pass it had to choose.
func (p *profile) place(sites []site, at []course.Position) []course.Landmark {
	var placed []course.Landmark
	var choices [][]pass
	var nameless, far []site
	for _, s := range sites {
		if s.landmark.Name == "" {
			nameless = append(nameless, s)
			continue
		}
		ways := passes(s.at, at, p.distance)
		if len(ways) == 0 {
			far = append(far, s)
			continue
		}
		placed, choices = append(placed, s.landmark), append(choices, ways)
	}
	for i, distance := range choose(choices) {
		placed[i].Distance = distance
	}
	if len(nameless) > 0 {
		p.warn("%d of %s left out for want of a name, first at line %d", len(nameless), counted(len(sites), "waypoint"), nameless[0].line)
	}
	if len(far) > 0 {
		p.warn("%d of %s left out, being over %d m from the course, first %q at line %d",
			len(far), counted(len(sites), "waypoint"), reach, far[0].landmark.Name, far[0].line)
	}
	p.warnOfChoices(placed, choices)
	return placed
}

func (p *profile) warnOfChoices(placed []course.Landmark, choices [][]pass) {
	several, first := 0, 0
	for i := range choices {
		if len(choices[i]) > 1 {
			if several == 0 {
				first = i
			}
			several++
		}
	}
	if several > 0 {
		p.warn("%d of %s lie where the course comes by more than once, first %q by km %.1f and %.1f: placed by their order in the file, that one at km %.1f",
			several, counted(len(choices), "waypoint"), placed[first].Name, choices[first][0].distance/1000, choices[first][1].distance/1000, placed[first].Distance/1000)
	}
}

// choose picks one pass for each waypoint, such that as many waypoints as possible
// ascend strictly in their order; among such choices the passes are as early as can be.
// A waypoint outside that order gets its first pass.
//
// It is the longest ascending subsequence by patience sorting, each waypoint standing
// for all of its passes.
func choose(choices [][]pass) []float64 {
	var links []link
	var ends []int // by length, the link at which a chain of that length ends earliest
	chosen := make([]float64, len(choices))
	for w, ways := range choices {
		chosen[w] = ways[0].distance
		for _, way := range slices.Backward(ways) { // so that no chain takes two of one waypoint
			n := sort.Search(len(ends), func(k int) bool { return links[ends[k]].distance >= way.distance })
			before := -1
			if n > 0 {
				before = ends[n-1]
			}
			if n == len(ends) {
				ends = append(ends, 0)
			}
			ends[n] = len(links)
			links = append(links, link{way.distance, w, before})
		}
	}
	if len(ends) == 0 {
		return chosen
	}
	for k := ends[len(ends)-1]; k >= 0; k = links[k].before {
		chosen[links[k].waypoint] = links[k].distance
	}
	return chosen
}

// A link is a pass at the end of an ascending chain of them.
type link struct {
	distance float64
	waypoint int
	before   int // the link before it, -1 for none
}
