package chart_test

import (
	"strings"
	"testing"
	"time"

	"isoeffort.example/effort"
	"isoeffort.example/plan"
	"isoeffort.example/plan/chart"
)

// texts are all those of a figure, lines of a paragraph joined.
func texts(t *testing.T, f *chart.Figure) string {
	t.Helper()
	var all []string
	for _, l := range checkLaws(t, f).labels {
		all = append(all, l.text)
	}
	return strings.Join(all, " ")
}

func says(t *testing.T, text string, with, without []string) {
	t.Helper()
	for _, s := range with {
		if !strings.Contains(text, s) {
			t.Errorf("without %q: %s", s, text)
		}
	}
	for _, s := range without {
		if strings.Contains(text, s) {
			t.Errorf("with %q: %s", s, text)
		}
	}
}

// A cutoff of 4:00:00 that lies off the picture is named, with what is in hand there.
func TestCutoffsOffThePicture(t *testing.T) {
	t.Parallel()
	p := planFor(t, bigClimb(t), runners[2])
	f, err := chart.Fan(forecast(p), p, chart.Options{})
	if err != nil {
		t.Fatal(err)
	}
	// The plan is at Hollowhorn after 2:16:41, 1:43:19 before the cutoff.
	says(t, texts(t, f), []string{"with the time in hand: Hollowhorn (1:43)."}, []string{"above the picture"})

	slow := planFor(t, mountain(t), runners[3])
	if f, err = chart.Fan(forecast(slow), slow, chart.Options{}); err != nil {
		t.Fatal(err)
	}
	says(t, texts(t, f), []string{"the plan misses them: Garth (4:41), "}, nil)
}

// Minutes are minutes up to two hours from the plan, and hours beyond.
func TestHoursOnTheAxis(t *testing.T) {
	t.Parallel()
	p := planFor(t, short(t), runners[0])
	for _, c := range []struct {
		late          time.Duration
		with, without []string
	}{
		{100 * time.Minute, []string{"min behind the plan", "+80"}, []string{"hours"}},
		{5 * time.Hour, []string{"hours behind the plan", "+4", "+2"}, []string{"+120", "min behind"}},
		{150 * time.Minute, []string{"hours behind the plan", "+2:30"}, []string{"+150"}},
		{60 * time.Hour, []string{"hours behind the plan", "+50"}, []string{"+3000"}},
	} {
		f, err := chart.Against(p, []chart.Passage{{Distance: 10_000, Time: p.Gun + c.late}}, chart.Options{})
		if err != nil {
			t.Fatal(err)
		}
		text := texts(t, f)
		says(t, text, c.with, c.without)
	}
}

// Only a race that came to the finish has finished.
func TestFinishedOrNot(t *testing.T) {
	t.Parallel()
	p := planFor(t, short(t), runners[0])
	for _, c := range []struct {
		at            float64
		with, without []string
	}{
		{10_000, []string{"Finished 1:00:00, +"}, []string{"passage"}},
		{5_000, []string{"Latest passage: 5.0 km after 1:00:00, +"}, []string{"Finished"}},
	} {
		f, err := chart.Against(p, []chart.Passage{{Distance: c.at, Time: time.Hour}}, chart.Options{})
		if err != nil {
			t.Fatal(err)
		}
		says(t, texts(t, f), c.with, c.without)
	}
}

// A profile leaves no white at its foot: the last line stands on the margin of 14 pt. One that
// needs its whole height has it.
func TestNoWhiteFoot(t *testing.T) {
	t.Parallel()
	for _, s := range scenes(t) {
		p := planFor(t, s, runners[1])
		f, err := chart.Profile(p, chart.Options{})
		if err != nil {
			t.Fatal(err)
		}
		d, low := checkLaws(t, f), 0.0
		for _, l := range d.labels {
			low = max(low, l.foot)
		}
		if white := d.height - low; white > 14+3 {
			t.Errorf("%s: %.0f pt of white below", s.name, white)
		}
		_, high := f.Size()
		if flat := s.name == "city" || s.name == "short"; flat != (high < 120) || high > chart.DefaultHeight {
			t.Errorf("%s is %.0f mm high", s.name, high)
		}
	}
}

// Heights are never drawn more than 25 times too tall.
func TestNoNeedles(t *testing.T) {
	t.Parallel()
	s := rolling(t)
	p, err := plan.Even(s.course, effort.Usual(13), plan.Race{})
	if err != nil {
		t.Fatal(err)
	}
	f, err := chart.Profile(p, chart.Options{Height: 420})
	if err != nil {
		t.Fatal(err)
	}
	says(t, texts(t, f), []string{"Heights are drawn 25 times too tall."}, nil)
}
