package calibrate

import (
	"math"

	"gonum.org/v1/gonum/optimize"
)

const (
	// gradientThreshold ends a minimisation, in prior SDs. Tighter ones end in failures of
	// the line search although the point is as good.
	gradientThreshold = 1e-4

	// enough ends it too: the change of F over five steps that is not worth a sixth.
	enough = 1e-9
)

// slowly finds the mode where strides over the closed forms do not, as of runners who walk
// most of the way: by general methods on the model itself, with the gaits held while they
// run, chosen anew and the noise weighed between.
func (d *descent) slowly() error {
	d.near, d.holding, d.chosen = false, true, 0
	for round := range gaitRounds {
		before, scale := append([]float64(nil), d.z...), d.scale
		if err := d.minimize(); err != nil {
			return err
		}
		d.weigh(true)
		if apart(before, d.z) < settled && math.Abs(math.Log(d.scale/scale)) < settled {
			break
		}
		d.holding = round > gaitRounds/2
		if _, err := d.refresh(); err != nil {
			return err
		}
	}
	d.holding = true
	if _, err := d.fill(); err != nil {
		return err
	}
	return d.verdict()
}

// minimize moves z to the minimum with the gaits held: by BFGS, and where a kink stops that
// short by the simplex, which minds kinks less.
func (d *descent) minimize() error {
	var failed error
	evaluate := func(z []float64) {
		if d.jac != nil && apart(d.z, z) == 0 {
			return
		}
		d.z = append(d.z[:0], z...)
		if _, err := d.problem.refresh(d.z, true); err != nil {
			failed, d.value = err, math.Inf(1)
		}
	}
	problem := optimize.Problem{
		Func: func(z []float64) float64 { evaluate(z); return d.value },
		Grad: func(grad, z []float64) { evaluate(z); copy(grad, d.gradient()) },
		Status: func() (optimize.Status, error) {
			if err := d.ctx.Err(); err != nil {
				return optimize.Failure, err
			}
			return optimize.NotTerminated, nil
		},
	}
	for _, method := range []optimize.Method{&optimize.BFGS{}, &optimize.NelderMead{SimplexSize: 0.1}} {
		from := d.point()
		result, _ := optimize.Minimize(problem, from.z, &optimize.Settings{
			GradientThreshold: gradientThreshold, MajorIterations: 400,
			Converger: &optimize.FunctionConverge{Absolute: enough, Iterations: 5},
		}, method)
		if err := d.ctx.Err(); err != nil {
			return err
		}
		if result != nil && result.F <= from.value {
			d.z = append(d.z[:0], result.X...)
		} else {
			d.z = append(d.z[:0], from.z...)
		}
		failed = nil
		if _, err := d.problem.refresh(d.z, true); err != nil {
			return err
		}
		if _, decrement := downhill(d.gradient(), d.curvature(true)); decrement < decrementThreshold/100 {
			break
		}
	}
	return failed
}
