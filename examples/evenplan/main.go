// Evenplan prints an even-effort plan for one runner and one course. Without arguments
// it plans an invented runner's day on an invented course; with -course and -results it
// plans yours.
//
//	go run ./examples/evenplan
//	go run ./examples/evenplan -course race.gpx -length 86000 -results past.csv -goal 10:30:00
//
// Input that cannot be used gives one line on standard error, FILE:LINE: cause, and exit
// status 2. What was mended in a file is said on standard error, beside the plan.
package main

import (
	"bytes"
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"regexp"
	"strings"
	"unicode"

	"isoeffort.example/course/coursefile"
	"isoeffort.example/plan"
)

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

// run is the program; it returns the exit status.
func run(args []string, stdout, stderr io.Writer) int {
	o, err := parse(args)
	if errors.Is(err, flag.ErrHelp) {
		usage(stdout)
		return 0
	}
	var page bytes.Buffer
	var warnings []string
	if err == nil {
		warnings, err = o.print(&page)
	}
	if err != nil {
		fmt.Fprintln(stderr, oneLine(err.Error()))
		return 2
	}
	for _, w := range warnings {
		fmt.Fprintln(stderr, oneLine(w))
	}
	if _, err := page.WriteTo(stdout); err != nil {
		fmt.Fprintln(stderr, oneLine(err.Error()))
		return 1
	}
	return 0
}

// print makes the plan and writes it in the format asked for. The warnings are those of
// the files read.
func (o *options) print(w io.Writer) (warnings []string, err error) {
	c, err := o.readCourse()
	if err != nil {
		return nil, err
	}
	if err := o.placeDay(c); err != nil {
		return nil, err
	}
	if err := o.addWeather(); err != nil {
		return nil, err
	}
	r, err := o.readRunner(context.Background())
	if err != nil {
		return nil, err
	}
	race := o.race
	race.Basis = r.basis
	p, err := plan.Even(c, r.athlete, race)
	if err != nil {
		return nil, errors.New("evenplan: " + strings.TrimPrefix(err.Error(), "plan: "))
	}
	for _, text := range c.Warnings() {
		warnings = append(warnings, o.courseName()+": "+text)
	}
	sheet := writers[o.format]
	switch {
	case o.day.during():
		sheet = o.day.follow
	case o.format == briefingFormat:
		sheet = o.day.briefing
	}
	if err := sheet(w, p, o.spacing(c)); err != nil {
		if located := (*coursefile.Error)(nil); errors.As(err, &located) {
			return nil, err
		}
		return nil, errors.New("evenplan: " + packageName.ReplaceAllString(err.Error(), ""))
	}
	return append(warnings, r.warnings...), nil
}

// packageName is what an error of the library starts with.
var packageName = regexp.MustCompile(`^[a-z]+: `)

// oneLine is a text on one line, without what would move the cursor or turn the writing
// round: the names of files can hold anything.
func oneLine(text string) string {
	text = strings.Join(strings.Fields(text), " ")
	return strings.Map(func(r rune) rune {
		if unicode.IsPrint(r) {
			return r
		}
		return unicode.ReplacementChar
	}, text)
}
