package effort

import (
	"math"
	"testing"

	"isoeffort.example/course"
	"pgregory.net/rapid"
)

// The step decides how often gait and capability are looked at and not how well the hills
// are seen: length and work are those of the profile's own pieces, whatever the step.
func TestStepKeepsWork(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		c, a := drawCourse(t), drawAthlete(t)
		want, along := 0.0, 0.0
		whole := ground(t, c, 1)
		for _, cell := range whole.cells {
			along += cell.length
		}
		want = whole.RunningWork(a)
		g := ground(t, c, rapid.Float64Range(1, 10_000).Draw(t, "step"))
		length := 0.0
		for _, cell := range g.cells {
			length += cell.length
		}
		near(t, "work", g.RunningWork(a), want, 1e-9*want)
		near(t, "along the slope", length, along, 1e-9*along)
		near(t, "end", g.cells[g.Len()-1].end, c.Length(), 1e-9)
		near(t, "length", g.Length(), c.Length(), 0)
	})
}

// A summary keeps the distance, the ascent and the descent that it is made from.
func TestSummaryKeepsTotals(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		distance := rapid.Float64Range(100, course.MaxLength).Draw(t, "distance")
		ascent := distance * rapid.Float64Range(0, 0.2).Draw(t, "ascent")
		descent := distance * rapid.Float64Range(0, 0.2).Draw(t, "descent")
		g, err := NewSummaryGround(distance, ascent, descent)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "length", g.Length(), distance, 0)
		start, up, down := 0.0, 0.0, 0.0
		for _, c := range g.cells {
			flat := c.end - start
			rise := math.Sqrt(math.Max(0, c.length*c.length-flat*flat))
			if c.brake > 0 {
				down += rise
			} else {
				up += rise
			}
			start = c.end
		}
		near(t, "end", start, distance, 1e-9*distance)
		near(t, "ascent", up, ascent, 1e-6*distance)
		near(t, "descent", down, descent, 1e-6*distance)
	})
}
