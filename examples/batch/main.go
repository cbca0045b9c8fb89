// Batch plans a whole field: a text plan for each runner of a CSV file, and a summary.
// Without arguments it prints the summary of an invented field on an invented course.
//
//	go run ./examples/batch
//	go run ./examples/batch -course race.gpx -runners runners.csv -out plans
//
// The exit status is 0 when every runner has a plan; 1 when some rows were refused, or the
// batch was interrupted, and the rest is done; 2 when nothing is done, because of the
// options or a file, with one line on standard error: FILE:LINE: cause. Progress, warnings
// and the errors of rows go to standard error too.
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
	o, err := parse(args)
	if errors.Is(err, flag.ErrHelp) {
		usage(stdout)
		return 0
	}
	if err != nil {
		fmt.Fprintln(stderr, oneLine(err.Error()))
		return 2
	}
	b := batch{options: o, stdout: stdout, stderr: stderr}
	status, err := b.run(ctx)
	if err != nil {
		b.say(err.Error())
	}
	return status
}

// say prints a line on standard error.
func (b *batch) say(text string) { fmt.Fprintln(b.stderr, oneLine(text)) }

// oneLine is a text on one line, without what would move the cursor or turn the writing
// round: names can hold anything.
func oneLine(text string) string {
	text = strings.Join(strings.Fields(text), " ")
	return strings.Map(func(r rune) rune {
		if unicode.IsPrint(r) {
			return r
		}
		return unicode.ReplacementChar
	}, text)
}
