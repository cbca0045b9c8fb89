package course

import (
	"fmt"
	"math"
	"slices"
	"sort"
)

// A Mark is a place on the profile whose race distance is known: a kilometre board, an
// aid station of which the race says where it is. Between two neighbouring marks
// distances are scaled by one factor, so that both come to lie where the race says; the
// start lies at 0 and the finish, given a length, at that. Without a length the ground
// beyond the last mark is scaled as the ground before it is as a whole. [Our own]
//
// Marks must ascend strictly on the profile as well as in the race, in the order given,
// or the last or only one is a *MarkError that wraps ErrMarkOrder. It wraps ErrOffCourse
// for a mark beyond the finish, ErrNotFinite for a distance that is none, and ErrMark for
// a name that not exactly one landmark has.
type Mark struct {
	// Name, if not "", is that of a landmark of the course, at whose distance on the
	// profile the mark lies; then Profile does not count.
	Name    string
	Profile float64 // m from the start on the profile as given
	Race    float64 // m from the start as the race measures it
}

// Scale returns the course scaled to the measured length in metres, 0 meaning none, and
// to the marks, whose profile distances are those of the course as it is. Landmarks and
// stretches move along, and so does the direction; elevations and so ascent and descent
// are kept. What Smoothing says is kept too, the window having been that wide when the
// elevations were smoothed. Where the whole or a piece between marks changes by over 2 %,
// that is a warning.
func (c *Course) Scale(length float64, marks ...Mark) (*Course, error) {
	o := Options{Length: length, Marks: marks, Landmarks: c.landmarks}
	if err := o.check(); err != nil {
		return nil, err
	}
	s, err := o.scaling(0, c.Length())
	if err != nil {
		return nil, err
	}
	x, z, legs, err := s.apply(slices.Clone(c.distance), slices.Clone(c.elevation), c.legs())
	if err != nil {
		return nil, err
	}
	scaled := &Course{
		name: c.name, smoothing: c.smoothing, distance: x, elevation: z,
		warnings: append(slices.Clone(c.warnings), s.warnings(length)...),
	}
	scaled.accumulate()
	if legs != nil {
		scaled.follow(legs, x)
		scaled.trail = c.trail.scaled(s)
	}
	o.Stretches = c.stretches
	if err := scaled.place(o, 0, s); err != nil {
		return nil, err
	}
	return scaled, nil
}

// legs returns the mean direction between neighbouring points, nil without a track.
func (c *Course) legs() []heading {
	if !c.HasTrack() {
		return nil
	}
	legs := make([]heading, 0, len(c.distance))
	for i := 1; i < len(c.distance); i++ {
		run := c.distance[i] - c.distance[i-1]
		legs = append(legs, heading{(c.east[i] - c.east[i-1]) / run, (c.north[i] - c.north[i-1]) / run})
	}
	return legs
}

// A scaling maps distances on the profile to race distances, piece by piece. The zero
// value changes nothing.
type scaling struct {
	profile, race []float64 // both ascending from 0, the last being the finish
}

// scaling returns what the options ask for on a profile that starts at the distance
// first and is so long.
func (o Options) scaling(first, given float64) (scaling, error) {
	s := scaling{[]float64{0}, []float64{0}}
	for i, m := range o.Marks {
		at, err := o.resolve(m, first)
		if err == nil {
			err = s.add(at, m.Race, given, o.Length)
		}
		if err != nil {
			return scaling{}, &MarkError{i, err}
		}
	}
	n := len(s.profile) - 1
	if s.profile[n] == given {
		return s, nil
	}
	finish := given
	switch {
	case o.Length > 0:
		finish = o.Length
	case n > 0:
		finish *= s.race[n] / s.profile[n]
	}
	s.profile, s.race = append(s.profile, given), append(s.race, finish)
	return s, nil
}

// resolve returns where a mark lies on the profile, from 0.
func (o Options) resolve(m Mark, first float64) (float64, error) {
	at := m.Profile
	if m.Name != "" {
		found := 0
		for _, l := range o.Landmarks {
			if l.Name == m.Name {
				at, found = l.Distance, found+1
			}
		}
		if found != 1 {
			return 0, fmt.Errorf("%w: %d have the name %q", ErrMark, found, m.Name)
		}
	}
	if sum := at + m.Race; math.IsNaN(sum - sum) {
		return 0, fmt.Errorf("%w: %g m at %g m", ErrNotFinite, at, m.Race)
	}
	return at - first, nil
}

