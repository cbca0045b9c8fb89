package calibrate_test

import (
	"context"
	"fmt"
	"time"

	"isoeffort.example/calibrate"
	"isoeffort.example/effort"
	"isoeffort.example/effort/record"
)

// Three results give the hour power to a few per cent, and say little of the rest; a race
// like them is predicted well, one far longer with a wide interval.
func Example() {
	var results []record.Result
	for i, r := range []struct {
		distance, ascent float64
		time             time.Duration
	}{
		{10_000, 60, 46 * time.Minute}, {21_100, 180, 104 * time.Minute}, {15_000, 400, 84 * time.Minute},
	} {
		results = append(results, record.Result{
			Date: time.Date(2026, time.Month(3+i), 1, 0, 0, 0, 0, time.UTC), Distance: r.distance, Ascent: r.ascent, Descent: r.ascent, Time: r.time,
		})
	}
	fit, err := calibrate.Fit(context.Background(), results, calibrate.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	low, high := fit.Interval(effort.HourPower, 0.9)
	fmt.Printf("hour power %.1f W/kg, 90 %% within %.1f to %.1f\n", fit.Athlete.HourPower, low, high)
	fmt.Printf("the results removed %.0f %% of what was not known of it, %.0f %% of the fade\n",
		100*fit.Informed(effort.HourPower), 100*fit.Informed(effort.Fade))
	for _, distance := range []float64{20_000, 80_000} {
		p, err := fit.Predict(context.Background(), record.Result{Distance: distance, Ascent: distance / 50, Descent: distance / 50})
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%.0f km: %v, 90 %% within %v to %v\n", distance/1000,
			p.Median.Round(time.Minute), p.Quantile(0.05).Round(time.Minute), p.Quantile(0.95).Round(time.Minute))
	}
	// Output:
	// hour power 13.2 W/kg, 90 % within 12.7 to 13.7
	// the results removed 100 % of what was not known of it, 5 % of the fade
	// 20 km: 1h48m0s, 90 % within 1h42m0s to 1h55m0s
	// 80 km: 8h40m0s, 90 % within 7h50m0s to 9h36m0s
}
