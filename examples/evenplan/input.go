package main

import (
	"bytes"
	"context"
	_ "embed"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"time"

	"isoeffort.example/calibrate"
	"isoeffort.example/course"
	"isoeffort.example/course/coursefile"
	"isoeffort.example/course/elevation"
	"isoeffort.example/effort"
	"isoeffort.example/effort/record"
	"isoeffort.example/plan"
)

// The invented course and runner.
var (
	//go:embed demo/course.gpx
	demoCourse []byte

	//go:embed demo/results.csv
	demoResults []byte
)

// demoLength is the measured length of the invented course in metres.
const demoLength = 86_400

// courseName is what messages call the course's file.
func (o *options) courseName() string {
	if o.course == "" {
		return "demo/course.gpx"
	}
	return o.course
}

// smoothing is what -smooth asks of package course.
func (o *options) smoothing() float64 {
	if o.smooth == 0 {
		return course.AsGiven
	}
	return o.smooth
}

// cleaning is what -clean asks of package coursefile.
func (o *options) cleaning() *elevation.Options {
	if !o.clean {
		return nil
	}
	return &elevation.Options{}
}

func (o *options) readCourse() (*course.Course, error) {
	if err := o.readLandmarks(); err != nil {
		return nil, err
	}
	co := coursefile.Options{
		Length: o.length, Smoothing: o.smoothing(), File: o.courseName(), Clean: o.cleaning(),
		Track: o.track, TrackName: o.trackName, Landmarks: o.day.marks, ListedHeights: o.known, WaypointHeights: o.known,
	}
	if o.course != "" {
		return coursefile.Open(o.course, co)
	}
	if co.Length == 0 {
		co.Length = demoLength
	}
	return coursefile.ReadGPX(bytes.NewReader(demoCourse), co)
}

// runner is an athlete, what the numbers rest on, and what was mended in the files.
type runner struct {
	athlete  effort.Athlete
	basis    effort.Basis
	warnings []string // of the results file
}

func (o *options) readRunner(ctx context.Context) (runner, error) {
	if o.athlete.given {
		return runner{athlete: o.athlete.Athlete}, nil
	}
	results, warnings, err := o.readResults()
	if err != nil {
		return runner{}, err
	}
	fit, err := calibrate.Fit(ctx, results, calibrate.Options{Surroundings: o.race.Surroundings})
	if err != nil {
		return runner{}, fmt.Errorf("%s: %s", o.resultsName(), strings.TrimPrefix(err.Error(), "calibrate: "))
	}
	return runner{athlete: fit.Athlete, basis: fit.Basis, warnings: warnings}, nil
}

// resultsName is what messages call the results file.
func (o *options) resultsName() string {
	if o.results == "" {
		return "demo/results.csv"
	}
	return o.results
}

// readResults returns the results of one runner, on their courses where those are given.
func (o *options) readResults() ([]record.Result, []string, error) {
	var in io.Reader = bytes.NewReader(demoResults)
	if o.results != "" {
		f, err := os.Open(o.results)
		if err != nil {
			return nil, nil, &record.Error{File: o.results, Err: cause(err)}
		}
		defer f.Close()
		in = f
	}
	read, err := record.Read(in, record.Options{File: o.resultsName(), Now: time.Now()})
	var failed *os.PathError
	if errors.As(err, &failed) { // of reading a directory; it names the file once more
		return nil, nil, &record.Error{File: o.results, Err: failed.Err}
	}
	if err != nil {
		return nil, nil, err
	}
	results, err := o.ofRunner(read.Results)
	if err != nil {
		return nil, nil, err
	}
	warnings := read.Warnings
	for i := range results {
		more, err := o.findGround(&results[i])
		if err != nil {
			return nil, nil, err
		}
		warnings = append(warnings, more...)
	}
	return results, warnings, nil
}

// ofRunner picks the results of the runner asked for, or of the only one.
func (o *options) ofRunner(results []record.Result) ([]record.Result, error) {
	var picked []record.Result
	for _, r := range results {
		if o.runner != "" && r.Runner != o.runner {
			continue
		}
		if len(picked) > 0 && r.Runner != picked[0].Runner {
			return nil, &record.Error{File: o.resultsName(), Line: r.Line, Err: fmt.Errorf(
				"results of %q and of %q: choose one with -runner", picked[0].Runner, r.Runner)}
		}
		picked = append(picked, r)
	}
	if len(picked) == 0 {
		return nil, &record.Error{File: o.resultsName(), Err: fmt.Errorf("no results of a runner %q", o.runner)}
	}
	return picked, nil
}

// findGround reads the course of a result that names its file, scaled to the result's
// distance where it has one.
func (o *options) findGround(r *record.Result) (warnings []string, err error) {
	if r.GPX == "" {
		return nil, nil
	}
	name := r.GPX
	if !filepath.IsAbs(name) {
		name = filepath.Join(filepath.Dir(o.results), name)
	}
	c, err := coursefile.Open(name, coursefile.Options{Length: r.Distance, Smoothing: o.smoothing(), Clean: o.cleaning()})
	if err != nil {
		return nil, err
	}
	r.Ground = c
	if err := r.Check(); err != nil {
		return nil, &record.Error{File: o.resultsName(), Line: r.Line, Err: cause(err)}
	}
	for _, w := range c.Warnings() {
		warnings = append(warnings, name+": "+w)
	}
	return warnings, nil
}

// cause is an error's text without the place that is already said.
func cause(err error) error {
	if located, ok := err.(*record.Error); ok {
		return located.Err
	}
	if path, ok := err.(*os.PathError); ok {
		return path.Err
	}
	return err
}

// spacing is where splits are taken: as asked, or at landmarks where the course has any
// on the way, else every 5 km.
func (o *options) spacing(c *course.Course) plan.Spacing {
	if !o.every.given && len(c.Sections()) == 1 {
		return 5 * plan.EveryKilometre
	}
	return o.every.spacing
}
