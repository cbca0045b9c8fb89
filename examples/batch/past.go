package main

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"path/filepath"
	"time"

	"isoeffort.example/calibrate"
	"isoeffort.example/course/coursefile"
	"isoeffort.example/effort"
	"isoeffort.example/effort/record"
	"isoeffort.example/plan/field"
)

// pastResults are the results files that runners name, each read once.
type pastResults struct {
	options *options
	files   map[string]pastFile
}

// pastFile is one of them: the results of each runner, or why there are none.
type pastFile struct {
	of       map[string][]record.Result
	warnings []string
	err      error
}

// fit fits a runner to their results. A relative name counts from the runners file.
func (p pastResults) fit(ctx context.Context, r *field.Runner) error {
	name := r.Results
	if p.options.runners != "" && !filepath.IsAbs(name) {
		name = filepath.Join(filepath.Dir(p.options.runners), name)
	}
	file, read := p.files[name]
	if !read {
		file = p.read(name)
		p.files[name] = file
	}
	if file.err != nil {
		return file.err
	}
	own := file.of[r.Name]
	if len(own) == 0 {
		return fmt.Errorf("%s: no results of that runner", name)
	}
	base := effort.Athlete{Economy: r.Athlete.Economy, FastestWalk: r.Athlete.FastestWalk}
	fit, err := calibrate.Fit(ctx, own, calibrate.Options{Base: base})
	if err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	r.Athlete, r.Basis = fit.Athlete, fit.Basis
	return nil
}

// read reads a results file, and the courses that its results name.
func (p pastResults) read(name string) (out pastFile) {
	f, err := p.options.open(name)
	if err != nil {
		return pastFile{err: err}
	}
	defer f.Close()
	text, err := io.ReadAll(io.LimitReader(f, 64<<20+1))
	if err != nil {
		return pastFile{err: &field.Error{File: name, Err: cause(err)}}
	}
	all, err := record.Read(bytes.NewReader(text), record.Options{File: name, Now: time.Now()})
	if err != nil {
		return pastFile{err: err}
	}
	out = pastFile{of: map[string][]record.Result{}, warnings: all.Warnings}
	for _, r := range all.Results {
		if err := findGround(&r, name); err != nil {
			return pastFile{err: err}
		}
		out.of[r.Runner] = append(out.of[r.Runner], r)
	}
	return out
}

// findGround reads the course of a result that names its file.
func findGround(r *record.Result, results string) (err error) {
	if r.GPX == "" {
		return nil
	}
	name := r.GPX
	if !filepath.IsAbs(name) {
		name = filepath.Join(filepath.Dir(results), name)
	}
	if r.Ground, err = coursefile.Open(name, coursefile.Options{Length: r.Distance}); err != nil {
		return err
	}
	return r.Check()
}
