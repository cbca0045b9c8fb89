package elevation

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// The band's solution, determinant and inverse are those of gonum's dense and band
// Cholesky factorisations.
func TestBandAgainstGonum(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(1, 1))
	for _, size := range []struct{ n, width int }{{1, 0}, {2, 3}, {5, 2}, {40, 3}, {120, 13}} {
		b := newBand(size.n, size.width)
		dense := mat.NewSymDense(size.n, nil)
		banded := mat.NewSymBandDense(size.n, min(size.width, size.n-1), nil)
		for i := range size.n {
			for k := range min(size.width, size.n-1-i) + 1 {
				v := r.Float64() - 0.5
				if k == 0 {
					v += float64(size.width) + 1
				}
				b.row(i)[k] = v
				dense.SetSym(i, i+k, v)
				banded.SetSymBand(i, i+k, v)
			}
		}
		var cholesky mat.BandCholesky
		if !cholesky.Factorize(banded) {
			t.Fatal("not positive definite")
		}
		v := make([]float64, size.n)
		for i := range v {
			v[i] = r.Float64()
		}
		var want mat.VecDense
		if err := cholesky.SolveVecTo(&want, mat.NewVecDense(size.n, append([]float64(nil), v...))); err != nil {
			t.Fatal(err)
		}
		if got := b.logDeterminant(); math.Abs(got-cholesky.LogDet()) > 1e-10 {
			t.Errorf("%v: log determinant %g, want %g", size, got, cholesky.LogDet())
		}
		b.solve(v)
		var inverse mat.Dense
		if err := inverse.Inverse(dense); err != nil {
			t.Fatal(err)
		}
		got := b.inverse()
		for i := range size.n {
			if math.Abs(v[i]-want.AtVec(i)) > 1e-12 {
				t.Errorf("%v: solution %d is %g, want %g", size, i, v[i], want.AtVec(i))
			}
			for k := range min(size.width, size.n-1-i) + 1 {
				if math.Abs(got.row(i)[k]-inverse.At(i, i+k)) > 1e-12 {
					t.Errorf("%v: inverse (%d, %d) is %g, want %g", size, i, i+k, got.row(i)[k], inverse.At(i, i+k))
				}
			}
		}
	}
}

// Rows that repeat are copied: factor and inverse are as without the copying, which a
// row of one other digit in the middle prevents for half of them.
func TestBandCopiesSteadyRows(t *testing.T) {
	t.Parallel()
	const n, width = 600, 3
	b, dense := newBand(n, width), mat.NewSymDense(n, nil)
	for i := range n {
		for k, v := range []float64{6, -4, 1, 0.5} {
			if i == 300 && k == 0 {
				v = 7
			}
			b.row(i)[k] = v
			if i+k < n {
				dense.SetSym(i, i+k, v)
			}
		}
	}
	for k := 1; k <= width; k++ { // what lies beyond the last column counts for nothing
		for i := n - k; i < n; i++ {
			b.row(i)[k] = 0
		}
	}
	for i := range n {
		dense.SetSym(i, i, dense.At(i, i)+4)
		b.row(i)[0] += 4
	}
	var inverse mat.Dense
	if err := inverse.Inverse(dense); err != nil {
		t.Fatal(err)
	}
	if !b.factorise() {
		t.Fatal("not positive definite")
	}
	got := b.inverse()
	for i := range n {
		for k := range min(width, n-1-i) + 1 {
			if math.Abs(got.row(i)[k]-inverse.At(i, i+k)) > steadyInverse {
				t.Fatalf("inverse (%d, %d) is %g, want %g", i, i+k, got.row(i)[k], inverse.At(i, i+k))
			}
		}
	}
}
