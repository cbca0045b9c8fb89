package story

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"isoeffort.example/course"
	"isoeffort.example/effort"
)

// A Stretch is a piece of the course that asks for a word.
type Stretch struct {
	Part
	Why Reason
}

// Gradient is the mean gradient.
func (s Stretch) Gradient() float64 { return (s.Ascent - s.Descent) / (s.To - s.From) }

// Reason says why a stretch is told of.
type Reason int

// The reasons.
const (
	Gentle       Reason = iota // long and gentle, after the hard part
	EarlyDescent               // a descent early in the race that tempts to let go
	EarlyFlat                  // level ground at the start that tempts to hurry
)

func (r Reason) String() string {
	names := [...]string{"gentle", "early descent", "early flat"}
	if r < 0 || int(r) >= len(names) {
		return "no reason"
	}
	return names[r]
}

const (
	look     = 100.0 // m, how often the gradient is looked at
	window   = 400.0 // m, over which
	bridging = 300.0 // m, of other ground that does not end a stretch

	gentleLow, gentleTop = -0.06, 0.01 // gradients that a runner moves on with ease
	gentleLength         = 1500.0      // m
	gentleShare          = 0.02        // of the course, whichever is more

	descentTop    = -0.02  // gradient
	descentLength = 800.0  // m
	flatBound     = 0.015  // gradient, up and down
	flatLength    = 1000.0 // m
	early         = 0.3    // share of the effort
)

// stretches are the longest pieces of a course between two distances whose gradient, over
// window, is within bounds throughout but for short bits.
func stretches(c *course.Course, from, to, low, top, least float64) (found [][2]float64) {
	start, end := math.NaN(), math.NaN()
	finish := func() {
		if end-start >= least {
			found = append(found, [2]float64{start, end})
		}
		start, end = math.NaN(), math.NaN()
	}
	for a := from; a+look <= to; a += look {
		middle := a + look/2
		g := c.Gradient(math.Max(0, middle-window/2), math.Min(c.Length(), middle+window/2))
		if g >= low && g <= top {
			if math.IsNaN(start) {
				start = a
			}
			end = a + look
		} else if a+look-end > bridging {
			finish()
		}
	}
	finish()
	return found
}

// makeUp are the gentle stretches after the hardest climb, where the ground gives time
// back at no more effort; on a course without a real climb there are none.
func makeUp(c *course.Course, t *effort.Tally, climbs []Climb) (found []Stretch) {
	hardest, from := realClimb, math.NaN()
	for _, climb := range climbs {
		if climb.Value >= hardest {
			hardest, from = climb.Value, climb.Top
		}
	}
	if math.IsNaN(from) {
		return nil
	}
	least := math.Max(gentleLength, gentleShare*c.Length())
	for _, s := range stretches(c, from, c.Length(), gentleLow, gentleTop, least) {
		found = append(found, Stretch{part(c, t, s[0], s[1]), Gentle})
	}
	return found
}

// overspend are the descents of the first part of the race, and the flat that it starts
// with, if hills come after.
func overspend(c *course.Course, t *effort.Tally, climbs []Climb) (found []Stretch) {
	end := reach(t, c.Length(), early)
	for _, s := range stretches(c, 0, end, math.Inf(-1), descentTop, descentLength) {
		found = append(found, Stretch{part(c, t, s[0], s[1]), EarlyDescent})
	}
	for _, s := range stretches(c, 0, end, -flatBound, flatBound, flatLength) {
		if len(climbs) > 0 && s[0] < flatLength {
			found = append(found, Stretch{part(c, t, s[0], s[1]), EarlyFlat})
		}
	}
	slices.SortFunc(found, func(a, b Stretch) int { return int(math.Copysign(1, a.From-b.From)) })
	return found
}

// reach is the distance at which a share of the effort is done.
func reach(t *effort.Tally, length, share float64) float64 {
	low, top := 0.0, length
	for top-low > 1 {
		if middle := (low + top) / 2; t.To(middle) < share*t.Total() {
			low = middle
		} else {
			top = middle
		}
	}
	return top
}

// ErrMark is wrapped by the error for a mark that is not on the course.
var ErrMark = errors.New("mark off the course")

// sorted checks marks and puts them in order.
func sorted(marks []Mark, c *course.Course) ([]Mark, error) {
	for i, m := range marks {
		if !(m.From >= 0 && m.From < m.To && m.To <= c.Length()) || m.Kind < Exposed || m.Kind > Crowded {
			return nil, fmt.Errorf("story: mark %d, from %g to %g m: %w", i+1, m.From, m.To, ErrMark)
		}
	}
	marks = slices.Clone(marks)
	slices.SortStableFunc(marks, func(a, b Mark) int {
		if a.From == b.From {
			return 0
		}
		return int(math.Copysign(1, a.From-b.From))
	})
	return marks, nil
}
