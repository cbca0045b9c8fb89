package course

import (
	"cmp"
	"fmt"
	"math"
)

// A Climb is a stretch that gains height from its start to its top, humps and dips
// smaller than the least rise kept inside it.
type Climb struct {
	Start, Top float64 // m from the start of the course
	Rise       float64 // m from start to top
	Name       string  // of the landmark that stands at the top or on the climb, if any
	Steepest   float64 // the greatest mean gradient over 100 m of it, or over all if it is shorter
	Relief
}

// Length returns the horizontal length in metres.
func (c Climb) Length() float64 { return c.Top - c.Start }

// Gradient returns the mean gradient.
func (c Climb) Gradient() float64 { return c.Rise / c.Length() }

// Label returns the name or, failing that, where the climb lies, in kilometres.
func (c Climb) Label() string { return label("climb", c.Name, c.Start, c.Top) }

func label(what, name string, from, to float64) string {
	if name != "" {
		return name
	}
	return fmt.Sprintf("%s from %.1f to %.1f km", what, from/1000, to/1000)
}

// DefaultRise is the least rise in metres of a climb worth its own line in a plan.
// [Our own]
const DefaultRise = 30

// gentle is the gradient below which the ground before or after a climb is not counted
// as a part of it. [Our own]
const gentle = 0.015

// ClimbOptions say what is a climb, or a descent. The zero value is ready.
type ClimbOptions struct {
	// LeastRise is the least rise of a climb in metres, and the depth of the dips that
	// part one climb from the next. 0 or less and NaN mean DefaultRise, or without a
	// limit where there is a Measure.
	LeastRise float64

	// Gentle is the gradient below which the ground at the ends of a climb does not
	// belong to it. 0 means 0.015, less than 0 or NaN leaves the ends as they are:
	// from the lowest to the highest point.
	Gentle float64

	// Measure, if not nil, says what it takes to get from one distance to another, both
	// on this course in metres, from <= to: the effort, the time, in any unit. A climb
	// must measure at least Least, and a dip parts one climb from the next only where the
	// way from its bottom to the height of the top before it measures as much. Measured
	// by the rise itself it is the same as LeastRise. A measure of NaN is too little.
	Measure func(from, to float64) float64
	Least   float64
}

// filled returns the options with what the zero values stand for.
func (o ClimbOptions) filled() ClimbOptions {
	switch {
	case o.LeastRise > 0:
	case o.Measure != nil:
		o.LeastRise = 0
	default:
		o.LeastRise = DefaultRise
	}
	switch {
	case o.Gentle == 0:
		o.Gentle = gentle
	case !(o.Gentle > 0):
		o.Gentle = -1
	}
	return o
}

// Climbs returns the climbs that rise at least leastRise metres (0 or less: DefaultRise),
// in order. It is ClimbsWith under that option alone.
func (c *Course) Climbs(leastRise float64) []Climb {
	return c.ClimbsWith(ClimbOptions{LeastRise: leastRise})
}

// ClimbsWith returns the climbs in order. A climb runs from a low point to the next high
// point such that no dip between them is as deep as the least rise, less the ends that
// rise more gently than 1.5 %, if what is left is still as high. It is cut to the points
// between which it gains most over a line of that gradient, and what lies before and after
// that is looked at in the same way: two climbs with level ground between them and no dip
// as deep as the least rise are two. Of one that is gentle on the whole only steep parts
// may be left, or nothing. There is no window of fixed
// width in this: it is the prominence of the tops that counts. Said in two other ways,
// before the ends are cut:
//
// The climbs are the longest stretches whose start is their lowest point, whose end is
// their highest, which rise by at least the least rise and in which nothing falls by as
// much. No two such stretches overlap.
//
// Their tops are the points that stand above both of two lows by the least rise: the
// lowest one since the course was last higher, or since the start, and the lowest one
// before it is next higher, the ground beyond the finish being taken as lower. That is
// their topographic prominence on the profile, or the persistence of the pair of a low
// and a high point. Of equal lows the last counts, of equal highs the first.
//
// A climb takes the name of a landmark near its top, nearer than a tenth of its length
// but 150 to 500 m, one of kind Top before others; or failing that, of the last landmark
// of kind Top on it.
func (c *Course) ClimbsWith(o ClimbOptions) []Climb {
	var climbs []Climb
	for _, leg := range c.find(o) {
		climbs = append(climbs, c.climb(leg))
	}
	return climbs
}

