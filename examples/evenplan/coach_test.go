package main

import (
	"fmt"
	"strings"
	"testing"
)

// On the level a three-hour marathon fades by at most 3 % in its second half.
func TestEvenHalves(t *testing.T) {
	t.Parallel()
	dir := folder(t, map[string]string{"marathon.csv": profile(42_195, slope(0))})
	var p printed
	low, high := 10.0, 25.0
	for range 30 {
		power := (low + high) / 2
		p = plannedJSON(t, dir, "-course", "@/marathon.csv", "-athlete", fmt.Sprintf("hour_power=%.9f", power))
		if p.Gun > 3*3600 {
			low = power
		} else {
			high = power
		}
	}
	if !(p.Gun > 10_799 && p.Gun < 10_801) {
		t.Fatalf("no hour power gives 3 h: %v s at %v", p.Gun, low)
	}
	t.Logf("hour power %.2f: halves of %.0f and %.0f s, %+.2f %%", low, p.FirstHalf, p.Moving-p.FirstHalf, 100*(p.Moving/p.FirstHalf-2))
	if !(p.Moving-p.FirstHalf <= 1.03*p.FirstHalf) {
		t.Errorf("second half %.0f s, first %.0f: over 3 %% slower", p.Moving-p.FirstHalf, p.FirstHalf)
	}
}

// A long hilly race opens at least 5 % slower than the runner's own best level marathon.
func TestOpening(t *testing.T) {
	t.Parallel()
	dir := folder(t, map[string]string{"marathon.csv": profile(42_195, slope(0))})
	for power := 11; power <= 16; power++ {
		athlete := fmt.Sprintf("hour_power=%d", power)
		marathon := plannedJSON(t, dir, "-course", "@/marathon.csv", "-athlete", athlete)
		long := plannedJSON(t, dir, "-athlete", athlete, "-every", "5km")
		pace := marathon.Moving / 42.195
		t.Logf("hour power %d: opens at %.1f s/km on the level, %+.1f %% of a marathon's %.1f", power, long.Splits[0].LevelPace, 100*(long.Splits[0].LevelPace/pace-1), pace)
		if !(long.Splits[0].LevelPace >= 1.05*pace) {
			t.Errorf("hour power %d: opens at %.1f s/km on the level, a marathon is run at %.1f", power, long.Splits[0].LevelPace, pace)
		}
	}
}

// 40:00 over 10 km is an hour power of about 14.5 W/kg; one result is enough, and the
// plan says what it rests on.
func TestOneResult(t *testing.T) {
	t.Parallel()
	dir := folder(t, map[string]string{
		"ten.csv": "date,distance_m,time\n2026-03-01,10000,0:40:00\n", "level.csv": profile(10_000, slope(0)),
	})
	p := plannedJSON(t, dir, "-results", "@/ten.csv", "-course", "@/level.csv")
	if !(p.Athlete.HourPower >= 14 && p.Athlete.HourPower <= 15) {
		t.Errorf("hour power %.2f, want 14 to 15", p.Athlete.HourPower)
	}
	if !(p.Gun > 2376 && p.Gun < 2424) {
		t.Errorf("the plan for the same race takes %.0f s, want 2400 within 1 %%", p.Gun)
	}
	for _, args := range [][]string{{"-results", "@/ten.csv"}, {"-results", "@/ten.csv", "-course", "@/level.csv"}} {
		page := strings.ToLower(words(planned(t, dir, args...).out))
		if !strings.Contains(page, "only one result") {
			t.Errorf("%q: the plan does not say that it rests on one result", args)
		}
	}
}

