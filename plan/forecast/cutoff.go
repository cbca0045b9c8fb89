package forecast

import (
	"math"
	"time"

	"isoeffort.example/effort"
)

// A Cutoff is a cutoff of the race and the probability of making it.
type Cutoff struct {
	Name      string        `json:"name"`
	Distance  float64       `json:"distance_m"`
	Limit     time.Duration `json:"limit_ns"`  // since the runner's own gun
	Departure bool          `json:"departure"` // a planned stop there counts

	Inside Chance `json:"inside"` // inside this one and every one before

	// Given is the probability for those who are still in the race when they get here; its
	// P and SE are 0 if nobody is.
	Given Chance `json:"given"`
}

// outAt is, for every draw, the index of the first cutoff that is missed, or their number.
func (d *day) outAt(t *times) []int {
	out := make([]int, len(t.draws))
	for i := range out {
		out[i] = len(d.cutoffs)
		for k := range d.cutoffs {
			if d.late(t, i, k) {
				out[i] = k
				break
			}
		}
	}
	return out
}

// late reports whether a draw misses a cutoff.
func (d *day) late(t *times, draw, cutoff int) bool {
	c := &d.cutoffs[cutoff]
	passed := d.fixed(c.Distance) + t.moving(draw, d.index(c.Distance))
	if c.Departure {
		passed += d.halt(c.Distance)
	}
	return passed > c.Limit.Seconds()
}

func (d *day) cutoffsOf(t *times, out []int) (list []Cutoff) {
	list = []Cutoff{}
	for k, m := range d.cutoffs {
		here, inside := 0, 0
		for i := range t.draws {
			if out[i] >= k {
				here++
			}
			if out[i] > k {
				inside++
			}
		}
		list = append(list, Cutoff{
			Name: m.Name, Distance: m.Distance, Limit: m.Limit, Departure: m.Departure,
			Inside: chanceOf(inside, len(t.draws)), Given: chanceOf(inside, here),
		})
	}
	return list
}

// goalOf is the chance of the goal, for runners whom no cutoff stops.
func (d *day) goalOf(t *times, out []int) *Goal {
	g := Goal{Time: d.race.Goal, Net: d.race.Net}
	if g.Time == 0 {
		return nil
	}
	limit := g.Time.Seconds() - d.fixed(d.at[d.finish])
	if g.Net {
		limit += d.race.StartDelay.Seconds()
	}
	met := 0
	for i := range t.draws {
		if out[i] == len(d.cutoffs) && t.moving(i, d.finish) <= limit {
			met++
		}
	}
	g.Chance = chanceOf(met, len(t.draws))
	return &g
}

// slowingOf compares the halves of the distance.
func (d *day) slowingOf(t *times, quantiles []float64) (s Slowing) {
	var first, second float64
	var each []float64
	for i := range t.draws {
		a, b := t.moving(i, d.half), t.moving(i, d.finish)
		if math.IsInf(b, 1) {
			continue
		}
		first += a
		second += b - a
		each = append(each, (b-a)/a-1)
	}
	if len(each) == 0 {
		return s
	}
	s.Mean = second/first - 1
	s.Quantiles = quantilesOf(each, quantiles)
	return s
}

// durations turns seconds into times of the API; never is the greatest there is.
func durations(seconds []float64) []time.Duration {
	out := make([]time.Duration, len(seconds))
	for i, s := range seconds {
		out[i] = effort.Seconds(s)
		if !math.IsInf(s, 1) {
			out[i] = out[i].Round(time.Millisecond)
		}
	}
	return out
}
