package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/plan"
)

// options are what the command line asks for.
type options struct {
	course, landmarks, runners, out string
	length                          float64
	force, quick                    bool
	workers                         int
	groups                          targets
	race                            plan.Race
}

// flags returns the flag set that fills the options.
func (o *options) flags() *flag.FlagSet {
	fs := flag.NewFlagSet("batch", flag.ContinueOnError)
	fs.SetOutput(io.Discard)
	fs.StringVar(&o.course, "course", "", "the course, a GPX, GeoJSON or CSV `file` (default: the invented course)")
	fs.Float64Var(&o.length, "length", 0, "the measured length of the race, to which the course is scaled, in `metres` (default: as the file has it)")
	fs.StringVar(&o.landmarks, "landmarks", "", "landmarks with cutoffs, a CSV `file` with the columns name, distance_m, kind, cutoff, note")
	fs.StringVar(&o.runners, "runners", "", "the runners, a CSV `file`: see go doc isoeffort.example/plan/field (default: the invented field)")
	fs.StringVar(&o.out, "out", "", "`folder` for a text plan of each runner and summary.csv; made if it is missing (default: only print the summary)")
	fs.BoolVar(&o.force, "force", false, "overwrite files that are in the folder")
	fs.BoolVar(&o.quick, "quick", false, "plan in coarse cells: about nine times faster, and within 0.25 % or so")
	fs.IntVar(&o.workers, "workers", 0, "`number` of runners planned at once (default: one for each processor)")
	fs.Var(&o.groups, "groups", "finish times of pace groups, as `H:MM:SS,...`: who fits which, and a plan for each group's leader")
	fs.DurationVar(&o.race.StartDelay, "start-delay", 0, "time from the gun to the start line of runners who have none of their own, a `duration` such as 4m")
	fs.Func("start", "when the gun goes: `date and time` with zone, as 2026-06-14T05:30:00+02:00", func(s string) (err error) {
		if o.race.Start, err = time.Parse(time.RFC3339, s); err != nil {
			return errors.New("not a date and time such as 2026-06-14T05:30:00+02:00")
		}
		return nil
	})
	return fs
}

// parse reads the command line.
func parse(args []string) (*options, error) {
	o := &options{}
	fs := o.flags()
	if err := fs.Parse(args); err != nil {
		if errors.Is(err, flag.ErrHelp) {
			return nil, err
		}
		return nil, fmt.Errorf("batch: %w", err)
	}
	if fs.NArg() > 0 {
		return nil, fmt.Errorf("batch: unexpected argument %q: every option starts with a dash; -h lists them", fs.Arg(0))
	}
	return o, o.check()
}

// check looks at what the flags say together.
func (o *options) check() error {
	switch {
	case (o.course == "") != (o.runners == ""):
		return errors.New("batch: -course and -runners: give both, or none for the invented ones")
	case o.landmarks != "" && o.course == "":
		return errors.New("batch: -landmarks: needs -course")
	case o.length != 0 && !(o.length >= 100 && o.length <= course.MaxLength):
		return fmt.Errorf("batch: -length %g: not within 100 to %d m", o.length, course.MaxLength)
	case o.length != 0 && o.course == "":
		return errors.New("batch: -length: needs -course")
	case o.workers < 0 || o.workers > 1024:
		return fmt.Errorf("batch: -workers %d: not within 0 to 1024", o.workers)
	case o.race.StartDelay < 0 || o.race.StartDelay > 24*time.Hour:
		return fmt.Errorf("batch: -start-delay %v: not within 0 to 24h", o.race.StartDelay)
	case o.force && o.out == "":
		return errors.New("batch: -force: says what to do in the folder of -out, but none is given")
	}
	return nil
}

// usage explains each flag with its unit.
func usage(w io.Writer) {
	fmt.Fprint(w, "Batch plans a whole field on one course.\n\n"+
		"  go run ./examples/batch\n"+
		"  go run ./examples/batch -course race.gpx -runners runners.csv -out plans\n\n"+
		"Without arguments the course and the runners are invented ones.\n"+
		"Exit status: 0 all planned, 1 some refused and the rest done, 2 nothing done.\n\n")
	fs := (&options{}).flags()
	fs.VisitAll(func(f *flag.Flag) {
		value, text := flag.UnquoteUsage(f)
		fmt.Fprintf(w, "  -%s %s\n        %s\n", f.Name, value, text)
	})
}
