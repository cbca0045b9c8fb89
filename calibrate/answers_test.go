package calibrate_test

import (
	"context"
	"errors"
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"
	"time"

	"gonum.org/v1/gonum/stat"

	"isoeffort.example/calibrate"
	"isoeffort.example/effort"
	"isoeffort.example/effort/record"
)

// some are an invented runner's results over months.
func some() []record.Result {
	list := []record.Result{
		result(10_000, 60, 46*time.Minute), result(21_100, 180, 104*time.Minute), result(15_000, 400, 84*time.Minute),
		result(42_200, 300, 3*time.Hour+46*time.Minute), result(30_000, 900, 3*time.Hour+4*time.Minute), result(10_000, 40, 45*time.Minute),
	}
	for i := range list {
		list[i].Date = day.AddDate(0, i, 0)
	}
	return list
}

// Two results never give a confident fade, whatever they are.
func TestTwoResultsNeverSettleTheFade(t *testing.T) {
	t.Parallel()
	rng := rand.New(rand.NewPCG(1, 2))
	for range 300 {
		var pair []record.Result
		for range 2 {
			d := 3000 * math.Exp(rng.Float64()*math.Log(30))
			up := d * 0.05 * rng.Float64()
			speed := 2 + 2.5*rng.Float64()
			r := result(d, up, time.Duration((d+8*up)/speed*1e9))
			if r.Check() != nil {
				continue
			}
			pair = append(pair, r)
		}
		if len(pair) < 2 {
			continue
		}
		e, err := calibrate.Fit(context.Background(), pair, calibrate.Options{})
		if err != nil {
			t.Errorf("%+v: %v", pair, err)
			continue
		}
		low, high := e.Interval(effort.Fade, 0.9)
		if e.Informed(effort.Fade) > 0.5 || high/low < 2.5 {
			t.Errorf("%.0f m in %v and %.0f m in %v: the fade is within %.3f to %.3f, informed %.2f",
				pair[0].Distance, pair[0].Time, pair[1].Distance, pair[1].Time, low, high, e.Informed(effort.Fade))
		}
	}
}

// Draws have the moments that the estimate states, and are the same for the same seed.
func TestDraws(t *testing.T) {
	t.Parallel()
	e := fit(t, calibrate.Options{}, some()...)
	draws := e.Draws(3, 20_000)
	for n := range effort.Number(effort.Numbers) {
		var ln []float64
		for _, d := range draws {
			if d.Athlete.Check() != nil {
				t.Fatalf("%+v", d)
			}
			ln = append(ln, d.Athlete.Get(n))
		}
		slices.Sort(ln)
		low, high := e.Interval(n, 0.9)
		below, above := shareBelow(ln, low), 1-shareBelow(ln, high)
		if math.Abs(below-0.05) > 0.006 || math.Abs(above-0.05) > 0.006 { // 4 standard errors
			t.Errorf("%v: %.4f below the interval, %.4f above", n, below, above)
		}
	}
	if again := e.Draws(3, 5); !reflect.DeepEqual(draws[:5], again) {
		t.Errorf("%+v, again %+v", draws[:5], again)
	}
}

func shareBelow(sorted []float64, v float64) float64 {
	i, _ := slices.BinarySearch(sorted, v)
	return float64(i) / float64(len(sorted))
}

// The sampler agrees with the draws where the posterior is near normal, to a fifth of an SD
// and 15 % of it, and gives the same digits on any number of workers.
func TestSample(t *testing.T) {
	t.Parallel()
	o := calibrate.SampleOptions{Seed: 5, Draws: 400, Thin: 4, BurnIn: 50, Workers: 2}
	e := fit(t, calibrate.Options{Tails: math.Inf(1)}, some()...)
	s, err := e.Sample(context.Background(), o)
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("R-hat %.3f, moved %.2f", s.RHat, s.Moved)
	if !(s.RHat < 1.2) || len(s.Draws) != 400 {
		t.Errorf("%d draws, R-hat %.3f", len(s.Draws), s.RHat)
	}
	for _, n := range []effort.Number{effort.HourPower, effort.Endurance, effort.Fade} {
		var ln []float64
		for _, d := range s.Draws {
			ln = append(ln, math.Log(d.Athlete.Get(n)))
		}
		m, sd := stat.MeanStdDev(ln, nil)
		t.Logf("%v: sampled %.4f SD %.4f, at the mode %.4f SD %.4f", n, m, sd, math.Log(e.Athlete.Get(n)), e.SE(n))
		if math.Abs(m-math.Log(e.Athlete.Get(n))) > 0.3*e.SE(n) || math.Abs(sd/e.SE(n)-1) > 0.25 {
			t.Errorf("%v: sampled %.4f SD %.4f, at the mode %.4f SD %.4f", n, m, sd, math.Log(e.Athlete.Get(n)), e.SE(n))
		}
	}
	o.Workers = 1
	again, err := e.Sample(context.Background(), o)
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(s, again) {
		t.Error("another number of workers gives other draws")
	}
}

