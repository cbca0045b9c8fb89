package brief_test

import (
	"encoding/json"
	"math"
	"slices"
	"testing"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/plan"
	"isoeffort.example/plan/brief"
)

// Cautions by what the race is: those about eating not for half an hour, those about sleep
// and driving where the night is lost, about the weather in one of two ways.
func TestCautions(t *testing.T) {
	t.Parallel()
	ids := func(c *course.Course, r plan.Race) (ids []string) {
		for _, c := range made(t, even(t, c, 12, r), brief.Options{}).Cautions {
			ids = append(ids, c.ID)
		}
		return ids
	}
	always := []string{"first", "stop", "illness", "doctor", "drink", "painkillers", "chase"}
	day, err := effort.NewDay(nil, effort.Night{})
	if err != nil {
		t.Fatal(err)
	}
	evening := time.Date(2026, 3, 1, 19, 0, 0, 0, time.UTC)
	for name, c := range map[string]struct {
		course  *course.Course
		race    plan.Race
		with    []string
		without []string
	}{
		"10 km":              {shortRace(t), plan.Race{}, []string{"weather"}, []string{"carbohydrate", "night", "sleep", "driving", "heat-known"}},
		"marathon":           {flatCity(t), plan.Race{}, []string{"carbohydrate", "weather"}, []string{"night", "driving"}},
		"marathon, weather":  {flatCity(t), plan.Race{Surroundings: effort.Surroundings{Day: day}}, []string{"heat-known"}, []string{"weather"}},
		"marathon, evening":  {flatCity(t), plan.Race{Start: evening}, []string{"night", "driving"}, []string{"sleep"}},
		"170 km, no clock":   {mountain(t), plan.Race{Step: 100}, []string{"night", "driving", "carbohydrate", "sleep"}, nil},
		"170 km, with clock": {mountain(t), plan.Race{Step: 100, Start: evening}, []string{"night", "driving", "carbohydrate", "sleep"}, nil},
	} {
		got := ids(c.course, c.race)
		for _, id := range slices.Concat(always, c.with) {
			if !slices.Contains(got, id) {
				t.Errorf("%s: no caution %q in %v", name, id, got)
			}
		}
		for _, id := range c.without {
			if slices.Contains(got, id) {
				t.Errorf("%s: caution %q", name, id)
			}
		}
	}
}

// Kinds are written to JSON by name and read back, and every line's numbers are there.
func TestJSON(t *testing.T) {
	t.Parallel()
	b := made(t, even(t, rollingLong(t), 12, plan.Race{StartDelay: 5 * time.Minute}), brief.Options{})
	data, err := json.Marshal(b)
	if err != nil {
		t.Fatal(err)
	}
	var back struct {
		Opening []struct {
			Kind brief.Kind
			Took float64 `json:"took_s"`
		}
		Sections []struct {
			Arrival float64 `json:"arrival_s"`
			Lines   []struct {
				Kind brief.Kind
				Ask  string
			}
		}
	}
	if err := json.Unmarshal(data, &back); err != nil {
		t.Fatal(err)
	}
	if math.Abs(back.Opening[0].Took-b.Opening[0].Took.Seconds()) > 1e-3 {
		t.Errorf("gun time %g s, want %v", back.Opening[0].Took, b.Opening[0].Took)
	}
	for i, s := range b.Sections {
		if math.Abs(back.Sections[i].Arrival-s.Arrival.Seconds()) > 1e-3 {
			t.Errorf("arrival %g s, want %v", back.Sections[i].Arrival, s.Arrival)
		}
		for j, l := range s.Lines {
			if got := back.Sections[i].Lines[j]; got.Kind != l.Kind || l.Kind == brief.Check && got.Ask != l.Ask.String() {
				t.Errorf("%v of %v", got, l.Kind)
			}
		}
	}
	var kind brief.Kind
	if kind.UnmarshalText([]byte("gossip")) == nil {
		t.Error("a kind of line called gossip was read")
	}
}
