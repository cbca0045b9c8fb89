package cohort

import (
	"context"

	"gonum.org/v1/gonum/mat"
)

// solveExactly solves for the effects and their whole posterior covariance by one dense
// factor.
func (p *problem) solveExactly(ctx context.Context, workers int) error {
	n := p.size()
	a := mat.NewSymDense(n, nil)
	rows := make([][]float64, n)
	if err := each(ctx, workers, n, func(i int) {
		unit, row := make([]float64, n), make([]float64, n)
		unit[i] = 1
		p.apply(row, unit, p.scratch())
		rows[i] = row
	}); err != nil {
		return err
	}
	for i := range n {
		for j := range i + 1 {
			a.SetSym(i, j, (rows[i][j]+rows[j][i])/2)
		}
	}
	var chol mat.Cholesky
	inv := mat.NewSymDense(n, nil)
	if !chol.Factorize(a) || chol.InverseTo(inv) != nil {
		return ErrNoFit
	}
	answer := mat.NewVecDense(n, nil)
	if err := chol.SolveVecTo(answer, mat.NewVecDense(n, p.rightSide())); err != nil {
		return ErrNoFit
	}
	copy(p.effects, answer.RawVector().Data)
	p.takeExact(inv)
	return nil
}

func (p *problem) takeExact(inv *mat.SymDense) {
	nx := p.nx()
	for c := range p.courses {
		p.spread[c] = inv.At(nx+c, nx+c)
	}
	for e, c := range p.courseOf {
		i := nx + p.courses + e
		p.alone[e] = inv.At(i, i)
		p.total[e] = p.alone[e] + p.spread[c] + 2*inv.At(i, nx+c)
	}
	for a := range p.blocks {
		p.residuals(a)
		b, n := &p.blocks[a], p.first[a+1]-p.first[a]
		// The columns of A⁻¹ X', one for each result, then X times them.
		for j := range n {
			unit := make([]float64, n)
			unit[j] = 1
			x := make([]float64, p.size())
			p.spreadBack(x, a, unit)
			y := mat.NewVecDense(p.size(), nil)
			y.MulVec(inv, mat.NewVecDense(p.size(), x))
			p.sums(unit, a, y.RawVector().Data)
			for i := range n {
				b.cov[i*n+j] = unit[i]
			}
		}
	}
}
