package fuel_test

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"
	"unicode/utf8"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/plan"
	"isoeffort.example/plan/fuel"
)

func TestTextAndJSON(t *testing.T) {
	t.Parallel()
	name := strings.Repeat("Ä", 90)
	p := planned(t, 60_000, effort.Usual(12), plan.Race{}, course.Landmark{Name: name, Distance: 30_000, Kind: course.Station})
	got := table(t, p, fuel.Options{MaxCarry: 40, MaxFluid: 100})
	var b bytes.Buffer
	if err := got.WriteText(&b, fuel.Imperial); err != nil {
		t.Fatal(err)
	}
	for line := range strings.Lines(b.String()) {
		if n := utf8.RuneCountInString(strings.TrimSuffix(line, "\n")); n > 80 {
			t.Errorf("%d columns: %s", n, line)
		}
	}
	for _, want := range []string{"Drink to thirst", "37.3 mi", " oz, by thirst", "left out", "ask a doctor"} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("without %q:\n%s", want, b.String())
		}
	}
	j, err := json.Marshal(got)
	if err != nil || !bytes.Contains(j, []byte(`"pick_up":`)) || !bytes.Contains(j, []byte(`"id":"overdrinking"`)) {
		t.Errorf("%v %s", err, j)
	}
}
