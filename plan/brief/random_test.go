package brief_test

import (
	"math"
	"time"

	"pgregory.net/rapid"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/plan"
	"isoeffort.example/plan/story"
)

// randomCourse draws ground of any shape from 500 m to some 180 km.
func randomCourse(t *rapid.T) *course.Course {
	n := rapid.IntRange(1, 40).Draw(t, "pieces")
	scale := rapid.SampledFrom([]float64{100, 400, 1500, 4500}).Draw(t, "scale")
	height, start := 0.0, 1500.0
	var pieces []piece
	total := 0.0
	for range n {
		p := piece{length: math.Max(500/float64(n), scale*rapid.Float64Range(0.2, 1.8).Draw(t, "length"))}
		p.rise = p.length * rapid.SampledFrom([]float64{0, 0, 0.004, 0.02, 0.06, 0.12, 0.3}).Draw(t, "gradient") * rapid.SampledFrom([]float64{1, -1}).Draw(t, "sign")
		if math.Abs(height+p.rise) > 1400 {
			p.rise = -p.rise
		}
		if math.Abs(height+p.rise) > 1900 {
			p.rise = 0
		}
		height += p.rise
		total += p.length
		pieces = append(pieces, p)
	}
	var marks []course.Landmark
	for range rapid.IntRange(0, 8).Draw(t, "landmarks") {
		marks = append(marks, course.Landmark{
			Name: rapid.SampledFrom([]string{"Ash", "Birch Row", "Old Elm Gate", "Fir", ""}).Draw(t, "name"), Distance: total * rapid.Float64Range(0, 1).Draw(t, "at"),
			Kind: rapid.SampledFrom([]course.Kind{course.Place, course.Station, course.Top}).Draw(t, "kind"),
		})
	}
	c := ground(t, rapid.SampledFrom([]string{"", "The Test"}).Draw(t, "course"), start, pieces, marks...)
	if laps := rapid.SampledFrom([]int{1, 1, 2, 3, 7}).Draw(t, "laps"); laps > 1 && total*float64(laps) < 180_000 && math.Abs(height)*float64(laps) < 40 {
		lapped, err := c.Laps(laps)
		if err != nil {
			t.Fatal(err)
		}
		return lapped
	}
	return c
}

// randomRace draws a race on a course.
func randomRace(t *rapid.T, c *course.Course) plan.Race {
	length := c.Length()
	r := plan.Race{Step: 50, StartDelay: time.Duration(rapid.IntRange(0, 900).Draw(t, "delay")) * time.Second}
	if rapid.Bool().Draw(t, "clock") {
		r.Start = time.Date(2026, 5, 2, rapid.IntRange(0, 23).Draw(t, "hour"), 0, 0, 0, time.UTC)
	}
	switch rapid.IntRange(0, 2).Draw(t, "aim") {
	case 1:
		r.Share = rapid.Float64Range(0.2, 1).Draw(t, "share")
	case 2:
		pace := rapid.Float64Range(0.22, 0.9).Draw(t, "s/m")
		r.Goal = r.StartDelay + time.Duration(pace*length)*time.Second + 20*time.Minute
	}
	for range rapid.IntRange(0, 4).Draw(t, "stops") {
		r.Stops = append(r.Stops, plan.Stop{
			Distance: length * rapid.Float64Range(0.01, 0.98).Draw(t, "stop"), Duration: time.Duration(rapid.IntRange(20, 200).Draw(t, "halt")) * time.Second,
			Kind: rapid.SampledFrom([]plan.StopKind{plan.Halt, plan.AidStation, plan.DropBag, plan.Sleep}).Draw(t, "kind of stop"),
		})
	}
	if rapid.Bool().Draw(t, "weather") {
		night, hours := effort.Night{}, []effort.Hour(nil)
		if rapid.Bool().Draw(t, "night") {
			night = effort.Night{From: 21 * time.Hour, To: 5 * time.Hour, Factor: 0.95}
		}
		for i := range rapid.IntRange(0, 3).Draw(t, "hours") {
			hours = append(hours, effort.Hour{Clock: time.Duration(8*i) * time.Hour, Temperature: rapid.Float64Range(-15, 40).Draw(t, "air"), Humidity: 50})
		}
		day, err := effort.NewDay(hours, night)
		if err != nil {
			t.Fatal(err)
		}
		r.Surroundings.Day, r.Surroundings.Heat.Loss = day, rapid.SampledFrom([]float64{0, effort.HeatLoss}).Draw(t, "loss")
	}
	if rapid.IntRange(0, 3).Draw(t, "walks") == 0 {
		r.Walks = plan.Walks{Every: time.Duration(rapid.IntRange(15, 60).Draw(t, "every")) * time.Minute, Length: 2 * time.Minute}
	}
	pace := rapid.Float64Range(0.25, 2).Draw(t, "cutoff s/m")
	for i := range rapid.IntRange(0, 5).Draw(t, "cutoffs") {
		d := length * float64(i+1) / 5
		r.Cutoffs = append(r.Cutoffs, plan.Cutoff{Distance: d, Time: time.Duration(pace*d)*time.Second + 40*time.Minute, Departure: rapid.Bool().Draw(t, "departure")})
	}
	return r
}

func randomMarks(t *rapid.T, c *course.Course) (marks []story.Mark) {
	for range rapid.IntRange(0, 3).Draw(t, "marks") {
		from := c.Length() * rapid.Float64Range(0, 0.9).Draw(t, "from")
		marks = append(marks, story.Mark{From: from, To: from + 0.05*c.Length(), Kind: rapid.SampledFrom([]story.MarkKind{story.Exposed, story.Shaded, story.Surface, story.Crowded}).Draw(t, "mark")})
	}
	return marks
}
