package forecast_test

import (
	"context"
	"fmt"
	"log"
	"math"
	"os"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/plan"
	"isoeffort.example/plan/forecast"
)

// ridge is an invented course of 60 km.
func ridge() *course.Course {
	var x, z []float64
	for d := 0.0; d <= 60_000; d += 20 {
		x = append(x, d)
		z = append(z, 500+220*math.Sin(d/9000)+45*math.Sin(d/1300))
	}
	c, err := course.New(x, z, course.Options{Name: "Ridge of the Examples", Landmarks: []course.Landmark{
		{Name: "Mill", Distance: 14_000, Kind: course.Station},
		{Name: "Saddle", Distance: 31_000, Kind: course.Station},
		{Name: "Chapel", Distance: 47_500, Kind: course.Station},
	}})
	if err != nil {
		log.Fatal(err)
	}
	return c
}

// A forecast for a runner whose numbers rest on a few results, as package calibrate gives
// them.
func Example() {
	basis := effort.Basis{Noise: 0.03, Quantile: 1.8}
	for n, sd := range []float64{0.04, 0.2, 0.4, 0.2, 0.3} {
		basis.Cov[n][n] = sd * sd // of the logarithms
	}
	draws, err := forecast.FromBasis(effort.Usual(11), basis, forecast.FieldTilt())
	if err != nil {
		log.Fatal(err)
	}
	race := plan.Race{
		Goal:       7*time.Hour + 15*time.Minute,
		StartDelay: 90 * time.Second,
		Stations:   plan.Stations{Each: 3 * time.Minute},
		Cutoffs: []plan.Cutoff{
			{Name: "Saddle", Distance: 31_000, Time: 4*time.Hour + 15*time.Minute},
			{Name: "finish", Distance: 60_000, Time: 8*time.Hour + 30*time.Minute},
		},
	}
	f, err := forecast.Of(context.Background(), ridge(), draws, race, forecast.Options{})
	if err != nil {
		log.Fatal(err)
	}
	if err := forecast.Text(os.Stdout, f); err != nil {
		log.Fatal(err)
	}
	// Output:
	// FORECAST, no plan: Ridge of the Examples, 60.0 km
	// From 1000 draws. It says what is likely, not what to do: do not pace by it.
	//
	// The middle of the forecast is a finish at 7:40.
	// Nine in ten such days end between 6:49 and too late for the last cutoff, 8:30.
	// The goal of 7:15 (gun time) has a forecast probability of 20 %, give or take 2
	// by the number of draws.
	// Fast enough for every cutoff: 93 %.
	// The second half takes 13 % longer than the first, on the mean.
	//
	// forecast times                km    5 %   25 %   50 %   75 %   95 % reaches
	// Mill                        14.0   1:31   1:38   1:43   1:49   1:56  > 99 %
	// Saddle                      31.0   3:18   3:32   3:42   3:52   4:10  > 99 %
	// Chapel                      47.5   5:08   5:32   5:47   6:04   6:31    97 %
	// Finish                      60.0   6:49   7:20   7:40   8:00 slower    97 %
	// In a column of 5 %, one in twenty days is faster. Times count everybody, as if
	// no cutoff stopped them.
	// Reaches: how likely it is to get to the place inside every cutoff before it.
	// Slower: than the last cutoff, 8:30.
	//
	// forecast at cutoffs           km    limit       made   of those
	// Saddle                      31.0     4:15       97 %       97 %
	// finish                      60.0     8:30       93 %       96 %
	// Made: this cutoff and all before it. Of those: of the runners still in the race
	// there.
	//
	// Why days differ, for the coach: hour power 35 %, endurance over the hours 26 %,
	// the day itself 23 %, fade 8 %, braking 2 %.
	//
	// Illness, falls, weather that turns and giving up are not in this forecast. A
	// cutoff is no reason to run over one's effort: local rules, the race's medical
	// team and doctors come first.
	//
	// CAUTIONS
	// - Stop and seek help for chest pain, collapse, confusion, dark urine or repeated
	//   vomiting.
	// - Do not start with a fever or a recent illness.
	// - With heart disease, with diabetes, in pregnancy, or as a minor: ask a doctor
	//   first.
	// - Drink to thirst, never a fixed large amount. Gaining weight on the way is a
	//   warning sign.
	// - Take no anti-inflammatory painkillers before or in the race.
	// - Never chase a lost minute or a cutoff. Go by effort, and trust the course
	//   markers over a watch.
}

// Whoever plans for a goal asks first whether it may have a split card.
func ExampleAllowed() {
	for _, goal := range []struct{ probability, budget float64 }{{0.55, 0.97}, {0.06, 1}, {0.2, 1.35}} {
		ok, reason := forecast.Allowed(goal.probability, goal.budget)
		fmt.Printf("%v %q\n", ok, reason)
	}
	fmt.Println(forecast.Warning(0.06, 1))
	// Output:
	// true ""
	// false "the forecast gives the goal 6 %"
	// false "the goal needs more effort than the runner can hold for so long"
	// NOT ADVISED: the forecast gives the goal 6 %. Whoever follows these splits will most likely slow down badly or not finish. Give them up early rather than late; do not chase a cutoff. Local rules, the race's medical team and doctors come first.
}

// Draws may come from anywhere: here one runner known exactly, three ways of pacing.
func ExampleGiven() {
	known := effort.Usual(13)
	draws := forecast.Given([]forecast.Draw{{Athlete: known, Tilt: -0.02}, {Athlete: known}, {Athlete: known, Tilt: 0.1}})
	f, err := forecast.Of(context.Background(), ridge(), draws, plan.Race{}, forecast.Options{Draws: 3, Quantiles: []float64{0.5}})
	if err != nil {
		log.Fatal(err)
	}
	for _, p := range f.Places {
		fmt.Printf("%-7s %.0f min\n", p.Name, p.Times[0].Minutes())
	}
	// Output:
	// Mill    86 min
	// Saddle  182 min
	// Chapel  280 min
	// Finish  368 min
}
