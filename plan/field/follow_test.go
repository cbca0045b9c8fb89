package field_test

import (
	"errors"
	"math"
	"testing"
	"time"

	"isoeffort.example/effort"
	"isoeffort.example/plan"
	"isoeffort.example/plan/field"
)

func even(t testing.TB, race plan.Race, a effort.Athlete) *plan.Plan {
	t.Helper()
	p, err := plan.Even(rolling(t, 24_000), a, race)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// On level ground without fade the budget of a time T follows from the power law alone:
// running W J/kg in τ hours at one power takes ε = W/(3600 P60 τ) and spends τ ε^(1/k).
func TestFollowOnLevelGround(t *testing.T) {
	t.Parallel()
	leader, member := effort.Usual(13), effort.Usual(14.5)
	leader.Fade, member.Fade, member.Endurance = 0, 0, 0.07
	race := plan.Race{Goal: 100 * time.Minute, HoldBack: plan.Off, Step: field.QuickStep}
	p, err := plan.Even(level(t, 20_000), leader, race)
	if err != nil {
		t.Fatal(err)
	}
	f, err := field.Follow(p, member, plan.AtLandmarks)
	if err != nil {
		t.Fatal(err)
	}
	hours := 100.0 / 60
	intensity := effort.RunningCost(0) * 20_000 / (3600 * 14.5 * hours)
	want := hours * math.Pow(intensity, 1/0.07)
	if math.Abs(f.Budget/want-1) > 1e-4 || math.Abs(f.Even/want-1) > 1e-4 || math.Abs(f.Intensity/intensity-1) > 1e-5 {
		t.Errorf("budget %g, even %g, intensity %g; want %g and %g", f.Budget, f.Even, f.Intensity, want, intensity)
	}
}

// Following one's own schedule takes what the plan takes.
func TestFollowOwnSchedule(t *testing.T) {
	t.Parallel()
	for _, power := range []float64{8, 9.5, 11, 13, 16} {
		for name, race := range map[string]plan.Race{
			"plain":     {},
			"held back": {HoldBack: 0.03},
			"walks":     {Walks: plan.Walks{Every: 20 * time.Minute, Fixed: true}, Stations: plan.Stations{Each: time.Minute}},
			"limits":    {StartDelay: 3 * time.Minute, Surroundings: effort.Surroundings{Crowd: effort.Crowd{Speed: 1.5, Over: 1000}}},
		} {
			race.Step = field.QuickStep
			a := effort.Usual(power)
			p := even(t, race, a)
			f, err := field.Follow(p, a, plan.AtLandmarks)
			if err != nil {
				t.Fatal(err)
			}
			// A tilt of 3 % makes the budget greater by a thousandth or two: ε^10 over it, ±0.03
			// straight, has the mean 1 + 45·0.03²/3 = 1.0135, of which sections keep most.
			if f.Budget > p.Budget*1.0005 || f.Budget < p.Budget*0.985 {
				t.Errorf("%s, %g W/kg: following takes %.5f, the plan %.5f", name, power, f.Budget, p.Budget)
			}
			if name != "held back" && math.Abs(f.Budget/p.Budget-1) > 0.005 {
				t.Errorf("%s, %g W/kg: following takes %.5f, the plan %.5f", name, power, f.Budget, p.Budget)
			}
		}
	}
}

// Nobody gains by keeping to somebody else's times; and a stronger runner needs less.
func TestFollowLaws(t *testing.T) {
	t.Parallel()
	p := even(t, plan.Race{Goal: 150 * time.Minute, Step: field.QuickStep, ShortestBout: plan.Off, HoldBack: plan.Off}, effort.Usual(12))
	for _, braking := range []float64{0.5, 1, 2, 3} {
		last := math.Inf(1)
		for _, power := range []float64{11, 12, 13, 15, 18} {
			a := effort.Usual(power).Set(effort.Braking, braking)
			f, err := field.Follow(p, a, plan.AtLandmarks)
			if err != nil {
				t.Fatal(err)
			}
			if f.Budget < f.Even*0.999 {
				t.Errorf("braking %g, %g W/kg: %.4f on the schedule, %.4f on their own", braking, power, f.Budget, f.Even)
			}
			if f.Budget >= last {
				t.Errorf("braking %g: %g W/kg needs %.4f, a weaker runner %.4f", braking, power, f.Budget, last)
			}
			last = f.Budget
		}
	}
}

func TestFollowTheImpossible(t *testing.T) {
	t.Parallel()
	p := even(t, plan.Race{Step: field.QuickStep}, effort.Usual(18))
	walker := effort.Usual(9)
	walker.Habit = effort.WalkOnly
	f, err := field.Follow(p, walker, plan.AtLandmarks)
	if err == nil && !math.IsInf(f.Budget, 1) {
		t.Errorf("a walker keeps to a runner's times: %+v", f)
	}
	if _, err := field.Follow(p, effort.Athlete{}, plan.AtLandmarks); !errors.Is(err, effort.ErrAthlete) {
		t.Errorf("nobody follows: %v", err)
	}
}
