package main

import (
	"bytes"
	_ "embed"
	"encoding/json"
	"html/template"
	"os"
	"strings"

	"isoeffort.example/calibrate/cohort"
	"isoeffort.example/effort"
)

//go:embed report.html.tmpl
var reportText string

// A report is what the page shows.
type report struct {
	Population cohort.Population
	Numbers    []numberRow
	Judged     []judgedRow
	Figures    []figure
	Splits     splitErrors
	Warnings   []string
	Run        string
}

type numberRow struct {
	Name          string
	Median, LogSD float64
	Found         bool
}

type judgedRow struct {
	Name                    string
	Median, Held90, Held50  float64
	Gain, GainLow, GainHigh float64
	First                   bool
}

// A figure is an SVG with its caption.
type figure struct {
	Title, Caption string
	SVG            template.HTML
}

func (s *study) writeReport(file string) error {
	page, err := template.New("report").Funcs(template.FuncMap{"percent": func(v float64) float64 { return 100 * v }}).Parse(reportText)
	if err != nil {
		return err
	}
	run, err := json.MarshalIndent(s.info(), "", "  ")
	if err != nil {
		return err
	}
	r := report{Population: s.model.Population, Warnings: s.warnings, Run: string(run)}
	for n := range effort.Number(effort.Numbers) {
		b := r.Population.Prior[n]
		r.Numbers = append(r.Numbers, numberRow{n.String(), b.Median, b.LogSD, n != effort.Fade && n != effort.FadeShape})
	}
	judged := judge(s.forecasts)
	for k, j := range judged {
		r.Judged = append(r.Judged, judgedRow{j.name, j.median, j.held90, j.held50, j.gain, j.gainLow, j.gainHigh, k == 0})
	}
	r.Splits = s.splitErrors()
	r.Figures = s.figures(judged)
	var text bytes.Buffer
	if err := page.Execute(&text, r); err != nil {
		return err
	}
	return os.WriteFile(file, []byte(strings.TrimLeft(text.String(), "\n")), 0o644)
}
