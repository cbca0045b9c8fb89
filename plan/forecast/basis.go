package forecast

import (
	"fmt"
	"math"
	"math/rand/v2"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distuv"

	"isoeffort.example/effort"
)

// A Tilt is the distribution of pacing tilts of those whom a forecast is for: normal, and
// held within ±0.5 by drawing anew. The zero value is a runner of even effort.
type Tilt struct {
	Mean, SD float64
}

// FieldTilt returns the tilt of runners of whom nothing else is known. [Our own, a prior: it
// has not been fitted to a field.] The usual athletes with it slow by about 8 % in the
// second half of a level marathon. Fields of city marathons slowed by 15.6 % (men) and
// 11.7 % (women; Deaner, Carter, Joyner & Hunter 2015, Med Sci Sports Exerc 47:607), which
// takes a mean of about 0.10 and 0.065: say that for such a field.
func FieldTilt() Tilt { return Tilt{Mean: 0.03, SD: 0.05} }

// redraws is how often a draw out of range is made anew.
const redraws = 1000

// FromBasis draws athletes about one by what its numbers rest on: the logarithms of the
// five numbers are normal about the athlete's with covariance b.Cov, the noise normal
// with SD b.Noise. Where b.Quantile says that the scale itself is uncertain, numbers and
// noise of one draw are stretched together by √(ν/χ²), which makes them Student's t with
// the ν whose 95 % quantile is b.Quantile (1.645 or less: normal; 6.31 or more: ν 1). A
// number that is 0 stays 0. Draws that no athlete can be (effort.Athlete.Check) are made
// anew: the tails are cut there.
//
// The error wraps effort.ErrAthlete for the athlete, and ErrDraw for a tilt outside ±0.3
// or with an SD outside 0 to 0.2, a noise outside 0 to 0.5 and a covariance that is not
// one.
func FromBasis(a effort.Athlete, b effort.Basis, t Tilt) (Drawer, error) {
	if err := a.Check(); err != nil {
		return nil, fmt.Errorf("forecast: %w", err)
	}
	if !(math.Abs(t.Mean) <= 0.3) || !(t.SD >= 0 && t.SD <= 0.2) {
		return nil, fmt.Errorf("forecast: %w: a tilt of mean %g and SD %g", ErrDraw, t.Mean, t.SD)
	}
	if !(b.Noise >= 0 && b.Noise <= 0.5) {
		return nil, fmt.Errorf("forecast: %w: noise %g is not within 0 to 0.5", ErrDraw, b.Noise)
	}
	if !(b.Quantile >= 0) || math.IsInf(b.Quantile, 1) {
		return nil, fmt.Errorf("forecast: %w: quantile %g", ErrDraw, b.Quantile)
	}
	root, err := rootOf(b.Cov)
	if err != nil {
		return nil, err
	}
	if a.FadeShape == 0 {
		a.FadeShape = 1
	}
	s := spread{athlete: a, root: root, noise: b.Noise, tilt: t, freedom: freedomOf(b.Quantile)}
	return s.draw, nil
}

// spread draws about an athlete.
type spread struct {
	athlete effort.Athlete
	root    [effort.Numbers][effort.Numbers]float64 // of the covariance
	noise   float64
	tilt    Tilt
	freedom float64 // of Student's t, +Inf for the normal distribution
}

func (s spread) draw(_ int, rng *rand.Rand) Draw {
	var d Draw
	for range redraws {
		if d = s.once(rng); d.check(0) == nil {
			break
		}
	}
	return d
}

func (s spread) once(rng *rand.Rand) Draw {
	stretch := 1.0
	if !math.IsInf(s.freedom, 1) {
		stretch = math.Sqrt(s.freedom / distuv.ChiSquared{K: s.freedom, Src: rng}.Rand())
	}
	var z [effort.Numbers]float64
	for i := range z {
		z[i] = rng.NormFloat64()
	}
	d := Draw{Athlete: s.athlete}
	for n := range effort.Number(effort.Numbers) {
		sum := 0.0
		for j, v := range z {
			sum += float64(s.root[n][j] * v)
		}
		d.Athlete = d.Athlete.Set(n, d.Athlete.Get(n)*math.Exp(stretch*sum))
	}
	d.Noise = s.noise * stretch * rng.NormFloat64()
	d.Tilt = s.tilt.Mean + float64(s.tilt.SD*rng.NormFloat64())
	return d
}

// rootOf is a matrix R with R Rᵀ = cov, for a covariance that may leave numbers fixed.
func rootOf(cov [effort.Numbers][effort.Numbers]float64) (root [effort.Numbers][effort.Numbers]float64, err error) {
	sym := mat.NewSymDense(effort.Numbers, nil)
	for i := range effort.Numbers {
		for j := i; j < effort.Numbers; j++ {
			if v := cov[i][j]; math.IsNaN(v) || math.IsInf(v, 0) || math.Abs(v-cov[j][i]) > 1e-9*(math.Abs(v)+math.Abs(cov[j][i])) {
				return root, fmt.Errorf("forecast: %w: covariance of %v and %v", ErrDraw, effort.Number(i), effort.Number(j))
			}
			sym.SetSym(i, j, cov[i][j])
		}
	}
	var eigen mat.EigenSym
	if !eigen.Factorize(sym, true) {
		return root, fmt.Errorf("forecast: %w: covariance", ErrDraw)
	}
	var vectors mat.Dense
	eigen.VectorsTo(&vectors)
	values := eigen.Values(nil) // ascending
	for j, v := range values {
		if v < -1e-9*values[len(values)-1] || v < 0 && values[len(values)-1] <= 0 {
			return root, fmt.Errorf("forecast: %w: the covariance has a variance of %g", ErrDraw, v)
		}
		for i := range root {
			root[i][j] = vectors.At(i, j) * math.Sqrt(math.Max(v, 0))
		}
	}
	return root, nil
}

// freedomOf is the ν of Student's t distribution whose 95 % quantile is q.
func freedomOf(q float64) float64 {
	if q <= 1.645 {
		return math.Inf(1)
	}
	low, top := 0.0, math.Log(1e6)
	for range 60 {
		middle := (low + top) / 2
		if (distuv.StudentsT{Sigma: 1, Nu: math.Exp(middle)}).Quantile(0.95) > q {
			low = middle
		} else {
			top = middle
		}
	}
	return math.Exp(top)
}
