package calibrate

import (
	"fmt"
	"math"
	"time"

	"gonum.org/v1/gonum/stat/distuv"

	"isoeffort.example/effort"
	"isoeffort.example/effort/record"
)

// Options of Fit. The zero value is ready.
type Options struct {
	// Prior is what is believed before the results. The zero value means Recreational.
	Prior Prior

	// Tilt is what is believed of the pacing tilt, which is fitted where results have
	// splits. The zero value means UsualTilt; an SD of 0 beside a mean takes it as known.
	Tilt TiltBelief

	// Noise is the scatter of the logarithm of one race's time about the model, for the
	// same runner: weather, form, pacing. It is the SD of the normal distribution whose
	// central 90 % are as wide as those of the errors, whatever their Tails. 0 means
	// DefaultNoise. It is a guess worth NoiseWeight results, into which the results' own
	// scatter is weighed.
	Noise float64

	// SplitNoise is the same for the way that a race takes to its finish: elapsed time,
	// given the finish, is taken to wander about the model as a Brownian bridge does, with
	// an SD of SplitNoise √(u(1−u)) of the finish time where the share u of it has gone:
	// half of SplitNoise half-way. The errors of sections are then independent, of log
	// times that many shares of the race long: SplitNoise/√share. 0 means
	// DefaultSplitNoise. It is weighed as Noise is.
	SplitNoise float64

	// NoiseWeight is how many results the guesses of Noise and SplitNoise are worth. 0
	// means 50, or 4 where the results contradict the guess at the level of 1 % (chi-square).
	NoiseWeight float64

	// Tails is ν of the Student's t distribution that errors have, at least 1: the fewer,
	// the less one bad day moves the fit. 0 means 4, +Inf the normal distribution.
	Tails float64

	// Weights are what each result counts for, beside 1 for a usual one; 0 leaves it out.
	// Nil means 1 for all; otherwise there is one for each result given. At most 100.
	Weights []float64

	// HalfLife is the age at which a result counts for half; see On. 0 means that all ages
	// count alike.
	HalfLife time.Duration

	// Drift is how much fitness changes: the SD of ln(hour power) after a year of a random
	// walk. 0 is a runner unchanged. EstimateDrift finds it instead, as the most credible of
	// 0 to 0.3 under a half-normal prior of SD 0.05; with fewer than 4 results it takes 0.05.
	Drift         float64
	EstimateDrift bool

	// On is the day for which the hour power is wanted. The zero time means that of the
	// latest result.
	On time.Time

	// Base gives the athlete's other numbers: economy, fastest walk, slowest run.
	Base effort.Athlete

	// Surroundings of all results, and SurroundingsOf, if not nil, those of each.
	Surroundings   effort.Surroundings
	SurroundingsOf func(record.Result) effort.Surroundings

	// Curves of cost; the zero value are the model's own.
	Curves effort.Curves

	// Step is the length in metres of the cells in which courses are run. 0 means 25.
	// Courses of many cells are searched over in longer ones, and what that leaves out is
	// put in at the answer: the fitted times are within 0.05 % of those over the cells.
	Step float64

	widen float64 // see widening
}

// A TiltBelief is a normal distribution of the pacing tilt: see effort.Pace.
type TiltBelief struct{ Mean, SD float64 }

// UsualTilt is the default belief of the tilt: people start somewhat fast. [Our own.]
var UsualTilt = TiltBelief{Mean: 0.03, SD: 0.05}

// DefaultNoise is the scatter of one runner's races about the model, 3 %: of the order
// of what closely spaced races of one runner differ by. [Our own; common practice, no
// source.]
const DefaultNoise = 0.03

// DefaultSplitNoise leaves an SD of 2 % of the finish time half-way. [Our own: with the
// fade known, the model's checkpoint times of a mountain race of 170 km were off by 1.4 %
// of the finish time on the mean.]
const DefaultSplitNoise = 0.04

const (
	usualTails   = 4
	mostWeight   = 100
	unknownDrift = 0.05 // of ln(hour power) in a year
)

func (o Options) filled(results int) (Options, error) {
	if o.Prior == (Prior{}) {
		o.Prior = Recreational()
	}
	if o.Tilt == (TiltBelief{}) {
		o.Tilt = UsualTilt
	}
	for _, v := range []struct {
		value *float64
		usual float64
	}{
		{&o.Noise, DefaultNoise},
		{&o.SplitNoise, DefaultSplitNoise},
		{&o.Tails, usualTails},
		{&o.Step, effort.DefaultStep},
	} {
		if *v.value == 0 {
			*v.value = v.usual
		}
	}
	err := o.check(results)
	o.widen = o.widening()
	return o, err
}

func (o *Options) check(results int) error {
	refuse := func(format string, args ...any) error {
		return fmt.Errorf("calibrate: %w: %s", ErrOption, fmt.Sprintf(format, args...))
	}
	switch {
	case !(o.Noise > 0 && o.Noise <= 1) || !(o.SplitNoise > 0 && o.SplitNoise <= 1) || !(o.NoiseWeight >= 0):
		return refuse("noise %g and %g worth %g results", o.Noise, o.SplitNoise, o.NoiseWeight)
	case !(o.Step >= 1 && o.Step <= 10_000):
		return refuse("step %g m is not within 1 to 10000 m", o.Step)
	case !(o.Tails >= 1):
		return refuse("tails %g", o.Tails)
	case o.HalfLife < 0:
		return refuse("half-life %v", o.HalfLife)
	case !(o.Drift >= 0 && o.Drift <= 1):
		return refuse("drift %g is not within 0 to 1", o.Drift)
	case !(math.Abs(o.Tilt.Mean) <= 0.3) || !(o.Tilt.SD >= 0 && o.Tilt.SD <= 0.2):
		return refuse("tilt of mean %g and SD %g", o.Tilt.Mean, o.Tilt.SD)
	case o.Weights != nil && len(o.Weights) != results:
		return refuse("%d weights for %d results", len(o.Weights), results)
	}
	for i, w := range o.Weights {
		if !(w >= 0 && w <= mostWeight) {
			return refuse("weight %g of result %d", w, i+1)
		}
	}
	return o.Prior.check()
}

// normalQuantile is that of 95 %.
const normalQuantile = 1.6448536269514722

// widen is by how much the central 90 % of the errors are wider than ±1.645 times their
// scale.
func (o *Options) widening() float64 {
	if math.IsInf(o.Tails, 1) {
		return 1
	}
	return distuv.StudentsT{Sigma: 1, Nu: o.Tails}.Quantile(0.95) / normalQuantile
}
