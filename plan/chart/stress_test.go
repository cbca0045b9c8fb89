package chart_test

import (
	"bytes"
	"fmt"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"isoeffort.example/course"
	"isoeffort.example/plan"
	"isoeffort.example/plan/chart"
)

// crowded is a course of 60 km with so many landmarks, of names that are long, foreign,
// hostile to XML, empty, and some at one and the same place.
func crowded(t testing.TB, n int) scene {
	names := []string{
		"The Most Extraordinarily Long Name of an Aid Station in Wherryfold",
		`<b>&"Lamp'`, "", "Élan Ødegård", "山の茶屋", "Тихий брод", "a\x00b\x1b[0m\xff", "🌲🌲", "  much \n\t space  ", "قلعة",
	}
	var marks []course.Landmark
	for i := range n {
		at := 60_000 * float64(i/2+1) / float64(n/2+1)
		marks = append(marks, course.Landmark{Name: names[i%len(names)], Distance: at, Kind: course.Kind(i % 3)})
	}
	c := ground(t, strings.Repeat("Long ", 40)+"<&>", 60_000, 200, rollingHeight, marks...)
	s := scene{"crowded", c, nil, nil}
	for i := 0; i+1 < n; i += 6 {
		s.cutoffs = append(s.cutoffs, plan.Cutoff{Name: marks[i].Name, Distance: marks[i].Distance, Time: 20 * time.Hour})
	}
	return s
}

func TestCrowded(t *testing.T) {
	t.Parallel()
	for _, n := range []int{0, 1, 40, 160} {
		if n > 40 && testing.Short() {
			continue
		}
		t.Run(fmt.Sprint(n), func(t *testing.T) {
			t.Parallel()
			p := planFor(t, crowded(t, n), runners[1])
			for _, o := range []chart.Options{{}, {Width: 148, Height: 105}, {Width: 594, Height: 420}} {
				for _, f := range figures(t, p, o) {
					checkLaws(t, f)
				}
			}
		})
	}
}

// What is left out is counted on the figure, and cutoffs go before all but the finish.
func TestLeftOut(t *testing.T) {
	t.Parallel()
	var marks []course.Landmark
	for i := range 40 {
		marks = append(marks, place(fmt.Sprintf("Place %d", i), 1000*float64(i+1)))
	}
	s := scene{"many", ground(t, "Many", 42_000, 200, rollingHeight, marks...), nil, nil}
	for _, i := range []int{7, 19, 20, 33} {
		s.cutoffs = append(s.cutoffs, plan.Cutoff{Name: marks[i].Name, Distance: marks[i].Distance, Time: 9 * time.Hour})
	}
	f, err := chart.Profile(planFor(t, s, runners[1]), chart.Options{})
	if err != nil {
		t.Fatal(err)
	}
	d := checkLaws(t, f)
	text := ""
	names, cutoffs := 0, 0
	for _, l := range d.labels {
		text += l.text + " "
		if strings.HasPrefix(l.text, "Place ") && l.size == 7.5 {
			names++
		}
		if strings.HasPrefix(l.text, "cutoff ") {
			cutoffs++
		}
	}
	if cutoffs != 4 {
		t.Errorf("%d of 4 cutoffs have labels", cutoffs)
	}
	if want := fmt.Sprintf("Places without a label for want of room: %d of 41.", 40-names); !strings.Contains(text, want) {
		t.Errorf("the figure does not say: %s", want)
	}
	if w := f.Warnings(); len(w) == 0 {
		t.Error("no warning")
	}
}

func TestRandomCourses(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(r *rapid.T) {
		length := rapid.Float64Range(1500, 120_000).Draw(r, "length")
		rise := rapid.Float64Range(0, 900).Draw(r, "rise")
		waves := rapid.Float64Range(0.3, 12).Draw(r, "waves")
		rise = min(rise, length/waves*0.1)
		n := rapid.IntRange(0, 30).Draw(r, "landmarks")
		var marks []course.Landmark
		for range n {
			marks = append(marks, course.Landmark{
				Name:     rapid.String().Draw(r, "name"),
				Distance: rapid.Float64Range(0, length).Draw(r, "at"),
				Kind:     course.Kind(rapid.IntRange(0, 2).Draw(r, "kind")),
			})
		}
		c := ground(t, rapid.String().Draw(r, "course"), length, 100+rise, wave(rise, waves, length), marks...)
		p := planFor(t, scene{"random", c, nil, nil}, runners[rapid.IntRange(0, 3).Draw(r, "runner")])
		o := chart.Options{
			Width:    rapid.Float64Range(chart.MinWidth, 500).Draw(r, "width"),
			Height:   rapid.Float64Range(chart.MinHeight, 400).Draw(r, "height"),
			Imperial: rapid.Bool().Draw(r, "imperial"),
		}
		for _, f := range figures(r, p, o) {
			checkLaws(r, f)
		}
	})
}

func TestSameBytes(t *testing.T) {
	t.Parallel()
	s := mountain(t)
	var first [][]byte
	for range 2 {
		for i, f := range figures(t, planFor(t, s, runners[0]), chart.Options{}) {
			var b bytes.Buffer
			if err := f.SVG(&b); err != nil {
				t.Fatal(err)
			}
			if len(first) <= i {
				first = append(first, b.Bytes())
				continue
			}
			if !bytes.Equal(first[i], b.Bytes()) {
				t.Errorf("figure %d is not the same twice", i)
			}
		}
	}
}
