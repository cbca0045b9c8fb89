package brief

import (
	"isoeffort.example/plan"
	"isoeffort.example/plan/caution"
)

// A Caution is to be shown with a briefing. Its ID stays the same in every language and
// version.
type Caution struct {
	ID   string `json:"id"`
	Text string `json:"text"`
}

// cautions are those that matter for a plan, in order, in words.
func cautions(p *plan.Plan, words Words) (list []Caution) {
	for _, id := range caution.For(p) {
		if text := words.Cautions[string(id)]; text != "" {
			list = append(list, Caution{string(id), text})
		}
	}
	return list
}

// cautionWords are the English cautions by ID.
func cautionWords() map[string]string {
	words := map[string]string{}
	for id, text := range caution.English() {
		words[string(id)] = text
	}
	return words
}
