package chart

import (
	"math"
	"strconv"
	"strings"

	"isoeffort.example/course"
	"isoeffort.example/plan"
)

// A profileFoot is what stands at the foot of a profile.
type profileFoot struct {
	notes          string // the number of times that heights are too tall is filled in
	keys           []key
	splits, climbs table
}

// leftOut sets the notes, with how many labels and numbers found no room.
func (f *profileFoot) leftOut(p *page, labels, places, numbers, climbs int) {
	list := []string{p.w.Caution, p.w.Steeper}
	if labels > 0 {
		list = append(list, fill(p.w.LeftOut, "n", strconv.Itoa(labels), "all", strconv.Itoa(places)))
	}
	if numbers > 0 {
		list = append(list, fill(p.w.Smaller, "n", strconv.Itoa(numbers), "all", strconv.Itoa(climbs)))
	}
	p.warnings = append(p.warnings, list[2:]...)
	f.notes = strings.Join(list, " ")
}

// write writes it.
func (f *profileFoot) write(p *page, times float64) {
	p.notes(fill(f.notes, "times", p.u.number(times, decimalsOf(times))))
	p.legend(f.keys)
	p.table(f.splits)
	p.table(f.climbs)
}

// height returns the room that it takes.
func (f *profileFoot) height(p *page) float64 {
	probe := *p
	probe.Figure, probe.bottom = &Figure{}, 0
	f.write(&probe, 12.5)
	return probe.bottom
}

// decimalsOf returns how many decimals a number needs, two at most.
func decimalsOf(x float64) int {
	switch {
	case x == math.Round(x):
		return 0
	case x*10 == math.Round(x*10):
		return 1
	}
	return 2
}

func (p *page) profileKeys(pl *plan.Plan) []key {
	keys := []key{{runSymbol, p.w.Run}}
	if pl.WalkingShare > 0 {
		keys = append(keys, key{walkSymbol, p.w.Walk})
	}
	if len(pl.Climbs) > 0 {
		keys = append(keys, key{climbSymbol, p.w.Climbs})
	}
	have := map[course.Kind]bool{}
	for _, l := range pl.Course.Landmarks() {
		have[l.Kind] = true
	}
	for _, k := range []struct {
		kind course.Kind
		key  key
	}{{course.Station, key{stationSymbol, p.w.Station}}, {course.Top, key{topSymbol, p.w.Top}}, {course.Place, key{placeSymbol, p.w.Landmark}}} {
		if have[k.kind] {
			keys = append(keys, k.key)
		}
	}
	if len(pl.Cutoffs) > 0 {
		keys = append(keys, key{cutoffSymbol, p.w.CutoffMark})
	}
	return append(keys, key{finishSymbol, p.w.Finished})
}
