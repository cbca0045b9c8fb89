package invented

import (
	"math/rand/v2"
	"reflect"
	"testing"

	"isoeffort.example/effort/record"
)

// A field is possible, the same from the same source, and holds back one result of each
// runner, the last.
func TestMake(t *testing.T) {
	t.Parallel()
	f := Field{Runners: 50, Courses: 30, Results: 500, SplitCourses: 3}
	results, truth := f.Make(rand.New(rand.NewPCG(1, 2)))
	again, _ := f.Make(rand.New(rand.NewPCG(1, 2)))
	if !reflect.DeepEqual(results, again) {
		t.Error("the same source gives another field")
	}
	last := map[string]record.Result{}
	for _, r := range results {
		if err := r.Check(); err != nil {
			t.Error(err)
		}
		if before, ok := last[r.Runner]; ok && (before.Role == record.Predict || before.Date.After(r.Date)) {
			t.Errorf("%s: %v after %v", r.Runner, r.Date, before.Date)
		}
		last[r.Runner] = r
	}
	for name, r := range last {
		if r.Role != record.Predict {
			t.Errorf("the last result of %s is not held back", name)
		}
	}
	if len(last) != len(truth.Athlete) || len(results) < 450 {
		t.Errorf("%d runners of %d, %d results", len(last), len(truth.Athlete), len(results))
	}
}
