package forecast

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat"

	"isoeffort.example/effort"
)

// sourcesOf splits the variance of y, the logarithm of the moving time, among the numbers
// x that the draws differ in, by a linear regression of y on all of them: number j gets
//
//	β_j cov(x_j, y) / var(y),
//
// so that numbers that vary together share what they bring together; a share below 0 is one
// whose number makes up for others. In the limit of small spreads it is row j of
// slopeᵀ Cov slope. What the line leaves is unexplained.
func (d *day) sourcesOf(t *times) (list []Source, unexplained float64, err error) {
	keep, y := d.finished(t)
	if len(y) < 2 || !(stat.Variance(y, nil) > 1e-16) {
		return []Source{}, 0, nil
	}
	names, columns := columnsOf(keep)
	variance := stat.Variance(y, nil)
	beta, err := regress(columns, y)
	if err != nil {
		return nil, 0, err
	}
	unexplained = 1
	for j, x := range columns {
		share := beta[j] * stat.Covariance(x, y, nil) / variance
		list = append(list, Source{names[j], share})
		unexplained -= share
	}
	slices.SortStableFunc(list, func(a, b Source) int { return cmp.Compare(b.Share, a.Share) })
	return list, math.Max(unexplained, 0), nil
}

// finished are the draws that arrive, and the logarithms of their times.
func (d *day) finished(t *times) (keep []Draw, y []float64) {
	for i, draw := range t.draws {
		if moving := t.moving(i, d.finish); !math.IsInf(moving, 1) {
			keep = append(keep, draw)
			y = append(y, math.Log(moving))
		}
	}
	return keep, y
}

// columnsOf are the numbers that the draws differ in.
func columnsOf(draws []Draw) (names []string, columns [][]float64) {
	add := func(name string, x []float64) {
		if stat.StdDev(x, nil) > 1e-12 {
			names, columns = append(names, name), append(columns, x)
		}
	}
	for n := range effort.Number(effort.Numbers) {
		x, _ := numberOf(draws, n)
		add(n.String(), x)
	}
	tilt, noise := make([]float64, len(draws)), make([]float64, len(draws))
	for i, draw := range draws {
		tilt[i], noise[i] = draw.Tilt, draw.Noise
	}
	add("pacing tilt", tilt)
	add("the day", noise)
	return names, columns
}

// regress returns the slopes of y by the columns, of least norm in SDs where the columns
// do not decide.
func regress(columns [][]float64, y []float64) ([]float64, error) {
	beta := make([]float64, len(columns))
	if len(columns) == 0 {
		return beta, nil
	}
	x, target := mat.NewDense(len(y), len(columns), nil), mat.NewVecDense(len(y), nil)
	mean := stat.Mean(y, nil)
	for i, v := range y {
		target.SetVec(i, v-mean)
	}
	for j, column := range columns {
		mean, sd := stat.MeanStdDev(column, nil)
		for i, v := range column {
			x.Set(i, j, (v-mean)/sd)
		}
	}
	var svd mat.SVD
	if !svd.Factorize(x, mat.SVDThin) {
		return nil, fmt.Errorf("forecast: %w: the draws cannot be told apart", ErrDraw)
	}
	var b mat.Dense
	svd.SolveTo(&b, target, svd.Rank(1e-9))
	for j, column := range columns {
		beta[j] = b.At(j, 0) / stat.StdDev(column, nil)
	}
	return beta, nil
}
