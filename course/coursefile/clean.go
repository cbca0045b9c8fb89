package coursefile

import (
	"fmt"

	"isoeffort.example/course"
	heights "isoeffort.example/course/elevation"
)

// clean is the option's Clean as course.Options takes it, nil for none.
func (o Options) clean() func(distance, height []float64) (course.Cleaned, error) {
	if o.Clean == nil {
		return nil
	}
	return func(distance, height []float64) (course.Cleaned, error) {
		p, err := heights.Clean(distance, height, *o.Clean)
		if err != nil {
			return course.Cleaned{}, fmt.Errorf("heights cannot be cleaned: %w", err)
		}
		c := course.Cleaned{
			Distance: p.Distance, Elevation: p.Elevation, Smoothing: p.Smoothing.Wavelength, Warnings: p.Warnings,
		}
		if p.AscentSD >= 0 && p.DescentSD >= 0 { // NaN where the noise is not known
			c.AscentSD, c.DescentSD = p.AscentSD, p.DescentSD
		}
		c.Warnings = append(changes(p.Changes), c.Warnings...)
		for _, f := range p.Flags {
			c.Warnings = append(c.Warnings, f.Text)
		}
		return c, nil
	}
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
