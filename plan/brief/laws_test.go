package brief_test

import (
	"bytes"
	"encoding/json"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"isoeffort.example/course"
	"isoeffort.example/plan"
	"isoeffort.example/plan/brief"
)

// beyond reports whether the goal of a plan is beyond the runner.
func beyond(p *plan.Plan) bool { return p.Unmet || p.Budget > plan.BeyondBudget }

// What holds for every briefing, on any course for anyone.
func TestLaws(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		c := randomCourse(t)
		p, err := plan.Even(c, athlete(rapid.Float64Range(7, 20).Draw(t, "hour power")), randomRace(t, c))
		if err != nil {
			t.Skip(err)
		}
		o := brief.Options{Imperial: rapid.Bool().Draw(t, "imperial"), Marks: randomMarks(t, c), Laps: rapid.SampledFrom([]int{0, 0, 1, 3}).Draw(t, "told laps")}
		b, err := brief.Make(p, o)
		if err != nil {
			t.Fatal(err)
		}
		if b.Imperial != o.Imperial {
			t.Fatal("units lost")
		}
		inOrder(t, b)
		told(t, p, b, o)
		language(t, p, b)
		short(t, p, b, o)
		sameEveryTime(t, p, b, o)
	})
}

var places = regexp.MustCompile(`(?:\b[Aa]t |\b[Ff]rom |\baround |\bto |\()(?:(\d+(?:\.\d+)?) (km|mi)\b|the start\b)`)

// inOrder wants every place on the course and in its section, in order, in the data and in
// the words.
func inOrder(t *rapid.T, b *brief.Briefing) {
	end := 0.0
	for _, s := range b.Sections {
		if s.From < end-1e-6 || s.To <= s.From || s.To > b.Length+1e-6 {
			t.Fatalf("section from %g to %g after one that ends at %g", s.From, s.To, end)
		}
		end = s.To
		last, said := s.From, 0.0
		for _, l := range s.Lines {
			if l.From < last-1e-6 || l.From > s.To+1e-6 || l.To > b.Length+1e-6 {
				t.Fatalf("%v at %g m, to %g m, after %g, in a section from %g to %g", l.Kind, l.From, l.To, last, s.From, s.To)
			}
			last = l.From
			for i, m := range places.FindAllStringSubmatch(l.Text, -1) {
				at, err := 0.0, error(nil)
				if m[1] != "" {
					at, err = strconv.ParseFloat(m[1], 64)
				}
				if err != nil {
					t.Fatal(err)
				}
				if unit := map[string]float64{"km": 1000, "mi": 1609.344}[m[2]]; at*unit > b.Length+1e-6 {
					t.Fatalf("%q is beyond the course of %g m", l.Text, b.Length)
				}
				if i == 0 && at < said && l.Kind != brief.WalkPlaces { // which are to the tenth, and others not
					t.Fatalf("%q comes after %g", l.Text, said)
				}
				if i == 0 && l.Kind != brief.Flat && l.Kind != brief.WalkPlaces {
					said = at
				}
			}
		}
	}
}

// told wants every hard climb, every cutoff in doubt, every mark and the rest of what
// matters in it.
func told(t *rapid.T, p *plan.Plan, b *brief.Briefing, o brief.Options) {
	climbs, cutoffs, kinds := map[float64]bool{}, map[float64]bool{}, map[brief.Kind]int{}
	for l := range b.Lines() {
		kinds[l.Kind]++
		if l.Nth != kinds[l.Kind]-1 {
			t.Fatalf("%v number %d calls itself %d", l.Kind, kinds[l.Kind]-1, l.Nth)
		}
		for _, c := range l.Climbs {
			climbs[c.Start] = true
			if c.Gait == plan.Run && len(l.Climbs) == 1 && regexp.MustCompile(`\b[Ww]alk`).MatchString(l.Text) {
				t.Fatalf("%q, but the climb is run", l.Text)
			}
		}
		if l.Kind == brief.Cutoff {
			cutoffs[l.From] = true
		}
	}
	for _, c := range p.Climbs {
		if c.Rating.Value >= 4 && !climbs[c.Climb.Start] {
			t.Fatalf("nothing about the climb at %g m, rated %g", c.Climb.Start, c.Rating.Value)
		}
	}
	for _, m := range p.Cutoffs {
		if m.AtRisk && !cutoffs[m.Distance] {
			t.Fatalf("nothing about the cutoff at %g m", m.Distance)
		}
	}
	depths(t, p, b)
	places := 0
	for _, l := range lines(b, brief.WalkPlaces) {
		places += len(l.Places)
	}
	if !beyond(p) && places != len(p.Walks) {
		t.Fatalf("%d of %d planned walks", places, len(p.Walks))
	}
	if kinds[brief.Mark] != len(o.Marks) || kinds[brief.Overview] != 1 || kinds[brief.Effort] != 1 || kinds[brief.Start] != 1 || kinds[brief.Home] != 1 {
		t.Fatalf("lines: %v", kinds)
	}
	if (kinds[brief.Beyond] == 1) != beyond(p) {
		t.Fatalf("budget %g, lines: %v", p.Budget, kinds)
	}
}

