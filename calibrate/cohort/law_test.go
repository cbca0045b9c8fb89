package cohort

import (
	"context"
	"errors"
	"math"
	"math/rand/v2"
	"reflect"
	"testing"
	"time"

	"isoeffort.example/calibrate"
	"isoeffort.example/calibrate/cohort/invented"
	"isoeffort.example/effort"
	"isoeffort.example/effort/record"
)

func fitted(t *testing.T, results []record.Result, o Options) *Model {
	t.Helper()
	m, err := Fit(context.Background(), results, o)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func small(seed uint64) []record.Result {
	results, _ := field(seed, invented.Field{Runners: 60, Courses: 30, Results: 600})
	return results
}

// The order of the rows and the count of workers change no digit.
func TestOrderAndWorkersChangeNothing(t *testing.T) {
	t.Parallel()
	results := small(1)
	want := fitted(t, results, Options{Rounds: 5, Workers: 1})
	for workers := 1; workers <= 3; workers++ {
		rand.New(rand.NewPCG(uint64(workers), 0)).Shuffle(len(results), func(i, j int) { results[i], results[j] = results[j], results[i] })
		got := fitted(t, results, Options{Rounds: 5, Workers: workers})
		if !reflect.DeepEqual(want.Population, got.Population) {
			t.Errorf("%d workers: %+v, want %+v", workers, got.Population, want.Population)
		}
		if !reflect.DeepEqual(want.Courses, got.Courses) {
			t.Errorf("%d workers: %+v, want %+v", workers, got.Courses, want.Courses)
		}
		if !reflect.DeepEqual(want.Athletes, got.Athletes) {
			t.Errorf("%d workers: %+v, want %+v", workers, got.Athletes, want.Athletes)
		}
	}
}

// All times longer by one factor leave the linear fit as it was but for the population's
// mean: course effects and spreads stay. Times are made with no fade and one exponent, so
// that a factor on hour power is one on time.
func TestAFactorOnTimesIsThePopulations(t *testing.T) {
	t.Parallel()
	if testing.Short() {
		t.Skip("takes seconds, and minutes under the race detector")
	}
	results := small(2)
	prior := calibrate.Mountain()
	prior[effort.Fade].Median = 0
	before := fitted(t, results, Options{Prior: prior, Rounds: 12, Tolerance: 1e-4})
	for i := range results {
		results[i].Time = time.Duration(float64(results[i].Time) * 1.1)
	}
	after := fitted(t, results, Options{Prior: prior, Rounds: 12, Tolerance: 1e-4})
	p, q := before.Population.Prior[effort.HourPower], after.Population.Prior[effort.HourPower]
	// ln T answers to ln P60 by −1/(1−k) at the prior's exponent; the median's own
	// endurance turns about one hour, hence the looser bound.
	if got, want := math.Log(q.Median/p.Median), -0.9*math.Log(1.1); math.Abs(got-want) > 0.01 {
		t.Errorf("hour power changed by %.4f, want %.4f", got, want)
	}
	if math.Abs(p.LogSD-q.LogSD) > 2e-3 {
		t.Errorf("its spread changed from %.4f to %.4f", p.LogSD, q.LogSD)
	}
	for i, c := range before.Courses {
		if d := after.Courses[i].Effect - c.Effect; math.Abs(d) > 2e-3 {
			t.Errorf("%s: effect changed by %.4f", c.Name, d)
		}
	}
}

// calibrate.Fit takes the prior that comes out.
func TestPriorForOneAthlete(t *testing.T) {
	t.Parallel()
	results := small(8)
	m := fitted(t, results, Options{})
	o := calibrate.Options{Prior: m.Population.Prior, Noise: m.Population.Noise, Base: effort.Athlete{Habit: effort.RunOnly}}
	if _, err := calibrate.Fit(context.Background(), results[:3], o); err != nil {
		t.Error(err)
	}
}

func TestRefusals(t *testing.T) {
	t.Parallel()
	good := small(9)
	nameless := append([]record.Result(nil), good...)
	nameless[3].Runner = ""
	endless := append([]record.Result(nil), good...)
	endless[3].Distance = math.Inf(1)
	for _, c := range []struct {
		name    string
		results []record.Result
		o       Options
		want    error
	}{
		{"nothing", nil, Options{}, ErrNoResults},
		{"a runner without a name", nameless, Options{}, ErrRunner},
		{"a distance without end", endless, Options{}, record.ErrDistance},
		{"rounds", good, Options{Rounds: -1}, ErrOption},
		{"a prior that knows the hour power", good, Options{Prior: known()}, ErrOption},
	} {
		if _, err := Fit(context.Background(), c.results, c.o); !errors.Is(err, c.want) {
			t.Errorf("%s: %v", c.name, err)
		}
	}
	if m, err := Fit(context.Background(), good[:1], Options{}); err != nil || len(m.Warnings) == 0 {
		t.Errorf("one result: %v", err)
	}
}

func known() calibrate.Prior {
	p := calibrate.Mountain()
	p[effort.HourPower].LogSD = 0
	return p
}

// A context that ends ends a fit and forecasts. By themselves they take less than a tenth
// of a second for that; the bound leaves room for a loaded machine and the race detector.
func TestCancel(t *testing.T) {
	results, _ := field(10, invented.Field{Runners: 1000, Courses: 600, Results: 10_000})
	for _, run := range []func(context.Context) error{
		func(ctx context.Context) error { _, err := Fit(ctx, results, Options{}); return err },
		func(ctx context.Context) error { _, err := Forecasts(ctx, results, ForecastOptions{}); return err },
	} {
		ctx, cancel := context.WithCancel(context.Background())
		ended := make(chan time.Time, 1)
		time.AfterFunc(700*time.Millisecond, func() { cancel(); ended <- time.Now() })
		err := run(ctx)
		late := time.Since(<-ended)
		if !errors.Is(err, context.Canceled) {
			t.Errorf("ended with %v", err)
		}
		if late > time.Second {
			t.Errorf("ended %v after", late)
		}
	}
}