// A plan for longer than twice the longest result says so, and one for less does not.
func TestBeyondResults(t *testing.T) {
	t.Parallel()
	dir := folder(t, map[string]string{
		"ten.csv":  "date,distance_m,time\n2026-03-01,10000,0:47:00\n",
		"long.csv": "date,distance_m,ascent_m,time\n2026-03-01,50000,1300,5:40:00\n",
		"half.csv": profile(21_097, slope(0)), "15km.csv": profile(15_000, slope(0)),
	})
	const says = "times as long as the longest result"
	for _, tt := range []struct {
		args []string
		want bool
	}{
		{[]string{"-results", "@/ten.csv"}, true},
		{[]string{"-results", "@/ten.csv", "-course", "@/half.csv"}, true},
		{[]string{"-results", "@/ten.csv", "-course", "@/15km.csv"}, false},
		{[]string{"-results", "@/ten.csv", "-course", "@/15km.csv", "-goal", "1:40:00"}, true},
		{[]string{"-results", "@/long.csv"}, false},
		{nil, false},
	} {
		if page := words(planned(t, dir, tt.args...).out); strings.Contains(page, says) != tt.want {
			t.Errorf("%q: says %q: %t, want %t", tt.args, says, !tt.want, tt.want)
		}
	}
}

// Nobody runs by a plan that changes gait every few minutes: at most 5 times an hour.
func TestGaitChanges(t *testing.T) {
	t.Parallel()
	for _, course := range []string{"", "hilly-72km", "long-route-166km"} {
		for power := 8; power <= 16; power++ {
			args := []string{"-athlete", fmt.Sprintf("hour_power=%d", power)}
			if course != "" {
				args = append(args, "-course", "../../testdata/gpx/"+course+".gpx")
			}
			t.Run(fmt.Sprintf("%s %d", course, power), func(t *testing.T) {
				t.Parallel()
				p := plannedJSON(t, "nowhere", args...)
				rate := float64(p.GaitChanges) / (p.Moving / 3600)
				t.Logf("%d changes in %s, %.2f an hour, %.0f %% walked", p.GaitChanges, hms(p.Moving), rate, 100*p.WalkingShare)
				if !(rate <= 5) {
					t.Errorf("%.1f changes of gait an hour", rate)
				}
			})
		}
	}
}

// A goal beyond the runner is planned all the same, and said to be that.
func TestBeyondRunner(t *testing.T) {
	t.Parallel()
	for goal, want := range map[string]bool{"7:00:00": true, "10:00:00": true, "10:45:00": false, "14:00:00": false} {
		page := words(planned(t, "nowhere", "-goal", goal).out)
		if strings.Contains(page, "beyond this runner") != want {
			t.Errorf("%s: says that it is beyond the runner: %t, want %t", goal, !want, want)
		}
	}
}

// Whatever runner is allowed for gets a plan whose sums are right, or is told on one
// line that there is none.
func TestAnyAthlete(t *testing.T) {
	t.Parallel()
	dir := folder(t, map[string]string{"hill.csv": profile(20_000, oneHill)})
	for _, power := range []string{"1", "2.5", "5", "40"} {
		for _, endurance := range []string{"0.01", "0.4"} {
			for _, fade := range []string{"0", "0.5"} {
				for _, shape := range []string{"0.1", "2"} {
					for _, braking := range []string{"0", "10"} {
						athlete := "hour_power=" + power + ",endurance=" + endurance + ",fade=" + fade + ",fade_shape=" + shape + ",braking=" + braking
						t.Run(athlete, func(t *testing.T) {
							t.Parallel()
							checkPlanned(t, evenplan(dir, "-course", "@/hill.csv", "-step", "200", "-every", "1km", "-athlete", athlete), "evenplan: ")
						})
					}
				}
			}
		}
	}
}

// The same for results from a fast runner's to a crawl.
func TestAnySpeed(t *testing.T) {
	t.Parallel()
	for _, took := range []string{"0:24:00", "1:00:00", "1:40:00", "2:10:00", "2:45:00", "3:30:00", "5:00:00", "9:00:00", "20:00:00", "40:00:00"} {
		t.Run(took, func(t *testing.T) {
			t.Parallel()
			dir := folder(t, map[string]string{
				"ten.csv": "date,distance_m,time\n2026-03-01,10000," + took + "\n", "hill.csv": profile(20_000, oneHill),
			})
			checkPlanned(t, evenplan(dir, "-course", "@/hill.csv", "-step", "200", "-results", "@/ten.csv"), "")
		})
	}
}

// checkPlanned checks that there is a sound plan or a refusal that starts so.
func checkPlanned(t *testing.T, o outcome, start string) {
	t.Helper()
	if o.status != 0 {
		checkRefused(t, o, start)
		return
	}
	checkPage(t, o.out)
	checkSplits(t, o.out)
}
