package csvtext_test

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"pgregory.net/rapid"

	"isoeffort.example/internal/csvtext"
)

func TestDelimiter(t *testing.T) {
	t.Parallel()
	for text, want := range map[string]byte{
		"":                             ',',
		"name,goal\na;b;c\n":           ',',
		"name;goal\na,b,c\n":           ';',
		"# one; two; three\nname,goal": ',',
		"\n  \nname;goal":              ';',
		`"a,b,c";goal`:                 ';',
		"a;b,c":                        ',', // as many of either
	} {
		if got := csvtext.Delimiter([]byte(text)); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

func TestColumns(t *testing.T) {
	t.Parallel()
	at, unused, err := csvtext.Columns([]string{"name", "goal", "note"}, []string{" Goal", "", "Shoe size", "NAME ", " "})
	if err != nil {
		t.Fatal(err)
	}
	if !slices.Equal(at, []int{4, 1, 0}) || !slices.Equal(unused, []string{`column "Shoe size" is not used`, "columns without a name are not used: 2"}) {
		t.Errorf("%v, %q", at, unused)
	}
	if _, _, err = csvtext.Columns([]string{"name"}, []string{"name", "Name"}); err == nil || err.Error() != `column "name" stands twice` {
		t.Errorf("error %v", err)
	}
}

// A quote is short, valid and on one line, whatever it is of.
func TestQuote(t *testing.T) {
	t.Parallel()
	if got := csvtext.Quote("a\nb"); got != `"a\nb"` {
		t.Error(got)
	}
	if got := csvtext.Quote(strings.Repeat("ä", 41)); got != `"`+strings.Repeat("ä", 40)+`"…` {
		t.Error(got)
	}
	rapid.Check(t, func(t *rapid.T) {
		s := string(rapid.SliceOfN(rapid.Byte(), 0, 200).Draw(t, "bytes"))
		if got := csvtext.Quote(s); !utf8.ValidString(got) || strings.ContainsAny(got, "\n\r\x1b") || utf8.RuneCountInString(got) > 40*len(`\U00012345`)+3 {
			t.Fatalf("%q", got)
		}
	})
}

func TestTime(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		text  string
		comma bool
		want  time.Duration
		err   error
	}{
		{text: "0:40:00", want: 40 * time.Minute},
		{text: "123456:59:59", want: 123456*time.Hour + 59*time.Minute + 59*time.Second},
		{text: "1:02:03.5", want: time.Hour + 2*time.Minute + 3500*time.Millisecond},
		{text: "2400.25", want: 2400*time.Second + 250*time.Millisecond},
		{text: "2400,25", comma: true, want: 2400*time.Second + 250*time.Millisecond},
		{text: "0.0000000019", want: 1},
		{text: "999999999", want: 999_999_999 * time.Second},
		{text: "40:00", err: csvtext.ErrTwoParts},
		{text: "2400,25", err: csvtext.ErrNoTime},
		{text: "", err: csvtext.ErrNoTime},
		{text: ".5", err: csvtext.ErrNoTime},
		{text: "5.", err: csvtext.ErrNoTime},
		{text: "-5", err: csvtext.ErrNoTime},
		{text: "1:60:00", err: csvtext.ErrNoTime},
		{text: "1:00:60", err: csvtext.ErrNoTime},
		{text: "1:2:3", err: csvtext.ErrNoTime},
		{text: "1:02:03:04", err: csvtext.ErrNoTime},
		{text: "1234567:00:00", err: csvtext.ErrNoTime},
		{text: "1000000000", err: csvtext.ErrNoTime},
		{text: "1e3", err: csvtext.ErrNoTime},
	} {
		if got, err := csvtext.Time(c.text, c.comma); got != c.want || !errors.Is(err, c.err) {
			t.Errorf("%q: %v, %v, want %v, %v", c.text, got, err, c.want, c.err)
		}
	}
}

func TestNumber(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		text  string
		comma bool
		want  float64
		err   string
	}{
		{text: "12.5", want: 12.5},
		{text: "1e3", want: 1000},
		{text: "12,5", comma: true, want: 12.5},
		{text: "12,5", err: `"12,5" is not a number`},
		{text: "1.234,5", comma: true, err: `"1.234,5" is not a number`},
		{text: "0x10p0", err: `"0x10p0" is not a number`},
		{text: "1_000", err: `"1_000" is not a number`},
		{text: "NaN", err: `"NaN" is not a finite number`},
		{text: "1e999", err: `"1e999" is not a finite number`},
		{text: "", err: `"" is not a number`},
	} {
		got, err := csvtext.Number(c.text, c.comma)
		if c.err == "" && err != nil || c.err != "" && (err == nil || err.Error() != c.err) || math.Float64bits(got) != math.Float64bits(c.want) {
			t.Errorf("%q: %v, %v, want %v, %s", c.text, got, err, c.want, c.err)
		}
	}
}
