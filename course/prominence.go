package course

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
		case !up && z[i] <= z[low]:
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
func trim(x, z []float64, gentle float64, l leg) leg {
	height := func(i int) float64 { return z[i] - gentle*x[i] }
	last := l.low
	trimmed, best := l, height(l.top)-height(l.low)
	for i := l.low; i <= l.top; i++ {
		if height(i) < height(last) {
			last = i
		}
		if rise := height(i) - height(last); rise > best {
			trimmed, best = leg{last, i}, rise
		}
	}
	return trimmed
}

// steepWindow is the length in metres over which the steepest gradient of a climb is
// taken. [Our own]
const steepWindow = 100.0

// steepest returns the greatest mean gradient over steepWindow within a leg, or over the
// leg where it is shorter. The gradient over a window is a straight line between places
// where one of its ends meets a point, so only those are looked at.
func (c *Course) steepest(l leg) float64 {
	from, to := c.distance[l.low], c.distance[l.top]
	if to-from <= steepWindow {
		return c.Gradient(from, to)
	}
	worst := c.Gradient(from, from+steepWindow)
	for _, x := range c.distance[l.low : l.top+1] {
		if x+steepWindow <= to {
			worst = max(worst, (c.Elevation(x+steepWindow)-c.Elevation(x))/steepWindow)
		}
		if x-steepWindow >= from {
			worst = max(worst, (c.Elevation(x)-c.Elevation(x-steepWindow))/steepWindow)
		}
	}
	return worst
}
