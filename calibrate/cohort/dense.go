package cohort

import "math"

// Small dense matrices lie row by row in one slice: the blocks of athletes and courses
// are too small for a library's calls to pay.

// factor replaces the lower triangle of a symmetric n×n matrix by its Cholesky factor. It
// is false where the matrix is not positive definite.
func factor(a []float64, n int) bool {
	for j := range n {
		rj := a[j*n : j*n+j]
		d := a[j*n+j]
		for _, v := range rj {
			d -= float64(v * v)
		}
		if !(d > 0) || math.IsInf(d, 0) {
			return false
		}
		d = math.Sqrt(d)
		a[j*n+j] = d
		for i := j + 1; i < n; i++ {
			ri := a[i*n : i*n+j]
			s := a[i*n+j]
			for k, v := range rj {
				s -= float64(ri[k] * v)
			}
			a[i*n+j] = s / d
		}
	}
	return true
}

// forward solves L x = b in place.
func forward(l []float64, n int, x []float64) {
	for i := range n {
		s := x[i]
		for k, v := range l[i*n : i*n+i] {
			s -= float64(v * x[k])
		}
		x[i] = s / l[i*n+i]
	}
}

// backward solves Lᵀ x = b in place.
func backward(l []float64, n int, x []float64) {
	for i := n - 1; i >= 0; i-- {
		x[i] /= l[i*n+i]
		for k, v := range l[i*n : i*n+i] {
			x[k] -= float64(v * x[i])
		}
	}
}

// inverse fills dst with the inverse of L Lᵀ; column is scratch of length n.
func inverse(dst, l []float64, n int, column []float64) {
	for j := range n {
		clear(column[:n])
		column[j] = 1
		forward(l, n, column)
		backward(l, n, column)
		for i := range n {
			dst[i*n+j] = column[i]
		}
	}
}

// logDet is ln |L Lᵀ|.
func logDet(l []float64, n int) float64 {
	sum := 0.0
	for i := range n {
		sum += math.Log(l[i*n+i])
	}
	return 2 * sum
}

// times adds a x to y.
func times(y, a []float64, n int, x []float64) {
	for i := range n {
		y[i] += dot(a[i*n:i*n+n], x)
	}
}

func dot(a, b []float64) float64 {
	sum := 0.0
	for i, v := range a {
		sum += float64(v * b[i])
	}
	return sum
}
