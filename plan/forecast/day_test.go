package forecast_test

import (
	"encoding/json"
	"math"
	"reflect"
	"strings"
	"testing"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/plan"
	"isoeffort.example/plan/forecast"
)

// The day of a forecast is that of a plan: with an even effort and no spread both take the same time,
// to the 0.2 % that Of promises, in the heat of an afternoon, high up, with delay and halts.
func TestSameDayAsPlan(t *testing.T) {
	t.Parallel()
	c := profile(t, 45_000, func(x float64) float64 { return 1500 + hills(x) },
		course.Landmark{Name: "hut", Distance: 20_000, Kind: course.Station})
	day, err := effort.NewDay([]effort.Hour{
		{Clock: 8 * time.Hour, Temperature: 12, Humidity: 60},
		{Clock: 14 * time.Hour, Temperature: 31, Humidity: 60},
	}, effort.Night{})
	if err != nil {
		t.Fatal(err)
	}
	r := plan.Race{
		Start: time.Date(2026, 6, 6, 9, 0, 0, 0, time.UTC), StartDelay: 10 * time.Minute,
		Stations: plan.Stations{Each: 20 * time.Minute},
		HoldBack: plan.Off, ShortestBout: plan.Off,
		Surroundings: effort.Surroundings{
			Day: day, Heat: effort.Heat{Loss: effort.HeatLoss, Growth: 1},
			Altitude: effort.Altitude{Loss: effort.AltitudeLoss},
		},
	}
	a := effort.Usual(12)
	p, err := plan.Even(c, a, r)
	if err != nil {
		t.Fatal(err)
	}
	f := of(t, c, forecast.Given([]forecast.Draw{{Athlete: a}}), r, forecast.Options{Draws: 1})
	for _, place := range f.Places {
		want, got := p.Elapsed(place.Distance).Seconds(), place.Times[0].Seconds()
		if math.Abs(got-want) > 0.002*want {
			t.Errorf("%s: %.0f s, the plan %.0f s", place.Name, got, want)
		}
	}
	bare := of(t, c, forecast.Given([]forecast.Draw{{Athlete: a}}), plan.Race{}, forecast.Options{Draws: 1})
	if gain := f.Finish().Times[0] - bare.Finish().Times[0] - 30*time.Minute; gain < 10*time.Minute {
		t.Errorf("heat and altitude cost %v: the test does not see them", gain)
	}
}

func TestText(t *testing.T) {
	t.Parallel()
	c := profile(t, 30_000, hills, course.Landmark{Name: strings.Repeat("long name ", 9), Distance: 9000})
	r := plan.Race{Goal: 90 * time.Minute, Cutoffs: []plan.Cutoff{{Name: strings.Repeat("é", 70), Distance: 9000, Time: 45 * time.Minute}}}
	o := forecast.Options{Draws: 50, Quantiles: []float64{0.01, 0.1, 0.2, 0.3, 0.5, 0.7, 0.9, 0.99}}
	f := of(t, c, drawer(t, effort.Usual(9), prior(), forecast.FieldTilt()), r, o)
	var b strings.Builder
	if err := forecast.Text(&b, f); err != nil {
		t.Fatal(err)
	}
	for _, line := range strings.Split(b.String(), "\n") {
		if n := len([]rune(line)); n > 80 {
			t.Errorf("%d columns: %q", n, line)
		}
	}
	for _, want := range []string{"FORECAST, no plan", "NOT ADVISED", "98 % of such days", "medical team", "< 1 %"} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("no %q in:\n%s", want, b.String())
		}
	}
}

func TestJSON(t *testing.T) {
	t.Parallel()
	c := profile(t, 12_000, hills, marked(12_000, 5000)...)
	r := plan.Race{Goal: time.Hour, Cutoffs: []plan.Cutoff{{Name: "gate", Distance: 5000, Time: 24 * time.Minute}}}
	f := of(t, c, drawer(t, effort.Usual(12), prior(), forecast.FieldTilt()), r, forecast.Options{Draws: 50})
	text, err := json.Marshal(f)
	if err != nil {
		t.Fatal(err)
	}
	var back forecast.Forecast
	if err := json.Unmarshal(text, &back); err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(*f, back) {
		t.Errorf("%s", text)
	}
}
