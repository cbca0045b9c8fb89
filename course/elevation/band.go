package elevation

import "math"

// A band is a symmetric positive definite matrix whose entries vanish farther than width
// from the diagonal: entry (i, i+k) is at[i*(width+1)+k]. Factorised, the diagonal holds
// D and the rest the unit lower triangle L of L D Lᵀ.
//
// gonum's mat.BandCholesky does the same; it is what the tests compare with. For bands
// as narrow as these its calls per column take several times longer than the
// arithmetic, and it has no part of the inverse.
type band struct {
	n, width int
	at       []float64
}

func newBand(n, width int) band {
	return band{n, width, make([]float64, n*(width+1))}
}

// row is what the matrix has of row i, from the diagonal on.
func (b band) row(i int) []float64 {
	return b.at[i*(b.width+1) : (i+1)*(b.width+1) : (i+1)*(b.width+1)]
}

// addSquare adds w times the square of a linear form: c[k] is its coefficient at i+k.
func (b band) addSquare(i int, c []float64, w float64) {
	for k, ck := range c {
		row := b.row(i + k)
		for m := k; m < len(c); m++ {
			row[m-k] += w * ck * c[m]
		}
	}
}

// Where the rows of a matrix repeat, those of its factor and of its inverse soon do, too;
// from there on they are copied. These are the relative differences below which rows
// count as repeated: in the factor near the rounding of the arithmetic, as heights are
// solved for with it, in the inverse what variances of rises stand.
const (
	steady        = 1e-13
	steadyInverse = 1e-7
)

// same reports whether two rows are the same to a share of the first one's first entry.
func same(a, b []float64, share float64) bool {
	slack := share * math.Abs(a[0])
	for k, v := range a {
		if !(math.Abs(v-b[k]) <= slack) {
			return false
		}
	}
	return true
}

// factorise replaces the matrix by its L D Lᵀ and reports whether it was positive
// definite; if not, the contents are of no use.
func (b band) factorise() bool {
	last := make([]float64, b.width+1) // the row before as it was given
	repeats := 0                       // rows that were the same as the one before, given and factorised
	for i := range b.n {
		row := b.row(i)
		repeated := i > 0 && same(row, last, 0)
		if repeated && repeats > b.width {
			copy(row, b.row(i-1))
			continue
		}
		copy(last, row)
		if !b.reduce(i) {
			return false
		}
		if repeated && sameFactor(row, b.row(i-1), steady) {
			repeats++
		} else {
			repeats = 0
		}
	}
	return true
}

// reduce makes row i one of L D Lᵀ, those before it being so already.
func (b band) reduce(i int) bool {
	row := b.row(i)
	for m := 1; m <= min(b.width, i); m++ {
		before := b.row(i - m)
		l := before[m] * before[0]
		if l == 0 {
			continue
		}
		for k, v := range before[m:] {
			row[k] -= l * v
		}
	}
	d := row[0]
	if !(d > 0) || math.IsInf(d, 1) {
		return false
	}
	for k := 1; k < len(row); k++ {
		row[k] /= d
	}
	return true
}

// sameFactor reports whether two rows of L D Lᵀ are the same: D to a share of it, L to as
// much of its diagonal of 1.
func sameFactor(a, b []float64, share float64) bool {
	if !(math.Abs(a[0]-b[0]) <= share*math.Abs(a[0])) {
		return false
	}
	for k, v := range a[1:] {
		if !(math.Abs(v-b[k+1]) <= share) {
			return false
		}
	}
	return true
}

// logDeterminant factorises the matrix and returns the logarithm of its determinant, NaN
// if it is not positive definite.
func (b band) logDeterminant() float64 {
	if !b.factorise() {
		return math.NaN()
	}
	sum := 0.0
	for i := range b.n {
		sum += math.Log(b.row(i)[0])
	}
	return sum
}

// solve replaces v by the solution of A x = v; the matrix must be factorised.
func (b band) solve(v []float64) {
	for i := range b.n {
		reach := min(b.width, b.n-1-i)
		row, vi, next := b.row(i)[1:reach+1], v[i], v[i+1:i+1+reach]
		for k, l := range row {
			next[k] -= l * vi
		}
	}
	for i := b.n - 1; i >= 0; i-- {
		reach := min(b.width, b.n-1-i)
		row, next := b.row(i), v[i+1:i+1+reach]
		sum := v[i] / row[0]
		for k, l := range row[1 : reach+1] {
			sum -= l * next[k]
		}
		v[i] = sum
	}
}

// variance is that of a linear form of values of which this, factorised, is the precision.
func (b band) variance(form []float64) float64 {
	v := append([]float64(nil), form...)
	b.solve(v)
	sum := 0.0
	for i, f := range form {
		sum += f * v[i]
	}
	return sum
}

// inverse returns the band of the inverse of a factorised matrix, from the last row to
// the first:
//
//	Σ(i, j) = δ(i, j)/D(i) − Σ_{k>i} L(k, i) Σ(k, j),  j >= i
//
// Source: Takahashi, Fagan & Chin 1973; Hutchinson & de Hoog 1985, Numer Math 47:99 (for
// smoothing splines), both from memory.
func (b band) inverse() band {
	s := newBand(b.n, b.width)
	w := b.width
	repeats := 0
	for i := b.n - 1; i >= 0; i-- {
		l, out := b.row(i), s.row(i)
		reach := min(w, b.n-1-i)
		repeated := reach == w && b.n-1-i > w && sameFactor(l, b.row(i+1), steadyInverse)
		if repeated && repeats > w {
			copy(out, s.row(i+1))
			continue
		}
		out[0] = 1 / l[0]
		for j := 1; j <= reach; j++ {
			sum, at := 0.0, (i+1)*(w+1)+j-1
			for k := 1; k < j; k++ { // Σ(i+k, i+j)
				sum -= l[k] * s.at[at]
				at += w
			}
			for k, v := range s.row(i + j)[:reach-j+1] {
				sum -= l[j+k] * v
			}
			out[j] = sum
			out[0] -= l[j] * sum
		}
		if repeated && same(out, s.row(i+1), steadyInverse) {
			repeats++
		} else {
			repeats = 0
		}
	}
	return s
}
