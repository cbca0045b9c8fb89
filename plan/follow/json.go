package follow

import (
	"encoding/json"
	"io"
	"strconv"
	"strings"
	"time"

	"isoeffort.example/internal/page"
	"isoeffort.example/plan"
)

// Schema names the form of what JSON prints. The number grows when a member changes its
// meaning or goes; members may be added without.
const Schema = "isoeffort.follow.1"

// number is printed with the digits that its accuracy deserves, so that every processor
// prints the same.
type number struct {
	value  float64
	places int
}

// MarshalJSON prints the number.
func (n number) MarshalJSON() ([]byte, error) {
	s := strconv.FormatFloat(n.value, 'f', n.places, 64)
	if strings.Trim(s, "-0.") == "" {
		s = strings.TrimPrefix(s, "-") // there is one zero
	}
	return []byte(s), nil
}

func secondsOf(d time.Duration) number { return number{d.Seconds(), 3} }
func metres(m float64) number          { return number{m, 1} }
func ratio(r float64) number           { return number{r, 5} }

type jsonStanding struct {
	Schema           string       `json:"schema"`
	Place            string       `json:"place,omitempty"`
	Distance         number       `json:"distance_m"`
	Leaving          bool         `json:"leaving"`
	Gun              number       `json:"gun_s"`
	Planned          number       `json:"planned_s"`
	Late             number       `json:"late_s"`
	Moving           number       `json:"moving_s"`
	Budget           number       `json:"budget_spent"`
	PlannedBudget    number       `json:"planned_budget_spent"`
	Intensity        number       `json:"relative_intensity"`
	PlannedIntensity number       `json:"planned_relative_intensity"`
	Today            number       `json:"today"`
	Steady           *jsonEnding  `json:"steady"`
	SoFar            *jsonEnding  `json:"so_far"`
	Best             *jsonEnding  `json:"best"`
	SpentAt          *number      `json:"so_far_spent_at_m"`
	Low              *number      `json:"steady_low_s"`
	High             *number      `json:"steady_high_s"`
	Cutoffs          []jsonCutoff `json:"cutoffs"`
	Warnings         []string     `json:"warnings"`
	Cautions         []string     `json:"cautions"`
}

type jsonEnding struct {
	Gun       number `json:"gun_s"`
	Intensity number `json:"relative_intensity"`
	Budget    number `json:"budget_spent"`
}

type jsonCutoff struct {
	Name     string  `json:"name,omitempty"`
	Distance number  `json:"distance_m"`
	Limit    number  `json:"closes_s"`
	Passed   number  `json:"passed_s"`
	InHand   number  `json:"in_hand_s"`
	Latest   *number `json:"latest_s"`
	Reach    string  `json:"reach"`
}

type jsonRest struct {
	jsonStanding
	Aim        string       `json:"aim"`
	Kept       bool         `json:"kept"`
	Advice     string       `json:"advice"`
	Words      []string     `json:"words"`
	Rest       jsonEnding   `json:"rest"`
	FinishLate number       `json:"finish_late_s"`
	Share      number       `json:"effort_over_planned"`
	SameGaits  bool         `json:"gaits_as_planned"`
	Splits     []jsonSplit  `json:"splits"`
	Bouts      []jsonBout   `json:"bouts"`
	ToCome     []jsonCutoff `json:"cutoffs_to_come"`
}

type jsonSplit struct {
	Place    string `json:"place,omitempty"`
	Distance number `json:"distance_m"`
	Took     number `json:"split_s"`
	Stop     number `json:"stop_s"`
	Gun      number `json:"gun_s"`
	Planned  number `json:"planned_s"`
	Late     number `json:"late_s"`
	Clock    string `json:"clock,omitempty"`
}

type jsonBout struct {
	Gait string `json:"gait"`
	From number `json:"from_m"`
	To   number `json:"to_m"`
}

