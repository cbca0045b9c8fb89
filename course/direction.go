package course

import "math"

// HasTrack reports whether the course knows in which direction it runs: whether it was
// made with Options.Track.
func (c *Course) HasTrack() bool { return c.east != nil }

// Direction returns the mean, over the ground between two distances from the start in
// metres, of the unit vector towards which the course runs: its parts towards east and
// towards north. The mean is over horizontal distance,
//
//	1/(to − from) ∫ (sin h, cos h) dx,
//
// h being the heading. So its length is 1 on straight ground and less where the course
// turns, down to 0 over a loop or out and back; a wind of velocity w there blows along
// the course with w·Direction in the mean. The two distances are each taken to lie on
// the course. ok is false, and the direction zero, for a course without positions and
// unless from < to on the course, at NaN too.
//
// The heading is constant from one point of Options.Track to the next: the azimuth at
// the middle of the leg. A smoothed profile has one direction for each piece of
// its grid, the mean over that piece, so that the mean between any two points of the
// profile is that of the track; nothing else is smoothed. Rounding adds less than 1e-9
// over ranges of 10 m or more.
//
// Where a recorded track jumps to and fro about the line that was run, the heading is
// hardly touched over many points: what one jump displaced the next takes back. Over a
// straight range of L metres a jitter of SD s across the line turns the mean by no more
// than s√2/L radians (SD), 0.5° for 3 m and 500 m. But distances that were measured
// along the jumps are too long, and the length of the mean direction is short by the
// same factor: 0.91 for independent jumps of SD 3 m in east and north at every 10 m.
func (c *Course) Direction(from, to float64) (east, north float64, ok bool) {
	from, to = max(from, 0), min(to, c.Length())
	if !c.HasTrack() || !(from < to) {
		return 0, 0, false
	}
	east = (c.at(c.east, to) - c.at(c.east, from)) / (to - from)
	north = (c.at(c.north, to) - c.at(c.north, from)) / (to - from)
	if length := math.Hypot(east, north); length > 1 { // by rounding only
		east, north = east/length, north/length
	}
	return east, north, true
}

// leastDirection is the length of a mean direction below which it has no heading: there
// it is what rounding left of directions that cancel. [Our own]
const leastDirection = 1e-6

// Heading returns the mean heading between two distances from the start in metres, that
// of Direction: degrees clockwise from true north, 0 <= h < 360. It is NaN where
// Direction is not ok and where the directions cancel, their mean being shorter than
// 1e-6.
func (c *Course) Heading(from, to float64) float64 {
	east, north, ok := c.Direction(from, to)
	if !ok || math.Hypot(east, north) < leastDirection {
		return math.NaN()
	}
	return compass(east, north)
}

// A heading is a unit vector, or zero for none.
type heading struct{ east, north float64 }

// headings returns the heading of each leg of a track whose length is not zero: between
// two points at one distance it adds nothing.
func headings(track []Position, distance []float64) []heading {
	legs := make([]heading, 0, len(track))
	last := 0.0
	for i := 1; i < len(distance); i++ {
		d := distance[i] - distance[0]
		if !(d > last) {
			continue
		}
		last = d
		east, north := track[i-1].direction(track[i])
		legs = append(legs, heading{east, north})
	}
	return legs
}

// follow fills the columns of displacement: what the course has run towards east and
// towards north from the start to each point, in metres, along legs from each x to the
// next.
func (c *Course) follow(legs []heading, x []float64) {
	n := len(c.distance)
	c.east, c.north = make([]float64, n), make([]float64, n)
	var east, north float64 // up to x[k]
	next := 1
	for k, leg := range legs {
		for ; next < n && c.distance[next] <= x[k+1]; next++ {
			run := c.distance[next] - x[k]
			c.east[next], c.north[next] = east+run*leg.east, north+run*leg.north
		}
		run := x[k+1] - x[k]
		east, north = east+run*leg.east, north+run*leg.north
	}
}

// checkTrack returns the first position that is none as a *PointError.
func checkTrack(track []Position) error {
	for i, p := range track {
		if err := p.check(); err != nil {
			return &PointError{i, err}
		}
	}
	return nil
}
