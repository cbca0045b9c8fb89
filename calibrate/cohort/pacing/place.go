package pacing

import (
	"math"
	"sort"
)

// A place is what the sections of a course do beside their profile: by how much of the
// finish time runners passed later than the model has it, at shares of the distance, for a
// course that was fitted. Between splits it runs straight, to nothing at start and finish.
type place struct {
	at, late []float64
}

// placeDoubt is how many runners a mean lateness is held towards nothing by. [Our own.]
const placeDoubt = 10

// places gathers them, over the editions of each course.
func (f *fitting) places(groups []Group) map[string]*place {
	type mean struct{ sum, n float64 }
	curves := f.curves(groups)
	byCourse := map[string]map[float64]mean{}
	for i := range f.fields {
		v := &f.fields[i]
		if v.course == "" || f.ctx.Err() != nil {
			continue
		}
		if byCourse[v.course] == nil {
			byCourse[v.course] = map[float64]mean{}
		}
		for _, r := range v.runners {
			for j, k := range r.split {
				// Splits within half a percent of the distance are one place.
				at := math.Round(200*v.at[k]/v.trail.official) / 200
				m := byCourse[v.course][at]
				m.sum += r.share[j] - v.shareAt(&curves[i], r.logTime, k)
				m.n++
				byCourse[v.course][at] = m
			}
		}
	}
	out := map[string]*place{}
	for name, means := range byCourse {
		p := &place{}
		for at := range means {
			if at > 0 && at < 1 {
				p.at = append(p.at, at)
			}
		}
		sort.Float64s(p.at)
		for _, at := range p.at {
			p.late = append(p.late, means[at].sum/(means[at].n+placeDoubt))
		}
		out[name] = p
	}
	return out
}

// lateness is that at a share of the distance.
func (p *place) lateness(at float64) float64 {
	i := sort.SearchFloat64s(p.at, at)
	x0, y0, x1, y1 := 0.0, 0.0, 1.0, 0.0
	if i > 0 {
		x0, y0 = p.at[i-1], p.late[i-1]
	}
	if i < len(p.at) {
		x1, y1 = p.at[i], p.late[i]
	}
	return y0 + (y1-y0)*math.Max(0, math.Min(1, (at-x0)/(x1-x0)))
}
