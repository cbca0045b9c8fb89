package coursefile

import (
	"fmt"
	"slices"

	"isoeffort.example/course"
	heights "isoeffort.example/course/elevation"
)

// clean is the option's Clean as course.Options takes it, nil for none. It is given the
// heights that are known, and NaN where there was none.
func (p *profile) clean(o Options, k knots) func(distance, height []float64) (course.Cleaned, error) {
	if o.Clean == nil {
		if o.ListedHeights || o.WaypointHeights {
			p.warn("known elevations of landmarks were not used: only cleaning does")
		}
		return nil
	}
	options := *o.Clean
	options.Known = append(slices.Clone(options.Known), p.known(o, k)...)
	return func(distance, height []float64) (course.Cleaned, error) {
		cleaned, err := heights.Clean(distance, p.unfilled(distance, height, k), options)
		if err != nil {
			return course.Cleaned{}, fmt.Errorf("heights cannot be cleaned: %w", err)
		}
		return takenFrom(cleaned), nil
	}
}

// takenFrom is a cleaned profile as package course takes it.
func takenFrom(p *heights.Profile) course.Cleaned {
	c := course.Cleaned{
		Distance: p.Distance, Elevation: p.Elevation, Smoothing: p.Smoothing.Wavelength,
		Warnings: append(changes(p.Changes), p.Warnings...),
	}
	if p.AscentSD >= 0 && p.DescentSD >= 0 { // NaN where the noise is not known
		c.AscentSD, c.DescentSD = p.AscentSD, p.DescentSD
	}
	for _, f := range p.Flags {
		c.Warnings = append(c.Warnings, f.Text)
	}
	return c
}

// mostTold is how many changes are told one by one.
const mostTold = 8

// changes are the changes in words, the first ones of many.
func changes(all []heights.Change) (texts []string) {
	for i, c := range all {
		if i == mostTold {
			return append(texts, fmt.Sprintf("and %d further changes of the heights", len(all)-mostTold))
		}
		texts = append(texts, c.Text)
	}
	return texts
}
