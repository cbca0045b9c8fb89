// Package course holds the ground of a race as values: the profile (elevation over
// distance), the landmarks and sections on it, its climbs, its ascent and descent, and
// the direction in which it runs where the positions of its points are known.
//
// Distances are horizontal metres from the start, as a map measures them; elevations
// are metres above sea level; a gradient is rise over horizontal run, so 0.10 climbs
// one metre in ten; a heading is in degrees clockwise from true north. Package effort
// turns horizontal distance into distance along the slope where the physiology needs it.
//
// The package knows no file formats: package course/coursefile reads and writes those.
// Nor does it know what ground costs a runner: that is package effort.
//
// A Course does not change after New and may be shared between goroutines. Its methods
// that change ground return a new one: Reverse, Part, StartAt, Laps, OutAndBack, Scale,
// Resample, and Join for several. What stands on the ground moves along: landmarks,
// stretches, the direction, the smoothing that the figures rest on, and the warnings.
// Distances then differ from what they should be by no more than 1e-9 m of rounding.
package course
