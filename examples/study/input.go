package main

import (
	"bytes"
	"crypto/sha256"
	"encoding/csv"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strconv"

	"isoeffort.example/calibrate/cohort/invented"
	"isoeffort.example/effort/record"
)

// An input is a file read, for the report.
type input struct {
	Role, File string
	SHA256     string
	Bytes      int
}

// load reads the files, or invents a field and writes it into the folder first.
func (s *study) load() error {
	if s.o.Results == "" {
		if err := s.invent(); err != nil {
			return err
		}
	}
	text, err := s.read("results", s.o.Results)
	if err != nil {
		return err
	}
	all, err := record.Read(bytes.NewReader(text), record.Options{File: s.o.Results})
	if err != nil {
		return err
	}
	s.results = all.Results
	s.warn(all.Warnings)
	for _, r := range s.results {
		if r.Distance == 0 {
			return fmt.Errorf("%s:%d: a study needs the distance in the file", s.o.Results, r.Line)
		}
	}
	if s.o.Splits != "" {
		if err := s.loadSplits(); err != nil {
			return err
		}
	}
	if s.o.Profiles != "" {
		return s.loadProfiles()
	}
	return nil
}

func (s *study) loadSplits() error {
	text, err := s.read("splits", s.o.Splits)
	if err != nil {
		return err
	}
	splits, warnings, err := record.ReadSplits(bytes.NewReader(text), record.Options{File: s.o.Splits})
	if err != nil {
		return err
	}
	s.warn(warnings)
	s.warn(record.AttachSplits(s.results, splits))
	return nil
}

func (s *study) loadProfiles() error {
	text, err := s.read("profiles", s.o.Profiles)
	if err != nil {
		return err
	}
	profiles, warnings, err := record.ReadProfiles(bytes.NewReader(text), record.Options{File: s.o.Profiles})
	if err != nil {
		return err
	}
	s.warn(warnings)
	s.profiles = profiles
	return nil
}

func (s *study) read(role, file string) ([]byte, error) {
	text, err := os.ReadFile(file)
	if err == nil {
		s.inputs = append(s.inputs, input{role, filepath.Base(file), fmt.Sprintf("%x", sha256.Sum256(text)), len(text)})
	}
	return text, err
}

// invent makes up a field and writes its results and splits.
func (s *study) invent() error {
	results, _ := invented.Field{Runners: 120, Courses: 40, SplitCourses: 6}.Make(rand.New(rand.NewPCG(s.o.Seed, 0)))
	s.o.Results, s.o.Splits = filepath.Join(s.o.Out, "results.csv"), filepath.Join(s.o.Out, "splits.csv")
	var text bytes.Buffer
	if err := record.Write(&text, results); err != nil {
		return err
	}
	if err := os.WriteFile(s.o.Results, text.Bytes(), 0o644); err != nil {
		return err
	}
	rows := [][]string{{"runner", "race", "distance_m", "ascent_m", "descent_m", "elapsed_s"}}
	for _, r := range results {
		for _, v := range r.Splits {
			rows = append(rows, []string{r.Runner, r.Race, decimal(v.Distance, 0), decimal(v.Ascent, 0), decimal(v.Descent, 0), decimal(v.Elapsed, 0)})
		}
	}
	return writeCSV(s.o.Splits, rows)
}

func writeCSV(file string, rows [][]string) error {
	var text bytes.Buffer
	w := csv.NewWriter(&text)
	if err := w.WriteAll(rows); err != nil {
		return err
	}
	return os.WriteFile(file, text.Bytes(), 0o644)
}

func decimal(v float64, places int) string { return strconv.FormatFloat(v, 'f', places, 64) }
