package treadmill

// poly is a polynomial on [−1, 1], coefficients in ascending powers.
type poly struct {
	terms int
	c     [mostTerms]float64
}

// at is Horner's rule.
func (p *poly) at(x float64) float64 {
	sum := 0.0
	for k := p.terms - 1; k >= 0; k-- {
		sum = float64(sum*x) + p.c[k]
	}
	return sum
}

func (p *poly) derivative() poly {
	d := poly{terms: max(1, p.terms-1)}
	for k := 1; k < p.terms; k++ {
		d.c[k-1] = float64(k) * p.c[k]
	}
	return d
}

// signChanges returns, in rising order, where the polynomial changes its sign within
// (−1, 1). Between two neighbouring turning points it changes it at most once, and the
// turning points are the sign changes of its derivative: so it comes down to bisection,
// degree by degree. Unlike the eigenvalues of a companion matrix this does not mind a
// leading coefficient near 0, which every fit of too high a degree has.
func (p *poly) signChanges() []float64 {
	if p.terms <= 1 {
		return nil
	}
	d := p.derivative()
	edges := append(d.signChanges(), 1)
	var changes []float64
	before, x0 := p.at(-1), -1.0
	for _, x1 := range edges {
		after := p.at(x1)
		if after == 0 {
			continue // an end, or a turning point that touches the axis and does not cross it
		}
		if before < 0 && after > 0 || before > 0 && after < 0 {
			changes = append(changes, p.bisect(x0, x1))
		}
		before, x0 = after, x1
	}
	return changes
}

// bisect returns where the polynomial is 0 between a and b, where its signs differ.
func (p *poly) bisect(a, b float64) float64 {
	below := p.at(a) < 0
	for {
		x := a + (b-a)/2
		if x <= a || x >= b {
			return x
		}
		if (p.at(x) < 0) == below {
			a = x
		} else {
			b = x
		}
	}
}