// Along a number well informed the profile rises by 0.5 at one standard error, to the skew
// that is left.
func TestProfile(t *testing.T) {
	t.Parallel()
	e := fit(t, calibrate.Options{Tails: math.Inf(1)}, some()...)
	p, se := e.Athlete.HourPower, e.SE(effort.HourPower)
	rises, err := e.Profile(context.Background(), effort.HourPower, []float64{p * math.Exp(-se), p, p * math.Exp(se)})
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(rises[0]-0.5) > 0.1 || math.Abs(rises[1]) > 1e-3 || math.Abs(rises[2]-0.5) > 0.1 {
		t.Errorf("rises %.4f", rises)
	}
	if _, err := e.Profile(context.Background(), effort.HourPower, []float64{-1}); !errors.Is(err, calibrate.ErrOption) {
		t.Error(err)
	}
}

// A prediction of a race that was fitted is near the fit; its quantiles and shares are each
// other's inverse; and what is far from all results is the less sure.
func TestPredict(t *testing.T) {
	t.Parallel()
	e := fit(t, calibrate.Options{}, some()...)
	near, err := e.Predict(context.Background(), record.Result{Date: day, Distance: 21_100, Ascent: 180, Descent: 180})
	if err != nil {
		t.Fatal(err)
	}
	if off := near.Median.Seconds()/e.Residuals[1].Fitted.Seconds() - 1; math.Abs(off) > 1e-4 {
		t.Errorf("predicted %v, fitted %v", near.Median, e.Residuals[1].Fitted)
	}
	for _, share := range []float64{0.05, 0.5, 0.95} {
		if got := near.Share(near.Quantile(share)); math.Abs(got-share) > 1e-6 {
			t.Errorf("share %.6f of the time of share %.2f", got, share)
		}
	}
	far, err := e.Predict(context.Background(), record.Result{Date: day, Distance: 160_000, Ascent: 8000, Descent: 8000})
	if err != nil {
		t.Fatal(err)
	}
	if !(far.Unsure > 2*near.Unsure) || !(near.LogScore(near.Median) > far.LogScore(far.Median)) {
		t.Errorf("unsure by %.4f near and %.4f far", near.Unsure, far.Unsure)
	}
}

// Each result is left out in turn; the first of all cannot be forecast from earlier ones.
// A model without air and one whose cost curve is wrong for climbs are told apart.
func TestLeavingOut(t *testing.T) {
	t.Parallel()
	one, err := calibrate.LeaveOneOut(context.Background(), some(), calibrate.Options{})
	if err != nil {
		t.Fatal(err)
	}
	last, err := calibrate.LeaveLastOut(context.Background(), some(), calibrate.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if len(one) != 6 || len(last) != 5 || last[4].Others != 5 || last[0].Others != 1 {
		t.Errorf("%d and %d predictions", len(one), len(last))
	}
	if off := math.Abs(one[5].Log - last[4].Log); off > 1e-9 {
		t.Errorf("the last left out of all and of the earlier ones differ by %g", off)
	}
	same, err := calibrate.Compare(context.Background(), some(), calibrate.Options{}, calibrate.Options{})
	if err != nil || same.Gain != 0 || same.Results != 6 {
		t.Errorf("%+v, %v", same, err)
	}
	flat := calibrate.Recreational()
	flat[effort.Endurance] = calibrate.Belief{Median: 0.01, LogSD: 0}
	worse, err := calibrate.Compare(context.Background(), some(), calibrate.Options{}, calibrate.Options{Prior: flat})
	if err != nil || !(worse.Gain > 0 && worse.SE > 0) {
		t.Errorf("without endurance: %+v, %v", worse, err)
	}
}

// Checks of results that the model made are unremarkable; of results that lean on distance
// under a prior that allows no such lean they say so.
func TestChecks(t *testing.T) {
	t.Parallel()
	for _, c := range fit(t, calibrate.Options{}, some()...).Checks(1, 400) {
		t.Logf("%+v", c)
		if c.P < 0.01 || c.P > 0.99 {
			t.Errorf("%+v", c)
		}
	}
	known := calibrate.Recreational()
	for _, n := range []effort.Number{effort.Endurance, effort.Fade, effort.FadeShape, effort.Braking} {
		known[n].LogSD = 0
	}
	known[effort.Endurance].Median, known[effort.Fade].Median = 0.3, 0.1
	leaning := fit(t, calibrate.Options{Prior: known}, some()...).Checks(1, 400)
	if c := leaning[2]; c.P < 0.98 {
		t.Errorf("%+v", c)
	}
	if fit(t, calibrate.Options{}, some()[:2]...).Checks(1, 10) != nil {
		t.Error("checks of two results")
	}
}

// A fit under way ends within 100 ms of the context.
func TestCancelling(t *testing.T) {
	t.Parallel()
	var many []record.Result
	for i := range 400 {
		r := result(10_000+100*float64(i), 100, time.Duration(2700+40*i)*time.Second)
		r.Date = day.AddDate(0, 0, i)
		many = append(many, r)
	}
	ctx, cancel := context.WithTimeout(context.Background(), 20*time.Millisecond)
	defer cancel()
	_, err := calibrate.Fit(ctx, many, calibrate.Options{Drift: 0.05})
	if late := time.Since(deadline(ctx)); late > 100*time.Millisecond {
		t.Errorf("%v after the context: %v", late, err)
	}
	if !errors.Is(err, context.DeadlineExceeded) {
		t.Errorf("cancelled: %v", err)
	}
}

func deadline(ctx context.Context) time.Time { d, _ := ctx.Deadline(); return d }
