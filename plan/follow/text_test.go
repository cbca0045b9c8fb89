package follow_test

import (
	"bytes"
	"encoding/json"
	"io"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"pgregory.net/rapid"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/plan"
	"isoeffort.example/plan/follow"
)

// printer is whatever this package prints.
type printer interface {
	Text(w io.Writer) error
	JSON(w io.Writer) error
}

// Everything prints in 80 columns, with its cautions, and as JSON that reads back.
func TestPrinted(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		_, c, a, r := drawRace(t)
		name := rapid.SampledFrom([]string{"Ford", "", "A place with a name that is far too long for any card that fits into a pocket, or two", "峠の茶屋", "tab\tand\nline", strings.Repeat("x", 200)}).Draw(t, "name")
		c = renamed(t, c, name)
		r.Cutoffs = []plan.Cutoff{{Name: name, Distance: c.Length() / 2, Time: 5 * time.Hour}, {Distance: c.Length(), Time: 14 * time.Hour}}
		p := even(t, c, a, r)
		at := c.Length() * rapid.Float64Range(0.05, 0.95).Draw(t, "at")
		s := from(t, p, after(p, at, effort.Seconds(rapid.Float64Range(-0.1, 0.6).Draw(t, "late")*p.State(at).Moving)))
		card, err := follow.Paper(p, follow.CardOptions{})
		if err != nil {
			t.Fatal(err)
		}
		d, err := follow.Review(p, recorded(p, p.Traverse(), noisy(0.05, 3)), follow.DebriefOptions{})
		if err != nil {
			t.Fatal(err)
		}
		for kind, x := range map[string]printer{"standing": s, "rest": rest(t, s, follow.Options{}), "card": card, "debrief": d, "finished": from(t, p, planned(p, c.Length(), false))} {
			var text, data bytes.Buffer
			if err := x.Text(&text); err != nil {
				t.Fatal(err)
			}
			if err := x.JSON(&data); err != nil {
				t.Fatal(err)
			}
			for _, line := range strings.Split(text.String(), "\n") {
				if utf8.RuneCountInString(line)+strings.Count(line, "峠の茶屋")*4 > 80 || strings.ContainsAny(line, "\t\r") {
					t.Fatalf("%s: %q", kind, line)
				}
			}
			if kind != "debrief" && !strings.Contains(strings.Join(strings.Fields(text.String()), " "), "medical team") {
				t.Fatalf("%s has no cautions", kind)
			}
			var back map[string]any
			if err := json.Unmarshal(data.Bytes(), &back); err != nil || back["schema"] != follow.Schema {
				t.Fatalf("%s: %v, schema %v", kind, err, back["schema"])
			}
		}
	})
}

// renamed is a course with another name of its first landmark.
func renamed(t rapid.TB, c *course.Course, name string) *course.Course {
	t.Helper()
	var x, z []float64
	for i := range c.Len() {
		d, e := c.Point(i)
		x, z = append(x, d), append(z, e)
	}
	marks := c.Landmarks()
	marks[0].Name = name
	out, err := course.New(x, z, course.Options{Name: name, Smoothing: course.AsGiven, Landmarks: marks})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// failing is a writer that fails.
type failing struct{}

func (failing) Write([]byte) (int, error) { return 0, io.ErrClosedPipe }

func TestWritersError(t *testing.T) {
	t.Parallel()
	p := even(t, profile(t, 10_000, flat), effort.Usual(12), plan.Race{})
	for _, x := range []printer{from(t, p), rest(t, from(t, p), follow.Options{})} {
		if x.Text(failing{}) == nil || x.JSON(failing{}) == nil {
			t.Error("no error")
		}
	}
}

// A debrief makes a result that a results file accepts.
func TestResult(t *testing.T) {
	t.Parallel()
	p := even(t, profile(t, 10_000, rolling), effort.Usual(12), plan.Race{StartDelay: time.Minute, Start: gun})
	d, err := follow.Review(p, recorded(p, p.Traverse(), asPlanned), follow.DebriefOptions{})
	if err != nil {
		t.Fatal(err)
	}
	r := d.Result("Ida", "Larch round")
	if err := r.Check(); err != nil || (r.Time-p.Moving).Abs() > 5*time.Millisecond || r.Runner != "Ida" || !r.Date.Equal(gun) {
		t.Errorf("%+v: %v", r, err)
	}
}
