package write_test

import (
	"context"
	"os"
	"time"

	"isoeffort.example/calibrate"
	"isoeffort.example/course/coursefile"
	"isoeffort.example/effort/record"
	"isoeffort.example/plan"
	"isoeffort.example/plan/write"
)

const courseFile = "../../examples/evenplan/demo/course.gpx"

func check(err error) {
	if err != nil {
		panic(err)
	}
}

// From a GPX file and a few past results to a plan: the ten lines of the README.
func Example() {
	resultsFile, err := os.Open("../../examples/evenplan/demo/results.csv")
	check(err)
	defer resultsFile.Close()

	c, err := coursefile.Open(courseFile, coursefile.Options{Length: 86_400}) // the measured length, m
	check(err)
	past, err := record.Read(resultsFile, record.Options{})
	check(err)
	fit, err := calibrate.Fit(context.Background(), past.Results, calibrate.Options{})
	check(err)
	p, err := plan.Even(c, fit.Athlete, plan.Race{Goal: 11 * time.Hour, StartDelay: 8 * time.Minute, Basis: fit.Basis})
	check(err)
	err = write.Text(os.Stdout, p, plan.AtLandmarks)
	check(err)
	// Output:
	// The Orrowmay Lantern Round: even-effort plan
	// 86.4 km, 2009 m up, 2004 m down (heights smoothed over 150 m)
	//
	// Finish     11:00:00 gun time, 10:52:00 net (8:00 from the gun to the start
	//            line).
	// Start      You cross the line 8:00 after the gun. Do not chase it. Even effort
	//            brings it back a little everywhere: you are still behind by 5:51 at
	//            22 km, 3:46 at 43 km, 1:55 at 65 km, and on time at the finish.
	// Effort     even, on every climb, descent and flat: 74 % of what you could hold
	//            for one hour at that point of the race. A little less at first: start
	//            2.0 % easier than that, finish 2.0 % harder. It costs 33 seconds and
	//            guards against opening too fast.
	// Budget     57 % of what one race allows. With all of it the fastest gun time
	//            would be 10:23:44 (nine times in ten between 9:44:11 and 11:06:00).
	// Walking    29 % of the moving time, in 21 stretches. Mostly on the climbs: see
	//            there. Changing between running and walking no more often than that
	//            costs 2:30.
	// Halves     5:24:42 for the first half of the distance, 5:27:18 for the second
	//            (moving).
	// Talk test  you can speak in whole sentences all the time, uphill too. If not,
	//            ease off.
	//
	// Note       The results say little about the fade: 0.0192 is mostly what is usual
	//            for runners.
	// Note       Elevation missing at 6 of 3814 points, first at line 432: filled from
	//            the neighbours.
	//
	// CLIMBS, rated 0 to 10 for how hard each is where it stands, and what to do
	//   8.6-10.2 km  Tallowmast Brow: 121 m up in 1.6 km (7.7 %), rated 2, 15:17 at
	//                9:48 /km. Walk 8.7-10.0 km, run the rest.
	//  11.8-12.7 km  Climb: 50 m up in 0.9 km (5.6 %), rated 1, 8:04 at 8:57 /km. Run
	//                all of it, no harder than on the flat.
	//  15.9-19.0 km  Wickerlamp Height: 185 m up in 3.1 km (5.9 %), rated 5, 28:32 at
	//                9:09 /km. Walk 16.1-17.2 km and 17.9-18.9 km, run the rest.
	//  20.6-21.5 km  Pintlehook: 71 m up in 1.0 km (7.4 %), rated 3, 9:22 at 9:46 /km.
	//                Walk 20.7-21.5 km, run the rest.
	//  24.9-29.6 km  Glimmerstow Edge: 280 m up in 4.8 km (5.9 %), rated 8, 43:31 at
	//                9:10 /km. Walk 25.0-26.5 km and 27.7-29.4 km, run the rest.
	//  33.9-34.9 km  Snuffer's Knoll: 67 m up in 1.1 km (6.3 %), rated 4, 9:59 at 9:20
	//                /km. Walk 33.9-34.7 km, run the rest.
	//  35.7-38.0 km  Emberlatch: 183 m up in 2.3 km (7.8 %), rated 8, 24:38 at 10:34
	//                /km. Walk all of it.
	//  52.6-55.2 km  Netmender's Gate: 151 m up in 2.6 km (5.9 %), rated 8, 24:47 at
	//                9:39 /km. Walk all of it.
	//  64.5-66.1 km  Oarsmith's Bench: 111 m up in 1.5 km (7.3 %), rated 8, 15:22 at
	//                10:07 /km. Walk all of it.
	//  75.9-77.8 km  Lampwright's Stair: 119 m up in 1.9 km (6.3 %), rated 8, 18:56 at
	//                10:07 /km. Walk all of it.
	//
	// SPLITS (up, down: m; part: moving time; level: its pace on the level, /km)
	//   km place               up down gait     part pace level gun time
	//  0.0 Start line                                            0:08:00
	// 10.3 Tallowmast Brow    209   64 mixed 1:15:11 7:18  6:37  1:23:11
	// 11.5 Pennyoar Green       0   80 run   0:06:59 5:49  6:39  1:30:10
	// 19.1 Wickerlamp Height  258   89 mixed 1:00:03 7:53  6:46  2:30:13
	// 21.6 Pintlehook          72   86 mixed 0:18:35 7:26  6:47  2:48:48
	// 29.7 Glimmerstow Edge   301  125 mixed 1:05:11 8:03  6:50  3:53:59
	// 32.5 Kelpwright's Yard   23  124 run   0:18:17 6:32  6:49  4:12:16
	// 35.0 Snuffer's Knoll     69   98 mixed 0:18:19 7:29  6:54  4:30:35
	// 38.1 Emberlatch         183   37 mixed 0:29:23 9:29     -  4:59:58
	// 43.2 Half-Lamp Stone      2  165 run   0:32:46 6:22  6:54  5:32:44
	// 44.0 Mossbell Barn        0   34 run   0:04:57 6:12  6:55  5:37:41
	// 55.2 Netmender's Gate   252  236 mixed 1:25:20 7:37  7:09  7:03:01
	// 66.2 Oarsmith's Bench   295  310 mixed 1:25:37 7:47  7:08  8:28:38
	// 75.7 Wherryfold         195  303 mixed 1:11:39 7:32  7:11  9:40:17
	// 77.9 Lampwright's Stair 119   10 mixed 0:20:47 9:40     - 10:01:04
	// 86.4 Finish              31  243 run   0:58:56 6:54  7:13 11:00:00
	//
	// CAUTIONS
	// - This plan is arithmetic about effort. The race's medical team, local rules and
	//   your doctor come before it.
	// - Stop and seek help for chest pain, collapse, confusion, dark urine or repeated
	//   vomiting.
	// - Do not start with a fever or a recent illness.
	// - With heart disease, with diabetes, in pregnancy, or as a minor: ask a doctor
	//   first.
	// - Drink to thirst, never a fixed large amount. Gaining weight on the way is a
	//   warning sign.
	// - Take carbohydrate only as you have rehearsed it.
	// - Take no anti-inflammatory painkillers before or in the race.
	// - In heat or cold follow the race's orders, kit rules and medical team. The plan
	//   knows nothing of what is safe.
	// - Never chase a lost minute or a cutoff. Go by effort, and trust the course
	//   markers over a watch.
}
