package duration_test

import (
	"errors"
	"fmt"
	"math"
	"time"

	"isoeffort.example/effort"
	"isoeffort.example/effort/duration"
)

// One athlete, an hour power of 14.5 W/kg with the usual endurance exponent and fade, in
// four curves that meet at 6 and 30 minutes: the level pace, minutes and seconds for a
// kilometre, that each says can be held. Between those times they are as good as one.
// Outside the critical power parts from the others at once: at 3 minutes it is too fast,
// and beyond an hour it stands still. The power law is alone from some 3 hours on, as it
// knows no fade. Fade and logarithm stay near each other for a day.
func ExampleCurve() {
	athlete := duration.Fading{Athlete: effort.Usual(14.5)}
	a, b := duration.EffortOf(athlete, 6*time.Minute), duration.EffortOf(athlete, 30*time.Minute)
	critical, err1 := duration.HyperbolicThrough(a, b)
	law, err2 := duration.PowerLawThrough(a, b)
	logarithm, err3 := duration.LogarithmicThrough(0, a, b, duration.Effort{})
	if err := errors.Join(err1, err2, err3); err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("held for  critical power  power law  with fade  logarithm")
	for _, held := range []time.Duration{
		3 * time.Minute, 6 * time.Minute, 30 * time.Minute,
		time.Hour, 3 * time.Hour, 10 * time.Hour, 24 * time.Hour,
	} {
		pace := func(c duration.Curve) string {
			s := int(math.Round(1000 * duration.LevelCost(0) / c.Power(held)))
			return fmt.Sprintf("%d:%02d", s/60, s%60)
		}
		fmt.Printf("%5g min %15s %10s %10s %10s\n", held.Minutes(), pace(critical), pace(law), pace(athlete), pace(logarithm))
	}
	// Output:
	// held for  critical power  power law  with fade  logarithm
	//     3 min            2:46       3:04       3:04       3:05
	//     6 min            3:17       3:17       3:17       3:17
	//    30 min            3:53       3:53       3:53       3:53
	//    60 min            3:58       4:10       4:11       4:12
	//   180 min            4:02       4:40       4:44       4:51
	//   600 min            4:03       5:17       5:37       5:50
	//  1440 min            4:04       5:46       6:38       6:50
}

// What the same athlete's curve says of a marathon, of the distance in a day, and of the
// exponent that Riegel's prediction would need there. As records do, it grows with time.
func ExampleTimeAt() {
	athlete, cost := duration.Fading{Athlete: effort.Usual(14.5)}, duration.LevelCost(0)
	marathon, err := duration.TimeAt(athlete, 42_195, cost)
	if err != nil {
		fmt.Println(err)
		return
	}
	const day = 24 * time.Hour
	fmt.Println(marathon.Round(time.Second))
	fmt.Printf("%.0f km\n", duration.DistanceIn(athlete, day, cost)/1000)
	fmt.Printf("%.2f at the marathon, %.2f in a day\n", duration.RiegelAt(athlete, marathon), duration.RiegelAt(athlete, day))
	// Output:
	// 3h23m6s
	// 217 km
	// 1.14 at the marathon, 1.29 in a day
}

// Riegel 1981, second-hand: T2 = T1 (D2/D1)^1.06, from 40:00 over 10 km to the marathon.
func ExampleRiegel() {
	t, err := duration.Riegel(40*time.Minute, 10, 42.195, duration.RiegelUsual)
	fmt.Println(t.Round(time.Second), err)
	// Output: 3h4m0s <nil>
}

// An easy run at 0.7 of the hour power, as a pace for a kilometre.
func ExampleIntensityPace() {
	pace, err := duration.IntensityPace(duration.PowerLaw{HourPower: 14.5, Endurance: 0.1}, 0.7, duration.LevelCost(1))
	fmt.Println(pace.Round(time.Second), err)
	// Output: 5m55s <nil>
}

// A warning by program: what a curve was made for.
func ExampleAbout_Holds() {
	about := duration.Hyperbolic{}.About()
	fmt.Println(about.Holds(20*time.Minute), about.Holds(3*time.Hour), about.Outside)
	// Output: true false never falls under the critical power, so it flatters beyond an hour
}
