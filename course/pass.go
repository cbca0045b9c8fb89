package course

import (
	"math"
	"sort"
)

// A Sighting is a landmark by which a course comes once or more often: on an out and
// back, on laps. Which pass is meant is to be told.
type Sighting struct {
	Passes []float64 // m from the start, ascending
	Stated float64   // m from the start, where the landmark is said to stand; 0 if that is not known
}

// ChoosePasses picks the pass that is meant for each of several landmarks, given in the
// order in which the course comes by them. A landmark with a stated distance gets the pass
// nearest to it, of two equally near ones the first. For the others, passes are chosen such
// that as many landmarks as possible ascend strictly in their order, those stated
// included; among such choices as early as can be. One outside that order gets
// its first pass. One without passes gets what is stated, or NaN.
func ChoosePasses(landmarks []Sighting) []float64 {
	chosen := make([]float64, len(landmarks))
	var links []link
	var ends []int // by length, the link at which a chain of that length ends earliest
	for i, l := range landmarks {
		ways := l.ways()
		chosen[i] = math.NaN()
		if len(ways) > 0 {
			chosen[i] = ways[0]
		}
		for k := len(ways) - 1; k >= 0; k-- { // so that no chain takes two of one landmark
			n := sort.Search(len(ends), func(j int) bool { return links[ends[j]].distance >= ways[k] })
			before := -1
			if n > 0 {
				before = ends[n-1]
			}
			if n == len(ends) {
				ends = append(ends, 0)
			}
			ends[n] = len(links)
			links = append(links, link{ways[k], i, before})
		}
	}
	if len(ends) == 0 {
		return chosen
	}
	for k := ends[len(ends)-1]; k >= 0; k = links[k].before {
		chosen[links[k].landmark] = links[k].distance
	}
	return chosen
}

// ways returns the passes that may be meant.
func (l Sighting) ways() []float64 {
	if !(l.Stated > 0) {
		return l.Passes
	}
	nearest := l.Stated
	for i, pass := range l.Passes {
		if i == 0 || math.Abs(pass-l.Stated) < math.Abs(nearest-l.Stated) {
			nearest = pass
		}
	}
	return []float64{nearest}
}

// A link is a pass at the end of an ascending chain of them.
type link struct {
	distance float64
	landmark int
	before   int // the link before it, -1 for none
}
