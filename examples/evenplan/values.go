package main

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"

	"isoeffort.example/effort"
	"isoeffort.example/plan"
)

// clock is a duration given as H:MM:SS.
type clock time.Duration

func (c *clock) String() string { return time.Duration(*c).String() }

// Set reads H:MM:SS, above zero.
func (c *clock) Set(s string) error {
	parts := strings.Split(s, ":")
	if len(parts) != 3 {
		return errors.New("not a time such as 10:30:00")
	}
	total := 0
	for i, part := range parts {
		n, err := strconv.ParseUint(part, 10, 16)
		if err != nil || i > 0 && (n > 59 || len(part) != 2) {
			return errors.New("not a time such as 10:30:00")
		}
		total = total*60 + int(n)
	}
	switch {
	case total == 0:
		return errors.New("a goal must be more than zero")
	case total > 1000*60*60:
		return errors.New("a goal must be at most 1000:00:00")
	}
	*c = clock(time.Duration(total) * time.Second)
	return nil
}

// every is a spacing of splits given as 5km, 1mi or landmark.
type every struct {
	spacing plan.Spacing
	given   bool
}

func (e *every) String() string { return "" }

// Set reads a spacing.
func (e *every) Set(s string) error {
	e.given = true
	if s == "landmark" {
		e.spacing = plan.AtLandmarks
		return nil
	}
	for unit, metres := range map[string]float64{"km": 1000, "mi": float64(plan.EveryMile)} {
		if text, ok := strings.CutSuffix(s, unit); ok {
			v, err := number(text)
			if err == nil && v*metres >= 100 && v <= 1000 {
				e.spacing = plan.Spacing(v * metres)
				return nil
			}
		}
	}
	return errors.New("not landmark or a distance of at least 0.1 km such as 1km, 5km or 1mi")
}

// athlete is a runner given as numbers.
type athlete struct {
	effort.Athlete
	given bool
}

func (a *athlete) String() string { return "" }

// athleteKeys are the names of the numbers.
var athleteKeys = map[string]effort.Number{
	"hour_power": effort.HourPower, "endurance": effort.Endurance, "fade": effort.Fade,
	"fade_shape": effort.FadeShape, "braking": effort.Braking,
}

// Set reads NAME=NUMBER,...
func (a *athlete) Set(s string) error {
	a.Athlete, a.given = effort.Usual(12), true
	seen := map[string]bool{}
	for _, item := range strings.Split(s, ",") {
		key, text, ok := strings.Cut(strings.TrimSpace(item), "=")
		n, known := athleteKeys[key]
		switch {
		case !ok || !known:
			return fmt.Errorf("%q is not one of hour_power, endurance, fade, fade_shape, braking with = and a number", item)
		case seen[key]:
			return fmt.Errorf("%s is given twice", key)
		}
		seen[key] = true
		v, err := number(text)
		if err != nil {
			return fmt.Errorf("%s: %q is not a number", key, text)
		}
		if n == effort.FadeShape && v == 0 {
			return errors.New("fade_shape 0 is not within 0.1 to 2")
		}
		a.Athlete = a.Athlete.Set(n, v)
	}
	if err := a.Check(); err != nil {
		return errors.New(strings.TrimPrefix(err.Error(), "effort: "+effort.ErrAthlete.Error()+": "))
	}
	return nil
}

// number reads a finite number.
func number(s string) (float64, error) {
	v, err := strconv.ParseFloat(s, 64)
	if err == nil && (math.IsNaN(v) || math.IsInf(v, 0)) {
		return 0, strconv.ErrRange
	}
	return v, err
}

// fold breaks a text into lines of at most width bytes.
func fold(text string, width int) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		if line != "" && len(line)+1+len(word) > width {
			lines, line = append(lines, line), ""
		}
		if line != "" {
			line += " "
		}
		line += word
	}
	return append(lines, line)
}
