package plan_test

import (
	"fmt"
	"testing"
	"time"

	"isoeffort.example/effort"
	"isoeffort.example/plan"
)

func TestTmp(t *testing.T) {
	c := profile(t, 85_000, rolling)
	for _, r := range []plan.Race{
		{},
		{Walks: plan.Walks{Every: 30 * time.Minute}},
		{Walks: plan.Walks{Every: 30 * time.Minute, Length: 2 * time.Minute, Fixed: true}},
		{Goal: 10 * time.Hour, StartDelay: 8 * time.Minute, Surroundings: effort.Surroundings{Crowd: effort.Crowd{Speed: 1.8, Over: 4000}}},
		{StartDelay: 8 * time.Minute, Surroundings: effort.Surroundings{Crowd: effort.Crowd{Speed: 1.8, Over: 4000}}},
		{Share: 0.5},
		{MakeCutoffs: true, InHand: 20 * time.Minute, Cutoffs: []plan.Cutoff{{Name: "A", Distance: 30_000, Time: 5 * time.Hour}, {Name: "B", Distance: 60_000, Time: 9 * time.Hour}, {Distance: 85_000, Time: 14 * time.Hour}}},
		{Standards: []plan.Standard{{"gold", 8 * time.Hour}, {"silver", 10 * time.Hour}, {"bronze", 12 * time.Hour}}},
		{Goal: 8 * time.Hour},
	} {
		for _, hp := range []float64{11, 15} {
			start := time.Now()
			p := even(t, c, effort.Usual(hp), r)
			fmt.Printf("hp %g %v: gun %v budget %.3f int %.4f best %v walkcost %v start %+v hold %v needs %v standard %v changes %d\n", hp, time.Since(start), p.Gun, p.Budget, p.Intensity, p.Best.Gun, p.WalkCost, p.Start, p.HoldBack, p.Needs, p.Standard, p.GaitChanges)
			for _, w := range p.Walks {
				fmt.Printf("  %.0f-%.0f %v %v", w.From, w.To, w.Start, w.Took)
			}
			for _, w := range p.Cutoffs {
				fmt.Printf("  %v %v %v", w.Name, w.InHand, w.AtRisk)
			}
			for _, d := range []float64{0, 4000, 20000, 40000, 60000, 80000, 85000} {
				fmt.Printf("  %v", p.Behind(d))
			}
			fmt.Println()
		}
	}
}
