package calibrate

import (
	"math"

	"isoeffort.example/effort"
)

// closed is the closed form of a run's fastest time: all of it run on ground of one cost
// per metre. With h hour-equivalents of work, and τ the time in hours,
//
//	τ^(1−k) = ∫₀ʰ exp(φ h₀ ((1 + x/h₀)^q − 1)/q) dx
//
// It bends as the model does and costs a hundredth, so the search for the mode runs over
// it, held to the model's value and slopes where those were taken last.
type closed struct {
	running, braking float64 // work without braking, and per unit of it, J/kg
	value            float64 // what the model's ln time is beyond it at the point held to
	slope            []float64
	at               []float64 // that point

	// The sections are taken as straight there.
	sections, sectionSlopes []float64
}

// fadeScale is h₀ of effort.Athlete.Capability, in hour-equivalents.
const fadeScale = 1.5

// gauss are the nodes and weights of Gauss and Legendre's formula of four points on 0 to 1.
var gauss = [...][2]float64{
	{0.069431844202973712, 0.173927422568726928},
	{0.330009478207571868, 0.326072577431273072},
	{0.669990521792428132, 0.326072577431273072},
	{0.930568155797026287, 0.173927422568726928},
}

// prepare finds the work of a run's ground.
func (c *closed) prepare(g *effort.Ground, a effort.Athlete) {
	a.Braking = 0
	c.running = g.RunningWork(a)
	a.Braking = 1
	c.braking = g.RunningWork(a) - c.running
}

// time is ln of the time in hours, and its slopes by the logarithms of the numbers.
func (c *closed) time(a *effort.Athlete) (ln float64, slope [effort.Numbers]float64) {
	work := c.running + a.Braking*c.braking
	h := work / (3600 * a.HourPower)
	var sum, byFade, byShape float64
	for _, g := range gauss {
		log := math.Log1p(g[0] * h / fadeScale)
		power := math.Exp(a.FadeShape * log)
		fade := fadeScale * (power - 1) / a.FadeShape
		w := g[1] * h * math.Exp(a.Fade*fade)
		sum += w
		byFade += w * fade
		byShape += w * (fadeScale*power*log - fade)
	}
	end := math.Exp(a.Fade * fadeScale * (math.Pow(1+h/fadeScale, a.FadeShape) - 1) / a.FadeShape)
	order := 1 / (1 - a.Endurance)
	ln = order * math.Log(sum)
	slope[effort.HourPower] = -order * h * end / sum
	slope[effort.Endurance] = a.Endurance * order * ln
	slope[effort.Fade] = order * a.Fade * byFade / sum
	slope[effort.FadeShape] = order * a.Fade * byShape / sum
	slope[effort.Braking] = -slope[effort.HourPower] * a.Braking * c.braking / work
	return ln, slope
}

// hold holds the closed forms to the residuals and slopes at hand.
func (p *problem) hold() {
	n, row := p.dims(), 0
	a, scale, _ := p.athlete(p.z)
	for _, u := range p.runs {
		c := &u.closed
		day := u.day(a, p.z)
		ln, slope := c.time(&day)
		c.at = append(c.at[:0], p.z...)
		c.value = math.Log(u.seconds) - p.resid[row] - ln
		c.slope = append(c.slope[:0], p.jac[row*n:(row+1)*n]...)
		u.slopes(c.slope, slope, scale, -1)
		c.sections = append(c.sections[:0], p.resid[row+1:row+u.rows]...)
		c.sectionSlopes = append(c.sectionSlopes[:0], p.jac[(row+1)*n:(row+u.rows)*n]...)
		row += u.rows
	}
}

// slopes adds sign times the slopes by the unknowns.
func (u *run) slopes(dst []float64, slope, scale [effort.Numbers]float64, sign float64) {
	for i := range slope {
		dst[i] += sign * slope[i] * scale[i]
	}
	for i, f := range u.drift {
		dst[tilt+1+i] += sign * f * slope[effort.HourPower]
	}
}

// roughly sets residuals and slopes to those of the closed forms at z.
func (p *problem) roughly() {
	p.resid, p.jac = p.resid[:0], p.jac[:0]
	n := p.dims()
	a, scale, _ := p.athlete(p.z)
	for _, u := range p.runs {
		c := &u.closed
		day := u.day(a, p.z)
		ln, slope := c.time(&day)
		moved := ln + c.value
		for i, s := range c.slope {
			moved += s * (p.z[i] - c.at[i])
		}
		p.resid = append(p.resid, math.Log(u.seconds)-moved)
		from := len(p.jac)
		p.jac = append(p.jac, c.slope...)
		u.slopes(p.jac[from:], slope, scale, 1)
		for r, e := range c.sections {
			for i := range n {
				e -= c.sectionSlopes[r*n+i] * (p.z[i] - c.at[i])
			}
			p.resid = append(p.resid, e)
		}
		p.jac = append(p.jac, c.sectionSlopes...)
	}
	p.value = p.f(p.z, p.resid)
}
