package calibrate

import (
	"math"
	"slices"

	"isoeffort.example/effort"
)

// starts are where to begin: everything as the prior has it but for the hour power, which
// is put where the closed form for the work of the results would: by their median, and
// then by others of them.
func (p *problem) starts() [][]float64 {
	prior := p.o.Prior[effort.HourPower]
	usual := make([]float64, p.dims())
	if prior.LogSD == 0 {
		return [][]float64{usual}
	}
	a, _, _ := p.athlete(usual)
	var each []float64
	for _, u := range p.runs {
		if u.result.DNF {
			continue
		}
		ln := math.Log(u.ground.RunningWork(a) / a.UniformWork(effort.Seconds(u.seconds)) * a.HourPower / prior.Median)
		each = append(each, math.Max(-3, math.Min(3, ln/prior.LogSD)))
	}
	if len(each) == 0 {
		return [][]float64{usual}
	}
	slices.Sort(each)
	last := len(each) - 1
	var starts [][]float64
	for _, at := range [...]int{last / 2, last / 4, last - last/4} {
		z := slices.Clone(usual)
		z[effort.HourPower] = each[at]
		starts = append(starts, z)
	}
	return starts
}

// farOff is the weight, of that of a result on the fit, below which one lies far off.
const farOff = 0.3

// outlying reports whether a finish lies so far off that there may be another minimum.
func (p *problem) outlying() bool {
	far := false
	p.each(func(i int, k kind) {
		if !k.bound && !k.split && p.term(k, p.resid[i]).weight < farOff*tailed(0, p.o.Tails).weight {
			far = true
		}
	})
	return far
}

const (
	offsetSlack = 1e-4 // of ln(time), by which an offset may be off
	offsetReach = 0.01 // prior SDs over which an offset does not change by that
)

// fill puts in what grounds in fewer cells leave out, and reports whether that moved a
// residual.
func (d *descent) fill() (moved bool, err error) {
	p := d.problem
	if d.filledAt != nil && apart(d.filledAt, p.z) < offsetReach {
		return false, nil
	}
	d.filledAt = append(d.filledAt[:0], p.z...)
	a, _, lean := p.athlete(p.z)
	i := 0
	for _, u := range p.runs {
		if u.whole != nil {
			if err := p.reset(u.whole, u.day(a, p.z), u); err != nil {
				return false, err
			}
			s, err := p.in.Solve(effort.State{}, effort.Demand{Tilt: lean})
			if err != nil {
				return false, err
			}
			miss := p.resid[i] - (math.Log(u.seconds) - math.Log(s.Finish().Moving))
			moved = moved || math.Abs(miss) > offsetSlack
			d.chosen = gaitRounds // what is put in is for the gaits at hand
			u.offset += miss
			p.resid[i] -= miss
		}
		i += u.rows
	}
	p.value = p.f(p.z, p.resid)
	p.hold()
	return moved, nil
}

// apart is the greatest difference of two vectors' elements.
func apart(a, b []float64) float64 {
	most := 0.0
	for i := range a {
		most = math.Max(most, math.Abs(a[i]-b[i]))
	}
	return most
}
