package chart

import (
	"time"

	"isoeffort.example/course"
	"isoeffort.example/plan"
)

// splitTable sets the plan's splits in a height: at all landmarks or, if those have no
// room, at aid stations and the finish, or none.
func (p *page) splitTable(pl *plan.Plan, room float64) table {
	for _, stations := range []bool{false, true} {
		t := table{least: 250, columns: []column{
			{p.w.At, 0, false},
			{p.u.long, 30, true},
			{p.w.Part, 36, true},
			{p.w.Pace + " /" + p.u.long, 42, true},
			{p.w.GunTime, 44, true},
		}}
		t.rows = p.splitRows(pl, stations)
		if t.height(p.right-p.left) <= room {
			return t
		}
	}
	return table{}
}

func (p *page) splitRows(pl *plan.Plan, stations bool) [][]string {
	var rows [][]string
	var part time.Duration
	length := 0.0
	for _, s := range pl.Splits(plan.AtLandmarks) {
		part, length = part+s.Took, length+s.Length
		name, kind := p.w.Finish, course.Station
		if s.Landmark != nil {
			name, kind = plain(s.Landmark.Name), s.Landmark.Kind
		}
		if name == "" {
			name = p.w.Place
		}
		if s.Distance < 1 || stations && kind != course.Station && s.Distance < pl.Course.Length()-1 || length == 0 {
			continue
		}
		pace := time.Duration(float64(part) * p.u.distance / length)
		rows = append(rows, []string{name, p.u.along(s.Distance), ms(part), ms(pace), hms(s.Elapsed)})
		part, length = 0, 0
	}
	return rows
}

// gait returns the word for one.
func (p *page) gait(g plan.Gait) string {
	switch g {
	case plan.Run:
		return p.w.Run
	case plan.Walk:
		return p.w.Walk
	}
	return p.w.Mixed
}
