package follow_test

import (
	"errors"
	"math"
	"strings"
	"testing"
	"time"

	"isoeffort.example/effort"
	"isoeffort.example/plan"
	"isoeffort.example/plan/follow"
)

// What cannot be is refused, with the passage that is to blame.
func TestPassagesRefused(t *testing.T) {
	t.Parallel()
	p := even(t, profile(t, 20_000, rolling), effort.Usual(12), plan.Race{StartDelay: 2 * time.Minute, Step: 50})
	at := func(km float64, minutes int) follow.Passage {
		return follow.Passage{Distance: 1000 * km, Gun: time.Duration(minutes) * time.Minute}
	}
	with := func(a follow.Passage, change func(*follow.Passage)) follow.Passage { change(&a); return a }
	for name, c := range map[string]struct {
		passages []follow.Passage
		cause    error
		says     string
	}{
		"off the course":      {[]follow.Passage{at(5, 40), at(20.001, 200)}, follow.ErrPassage, "passage 2"},
		"before the start":    {[]follow.Passage{at(-1, 40)}, follow.ErrPassage, "passage 1"},
		"no place":            {[]follow.Passage{at(math.NaN(), 40)}, follow.ErrPassage, "passage 1"},
		"endless":             {[]follow.Passage{at(math.Inf(1), 40)}, follow.ErrPassage, "passage 1"},
		"before the gun":      {[]follow.Passage{at(5, -1)}, follow.ErrTime, "passage 1"},
		"no time":             {[]follow.Passage{at(5, 0)}, follow.ErrTime, "passage 1"},
		"within the delay":    {[]follow.Passage{at(5, 1)}, follow.ErrTime, "nobody"},
		"weeks":               {[]follow.Passage{at(5, 100_000)}, follow.ErrTime, "passage 1"},
		"times out of order":  {[]follow.Passage{at(5, 60), at(8, 50)}, follow.ErrOrder, "passage 2"},
		"places out of order": {[]follow.Passage{at(8, 60), at(5, 80)}, follow.ErrOrder, "passage 2"},
		"twice":               {[]follow.Passage{at(5, 60), at(5, 60)}, follow.ErrOrder, "passage 2"},
		"twice, later":        {[]follow.Passage{at(5, 60), at(5, 70)}, follow.ErrOrder, "passage 2"},
		"left before arrival": {[]follow.Passage{with(at(5, 60), func(a *follow.Passage) { a.Leaving = true }), at(5, 70)}, follow.ErrOrder, "passage 2"},
		"too fast":            {[]follow.Passage{at(5, 40), at(15, 50)}, follow.ErrTime, "nobody"},
		"halted too long":     {[]follow.Passage{with(at(5, 60), func(a *follow.Passage) { a.Halted = time.Hour })}, follow.ErrTime, "nobody"},
		"halted below 0":      {[]follow.Passage{with(at(5, 60), func(a *follow.Passage) { a.Halted = -1 })}, follow.ErrTime, "halted"},
		"felt below 0":        {[]follow.Passage{with(at(5, 60), func(a *follow.Passage) { a.Felt = -0.5 })}, follow.ErrPassage, "felt"},
		"felt not a number":   {[]follow.Passage{with(at(5, 60), func(a *follow.Passage) { a.Felt = math.NaN() })}, follow.ErrPassage, "felt"},
		"clock without start": {[]follow.Passage{{Distance: 5000, Clock: gun}}, follow.ErrTime, "start time"},
	} {
		if _, err := follow.From(p, c.passages...); !errors.Is(err, c.cause) || !strings.HasPrefix(err.Error(), "follow: passage ") || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v", name, err)
		}
		if _, err := follow.Review(p, follow.Actual{Splits: c.passages}, follow.DebriefOptions{}); !errors.Is(err, c.cause) {
			t.Errorf("%s, reviewed: %v", name, err)
		}
	}
	if _, err := follow.From(nil); !errors.Is(err, follow.ErrAim) {
		t.Errorf("no plan: %v", err)
	}
}

