package chart_test

import (
	"errors"
	"fmt"
	"math"
	"os/exec"
	"slices"
	"strings"
	"testing"
	"time"

	"gonum.org/v1/plot/vg/recorder"

	"isoeffort.example/effort"
	"isoeffort.example/plan"
	"isoeffort.example/plan/chart"
)

func TestErrors(t *testing.T) {
	t.Parallel()
	p := planFor(t, short(t), runners[0])
	good := forecast(p)
	nan, hour := math.NaN(), time.Hour
	with := func(change func(f *chart.Forecast)) chart.Forecast {
		f := forecast(p)
		change(&f)
		return f
	}
	profile := func(p *plan.Plan, o chart.Options) error { _, err := chart.Profile(p, o); return err }
	against := func(list ...chart.Passage) error { _, err := chart.Against(p, list, chart.Options{}); return err }
	fan := func(change func(f *chart.Forecast)) error {
		_, err := chart.Fan(with(change), p, chart.Options{})
		return err
	}
	long := chart.Options{Height: chart.MinHeight, Width: chart.MinWidth, Words: chart.Words{Caution: strings.Repeat("Take care. ", 300)}}
	for name, c := range map[string]struct{ got, want error }{
		"no plan":             {profile(nil, chart.Options{}), chart.ErrPlan},
		"empty plan":          {profile(&plan.Plan{}, chart.Options{}), chart.ErrPlan},
		"course without plan": {profile(&plan.Plan{Course: p.Course}, chart.Options{}), chart.ErrPlan},
		"narrow":              {profile(p, chart.Options{Width: 20}), chart.ErrOption},
		"negative width":      {profile(p, chart.Options{Width: -210}), chart.ErrOption},
		"width NaN":           {profile(p, chart.Options{Width: nan}), chart.ErrOption},
		"height endless":      {profile(p, chart.Options{Height: math.Inf(1)}), chart.ErrOption},
		"no room":             {profile(p, long), chart.ErrOption},
		"no passage":          {against(), chart.ErrPassage},
		"passage NaN":         {against(chart.Passage{Distance: nan, Time: hour}), chart.ErrPassage},
		"before the start":    {against(chart.Passage{Distance: -5, Time: hour}), chart.ErrPassage},
		"off the course":      {against(chart.Passage{Distance: 10_100, Time: hour}), chart.ErrPassage},
		"before the gun":      {against(chart.Passage{Distance: 100, Time: -1}), chart.ErrPassage},
		"no race so long":     {against(chart.Passage{Distance: 100, Time: math.MaxInt64}), chart.ErrPassage},
		"twice there":         {against(chart.Passage{Distance: 100, Time: 1}, chart.Passage{Distance: 100, Time: 2}), chart.ErrPassage},
		"back in time":        {against(chart.Passage{Distance: 100, Time: 2}, chart.Passage{Distance: 200, Time: 1}), chart.ErrPassage},
		"one quantile":        {fan(func(f *chart.Forecast) { f.Quantiles = f.Quantiles[:1] }), chart.ErrFan},
		"no point":            {fan(func(f *chart.Forecast) { f.Points = nil }), chart.ErrFan},
		"quantile NaN":        {fan(func(f *chart.Forecast) { f.Quantiles[2] = nan }), chart.ErrFan},
		"quantile 1":          {fan(func(f *chart.Forecast) { f.Quantiles[4] = 1 }), chart.ErrFan},
		"quantiles back":      {fan(func(f *chart.Forecast) { f.Quantiles[1] = 0.01 }), chart.ErrFan},
		"a time too few":      {fan(func(f *chart.Forecast) { f.Points[0].Times = f.Points[0].Times[1:] }), chart.ErrFan},
		"times back":          {fan(func(f *chart.Forecast) { f.Points[0].Times[1] = 0 }), chart.ErrFan},
		"point NaN":           {fan(func(f *chart.Forecast) { f.Points[0].Distance = nan }), chart.ErrFan},
		"points back":         {fan(func(f *chart.Forecast) { f.Points[1].Distance = 5 }), chart.ErrFan},
		"point off course":    {fan(func(f *chart.Forecast) { f.Points[1].Distance = 1e9 }), chart.ErrFan},
		"fan, empty plan":     {func() error { _, err := chart.Fan(good, &plan.Plan{}, chart.Options{}); return err }(), chart.ErrPlan},
		"alone, endless": {func() error {
			_, err := chart.Fan(with(func(f *chart.Forecast) { f.Points[1].Distance = math.Inf(1) }), nil, chart.Options{})
			return err
		}(), chart.ErrFan},
	} {
		if !errors.Is(c.got, c.want) {
			t.Errorf("%s: %v, want %v", name, c.got, c.want)
		}
	}
}

