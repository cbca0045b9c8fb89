package record_test

import (
	"bytes"
	"errors"
	"strings"
	"testing"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/effort/record"
	"pgregory.net/rapid"
)

// differ says in what field two results differ, Line and Ground aside.
func differ(a, b record.Result) string {
	switch {
	case a.Runner != b.Runner, a.Race != b.Race, a.Course != b.Course, a.GPX != b.GPX, a.Note != b.Note:
		return "text"
	case !a.Date.Equal(b.Date):
		return "date"
	case a.Distance != b.Distance:
		return "distance"
	case a.Ascent != b.Ascent, a.Descent != b.Descent:
		return "ascent"
	case a.Time != b.Time:
		return "time"
	case a.Role != b.Role:
		return "role"
	}
	return ""
}

// checkRoundTrip writes results, reads them back and holds them against want.
func checkRoundTrip(t interface{ Fatalf(string, ...any) }, results, want []record.Result) {
	var file bytes.Buffer
	if err := record.Write(&file, results); err != nil {
		t.Fatalf("Write: %v", err)
	}
	text := file.String()
	res, err := record.Read(&file, record.Options{})
	if err != nil {
		t.Fatalf("Read: %v\nof %q", err, text)
	}
	if len(res.Results) != len(want) {
		t.Fatalf("%d results of %d\nof %q", len(res.Results), len(want), text)
	}
	for i, r := range res.Results {
		if field := differ(r, want[i]); field != "" {
			t.Fatalf("the %s differs: %+v\nwant %+v\nof %q", field, r, want[i], text)
		}
	}
}

// tidy is what Read makes of a text.
func tidy(s string) string {
	return strings.TrimSpace(strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace(s))
}

func drawResult(t *rapid.T) record.Result {
	text := rapid.OneOf(rapid.StringN(0, 12, -1), rapid.StringOfN(rapid.RuneFrom([]rune("#,;\"\r\n\t a.0\ufeff")), 0, 8, -1)).
		Filter(func(s string) bool { return strings.IndexByte(s, 0) < 0 })
	r := record.Result{
		Runner: text.Draw(t, "runner"), Race: text.Draw(t, "race"), Course: text.Draw(t, "course"),
		GPX: text.Draw(t, "gpx"), Note: text.Draw(t, "note"),
		Role: rapid.SampledFrom([]record.Role{record.AnyRole, record.Fit, record.Predict}).Draw(t, "role"),
	}
	if tidy(r.GPX) == "" || rapid.Bool().Draw(t, "has distance") {
		r.Distance = rapid.OneOf(rapid.Float64Range(1e-6, record.MaxDistance), rapid.Just(10_000.0)).Draw(t, "distance")
		r.Ascent = rapid.Float64Range(0, 0.49).Draw(t, "up") * r.Distance
		r.Descent = rapid.OneOf(rapid.Just(r.Ascent), rapid.Float64Range(0, 0.5*r.Distance)).Draw(t, "descent")
	}
	least := max(record.FastestTime(r.Distance, r.Ascent, r.Descent), 1)
	r.Time = time.Duration(rapid.Int64Range(int64(least), int64(record.MaxTime)).Draw(t, "time"))
	r.Date = drawDate(t)
	return r
}

func drawDate(t *rapid.T) time.Time {
	first, last := day(record.FirstYear, 1, 1), day(record.LastYear+1, 1, 1)
	date := time.Unix(rapid.Int64Range(first.Unix(), last.Unix()-1).Draw(t, "date"), 0).UTC()
	if rapid.Bool().Draw(t, "is a day") {
		return date.Truncate(24 * time.Hour)
	}
	nanos := rapid.Int64Range(0, 999_999_999).Draw(t, "nanos")
	offset := rapid.OneOf(rapid.IntRange(-14, 14), rapid.IntRange(-90_000, 90_000)).Draw(t, "offset")
	return date.Add(time.Duration(nanos)).In(time.FixedZone("zone", offset))
}

func TestWriteThenReadGivesEqualResults(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		results := rapid.SliceOfN(rapid.Custom(drawResult), 1, 5).Draw(t, "results")
		want := make([]record.Result, len(results))
		for i, r := range results {
			want[i] = r
			for _, s := range []*string{&want[i].Runner, &want[i].Race, &want[i].Course, &want[i].GPX, &want[i].Note} {
				*s = tidy(*s)
			}
		}
		checkRoundTrip(t, results, want)
	})
}

func TestWriteColumnsAndForm(t *testing.T) {
	r := good()
	r.Runner, r.Role, r.Note = "Ilva", record.Fit, "cold, wet"
	r.Time += 250 * time.Millisecond
	var file strings.Builder
	if err := record.Write(&file, []record.Result{r}); err != nil {
		t.Fatal(err)
	}
	want := `date,runner,race,course,distance_m,ascent_m,descent_m,time,role,gpx,note
2024-05-31,Ilva,,,10000,100,100,1:00:00.25,fit,,"cold, wet"
`
	if file.String() != want {
		t.Errorf("got %s", file.String())
	}
}

func TestWriteRefusesWhatReadWould(t *testing.T) {
	bad := good()
	bad.Time = 20 * time.Minute
	var file strings.Builder
	if err := record.Write(&file, []record.Result{good(), bad}); !errors.Is(err, record.ErrTooFast) || file.Len() > 0 {
		t.Errorf("%v, wrote %q", err, file.String())
	}
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.ErrUnsupported }

func TestWriteReportsTheWriter(t *testing.T) {
	if err := record.Write(full{}, make([]record.Result, 0)); !errors.Is(err, errors.ErrUnsupported) {
		t.Errorf("header alone: %v", err)
	}
	many := make([]record.Result, 1000)
	for i := range many {
		many[i] = good()
	}
	if err := record.Write(full{}, many); !errors.Is(err, errors.ErrUnsupported) {
		t.Errorf("many: %v", err)
	}
}

// What only the ground knows is written as a summary.
func TestWriteSummarizesGround(t *testing.T) {
	ground, err := course.New([]float64{0, 4000, 10_000}, []float64{100, 300, 150}, course.Options{Smoothing: course.AsGiven})
	if err != nil {
		t.Fatal(err)
	}
	r, want := good(), good()
	r.Distance, r.Ascent, r.Descent, r.Ground = 0, 0, 0, ground
	want.Ascent, want.Descent = 200, 150
	checkRoundTrip(t, []record.Result{r}, []record.Result{want})
	r.GPX, want.GPX = "a.gpx", "a.gpx"
	want.Distance, want.Ascent, want.Descent = 0, 0, 0
	checkRoundTrip(t, []record.Result{r}, []record.Result{want})
}
