package course

// Relief is the climbing and falling of ground between two places, in metres, and the
// width of the window that the elevations were smoothed over (0: as given). Figures
// under different smoothing cannot be compared: noise of SD s in each of n independent
// samples of level ground adds n s/√π, which is 0.564 n s, to the summed ascent and as much
// to the descent, and less on slopes (computed: the mean of a normal variable of SD s√2
// where it is positive; TestAscentOfNoise).
type Relief struct {
	Ascent, Descent float64
	Smoothing       float64
}

// accumulate fills the columns of ascent and descent so far.
func (c *Course) accumulate() {
	c.ascent, c.descent = make([]float64, len(c.elevation)), make([]float64, len(c.elevation))
	for i := 1; i < len(c.elevation); i++ {
		rise := c.elevation[i] - c.elevation[i-1]
		c.ascent[i] = c.ascent[i-1] + max(rise, 0)
		c.descent[i] = c.descent[i-1] + max(-rise, 0)
	}
}

// Relief returns the ascent and descent of the whole course.
func (c *Course) Relief() Relief { return c.ReliefBetween(0, c.Length()) }

// ReliefBetween returns the ascent and descent between two distances from the start in
// metres, each taken to lie on the course. It is zero unless from < to.
func (c *Course) ReliefBetween(from, to float64) Relief {
	r := Relief{Smoothing: c.smoothing}
	if from < to {
		r.Ascent = c.at(c.ascent, to) - c.at(c.ascent, from)
		r.Descent = c.at(c.descent, to) - c.at(c.descent, from)
	}
	return r
}
