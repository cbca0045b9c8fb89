// Package story reads a course as a coach would: how hard each climb is where it stands in
// the race, which climb hides a harder one close behind it, where time can be made up,
// where runners overspend early, what is left after the last real climb.
//
// It needs the ground (package course) and what ground costs a runner (package effort), and
// gives data, not prose.
//
// # The rating
//
// A climb is rated from 0 to 10,
//
//	R = 10 (1 − exp(−ΔE · s / E)),  E = 1333 J/kg · √(W / 345 kJ/kg)
//
// ΔE being the running effort of the climb above that of level road, s the share of the
// race's effort done by its top and W the course's effort, all of running all the way;
// so ratings keep their spread from 10 km to 170 km. [Our own; perceived exertion is
// known to rise in proportion to the share of a race that is done, which is what s does;
// from memory.]
//
// Bounds of length, gradient and rating in this package are our own, set so that rolling
// courses of 10 to 170 km read as a coach would tell them; each is a constant with its
// reason, or an option.
package story
