package effort

import "math"

// powerAt is the effort power of a way at speed v, and its derivative.
func (m *mover) powerAt(w *way, v float64) (power, slope float64) {
	power, slope = w.perMetre*v, w.perMetre
	if w.motion.table != nil || w.motion.curve != nil {
		value, rise := w.motion.power(v, w.gradient)
		power, slope = power+w.base*value, slope+w.base*rise
	}
	if m.drag != 0 {
		u := v + m.wind
		r := m.relative(u)
		air := m.drag * r
		power += v * u * air
		if r > 0 {
			slope += air*(u+v) + m.drag*v*u*u/r
		}
	}
	return power, slope
}

const (
	// speedTolerance is the relative step of Newton's method after which the error, being
	// of the order of its square, is below 1e-11.
	speedTolerance = 2e-6

	// bisectTolerance is the same where the step was no Newton step.
	bisectTolerance = 1e-12

	// quickSteps is how many steps are tried before the bracket is watched.
	quickSteps = 8
)

// speed solves powerAt = p for a speed in (0, top], by Newton's method from a guess, and
// returns the slope there too. Where that leaves the bracket, it bisects.
func (m *mover) speed(w *way, p, guess, top float64) (v, slope float64) {
	v = guess
	for range quickSteps {
		value, slope := m.powerAt(w, v)
		next := v - (value-p)/slope
		if !(next > 0 && next <= top) {
			break
		}
		if math.Abs(next-v) <= speedTolerance*v {
			return next, slope
		}
		v = next
	}
	return m.bracketed(w, p, math.Min(v, top), top)
}

// bracketed is speed with a bracket around the solution.
func (m *mover) bracketed(w *way, p, v, top float64) (float64, float64) {
	low, slope := 0.0, 0.0
	for range 200 {
		var value float64
		value, slope = m.powerAt(w, v)
		if value <= p {
			low = v
		} else { // NaN too: a curve that ends below
			top = v
		}
		next, tolerance := v-(value-p)/slope, speedTolerance
		if !(next >= low && next <= top) {
			next, tolerance = (low+top)/2, bisectTolerance
		}
		if math.Abs(next-v) <= tolerance*v {
			return next, slope
		}
		v = next
	}
	return v, slope
}