// Clock times are gun times by the race's start.
func TestClock(t *testing.T) {
	t.Parallel()
	p := even(t, profile(t, 20_000, rolling), effort.Usual(12), plan.Race{Start: gun, Step: 50})
	a := from(t, p, follow.Passage{Distance: 9000, Clock: gun.Add(time.Hour)})
	b := from(t, p, follow.Passage{Distance: 9000, Gun: time.Hour})
	if a.Gun != time.Hour || a.State != b.State || !a.Clock(a.Gun).Equal(gun.Add(time.Hour)) {
		t.Errorf("%+v, %+v", a.State, b.State)
	}
}

func TestAimsRefused(t *testing.T) {
	t.Parallel()
	p := even(t, profile(t, 20_000, rolling), effort.Usual(12), plan.Race{Step: 50})
	s := from(t, p)
	for _, o := range []follow.Options{{Aim: -1}, {Aim: 9}, {Aim: follow.Choose}, {Aim: follow.Choose, Intensity: math.NaN()}, {Aim: follow.MakeCutoffs}, {InHand: -1}, {InHand: 2000 * time.Hour}} {
		if _, err := s.Rest(o); !errors.Is(err, follow.ErrAim) {
			t.Errorf("%+v: %v", o, err)
		}
	}
}

// A recording that cannot be is refused, with the fix that is to blame.
func TestRecordingsRefused(t *testing.T) {
	t.Parallel()
	p := even(t, profile(t, 20_000, rolling), effort.Usual(12), plan.Race{Step: 50})
	good := recorded(p, p.Traverse(), asPlanned)
	change := func(f func(*follow.Actual)) follow.Actual {
		a := follow.Actual{Gun: good.Gun, Fixes: append([]follow.Fix(nil), good.Fixes...)}
		f(&a)
		return a
	}
	for name, c := range map[string]struct {
		actual follow.Actual
		cause  error
		says   string
	}{
		"nothing":         {follow.Actual{}, follow.ErrActual, "nothing"},
		"both":            {change(func(a *follow.Actual) { a.Splits = []follow.Passage{planned(p, 20_000, false)} }), follow.ErrActual, "give one"},
		"few fixes":       {change(func(a *follow.Actual) { a.Fixes = a.Fixes[:5] }), follow.ErrActual, "5 fixes"},
		"no number":       {change(func(a *follow.Actual) { a.Fixes[7].Distance = math.NaN() }), follow.ErrActual, "fix 8"},
		"no time":         {change(func(a *follow.Actual) { a.Fixes[7].Time = time.Time{} }), follow.ErrActual, "fix 8"},
		"back in place":   {change(func(a *follow.Actual) { a.Fixes[7].Distance = 20 }), follow.ErrOrder, "fix 8"},
		"back in time":    {change(func(a *follow.Actual) { a.Fixes[7].Time = gun }), follow.ErrOrder, "fix 8"},
		"half the course": {change(func(a *follow.Actual) { a.Fixes = a.Fixes[:len(a.Fixes)/2] }), follow.ErrActual, "km long"},
		"before the gun":  {change(func(a *follow.Actual) { a.Gun = gun.Add(time.Hour) }), follow.ErrTime, "before the gun"},
		"another day":     {change(func(a *follow.Actual) { a.Gun = gun.Add(-365 * 24 * time.Hour) }), follow.ErrTime, "another day"},
		"standing still": {change(func(a *follow.Actual) {
			for i := range a.Fixes {
				a.Fixes[i].Distance = 0
			}
		}), follow.ErrActual, "km long"},
		"not finished": {follow.Actual{Splits: []follow.Passage{planned(p, 10_000, false)}}, follow.ErrActual, "last split"},
	} {
		if _, err := follow.Review(p, c.actual, follow.DebriefOptions{}); !errors.Is(err, c.cause) || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, err := follow.Review(p, good, follow.DebriefOptions{Every: 5}); !errors.Is(err, follow.ErrAim) {
		t.Errorf("sections of 5 m: %v", err)
	}
}
