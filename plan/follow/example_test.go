package follow_test

import (
	"fmt"
	"log"
	"math"
	"os"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/plan"
	"isoeffort.example/plan/follow"
)

// larch is a plan for an invented round of 42 km with two cutoffs.
func larch() *plan.Plan {
	var x, z []float64
	for d := 0.0; d <= 42_000; d += 20 {
		x, z = append(x, d), append(z, 500-320*math.Cos(2*math.Pi*d/21_000)+40*math.Sin(2*math.Pi*d/3500))
	}
	c, err := course.New(x, z, course.Options{Name: "Larch round", Smoothing: course.AsGiven, Landmarks: []course.Landmark{
		{Name: "Quarry", Distance: 10_400, Kind: course.Top},
		{Name: "Mill", Distance: 21_000, Kind: course.Station},
		{Name: "Far barn", Distance: 31_500, Kind: course.Station},
	}})
	if err != nil {
		log.Fatal(err)
	}
	p, err := plan.Even(c, effort.Usual(13), plan.Race{
		Goal:     5*time.Hour + 10*time.Minute,
		Start:    time.Date(2026, 6, 14, 7, 0, 0, 0, time.UTC),
		Stations: plan.Stations{Each: 3 * time.Minute},
		Cutoffs:  []plan.Cutoff{{Name: "Mill", Distance: 21_000, Time: 3 * time.Hour}, {Name: "Far barn", Distance: 31_500, Time: 4*time.Hour + 20*time.Minute}},
	})
	if err != nil {
		log.Fatal(err)
	}
	return p
}

func ExampleFrom() {
	s, err := follow.From(larch(), follow.Passage{Distance: 21_000, Gun: 2*time.Hour + 35*time.Minute})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(s.Place, s.Late.Round(time.Second))
	rest, err := s.Rest(follow.Options{})
	if err != nil {
		log.Fatal(err)
	}
	if err := rest.Text(os.Stdout); err != nil {
		log.Fatal(err)
	}
	// Output:
	// Mill 4m21s
	// Larch round: the rest of the race
	//
	// Now        Mill, 21.0 km at 2:35:00 (09:35): 4 minutes later than planned.
	// Spent      about 16 % of what you have to give; the plan has 21 % here.
	// Effort     going by your times 3 % easier than planned: easy enough to speak
	//            whole sentences.
	// Do         Hold the planned effort, no more. You finish at about 12:14. Slower
	//            than planned is all right. Every cutoff to come is safe.
	// Finish     5:14:20 (12:14), 4 minutes later than planned.
	//
	// TO COME (part: moving time; late: against the plan)
	// place       km     part  stop  gun time  planned   late  clock
	// Far barn  31.5  1:31:07  3:00   4:09:07  4:04:47  +4:20  11:09
	// Finish    42.0  1:02:13         5:14:20  5:10:00  +4:20  12:14
	//
	// CUTOFFS (gun time; latest: here, to make it at this effort)
	// place       km   closes      you  in hand   latest
	// Far barn  31.5  4:20:00  4:09:07   +10:53  2:45:53  safe
	//
	// CAUTIONS
	// - Trust the course's markers over your watch.
	// - Never chase a lost minute or a cutoff: go by effort. The race's officials
	//   decide about cutoffs, and its medical team about going on; both come before
	//   this page.
	// - Stop and seek help for chest pain, collapse, confusion, dark urine or repeated
	//   vomiting.
	// - What is spent is an estimate from times: it does not know why you are late. If
	//   you feel worse than it says, believe the feeling.
	// - Drink to thirst, never a fixed large amount.
}

