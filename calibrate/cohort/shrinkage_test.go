package cohort

import (
	"errors"
	"math"
	"testing"
	"time"

	"isoeffort.example/calibrate"
	"isoeffort.example/effort"
	"isoeffort.example/effort/record"
)

// Shrinkage: with one result an athlete is between the population and that result; with
// many of the same kind, the athlete's own mean.
func TestShrinkage(t *testing.T) {
	t.Parallel()
	if testing.Short() {
		t.Skip("takes seconds, and minutes under the race detector")
	}
	results := small(6)
	usual := fitted(t, results, Options{}).Population.Prior[effort.HourPower].Median
	when := time.Date(2020, 5, 1, 0, 0, 0, 0, time.UTC)
	race := func(runner string, i int) record.Result {
		return record.Result{
			Runner: runner, Race: runner + string(rune('a'+i)), Date: when.AddDate(0, 0, 7*i), Distance: 30_000, Ascent: 1300,
			Descent: 1300, Time: 150 * time.Minute,
		}
	}
	results = append(results, race("once", 0))
	for i := range 26 {
		results = append(results, race("often", i))
	}
	m := fitted(t, results, Options{})
	var once, often Athlete
	for _, a := range m.Athletes {
		switch a.Runner {
		case "once":
			once = a
		case "often":
			often = a
		}
	}
	own := math.Exp(closedOf(calibrate.Mountain()).power(&row{work: m.t.rows[m.own[m.t.runner["once"]][0]].work, log: math.Log(9000)}))
	if p := once.Athlete.HourPower; !(p > usual && p < own) {
		t.Errorf("one result of %.2f W/kg in a population of %.2f gives %.2f", own, usual, p)
	}
	if a, b := once.LogSD[effort.HourPower], often.LogSD[effort.HourPower]; !(b < a && a < m.Population.Prior[effort.HourPower].LogSD) {
		t.Errorf("SDs of the logarithm: %.3f with one result, %.3f with 26, %.3f with none", a, b, m.Population.Prior[effort.HourPower].LogSD)
	}
	next, err := m.Forecast(race("often", 26))
	if err != nil {
		t.Fatal(err)
	}
	if off := math.Abs(math.Log(next.Median.Hours() / 2.5)); off > 0.02 {
		t.Errorf("after 26 races in 2:30 the next is foretold in %v", next.Median)
	}
}

// A new course is its kind, a new runner the population; both are less sure.
func TestNewRunnersAndCourses(t *testing.T) {
	t.Parallel()
	results := small(7)
	m := fitted(t, results, Options{})
	r := results[len(results)-1]
	known, err := m.Forecast(r)
	if err != nil {
		t.Fatal(err)
	}
	stranger := r
	stranger.Runner = "nobody"
	unknown, err := m.Forecast(stranger)
	if err != nil {
		t.Fatal(err)
	}
	r.Course, r.Race = "nowhere", "nowhere 1"
	elsewhere, err := m.Forecast(r)
	if err != nil {
		t.Fatal(err)
	}
	width := func(i Interval) float64 { return math.Log(float64(i.High) / float64(i.Low)) }
	if !(width(known) < width(elsewhere) && width(elsewhere) < width(unknown)) {
		t.Errorf("widths: known %.3f, new course %.3f, new runner %.3f", width(known), width(elsewhere), width(unknown))
	}
	if _, ok := m.Course("nowhere"); ok {
		t.Error("a course without results is known")
	}
	c, err := m.NewCourse(30_000, 1500, 1500)
	if err != nil || math.Abs(c.Effect) > 0.2 || !(c.SD > 0.03 && c.SD < 0.2) {
		t.Errorf("%+v, %v", c, err)
	}
	if _, err := m.NewCourse(1000, 900, 900); !errors.Is(err, effort.ErrSummary) {
		t.Errorf("impossible course: %v", err)
	}
}
