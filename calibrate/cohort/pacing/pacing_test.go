package pacing

import (
	"context"
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"
	"testing"
	"time"

	"isoeffort.example/effort"
	"isoeffort.example/effort/record"
)

// invented is a race of an invented mountain course, run as a shape says with noise in
// the shares.
func invented(t *testing.T, s Shape, race string, year, runners int, seed uint64) []record.Result {
	t.Helper()
	rng := rand.New(rand.NewPCG(seed, 1))
	var splits []record.Split
	for i := range 9 {
		up := 600 * float64(i+1)
		if i%2 == 0 {
			up += 250
		}
		splits = append(splits, record.Split{Distance: 9000 * float64(i+1), Ascent: up, Descent: 600*float64(i+1) - 100})
	}
	blank := record.Result{Race: race, Date: time.Date(year, 6, 1, 0, 0, 0, 0, time.UTC), Distance: 92_000, Ascent: 6200, Descent: 6200, Splits: splits}
	trail, err := newTrail([]record.Result{blank}, record.Profile{})
	if err != nil {
		t.Fatal(err)
	}
	in, err := effort.NewIntegrator(trail.ground, effort.Usual(10), effort.Surroundings{})
	if err != nil {
		t.Fatal(err)
	}
	var results []record.Result
	for i := range runners {
		r := blank
		seconds := math.Round(3600 * math.Exp(2.75+0.2*rng.NormFloat64()))
		r.Runner, r.Time = fmt.Sprint("runner ", i), effort.Seconds(seconds)
		share, even := trail.curve(in, s, 0.1, seconds, distances([]record.Result{blank}))
		if even {
			t.Fatal("no pace")
		}
		r.Splits = append([]record.Split(nil), splits...)
		bend := 0.01 * rng.NormFloat64()
		for j := range r.Splits {
			e := 4*bend*share[j]*(1-share[j]) + 0.002*rng.NormFloat64()
			r.Splits[j].Elapsed = seconds * (share[j] + e)
		}
		if r.Check() == nil {
			results = append(results, r)
		}
	}
	return results
}

// What a field was made with is found again, as far as it shows: braking, and of fade
// and tilt what they do together; another year's splits are foretold as by the shape itself.
func TestShapeIsFoundAgain(t *testing.T) {
	t.Parallel()
	if testing.Short() {
		t.Skip("takes seconds, and minutes under the race detector")
	}
	made := Shape{Fade: 0.03, FadeShape: 1, Braking: 1.6, Tilt: 0.06}
	results := invented(t, made, "a", 2020, 500, 1)
	m, err := Fit(context.Background(), results, Options{Groups: 1})
	if err != nil {
		t.Fatal(err)
	}
	if got := m.Shared; math.Abs(math.Log(got.Braking/made.Braking)) > 0.25 {
		t.Errorf("braking %.2f, made with %.2f", got.Braking, made.Braking)
	}
	later := invented(t, made, "b", 2021, 500, 2)
	field, err := m.Field(later)
	if err != nil {
		t.Fatal(err)
	}
	sum, truth := 0.0, 0.0
	exact := &Field{&Model{Groups: []Group{{HourPower: 10, Shape: made}}, o: m.o}, field.trail, nil}
	for _, r := range later {
		for _, s := range r.Splits {
			e, _ := field.Elapsed(r.Time.Seconds(), []float64{s.Distance})
			sum += math.Abs(e[0]-s.Elapsed) / r.Time.Seconds()
			e, _ = exact.Elapsed(r.Time.Seconds(), []float64{s.Distance})
			truth += math.Abs(e[0]-s.Elapsed) / r.Time.Seconds()
		}
	}
	// What 500 runners leave unsure of four numbers is small beside the noise of one.
	if sum > 1.03*truth {
		t.Errorf("shares foretold %.1f %% worse than by the shape that made them; %+v", 100*(sum/truth-1), m.Shared)
	}
}

