package field

import (
	"fmt"
	"time"

	"isoeffort.example/effort"
	"isoeffort.example/internal/csvtext"
	"isoeffort.example/plan"
)

// longestName is the most bytes of a name; a file can be named for it.
const longestName = 200

// runner makes a runner of the current row, or says why there is none. The name is
// returned beside an error where it could be read.
func (t *table) runner() (Runner, error) {
	if t.err != nil {
		return Runner{}, t.err
	}
	if len(t.row) != t.layout.width {
		return Runner{}, fmt.Errorf("%w: the header has %d fields, this row %d", ErrSyntax, t.layout.width, len(t.row))
	}
	r := Runner{Name: t.cell(colName), Results: t.cell(colResults), Note: t.cell(colNote)}
	switch {
	case r.Name == "":
		return r, fmt.Errorf("%w: it is empty", ErrName)
	case len(r.Name) > longestName:
		return Runner{}, fmt.Errorf("%w: %s has over %d bytes", ErrName, csvtext.Quote(r.Name), longestName)
	}
	for _, part := range []func(*Runner) error{t.athlete, t.aim, t.start} {
		if err := part(&r); err != nil {
			return Runner{Name: r.Name}, fmt.Errorf("%s: %w", csvtext.Quote(r.Name), err)
		}
	}
	return r, nil
}

// numbers are the columns of an athlete's numbers, and whether a 0 that is written there
// would stand for something else.
var numbers = []struct {
	column
	of       func(*effort.Athlete) *float64
	positive bool
}{
	{colHourPower, func(a *effort.Athlete) *float64 { return &a.HourPower }, true},
	{colEndurance, func(a *effort.Athlete) *float64 { return &a.Endurance }, true},
	{colFade, func(a *effort.Athlete) *float64 { return &a.Fade }, false},
	{colFadeShape, func(a *effort.Athlete) *float64 { return &a.FadeShape }, true},
	{colBraking, func(a *effort.Athlete) *float64 { return &a.Braking }, false},
	{colEconomy, func(a *effort.Athlete) *float64 { return &a.Economy }, true},
	{colFastestWalk, func(a *effort.Athlete) *float64 { return &a.FastestWalk }, true},
}

// athlete reads the runner's numbers. Without an hour power the caller fits them.
func (t *table) athlete(r *Runner) error {
	r.Athlete = effort.Usual(0)
	for _, n := range numbers {
		v, given, err := t.number(n.column)
		switch {
		case err != nil:
			return err
		case given && v == 0 && n.positive:
			return fmt.Errorf("%w: %s is 0", ErrNumber, columnNames[n.column])
		case given:
			*n.of(&r.Athlete) = v
		}
	}
	a := r.Athlete
	switch {
	case a.HourPower == 0 && r.Results == "":
		return fmt.Errorf("%w: hour_power is empty, and no results are named", ErrNumber)
	case a.HourPower == 0:
		a.HourPower = usualHourPower // so that the other numbers are looked at
	}
	return a.Check()
}

// usualHourPower is any that is within range.
const usualHourPower = 12

// aim reads what is planned for.
func (t *table) aim(r *Runner) error {
	goal, hasGoal, err := t.time(colGoal)
	if err != nil {
		return err
	}
	net, hasNet, err := t.time(colNetGoal)
	if err != nil {
		return err
	}
	share, hasShare, err := t.number(colShare)
	switch {
	case err != nil:
		return err
	case hasGoal && hasNet || hasShare && (hasGoal || hasNet):
		return fmt.Errorf("%w: give one of goal, net_goal and share", ErrAim)
	case hasGoal && goal == 0 || hasNet && net == 0:
		return fmt.Errorf("%w: a goal of 0", ErrTime)
	case hasShare && !(share >= 0.001 && share <= 1):
		return fmt.Errorf("%w: share %g is not within 0.001 to 1", ErrNumber, share)
	}
	r.Goal, r.Net, r.Share = goal+net, hasNet, share
	return nil
}

// start reads when the runner starts.
func (t *table) start(r *Runner) (err error) {
	if r.StartDelay, err = t.orOff(colStartDelay); err != nil {
		return err
	}
	r.Wave, err = t.orOff(colWave)
	return err
}

// orOff reads a time, of which a 0 that is written is none, and not the race's.
func (t *table) orOff(c column) (time.Duration, error) {
	d, given, err := t.time(c)
	if given && d == 0 {
		return plan.Off, nil
	}
	return d, err
}

// decimalComma reports whether numbers may have one: where commas separate no fields.
func (t *table) decimalComma() bool { return t.comma != ',' }

// number reads a finite decimal number; it is not given where the field is empty.
func (t *table) number(c column) (v float64, given bool, err error) {
	s := t.cell(c)
	if s == "" {
		return 0, false, nil
	}
	v, err = csvtext.Number(s, t.decimalComma())
	if err != nil {
		return 0, false, fmt.Errorf("%w: %s %s is not a finite number", ErrNumber, columnNames[c], csvtext.Quote(s))
	}
	return v, true, nil
}

// time reads a time; it is not given where the field is empty.
func (t *table) time(c column) (d time.Duration, given bool, err error) {
	s := t.cell(c)
	if s == "" {
		return 0, false, nil
	}
	if d, err = parseTime(s, t.decimalComma()); err != nil {
		return 0, false, fmt.Errorf("%w: %s %s %w", ErrTime, columnNames[c], csvtext.Quote(s), err)
	}
	return d, true, nil
}
