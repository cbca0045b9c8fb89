package course

import (
	"fmt"
	"math"
	"slices"
)

// A Course is a profile with its landmarks and the properties of its ground.
type Course struct {
	name      string
	distance  []float64 // m from the start, increasing, first 0
	elevation []float64 // m
	ascent    []float64 // m climbed from the start to each point
	descent   []float64 // m lost from the start to each point
	east      []float64 // m run towards east from the start to each point; nil without a track
	north     []float64 // m run towards north, likewise
	trail     trail     // where it runs; nil without a track
	landmarks []Landmark
	stretches []Stretch
	smoothing float64
	warnings  []string

	ascentSD, descentSD float64 // both 0: not known
}

// AsGiven, as Options.Smoothing, leaves the profile as it was given: neither put on a
// grid nor smoothed.
const AsGiven = -1

// Defaults that a zero Options stands for.
const (
	DefaultSmoothing = 150 // m, the width of the smoothing window
	DefaultGrid      = 10  // m between the points of a smoothed profile
)

// Options of New. The zero value is ready for a recorded or downloaded profile.
type Options struct {
	Name string

	// Length is the measured length of the race in metres, to which the distances are
	// scaled, elevations kept; over 2 % of change is a warning. 0 leaves the length as
	// given.
	//
	// A certified road race is run over a course laid out 0.1 % longer than its name
	// says, lest it be short: 42.237 km for a marathon of 42.195 km (World Athletics and
	// AIMS, The measurement of road race courses; from memory). Whose distances and
	// kilometre boards count is for the caller to say: New adds nothing.
	Length float64

	// Marks are places whose race distance is known. The ground between neighbouring
	// marks is scaled by itself; see Mark. nil scales all of it alike.
	Marks []Mark

	// Smoothing is the full width in metres of the window over which elevations are
	// smoothed, after scaling; see Smooth. 0 means DefaultSmoothing, AsGiven leaves
	// the profile untouched.
	Smoothing float64

	// Grid is the spacing in metres of the smoothed profile. 0 means DefaultGrid, or a
	// fifth of the smoothing width where that is less.
	Grid float64

	// Clean, if not nil, takes the place of Smoothing and Grid: it is given the profile
	// after scaling and returns the one that the course shall have. Package
	// course/elevation has what it takes; coursefile.Options.Clean brings the two
	// together.
	Clean func(distance, elevation []float64) (Cleaned, error)

	// Track is where the points of the profile lie, one position for each distance
	// given. It tells where the course runs and in which direction, see Course.Position and
	// Course.Direction, and nothing else: distances stay as they are given, and between two positions that
	// are the same while their distances differ the course has no direction. nil means
	// that the positions are not known.
	Track []Position

	// Landmarks and Stretches are placed by distance on the profile as given; scaling
	// moves them along with it.
	Landmarks []Landmark
	Stretches []Stretch

	// Warnings are carried over to the course: what its reader had to mend.
	Warnings []string
}

// New makes a course from a profile: distances in metres, which may not decrease, and
// the elevation in metres at each. Points at one and the same distance are merged into
// one with their mean elevation, and the first distance becomes 0. Between points the
// ground is straight.
//
// An error that one point is to blame for is a *PointError; all wrap one of the
// package's sentinels; a position that is the zero Position, not finite or beyond a
// pole is an ErrNoPosition. No slice is kept or changed. New panics if the two differ in
// length, or from a track that is not nil.
func New(distance, elevation []float64, o Options) (*Course, error) {
	if len(distance) != len(elevation) {
		panic(fmt.Sprintf("course: %d distances but %d elevations", len(distance), len(elevation)))
	}
	if o.Track != nil && len(distance) != len(o.Track) {
		panic(fmt.Sprintf("course: %d distances but %d positions", len(distance), len(o.Track)))
	}
	if err := o.check(); err != nil {
		return nil, err
	}
	x, z, err := clean(distance, elevation)
	if err != nil {
		return nil, err
	}
	c := &Course{name: o.Name, warnings: slices.Clone(o.Warnings)}
	var legs []heading
	if o.Track != nil {
		legs = headings(o.Track, distance)
	}
	s, err := o.scaling(distance[0], x[len(x)-1])
	if err != nil {
		return nil, err
	}
	x, z, legs, err = s.apply(x, z, legs)
	if err != nil {
		return nil, err
	}
	c.warnings = append(c.warnings, s.warnings(o.Length)...)
	if err := c.lay(x, z, o); err != nil {
		return nil, err
	}
	if legs != nil {
		c.follow(legs, x)
		c.trail = newTrail(o.Track, distance, s)
	}
	if err := c.place(o, distance[0], s); err != nil {
		return nil, err
	}
	return c, nil
}

