package page_test

import (
	"errors"
	"fmt"
	"os"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"isoeffort.example/internal/page"
)

func Example() {
	var p page.Page
	p.Line("%s: even-effort plan", page.Clip(page.Plain("Hollow\tMoor"), 40))
	p.Entry("Finish", "9:30:00 gun time, 9:27:00 net (3:00 from the gun to the start line); gun at 06:00:00.")
	p.List("CAUTIONS", []string{"Drink to thirst."})
	p.Table([][]string{{"place", "km", "late"}, {"峠の茶屋", "12.5", "+1:05"}, {"Ford", "8.0", ""}}, page.Table{Gap: 2})
	p.Print(os.Stdout)
	// Output:
	// Hollow Moor: even-effort plan
	// Finish     9:30:00 gun time, 9:27:00 net (3:00 from the gun to the start line);
	//            gun at 06:00:00.
	// CAUTIONS
	// - Drink to thirst.
	// place       km   late
	// 峠の茶屋  12.5  +1:05
	// Ford       8.0
}

// Widths are those of Unicode Standard Annex 11: ideographs, kana and full-width letters
// take two columns, half-width ones and Latin letters with marks of their own one.
func TestColumns(t *testing.T) {
	t.Parallel()
	for text, want := range map[string]int{
		"": 0, "Ford": 4, "Ä": 1, "A\u0308": 1, "峠": 2, "の": 2, "Ａ": 2, "ｱ": 1, "한": 2, "−…": 2, "峠a\u0301の": 5,
	} {
		if got := page.Columns(text); got != want {
			t.Errorf("%q takes %d columns, want %d", text, got, want)
		}
	}
}

func TestClip(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		text string
		n    int
		want string
	}{
		{"Ford", 4, "Ford"},
		{"Fords", 4, "For…"},
		{"On the moor", 8, "On the…"}, // no space before the ellipsis
		{"峠の茶屋", 8, "峠の茶屋"},
		{"峠の茶屋", 7, "峠の茶…"},
		{"峠の茶屋", 6, "峠の…"}, // half a character is no room
		{"A\u0308A\u0308A\u0308", 2, "A\u0308…"},
		{"bad\xffbytes", 6, "bad\xffb…"},
		{"Ford", 1, "…"},
		{"Ford", 0, "…"},
		{"", 0, ""},
	} {
		if got := page.Clip(c.text, c.n); got != c.want {
			t.Errorf("%q to %d columns: %q, want %q", c.text, c.n, got, c.want)
		}
	}
}

func TestPad(t *testing.T) {
	t.Parallel()
	if got := page.Pad("峠", 4) + "|" + page.PadLeft("峠", 4) + "|" + page.Pad("Fords", 4) + "|" + page.PadLeft("Fords", 4); got != "峠  |  峠|Fords|Fords" {
		t.Errorf("%q", got)
	}
}

func TestPlain(t *testing.T) {
	t.Parallel()
	for text, want := range map[string]string{
		"tab\tand\r\nline":    "tab and line",
		"\x1b[31mred":         "[31mred",
		"turned\u202eround":   "turned round", // else it would turn the rest of the line
		"  a \u00a0 b\ufeff":  "a b",
		"Ångström, Ålesund 峠": "Ångström, Ålesund 峠",
	} {
		if got := page.Plain(text); got != want {
			t.Errorf("%q becomes %q, want %q", text, got, want)
		}
	}
}

// words draws a text of words of any length, of one, two and no columns a rune.
func words(t *rapid.T) string {
	runes := []rune("abcdef峠茶\u0301Ä")
	word := rapid.StringOfN(rapid.SampledFrom(runes), 1, 130, -1)
	return strings.Join(rapid.SliceOfN(word, 0, 12).Draw(t, "words"), " ")
}

