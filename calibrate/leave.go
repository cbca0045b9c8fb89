package calibrate

import (
	"context"
	"errors"
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/stat"

	"isoeffort.example/effort/record"
)

// A Left is a result predicted by others.
type Left struct {
	Index      int // among the results given
	Result     record.Result
	Prediction Prediction
	Log        float64 // ln(time/median): above 0 it was slower
	Score      float64 // its LogScore
	Share      float64 // of the predicted distribution below it: uniform where that is right
	Others     int     // how many it was predicted from
}

// LeaveOneOut predicts each finished result from all others. Results with role predict are
// left out, as in Fit. It says how well the fit describes, and flatters a forecast, which knows
// no later results: see LeaveLastOut. The error is Fit's or Predict's.
func LeaveOneOut(ctx context.Context, results []record.Result, o Options) ([]Left, error) {
	return leave(ctx, results, o, func(i, j int) bool { return i != j })
}

// LeaveLastOut predicts each finished result but the first from those of earlier days.
func LeaveLastOut(ctx context.Context, results []record.Result, o Options) ([]Left, error) {
	return leave(ctx, results, o, func(i, j int) bool { return results[j].Date.Before(results[i].Date) })
}

// leave predicts each result i from those j that others allows.
func leave(ctx context.Context, results []record.Result, o Options, others func(i, j int) bool) ([]Left, error) {
	if o.Weights != nil && len(o.Weights) != len(results) {
		return nil, fmt.Errorf("calibrate: %w: %d weights for %d results", ErrOption, len(o.Weights), len(results))
	}
	var out []Left
	for i, r := range results {
		if r.Role == record.Predict || r.DNF {
			continue
		}
		var kept []record.Result
		var weights []float64
		for j, other := range results {
			if !others(i, j) || other.Role == record.Predict {
				continue
			}
			kept = append(kept, other)
			if o.Weights != nil {
				weights = append(weights, o.Weights[j])
			}
		}
		l, err := leftOut(ctx, r, kept, weights, o)
		if errors.Is(err, ErrNoResults) {
			continue
		}
		if err != nil {
			return nil, fmt.Errorf("without result %d: %w", i+1, err)
		}
		l.Index = i
		out = append(out, l)
	}
	return out, nil
}

func leftOut(ctx context.Context, r record.Result, others []record.Result, weights []float64, o Options) (Left, error) {
	o.Weights = weights
	e, err := Fit(ctx, others, o)
	if err != nil {
		return Left{}, err
	}
	p, err := e.Predict(ctx, r)
	if err != nil {
		return Left{}, err
	}
	return Left{
		Result: r, Prediction: p, Log: p.miss(r.Time), Score: p.LogScore(r.Time), Share: p.Share(r.Time), Others: len(e.Residuals),
	}, nil
}

// A Comparison is how much better one way of fitting predicts results than another.
type Comparison struct {
	// Gain is the sum of the differences of log scores, and SE its standard error: that of
	// a sum of as many independent differences (Vehtari, Gelman & Gabry 2017, Stat Comput
	// 27:1413, from memory). A gain of less than two or so is none.
	Gain, SE float64

	// Closer is in how many results the first was nearer, of Results.
	Closer, Results int
}

// Compare compares two ways of fitting the same results by their leave-one-out log scores:
// above 0 the first predicts better. Cost curves are compared by Options.Curves; duration
// curves, which are the endurance exponent and the fade, by priors that take numbers as
// known: a fade of 0 is Riegel's. The error is LeaveOneOut's.
func Compare(ctx context.Context, results []record.Result, first, second Options) (Comparison, error) {
	a, err := LeaveOneOut(ctx, results, first)
	if err != nil {
		return Comparison{}, err
	}
	b, err := LeaveOneOut(ctx, results, second)
	if err != nil {
		return Comparison{}, err
	}
	var c Comparison
	var gains []float64
	for _, l := range a {
		i := slices.IndexFunc(b, func(m Left) bool { return m.Index == l.Index })
		if i < 0 {
			continue
		}
		gains = append(gains, l.Score-b[i].Score)
		if math.Abs(l.Log) < math.Abs(b[i].Log) {
			c.Closer++
		}
	}
	c.Results = len(gains)
	if c.Results == 0 {
		return c, fmt.Errorf("calibrate: %w: none can be left out", ErrNoResults)
	}
	c.Gain = stat.Mean(gains, nil) * float64(c.Results)
	c.SE = math.NaN()
	if c.Results > 1 {
		c.SE = stat.StdDev(gains, nil) * math.Sqrt(float64(c.Results))
	}
	return c, nil
}
