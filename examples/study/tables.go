package main

import (
	"encoding/json"
	"os"
	"strconv"
	"time"

	"isoeffort.example/calibrate/cohort"
	"isoeffort.example/calibrate/cohort/pacing"
	"isoeffort.example/effort"
)

func (s *study) writeAthletes(file string) error {
	rows := [][]string{{
		"runner", "results", "last_date", "hour_power_w_kg", "endurance_exponent", "fade", "fade_shape", "braking",
		"log_sd_hour_power", "log_sd_endurance_exponent", "log_sd_braking",
	}}
	for _, a := range s.model.Athletes {
		row := []string{a.Runner, strconv.Itoa(a.Results), a.Last.UTC().Format(time.DateOnly)}
		for n := range effort.Number(effort.Numbers) {
			row = append(row, decimal(a.Athlete.Get(n), 4))
		}
		for _, n := range []effort.Number{effort.HourPower, effort.Endurance, effort.Braking} {
			row = append(row, decimal(a.LogSD[n], 4))
		}
		rows = append(rows, row)
	}
	return writeCSV(file, rows)
}

func (s *study) writeCourses(file string) error {
	rows := [][]string{{"course", "results", "editions", "distance_m", "ascent_m", "descent_m", "effect_log", "sd_log", "own_log"}}
	for _, c := range s.model.Courses {
		rows = append(rows, []string{
			c.Name, strconv.Itoa(c.Results), strconv.Itoa(c.Editions), decimal(c.Distance, 0), decimal(c.Ascent, 0),
			decimal(c.Descent, 0), decimal(c.Effect, 4), decimal(c.SD, 4), decimal(c.Own, 4),
		})
	}
	return writeCSV(file, rows)
}

// writePredictions writes a row for each result held back, in the order of the file. The
// plain columns are the best forecast allowed: with course effects, and under -same-day
// with the day's field.
func (s *study) writePredictions(file string) error {
	header := []string{"runner", "race", "course", "date", "time_s", "earlier_results", "field"}
	for _, of := range []string{"", "own_", "without_course_", "with_course_", "same_day_"} {
		header = append(header, of+"median_s", of+"p5_s", of+"p95_s")
	}
	rows := [][]string{header}
	for _, f := range s.forecasts {
		r := f.Result
		row := []string{r.Runner, r.Race, r.Course, r.Date.UTC().Format(time.DateOnly), decimal(r.Time.Seconds(), 1), strconv.Itoa(f.Used), strconv.Itoa(f.Field)}
		for _, i := range []cohort.Interval{best(f), f.Own, f.Without, f.With, f.Day} {
			row = append(row, seconds(i.Median), seconds(i.Low), seconds(i.High))
		}
		rows = append(rows, row)
	}
	return writeCSV(file, rows)
}

func best(f cohort.Forecast) cohort.Interval {
	if f.Day.Median > 0 {
		return f.Day
	}
	return f.With
}

// seconds leaves what was not asked for empty.
func seconds(d time.Duration) string {
	if d == 0 {
		return ""
	}
	return decimal(d.Seconds(), 1)
}

func (s *study) writeSplits(file string) error {
	rows := [][]string{{"runner", "race", "distance_m", "elapsed_s", "given_finish_s", "from_fit_s", "given_finish_and_sections_s"}}
	for _, v := range s.splits {
		alone := ""
		if v.fromFit {
			alone = decimal(v.alone, 1)
		}
		rows = append(rows, []string{v.result.Runner, v.result.Race, decimal(v.distance, 1), decimal(v.elapsed, 1), decimal(v.given, 1), alone, decimal(v.there, 1)})
	}
	return writeCSV(file, rows)
}

// population is what population.json holds.
type population struct {
	Run        runInfo
	Population cohort.Population
	Pacing     *pacingInfo `json:",omitempty"`
	Warnings   []string
}

type pacingInfo struct {
	Shared      pacing.Shape
	Groups      []pacing.Group
	Runners     int
	Error, Even float64
}

func (s *study) writePopulation(file string) error {
	p := population{Run: s.info(), Population: s.model.Population, Warnings: s.warnings}
	if s.pacing != nil {
		p.Pacing = &pacingInfo{s.pacing.Shared, s.pacing.Groups, s.pacing.Runners, s.pacing.Error, s.pacing.Even}
	}
	text, err := json.MarshalIndent(p, "", "  ")
	if err != nil {
		return err
	}
	return os.WriteFile(file, append(text, '\n'), 0o644)
}
