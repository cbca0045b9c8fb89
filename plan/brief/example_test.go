package brief_test

import (
	"fmt"
	"log"
	"os"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/plan"
	"isoeffort.example/plan/brief"
)

// hill is a short course with one climb, and a plan for it.
func hill() *plan.Plan {
	c, err := course.New(
		[]float64{0, 4000, 6500, 9000, 14000}, []float64{210, 215, 340, 230, 205},
		course.Options{Name: "The Teasel Loop", Landmarks: []course.Landmark{{Name: "Teasel Down", Distance: 6500, Kind: course.Top}}})
	if err != nil {
		log.Fatal(err)
	}
	p, err := plan.Even(c, effort.Usual(13), plan.Race{Goal: 80 * time.Minute, StartDelay: time.Minute})
	if err != nil {
		log.Fatal(err)
	}
	return p
}

// A briefing as text.
func Example() {
	b, err := brief.Make(hill(), brief.Options{})
	if err != nil {
		log.Fatal(err)
	}
	if err := brief.Text(os.Stdout, b); err != nil {
		log.Fatal(err)
	}
	// Output:
	// THE RACE
	// The Teasel Loop is 14 km long, with 130 m up and 130 m down. The plan has you at
	// the finish after 1 hour 20 minutes, counted from the gun. That is about 5:39 a
	// kilometre on average. You should be able to speak in whole sentences all the
	// time, uphill too. If you cannot, ease off. Where 0 is nothing and 10 is all you
	// have, it feels like 3 at first. The same effort feels harder as the race goes
	// on: about 4 half way, about 5 near the finish. That is normal, and no reason to
	// push. Keep the effort even, not the pace. Slower uphill, faster downhill, the
	// same breathing everywhere.
	//
	// To Teasel Down: start to 6.5 km, there after 40 minutes
	// You cross the line 1 minute after the gun. Do not chase it, and do not weave
	// through the field. Even effort brings it back little by little: you are still 30
	// seconds behind half way. Partly up, the rest about level: 130 m in about 39
	// minutes. Check your pacing at 2 km. The plan is there 11 minutes 55 seconds
	// after the gun. Early? You are too fast: ease off. Late? Do not chase it. Teasel
	// Down starts at 4 km: 120 m up in 2.5 km, rated 9 of 10 for how hard it is there.
	// Short steps, and no harder than on the flat. Teasel Down is the only climb. From
	// its top at 6.5 km it is 7.5 km to the finish, about 40 minutes, mostly downhill.
	//
	// 6.5 km to 9 km, there after 53 minutes
	// Downhill for the most part: 110 m in about 12 minutes.
	//
	// To the finish: 9 km to 14 km, there after 1 hour 20 minutes
	// Level ground, about 27 minutes.
	//
	// TO THE FINISH AND AFTER
	// The last 2 km are hard for everyone. Hold your effort to the line: it is enough.
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

// Another language is a table of functions, filled kind by kind; what is missing stays
// English. Here one kind is said in Latin.
func ExampleWords() {
	latin := brief.Words{
		Lines: map[brief.Kind]func(brief.Line, brief.Measure) string{
			brief.OneClimb: func(l brief.Line, m brief.Measure) string {
				c := l.Climbs[0]
				return fmt.Sprintf("%s, ab %s: %s ascendendum.", c.Name, m.Place(c.Start), m.Height(c.Rise))
			},
		},
		Cautions: map[string]string{"drink": "Bibe cum sitis."},
	}
	b, err := brief.Make(hill(), brief.Options{Words: latin})
	if err != nil {
		log.Fatal(err)
	}
	for l := range b.Lines() {
		if l.Kind == brief.OneClimb || l.Kind == brief.LastClimb {
			fmt.Println(l.Text)
		}
	}
	for _, c := range b.Cautions {
		if c.ID == "drink" {
			fmt.Println(c.Text)
		}
	}
	// Output:
	// Teasel Down, ab 4 km: 120 m ascendendum.
	// Teasel Down is the only climb. From its top at 6.5 km it is 7.5 km to the finish, about 40 minutes, mostly downhill.
	// Bibe cum sitis.
}
