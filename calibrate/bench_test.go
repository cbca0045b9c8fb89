package calibrate

import (
	"testing"
	"time"

	"isoeffort.example/effort/record"
)

// eight are an invented runner's results.
func eight() (results []record.Result) {
	for i, r := range []struct {
		km, up float64
		took   time.Duration
	}{
		{10, 60, 46*time.Minute + 12*time.Second},
		{21.1, 180, 104 * time.Minute},
		{15, 400, 84 * time.Minute},
		{42.2, 300, 3*time.Hour + 46*time.Minute},
		{30, 900, 3*time.Hour + 4*time.Minute},
		{50, 1500, 5*time.Hour + 50*time.Minute},
		{10, 40, 45 * time.Minute},
		{80, 2500, 10*time.Hour + 40*time.Minute},
	} {
		results = append(results, record.Result{
			Distance: 1000 * r.km, Ascent: r.up, Descent: r.up, Time: r.took, Date: time.Date(2025, time.Month(i+1), 1, 0, 0, 0, 0, time.UTC),
		})
	}
	return results
}

func BenchmarkFitSummaries(b *testing.B) {
	results := eight()
	for b.Loop() {
		if _, err := Fit(b.Context(), results, Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
