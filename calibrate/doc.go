// Package calibrate finds an athlete's numbers from past results: the hour power,
// endurance exponent and fade under which the model's fastest times come closest to the
// times that were run, held by priors where the results say little.
//
// The estimate is the maximum of the posterior: residuals of ln(time) are taken as
// normal, the logarithms of the numbers as normal a priori. Results describe what the
// runner did, mispacing and all; see package effort for what the numbers mean.
//
// The package is not a coach: it does not know why a result was slow, and it cannot tell
// a bad day from a weak endurance. It says which numbers the results informed and which
// are still the prior's.
package calibrate
