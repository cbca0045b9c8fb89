package field

import (
	"fmt"
	"strings"
	"time"

	"isoeffort.example/effort"
	"isoeffort.example/internal/csvtext"
	"isoeffort.example/plan"
)

// A Runner is an athlete of the field, and in what their race differs from that of the
// field.
type Runner struct {
	Name    string // empty only through the API
	Athlete effort.Athlete
	Basis   effort.Basis // what the numbers rest on; the zero value takes them as known

	// Race, if not nil, is the runner's own in the place of the field's.
	Race *plan.Race

	// Goal and Share replace every aim of the race: a finish time, net if Net is set, or a
	// share of the effort budget. Both 0 leave the aim to the race; a Goal of plan.Off
	// plans the fastest time.
	Goal  time.Duration
	Net   bool
	Share float64

	// StartDelay and Wave replace those of the race. 0 leaves them as the race has them;
	// plan.Off is none.
	StartDelay, Wave time.Duration

	Results string // path of a results file to fit the athlete to: for the caller
	Note    string
}

// RaceOf returns the race that the runner runs, given the field's: with the runner's aim,
// start and basis. What makes no sense in it is for plan.Even to refuse.
func (r Runner) RaceOf(race plan.Race) plan.Race {
	if r.Race != nil {
		race = *r.Race
	}
	race.Basis = r.Basis
	if r.Goal != 0 || r.Share != 0 {
		race = withoutAim(race)
		race.Goal, race.Net, race.Share = max(r.Goal, 0), r.Net, r.Share
		if r.Goal < 0 && r.Goal != plan.Off {
			race.Goal = r.Goal
		}
	}
	return r.startOf(race)
}

// startOf is the race with the runner's own start.
func (r Runner) startOf(race plan.Race) plan.Race {
	race.StartDelay = replaced(race.StartDelay, r.StartDelay)
	wave := race.Wave
	race.Wave = replaced(race.Wave, r.Wave)
	if !race.Start.IsZero() { // which is the own gun's
		race.Start = race.Start.Add(race.Wave - wave)
	}
	return race
}

// withoutAim is the race for the fastest time.
func withoutAim(race plan.Race) plan.Race {
	race.Goal, race.Share, race.Standards, race.MakeCutoffs = 0, 0, nil, false
	return race
}

// replaced is a duration of the race, or the runner's own.
func replaced(race, own time.Duration) time.Duration {
	switch own {
	case 0:
		return race
	case plan.Off:
		return 0
	}
	return own
}

// An Entry is a place in the field: a runner, or why there is none.
type Entry struct {
	Runner Runner
	Line   int   // of the runners file, from 1; 0 if not from one
	Err    error // why the entry was refused; it then takes no part
}

// Entries returns the entries of runners that come from no file.
func Entries(runners ...Runner) []Entry {
	entries := make([]Entry, len(runners))
	for i, r := range runners {
		entries[i].Runner = r
	}
	return entries
}

// names finds names that stand twice. Two are the same whatever the case of their letters
// and the width of the space in them.
type names map[string]int

// take notes the name of entry i, or returns the entry before that has it.
func (n names) take(name string, i int) (before int, twice bool) {
	key := strings.ToLower(strings.Join(strings.Fields(name), " "))
	if before, twice = n[key]; !twice {
		n[key] = i
	}
	return before, twice
}

// refused returns for each entry why it takes no part, nil for those that do: its own
// error, or a name that an entry before has. Runners without a name are not compared.
func refused(entries []Entry, file string) []error {
	out, seen := make([]error, len(entries)), names{}
	for i, e := range entries {
		switch {
		case e.Err != nil:
			out[i] = e.Err
		case e.Runner.Name != "":
			if before, twice := seen.take(e.Runner.Name, i); twice {
				out[i] = e.fault(i, file, fmt.Errorf("%w: it is that of %s", ErrDuplicate, place(entries[before].Line, before)))
			}
		}
	}
	return out
}

// place says where an entry stands.
func place(line, i int) string {
	if line > 0 {
		return fmt.Sprintf("line %d", line)
	}
	return fmt.Sprintf("runner %d", i+1)
}

// fault places a cause on entry i, counted from 0.
func (e Entry) fault(i int, file string, cause error) *Error {
	who := csvtext.Quote(e.Runner.Name)
	if e.Line == 0 {
		who = fmt.Sprintf("runner %d, %s", i+1, who)
	}
	return &Error{File: file, Line: e.Line, Err: fmt.Errorf("%s: %w", who, cause)}
}
