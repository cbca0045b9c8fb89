package cohort

// A preconditioner is the precision of the effects without what ties courses to each
// other and to the fixed effects: one dense block for the fixed effects, and one for
// each course with its editions.
type preconditioner struct {
	fixed, fixedInverse []float64
	nx, courses         int
	blocks              []courseBlock
}

type courseBlock struct {
	editions []int
	l, inv   []float64
	diagonal bool
}

func (p *problem) precondition() (*preconditioner, error) {
	nx := p.nx()
	pre := &preconditioner{nx: nx, courses: p.courses, fixed: make([]float64, nx*nx), blocks: make([]courseBlock, p.courses)}
	place := make([]int, p.editions) // of an edition in its block
	for e, c := range p.courseOf {
		pre.blocks[c].editions = append(pre.blocks[c].editions, e)
		place[e] = len(pre.blocks[c].editions)
	}
	for i := range nx {
		pre.fixed[i*nx+i] = p.precision(i)
	}
	for c := range pre.blocks {
		b := &pre.blocks[c]
		n := 1 + len(b.editions)
		b.l = make([]float64, n*n)
		b.diagonal = n > largeBlock
		b.l[0] = p.precision(nx + c)
		for k, e := range b.editions {
			b.l[(k+1)*n+k+1] = p.precision(nx + p.courses + e)
		}
	}
	for a := range p.blocks {
		p.addToBlocks(a, pre, place)
	}
	return pre, pre.factor()
}

// addToBlocks adds what athlete a's results tell.
func (p *problem) addToBlocks(a int, pre *preconditioner, place []int) {
	o, inv, nx := p.of(a), p.blocks[a].inv, p.nx()
	for i := range o {
		for j := range o {
			k := inv[i*len(o)+j]
			for f, x := range o[i].x {
				for g, y := range o[j].x {
					pre.fixed[f*nx+g] += float64(k * float64(x*y))
				}
			}
			if o[i].course != o[j].course {
				continue
			}
			b := &pre.blocks[o[i].course]
			n, e, f := 1+len(b.editions), place[o[i].edition], place[o[j].edition]
			b.l[0] += k
			b.l[e*n+f] += k
			b.l[e*n] += k
			b.l[f] += k
		}
	}
}

func (pre *preconditioner) factor() error {
	pre.fixedInverse = make([]float64, len(pre.fixed))
	if !factor(pre.fixed, pre.nx) {
		return ErrNoFit
	}
	inverse(pre.fixedInverse, pre.fixed, pre.nx, make([]float64, pre.nx))
	for c := range pre.blocks {
		b := &pre.blocks[c]
		n := 1 + len(b.editions)
		if b.diagonal {
			for i := range n {
				for j := range n {
					if i != j {
						b.l[i*n+j] = 0
					}
				}
			}
		}
		if !factor(b.l, n) {
			return ErrNoFit
		}
		b.inv = make([]float64, n*n)
		inverse(b.inv, b.l, n, make([]float64, n))
	}
	return nil
}

// divide fills dst with M⁻¹ v.
func (pre *preconditioner) divide(dst, v []float64) {
	clear(dst)
	times(dst[:pre.nx], pre.fixedInverse, pre.nx, v[:pre.nx])
	for c := range pre.blocks {
		b := &pre.blocks[c]
		n := 1 + len(b.editions)
		at := func(i int) int {
			if i == 0 {
				return pre.nx + c
			}
			return pre.nx + pre.courses + b.editions[i-1]
		}
		for i := range n {
			sum := 0.0
			for j := range n {
				sum += float64(b.inv[i*n+j] * v[at(j)])
			}
			dst[at(i)] = sum
		}
	}
}

func (pre *preconditioner) variance(course, i int) float64 {
	n := 1 + len(pre.blocks[course].editions)
	return pre.blocks[course].inv[i*n+i]
}

// covariance is that of a course's effect with its i-th edition's.
func (pre *preconditioner) covariance(course, i int) float64 {
	return pre.blocks[course].inv[i]
}