// Groups of speed that differ are told apart.
func TestGroups(t *testing.T) {
	t.Parallel()
	if testing.Short() {
		t.Skip("takes seconds, and minutes under the race detector")
	}
	slow, fast := Shape{Fade: 0.025, FadeShape: 1, Braking: 1, Tilt: 0.10}, Shape{Fade: 0.02, FadeShape: 1, Braking: 1, Tilt: 0}
	var results []record.Result
	for k, all := range [][]record.Result{invented(t, slow, "a", 2020, 120, 3), invented(t, fast, "a", 2020, 120, 3)} {
		for _, r := range all {
			if (r.Time > 16*time.Hour) == (k == 0) {
				results = append(results, r)
			}
		}
	}
	m, err := Fit(context.Background(), results, Options{Groups: 2})
	if err != nil {
		t.Fatal(err)
	}
	one, err := Fit(context.Background(), results, Options{Groups: 1})
	if err != nil {
		t.Fatal(err)
	}
	if len(m.Groups) != 2 || !(m.Groups[0].HourPower < m.Groups[1].HourPower) || !(m.Error < 0.9*one.Error) {
		t.Errorf("error %.4f in groups, %.4f shared: %+v", m.Error, one.Error, m.Groups)
	}
	if !(m.Error < m.Even) {
		t.Errorf("error %.4f, by distance %.4f", m.Error, m.Even)
	}
}

// A section that runs slower than its profile says, year after year, is foretold so on its
// own course alone.
func TestPlaces(t *testing.T) {
	t.Parallel()
	if testing.Short() {
		t.Skip("takes seconds, and minutes under the race detector")
	}
	var years [3][]record.Result
	for y := range years {
		years[y] = invented(t, Usual(), fmt.Sprint("a ", y), 2020+y, 60, uint64(7+y))
		for i := range years[y] {
			years[y][i].Course = "a"
			years[y][i].Splits[4].Elapsed += 0.03 * years[y][i].Time.Seconds()
		}
	}
	m, err := Fit(context.Background(), append(years[0], years[1]...), Options{Groups: 1})
	if err != nil {
		t.Fatal(err)
	}
	f, err := m.Field(years[2])
	if err != nil {
		t.Fatal(err)
	}
	at := []float64{years[2][0].Splits[4].Distance}
	without, _ := f.Elapsed(50_000, at)
	with := f.ElapsedThere(50_000, at)
	if late := (with[0] - without[0]) / 50_000; math.Abs(late-0.03) > 0.01 {
		t.Errorf("late by %.4f of the finish time, made with 0.03", late)
	}
	years[2][0].Course = "b"
	if f, err = m.Field(years[2]); err != nil || f.ElapsedThere(50_000, at)[0] != without[0] {
		t.Errorf("another course is foretold by the places of the first: %v", err)
	}
}

func TestSameOnAnyWorkers(t *testing.T) {
	t.Parallel()
	results := invented(t, Usual(), "a", 2020, 40, 4)
	var before *Model
	for workers := 1; workers <= 3; workers++ {
		rand.New(rand.NewPCG(uint64(workers), 0)).Shuffle(len(results), func(i, j int) { results[i], results[j] = results[j], results[i] })
		m, err := Fit(context.Background(), results, Options{Groups: 1, Workers: workers})
		if err != nil {
			t.Fatal(err)
		}
		m.o = Options{}
		if before != nil && !reflect.DeepEqual(m, before) {
			t.Errorf("%+v, with one worker %+v", m, before)
		}
		before = m
	}
}

func TestRefusals(t *testing.T) {
	t.Parallel()
	if _, err := Fit(context.Background(), nil, Options{}); !errors.Is(err, ErrNoSplits) {
		t.Error(err)
	}
	if _, err := Fit(context.Background(), nil, Options{Groups: -1}); !errors.Is(err, ErrOption) {
		t.Error(err)
	}
	m, err := NewUsual(Options{})
	if err != nil {
		t.Fatal(err)
	}
	if _, err := m.Field(nil); !errors.Is(err, ErrNoSplits) {
		t.Error(err)
	}
	f, err := m.Field(invented(t, Usual(), "a", 2020, 3, 5))
	if err != nil {
		t.Fatal(err)
	}
	if e, _ := f.Elapsed(math.NaN(), []float64{5}); !math.IsNaN(e[0]) {
		t.Error(e)
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := Fit(ctx, invented(t, Usual(), "a", 2020, 30, 6), Options{}); !errors.Is(err, context.Canceled) {
		t.Error(err)
	}
}
