package calibrate

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"isoeffort.example/effort"
)

// pace is a pace over a run's ground and where it was last found.
type pace struct {
	gaits     []effort.Gait // held while the minimum is searched for
	intensity float64       // ln
	moving    float64       // ln s
	endurance float64       // of the athlete then
	known     bool
}

// guess is where to look for the intensity of an athlete near the last one: it falls with
// the duration as (T/3600 s)^−k does.
func (k *pace) guess(a *effort.Athlete, moving float64) float64 {
	hour := math.Log(3600)
	return k.intensity + k.endurance*(k.moving-hour) - a.Endurance*(moving-hour)
}

// reached is what a traverse came to.
type reached struct{ intensity, moving, spent float64 } // logarithms

// near is what may be left of a step to an intensity, which the secant then covers to the
// square of it.
const near = 2e-6

// seek finds the ln intensity at which miss, of what a traverse reached, is 0, from a guess
// and a guess of the slope of miss, and what is reached there: to a secant's reach of near.
func seek(guess, slope, near float64, at func(x float64) reached, miss func(reached) float64) (reached, bool) {
	now := at(guess)
	for range 12 {
		step := -miss(now) / slope
		if !(math.Abs(step) <= 1) {
			return now, false
		}
		before := now
		now = at(now.intensity + step)
		if now.intensity == before.intensity {
			return now, true
		}
		dx := now.intensity - before.intensity
		if s := (miss(now) - miss(before)) / dx; s*slope > 0 {
			slope = s
		}
		if rest := -miss(now) / slope; math.Abs(rest) < near {
			byMoving := (now.moving - before.moving) / dx
			return reached{now.intensity + rest, now.moving + rest*byMoving, 0}, true
		}
	}
	return now, false
}

// traverse makes the function that goes over the ground at a ln intensity.
func (p *problem) traverse(tilt float64, gaits []effort.Gait) func(x float64) reached {
	return func(x float64) reached {
		x = math.Max(-20, math.Min(20, x))
		p.trace = p.in.Traverse(effort.State{}, effort.Pace{Intensity: math.Exp(x), Tilt: tilt, Gaits: gaits})
		end := p.trace.Finish()
		return reached{x, math.Log(end.Moving), math.Log(end.Spent)}
	}
}

// fastest returns ln of the fastest time over a run's ground for an athlete with a tilt,
// the gaits held, from the intensity found last.
func (p *problem) fastest(u *run, a effort.Athlete, tilt float64) (float64, error) {
	if err := p.reset(u.ground, a, u); err != nil {
		return 0, err
	}
	k := &u.free
	if k.known {
		moving := k.moving // near enough: k is small
		at, ok := seek(k.guess(&a, moving), 1/a.Endurance-1, near, p.traverse(tilt, k.gaits), func(r reached) float64 { return r.spent })
		if ok {
			return at.moving, nil
		}
	}
	s, err := p.in.Solve(effort.State{}, effort.Demand{Tilt: tilt, Gaits: k.gaits})
	if err != nil {
		return 0, err
	}
	return math.Log(s.Finish().Moving), nil
}

// sections returns ln of the model's time of each section at the pace that takes the
// time that was run, the gaits held.
func (p *problem) sections(dst []float64, u *run, a effort.Athlete, tilt float64) ([]float64, error) {
	if err := p.reset(u.ground, a, u); err != nil {
		return dst, err
	}
	k, want := &u.paced, math.Log(u.seconds)
	_, ok := seek(k.intensity, -1, near, p.traverse(tilt, k.gaits), func(r reached) float64 { return r.moving - want })
	if !ok {
		return dst, fmt.Errorf("calibrate: %w: no pace takes the time of result %d", effort.ErrDemand, u.number)
	}
	return p.timed(dst, u), nil
}

// timed reads the sections off the traverse at hand, in proportion to the time run.
func (p *problem) timed(dst []float64, u *run) []float64 {
	whole, before := p.trace.Finish().Moving, 0.0
	scale := u.seconds / whole
	for i, place := range u.ends {
		moving := whole
		if i < len(u.ends)-1 {
			moving = p.trace.At(place * u.ground.Length() / u.result.Length()).Moving
		}
		dst = append(dst, math.Log(scale*(moving-before)))
		before = moving
	}
	return dst
}

// reset makes the integrator ready, unless the context is done.
func (p *problem) reset(g *effort.Ground, a effort.Athlete, u *run) error {
	if err := p.ctx.Err(); err != nil {
		return err
	}
	return p.in.Reset(g, a, u.surroundings)
}

// rule finds the fastest time with the gaits left to the rule, which then hold, and its
// slopes by the logarithms of the athlete's numbers where there is no tilt. It reports
// whether gaits changed.
func (p *problem) rule(u *run, a effort.Athlete, tilt float64) (moving float64, slope [effort.Numbers]float64, changed bool, err error) {
	if err = p.reset(u.ground, a, u); err != nil {
		return 0, slope, false, err
	}
	x := 0.0
	if tilt == 0 {
		f, err := p.in.Fastest(nil)
		if err != nil {
			return 0, slope, false, err
		}
		moving, x, slope = math.Log(f.Moving), math.Log(f.Intensity), f.Slope
	} else {
		s, err := p.in.Solve(effort.State{}, effort.Demand{Tilt: tilt})
		if err != nil {
			return 0, slope, false, err
		}
		moving, x = math.Log(s.Finish().Moving), math.Log(s.Intensity)
	}
	changed = u.free.hold(p.in.Gaits())
	u.free.found(x, moving, &a)
	return moving, slope, changed, nil
}

func (k *pace) hold(gaits []effort.Gait) (changed bool) {
	changed = !slices.Equal(k.gaits, gaits)
	k.gaits = append(k.gaits[:0], gaits...)
	return changed
}

func (k *pace) found(x, moving float64, a *effort.Athlete) {
	k.intensity, k.moving, k.endurance, k.known = x, moving, a.Endurance, true
}

// held is the fastest time with the gaits held, and its slopes.
func (p *problem) held(u *run, a effort.Athlete) (moving float64, slope [effort.Numbers]float64, err error) {
	if err = p.reset(u.ground, a, u); err != nil {
		return 0, slope, err
	}
	f, err := p.in.Fastest(u.free.gaits)
	if err != nil && !(errors.Is(err, effort.ErrDemand) && f.Moving > 0) {
		return 0, slope, err
	}
	return math.Log(f.Moving), f.Slope, nil
}
