package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"regexp"
	"slices"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/plan"
)

// options are what the command line asks for.
type options struct {
	course  string
	length  float64
	smooth  float64
	clean   bool
	known   bool
	results string
	runner  string
	athlete athlete
	format  string
	every   every
	goal    clock
	race    plan.Race

	track       int
	trackName   string
	day         dayOptions
	nightFactor float64
}

// flags returns the flag set that fills the options.
func (o *options) flags() *flag.FlagSet {
	fs := flag.NewFlagSet("evenplan", flag.ContinueOnError)
	fs.SetOutput(io.Discard)
	fs.StringVar(&o.course, "course", "", "the course: a GPX or GeoJSON `file`, or a CSV profile with the header distance_m,elevation_m (default: the invented course)")
	fs.Float64Var(&o.length, "length", 0, "the measured length of the race, to which the course is scaled, in `metres` (default: as the file has it)")
	fs.IntVar(&o.track, "track", 0, "which track of the course's file, by its `number` from 1 (default: all of them, joined)")
	fs.StringVar(&o.trackName, "track-name", "", "which track of the course's file, by its `name`")
	fs.Float64Var(&o.smooth, "smooth", course.DefaultSmoothing, "window over which elevations are smoothed, in `metres`; 0 leaves the profile as given")
	fs.BoolVar(&o.clean, "clean", false, "repair the elevations and smooth them by their own noise, instead of -smooth, and say what was changed")
	fs.BoolVar(&o.known, "known-heights", false, "with -clean: the elevations of waypoints, and those in the column elevation_m of -landmarks, are known, and drift is taken out by them")
	fs.StringVar(&o.results, "results", "", "past results: a CSV `file` with the columns date, distance_m, ascent_m, descent_m (empty: as ascent) and time (H:MM:SS or seconds), and optional runner, race, course, gpx, role, note (default: the invented runner's)")
	fs.StringVar(&o.runner, "runner", "", "`name` of the runner, where the results are of several")
	fs.Var(&o.athlete, "athlete", "the runner's numbers instead of results: hour_power in W/kg, endurance, fade per hour-equivalent, fade_shape, braking, as `NAME=NUMBER,...`; those left out are 12, 0.1, 0.02, 1, 1")
	fs.Var(&o.goal, "goal", "finish time to plan for, from the gun, as `H:MM:SS` (default: the fastest that the effort budget allows)")
	fs.BoolVar(&o.race.Net, "net", false, "the goal is net time, from the start line")
	fs.Func("start", "when your gun goes: `date and time` with zone, as 2026-06-14T05:30:00+02:00 (default: no clock times)", func(s string) (err error) {
		o.race.Start, err = time.Parse(time.RFC3339, s)
		if err != nil {
			return errors.New("not a date and time such as 2026-06-14T05:30:00+02:00")
		}
		return nil
	})
	fs.DurationVar(&o.race.StartDelay, "start-delay", 0, "time from the gun to the start line, a `duration` such as 8m or 7m30s")
	o.format = "text"
	fs.Func("format", "what to print, a `name`: "+formats+" (default text)", func(s string) error {
		if _, known := writers[s]; !known && s != briefingFormat {
			return errors.New("not one of " + formats)
		}
		o.format = s
		return nil
	})
	fs.Var(&o.every, "every", "where splits are taken: every so many km or mi, as 1km, 5km or 1mi, or at each `landmark` (default landmark, or 5km where the course has none)")
	o.dayFlags(fs)
	o.day.followFlags(fs)
	o.modelFlags(fs)
	return fs
}

// modelFlags are those for how the plan is computed.
func (o *options) modelFlags(fs *flag.FlagSet) {
	fs.Float64Var(&o.race.Step, "step", plan.DefaultStep, "length of the cells that are computed, in `metres`, 1 to 10000")
	fs.BoolVar(&o.race.Ease, "ease", false, "walk at the effort that pays best: fast walks a little easier than even, steep ones a little harder")
	fs.Float64Var(&o.race.Surroundings.Drag, "air", 0, "`drag` coefficient of the air in J s²/(m³ kg), about 0.01; 0 is off")
	fs.Func("min-bout", "shortest bout of running or walking, a `duration` such as 3m; 0 is off (default 3m)", func(s string) error {
		d, err := time.ParseDuration(s)
		if err != nil || d < 0 || d > time.Hour {
			return errors.New("not a duration of 0 to 1h, such as 3m or 90s")
		}
		o.race.ShortestBout = offAtZero(d)
		return nil
	})
	fs.Func("hold-back", "`share` of effort held back at the start and returned by the end, 0 to 0.2; 0 is off (default 0.02 beyond four hours, else 0)", func(s string) error {
		v, err := number(s)
		if err != nil || v < 0 || v > 0.2 {
			return errors.New("not a share of 0 to 0.2")
		}
		o.race.HoldBack = offAtZero(v)
		return nil
	})
}

// offAtZero is the value, or plan.Off for 0, which elsewhere means the default.
func offAtZero[T time.Duration | float64](v T) T {
	if v == 0 {
		return plan.Off
	}
	return v
}