func tooLong(length float64) error { return fmt.Errorf("course: %w: %.1f km", ErrTooLong, length/1000) }

// lay takes over the cleaned and scaled profile, put on a grid and smoothed if it is to be.
func (c *Course) lay(x, z []float64, o Options) error {
	switch {
	case o.Clean != nil:
		cleaned, err := o.Clean(x, z)
		if err != nil {
			return err
		}
		return c.take(cleaned, x[len(x)-1])
	case o.Smoothing != AsGiven:
		c.smoothing = o.smoothing()
		x, z = Grid(x, z, o.grid())
		z = Smooth(z, x[1]-x[0], c.smoothing)
	}
	c.distance, c.elevation = x, z
	c.accumulate()
	return nil
}

func (o Options) check() error {
	for _, v := range []struct {
		name     string
		value    float64
		low, top float64
	}{
		{"length", o.Length, 0, MaxLength},
		{"smoothing", max(o.Smoothing, 0), 0, 5000},
		{"grid", o.Grid, 0, 1000},
	} {
		if !(v.value >= v.low && v.value <= v.top) {
			return fmt.Errorf("course: %w: %s %g m is not within %g to %g m", ErrOption, v.name, v.value, v.low, v.top)
		}
	}
	if o.Smoothing < 0 && o.Smoothing != AsGiven {
		return fmt.Errorf("course: %w: smoothing %g m is negative", ErrOption, o.Smoothing)
	}
	if o.Grid > 0 && o.Grid < 1 {
		return fmt.Errorf("course: %w: grid %g m is below 1 m", ErrOption, o.Grid)
	}
	return checkTrack(o.Track)
}

func (o Options) smoothing() float64 {
	if o.Smoothing == 0 {
		return DefaultSmoothing
	}
	return o.Smoothing
}

func (o Options) grid() float64 {
	if o.Grid == 0 {
		return math.Max(1, math.Min(DefaultGrid, o.smoothing()/5))
	}
	return o.Grid
}

// minLength keeps the arithmetic of a profile away from overflow.
const minLength = 1e-12 // m

// clean checks a profile and returns it anew with the first distance 0 and no distance
// twice.
func clean(distance, elevation []float64) (x, z []float64, err error) {
	x, z = make([]float64, 0, len(distance)), make([]float64, 0, len(distance))
	merged := 1.0 // points behind the last of z
	for i, d := range distance {
		if err := checkPoint(d, elevation[i]); err != nil {
			return nil, nil, &PointError{i, err}
		}
		d -= distance[0]
		switch n := len(x); {
		case n == 0 || d > x[n-1]:
			x, z, merged = append(x, d), append(z, elevation[i]), 1
		case d == x[n-1]:
			merged++
			z[n-1] += (elevation[i] - z[n-1]) / merged
		default:
			return nil, nil, &PointError{i, fmt.Errorf("%w: from %g to %g m", ErrDistanceBack, distance[i-1], distance[i])}
		}
	}
	if len(x) < 2 {
		return nil, nil, fmt.Errorf("course: %w", ErrTooFewPoints)
	}
	if length := x[len(x)-1]; length < minLength {
		return nil, nil, fmt.Errorf("course: %w: they are %g m apart", ErrTooFewPoints, length)
	}
	return x, z, nil
}

func checkPoint(distance, elevation float64) error {
	if math.IsNaN(distance) || math.IsInf(distance, 0) {
		return fmt.Errorf("%w: distance %g", ErrNotFinite, distance)
	}
	if math.IsNaN(elevation) || math.IsInf(elevation, 0) {
		return fmt.Errorf("%w: elevation %g", ErrNotFinite, elevation)
	}
	if elevation < MinElevation || elevation > MaxElevation {
		return fmt.Errorf("%w: %g m", ErrElevationRange, elevation)
	}
	return nil
}

// Name returns the course's name, which may be empty.
func (c *Course) Name() string { return c.name }

// Length returns the horizontal length in metres.
func (c *Course) Length() float64 { return c.distance[len(c.distance)-1] }

// Smoothing returns the width in metres of the window that the elevations were smoothed
// over, and 0 for a profile left as given. Ascent and descent depend on it.
func (c *Course) Smoothing() float64 { return c.smoothing }

// Warnings returns what was mended or looks doubtful, to be shown beside any result. A
// course made of others carries theirs, word for word and each once: places in them are
// those of the course that they were said of. A doubt about the steepest ground is
// looked up anew.
func (c *Course) Warnings() []string {
	warnings := slices.Clone(c.warnings)
	if steep := c.steep(); steep != "" {
		warnings = append(warnings, steep)
	}
	return warnings
}

// Named returns the same course under another name.
func (c *Course) Named(name string) *Course {
	named := *c
	named.name = name
	return &named
}
