package effort

// A Choice is what a cell takes in either gait, at the power on offer there: seconds, and
// the price of time and budget together, which the gait rule compares, in seconds of
// time at equal budget. Both are indexed by Gait.
type Choice struct {
	Time, Price [2]float64
}

// Choices appends to dst, for each cell of the last traverse in turn from First on, what
// it takes in either gait.
func (in *Integrator) Choices(dst []Choice) []Choice {
	in.eachWay(func(each func(j int) Choice) {
		for j := in.out.First; j < len(in.out.End); j++ {
			dst = append(dst, each(j))
		}
	})
	return dst
}

// eachWay hands out a function for the Choice of a cell, and clears up after its use.
func (in *Integrator) eachWay(use func(each func(j int) Choice)) {
	still := in.mover.air
	use(in.choice)
	in.mover.air = still
	in.free()
}

// choice is that of one cell under the traverse that the integrator holds.
func (in *Integrator) choice(j int) Choice {
	m, out := &in.mover, &in.out
	c, p := &in.ground.cells[j], in.offer[j]
	in.meetAgain(j)
	in.keep(j)
	length := c.length
	if j == out.First {
		length *= in.ground.remaining(j, out.From.Distance)
	}
	run, walk := m.run(c, p), m.walk(c, p)
	k := Choice{
		Time:  [2]float64{length / run.Speed, length / walk.Speed},
		Price: [2]float64{length * m.price(run, p), length * m.price(walk, p)},
	}
	switch {
	case run.Speed < jog*m.slowestRun:
		k.Price[Run] += notRun * k.Time[Run]
	case run.Speed < m.slowestRun:
		k.Price[Run] += slowRun * k.Time[Run]
	}
	return k
}
