package main

import (
	"context"
	"embed"
	"errors"
	"fmt"
	"io"
	"os"
	"path"
	"slices"

	"isoeffort.example/course"
	"isoeffort.example/course/coursefile"
	"isoeffort.example/plan"
	"isoeffort.example/plan/field"
)

// The invented course and field.
//
//go:embed demo/course.csv demo/landmarks.csv demo/runners.csv demo/results.csv
var demo embed.FS

// open opens a file, or the invented one of that name.
func (o *options) open(name string) (io.ReadCloser, error) {
	if o.course == "" {
		return demo.Open(path.Join("demo", name))
	}
	f, err := os.Open(name)
	if err != nil {
		return nil, &field.Error{File: name, Err: cause(err)}
	}
	return f, nil
}

// cause is an error without the name of the file, which is said already.
func cause(err error) error {
	var failed *os.PathError
	if errors.As(err, &failed) {
		return failed.Err
	}
	return err
}

// readCourse returns the course, and sets the race's cutoffs by the list of landmarks.
func (o *options) readCourse() (*course.Course, error) {
	name, marks := o.course, o.landmarks
	if name == "" {
		name, marks = "course.csv", "landmarks.csv"
	}
	co := coursefile.Options{Length: o.length, File: name}
	if marks != "" {
		f, err := o.open(marks)
		if err != nil {
			return nil, err
		}
		defer f.Close()
		if co.Landmarks, err = coursefile.ReadLandmarks(f, coursefile.Options{File: marks}); err != nil {
			return nil, err
		}
	}
	for _, l := range co.Landmarks {
		if l.Cutoff.Clock && o.race.Start.IsZero() {
			return nil, fmt.Errorf("%s: the cutoff at %s is a time of day: it needs -start", marks, l.Name)
		}
		if !l.Cutoff.IsZero() {
			o.race.Cutoffs = append(o.race.Cutoffs, plan.Cutoff{Name: l.Name, Distance: l.Distance, Time: l.Cutoff.After(o.race.Start)})
		}
	}
	if o.course != "" {
		return coursefile.Open(name, co)
	}
	f, err := o.open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	c, err := coursefile.ReadCSV(f, co)
	if err != nil {
		return nil, err
	}
	return c.Named("The Quillmere Round, an invented course"), nil
}

// runnersName is what messages call the runners file.
func (o *options) runnersName() string {
	if o.runners == "" {
		return "demo/runners.csv"
	}
	return o.runners
}

// readRunners returns the entries of the field, fitted to results where they name some.
func (o *options) readRunners(ctx context.Context) (field.File, error) {
	name := o.runners
	if name == "" {
		name = "runners.csv"
	}
	in, err := o.open(name)
	if err != nil {
		return field.File{}, err
	}
	defer in.Close()
	f, err := field.Read(in, field.ReadOptions{File: o.runnersName()})
	if err != nil {
		var failed *os.PathError
		if errors.As(err, &failed) { // of reading a directory; it names the file once more
			err = &field.Error{File: o.runners, Err: failed.Err}
		}
		return field.File{}, err
	}
	past := pastResults{options: o, files: map[string]pastFile{}}
	for i := range f.Entries {
		e := &f.Entries[i]
		if e.Err != nil || e.Runner.Results == "" || ctx.Err() != nil {
			continue
		}
		if err := past.fit(ctx, &e.Runner); err != nil {
			e.Err = &field.Error{File: o.runnersName(), Line: e.Line, Err: fmt.Errorf("%q: %w", e.Runner.Name, err)}
		}
	}
	for _, p := range past.files {
		f.Warnings = append(f.Warnings, p.warnings...)
	}
	slices.Sort(f.Warnings)
	return f, nil
}
