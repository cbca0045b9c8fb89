package effort

// Metabolic appends to dst, for each cell of the last traverse in turn from First on, the
// net metabolic power in W/kg there: the effort power less braking, which uses no
// oxygen. Over the cell's time it is energy; see package effort/energy.
func (in *Integrator) Metabolic(dst []float64) []float64 {
	before := in.out.From
	for j := in.out.First; j < len(in.out.End); j++ {
		c := &in.ground.cells[j]
		speed := c.length * in.ground.remaining(j, before.Distance) / (in.out.End[j].Moving - before.Moving)
		dst = append(dst, in.out.Power[j]-in.mover.braking*c.brake*speed)
		before = in.out.End[j]
	}
	return dst
}