// find returns the climbs by the indices of their ends.
func (c *Course) find(o ClimbOptions) []leg {
	o = o.filled()
	var legs []leg
	if o.Measure == nil {
		legs = rises(c.elevation, o.LeastRise)
	} else {
		legs = c.measured(o)
	}
	if o.Gentle > 0 {
		var cut []leg
		for _, l := range legs {
			cut = append(cut, c.steeps(o, l)...)
		}
		legs = cut
	}
	found := legs[:0]
	for _, leg := range legs {
		rise := c.elevation[leg.top] - c.elevation[leg.low]
		if !(rise >= o.LeastRise && rise > 0) {
			continue
		}
		if o.Measure == nil || o.Measure(c.distance[leg.low], c.distance[leg.top]) >= o.Least {
			found = append(found, leg)
		}
	}
	return found
}

// climb describes a leg.
func (c *Course) climb(l leg) Climb {
	climb := Climb{
		Start: c.distance[l.low], Top: c.distance[l.top], Rise: c.elevation[l.top] - c.elevation[l.low],
		Steepest: c.steepest(l),
	}
	climb.Relief = c.ReliefBetween(climb.Start, climb.Top)
	climb.Name = c.nameOf(climb)
	return climb
}

// Humps returns the climbs within a climb that are seen when smaller ones count: none
// unless there are two or more. LeastRise is here that of a hump, 0 or less meaning a
// third of DefaultRise. The climb may be any stretch of the course.
func (c *Course) Humps(within Climb, o ClimbOptions) []Climb {
	if !(o.LeastRise > 0) && o.Measure == nil {
		o.LeastRise = DefaultRise / 3
	}
	start := max(within.Start, 0)
	part, err := c.Part(start, min(within.Top, c.Length()))
	if err != nil {
		return nil
	}
	if measure := o.Measure; measure != nil {
		o.Measure = func(from, to float64) float64 { return measure(start+from, start+to) }
	}
	humps := part.ClimbsWith(o)
	if len(humps) < 2 {
		return nil
	}
	for i := range humps {
		humps[i].Start += start
		humps[i].Top += start
		humps[i].Name = c.nameOf(humps[i])
	}
	return humps
}

// nameReach is how far from a top a landmark may stand and still name the climb: a
// tenth of the climb's length, but 150 to 500 m. [Our own]
func nameReach(c Climb) float64 { return min(max(c.Length()/10, 150), 500) }

func (c *Course) nameOf(climb Climb) string {
	name, top, on := "", "", ""
	nearest, nearestTop := nameReach(climb), nameReach(climb)
	for _, l := range c.landmarks {
		off := math.Abs(l.Distance - climb.Top)
		if off <= nearest {
			name, nearest = l.Name, off
		}
		if l.Kind != Top {
			continue
		}
		if off <= nearestTop {
			top, nearestTop = l.Name, off
		}
		if l.Distance > climb.Start && l.Distance < climb.Top {
			on = l.Name
		}
	}
	return cmp.Or(top, name, on)
}

// steeps returns the steep parts of a leg, in order.
func (c *Course) steeps(o ClimbOptions, l leg) []leg {
	t := trim(c.distance, c.elevation, o.Gentle, l)
	if rise := c.elevation[t.top] - c.elevation[t.low]; !(rise >= o.LeastRise && rise > 0) || t == l {
		return []leg{t}
	}
	return append(append(c.steeps(o, leg{l.low, t.low}), t), c.steeps(o, leg{t.top, l.top})...)
}