// parse reads the command line.
func parse(args []string) (*options, error) {
	o := &options{}
	fs := o.flags()
	if err := fs.Parse(args); err != nil {
		if errors.Is(err, flag.ErrHelp) {
			return nil, err
		}
		return nil, fmt.Errorf("evenplan: %w", err)
	}
	if fs.NArg() > 0 {
		return nil, fmt.Errorf("evenplan: unexpected argument %q: every option starts with a dash; -h lists them", fs.Arg(0))
	}
	given := map[string]bool{}
	fs.Visit(func(f *flag.Flag) { given[f.Name] = true })
	return o, o.check(given)
}

// mostDrag is the greatest -air in J s²/(m³ kg) that package effort takes.
const mostDrag = 0.1

// profileName matches the name of a CSV profile.
var profileName = regexp.MustCompile(`(?i)\.csv(\.gz)?$`)

// check looks at what the flags say together.
func (o *options) check(given map[string]bool) error {
	switch {
	case given["athlete"] && given["results"]:
		return errors.New("evenplan: -athlete and -results: only one of the two can be used")
	case given["course"] && o.course == "":
		return errors.New("evenplan: -course: no file named")
	case given["results"] && o.results == "":
		return errors.New("evenplan: -results: no file named")
	case given["length"] && !(o.length >= 100 && o.length <= course.MaxLength):
		return fmt.Errorf("evenplan: -length %g: not within 100 to %d m", o.length, course.MaxLength)
	case !(o.smooth >= 0 && o.smooth <= 5000):
		return fmt.Errorf("evenplan: -smooth %g: not within 0 to 5000 m", o.smooth)
	case !(o.race.Step >= 1 && o.race.Step <= 10_000):
		return fmt.Errorf("evenplan: -step %g: not within 1 to 10000 m", o.race.Step)
	case !(o.race.Surroundings.Drag >= 0 && o.race.Surroundings.Drag <= mostDrag):
		return fmt.Errorf("evenplan: -air %g: not within 0 to %g", o.race.Surroundings.Drag, mostDrag)
	case o.race.StartDelay < 0 || o.race.StartDelay > 24*time.Hour:
		return fmt.Errorf("evenplan: -start-delay %v: not within 0 to 24h", o.race.StartDelay)
	case given["athlete"] && given["runner"]:
		return errors.New("evenplan: -runner: picks one runner's results, but -athlete is given")
	case o.race.Net && !given["goal"]:
		return errors.New("evenplan: -net: says how -goal counts, but no goal is given")
	case o.known && !o.clean:
		return errors.New("evenplan: -known-heights: only -clean uses them")
	case given["weather"] && o.race.Start.IsZero(), given["night"] && o.race.Start.IsZero():
		return errors.New("evenplan: -weather and -night go by the clock: give -start")
	case given["night-factor"] != given["night"] || !(o.nightFactor >= 0.3 && o.nightFactor <= 1):
		return errors.New("evenplan: -night and -night-factor: give both, the factor within 0.3 to 1")
	case (given["track"] || given["track-name"]) && profileName.MatchString(o.course):
		return errors.New("evenplan: -track and -track-name: a CSV profile has no tracks")
	case o.track < 0:
		return fmt.Errorf("evenplan: -track %d: tracks are counted from 1", o.track)
	case given["share"] && !(o.race.Share >= 0.001 && o.race.Share <= 1):
		return fmt.Errorf("evenplan: -share %g: not within 0.001 to 1", o.race.Share)
	case given["goal"] && !o.race.Net && time.Duration(o.goal) <= o.race.StartDelay:
		return fmt.Errorf("evenplan: -goal %v: not longer than the start delay of %v", time.Duration(o.goal), o.race.StartDelay)
	}
	o.race.Goal = time.Duration(o.goal)
	return nil
}

// usage explains each flag with its unit.
func usage(w io.Writer) {
	fmt.Fprint(w, "Evenplan prints an even-effort plan for one runner and one course.\n\n"+
		"  go run ./examples/evenplan\n"+
		"  go run ./examples/evenplan -course race.gpx -results past.csv -goal 10:30:00\n\n"+
		"Without -course and -results the course and the runner are invented ones. Flags:\n\n")
	fs := (&options{}).flags()
	var names []string
	fs.VisitAll(func(f *flag.Flag) { names = append(names, f.Name) })
	slices.Sort(names)
	for _, name := range names {
		f := fs.Lookup(name)
		value, text := flag.UnquoteUsage(f)
		fmt.Fprintf(w, "  -%s %s\n", name, value)
		for _, line := range fold(text+defaultOf(f), 70) {
			fmt.Fprintf(w, "        %s\n", line)
		}
	}
}

// defaultOf says the default of a number's flag.
func defaultOf(f *flag.Flag) string {
	switch f.Name {
	case "smooth", "step":
		return " (default " + f.DefValue + ")"
	case "air":
		return " (default 0)"
	case "start-delay", "wave", "station-stop", "station-stop-per-hour", "walk-every":
		return " (default 0)"
	case "night-factor":
		return " (default 1)"
	}
	return ""
}