// add adds a mark on a profile of the length given, scaled to length if that is not 0.
// Marks at the start and at the finish, which say nothing new, are left out.
func (s *scaling) add(at, race, given, length float64) error {
	n := len(s.profile) - 1
	if math.Abs(at-given) <= endSlack {
		at = given
	}
	switch {
	case n == 0 && math.Abs(at) <= endSlack && race == 0:
		return nil
	case at > given || length > 0 && race > length:
		return fmt.Errorf("%w: %g m at %g m", ErrOffCourse, at, race)
	case !(at > s.profile[n] && race > s.race[n]) || (at == given) != (race == length) && length > 0:
		return fmt.Errorf("%w: from %g m at %g m to %g m at %g m", ErrMarkOrder, s.profile[n], s.race[n], at, race)
	}
	s.profile, s.race = append(s.profile, at), append(s.race, race)
	return nil
}

// factor is by how much piece k, from its knot to the next, is stretched.
func (s scaling) factor(k int) float64 {
	return (s.race[k+1] - s.race[k]) / (s.profile[k+1] - s.profile[k])
}

// at maps a distance; beyond the ends the outer pieces go on.
func (s scaling) at(x float64) float64 {
	if len(s.profile) == 0 {
		return x
	}
	k := sort.SearchFloat64s(s.profile, x)
	if k < len(s.profile) && s.profile[k] == x {
		return s.race[k]
	}
	k = min(max(k-1, 0), len(s.profile)-2)
	return s.race[k] + (x-s.profile[k])*s.factor(k)
}

// apply scales a profile that is the caller's own, and the legs between its points.
func (s scaling) apply(x, z []float64, legs []heading) ([]float64, []float64, []heading, error) {
	x, z, legs = s.cut(x, z, legs)
	s.stretch(x)
	if last := x[len(x)-1]; last > MaxLength {
		return nil, nil, nil, tooLong(last)
	}
	keep := apart(x)
	if legs != nil && len(keep) < len(x) {
		for k, i := range keep[1:] {
			legs[k] = legs[i-1]
		}
		legs = legs[:len(keep)-1]
	}
	return pick(x, keep), pick(z, keep), legs, nil
}

// stretch maps a whole column, whose end is the finish.
func (s scaling) stretch(x []float64) {
	k, factor := 0, s.factor(0)
	for i := range x {
		for k+2 < len(s.profile) && x[i] > s.profile[k+1] {
			k++
			factor = s.factor(k)
		}
		x[i] = s.race[k] + (x[i]-s.profile[k])*factor
	}
	x[len(x)-1] = s.race[len(s.race)-1]
}

// cut puts points on a profile where the factor changes.
func (s scaling) cut(x, z []float64, legs []heading) ([]float64, []float64, []heading) {
	for k := 1; k+1 < len(s.profile); k++ {
		at := s.profile[k]
		i, found := slices.BinarySearch(x, at)
		if found {
			continue
		}
		share := (at - x[i-1]) / (x[i] - x[i-1])
		x, z = slices.Insert(x, i, at), slices.Insert(z, i, z[i-1]+share*(z[i]-z[i-1]))
		if legs != nil {
			legs = slices.Insert(legs, i, legs[i-1])
		}
	}
	return x, z, legs
}

// maxRescale is the change of length above which scaling is worth a warning.
const maxRescale = 0.02

// warnings says where lengths change much: as a whole, if there is a stated length, and
// between marks.
func (s scaling) warnings(length float64) (warnings []string) {
	n := len(s.profile) - 1
	given := s.profile[n]
	if change := length/given - 1; length > 0 && math.Abs(change) > maxRescale {
		warnings = append(warnings, fmt.Sprintf(
			"the profile is %.2f km long and was scaled by %+.1f %% to the stated %.2f km", given/1000, 100*change, length/1000))
	}
	for k := 0; k < n && n > 1; k++ {
		if change := s.factor(k) - 1; math.Abs(change) > maxRescale {
			warnings = append(warnings, fmt.Sprintf(
				"the profile was scaled by %+.1f %% from %.2f to %.2f km to meet stated distances", 100*change, s.race[k]/1000, s.race[k+1]/1000))
		}
	}
	return warnings
}
