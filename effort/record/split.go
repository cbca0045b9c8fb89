package record

import (
	"fmt"
	"io"
	"math"

	"isoeffort.example/internal/csvtext"
)

// A Split is a time on the way.
type Split struct {
	Distance float64 // from the start, m
	Elapsed  float64 // since the runner's own start, s
	Stopped  float64 // of that standing still, where known, s; no file has it

	// Ascent and Descent are metres climbed and lost from the start to there; NaN where they
	// are not known.
	Ascent, Descent float64

	Line int // in the splits file, from 1; 0 if not from one
}

// splitFault wants splits in order, and before the finish.
func (r Result) splitFault() error {
	before := Split{}
	whole, up, down := r.extent()
	for i, s := range r.Splits {
		switch {
		case !(s.Distance > before.Distance) || whole > 0 && s.Distance >= whole:
			return fmt.Errorf("%w %d at %g m: not between %g m and the finish at %g m", ErrSplit, i+1, s.Distance, before.Distance, whole)
		case !(s.Elapsed > before.Elapsed && s.Elapsed < r.Time.Seconds()):
			return fmt.Errorf("%w %d at %g m: %g s is not between %g s and the finish at %g s", ErrSplit, i+1, s.Distance, s.Elapsed, before.Elapsed, r.Time.Seconds())
		case !(s.Stopped >= before.Stopped && s.Stopped-before.Stopped < s.Elapsed-before.Elapsed):
			return fmt.Errorf("%w %d at %g m: stopped for %g s by then, %g s before", ErrSplit, i+1, s.Distance, s.Stopped, before.Stopped)
		case s.Stopped > 0 && !(s.Stopped <= r.Stopped.Seconds()+1e-6 && r.Time.Seconds()-s.Elapsed > r.Stopped.Seconds()-s.Stopped):
			return fmt.Errorf("%w %d at %g m: stopped for %g s by then, %g s in all", ErrSplit, i+1, s.Distance, s.Stopped, r.Stopped.Seconds())
		case s.Ascent < before.Ascent || s.Ascent > up+1 || s.Descent < before.Descent || s.Descent > down+1:
			return fmt.Errorf("%w %d at %g m: %g m up and %g m down so far, of %g and %g", ErrSplit, i+1, s.Distance, s.Ascent, s.Descent, up, down)
		case math.IsInf(s.Ascent, 0) || math.IsInf(s.Descent, 0) || math.IsInf(s.Elapsed, 0):
			return fmt.Errorf("%w %d at %g m: not finite", ErrSplit, i+1, s.Distance)
		}
		if !math.IsNaN(s.Ascent) {
			before.Ascent = s.Ascent
		}
		if !math.IsNaN(s.Descent) {
			before.Descent = s.Descent
		}
		before.Distance, before.Elapsed, before.Stopped = s.Distance, s.Elapsed, s.Stopped
	}
	return nil
}

// columns of a splits file.
const (
	splitRunner column = iota
	splitRace
	splitDistance
	splitAscent
	splitDescent
	splitElapsed
)

var splitForm = form{
	[]string{"runner", "race", "distance_m", "ascent_m", "descent_m", "elapsed_s"},
	[]column{splitRunner, splitRace, splitDistance, splitElapsed},
}

// A RunnerRace names one runner's race.
type RunnerRace struct{ Runner, Race string }

// ReadSplits reads a splits file, in the CSV that results files are in, with the columns
//
//	runner, race  as in the results file
//	distance_m    from the start, m
//	elapsed_s     since the start: seconds, or H:MM:SS
//	ascent_m      metres climbed so far; may be empty or missing
//	descent_m     metres lost so far; likewise
//
// and returns the splits of each race, in the order of the file. The errors are as Read's.
func ReadSplits(r io.Reader, o Options) (map[RunnerRace][]Split, []string, error) {
	splits := map[RunnerRace][]Split{}
	warnings, err := readForm(r, o, splitForm, func(t *table) error {
		s, err := t.split()
		if err == nil {
			key := RunnerRace{t.text(splitRunner), t.text(splitRace)}
			splits[key] = append(splits[key], s)
		}
		return err
	})
	return splits, warnings, err
}

