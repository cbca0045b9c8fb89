package write

import (
	_ "embed"

	"isoeffort.example/internal/page"
	"isoeffort.example/plan"
	"isoeffort.example/plan/caution"
)

// JSONSchema is the JSON Schema (draft 2020-12) of what JSON prints. Members may be added
// under the same Schema name.
//
//go:embed plan.schema.json
var JSONSchema []byte

type jsonStop struct {
	Distance number `json:"distance_m"`
	Duration number `json:"duration_s"`
	Kind     string `json:"kind"`
	Note     string `json:"note,omitempty"`
}

type jsonWalk struct {
	From    number `json:"from_m"`
	To      number `json:"to_m"`
	Elapsed number `json:"elapsed_s"`
	Took    number `json:"duration_s"`
}

type jsonCutoff struct {
	Name      string `json:"name,omitempty"`
	Distance  number `json:"distance_m"`
	Limit     number `json:"limit_s"`
	Elapsed   number `json:"elapsed_s"`
	InHand    number `json:"in_hand_s"`
	Departure bool   `json:"on_leaving"`
	AtRisk    bool   `json:"at_risk"`
}

// cautionIDs are those of the cautions, for a program that shows its own words.
func cautionIDs(p *plan.Plan) []string {
	ids := []string{}
	for _, id := range caution.For(p) {
		ids = append(ids, string(id))
	}
	return ids
}

// aimOf names what a plan was made for.
func aimOf(r plan.Race) string {
	switch {
	case r.Goal > 0:
		return "time"
	case r.Share > 0:
		return "share"
	case len(r.Standards) > 0:
		return "standard"
	case r.MakeCutoffs:
		return "cutoffs"
	}
	return "best"
}

func jsonStops(p *plan.Plan) []jsonStop {
	out := []jsonStop{}
	for _, s := range p.Stops {
		out = append(out, jsonStop{number{s.Distance, 1}, secondsOf(s.Duration), s.Kind.String(), page.Plain(s.Note)})
	}
	return out
}

func jsonWalks(p *plan.Plan) []jsonWalk {
	out := []jsonWalk{}
	for _, w := range p.Walks {
		out = append(out, jsonWalk{number{w.From, 1}, number{w.To, 1}, secondsOf(w.Start), secondsOf(w.Took)})
	}
	return out
}

func jsonCutoffs(p *plan.Plan) []jsonCutoff {
	out := []jsonCutoff{}
	for _, m := range p.Cutoffs {
		out = append(out, jsonCutoff{
			page.Plain(m.Name), number{m.Distance, 1}, secondsOf(m.Limit), secondsOf(m.Passed), secondsOf(m.InHand), m.Departure, m.AtRisk,
		})
	}
	return out
}
