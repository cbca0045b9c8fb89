package calibrate

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/optimize"
)

const (
	// gradientThreshold ends the descent, in prior SDs. Tighter ones end in failures of
	// the line search although the point is as good.
	gradientThreshold = 1e-4

	// enough ends it too: the change of F over five steps that is not worth a sixth.
	enough = 1e-9

	// decrementThreshold is what a point must meet to be believed the mode: gᵀH⁻¹g, the
	// squared distance to the minimum of the local parabola in posterior SDs. Where a walk
	// comes to its greatest speed F has kinks, at which no gradient need vanish.
	decrementThreshold = 1e-2
)

// descend minimises F from z: by Newton's method with the Gauss-Newton Hessian, and where
// a kink stops that short, by methods that mind kinks less.
func (p *problem) descend() error {
	var last error
	for _, method := range []optimize.Method{
		&optimize.Newton{Linesearcher: &optimize.Backtracking{}}, &optimize.BFGS{}, &optimize.NelderMead{SimplexSize: 0.1},
	} {
		if last = p.minimize(method); p.failed != nil {
			return p.failed
		}
		// A line search may give up within rounding of the minimum: the distance decides.
		if p.decrement() < decrementThreshold {
			return nil
		}
	}
	err := fmt.Errorf("calibrate: %w: the best found lies %.2g SD from where it should", ErrNoFit, math.Sqrt(p.decrement()))
	if last != nil {
		err = fmt.Errorf("%w: %w", err, last)
	}
	return err
}

// minimize moves z to where one method ends, if that is no worse.
func (p *problem) minimize(method optimize.Method) error {
	problem := optimize.Problem{
		Func: func(z []float64) float64 { p.evaluate(z); return p.value },
		Grad: func(grad, z []float64) { p.evaluate(z); copy(grad, p.grad) },
		Hess: func(h *mat.SymDense, z []float64) { p.evaluate(z); h.CopySym(p.gaussNewton()) },
		Status: func() (optimize.Status, error) {
			if p.failed != nil {
				return optimize.Failure, p.failed
			}
			return optimize.NotTerminated, nil
		},
	}
	p.evaluate(p.z)
	before := p.value
	settings := &optimize.Settings{
		GradientThreshold: gradientThreshold, MajorIterations: 400,
		Converger: &optimize.FunctionConverge{Absolute: enough, Iterations: 5},
	}
	result, err := optimize.Minimize(problem, p.z, settings, method)
	if p.failed != nil {
		return p.failed
	}
	if result != nil && result.F <= before {
		p.z = append(p.z[:0], result.X...)
	}
	p.evaluate(p.z)
	return err
}

// decrement is gᵀH⁻¹g at the last point evaluated.
func (p *problem) decrement() float64 {
	inverse, doubtful := invert(p.gaussNewton())
	if doubtful {
		return math.NaN()
	}
	g := mat.NewVecDense(len(p.grad), p.grad)
	return mat.Inner(g, inverse, g)
}
