package write_test

import (
	"bytes"
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"golang.org/x/net/html"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/plan"
	"isoeffort.example/plan/forecast"
	"isoeffort.example/plan/write"
)

// lamps is an invented rolling course with so many landmarks.
func lamps(t testing.TB, length float64, landmarks int, name string) *course.Course {
	t.Helper()
	var x, z []float64
	for d := 0.0; d <= length; d += 50 {
		x, z = append(x, d), append(z, 200+30*math.Sin(2*math.Pi*d/2600)+60*math.Sin(2*math.Pi*d/9000+1))
	}
	o := course.Options{Name: name}
	for i := range landmarks {
		l := course.Landmark{Name: fmt.Sprintf("%s %d", name, i), Distance: length * float64(i+1) / float64(landmarks+2)}
		if i%5 == 2 {
			l.Kind = course.Station
		}
		o.Landmarks = append(o.Landmarks, l)
	}
	c, err := course.New(x, z, o)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func planned(t testing.TB, c *course.Course, hourPower float64, r plan.Race) *plan.Plan {
	t.Helper()
	p, err := plan.Even(c, effort.Usual(hourPower), r)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// rowsOf are the cells of the card's table as text.
func rowsOf(t *testing.T, page []byte) (rows [][]string) {
	t.Helper()
	root, err := html.Parse(bytes.NewReader(page))
	if err != nil {
		t.Fatal(err)
	}
	for n := range root.Descendants() {
		if n.Type != html.ElementNode {
			continue
		}
		switch n.Data {
		case "script", "img", "link", "iframe":
			t.Errorf("the card has an element %s", n.Data)
		case "tr":
			rows = append(rows, nil)
		case "td":
			text := ""
			for c := range n.ChildNodes() {
				text += c.Data
			}
			rows[len(rows)-1] = append(rows[len(rows)-1], text)
		}
	}
	return rows[1:] // without the head
}

// A card has a line for each landmark, the times of its plans, and every cutoff.
func TestCard(t *testing.T) {
	t.Parallel()
	c := lamps(t, 85_000, 12, "Lamp <b>&\"</b><script>alert(1)</script>")
	r := plan.Race{
		StartDelay: 5 * time.Minute, Start: time.Date(2026, 6, 14, 5, 30, 0, 0, time.UTC), Stations: plan.Stations{Each: 2 * time.Minute},
		Cutoffs: []plan.Cutoff{{Name: "Gate", Distance: 31_234, Time: 6 * time.Hour}, {Name: "Finish", Distance: 85_000, Time: 14 * time.Hour}},
	}
	best := planned(t, c, 13, r)
	r.Goal = 12 * time.Hour
	slower := planned(t, c, 13, r)
	var page bytes.Buffer
	if err := write.Card(&page, plan.AtLandmarks, write.CardOptions{Titles: []string{"quick"}, Late: []string{"Ease."}}, best, slower); err != nil {
		t.Fatal(err)
	}
	rows := rowsOf(t, page.Bytes())
	if len(rows) != 15 { // the start line, landmarks, a cutoff between them, the finish
		t.Fatalf("%d lines", len(rows))
	}
	cutoffs := 0
	for _, row := range rows {
		if len(row) != 7 {
			t.Fatalf("cells %q", row)
		}
		if row[5] != "" {
			cutoffs++
		}
	}
	if cutoffs != 2 {
		t.Errorf("%d cutoffs", cutoffs)
	}
	last := rows[len(rows)-1]
	hm := func(d time.Duration) string {
		m := int(math.Round(d.Minutes()))
		return fmt.Sprintf("%d:%02d", m/60, m%60)
	}
	if last[2] != hm(best.Gun) || last[3] != "12:00" || last[5] != "19:30" { // 14 h after half past five
		t.Errorf("last line %q", last)
	}
	for _, want := range []string{">quick<", ">slower<", "Ease.", "Drink to thirst", "Trust the course markers over your watch"} {
		if !strings.Contains(page.String(), want) {
			t.Errorf("no %q on the card", want)
		}
	}
}

// However many places there are, the card has room, and keeps what matters.
func TestCardIsThinned(t *testing.T) {
	t.Parallel()
	for _, n := range []int{0, 1, 42, 43, 60, 300} {
		c := lamps(t, 85_000, n, "Lamp")
		p := planned(t, c, 13, plan.Race{Stations: plan.Stations{Each: time.Minute}, Cutoffs: []plan.Cutoff{{Distance: 60_000, Time: 15 * time.Hour}}})
		for _, every := range []plan.Spacing{plan.AtLandmarks, plan.EveryKilometre, plan.EveryMile, 85_000} {
			var page bytes.Buffer
			if err := write.Card(&page, every, write.CardOptions{}, p); err != nil {
				t.Fatal(err)
			}
			rows := rowsOf(t, page.Bytes())
			if len(rows) > 44 || len(rows) == 0 {
				t.Errorf("%d landmarks every %g: %d lines", n, every, len(rows))
			}
			if whole := fmt.Sprintf("%d:%02d:%02d", int(p.Gun.Hours()), int(p.Gun.Round(time.Second).Minutes())%60, int(math.Round(p.Gun.Seconds()))%60); rows[len(rows)-1][2] != whole {
				t.Errorf("the last line is %q, the finish at %s", rows[len(rows)-1], whole)
			}
			stations, shown := len(p.Stops), strings.Count(page.String(), `<td class="words">60 s</td>`)
			if every == plan.AtLandmarks && stations+2 <= 44 && shown != stations {
				t.Errorf("%d landmarks: %d of %d stations", n, shown, stations)
			}
		}
	}
}

func chance(p float64) *forecast.Chance { return &forecast.Chance{P: p} }

// A goal that the runner cannot make, or hardly, gets no card unless one insists, and then
// a warning on both sides.
func TestNoCard(t *testing.T) {
	t.Parallel()
	c := lamps(t, 40_000, 3, "Lamp")
	beyond := planned(t, c, 12, plan.Race{Goal: 3 * time.Hour})
	fine := planned(t, c, 12, plan.Race{})
	for _, tt := range []struct {
		name  string
		o     write.CardOptions
		plans []*plan.Plan
		want  error
	}{
		{"beyond", write.CardOptions{}, []*plan.Plan{beyond}, write.ErrBeyond},
		{"the second beyond", write.CardOptions{}, []*plan.Plan{fine, beyond}, write.ErrBeyond},
		{"unlikely", write.CardOptions{Goal: chance(0.099)}, []*plan.Plan{fine}, write.ErrBeyond},
		{"likely enough", write.CardOptions{Goal: chance(0.1)}, []*plan.Plan{fine}, nil},
		{"beyond, overridden", write.CardOptions{Override: true}, []*plan.Plan{beyond}, nil},
		{"unlikely, overridden", write.CardOptions{Override: true, Goal: chance(0.05)}, []*plan.Plan{fine}, nil},
		{"none", write.CardOptions{}, nil, write.ErrCard},
		{"four", write.CardOptions{}, []*plan.Plan{fine, fine, fine, fine}, write.ErrCard},
		{"titles", write.CardOptions{Titles: []string{"a", "b"}}, []*plan.Plan{fine}, write.ErrCard},
		{"probability", write.CardOptions{Goal: chance(math.NaN())}, []*plan.Plan{fine}, write.ErrBeyond},
		{"other course", write.CardOptions{}, []*plan.Plan{fine, planned(t, lamps(t, 40_000, 3, "Other"), 12, plan.Race{})}, write.ErrCard},
	} {
		var page bytes.Buffer
		err := write.Card(&page, plan.AtLandmarks, tt.o, tt.plans...)
		if !errors.Is(err, tt.want) || (err != nil) != (page.Len() == 0) {
			t.Errorf("%s: %v, %d bytes", tt.name, err, page.Len())
		}
		warned := strings.Count(page.String(), `class="warning"`)
		if want := map[bool]int{true: 2}[tt.o.Override]; warned != want {
			t.Errorf("%s: %d warnings", tt.name, warned)
		}
	}
}

// What a runner must not misread: cutoffs to the minute before, each of two at a place,
// missed and tight ones in a box, and where to walk.
func TestCardSaysWhatMatters(t *testing.T) {
	t.Parallel()
	c := lamps(t, 40_000, 3, "Lamp")
	r := plan.Race{
		Cutoffs: []plan.Cutoff{
			{Name: "Gate", Distance: 16_000, Time: 5*time.Hour + 30*time.Second},
			{Name: "Gate", Distance: 16_000, Time: 5*time.Hour + 20*time.Minute, Departure: true},
			{Name: "End", Distance: 40_000, Time: 5*time.Hour + 25*time.Minute},
		},
		Stops: []plan.Stop{{Distance: 20_000, Duration: 25 * time.Minute, Kind: plan.DropBag}},
		Walks: plan.Walks{Every: 30 * time.Minute, Length: 2 * time.Minute, Fixed: true}, Goal: 5*time.Hour + 30*time.Minute,
	}
	card := func(r plan.Race) string {
		var out bytes.Buffer
		if err := write.Card(&out, plan.AtLandmarks, write.CardOptions{}, planned(t, c, 13, r)); err != nil {
			t.Fatal(err)
		}
		return html.UnescapeString(out.String())
	}
	text := card(r)
	for _, want := range []string{">5:00; leave 5:20<", "5:25 MISSED", "This plan misses the cutoff at End by 5 min", "25 min, drop bag", "Walk 2 min by the watch, gun time 0:30, 1:00"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q on\n%s", want, text)
		}
	}
	r.Start = time.Date(2026, 6, 14, 22, 0, 0, 0, time.UTC)
	if text = card(r); !strings.Contains(text, ">03:00 +1; leave 03:20 +1<") || !strings.Contains(text, "03:25 +1 MISSED") {
		t.Errorf("by the clock:\n%s", text)
	}
}
