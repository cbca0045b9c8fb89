package follow_test

import (
	"math/rand/v2"
	"time"

	"isoeffort.example/effort"
	"isoeffort.example/plan"
	"isoeffort.example/plan/follow"
)

var gun = time.Date(2026, 6, 14, 6, 0, 0, 0, time.UTC)

// recorded makes the recording of a traverse with the plan's delay and stops: a fix at the
// line, at the end of each cell, and at either end of a stop.
func recorded(p *plan.Plan, t *effort.Traverse, speed func(cell int) float64) follow.Actual {
	clock, stop := p.Race.StartDelay, 0
	out := follow.Actual{Gun: gun, Fixes: []follow.Fix{{Time: gun.Add(clock)}}}
	from := effort.State{}
	for j, end := range t.End {
		v := speed(j)
		for stop < len(p.Stops) && p.Stops[stop].Distance <= from.Distance+1e-6 {
			clock += p.Stops[stop].Duration
			stop++
			out.Fixes = append(out.Fixes, follow.Fix{Distance: from.Distance, Time: gun.Add(clock)})
		}
		if stop < len(p.Stops) && p.Stops[stop].Distance < end.Distance-1e-6 { // in the middle of a cell
			at := p.Stops[stop].Distance
			share := (at - from.Distance) / (end.Distance - from.Distance)
			part := effort.Seconds(share * (end.Moving - from.Moving) / v)
			out.Fixes = append(out.Fixes, follow.Fix{Distance: at, Time: gun.Add(clock + part)},
				follow.Fix{Distance: at, Time: gun.Add(clock + part + p.Stops[stop].Duration)})
			clock += p.Stops[stop].Duration
			stop++
		}
		clock += effort.Seconds((end.Moving - from.Moving) / v)
		out.Fixes = append(out.Fixes, follow.Fix{Distance: end.Distance, Time: gun.Add(clock)})
		from = end
	}
	return out
}

func asPlanned(int) float64 { return 1 }

// noisy has speeds with white noise.
func noisy(sd float64, seed uint64) func(int) float64 {
	r := rand.New(rand.NewPCG(seed, 1))
	return func(int) float64 { return max(0.3, 1+sd*r.NormFloat64()) }
}
