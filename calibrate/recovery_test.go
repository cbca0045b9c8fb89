package calibrate

import (
	"context"
	"math"
	"math/rand/v2"
	"runtime"
	"sync"
	"testing"
	"time"

	"isoeffort.example/effort"
	"isoeffort.example/effort/record"
)

// TestRecovery draws 200 athletes from the prior on each of five seeds, gives each six
// races with 3 % noise, and fits them: the hour power must come back within 4 % in the
// median, and 90 % intervals of hour power, endurance exponent and fade must hold 85 to
// 95 % of the truths, on every seed; over the 1000 athletes they must hold 88 to 93 % for
// every number.
func TestRecovery(t *testing.T) {
	t.Parallel()
	var hits [effort.Numbers]int
	const seeds = 5
	for seed := range uint64(seeds) {
		truths, fits := recover200(t, seed)
		for n := range effort.Number(effort.Numbers) {
			hit := 0
			var off []float64
			for i, fit := range fits {
				low, high := fit.Interval(n, 0.9)
				if truth := truths[i].Get(n); low <= truth && truth <= high {
					hit++
				}
				off = append(off, math.Abs(fit.Athlete.Get(n)/truths[i].Get(n)-1))
			}
			hits[n] += hit
			if cover := float64(hit) / 200; n <= effort.Fade && (cover < 0.85 || cover > 0.95) {
				t.Errorf("seed %d: 90 %% intervals of the %v hold %.1f %% of the truths", seed, n, 100*cover)
			}
			t.Logf("seed %d, %v: coverage %.3f, median error %.1f %%", seed, n, float64(hit)/200, 100*median(off))
			if n == effort.HourPower && median(off) > 0.04 {
				t.Errorf("seed %d: median error of hour power %.1f %%", seed, 100*median(off))
			}
		}
	}
	for n, hit := range hits {
		cover := float64(hit) / (200 * seeds)
		t.Logf("%v: coverage %.3f", effort.Number(n), cover)
		if cover < 0.88 || cover > 0.93 {
			t.Errorf("90 %% intervals of the %v hold %.1f %% of the truths", effort.Number(n), 100*cover)
		}
	}
}

func recover200(t *testing.T, seed uint64) ([]effort.Athlete, []*Estimate) {
	rng := rand.New(rand.NewPCG(seed, 1))
	truths, results := make([]effort.Athlete, 200), make([][]record.Result, 200)
	for i := range truths {
		truths[i] = draw(rng, Recreational())
		results[i] = races(t, rng, truths[i])
	}
	fits := make([]*Estimate, len(truths))
	var wait sync.WaitGroup
	gate := make(chan struct{}, runtime.GOMAXPROCS(0))
	for i := range truths {
		wait.Add(1)
		gate <- struct{}{}
		go func() {
			defer func() { <-gate; wait.Done() }()
			fit, err := Fit(context.Background(), results[i], Options{})
			if err != nil {
				t.Errorf("seed %d, athlete %d %+v: %v", seed, i, truths[i], err)
				fit = &Estimate{}
			}
			fits[i] = fit
		}()
	}
	wait.Wait()
	return truths, fits
}

// draw returns an athlete from the prior, within what people are.
func draw(rng *rand.Rand, p Prior) effort.Athlete {
	for {
		z := make([]float64, effort.Numbers)
		for n := range z {
			z[n] = rng.NormFloat64()
		}
		a, _ := p.athlete(effort.Athlete{}, z)
		if a.HourPower > 4 && a.HourPower < 20 {
			return a
		}
	}
}

// races returns six races of 5 to 90 km with 3 % noise, hilly ones among them.
func races(t *testing.T, rng *rand.Rand, a effort.Athlete) []record.Result {
	var results []record.Result
	for range 6 {
		r := record.Result{Date: time.Date(2026, 3, 1, 0, 0, 0, 0, time.UTC)}
		r.Distance = 5000 * math.Exp(rng.Float64()*math.Log(18))
		r.Ascent = r.Distance * 0.04 * rng.Float64()
		r.Descent = r.Ascent
		g, err := effort.NewSummaryGround(r.Distance, r.Ascent, r.Descent)
		if err != nil {
			t.Fatal(err)
		}
		in, err := effort.NewIntegrator(g, a, effort.Surroundings{})
		if err != nil {
			t.Fatal(err)
		}
		s, err := in.Solve(effort.State{}, effort.Demand{})
		if err != nil {
			t.Fatal(err)
		}
		r.Time = effort.Seconds(s.Finish().Moving * math.Exp(0.03*rng.NormFloat64()))
		results = append(results, r)
	}
	return results
}
