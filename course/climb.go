package course

// A Climb is a stretch that gains height from its start to its top, humps and dips
// smaller than the least rise kept inside it.
type Climb struct {
	Start, Top float64 // m from the start of the course
	Rise       float64 // m from start to top
	Name       string  // of the landmark that stands at the top or on the climb, if any
	Relief
}

// Length returns the horizontal length in metres.
func (c Climb) Length() float64 { return c.Top - c.Start }

// Gradient returns the mean gradient.
func (c Climb) Gradient() float64 { return c.Rise / c.Length() }

// DefaultRise is the least rise in metres of a climb worth its own line in a plan.
const DefaultRise = 30

// gentle is the gradient below which the ground before or after a climb is not counted
// as a part of it.
const gentle = 0.015

// Climbs returns the climbs that rise at least leastRise metres (0 or less: DefaultRise),
// in order. A climb runs from a low point to the next high point such that no dip
// between them is as deep as leastRise, less the ends that rise more gently than
// 1.5 %. It takes the name of a landmark within nameReach of its top or, failing that,
// of the last landmark of kind Top on it.
func (c *Course) Climbs(leastRise float64) []Climb {
	if !(leastRise > 0) {
		leastRise = DefaultRise
	}
	var climbs []Climb
	for _, leg := range rises(c.elevation, leastRise) {
		low, top := trim(c.distance, c.elevation, leg.low, leg.top)
		rise := c.elevation[top] - c.elevation[low]
		if rise < leastRise {
			continue
		}
		climb := Climb{Start: c.distance[low], Top: c.distance[top], Rise: rise}
		climb.Relief = c.ReliefBetween(climb.Start, climb.Top)
		climb.Name = c.nameOf(climb)
		climbs = append(climbs, climb)
	}
	return climbs
}

// leg is a rise from a low point to a high point, by index.
type leg struct{ low, top int }

// rises returns the legs up that remain of a profile when every reversal smaller than
// least is taken out: the pairs of a low and a high point whose topological
// persistence is at least that, joined where only smaller ones lie between.
func rises(z []float64, least float64) []leg {
	var legs []leg
	low, top := 0, 0
	up := false // whether a rise of at least least has begun at low
	for i := range z {
		switch {
		case up && z[i] > z[top]:
			top = i
		case up && z[top]-z[i] >= least:
			legs = append(legs, leg{low, top})
			up, low = false, i
		case !up && z[i] < z[low]:
			low = i
		case !up && z[i]-z[low] >= least:
			up, top = true, i
		}
	}
	if up {
		legs = append(legs, leg{low, top})
	}
	return legs
}

// trim moves the ends of a leg inward to where z − gentle·x has its least and then its
// greatest value.
func trim(x, z []float64, low, top int) (int, int) {
	height := func(i int) float64 { return z[i] - gentle*x[i] }
	last := low
	bestLow, bestTop, best := low, top, height(top)-height(low)
	for i := low; i <= top; i++ {
		if height(i) < height(last) {
			last = i
		}
		if rise := height(i) - height(last); rise > best {
			bestLow, bestTop, best = last, i, rise
		}
	}
	return bestLow, bestTop
}

// nameReach is how far from a top a landmark may stand and still name the climb: a
// tenth of the climb's length, but 150 to 500 m.
func nameReach(c Climb) float64 { return min(max(c.Length()/10, 150), 500) }

func (c *Course) nameOf(climb Climb) string {
	name, nearest, onTop := "", nameReach(climb), false
	for _, l := range c.landmarks {
		off := l.Distance - climb.Top
		switch near := max(off, -off) <= nearest; {
		case near && (l.Kind == Top || !onTop):
			name, nearest, onTop = l.Name, max(off, -off), l.Kind == Top
		case name == "" && l.Kind == Top && l.Distance > climb.Start && off < 0:
			name = l.Name
		}
	}
	return name
}
