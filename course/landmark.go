package course

import (
	"fmt"
	"math"
	"slices"
	"strings"
)

// A Landmark is a named place on the course.
type Landmark struct {
	Name     string
	Distance float64 // m from the start
	Kind     Kind
	Note     string
}

// Kind says what a landmark is for.
type Kind int

// The kinds of landmark.
const (
	Place   Kind = iota // a place with no other meaning
	Station             // an aid station
	Top                 // the top of a climb
)

func (k Kind) String() string {
	switch k {
	case Station:
		return "station"
	case Top:
		return "top"
	}
	return "place"
}

// A Stretch gives the ground between two distances other properties than a good road
// has. Where stretches overlap, the later one in the list holds.
type Stretch struct {
	From, To float64 // m from the start

	// Surface multiplies the energy cost; see package effort for values. 0 means 1,
	// blacktop.
	Surface float64

	// Braking multiplies the runner's braking on descents: about 2 on technical trail.
	// 0 means 1, good ground.
	Braking float64
}

// endSlack is how far beyond the finish a landmark may stand and still be taken for one
// at the finish.
const endSlack = 0.5 // m

// place puts the landmarks and stretches of the options on the finished profile.
func (c *Course) place(o Options, first float64, by scaling) error {
	for _, l := range o.Landmarks {
		given := l.Distance
		d := by.at(given - first)
		if !(d >= -endSlack && d <= c.Length()+endSlack) {
			return fmt.Errorf("course: landmark %q at %g m: %w", l.Name, given, ErrOffCourse)
		}
		l.Distance = min(max(d, 0), c.Length())
		c.landmarks = append(c.landmarks, l)
	}
	order(c.landmarks)
	for _, s := range o.Stretches {
		if err := s.check(); err != nil {
			return err
		}
		s.From, s.To = by.at(s.From-first), by.at(s.To-first)
		if s.From < -endSlack || s.To > c.Length()+endSlack {
			return fmt.Errorf("course: stretch %g to %g m: %w", s.From, s.To, ErrOffCourse)
		}
		c.stretches = append(c.stretches, s)
	}
	return nil
}

// order sorts landmarks by distance, those at one place by name.
func order(landmarks []Landmark) {
	slices.SortStableFunc(landmarks, func(a, b Landmark) int {
		switch {
		case a.Distance < b.Distance:
			return -1
		case a.Distance > b.Distance:
			return 1
		}
		return strings.Compare(a.Name, b.Name)
	})
}

func (s Stretch) check() error {
	if !(s.From < s.To) || math.IsInf(s.From, 0) || math.IsInf(s.To, 0) {
		return fmt.Errorf("course: stretch %g to %g m: %w", s.From, s.To, ErrOption)
	}
	for _, f := range []float64{s.Surface, s.Braking} {
		if !(f >= 0 && f <= 10) {
			return fmt.Errorf("course: stretch %g to %g m: %w: factor %g is not within 0 to 10", s.From, s.To, ErrOption, f)
		}
	}
	return nil
}

// Landmarks returns the landmarks in order of distance.
func (c *Course) Landmarks() []Landmark { return slices.Clone(c.landmarks) }

// WithLandmarks returns the course with these landmarks, in any order, instead of its
// own, their distances being those of the course as it is: the scaled ones. One beyond
// the course by over 0.5 m is an ErrOffCourse.
func (c *Course) WithLandmarks(landmarks ...Landmark) (*Course, error) {
	with := *c
	with.landmarks, with.stretches = nil, slices.Clone(c.stretches)
	if err := with.place(Options{Landmarks: landmarks}, 0, scaling{}); err != nil {
		return nil, err
	}
	return &with, nil
}

// Stretches returns the stretches, the later of two that overlap holding.
func (c *Course) Stretches() []Stretch { return slices.Clone(c.stretches) }

// Ground returns the factors of surface and braking at a distance from the start in
// metres, 1 and 1 where nothing else was said.
func (c *Course) Ground(distance float64) (surface, braking float64) {
	for _, s := range slices.Backward(c.stretches) {
		if distance >= s.From && distance < s.To {
			return orOne(s.Surface), orOne(s.Braking)
		}
	}
	return 1, 1
}

// Edges returns the distances at which the factors of Ground may change, ascending.
func (c *Course) Edges() []float64 {
	var edges []float64
	for _, s := range c.stretches {
		edges = append(edges, min(max(s.From, 0), c.Length()), min(max(s.To, 0), c.Length()))
	}
	slices.Sort(edges)
	return slices.Compact(edges)
}

func orOne(factor float64) float64 {
	if factor == 0 {
		return 1
	}
	return factor
}
