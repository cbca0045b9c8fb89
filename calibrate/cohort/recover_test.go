package cohort

import (
	"context"
	"flag"
	"math"
	"math/rand/v2"
	"runtime"
	"sort"
	"testing"
	"time"

	"isoeffort.example/calibrate/cohort/invented"
	"isoeffort.example/effort"
	"isoeffort.example/effort/record"
)

var long = flag.Bool("long", false, "the large cohort")

func field(seed uint64, f invented.Field) ([]record.Result, invented.Truth) {
	return f.Make(rand.New(rand.NewPCG(seed, 1)))
}

// within fails unless got is within a factor of want.
func within(t *testing.T, what string, got, want, factor float64) {
	t.Helper()
	if !(got < want*factor && got > want/factor) {
		t.Errorf("%s %.4g, made with %.4g: not within a factor of %.2f", what, got, want, factor)
	}
}

// Spreads are found again. The factors are about two standard errors of a spread from so
// many athletes, courses or results: 1/√(2n) for what is seen directly, several times that
// for numbers seen through a race's noise. The noise is made with bad days and faulty
// distances besides its Student's t, so it is above the scale.
func TestSpreadsAreFoundAgain(t *testing.T) {
	t.Parallel()
	if testing.Short() {
		t.Skip("takes seconds, and minutes under the race detector")
	}
	f := invented.Field{Runners: 300, Courses: 120, Results: 3500, Wrong: -1}
	results, truth := field(1, f)
	m, err := Fit(context.Background(), results, Options{})
	if err != nil {
		t.Fatal(err)
	}
	p := m.Population
	within(t, "hour power's spread", p.Prior[effort.HourPower].LogSD, 0.2, 1.15)
	within(t, "endurance's spread", p.Prior[effort.Endurance].LogSD, 0.28, 1.6)
	within(t, "courses' scale", p.Course, 0.068, 1.25) // 0.08 · 0.85, the rest goes by kind
	within(t, "editions' scale", p.Edition, 0.03, 1.3)
	within(t, "noise", p.Noise, 0.06, 1.25)
	checkEffects(t, m, truth)
}

// checkEffects holds courses with ten results or more against the truth, their common mean
// aside: the effects were made with an SD of 0.09 and must be known better than that.
func checkEffects(t *testing.T, m *Model, truth invented.Truth) {
	t.Helper()
	mean, n := 0.0, 0.0
	for _, c := range m.Courses {
		if c.Results >= 10 {
			mean += c.Effect - truth.Course[c.Name]
			n++
		}
	}
	mean /= n
	square, raw := 0.0, 0.0
	for _, c := range m.Courses {
		if c.Results >= 10 {
			d := c.Effect - truth.Course[c.Name] - mean
			square += d * d / (c.SD * c.SD) / n
			raw += d * d / n
		}
	}
	// Listed ascents are 8 % wrong, some 3 % of time, which is part of a course's effect for
	// the fit but not of the truth; a course's own SD is 0.02 to 0.03.
	if raw = math.Sqrt(raw); raw > 0.06 {
		t.Errorf("course effects off by %.3f (SD); %.2f of their own SDs", raw, math.Sqrt(square))
	}
}

// judged are the forecasts' median absolute errors, and how many intervals held, by mode.
func judged(list []Forecast) (median, held [modes]float64, misses [modes][]float64) {
	for _, f := range list {
		for m, i := range []Interval{f.Own, f.Without, f.With, f.Day} {
			misses[m] = append(misses[m], math.Abs(float64(i.Median)/float64(f.Result.Time)-1))
			if f.Result.Time >= i.Low && f.Result.Time <= i.High {
				held[m] += 1 / float64(len(list))
			}
		}
	}
	for m := range misses {
		sorted := append([]float64(nil), misses[m]...)
		sort.Float64s(sorted)
		median[m] = sorted[len(sorted)/2]
	}
	return median, held, misses
}

// Each step makes forecasts better: the course's effect, the day's field; and nine in ten intervals hold, within three
// standard errors of a share from 400.
func TestForecastsImprove(t *testing.T) {
	t.Parallel()
	if testing.Short() {
		t.Skip("takes seconds, and minutes under the race detector")
	}
	results, _ := field(2, invented.Field{Runners: 400, Courses: 90, Results: 3000})
	list, err := Forecasts(context.Background(), results, ForecastOptions{SameDay: true})
	if err != nil {
		t.Fatal(err)
	}
	median, held, misses := judged(list)
	t.Logf("%d forecasts: median errors %.4f, intervals held %.3f", len(list), median, held)
	for _, step := range [][2]int{{0, 2}, {1, 2}, {2, 3}} {
		if z := improvement(list, misses[step[0]], misses[step[1]]); !(z > 1.96) {
			t.Errorf("mode %d on mode %d improves by %.2f standard errors", step[1], step[0], z)
		}
	}
	for m, share := range held {
		if math.Abs(share-0.9) > 0.045 {
			t.Errorf("mode %d: %.3f of the 90 %% intervals hold", m, share)
		}
	}
}

// improvement is the mean difference of paired errors in standard errors clustered by race.
func improvement(list []Forecast, before, after []float64) float64 {
	byRace := map[string]float64{}
	mean := 0.0
	for i := range list {
		mean += (before[i] - after[i]) / float64(len(list))
	}
	for i := range list {
		byRace[list[i].Result.Race] += before[i] - after[i] - mean
	}
	square := 0.0
	for _, d := range byRace {
		square += d * d
	}
	return mean * float64(len(list)) / math.Sqrt(square)
}

// The large cohort: 20 000 results of 1827 runners; -long.
func TestLargeCohort(t *testing.T) {
	if !*long {
		t.Skip("-long")
	}
	results, _ := field(1, invented.Field{Runners: 1827, Courses: 1280, Results: 20_000})
	began := time.Now()
	m, err := Fit(context.Background(), results, Options{})
	if err != nil {
		t.Fatal(err)
	}
	var memory runtime.MemStats
	runtime.ReadMemStats(&memory)
	t.Logf("fit in %v, %d MiB from the system: %+v", time.Since(began), memory.Sys>>20, m.Population)
	began = time.Now()
	list, err := Forecasts(context.Background(), results, ForecastOptions{SameDay: true})
	if err != nil {
		t.Fatal(err)
	}
	median, held, misses := judged(list)
	t.Logf("%d forecasts in %v: median errors %.4f, intervals held %.3f", len(list), time.Since(began), median, held)
	for m := 1; m < modes; m++ {
		t.Logf("step %d: %.2f standard errors", m, improvement(list, misses[m-1], misses[m]))
	}
}

func BenchmarkFit(b *testing.B) {
	results, _ := field(1, invented.Field{Runners: 200, Courses: 140, Results: 2000})
	for b.Loop() {
		if _, err := Fit(context.Background(), results, Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
