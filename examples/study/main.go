// Study fits a cohort to a file of results and foretells the results held back in it: who
// the runners are, how much slower each course runs than its profile says, and how well
// that foretells. Without arguments it studies an invented field.
//
//	go run ./examples/study
//	go run ./examples/study -splits splits.csv -profiles profiles.csv -out study results.csv
//
// The results file is the one of package record, with the columns runner, race, course,
// date, distance_m, ascent_m, descent_m, time and role: race is one edition, course the
// same over its editions, role empty or fit or predict. A result with role predict is
// foretold from results of earlier dates alone; -same-day adds the others' results in its
// own race on its day. The splits file has runner, race, distance_m, ascent_m, descent_m
// and elapsed_s, the profiles file race, distance_m and elevation_m.
//
// Into the folder of -out go athletes.csv, courses.csv, population.json, predictions.csv,
// report.html and, with splits, split_predictions.csv. The same input, options and version
// give the same files. Progress and warnings go to standard error.
//
// The exit status is 0 when all is written, 1 when the study was interrupted, and 2 for
// bad options or files, with one line that says where.
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"os/signal"
	"strings"
	"unicode"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	status := run(ctx, os.Args[1:], os.Stdout, os.Stderr)
	stop()
	os.Exit(status)
}

// run is the program; it returns the exit status.
func run(ctx context.Context, args []string, stdout, stderr io.Writer) int {
	o, err := parse(args, stdout)
	if errors.Is(err, flag.ErrHelp) {
		return 0
	}
	if err == nil {
		err = (&study{o: o, stdout: stdout, stderr: stderr}).run(ctx)
	}
	switch {
	case err == nil:
		return 0
	case ctx.Err() != nil:
		fmt.Fprintln(stderr, "\ninterrupted: nothing is left to go on from")
		return 1
	}
	fmt.Fprintln(stderr, oneLine(err.Error()))
	return 2
}

// oneLine is a text on one line, without what would move the cursor: names can hold
// anything.
func oneLine(text string) string {
	text = strings.Join(strings.Fields(text), " ")
	return strings.Map(func(r rune) rune {
		if unicode.IsPrint(r) {
			return r
		}
		return -1
	}, text)
}
