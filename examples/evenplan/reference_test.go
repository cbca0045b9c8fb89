package main

import (
	"fmt"
	"math"
	"testing"
)

// The reference runs of the model, section 6: from a separate implementation with fine
// fixed steps, here through the command line. It claims agreement to 0.1 %.
func TestReferenceRuns(t *testing.T) {
	t.Parallel()
	dir := folder(t, map[string]string{
		"10km.csv": profile(10_000, slope(0)), "marathon.csv": profile(42_195, slope(0)), "100km.csv": profile(100_000, slope(0)),
		"up5.csv": profile(5000, slope(0.05)), "down10.csv": profile(5000, func(x float64) float64 { return 500 - 0.1*x }),
		"up20.csv": profile(3000, slope(0.2)), "hill.csv": profile(20_000, oneHill), "waves.csv": profile(80_000, waves),
	})
	for _, r := range []struct {
		course, athlete                string
		air                            float64
		intensity, time, half, walking float64
	}{
		{"10km", "hour_power=12,endurance=0.0566,fade=0", 0, 1.0110, 2967.4, 1483.7, 0},
		{"marathon", "hour_power=12,endurance=0.0566,fade=0", 0, 0.9273, 13650.4, 6825.2, 0},
		{"marathon", "hour_power=14,endurance=0.1,fade=0.02", 0, 0.8817, 12685.0, 6246.9, 0},
		{"marathon", "hour_power=14,endurance=0.1,fade=0.02,fade_shape=1.3", 0, 0.8812, 12752.8, 6258.5, 0},
		{"100km", "hour_power=14,endurance=0.1,fade=0.05,fade_shape=0.5", 0, 0.7930, 36603.4, 17384.2, 0},
		{"marathon", "hour_power=16,endurance=0.08,fade=0.02", 0.01, 0.9138, 11108.0, 5483.3, 0},
		{"up5", "hour_power=12,endurance=0.08,fade=0.02", 0, 1.0540, 1864.5, 929.7, 0},
		{"down10", "hour_power=12,endurance=0.08,fade=0.02", 0, 1.0916, 1204.1, 601.0, 0},
		{"up20", "hour_power=12,endurance=0.08,fade=0.02", 0, 1.0390, 2232.3, 1112.9, 1},
		{"hill", "hour_power=14,endurance=0.08,fade=0.02", 0, 0.9654, 5589.5, 2993.1, 0},
		{"waves", "hour_power=11,endurance=0.1,fade=0.02", 0, 0.8104, 37992.6, 18450.7, 0.424},
		{"waves", "hour_power=11,endurance=0.1,fade=0.02,braking=2", 0, 0.8070, 39246.7, 19043.5, 0.421},
		{"waves", "hour_power=9,endurance=0.1,fade=0.02", 0, 0.8170, 44269.1, 21394.6, 0.817},
	} {
		t.Run(r.course+" "+r.athlete, func(t *testing.T) {
			t.Parallel()
			p := plannedJSON(t, dir, "-course", "@/"+r.course+".csv", "-athlete", r.athlete,
				"-smooth", "0", "-min-bout", "0", "-hold-back", "0", "-air", fmt.Sprint(r.air))
			within := func(what string, got, want, tolerance float64) {
				t.Helper()
				if !(math.Abs(got-want) <= tolerance) {
					t.Errorf("%s %.6g, want %.6g within %.2g", what, got, want, tolerance)
				}
			}
			within("relative_intensity", p.Intensity, r.intensity, 0.001*r.intensity)
			within("moving_s", p.Moving, r.time, 0.001*r.time)
			within("gun_s", p.Gun, r.time, 0.001*r.time)
			within("first_half_s", p.FirstHalf, r.half, 0.001*r.half)
			within("walking_share", p.WalkingShare, r.walking, 0.01)
			within("budget_spent", p.Budget, 1, 1e-6)
		})
	}
}