// A paragraph fits on the page behind any label, and holds its text, but for the ellipsis
// where a word is broken. No line has room for the word that the next one begins with.
func TestWrapFits(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		label := rapid.StringOfN(rapid.SampledFrom([]rune("ab 峠")), 0, 60, page.Width).Draw(t, "label")
		text := words(t)
		var p page.Page
		p.Wrap(label, text)
		lines := strings.Split(strings.TrimSuffix(p.String(), "\n"), "\n")
		for i, line := range lines {
			if page.Columns(line) > page.Width {
				t.Fatalf("%d columns: %q", page.Columns(line), line)
			}
			if i == 0 || strings.HasSuffix(lines[i-1], "…") {
				continue
			}
			next, _, _ := strings.Cut(strings.TrimSpace(line), " ")
			if before := page.Columns(lines[i-1]); i > 1 && before+1+page.Columns(next) <= page.Width {
				t.Fatalf("%q had room for %q", lines[i-1], next)
			}
		}
		squeezed := strings.NewReplacer(" ", "", "\n", "", "…", "")
		if got, want := squeezed.Replace(p.String()), squeezed.Replace(label+text); got != want {
			t.Fatalf("%q became %q", want, got)
		}
	})
}

func TestHardSpace(t *testing.T) {
	t.Parallel()
	var p page.Page
	p.Wrap("", strings.Repeat("x", 77)+" 5"+page.HardSpace+"%")
	if want := strings.Repeat("x", 77) + "\n5 %\n"; p.String() != want {
		t.Errorf("%q, want %q", p.String(), want)
	}
}

func TestEmptyList(t *testing.T) {
	t.Parallel()
	var p page.Page
	p.List("CAUTIONS", nil)
	p.Table(nil, page.Table{})
	if p.String() != "" {
		t.Errorf("%q", p.String())
	}
}

// The place gives way to the other columns, within its bounds; the others never do.
func TestTable(t *testing.T) {
	t.Parallel()
	long := strings.Repeat("Ford ", 30)
	rows := [][]string{{"1.0", long, "run", "5:00"}, {"12.0", "Ash", "walk", "12:00"}}
	for name, c := range map[string]struct {
		table page.Table
		want  string
	}{
		"room":    {page.Table{Gap: 1, Place: 1, Left: []int{2}}, " 1.0 " + page.Clip(long, 64) + " run   5:00\n12.0 " + page.Pad("Ash", 64) + " walk 12:00\n"},
		"at most": {page.Table{Gap: 1, Place: 1, Left: []int{2}, Most: 9}, " 1.0 Ford For… run   5:00\n12.0 Ash       walk 12:00\n"},
	} {
		var p page.Page
		if p.Table(rows, c.table); p.String() != c.want {
			t.Errorf("%s:\n%s, want\n%s", name, p.String(), c.want)
		}
	}
	var p page.Page
	p.Table([][]string{{"a", "1"}}, page.Table{Gap: 2, Least: 8})
	if want := "a         1\n"; p.String() != want {
		t.Errorf("%q, want %q", p.String(), want)
	}
	var full page.Page
	full.Table([][]string{{long, strings.Repeat("9", 79)}}, page.Table{Gap: 1})
	if want := "Ford Fo… " + strings.Repeat("9", 79) + "\n"; full.String() != want {
		t.Errorf("%q, want %q", full.String(), want)
	}
}

var errWriter = errors.New("disk full")

type failing struct{}

func (failing) Write([]byte) (int, error) { return 0, errWriter }

func TestPrint(t *testing.T) {
	t.Parallel()
	var p page.Page
	p.Line("%d  ", 1)
	var out strings.Builder
	if err := p.Print(&out); err != nil || out.String() != "1\n" {
		t.Errorf("%q, %v", out.String(), err)
	}
	if err := p.Print(failing{}); !errors.Is(err, errWriter) {
		t.Errorf("error %v", err)
	}
	if got := fmt.Sprint(&p); got != "1\n" {
		t.Errorf("%q", got)
	}
}