// JSON prints the standing. Members that end in _m are in metres, in _s in seconds; times
// count from the runner's own gun. What is not known or not to come is null. Its error is
// the writer's.
func (s *Standing) JSON(w io.Writer) error { return encode(w, s.plainly()) }

// JSON prints the rest of the race beside the standing that it starts from, as
// Standing.JSON does.
func (r *Rest) JSON(w io.Writer) error {
	j := jsonRest{
		jsonStanding: r.Standing.plainly(), Aim: r.Aim.String(), Kept: r.Kept, Advice: r.Advice.String(), Words: r.Words,
		Rest: *ending(Ending{r.Gun, r.Intensity, r.Budget}), FinishLate: secondsOf(r.Late), Share: ratio(r.Share), SameGaits: r.SameGaits,
		Splits: []jsonSplit{}, ToCome: cutoffList(r.Cutoffs),
	}
	for _, s := range r.Splits {
		j.Splits = append(j.Splits, jsonSplit{
			page.Plain(s.Name), metres(s.Distance), secondsOf(s.Took), secondsOf(s.Stop), secondsOf(s.Gun), secondsOf(s.Planned), secondsOf(s.Late), clockText(s.Clock),
		})
	}
	for _, b := range r.Bouts {
		j.Bouts = append(j.Bouts, jsonBout{b.Gait.String(), metres(b.From), metres(b.To)})
	}
	return encode(w, j)
}

func encode(w io.Writer, v any) error {
	out := json.NewEncoder(w)
	out.SetIndent("", "  ")
	out.SetEscapeHTML(false)
	return out.Encode(v)
}

func (s *Standing) plainly() jsonStanding {
	j := jsonStanding{
		Schema: Schema, Place: page.Plain(s.Place), Distance: metres(s.Distance), Leaving: s.Leaving,
		Gun: secondsOf(s.Gun), Planned: secondsOf(s.Planned), Late: secondsOf(s.Late), Moving: number{s.State.Moving, 3},
		Budget: ratio(s.State.Spent), PlannedBudget: ratio(s.PlannedBudget),
		Intensity: ratio(s.Intensity), PlannedIntensity: ratio(s.PlannedIntensity), Today: ratio(s.Today),
		Cutoffs: cutoffList(s.Cutoffs), Warnings: append([]string{}, s.Warnings...), Cautions: cautions(s.Plan),
	}
	if s.finished() {
		return j
	}
	f := s.Forecast
	j.Steady, j.SoFar, j.Best = ending(f.Steady), ending(f.SoFar), ending(f.Best)
	if f.SpentAt > 0 {
		at := metres(f.SpentAt)
		j.SpentAt = &at
	}
	if f.High > 0 {
		low, high := secondsOf(f.Low), secondsOf(f.High)
		j.Low, j.High = &low, &high
	}
	return j
}

func ending(e Ending) *jsonEnding {
	return &jsonEnding{secondsOf(e.Gun), ratio(e.Intensity), ratio(e.Budget)}
}

func cutoffList(all []Cutoff) []jsonCutoff {
	out := []jsonCutoff{}
	for _, c := range all {
		j := jsonCutoff{Name: page.Plain(c.Name), Distance: metres(c.Distance), Limit: secondsOf(c.Limit), Passed: secondsOf(c.Steady), InHand: secondsOf(c.InHand), Reach: c.Reach.String()}
		if c.Latest != 0 {
			latest := secondsOf(c.Latest)
			j.Latest = &latest
		}
		out = append(out, j)
	}
	return out
}

func clockText(at time.Time) string {
	if at.IsZero() {
		return ""
	}
	return at.Round(time.Second).Format(time.RFC3339)
}

// cautions are those under a page about a plan.
func cautions(p *plan.Plan) []string {
	list := append([]string{}, Cautions[:]...)
	if p.Race.Surroundings.Day != nil {
		list = append(list, weatherCaution)
	}
	return list
}

const weatherCaution = "In heat or cold follow the race's orders and medical team: the figures estimate what the weather costs in time, and know nothing of what is safe."
