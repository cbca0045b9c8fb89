package calibrate

import (
	"context"
	"slices"

	"isoeffort.example/effort"
)

// clone is a copy for use in another goroutine or for another search.
func (p *problem) clone(ctx context.Context) *problem {
	c := *p
	c.ctx, c.in, c.trace = ctx, &effort.Integrator{}, nil
	c.z, c.resid, c.jac = slices.Clone(p.z), slices.Clone(p.resid), slices.Clone(p.jac)
	c.runs = nil
	for _, u := range p.runs {
		v := *u
		v.free.gaits, v.paced.gaits = slices.Clone(u.free.gaits), slices.Clone(u.paced.gaits)
		v.closed.at, v.closed.slope = slices.Clone(u.closed.at), slices.Clone(u.closed.slope)
		v.closed.sections, v.closed.sectionSlopes = slices.Clone(u.closed.sections), slices.Clone(u.closed.sectionSlopes)
		c.runs = append(c.runs, &v)
	}
	return &c
}