func ExamplePaper() {
	card, err := follow.Paper(larch(), follow.CardOptions{})
	if err != nil {
		log.Fatal(err)
	}
	if err := card.Text(os.Stdout); err != nil {
		log.Fatal(err)
	}
	// Output:
	// Larch round: if you are late
	// Trust the course's markers over your watch.
	//
	// GUN TIMES ON ARRIVAL, planned stops included
	// place       km     plan  5 % slower  cutoff-safe   latest   closes
	// Quarry    10.4  1:28:41     1:33:01      1:34:11  1:43:54
	// Mill      21.0  2:30:39     2:38:12      2:40:16  2:45:52  3:00:00
	// Far barn  31.5  4:04:47     4:16:45      4:20:00  4:20:00  4:20:00
	// Finish    42.0  5:10:00     5:25:12      5:29:20
	// latest: arrive by then, and the plan's effort still makes every cutoff to come,
	// with nothing in hand. closes: the cutoff.
	//
	// IF YOU ARE LATE, take the minutes for lost: the effort stays as planned.
	// - Up to 5 minutes late anywhere: hold the planned effort, no more. You finish as
	//   much later. Every cutoff is safe.
	// - 10 minutes late at Quarry or Mill: hold the planned effort, no more. You
	//   finish at about 12:20. 5 min 10 s in hand at the cutoff at Far barn: no halts
	//   beyond the plan.
	// - 10 minutes late at Far barn: hold the planned effort, no more. You finish at
	//   about 12:20.
	// - 15 minutes late at Quarry or Mill: hold the planned effort, no more. You
	//   finish at about 12:25. 10 seconds in hand at the cutoff at Far barn: no halts
	//   beyond the plan.
	// - 15 minutes late at Far barn: hold the planned effort, no more. You finish at
	//   about 12:25.
	//
	// CAUTIONS
	// - Trust the course's markers over your watch.
	// - Never chase a lost minute or a cutoff: go by effort. The race's officials
	//   decide about cutoffs, and its medical team about going on; both come before
	//   this page.
	// - Stop and seek help for chest pain, collapse, confusion, dark urine or repeated
	//   vomiting.
	// - What is spent is an estimate from times: it does not know why you are late. If
	//   you feel worse than it says, believe the feeling.
	// - Drink to thirst, never a fixed large amount.
}

func ExampleReview() {
	d, err := follow.Review(larch(), follow.Actual{Splits: []follow.Passage{
		{Distance: 5_000, Gun: 2475 * time.Second},
		{Distance: 10_400, Gun: 5135 * time.Second},
		{Distance: 15_000, Gun: 6735 * time.Second},
		{Distance: 21_000, Gun: 8825 * time.Second},
		{Distance: 26_000, Gun: 11_625 * time.Second},
		{Distance: 31_500, Gun: 14_645 * time.Second},
		{Distance: 36_000, Gun: 16_595 * time.Second},
		{Distance: 42_000, Gun: 18_975 * time.Second},
	}}, follow.DebriefOptions{})
	if err != nil {
		log.Fatal(err)
	}
	if err := d.Text(os.Stdout); err != nil {
		log.Fatal(err)
	}
	// Output:
	// Larch round: debrief
	//
	// Finish     5:16:15, 6 minutes later than planned.
	// Moving     5:10:15, planned 5:04:00 (+6:15).
	// Halts      0:06:00, planned 0:06:00 (0:00).
	// Effort     1 % easier than planned.
	// Spent      41 % of what you have to give in one race, planned 46 %.
	// Evenly     spread as planned, what you gave makes 5:07:22 of moving: uneven
	//            effort took 3 minutes.
	// Pacing     You opened 5 % above the planned effort. After that your effort fell
	//            steadily: you started too fast. Next time open easier.
	//
	// SECTIONS (level: pace of that effort on the level, where you mostly run;
	// effort in % of that of one hour; spent in % of what you have to give)
	// to          km   moving   lost  level  plan  effort  plan  spent  plan   late
	//            5.0  0:41:15  -1:42   5:45  6:01      81    77    8.2   5.4  -1:42
	// Quarry    10.4  0:44:20  -1:25   5:50  6:02      80    78    8.4   6.1  -3:06
	//           15.0  0:26:40  -0:30   5:57  6:04      80    78    4.6   3.9  -3:36
	// Mill      21.0  0:34:50  +0:02   6:05  6:05      78    79    5.1   5.2  -3:34
	//           26.0  0:43:40  -0:01                   79    79    6.7   6.7  -3:35
	// Far barn  31.5  0:50:20  +2:53   6:34  6:09      74    79    4.3   7.7  -0:42
	//           36.0  0:29:30  +2:44   6:48  6:10      72    80    1.9   4.7  +2:02
	// Finish    42.0  0:39:40  +4:13   6:59  6:12      71    80    2.2   6.4  +6:15
	//
	// HALTS
	// place       km  gun time  halt  planned
	// Mill      21.0   2:27:05  3:00     3:00
	// Far barn  31.5   4:04:05  3:00     3:00
	//
	// Note       Splits alone do not show halts: planned stops are taken for taken,
	//            and any other halt for slow going.
	//
	// HOW FAR TO TRUST THIS
	// - Effort is reckoned from your times by the numbers that the plan rests on,
	//   averaged over 20 minutes. Heat, illness, a wrong turn or a sore foot all look
	//   like little effort.
	// - A bad patch in one race is no reason to train through it. If something hurt or
	//   you felt ill, see a doctor before the next race.
}
