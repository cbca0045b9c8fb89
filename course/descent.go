package course

// A Descent is a stretch that loses height from its start to its foot, humps and dips
// smaller than the least drop kept inside it. It is a Climb of the reversed course.
type Descent struct {
	Start, Foot float64 // m from the start of the course
	Drop        float64 // m from start to foot, positive
	Name        string  // of the landmark at its start, the upper end, or on it, if any
	Steepest    float64 // the least (most negative) mean gradient over 100 m of it, or over all if it is shorter
	Relief
}

// Length returns the horizontal length in metres.
func (d Descent) Length() float64 { return d.Foot - d.Start }

// Gradient returns the mean gradient, which is negative.
func (d Descent) Gradient() float64 { return -d.Drop / d.Length() }

// Label returns the name or, failing that, where the descent lies, in kilometres.
func (d Descent) Label() string { return label("descent", d.Name, d.Start, d.Foot) }

// Descents returns the descents in order: what ClimbsWith finds on the reversed course,
// named by the same rule, as its mirror image. LeastRise is the least drop. Measure is
// asked for the way down, from < to on this course, and for a hump that may part two
// descents: for the way down to its foot from where the course is last as high as its top.
func (c *Course) Descents(o ClimbOptions) []Descent {
	m, n, length := c.mirror(), len(c.distance), c.Length()
	if measure := o.Measure; measure != nil {
		o.Measure = func(from, to float64) float64 { return measure(length-to, length-from) }
	}
	legs := m.find(o)
	descents := make([]Descent, len(legs))
	for i, l := range legs {
		climb := m.climb(l)
		d := Descent{
			Start: c.distance[n-1-l.top], Foot: c.distance[n-1-l.low],
			Drop: climb.Rise, Name: climb.Name, Steepest: -climb.Steepest,
		}
		d.Relief = c.ReliefBetween(d.Start, d.Foot)
		descents[len(legs)-1-i] = d
	}
	if len(descents) == 0 {
		return nil
	}
	return descents
}
