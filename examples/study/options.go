package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
)

// options of the program, as the report repeats them.
type options struct {
	Results, Splits, Profiles, Out string
	SameDay, FitOnly               bool
	Seed                           uint64
	Rounds, Workers, Groups        int
}

var errUsage = errors.New("usage")

func parse(args []string, stdout io.Writer) (options, error) {
	var o options
	f := flag.NewFlagSet("study", flag.ContinueOnError)
	f.SetOutput(io.Discard)
	f.StringVar(&o.Splits, "splits", "", "`file` of splits")
	f.StringVar(&o.Profiles, "profiles", "", "`file` of profiles")
	f.StringVar(&o.Out, "out", "study", "`folder` for what is written, made if need be")
	f.BoolVar(&o.SameDay, "same-day", false, "foretell also from the others' results of the day")
	f.BoolVar(&o.FitOnly, "fit-only", false, "use results with role predict in no forecast of others, however early they are")
	f.Uint64Var(&o.Seed, "seed", 1, "of the draws, and of the invented field")
	f.IntVar(&o.Rounds, "rounds", 0, "most rounds of the fit; 0: 40")
	f.IntVar(&o.Workers, "workers", 0, "goroutines; 0: one for each processor. Changes no digit")
	f.IntVar(&o.Groups, "groups", 0, "groups of speed in the pacing; 0: 3")
	err := f.Parse(args)
	if errors.Is(err, flag.ErrHelp) {
		fmt.Fprintln(stdout, "study [options] [results.csv]")
		f.SetOutput(stdout)
		f.PrintDefaults()
		return o, err
	}
	if err != nil {
		return o, fmt.Errorf("%w: %w", errUsage, err)
	}
	switch {
	case f.NArg() > 1:
		return o, fmt.Errorf("%w: one results file, not %d; options come before it", errUsage, f.NArg())
	case f.NArg() == 0 && (o.Splits != "" || o.Profiles != ""):
		return o, fmt.Errorf("%w: splits or profiles without a results file", errUsage)
	}
	o.Results = f.Arg(0)
	return o, nil
}