// What a race can bring is drawn: one passage far behind, all at one time, a hollow plan.
func TestExtremes(t *testing.T) {
	t.Parallel()
	p := planFor(t, short(t), runners[0])
	for _, list := range [][]chart.Passage{
		{{Distance: 10_000.9, Time: 900 * time.Hour}},
		{{Distance: 0, Time: time.Minute}, {Distance: 1, Time: time.Hour}},
		{{Distance: 0, Time: 0}},
	} {
		f, err := chart.Against(p, list, chart.Options{})
		if err != nil {
			t.Fatal(err)
		}
		checkLaws(t, f)
	}
	same := []time.Duration{time.Hour, time.Hour}
	f, err := chart.Fan(chart.Forecast{Quantiles: []float64{0.1, 0.97531}, Points: []chart.FanPoint{{Distance: 1e-3, Times: same}}}, nil, chart.Options{})
	if err != nil {
		t.Fatal(err)
	}
	checkLaws(t, f)
}

// Draw gives another canvas the same texts as SVG.
func TestDraw(t *testing.T) {
	t.Parallel()
	f, err := chart.Profile(planFor(t, rolling(t), runners[0]), chart.Options{})
	if err != nil {
		t.Fatal(err)
	}
	var c recorder.Canvas
	f.Draw(&c)
	var got, want []string
	for _, a := range c.Actions {
		if s, ok := a.(*recorder.FillString); ok {
			got = append(got, s.String)
		}
	}
	for _, l := range checkLaws(t, f).labels {
		want = append(want, l.text)
	}
	if !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}

// The times on the profile are those of the plan's splits, stops and delay included.
func TestTargets(t *testing.T) {
	t.Parallel()
	p := planFor(t, rolling(t), runners[1])
	f, err := chart.Profile(p, chart.Options{Width: 420, Height: 297})
	if err != nil {
		t.Fatal(err)
	}
	texts := map[string]bool{}
	for _, l := range checkLaws(t, f).labels {
		texts[l.text] = true
	}
	for _, s := range p.Splits(plan.AtLandmarks) {
		e := s.Elapsed.Round(time.Second)
		want := fmt.Sprintf("%.1f km, %d:%02d:%02d", s.Distance/1000, int(e.Hours()), int(e.Minutes())%60, int(e.Seconds())%60)
		if s.Distance > 1 && !texts[want] {
			t.Errorf("no label says %q", want)
		}
	}
}

func TestMissedAndTooMuch(t *testing.T) {
	t.Parallel()
	s := rolling(t)
	s.cutoffs[0].Time = 3 * time.Hour
	p, err := plan.Even(s.course, effort.Usual(13), plan.Race{Goal: 9*time.Hour + 30*time.Minute, Cutoffs: s.cutoffs})
	if err != nil {
		t.Fatal(err)
	}
	f, err := chart.Profile(p, chart.Options{})
	if err != nil {
		t.Fatal(err)
	}
	all := ""
	for _, l := range checkLaws(t, f).labels {
		all += l.text + "\n"
	}
	for _, want := range []string{"misses cutoff 3:00:00", "This target is beyond the runner"} {
		if !strings.Contains(all, want) {
			t.Errorf("the figure does not say %q", want)
		}
	}
}

// Whoever imports plan or effort does not pull in the drawing.
func TestImporters(t *testing.T) {
	t.Parallel()
	out, err := exec.Command("go", "list", "-deps", "isoeffort.example/plan", "isoeffort.example/effort", "isoeffort.example/plan/write").Output()
	if err != nil {
		t.Skip("no go command: ", err)
	}
	for _, line := range strings.Fields(string(out)) {
		for _, heavy := range []string{"gonum.org/v1/plot", "golang.org/x/image", "codeberg.org/"} {
			if strings.HasPrefix(line, heavy) {
				t.Errorf("plan, effort or plan/write imports %s", line)
			}
		}
	}
}
