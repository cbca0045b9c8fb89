package course

import (
	"fmt"
	"math"
	"slices"
)

// maxStep is the difference of height in metres between the end of one course and the
// start of the next above which they are not taken to meet, and minStep the one below
// which it is not worth a warning. [Our own]
const (
	maxStep = 50.0
	minStep = 0.05
)

// maxPoints keeps laps of a tiny course from filling the memory.
const maxPoints = 10_000_000

// Join returns one course that runs through others one after the other. Lengths, ascents
// and descents add up, and what stands on each is carried over. A landmark at the end
// of one and one at the start of the next that are the same but for their distance
// become one. The name is that of the first that has one.
//
// Where a course starts higher or lower than the one before it ends, all of its
// elevations are moved so that they meet, which keeps gradients, ascent and descent; over
// 0.05 m it is a warning. Over 50 m, summed up from the first course, is an ErrNotMeeting,
// and an elevation that leaves the range of New an ErrElevationRange. Whether they
// meet on the map is not looked at.
//
// Smoothing is the widest of theirs, with a warning where they differ. The direction is
// known where all of them know theirs; there is a warning where only some do. The result
// may be no longer than New allows and have no more than 10 million points, ErrTooLong.
// To join no course is an ErrTooFewPoints.
func Join(courses ...*Course) (*Course, error) {
	if len(courses) == 0 {
		return nil, fmt.Errorf("course: no courses to join: %w", ErrTooFewPoints)
	}
	j := joiner{whole: &Course{distance: []float64{}, elevation: []float64{}}}
	j.sum(courses)
	if err := j.tooLarge(); err != nil {
		return nil, err
	}
	for i, c := range courses {
		if err := j.add(i, c); err != nil {
			return nil, err
		}
	}
	j.warnOfDifferences(courses)
	j.whole.settle()
	order(j.whole.landmarks)
	return j.whole, nil
}

// Laps returns the course run n times over, as Join does. It is an ErrOption unless
// n >= 1. A lap that does not end at the height at which it starts by up to 50 m in all is
// moved by as much each time.
func (c *Course) Laps(n int) (*Course, error) {
	if n < 1 {
		return nil, fmt.Errorf("course: %w: %d laps", ErrOption, n)
	}
	if length := float64(n) * c.Length(); length > MaxLength || n > maxPoints/c.Len() {
		return nil, tooLong(length)
	}
	return Join(slices.Repeat([]*Course{c}, n)...)
}

// OutAndBack returns the course followed by itself reversed. Landmarks are passed twice, but
// once at the turn.
func (c *Course) OutAndBack() (*Course, error) { return Join(c, c.Reverse()) }

// joiner gathers a course from others.
type joiner struct {
	whole  *Course
	length float64 // of all
	points int
	track  bool // whether all have one
	shift  float64
	worst  float64 // the greatest shift
	moved  int     // where, by course
}

// sum takes the measure of what is to come.
func (j *joiner) sum(courses []*Course) {
	j.track = true
	for _, c := range courses {
		j.length += c.Length()
		j.points += c.Len()
		j.track = j.track && c.HasTrack()
	}
}

func (j *joiner) tooLarge() error {
	switch {
	case j.length > MaxLength:
		return tooLong(j.length)
	case j.points > maxPoints:
		return fmt.Errorf("course: %w: %d points", ErrTooLong, j.points)
	}
	return nil
}

// add appends a course.
func (j *joiner) add(i int, c *Course) error {
	w := j.whole
	start, east, north := 0.0, 0.0, 0.0
	skip := 0 // the first point, which is the last of the course before
	if n := len(w.distance); n > 0 {
		skip, start = 1, w.distance[n-1]
		if err := j.meet(i, c); err != nil {
			return err
		}
		if j.track {
			east, north = w.east[n-1], w.north[n-1]
		}
	}
	w.distance = shifted(w.distance, c.distance[skip:], start)
	w.elevation = shifted(w.elevation, c.elevation[skip:], j.shift)
	if j.track {
		w.east, w.north = shifted(w.east, c.east[skip:], east), shifted(w.north, c.north[skip:], north)
		w.trail = w.trail.then(c.trail, start)
	}
	j.carry(c, start)
	return nil
}

func shifted(column, more []float64, by float64) []float64 {
	for _, v := range more {
		column = append(column, v+by)
	}
	return column
}

// meet finds by how much a course must be moved up to meet the end of the one before.
func (j *joiner) meet(i int, c *Course) error {
	end := j.whole.elevation[len(j.whole.elevation)-1]
	j.shift = end - c.elevation[0]
	if math.Abs(j.shift) > math.Abs(j.worst) {
		j.worst, j.moved = j.shift, i
	}
	if math.Abs(j.shift) > maxStep {
		return fmt.Errorf("course: course %d: %w: the one before ends at %.1f m, it starts at %.1f m", i, ErrNotMeeting, end, c.elevation[0])
	}
	low, high := slices.Min(c.elevation)+j.shift, slices.Max(c.elevation)+j.shift
	if low < MinElevation || high > MaxElevation {
		return fmt.Errorf("course: course %d: %w: moved by %+.1f m it lies at %g to %g m", i, ErrElevationRange, j.shift, low, high)
	}
	return nil
}

// carry takes over what is not ground, once the ground is there.
func (j *joiner) carry(c *Course, start float64) {
	w := j.whole
	if w.name == "" {
		w.name = c.name
	}
	w.smoothing = max(w.smoothing, c.smoothing)
	for _, warning := range c.warnings {
		if !slices.Contains(w.warnings, warning) {
			w.warnings = append(w.warnings, warning)
		}
	}
	before := len(w.landmarks)
	w.adopt(c, 0, c.Length(), start)
	w.landmarks = append(w.landmarks[:before], onceAt(start, w.landmarks[:before], w.landmarks[before:])...)
}

// onceAt returns the landmarks of next without those at the place that are among the ones
// of last there, its final ones, each standing for one.
func onceAt(place float64, last, next []Landmark) (left []Landmark) {
	var there []Landmark
	for _, l := range slices.Backward(last) {
		if l.Distance != place {
			break
		}
		there = append(there, l)
	}
	for _, l := range next {
		if i := slices.Index(there, l); i >= 0 {
			there = slices.Delete(there, i, i+1)
			continue
		}
		left = append(left, l)
	}
	return left
}

// warnOfDifferences says what does not fit together.
func (j *joiner) warnOfDifferences(courses []*Course) {
	warn := func(format string, args ...any) {
		j.whole.warnings = append(j.whole.warnings, fmt.Sprintf(format, args...))
	}
	if math.Abs(j.worst) > minStep {
		warn("elevations were moved so that %d joined courses meet, by up to %+.1f m in number %d", len(courses), j.worst, j.moved+1)
	}
	low, tracks := math.Inf(1), 0
	for _, c := range courses {
		low = min(low, c.smoothing)
		if c.HasTrack() {
			tracks++
		}
	}
	if low != j.whole.smoothing {
		warn("joined courses were smoothed over %g to %g m: their ascents cannot be compared", low, j.whole.smoothing)
	}
	if tracks > 0 && !j.track {
		warn("the direction is not known: %d of %d joined courses have no track", len(courses)-tracks, len(courses))
	}
}
