package cohort

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// A mixture is Student's t about a normal mean: the errors' quantiles by scale, from a
// few precisions that stand for the chi-square distribution of all.
type mixture struct{ spread [24]float64 }

func newMixture(nu float64) (m mixture) {
	g := distuv.Gamma{Alpha: nu / 2, Beta: nu / 2}
	for k := range m.spread {
		m.spread[k] = 1 / g.Quantile((float64(k)+0.5)/float64(len(m.spread)))
	}
	return m
}

// half is how far from the median a share of the distribution lies on either side, its
// variance being that of the normal part and its scale that of the Student's.
func (m *mixture) half(share, variance, scale float64) float64 {
	low, top := 0.0, 20*math.Sqrt(variance+scale*scale)
	for range 60 {
		middle := (low + top) / 2
		inside := 0.0
		for _, v := range m.spread {
			inside += math.Erf(middle / math.Sqrt(2*(variance+scale*scale*v)))
		}
		if inside/float64(len(m.spread)) < share {
			low = middle
		} else {
			top = middle
		}
	}
	return (low + top) / 2
}
