package follow

import (
	"math"
	"time"
)

// Verdict says how the effort ran over the race, beside the plan.
type Verdict int

// The verdicts.
const (
	TooShort       Verdict = iota // too few pieces to tell
	Even                          // no fall that can be told
	OpenedTooFast                 // opened above the plan, and fell steadily
	Faded                         // held, and then fell from a place on
	OpenedAndFaded                // opened above the plan, and fell from a place on
	FellSteadily                  // opened about as planned or below, and fell from the start
)

func (v Verdict) String() string {
	names := [...]string{"too short to tell", "even", "opened too fast", "faded", "opened too fast and faded", "fell steadily"}
	if v < 0 || int(v) >= len(names) {
		return "no verdict"
	}
	return names[v]
}

// Pacing is how relative intensity, over that of the plan at the same place, ran over the
// race: a straight line in the share s of the plan's work that is done, and from a place s₀
// on a second one that falls faster, or a step down, whichever fits better,
//
//	Level · (1 + Tilt (1 − 2s)) − fall · max(0, s − s₀),  or − fall where s > s₀,
//
// fitted by least squares to pieces of 5 minutes or more, 36 at most, or to the splits.
// The second line is only kept where it explains much more than it would by chance
// (F above 8), falls by 3 % or more by the finish and starts after a sixth of the work. The
// athlete's own fade is in the plan's capability, so a fall is one beyond it.
//
// What one race cannot tell: a runner whose fade is stronger than the plan's numbers
// say, and who paces evenly by feel, falls steadily just as one who opened too fast; so
// that is only called too fast where the opening was above the plan. Whether a fast
// opening brought on a later fade cannot be told either. [Our own.]
type Pacing struct {
	Verdict Verdict

	// Opening is the intensity over the plan's on the first fifth of the work, 1 as planned.
	Opening float64

	// Level and Tilt are those of the line; Tilt above 0 starts fast.
	Level, Tilt float64

	// From is where the fade set in, and Gun when; Drop is the share of intensity lost by the
	// finish against going on as before. All are 0 without a fade. Take the place for good to a
	// tenth of the race.
	From float64
	Gun  time.Duration
	Drop float64
}

const (
	leastPiece    = 300.0 // s
	mostPieces    = 36
	fewestPieces  = 8
	openingShare  = 0.2
	clearTilt     = 0.03 // from which intensity is said to fall
	clearOpening  = 1.02 // from which an opening is above the plan
	clearDrop     = 0.03
	clearF        = 8
	firstFade     = 1.0 / 6
	lastFade      = 0.92
	fadeStep      = 0.01
	leastResidual = 1e-3 // what a fit may leave without a second line being looked for
)

// piece is a part of the race for the fit.
type piece struct {
	s, y, weight float64 // share of the work at its middle, intensity over the plan's, seconds
}

// pieces are the parts that the fit looks at.
func (v *review) pieces() (out []piece) {
	total, from := v.plan.Traverse().Finish().Work, 0.0
	for _, l := range v.legs(leastPiece, mostPieces)[1:] {
		start := v.stateAt(from)
		s := v.stretch(start, l.to, l.seconds)
		a, b := v.plan.State(from), v.plan.State(l.to)
		out = append(out, piece{s: (a.Work + b.Work) / (2 * total), y: s.used / v.planned(from, l.to), weight: l.seconds})
		from = l.to
	}
	return out
}

// pacing fits the lines and judges them.
func (v *review) pacing() Pacing {
	all := v.pieces()
	one := fitLine(all, 1)
	p := Pacing{Opening: opening(all), Level: one.level, Tilt: one.slope / one.level}
	if len(all) < fewestPieces {
		return p
	}
	p.Verdict = Even
	faded := false
	if two, at := fitFade(all); two.clear(one, len(all), at) {
		faded = true
		p.Level, p.Tilt = two.level, two.slope/two.level
		p.Drop = two.drop(at)
		p.From = v.workPlace(at)
		p.Gun = v.out.Line + millis(v.run.movingAt(p.From)+v.run.halted(p.From))
	}
	fast := p.Opening > clearOpening && (p.Tilt > clearTilt || faded)
	switch {
	case fast && faded:
		p.Verdict = OpenedAndFaded
	case faded:
		p.Verdict = Faded
	case fast:
		p.Verdict = OpenedTooFast
	case p.Tilt > clearTilt:
		p.Verdict = FellSteadily
	}
	return p
}

