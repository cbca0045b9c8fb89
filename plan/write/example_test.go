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
	// Effort     even, on every climb, descent and flat: 75 % of what you could hold
	//            for one hour at that point of the race. A little less at first: start
	//            2.0 % easier than that, finish 2.0 % harder. It costs 19 seconds and
	//            guards against opening too fast.
	// Budget     70 % of what one race allows. With all of it the fastest gun time
	//            would be 10:36:16 (nine times in ten between 9:54:32 and 11:20:59).
	// Walking    29 % of the moving time, in 21 stretches. At 8.7-10.0, 16.2-17.2,
	//            17.9-18.9, 20.7-21.5, 25.0-26.5, 27.7-29.4, 33.9-34.7, 35.8-37.9,
	//            49.3-49.6, 50.1-50.4, 51.9-52.2, 52.8-55.1, 57.4-57.7, 59.5-59.8,
	//            63.8-64.1, 64.6-66.0, 68.4-68.7, 69.2-69.5, 72.0-72.4, 73.0-73.3,
	//            76.0-77.8 km.
	// Halves     5:23:40 for the first half of the distance, 5:28:20 for the second
	//            (moving).
	// Talk test  you can speak in whole sentences all the time, uphill too. If not,
	//            ease off.
	//
	// Note       The results say little about the fade: 0.0197 is mostly what is usual
	//            for runners.
	// Note       Elevation missing at 6 of 3814 points, first at line 432: filled from
	//            the neighbours.
	//
	// CLIMBS, and what to do on each
	//   8.6-10.2 km  Tallowmast Brow: 121 m up in 1.6 km (7.7 %), 15:09 at 9:43 /km.
	//                Walk 8.7-10.0 km, run the rest.
	//  11.8-12.7 km  Unnamed climb: 50 m up in 0.9 km (5.6 %), 7:57 at 8:50 /km. Run
	//                all of it, no harder than on the flat.
	//  15.9-19.0 km  Wickerlamp Height: 185 m up in 3.1 km (5.9 %), 28:09 at 9:01 /km.
	//                Walk 16.2-17.2 km and 17.9-18.9 km, run the rest.
	//  20.6-21.5 km  Pintlehook: 71 m up in 1.0 km (7.4 %), 9:16 at 9:40 /km. Walk
	//                20.7-21.5 km, run the rest.
	//  24.9-29.6 km  Glimmerstow Edge: 280 m up in 4.8 km (5.9 %), 43:10 at 9:05 /km.
	//                Walk 25.0-26.5 km and 27.7-29.4 km, run the rest.
	//  33.9-34.9 km  Snuffer's Knoll: 67 m up in 1.1 km (6.3 %), 9:54 at 9:15 /km.
	//                Walk 33.9-34.7 km, run the rest.
	//  35.7-38.0 km  Emberlatch: 183 m up in 2.3 km (7.8 %), 24:27 at 10:30 /km. Walk
	//                35.8-37.9 km, run the rest.
	//  52.6-55.2 km  Netmender's Gate: 151 m up in 2.6 km (5.9 %), 24:40 at 9:36 /km.
	//                Walk 52.8-55.1 km, run the rest.
	//  64.5-66.1 km  Oarsmith's Bench: 111 m up in 1.5 km (7.3 %), 15:16 at 10:03 /km.
	//                Walk all of it.
	//  75.9-77.8 km  Lampwright's Stair: 119 m up in 1.9 km (6.3 %), 18:50 at 10:04
	//                /km. Walk all of it.
	//
	// SPLITS (part: moving time; level: the pace of that effort on the level, /km)
	//   km place               up down gait     part pace level gun time
	//  0.0 Start line                                            0:08:00
	// 10.3 Tallowmast Brow    209   64 mixed 1:14:23 7:14  6:32  1:22:23
	// 11.5 Pennyoar Green       0   80 run   0:07:09 5:56  6:33  1:29:32
	// 19.1 Wickerlamp Height  258   89 mixed 0:59:30 7:49  6:39  2:29:02
	// 21.6 Pintlehook          72   86 mixed 0:18:38 7:27  6:41  2:47:40
	// 29.7 Glimmerstow Edge   301  125 mixed 1:04:56 8:01  6:46  3:52:36
	// 32.5 Kelpwright's Yard   23  124 run   0:18:27 6:36  6:44  4:11:03
	// 35.0 Snuffer's Knoll     69   98 mixed 0:18:27 7:32  6:49  4:29:30
	// 38.1 Emberlatch         183   37 mixed 0:29:16 9:26  7:12  4:58:46
	// 43.2 Half-Lamp Stone      2  165 run   0:32:55 6:23  6:49  5:31:41
	// 44.0 Mossbell Barn        0   34 run   0:05:00 6:16  6:50  5:36:41
	// 55.2 Netmender's Gate   252  236 mixed 1:25:24 7:37  7:05  7:02:05
	// 66.2 Oarsmith's Bench   295  310 mixed 1:25:53 7:49  7:04  8:27:58
	// 75.7 Wherryfold         195  303 mixed 1:12:03 7:35  7:07  9:40:01
	// 77.9 Lampwright's Stair 119   10 mixed 0:20:43 9:38  7:42 10:00:44
	// 86.4 Finish              31  243 run   0:59:16 6:56  7:10 11:00:00
	//
	// CAUTIONS
	// - This plan is arithmetic about effort. The race's medical team, local rules and
	//   your doctor come before it.
	// - Drink to thirst, never a fixed large amount; gaining weight on the way is a
	//   warning sign.
	// - Stop and seek help for chest pain, collapse, confusion, dark urine or repeated
	//   vomiting. Do not start with a fever or a recent illness.
	// - In heat or cold follow the race's orders: the plan knows nothing of either.
	// - Never chase a lost minute or a cutoff: go by effort, and trust the course
	//   markers over a watch.
}
