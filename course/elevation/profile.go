package elevation

import (
	"fmt"
	"math"
	"slices"
)

// A Profile is a cleaned profile and the account of how it came about.
type Profile struct {
	// Distance and Elevation are the points of the grid, in metres; the first and the
	// last distance are those that were given. Between points the ground is straight.
	Distance, Elevation []float64

	// Ascent and Descent are the metres climbed and lost, as the heights of the grid do.
	// The heights are drawn such that both are the means over what the ground may be,
	// given what was seen, or nearly: they follow what was seen no more than twice as
	// closely as the best estimate.
	//
	// The SDs are those of the errors: of noise, and of what was chosen and supposed, which
	// is taken to be 0.6 of what following twice as closely would add and half of what the
	// mean has beyond the best estimate. [Our own: over profiles drawn by chance, with
	// noise of 0.5 to 4 m that is independent from point to point, 66 to 89 % of ascents
	// are within one SD and 95 to 99 % within two] With known heights they hold what is
	// left of a drift, too. They are NaN where the noise is not known. Noise that cannot be
	// told from ground, and drift without known heights, are not in them: with noise that is
	// correlated over 40 m the error is up to several SDs.
	Ascent, Descent     float64
	AscentSD, DescentSD float64

	// RawAscent is the sum of all rises between neighbouring heights as they were given,
	// for comparison.
	RawAscent float64

	Noise     Noise
	Smoothing Smoothing
	Changes   []Change // what was repaired and filled, by place
	Flags     []Flag   // where the gradient is beyond the bound, by place
	Warnings  []string
}

// Noise is what was found to lie on the heights.
type Noise struct {
	// SD is that of the noise of one recorded height in metres, NaN where it could not
	// be estimated.
	SD float64

	// Correlation is the distance in metres over which the noise's correlation falls to
	// 1/e: 0 for noise independent from point to point.
	Correlation float64
}

// Smoothing says how the heights were smoothed.
type Smoothing struct {
	// Wavelength in metres of the undulations of which half was taken away, 0 if nothing
	// was smoothed. It is the longest such wavelength below which all lose half or more.
	Wavelength float64

	// Text is the choice in a sentence.
	Text string
}

func (s Smoothing) String() string { return s.Text }

// Clean cleans a profile: distances in metres, which may not decrease, and the height in
// metres at each, NaN where it is missing. Points at one and the same distance count as
// one with their mean height. Heights outside MinElevation to MaxElevation count as
// missing.
//
// In turn it repairs what is no ground (runs of zeros, stretches that were displaced,
// steps between devices, spikes), removes the drift against known heights, gathers the
// points in the cells of a uniform grid, estimates noise and ground from their spectra,
// and smooths. Straight ground without noise is returned unchanged, and so is a profile
// whose points are too far apart, more than 100 m, or too few to tell noise from ground,
// but for repairs: a warning says so.
//
// An error that one point is to blame for is a *PointError; all wrap one of the
// package's sentinels. Slices are neither kept nor changed. Clean panics if the two
// differ in length.
func Clean(distance, elevation []float64, o Options) (*Profile, error) {
	if len(distance) != len(elevation) {
		panic(fmt.Sprintf("elevation: %d distances but %d elevations", len(distance), len(elevation)))
	}
	if err := o.check(); err != nil {
		return nil, err
	}
	o = o.filled()
	r, err := newRecording(distance, elevation)
	if err != nil {
		return nil, err
	}
	p := &Profile{RawAscent: r.ascent()}
	r.repair()
	r.removeDrift(o.Known)
	nodes := gather(r, o.Grid)
	nodes.level()
	steep := nodes.steep(o.MaxGradient)
	p.smooth(r, nodes, steep, o)
	p.flag(steep, o.MaxGradient)
	p.Changes, p.Warnings = p.account(r), append(r.warnings, p.Warnings...)
	return p, nil
}

// account sorts the changes and says what stands now where each was made.
func (p *Profile) account(r *recording) []Change {
	for i := range r.changes {
		c := &r.changes[i]
		c.New = p.at(c.From)
		c.Text = c.describe()
	}
	slices.SortStableFunc(r.changes, func(a, b Change) int {
		switch {
		case a.From < b.From:
			return -1
		case a.From > b.From:
			return 1
		}
		return int(a.Kind - b.Kind)
	})
	return r.changes
}

// at interpolates the cleaned heights.
func (p *Profile) at(distance float64) float64 {
	n := len(p.Distance)
	i, _ := slices.BinarySearch(p.Distance, distance)
	i = min(max(i, 1), n-1)
	share := (distance - p.Distance[i-1]) / (p.Distance[i] - p.Distance[i-1])
	share = math.Min(math.Max(share, 0), 1)
	return p.Elevation[i-1] + share*(p.Elevation[i]-p.Elevation[i-1])
}