// split reads the current row.
func (t *table) split() (s Split, err error) {
	s.Line = t.line
	if s.Distance, err = csvtext.Number(t.layout.cell(t.row, splitDistance), t.decimalComma()); err != nil {
		return s, fmt.Errorf("%w: %w", ErrDistance, err)
	}
	if !(s.Distance > 0 && s.Distance <= MaxDistance) {
		return s, fmt.Errorf("%w: %g m is not within 0 to %d km", ErrDistance, s.Distance, MaxDistance/1000)
	}
	elapsed, err := parseTime(t.layout.cell(t.row, splitElapsed), t.decimalComma())
	if err != nil {
		return s, err
	}
	if elapsed <= 0 || elapsed > MaxTime {
		return s, fmt.Errorf("%w: %s", ErrTime, clock(elapsed))
	}
	s.Elapsed = elapsed.Seconds()
	for c, v := range map[column]*float64{splitAscent: &s.Ascent, splitDescent: &s.Descent} {
		*v = math.NaN()
		field := t.layout.cell(t.row, c)
		if field == "" {
			continue
		}
		if *v, err = csvtext.Number(field, t.decimalComma()); err != nil || *v < 0 {
			return s, fmt.Errorf("%w: %s is not 0 or more", ErrAscent, quote(field))
		}
	}
	return s, nil
}

// AttachSplits gives results their splits, by runner and race, those at and after the
// finish left out. It returns a warning for each result whose splits then fail its Check, which
// are left out, and one for splits that belong to no result.
func AttachSplits(results []Result, splits map[RunnerRace][]Split) (warnings []string) {
	used := map[RunnerRace]bool{}
	for i := range results {
		r := &results[i]
		key := RunnerRace{r.Runner, r.Race}
		used[key] = true
		r.Splits = nil
		whole, _, _ := r.extent()
		for _, s := range splits[key] {
			if whole == 0 || s.Distance < whole-finishSlack {
				r.Splits = append(r.Splits, s)
			}
		}
		if err := r.splitFault(); err != nil {
			place := Error{Line: r.Line, Err: fmt.Errorf("splits are not used: %w", err)}
			warnings = append(warnings, place.Error())
			r.Splits = nil
		}
	}
	orphans := 0
	for key := range splits {
		if !used[key] {
			orphans++
		}
	}
	if orphans > 0 {
		warnings = append(warnings, fmt.Sprintf("splits of %d races belong to no result", orphans))
	}
	return warnings
}

// finishSlack is how near the finish, in metres, a split is the finish.
const finishSlack = 1

// A Profile is the heights of a race's course, distances ascending.
type Profile struct{ Distance, Elevation []float64 }

// columns of a profiles file.
const (
	profileRace column = iota
	profileDistance
	profileElevation
)

var profileForm = form{
	[]string{"race", "distance_m", "elevation_m"},
	[]column{profileRace, profileDistance, profileElevation},
}

// ReadProfiles reads a profiles file, in the CSV that results files are in, with the
// columns race, distance_m and elevation_m, all in metres, distances ascending within a
// race. The errors are as Read's.
func ReadProfiles(r io.Reader, o Options) (map[string]Profile, []string, error) {
	profiles := map[string]Profile{}
	warnings, err := readForm(r, o, profileForm, func(t *table) error {
		race := t.text(profileRace)
		p := profiles[race]
		var at [2]float64
		for i, c := range []column{profileDistance, profileElevation} {
			v, err := csvtext.Number(t.layout.cell(t.row, c), t.decimalComma())
			if err != nil {
				return fmt.Errorf("%w: %w", ErrDistance, err)
			}
			at[i] = v
		}
		if n := len(p.Distance); n > 0 && at[0] <= p.Distance[n-1] {
			return fmt.Errorf("%w: %g m does not come after %g m", ErrDistance, at[0], p.Distance[n-1])
		}
		p.Distance, p.Elevation = append(p.Distance, at[0]), append(p.Elevation, at[1])
		profiles[race] = p
		return nil
	})
	return profiles, warnings, err
}

// readForm reads a file of a form row by row.
func readForm(r io.Reader, o Options, f form, row func(*table) error) (warnings []string, err error) {
	text, line, err := readText(r)
	if err != nil {
		return nil, &Error{File: o.File, Line: line, Err: err}
	}
	t := newTable(text, o)
	if err := t.readHeader(f); err != nil {
		return nil, err
	}
	var faults Errors
	for t.next() {
		fault := t.rowFault()
		if fault == nil {
			if err := row(t); err != nil {
				fault = t.fault(err)
			}
		}
		switch {
		case fault == nil:
		case !o.Every:
			return nil, fault
		default:
			faults = append(faults, fault)
		}
	}
	if len(faults) > 0 {
		return t.warnings, faults
	}
	return t.warnings, nil
}
