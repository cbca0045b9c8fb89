package brief_test

import (
	"slices"

	"pgregory.net/rapid"

	"isoeffort.example/plan"
	"isoeffort.example/plan/brief"
)

// short bounds the words: those that the package comment names, and for what must be told
// even where they do not suffice: 110 for the climbs of a short course, 50 for a goal beyond
// the runner, 70 for laps, 60 for heat, 35 for each cutoff in doubt, 20 for each mark and for
// each deep descent.
func short(t *rapid.T, p *plan.Plan, b *brief.Briefing, o brief.Options) {
	bound := 280 + 8*b.Length/1000
	bound = min(bound, 1360)
	if beyond(p) {
		bound += 50
	}
	for _, l := range slices.Concat(lines(b, brief.Descent), lines(b, brief.Drop)) {
		if l.Descent >= 300 {
			bound += 20
		}
	}
	if len(lines(b, brief.Weather)) > 0 {
		bound += 60
	}
	if b.Sections[0].FirstLap > 0 {
		bound += 70
	}
	for _, l := range lines(b, brief.Cutoff) {
		if l.AtRisk {
			bound += 35
		}
	}
	bound += 20 * float64(len(o.Marks))
	if n := b.Words(); float64(n) > bound {
		t.Fatalf("%d words for %g m, %d climbs", n, b.Length, len(p.Climbs))
	}
}
