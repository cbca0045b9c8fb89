// Package calibrate finds an athlete's numbers from past results: the hour power,
// endurance exponent and fade under which the model's fastest times come closest to the
// times that were run, held by priors where the results say little.
//
// # What is taken for true
//
// The estimate is the maximum of the posterior. Residuals of ln(time) have Student's t
// distribution, so that one bad day does not spoil the fit; the logarithms of the numbers
// are normal a priori. Where results have splits, the elapsed time on the way, given the
// finish time, wanders about the model's as a Brownian bridge does: errors of neighbouring
// splits are correlated, and those of sections independent but for adding up. Splits are
// held against the pace that takes the time that was run, and their errors are taken to be
// independent of that of the finish.
//
// # Fade and tilt
//
// People slow down because capability fades and because they start too fast. With splits
// a pacing tilt (effort.Pace) is fitted beside the fade: the fade grows with the work done
// and the tilt does not, so races of different lengths tell them apart, and one race does
// not. The prior of the tilt is UsualTilt, that of the fade from well-paced races. A plan
// uses the fade alone (Estimate.Athlete), or it would tell every runner to repeat the
// mistake; a forecast may use both (Estimate.Tilt). Without splits the results
// describe what the runner did, mispacing and all.
//
// # How sure
//
// Estimate.Basis has the covariance for forecasts; Interval, Correlation, Informed, Draws
// and Profile look at it from other sides. It rests on the posterior being near normal. Where
// a warning says that it is not, Sample draws from it as it is. Predict tells the time of
// a further race, LeaveOneOut and LeaveLastOut how well that works, Checks what the model
// misses of the data, and Compare which of two ways of fitting predicts better.
//
// # How it is found
//
// The search runs over the closed form of each race's time, held to the model's value and
// slopes where those were computed last, which bends as the model does and costs a
// hundredth: three or four such strides lead to the mode. Courses of many cells are searched over
// in longer ones. Where strides do not lead there, as of runners who walk most of the way,
// BFGS and the simplex do.
//
// The package is not a coach: it does not know why a result was slow, and it cannot tell
// a bad day from a weak endurance. It says which numbers the results informed and which
// are still the prior's.
package calibrate
