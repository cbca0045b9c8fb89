package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"isoeffort.example/calibrate/cohort"
	"isoeffort.example/calibrate/cohort/pacing"
	"isoeffort.example/effort/record"
)

// A study is one run of the program.
type study struct {
	o              options
	stdout, stderr io.Writer

	inputs   []input
	results  []record.Result
	profiles map[string]record.Profile
	warnings []string

	model     *cohort.Model
	forecasts []cohort.Forecast
	pacing    *pacing.Model // of all results that are not held back; nil without splits
	splits    []splitForecast
}

func (s *study) run(ctx context.Context) error {
	if err := os.MkdirAll(s.o.Out, 0o755); err != nil {
		return err
	}
	if err := s.load(); err != nil {
		return err
	}
	if err := s.fit(ctx); err != nil {
		return err
	}
	for _, w := range s.warnings {
		fmt.Fprintln(s.stderr, "warning:", oneLine(w))
	}
	if err := s.write(); err != nil {
		return err
	}
	s.summarise()
	return nil
}

func (s *study) warn(warnings []string) { s.warnings = append(s.warnings, warnings...) }

// fit does the work: the cohort, the forecasts, the pacing.
func (s *study) fit(ctx context.Context) (err error) {
	o := cohort.Options{Rounds: s.o.Rounds, Workers: s.o.Workers, Seed: s.o.Seed}
	bar := &bar{w: s.stderr}
	o.Progress = bar.of("cohort")
	if s.model, err = cohort.Fit(ctx, s.results, o); err != nil {
		return err
	}
	bar.end()
	s.warn(s.model.Warnings)
	o.Progress = bar.of("forecasts")
	if s.forecasts, err = cohort.Forecasts(ctx, s.results, cohort.ForecastOptions{Options: o, SameDay: s.o.SameDay, FitOnly: s.o.FitOnly}); err != nil {
		return err
	}
	bar.end()
	if len(s.forecasts) == 0 {
		s.warn([]string{"no result has the role predict: nothing is foretold"})
	}
	return s.pace(ctx, bar)
}

// pace fits the pacing, of all and for the results held back.
func (s *study) pace(ctx context.Context, bar *bar) (err error) {
	o := pacing.Options{Groups: s.o.Groups, Workers: s.o.Workers, Profiles: s.profiles}
	if s.pacing, err = pacing.Fit(ctx, s.results, o); errors.Is(err, pacing.ErrNoSplits) {
		return nil
	} else if err != nil {
		return err
	}
	s.warn(s.pacing.Warnings)
	s.splits, err = foretellSplits(ctx, s.results, s.forecasts, o, bar.of("splits"))
	bar.end()
	return err
}

func (s *study) write() error {
	for _, file := range []struct {
		name  string
		write func(string) error
	}{
		{"athletes.csv", s.writeAthletes},
		{"courses.csv", s.writeCourses},
		{"population.json", s.writePopulation},
		{"predictions.csv", s.writePredictions},
		{"split_predictions.csv", s.writeSplits},
		{"report.html", s.writeReport},
	} {
		if err := file.write(filepath.Join(s.o.Out, file.name)); err != nil {
			return err
		}
	}
	return nil
}

// A bar shows progress on one line of a terminal.
type bar struct {
	w     io.Writer
	name  string
	shown int
}

const barWidth = 40

// of returns what shows the progress of a part of the work.
func (b *bar) of(name string) func(done, total int) {
	b.name, b.shown = name, -1
	return func(done, total int) {
		full := barWidth * done / max(1, total)
		if full == b.shown {
			return
		}
		b.shown = full
		fmt.Fprintf(b.w, "\r%-10s [%-*s] %3d %%", b.name, barWidth, fill(full), 100*done/max(1, total))
	}
}

func (b *bar) end() {
	if b.shown >= 0 {
		fmt.Fprintf(b.w, "\r%-10s [%-*s] done \n", b.name, barWidth, fill(barWidth))
	}
}

func fill(n int) string {
	text := make([]byte, n)
	for i := range text {
		text[i] = '='
	}
	return string(text)
}
