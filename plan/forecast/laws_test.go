package forecast_test

import (
	"math"
	"reflect"
	"slices"
	"testing"
	"time"

	"pgregory.net/rapid"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/plan"
	"isoeffort.example/plan/forecast"
)

func hills(x float64) float64 { return 300 + 40*math.Sin(x/900) + 25*math.Sin(x/350+1) }

// Quantiles ascend at each place and along the course; fewer are in the race the farther;
// shares add up to 1.
func TestOrder(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		length := 10 * float64(rapid.IntRange(800, 6000).Draw(t, "tens of metres"))
		c := profile(t, length, hills, marked(length, length/5)...)
		tilt := forecast.Tilt{Mean: rapid.Float64Range(-0.1, 0.1).Draw(t, "tilt"), SD: 0.05}
		b := prior()
		b.Quantile = rapid.SampledFrom([]float64{0, 1.645, 2.1, 2.9}).Draw(t, "quantile")
		r := plan.Race{StartDelay: 5 * time.Minute, Stops: []plan.Stop{{Distance: length / 2, Duration: 4 * time.Minute}}}
		hours := rapid.Float64Range(0.2, 2).Draw(t, "hours to half way")
		r.Cutoffs = []plan.Cutoff{
			{Name: "half", Distance: length * 2 / 5, Time: effort.Seconds(hours * 3600)},
			{Name: "late", Distance: length * 4 / 5, Time: effort.Seconds(2 * hours * 3600)},
		}
		f := of(t, c, drawer(t, effort.Usual(11), b, tilt), r, forecast.Options{Draws: 60, Seed: rapid.Uint64().Draw(t, "seed")})
		for i, p := range f.Places {
			if !slices.IsSorted(p.Times) || !slices.IsSorted(p.InRace) {
				t.Fatalf("%s: %v and in race %v", p.Name, p.Times, p.InRace)
			}
			if i == 0 {
				continue
			}
			for q := range p.Times {
				if p.Times[q] <= f.Places[i-1].Times[q] {
					t.Fatalf("quantile %d at %s: %v after %v", q, p.Name, p.Times[q], f.Places[i-1].Times[q])
				}
			}
			if p.Reached.P > f.Places[i-1].Reached.P {
				t.Fatalf("more reach %s than the place before", p.Name)
			}
		}
		if late := f.Cutoffs[1]; late.Inside.P > f.Cutoffs[0].Inside.P || late.Given.P < late.Inside.P || f.Finishes != late.Inside {
			t.Fatalf("cutoffs %+v, finishes %v", f.Cutoffs, f.Finishes)
		}
		sum := f.Unexplained
		for _, s := range f.Sources {
			sum += s.Share
		}
		if math.Abs(sum-1) > 1e-9 {
			t.Fatalf("shares add up to %g", sum)
		}
	})
}

// A later cutoff is not harder to make, nor a slower goal to meet.
func TestLaterIsEasier(t *testing.T) {
	t.Parallel()
	c := profile(t, 30_000, hills)
	d := drawer(t, effort.Usual(11), prior(), forecast.FieldTilt())
	made, met := -1.0, -1.0
	for m := 150; m <= 240; m += 10 {
		limit := time.Duration(m) * time.Minute
		f := of(t, c, d, plan.Race{Goal: limit, Cutoffs: []plan.Cutoff{{Distance: 20_000, Time: limit * 2 / 3}}}, forecast.Options{Draws: 200})
		if f.Cutoffs[0].Inside.P < made || f.Goal.Chance.P < met {
			t.Errorf("%v: %g after %g, goal %g after %g", limit, f.Cutoffs[0].Inside.P, made, f.Goal.Chance.P, met)
		}
		made, met = f.Cutoffs[0].Inside.P, f.Goal.Chance.P
	}
	if made < 0.5 || met < 0.5 {
		t.Errorf("the limits do not cover the spread: %g, %g", made, met)
	}
}

// Without a spread the forecast is the solve, with delay and stops, within the 0.2 % that
// Of promises.
func TestNoSpread(t *testing.T) {
	t.Parallel()
	c := profile(t, 40_000, hills, course.Landmark{Name: "post", Distance: 15_000})
	a := effort.Usual(11)
	r := plan.Race{StartDelay: 3 * time.Minute, Stops: []plan.Stop{{Distance: 15_010, Duration: 5 * time.Minute}}}
	f := of(t, c, drawer(t, a, effort.Basis{}, forecast.Tilt{Mean: 0.04}), r, forecast.Options{Draws: 3})
	g, err := effort.NewGround(c, 10)
	if err != nil {
		t.Fatal(err)
	}
	in, err := effort.NewIntegrator(g, a, effort.Surroundings{})
	if err != nil {
		t.Fatal(err)
	}
	s, err := in.Solve(effort.State{}, effort.Demand{Tilt: 0.04})
	if err != nil {
		t.Fatal(err)
	}
	for i, p := range f.Places {
		want := s.At(p.Distance).Moving
		beside := []float64{180, 480}[i]
		for _, got := range p.Times {
			if math.Abs(got.Seconds()-beside-want) > 0.002*want {
				t.Errorf("%s: %v, want %.1f s", p.Name, got, want+beside)
			}
		}
	}
	if len(f.Sources) != 0 || len(f.Warnings) == 0 {
		t.Errorf("sources %v, warnings %q", f.Sources, f.Warnings)
	}
}

