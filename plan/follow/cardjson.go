package follow

import (
	"io"

	"isoeffort.example/internal/page"
)

type jsonCard struct {
	Schema    string         `json:"schema"`
	Places    []jsonPlace    `json:"places"`
	Schedules []jsonSchedule `json:"schedules"`
	Rules     []jsonRule     `json:"if_late"`
	Warnings  []string       `json:"warnings"`
	Cautions  []string       `json:"cautions"`
}

type jsonPlace struct {
	Place    string  `json:"place,omitempty"`
	Distance number  `json:"distance_m"`
	Closes   *number `json:"closes_s"`
	Latest   *number `json:"latest_s"`
}

type jsonSchedule struct {
	Name   string   `json:"name"`
	Finish number   `json:"gun_s"`
	Budget number   `json:"budget_spent"`
	Times  []number `json:"times_s"`
}

type jsonRule struct {
	Place    string      `json:"place,omitempty"`
	Distance number      `json:"distance_m"`
	Late     number      `json:"late_s"`
	Advice   string      `json:"advice"`
	Finish   number      `json:"gun_s"`
	Cutoff   *jsonCutoff `json:"cutoff"`
	Words    string      `json:"words"`
}

// JSON prints the card; times_s of a schedule has one for each of places. Otherwise as
// Standing.JSON.
func (c *Card) JSON(w io.Writer) error {
	j := jsonCard{Schema: Schema, Rules: []jsonRule{}, Warnings: append([]string{}, c.Warnings...), Cautions: cautions(c.Plan)}
	for _, at := range c.Places {
		place := jsonPlace{Place: page.Plain(at.Name), Distance: metres(at.Distance)}
		if at.Closes > 0 {
			closes := secondsOf(at.Closes)
			place.Closes = &closes
		}
		if at.Latest > 0 {
			latest := secondsOf(at.Latest)
			place.Latest = &latest
		}
		j.Places = append(j.Places, place)
	}
	for _, s := range c.Schedules {
		schedule := jsonSchedule{Name: s.Name, Finish: secondsOf(s.Finish), Budget: ratio(s.Budget)}
		for _, at := range s.Times {
			schedule.Times = append(schedule.Times, secondsOf(at))
		}
		j.Schedules = append(j.Schedules, schedule)
	}
	for _, r := range c.Rules {
		rule := jsonRule{Place: page.Plain(r.Place), Distance: metres(r.Distance), Late: secondsOf(r.Late), Advice: r.Advice.String(), Finish: secondsOf(r.Finish), Words: r.Words}
		if r.Cutoff != nil {
			rule.Cutoff = &cutoffList([]Cutoff{*r.Cutoff})[0]
		}
		j.Rules = append(j.Rules, rule)
	}
	return encode(w, j)
}
