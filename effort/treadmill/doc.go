// Package treadmill makes a runner's own cost curve from measurements on a treadmill: a
// polynomial in gradient, by weighted least squares, of the degree and with the weights
// that the user chooses.
//
//	Point, ReadCSV         measurements, as values and as files
//	NetCost, OxygenPower   from gross power or oxygen at a speed to a Point's Cost
//	Fit                    points to a Curve, with standard errors and warnings
//	Curve                  an effort.Separable; also SE, Covariance, Minimum, Faults
//	LeaveOut               how well the curve foretells a gradient that it has not seen
//
// Cost is net of standing, in J/(kg m) along the slope, and taken not to depend on speed,
// as is usual for running. A curve of walking costs at one speed holds at that speed.
//
// # The fit
//
// The least-squares problem is solved by a QR factorisation of the Chebyshev polynomials
// in (gradient − middle of the range)/half of the range; normal equations are not formed.
// Coefficients and covariance are then written in powers of the gradient itself.
//
// Standard errors take the points to be independent. Those of several runners in one fit
// are not: a runner who is dear on one gradient is dear on all. Fit them one by one, or
// give the mean over runners of each gradient as one point.
//
// # What it is not for
//
// A polynomial knows nothing outside the gradients measured, and the curve is held
// constant there. It knows nothing of ground softer or rougher than the belt, nor of the
// braking that limits speed downhill (effort.BrakingCost, which the model adds).
package treadmill
