package fuel

import "time"

// Fluid returns the range of fluid in ml/h within which thirst decides, at a WBGT in °C and a
// gross metabolic power in W/kg, for a race of a duration:
//
//	high = the lesser of 400 + 200 (h + f) and 500 + 300 f,  low = high/2 − 100, and 0 up to 75 min
//	h = (WBGT − 10)/18 and f = (power − 6)/8, each held within 0 and 1
//
// so the high end is 400 to 800 ml/h, and 500 at most for the slow: it is slow runners, long on
// the way, who drink themselves ill. NaN counts as h = 0.5 and f = 0.
//
// Sources, from memory: 0.4 to 0.8 l/h, the lower for slow and light runners in the cool, the
// higher for fast and heavy ones in the warm (American College of Sports Medicine 2007, Med Sci
// Sports Exerc 39:377); drink to thirst (Hew-Butler et al. 2015, Clin J Sport Med 25:303). The
// steps between, the low end and the cap by f are [Our own].
func Fluid(wbgt, power float64, duration time.Duration) Range {
	h, f := 0.5, 0.0
	if wbgt == wbgt {
		h = within((wbgt - 10) / 18)
	}
	if power == power {
		f = within((power - 6) / 8)
	}
	r := Range{High: 400 + 200*(h+f)}
	r.High = min(r.High, 500+300*f)
	if duration > shortRace {
		r.Low = r.High/2 - 100
	}
	return r
}

func within(x float64) float64 { return max(0, min(1, x)) }