var (
	sentences = regexp.MustCompile(`[.!?]+(?:\s+|$)`)
	banned    = regexp.MustCompile(`(?i)\bNaN\b|%!|\bInf\b|relative intensity|hour power|budget|gradient|threshold|metabolic|capability|lactate|aerobic|J/kg|moving time|\bgait\b|\b0 k?m\b|\b0 mi\b|\b0 ft\b|\b1 (?:minutes|hours|seconds|climbs|stops|laps|walks)\b|\b\d*[02-9] (?:minute|hour|second)\b|\b0 (?:minutes|hours|seconds)\b|  | ,|\.\.|,\.|\(\)`)
	metric    = regexp.MustCompile(`\bkm\b|\d m\b|kilomet`)
	imperial  = regexp.MustCompile(`\bmi\b|\bft\b|\bmile|\byd`)
	walk      = regexp.MustCompile(`\b[Ww]alk`)
)

// language wants short plain sentences in the units asked for.
func language(t *rapid.T, p *plan.Plan, b *brief.Briefing) {
	check := func(text string) {
		if text == "" || strings.TrimSpace(text) != text {
			t.Fatalf("text %q", text)
		}
		for _, s := range sentences.Split(text, -1) {
			if n := len(strings.Fields(s)); n > 25 {
				t.Fatalf("%d words: %q", n, s)
			}
		}
		if banned.MatchString(text) {
			t.Fatalf("%q in %q", banned.FindString(text), text)
		}
		if b.Imperial && metric.MatchString(text) || !b.Imperial && imperial.MatchString(text) {
			t.Fatalf("wrong units in %q", text)
		}
	}
	for l := range b.Lines() {
		check(l.Text)
		if !strings.HasSuffix(l.Text, ".") && !strings.HasSuffix(l.Text, "?") {
			t.Fatalf("%q ends oddly", l.Text)
		}
		if p.WalkingShare == 0 && !beyond(p) && l.Kind != brief.Patch && l.Kind != brief.After && walk.MatchString(l.Text) {
			t.Fatalf("%q, but all is run", l.Text)
		}
	}
	for _, s := range b.Sections {
		check(s.Heading)
	}
	for _, c := range b.Cautions {
		check(c.Text)
	}
}

// depths wants every deep descent of the course, or of the first lap, told, on its own or as
// one that tempts.
func depths(t *rapid.T, p *plan.Plan, b *brief.Briefing) {
	full := b.Length
	if b.Sections[0].FirstLap > 0 {
		full = b.Sections[0].To
	}
	for _, d := range p.Course.Descents(course.ClimbOptions{}) {
		if d.Drop < 300 || d.Gradient() > -0.03 || d.Start >= full {
			continue
		}
		told := 0.0
		for _, l := range slices.Concat(lines(b, brief.Descent), lines(b, brief.Drop)) {
			told = max(told, min(l.To, d.Foot)-max(l.From, d.Start))
		}
		if told < d.Length()/2 {
			t.Fatalf("nothing about the descent of %g m at %g m", d.Drop, d.Start)
		}
	}
}

// sameEveryTime wants the same briefing again, text that fits the page, and JSON that
// holds the same lines.
func sameEveryTime(t *rapid.T, p *plan.Plan, b *brief.Briefing, o brief.Options) {
	again, err := brief.Make(p, o)
	if err != nil {
		t.Fatal(err)
	}
	var one, two bytes.Buffer
	if brief.Text(&one, b) != nil || brief.Text(&two, again) != nil || one.String() != two.String() {
		t.Fatal("two briefings of one plan differ")
	}
	for _, line := range strings.Split(one.String(), "\n") {
		if len([]rune(line)) > 80 {
			t.Fatalf("%d columns: %q", len([]rune(line)), line)
		}
	}
	data, err := json.Marshal(b)
	if err != nil {
		t.Fatal(err)
	}
	var back struct {
		Sections []struct{ Lines []struct{ Text string } }
	}
	if err := json.Unmarshal(data, &back); err != nil {
		t.Fatal(err)
	}
	for i, s := range b.Sections {
		for j, l := range s.Lines {
			if back.Sections[i].Lines[j].Text != l.Text {
				t.Fatalf("JSON says %q for %q", back.Sections[i].Lines[j].Text, l.Text)
			}
		}
	}
}