// opening is the mean over the first pieces.
func opening(all []piece) float64 {
	sum, weight := 0.0, 0.0
	for i, p := range all {
		if i == 0 || p.s <= openingShare {
			sum, weight = sum+p.y*p.weight, weight+p.weight
		}
	}
	return sum / weight
}

// workPlace is where a share of the plan's work is done.
func (v *review) workPlace(share float64) float64 {
	t := v.plan.Traverse()
	low, top := 0.0, v.plan.Course.Length()
	for top-low > 1 {
		middle := (low + top) / 2
		if t.At(middle).Work < share*t.Finish().Work {
			low = middle
		} else {
			top = middle
		}
	}
	return math.Round(low)
}

// line is a fit: level + slope (1 − 2s) − fall · bend(s, s₀).
type line struct {
	level, slope, fall, left float64
	step                     bool // whether the bend is one
}

// bend is how a second line falls, or a step, beyond s₀.
func bend(s, from float64, step bool) float64 {
	switch {
	case s <= from:
		return 0
	case step:
		return 1
	}
	return s - from
}

// drop is the share of intensity lost by the finish against going on as before.
func (l line) drop(at float64) float64 { return l.fall * bend(1, at, l.step) / (l.level - l.slope) }

// clear reports whether a second line is worth saying.
func (l line) clear(one line, n int, at float64) bool {
	free := float64(n - 4)
	chance := math.Max(l.left/free, leastResidual*leastResidual/float64(n))
	return at > 0 && l.fall > 0 && (one.left-l.left)/2/chance > clearF && l.drop(at) >= clearDrop
}

// fitFade finds the place of the second line that explains most.
func fitFade(all []piece) (best line, at float64) {
	best.left = math.Inf(1)
	for s := firstFade; s <= lastFade; s += fadeStep {
		for _, step := range []bool{false, true} {
			if l := fitBend(all, s, step); l.fall > 0 && l.left < best.left {
				best, at = l, s
			}
		}
	}
	return best, at
}

// fitLine is fitBend with a second line.
func fitLine(all []piece, from float64) line { return fitBend(all, from, false) }

// fitBend is the weighted least-squares fit with the second line or a step from a share on;
// weights are relative to their mean. From 1 on there is neither.
func fitBend(all []piece, from float64, step bool) line {
	n, mean := 3, 0.0
	if from >= 1 {
		n = 2
	}
	for _, p := range all {
		mean += p.weight / float64(len(all))
	}
	if len(all) < n+1 {
		return line{level: weighted(all)}
	}
	var m [3][4]float64
	for _, p := range all {
		row := [4]float64{1, 1 - 2*p.s, -bend(p.s, from, step), p.y}
		for i := range n {
			for j := range n {
				m[i][j] += p.weight / mean * row[i] * row[j]
			}
			m[i][3] += p.weight / mean * row[i] * row[3]
		}
	}
	x := solve(m, n)
	l := line{level: x[0], slope: x[1], fall: x[2], step: step}
	for _, p := range all {
		e := p.y - (x[0] + x[1]*(1-2*p.s) - x[2]*bend(p.s, from, step))
		l.left += p.weight / mean * e * e
	}
	return l
}

func weighted(all []piece) float64 {
	sum, weight := 0.0, 0.0
	for _, p := range all {
		sum, weight = sum+p.y*p.weight, weight+p.weight
	}
	return sum / weight
}

// solve solves n normal equations by elimination; what they leave open is 0.
func solve(m [3][4]float64, n int) (x [3]float64) {
	for i := range n {
		if m[i][i] < 1e-12 {
			m[i][i] = math.Inf(1)
		}
		for k := i + 1; k < n; k++ {
			f := m[k][i] / m[i][i]
			for j := i; j < 4; j++ {
				if !math.IsInf(m[i][j], 0) {
					m[k][j] -= f * m[i][j]
				}
			}
		}
	}
	for i := n - 1; i >= 0; i-- {
		x[i] = m[i][3]
		for j := i + 1; j < n; j++ {
			x[i] -= m[i][j] * x[j]
		}
		x[i] /= m[i][i]
	}
	return x
}
