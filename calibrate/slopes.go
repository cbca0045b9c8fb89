package calibrate

import (
	"errors"
	"fmt"
	"math"

	"isoeffort.example/effort"
)

// slopeStep is the step in prior SDs of the differences by which slopes are taken where
// there is no adjoint: with a tilt. Their error is of the order of a thousandth.
const slopeStep = 0.01

// refresh computes residuals and slopes at z anew, choosing the gaits by the rule unless
// they are held, and reports whether gaits changed.
func (p *problem) refresh(z []float64, held bool) (changed bool, err error) {
	defer func() {
		if r := recover(); r != nil {
			err = fmt.Errorf("calibrate: %w: %v", ErrNoFit, r)
		}
	}()
	p.resid, p.jac = p.resid[:0], p.jac[:0]
	a, scale, lean := p.athlete(z)
	for _, u := range p.runs {
		day := u.day(a, z)
		var anew bool
		if p.tilted {
			anew, err = p.byDifferences(u, day, lean, held)
		} else {
			anew, err = p.byAdjoint(u, day, scale, held)
		}
		if err != nil {
			return false, err
		}
		changed = changed || anew
	}
	p.value = p.f(z, p.resid)
	return changed, nil
}

// revalue computes the residuals of finish times anew, by the rule's gaits unless they are
// held, and reports whether gaits changed, and whether all went well.
func (p *problem) revalue(held bool) (changed, ok bool) {
	a, _, lean := p.athlete(p.z)
	row := 0
	for _, u := range p.runs {
		moving, anew, err := p.retime(u, u.day(a, p.z), lean, held)
		if err != nil {
			return false, false
		}
		changed = changed || anew
		p.resid[row] = math.Log(u.seconds) - moving - u.offset
		row += u.rows
	}
	p.value = p.f(p.z, p.resid)
	return changed, true
}

// gaitReach is how near an intensity must be for gaits to be chosen at it.
const gaitReach = 1e-4

// retime is ln of the fastest time of a run, from the intensity found last, or where that
// does not lead there, from none.
func (p *problem) retime(u *run, a effort.Athlete, lean float64, held bool) (moving float64, changed bool, err error) {
	if err := p.reset(u.ground, a, u); err != nil {
		return 0, false, err
	}
	k, slope := &u.free, 1/a.Endurance-1
	spent := func(r reached) float64 { return r.spent }
	ok := true
	if !held {
		var at reached
		if at, ok = seek(k.guess(&a, k.moving), slope, gaitReach, p.traverse(lean, nil), spent); ok {
			changed = k.hold(p.trace.Gait)
			k.found(at.intensity, at.moving, &a)
		}
	}
	if ok {
		if at, ok := seek(k.guess(&a, k.moving), slope, near, p.traverse(lean, k.gaits), spent); ok {
			k.found(at.intensity, at.moving, &a)
			return at.moving, changed, nil
		}
	}
	demand := effort.Demand{Tilt: lean}
	if held {
		demand.Gaits = k.gaits
	}
	s, err := p.in.Solve(effort.State{}, demand)
	if err != nil {
		return 0, false, err
	}
	changed = k.hold(p.in.Gaits()) || changed
	k.found(math.Log(s.Intensity), math.Log(s.Finish().Moving), &a)
	return k.moving, changed, nil
}

// byAdjoint appends the residual and the slopes of a run without splits.
func (p *problem) byAdjoint(u *run, a effort.Athlete, scale [effort.Numbers]float64, held bool) (changed bool, err error) {
	var moving float64
	var slope [effort.Numbers]float64
	if held {
		moving, slope, err = p.held(u, a)
	} else {
		moving, slope, changed, err = p.rule(u, a, 0)
	}
	if err != nil {
		return false, err
	}
	p.resid = append(p.resid, math.Log(u.seconds)-moving-u.offset)
	for n := range slope {
		p.jac = append(p.jac, slope[n]*scale[n])
	}
	p.jac = append(p.jac, 0) // the tilt
	for _, f := range u.drift {
		p.jac = append(p.jac, f*slope[effort.HourPower])
	}
	return changed, nil
}

// byDifferences is the same with a tilt, and for all residuals of a run. A run whose time
// no pace takes loses its splits.
func (p *problem) byDifferences(u *run, day effort.Athlete, lean float64, held bool) (changed bool, err error) {
	if !held {
		if changed, err = p.lead(u, day, lean); err != nil {
			return false, err
		}
	}
	from := len(p.resid)
	if p.resid, err = p.residualsOf(p.resid, u, day, lean); err != nil {
		return false, err
	}
	dims, rows := p.dims(), u.rows
	base := len(p.jac)
	p.jac = append(p.jac, make([]float64, rows*dims)...)
	var moved []float64
	for n := range tilt + 1 {
		a, step, there := p.beside(u, day, lean, n)
		if step == 0 {
			continue
		}
		if moved, err = p.residualsOf(moved[:0], u, a, there); err != nil {
			return false, err
		}
		for r := range rows {
			p.jac[base+r*dims+n] = -(moved[r] - p.resid[from+r]) / step
		}
	}
	byPower, scale := int(effort.HourPower), p.o.Prior[effort.HourPower].LogSD
	for r := range rows {
		for i, f := range u.drift {
			if scale > 0 {
				p.jac[base+r*dims+tilt+1+i] = f * p.jac[base+r*dims+byPower] / scale
			}
		}
	}
	return changed, nil
}

// beside is the athlete of a day with unknown n moved by a step in its SDs.
func (p *problem) beside(u *run, day effort.Athlete, lean float64, n int) (a effort.Athlete, step, there float64) {
	if n == tilt {
		there = lean + p.o.Tilt.SD*slopeStep
		if p.o.Tilt.SD == 0 || there > 0.5 {
			return day, 0, lean
		}
		return day, slopeStep, there
	}
	_, scale, _ := p.athlete(p.z)
	number := effort.Number(n)
	if scale[n] == 0 {
		return day, 0, lean
	}
	value := day.Get(number) * math.Exp(slopeStep*scale[n])
	if value > bounds[n][1] {
		return day, 0, lean
	}
	return day.Set(number, value), slopeStep, lean
}

// lead chooses the gaits of a run with splits by the rule: those of the fastest time, and
// those of the time that was run.
func (p *problem) lead(u *run, a effort.Athlete, lean float64) (changed bool, err error) {
	if _, _, changed, err = p.rule(u, a, lean); err != nil || len(u.took) == 0 {
		return changed, err
	}
	s, err := p.in.Solve(effort.State{}, effort.Demand{Moving: u.seconds, Tilt: lean})
	if errors.Is(err, effort.ErrDemand) {
		p.drop(u)
		return true, nil
	}
	if err != nil {
		return false, err
	}
	changed = u.paced.hold(p.in.Gaits()) || changed
	u.paced.found(math.Log(s.Intensity), math.Log(u.seconds), &a)
	return changed, nil
}

// drop leaves out the splits of a run.
func (p *problem) drop(u *run) {
	u.took, u.ends, u.rows = nil, nil, 1
	p.dropped = append(p.dropped, u)
}