// A day's noise of 3 % gives the lognormal interval about the athlete known: 1.645 SDs for 5 to
// 95 %. Its ends have a sampling SD of 0.03 · √(0.05·0.95/4000)/0.103 = 0.001; four of them.
func TestNoiseAlone(t *testing.T) {
	t.Parallel()
	c := profile(t, 20_000, hills)
	d := drawer(t, effort.Usual(12), effort.Basis{Noise: 0.03}, forecast.Tilt{})
	f := of(t, c, d, plan.Race{}, forecast.Options{Draws: 4000, Step: 200})
	times := f.Finish().Times
	for i, sds := range map[int]float64{0: -1.645, 1: -0.674, 3: 0.674, 4: 1.645} {
		if got := math.Log(times[i].Seconds() / times[2].Seconds()); math.Abs(got-0.03*sds) > 0.004 {
			t.Errorf("quantile %d: ln %.4f, want %.4f", i, got, 0.03*sds)
		}
	}
	if len(f.Sources) != 1 || f.Sources[0].Name != "the day" || math.Abs(f.Sources[0].Share-1) > 1e-9 {
		t.Errorf("sources %v", f.Sources)
	}
}

func TestSameForAnyWorkers(t *testing.T) {
	t.Parallel()
	c := profile(t, 30_000, hills, marked(30_000, 7000)...)
	d := drawer(t, effort.Usual(11), prior(), forecast.FieldTilt())
	r := plan.Race{Goal: 3 * time.Hour, Cutoffs: []plan.Cutoff{{Distance: 14_000, Time: 100 * time.Minute}}}
	one := of(t, c, d, r, forecast.Options{Draws: 100, Seed: 3})
	for _, n := range []int{2, 3, 200} {
		if many := of(t, c, d, r, forecast.Options{Draws: 100, Seed: 3, Workers: n}); !reflect.DeepEqual(one, many) {
			t.Errorf("%d workers: %+v, one %+v", n, many, one)
		}
	}
	if other := of(t, c, d, r, forecast.Options{Draws: 100, Seed: 4}); reflect.DeepEqual(one.Places, other.Places) {
		t.Error("another seed gives the same")
	}
}

// Whoever is out at a cutoff does not count beyond it, but counts in Times.
func TestOut(t *testing.T) {
	t.Parallel()
	c := profile(t, 20_000, level, course.Landmark{Name: "half", Distance: 10_000}, course.Landmark{Name: "late", Distance: 15_000})
	draws := []forecast.Draw{{Athlete: effort.Usual(14)}, {Athlete: effort.Usual(13)}, {Athlete: effort.Usual(8)}, {Athlete: effort.Usual(7)}}
	all := of(t, c, forecast.Given(draws), plan.Race{}, forecast.Options{Draws: 4, Quantiles: []float64{0.25, 0.5, 0.75, 0.999}})
	half := all.Places[0].Times
	limit := (half[1] + half[2]) / 2
	f := of(t, c, forecast.Given(draws), plan.Race{
		Goal:    all.Finish().Times[0] + time.Second,
		Stops:   []plan.Stop{{Distance: 10_000, Duration: limit - half[1] + time.Second}},
		Cutoffs: []plan.Cutoff{{Distance: 10_000, Time: limit}, {Distance: 10_000, Time: limit, Departure: true}},
	}, forecast.Options{Draws: 4, Quantiles: all.Quantiles})
	if f.Cutoffs[0].Inside.P != 0.5 || f.Cutoffs[1].Inside.P != 0.25 || f.Cutoffs[1].Given.P != 0.5 {
		t.Errorf("cutoffs %+v", f.Cutoffs)
	}
	if f.Places[0].Reached.P != 1 || f.Places[1].Reached.P != 0.25 || f.Finishes.P != 0.25 || f.Goal.Chance.P != 0 {
		t.Errorf("places %+v, finishes %v, goal %+v", f.Places, f.Finishes, f.Goal)
	}
	late := f.Places[1]
	if late.InRace[3] != late.Times[0] || late.Times[3] <= late.Times[0] {
		t.Errorf("late %+v", late)
	}
}

// A runner who fades away never arrives, and is said to.
func TestFadesAway(t *testing.T) {
	t.Parallel()
	c := profile(t, 100_000, level)
	gone := effort.Athlete{HourPower: 1, Endurance: 0.2, Fade: 0.5, FadeShape: 2, Braking: 1, Habit: effort.RunOnly, SlowestRun: 0.5}
	f := of(t, c, forecast.Given([]forecast.Draw{{Athlete: effort.Usual(14)}, {Athlete: effort.Usual(14)}, {Athlete: effort.Usual(14)}, {Athlete: gone}}), plan.Race{}, forecast.Options{Draws: 4})
	if f.Unfinished != 1 || f.Finishes.P != 0.75 || len(f.Warnings) == 0 {
		t.Errorf("unfinished %d, finishes %v, warnings %q", f.Unfinished, f.Finishes, f.Warnings)
	}
	finish := f.Finish()
	if last := len(finish.Times) - 1; finish.Times[last] != math.MaxInt64 || finish.InRace[last] == math.MaxInt64 {
		t.Errorf("times %v, in race %v", finish.Times, finish.InRace)
	}
}
