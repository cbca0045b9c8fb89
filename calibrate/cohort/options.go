package cohort

import (
	"errors"
	"fmt"
	"runtime"

	"isoeffort.example/calibrate"
	"isoeffort.example/effort"
)

// Options of Fit. The zero value is ready.
type Options struct {
	// Prior is what is believed of athletes before any result. The population's medians of
	// the endurance exponent and of braking are held to it within a quarter of its spread;
	// fade and fade shape are taken from it as they are. The zero value means calibrate.Mountain.
	Prior calibrate.Prior

	// Rounds bounds the rounds of the fit. 0 means 40.
	Rounds int

	// Tolerance is the greatest change of the logarithm of a spread, from one round to the
	// next, that ends the fit. 0 means 0.01.
	Tolerance float64

	// Seed chooses the draws behind the posterior spreads of the effects.
	Seed uint64

	// Workers is how many goroutines work. 0 means GOMAXPROCS. No printed digit depends on it.
	Workers int

	// Progress, if not nil, is told how much is done, of a total that may come early. It is
	// called from one goroutine at a time.
	Progress func(done, total int)
}

// The causes for which results cannot be fitted.
var (
	ErrNoResults = errors.New("no results to fit")
	ErrRunner    = errors.New("result without a runner")
	ErrOption    = errors.New("option out of range")
	ErrNoFit     = errors.New("the results cannot be fitted")
)

func (o Options) filled() (Options, error) {
	if o.Prior == (calibrate.Prior{}) {
		o.Prior = calibrate.Mountain()
	}
	if o.Rounds == 0 {
		o.Rounds = 40
	}
	if o.Tolerance == 0 {
		o.Tolerance = 0.01
	}
	if o.Workers == 0 {
		o.Workers = runtime.GOMAXPROCS(0)
	}
	if o.Rounds < 0 || o.Workers < 0 || !(o.Tolerance > 0 && o.Tolerance < 1) {
		return o, fmt.Errorf("cohort: %w: %d rounds, %d workers, tolerance %g", ErrOption, o.Rounds, o.Workers, o.Tolerance)
	}
	return o, checkPrior(o.Prior)
}

// checkPrior wants medians that the closed form takes, and spreads for the numbers that
// vary here.
func checkPrior(p calibrate.Prior) error {
	a := effort.Athlete{}
	for n := range effort.Number(effort.Numbers) {
		a = a.Set(n, p[n].Median)
		if !(p[n].LogSD >= 0 && p[n].LogSD <= 3) {
			return fmt.Errorf("cohort: %w: log SD %g of the %v", ErrOption, p[n].LogSD, n)
		}
	}
	if err := a.Check(); err != nil {
		return fmt.Errorf("cohort: %w: %w", ErrOption, err)
	}
	for _, n := range varying {
		if !(p[n].Median > 0 && p[n].LogSD > 0) {
			return fmt.Errorf("cohort: %w: the %v must vary: median %g, log SD %g", ErrOption, n, p[n].Median, p[n].LogSD)
		}
	}
	return nil
}
