package record

import (
	"fmt"
	"math"
	"strings"
	"time"
	"unicode/utf8"

	"isoeffort.example/course"
)

// A Result is one finished race of one runner.
type Result struct {
	Runner, Race, Course string

	Date            time.Time
	Distance        float64       // horizontal, m; 0 where only GPX or Ground tells
	Ascent, Descent float64       // m
	Time            time.Duration // from the start to the finish
	Stopped         time.Duration // of that standing still, where known; no file has it
	Role            Role
	GPX             string // path of a GPX file, relative to the results file
	Note            string
	Line            int // in the results file, from 1; 0 if not from one

	// Splits are the times on the way, in order, all before the finish; see AttachSplits.
	Splits []Split

	// DNF marks a race that was not finished: Distance, Ascent and Descent are those of the
	// place reached, and Time the time there. It bounds what the runner could do and says
	// nothing of how fast.
	DNF bool

	// Ground is the course that was run, where it is known. The caller sets it; nil
	// leaves the result a summary of distance, ascent and descent.
	Ground *course.Course
}

// Limits of what Check accepts.
const (
	MaxDistance = course.MaxLength // m
	MaxTime     = 1000 * time.Hour // MaxDistance at 1 km/h
	FirstYear   = 1900
	LastYear    = 2200
)

// Check returns nil if the result may be used, and otherwise an *Error with the
// result's line and the first of these causes that holds:
//
//   - ErrDistance: not finite, not positive, or above MaxDistance. 0 is accepted
//     beside a GPX or a Ground, whose length then counts.
//   - ErrAscent: ascent or descent negative or not finite, or together above the
//     distance: a mean gradient over 100 %.
//   - ErrTime: not positive, or above MaxTime, or stopped for as long or less than not at
//     all.
//   - ErrDate: its year in UTC before FirstYear or after LastYear. The zero Date is.
//   - ErrRole: none of the constants.
//   - ErrText: a text that is not UTF-8 or has a NUL in it.
//   - ErrSplit: splits that are not in order of distance and time, or not before the
//     finish.
//   - ErrTooFast: a time below FastestTime. A result whose distance is not known yet
//     is not held against that: check it again when its Ground is set.
func (r Result) Check() error {
	if err := r.fault(); err != nil {
		return &Error{Line: r.Line, Err: err}
	}
	return nil
}

// fault is the bare cause that Check gives a place.
func (r Result) fault() error {
	for _, check := range []func(Result) error{
		Result.distanceFault, Result.reliefFault, Result.timeFault, Result.textFault, Result.splitFault, Result.speedFault,
	} {
		if err := check(r); err != nil {
			return err
		}
	}
	return nil
}

func (r Result) distanceFault() error {
	switch d := r.Distance; {
	case d == 0 && (strings.TrimSpace(r.GPX) != "" || r.Ground != nil):
		return nil
	case math.IsNaN(d) || math.IsInf(d, 0):
		return fmt.Errorf("%w: %g is not a finite number", ErrDistance, d)
	case d <= 0:
		return fmt.Errorf("%w: %g m is not positive", ErrDistance, d)
	case d > MaxDistance:
		return fmt.Errorf("%w: %g km is longer than %d km", ErrDistance, d/1000, MaxDistance/1000)
	}
	return nil
}

func (r Result) reliefFault() error {
	for _, v := range []struct {
		name   string
		metres float64
	}{{"ascent", r.Ascent}, {"descent", r.Descent}} {
		if !(v.metres >= 0) || math.IsInf(v.metres, 0) {
			return fmt.Errorf("%w: %s %g m is negative or not finite", ErrAscent, v.name, v.metres)
		}
	}
	if d, up, down := r.extent(); d > 0 && up+down > d {
		return fmt.Errorf("%w: %g m up and %g m down do not fit on %g m: steeper than 100 %%", ErrAscent, up, down, d)
	}
	return nil
}

func (r Result) timeFault() error {
	switch year := r.Date.UTC().Year(); {
	case r.Time <= 0:
		return fmt.Errorf("%w: %s is not positive", ErrTime, clock(r.Time))
	case r.Time > MaxTime:
		return fmt.Errorf("%w: %s is longer than %d h", ErrTime, clock(r.Time), MaxTime/time.Hour)
	case r.Stopped < 0 || r.Stopped >= r.Time:
		return fmt.Errorf("%w: stopped for %s of %s", ErrTime, clock(r.Stopped), clock(r.Time))
	case year < FirstYear || year > LastYear:
		return fmt.Errorf("%w: the year %d is not within %d to %d", ErrDate, year, FirstYear, LastYear)
	}
	return nil
}

func (r Result) textFault() error {
	if !r.Role.known() {
		return fmt.Errorf("%w: %v", ErrRole, r.Role)
	}
	for _, s := range []string{r.Runner, r.Race, r.Course, r.GPX, r.Note} {
		if !utf8.ValidString(s) || strings.IndexByte(s, 0) >= 0 {
			return fmt.Errorf("%w: %s", ErrText, quote(s))
		}
	}
	return nil
}

func (r Result) speedFault() error {
	d, up, down := r.extent()
	if least := FastestTime(d, up, down); r.Time < least {
		return fmt.Errorf("%w: %.5g km in %s; below %s is not believed", ErrTooFast, d/1000, clock(r.Time), clock(least.Round(time.Second)))
	}
	return nil
}

// Length returns the distance in metres: the ground's where the result itself gives none,
// and 0 where neither does.
func (r Result) Length() float64 {
	d, _, _ := r.extent()
	return d
}

// extent returns the distance, ascent and descent in metres: the ground's where the
// result itself gives no distance, and 0 as the distance where neither does.
func (r Result) extent() (distance, ascent, descent float64) {
	if r.Distance == 0 && r.Ground != nil {
		relief := r.Ground.Relief()
		return r.Ground.Length(), relief.Ascent, relief.Descent
	}
	return r.Distance, r.Ascent, r.Descent
}

// slow is the mean speed in m/s below which a result is doubted: 1 km/h.
const slow = 1 / 3.6

// dateAhead is how far a date may lie ahead of the clock: a date without a zone is kept
// as midnight UTC, and the day begins 14 hours before that in the easternmost zone.
const dateAhead = 14 * time.Hour

// doubts returns what is worth a warning about a result that Check accepts.
func (r Result) doubts(now time.Time) []string {
	var doubts []string
	if d, _, _ := r.extent(); d > 0 && d/r.Time.Seconds() < slow {
		doubts = append(doubts, fmt.Sprintf("slower than 1 km/h: %g m in %s; check the units", d, clock(r.Time)))
	}
	if !now.IsZero() && r.Date.After(now.Add(dateAhead)) {
		doubts = append(doubts, fmt.Sprintf("the date %s lies in the future", formatDate(r.Date)))
	}
	return doubts
}
