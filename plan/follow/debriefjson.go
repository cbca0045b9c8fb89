package follow

import (
	"io"
	"time"

	"isoeffort.example/internal/page"
)

type jsonDebrief struct {
	Schema           string        `json:"schema"`
	Gun              number        `json:"gun_s"`
	Late             number        `json:"late_s"`
	Line             number        `json:"line_s"`
	Moving           number        `json:"moving_s"`
	PlannedMoving    number        `json:"planned_moving_s"`
	Halted           number        `json:"halted_s"`
	PlannedHalted    number        `json:"planned_halted_s"`
	Budget           number        `json:"budget_spent"`
	PlannedBudget    number        `json:"planned_budget_spent"`
	Intensity        number        `json:"relative_intensity"`
	PlannedIntensity number        `json:"planned_relative_intensity"`
	EvenMoving       *number       `json:"even_moving_s"`
	Uneven           *number       `json:"uneven_s"`
	Pacing           jsonPacing    `json:"pacing"`
	Sections         []jsonSection `json:"sections"`
	Halts            []jsonHalt    `json:"halts"`
	Scale            number        `json:"scale"`
	Warnings         []string      `json:"warnings"`
}

type jsonPacing struct {
	Verdict string    `json:"verdict"`
	Opening number    `json:"opening"`
	Level   number    `json:"level"`
	Tilt    number    `json:"pacing_tilt"`
	Fade    *jsonFade `json:"fade"`
	Words   string    `json:"words"`
}

type jsonFade struct {
	From number `json:"from_m"`
	Gun  number `json:"gun_s"`
	Drop number `json:"drop"`
}

type jsonSection struct {
	Place            string  `json:"place,omitempty"`
	From             number  `json:"from_m"`
	To               number  `json:"to_m"`
	Gun              number  `json:"gun_s"`
	Late             number  `json:"late_s"`
	Took             number  `json:"split_s"`
	Planned          number  `json:"planned_split_s"`
	Lost             number  `json:"lost_s"`
	Halted           number  `json:"halted_s"`
	PlannedHalted    number  `json:"planned_halted_s"`
	Pace             number  `json:"pace_s_per_km"`
	LevelPace        *number `json:"level_pace_s_per_km"`
	PlannedLevelPace *number `json:"planned_level_pace_s_per_km"`
	Intensity        number  `json:"relative_intensity"`
	PlannedIntensity number  `json:"planned_relative_intensity"`
	Budget           number  `json:"budget_spent"`
	PlannedBudget    number  `json:"planned_budget_spent"`
}

type jsonHalt struct {
	Place    string `json:"place,omitempty"`
	Distance number `json:"distance_m"`
	Gun      number `json:"gun_s"`
	Took     number `json:"halt_s"`
	Planned  number `json:"planned_s"`
}

// JSON prints the debrief as Standing.JSON does; budgets of a section are what was spent on
// it; fade is null where none was found, and a level pace where the section is walked.
func (d *Debrief) JSON(w io.Writer) error {
	j := jsonDebrief{
		Schema: Schema, Gun: secondsOf(d.Gun), Late: secondsOf(d.Late), Line: secondsOf(d.Line),
		Moving: secondsOf(d.Moving), PlannedMoving: secondsOf(d.PlannedMoving), Halted: secondsOf(d.Halted), PlannedHalted: secondsOf(d.PlannedStopped),
		Budget: ratio(d.Budget), PlannedBudget: ratio(d.PlannedBudget), Intensity: ratio(d.Intensity), PlannedIntensity: ratio(d.PlannedIntensity),
		Pacing:   jsonPacing{Verdict: d.Pacing.Verdict.String(), Opening: ratio(d.Pacing.Opening), Level: ratio(d.Pacing.Level), Tilt: ratio(d.Pacing.Tilt), Words: d.pacingWords()},
		Sections: []jsonSection{}, Halts: []jsonHalt{}, Scale: ratio(d.Scale), Warnings: append([]string{}, d.Warnings...),
	}
	if d.EvenMoving > 0 {
		even, uneven := secondsOf(d.EvenMoving), secondsOf(d.Uneven)
		j.EvenMoving, j.Uneven = &even, &uneven
	}
	if p := d.Pacing; p.From > 0 {
		j.Pacing.Fade = &jsonFade{metres(p.From), secondsOf(p.Gun), ratio(p.Drop)}
	}
	for _, s := range d.Sections {
		j.Sections = append(j.Sections, s.plainly())
	}
	for _, h := range d.Halts {
		j.Halts = append(j.Halts, jsonHalt{page.Plain(h.Place), metres(h.Distance), secondsOf(h.Gun), secondsOf(h.Took), secondsOf(h.Planned)})
	}
	return encode(w, j)
}

func (s Section) plainly() jsonSection {
	return jsonSection{
		Place: page.Plain(s.Name), From: metres(s.From), To: metres(s.To), Gun: secondsOf(s.Gun), Late: secondsOf(s.Late),
		Took: secondsOf(s.Took), Planned: secondsOf(s.Planned), Lost: secondsOf(s.Lost), Halted: secondsOf(s.Halted), PlannedHalted: secondsOf(s.PlannedHalted),
		Pace: number{s.Pace.Seconds(), 1}, LevelPace: paceOrNull(s.LevelPace), PlannedLevelPace: paceOrNull(s.PlannedLevelPace),
		Intensity: ratio(s.Intensity), PlannedIntensity: ratio(s.PlannedIntensity), Budget: ratio(s.Budget), PlannedBudget: ratio(s.PlannedBudget),
	}
}

func paceOrNull(d time.Duration) *number {
	if d == 0 {
		return nil
	}
	return &number{d.Seconds(), 1}
}
