package main

import (
	"fmt"
	"math"
	"sort"

	"isoeffort.example/calibrate/cohort"
)

// A judgement is how one kind of forecast fared.
type judgement struct {
	name         string
	of           func(cohort.Forecast) cohort.Interval
	median       float64 // of |median/time − 1|
	held90       float64 // share of times within the 90 % intervals
	held50       float64
	logs, misses []float64 // ln(time/median); |median/time − 1|
	bounds       [][5]bool // whether the time is below each quantile of the forecast

	// gain is the mean of misses less than those of the kind before, with the ends of its
	// 95 % interval by SEs clustered by race.
	gain, gainLow, gainHigh float64
}

// judge judges every kind of forecast there is.
func judge(forecasts []cohort.Forecast) []judgement {
	if len(forecasts) == 0 {
		return nil
	}
	kinds := []judgement{
		{name: "own results, cohort's prior", of: func(f cohort.Forecast) cohort.Interval { return f.Own }},
		{name: "own results cleared of course effects", of: func(f cohort.Forecast) cohort.Interval { return f.Without }},
		{name: "with the course's effect", of: func(f cohort.Forecast) cohort.Interval { return f.With }},
		{name: "with the day's field", of: func(f cohort.Forecast) cohort.Interval { return f.Day }},
	}
	if forecasts[0].Day.Median == 0 {
		kinds = kinds[:3]
	}
	for k := range kinds {
		kinds[k].count(forecasts)
		if k > 0 {
			kinds[k].compare(forecasts, &kinds[k-1])
		}
	}
	return kinds
}

func (j *judgement) count(forecasts []cohort.Forecast) {
	n := float64(len(forecasts))
	for _, f := range forecasts {
		i, t := j.of(f), f.Result.Time
		j.logs = append(j.logs, math.Log(float64(t)/float64(i.Median)))
		j.misses = append(j.misses, math.Abs(float64(i.Median)/float64(t)-1))
		j.bounds = append(j.bounds, [5]bool{t < i.Low, t < i.InnerLow, t < i.Median, t < i.InnerHigh, t < i.High})
		if t >= i.Low && t <= i.High {
			j.held90 += 1 / n
		}
		if t >= i.InnerLow && t <= i.InnerHigh {
			j.held50 += 1 / n
		}
	}
	j.median = quantile(j.misses, 0.5)
}

// compare pairs the misses with those of another kind.
func (j *judgement) compare(forecasts []cohort.Forecast, before *judgement) {
	n := float64(len(forecasts))
	for i := range j.misses {
		j.gain += (before.misses[i] - j.misses[i]) / n
	}
	byRace := map[string]float64{}
	for i, f := range forecasts {
		byRace[f.Result.Race] += before.misses[i] - j.misses[i] - j.gain
	}
	names := make([]string, 0, len(byRace))
	for name := range byRace {
		names = append(names, name)
	}
	sort.Strings(names)
	square := 0.0
	for _, name := range names {
		square += byRace[name] * byRace[name]
	}
	se := math.Sqrt(square) / n
	j.gainLow, j.gainHigh = j.gain-1.96*se, j.gain+1.96*se
}

func quantile(values []float64, share float64) float64 {
	if len(values) == 0 {
		return math.NaN()
	}
	sorted := append([]float64(nil), values...)
	sort.Float64s(sorted)
	at := share * float64(len(sorted)-1)
	i := int(at)
	if i+1 >= len(sorted) {
		return sorted[i]
	}
	return sorted[i] + (at-float64(i))*(sorted[i+1]-sorted[i])
}

// splitErrors are the mean absolute errors at n splits, in shares of the finish time: given
// it, given it and what the course's sections did before, from the fit alone, and in
// proportion to distance.
type splitErrors struct {
	N                         int
	Given, There, Alone, Even float64
}

func (s *study) splitErrors() (e splitErrors) {
	fits := 0
	for _, v := range s.splits {
		finish := v.result.Time.Seconds()
		e.Given += math.Abs(v.given-v.elapsed) / finish
		e.There += math.Abs(v.there-v.elapsed) / finish
		e.Even += math.Abs(v.distance/v.result.Distance - v.elapsed/finish)
		if v.fromFit {
			e.Alone += math.Abs(v.alone-v.elapsed) / finish
			fits++
		}
		e.N++
	}
	n := float64(max(1, e.N))
	return splitErrors{e.N, e.Given / n, e.There / n, e.Alone / float64(max(1, fits)), e.Even / n}
}

// summarise prints how it went.
func (s *study) summarise() {
	p := s.model.Population
	fmt.Fprintf(s.stdout, "%d results of %d runners on %d courses, %d editions; written to %s\n", p.Results, p.Runners, p.CourseCount, p.EditionCount, s.o.Out)
	for k, j := range judge(s.forecasts) {
		fmt.Fprintf(s.stdout, "%-38s median error %.2f %%, 90 %% intervals hold %.1f %%", j.name, 100*j.median, 100*j.held90)
		if k > 0 {
			fmt.Fprintf(s.stdout, ", better by %.2f (%.2f to %.2f)", 100*j.gain, 100*j.gainLow, 100*j.gainHigh)
		}
		fmt.Fprintln(s.stdout)
	}
	if e := s.splitErrors(); e.N > 0 {
		fmt.Fprintf(s.stdout, "%d splits, mean error of the finish time: given it %.2f %%, and what sections did before %.2f %%, from the fit alone %.2f %%, by distance %.2f %%\n",
			e.N, 100*e.Given, 100*e.There, 100*e.Alone, 100*e.Even)
	}
}
