package effort

import "math"

// A solve over many cells first looks for the intensity on coarse ground, scoutCells
// cells in one, where a sweep costs that much less. What it finds is only where the
// search on the ground itself begins.
const (
	scoutCells = 8
	scoutFrom  = 800 // cells from which it pays
)

// coarse is the ground in cells scoutCells times as long, nil for a short one.
func (g *Ground) coarse() *Ground {
	g.once.Do(func() {
		if len(g.cells) < scoutFrom {
			return
		}
		c := &Ground{length: g.length, run: g.run, walk: g.walk}
		for j := 0; j < len(g.cells); j += scoutCells {
			to := min(j+scoutCells, len(g.cells))
			c.cells = append(c.cells, merged(g.cells[j:to]))
			if g.heading != nil {
				c.heading = append(c.heading, mean(g.heading[j:to]))
			}
		}
		g.merged = c
	})
	return g.merged
}

// merged is one cell for several.
func merged(cells []cell) cell {
	sum := cell{end: cells[len(cells)-1].end}
	for _, c := range cells {
		sum.length += c.length
		sum.run += c.length * c.run
		sum.walk += c.length * c.walk
		sum.surface += c.length * c.surface
		sum.brake += c.length * c.brake
		sum.gradient += c.length * c.gradient
		sum.altitude += c.length * c.altitude
	}
	for _, v := range []*float64{&sum.run, &sum.walk, &sum.surface, &sum.brake, &sum.gradient, &sum.altitude} {
		*v /= sum.length
	}
	return sum
}

func mean(headings [][2]float64) (m [2]float64) {
	for _, h := range headings {
		m[0] += h[0] / float64(len(headings))
		m[1] += h[1] / float64(len(headings))
	}
	return m
}

// scouted is where the search for a demand begins: what coarse ground says, or the closed
// form.
func (s *solver) scouted() float64 {
	in := s.in
	coarse := in.ground.coarse()
	if coarse == nil || in.ground.length-s.from.Distance < in.ground.length/4 {
		return s.guess()
	}
	if in.scout == nil {
		in.scout = &Integrator{}
	}
	if in.scout.Reset(coarse, in.athlete, in.surroundings) != nil {
		return s.guess()
	}
	scout := solver{in: in.scout, from: s.from, demand: s.demand}
	scout.approach(scout.guess())
	if math.Abs(scout.x) > farthest || math.IsNaN(scout.x) {
		return s.guess()
	}
	return scout.x
}
