package main

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"os"
	"strings"
	"time"

	"isoeffort.example/effort"
	"isoeffort.example/effort/record"
)

// clockTimes are two times of day given as HH:MM-HH:MM.
type clockTimes struct {
	from, to time.Duration
	given    bool
}

func (c *clockTimes) String() string { return "" }

// Set reads HH:MM-HH:MM.
func (c *clockTimes) Set(s string) (err error) {
	from, to, _ := strings.Cut(s, "-")
	c.given = true
	if c.from, err = timeOfDay(from); err == nil {
		c.to, err = timeOfDay(to)
	}
	if err != nil {
		return errors.New("not two times of day such as 21:30-05:00")
	}
	return nil
}

// timeOfDay reads HH:MM as a time since midnight.
func timeOfDay(s string) (time.Duration, error) {
	t, err := time.Parse("15:04", strings.TrimSpace(s))
	return time.Duration(t.Hour())*time.Hour + time.Duration(t.Minute())*time.Minute, err
}

// addWeather reads the day's weather and night into the race. Hours that go back mean the
// next day.
func (o *options) addWeather() error {
	if o.day.weather == "" && !o.day.night.given {
		return nil
	}
	var hours []effort.Hour
	if o.day.weather != "" {
		f, err := os.Open(o.day.weather)
		if err != nil {
			return &record.Error{File: o.day.weather, Err: cause(err)}
		}
		defer f.Close()
		if hours, err = readHours(f, o.day.weather); err != nil {
			return err
		}
		o.race.Surroundings.Heat = effort.Heat{Loss: effort.HeatLoss, Growth: 1}
	}
	day, err := effort.NewDay(hours, effort.Night{From: o.day.night.from, To: o.day.night.to, Factor: o.nightFactor})
	if err != nil {
		name := o.day.weather
		if name == "" {
			name = "evenplan: -night"
		}
		return fmt.Errorf("%s: %s", name, strings.TrimPrefix(err.Error(), "effort: "))
	}
	o.race.Surroundings.Day = day
	return nil
}

// weatherColumns are the columns of a weather file, the first three required.
var weatherColumns = []string{"time", "temperature_c", "humidity_percent", "shade", "wbgt_c"}

// readHours reads a CSV file of hours.
func readHours(r io.Reader, name string) ([]effort.Hour, error) {
	in := csv.NewReader(r)
	in.TrimLeadingSpace = true
	header, err := in.Read()
	if err != nil {
		return nil, &record.Error{File: name, Line: 1, Err: fmt.Errorf("no header: %w", err)}
	}
	at := map[string]int{}
	for i, h := range header {
		at[strings.ToLower(strings.TrimSpace(strings.TrimPrefix(h, "\ufeff")))] = i
	}
	for _, c := range weatherColumns[:3] {
		if _, ok := at[c]; !ok {
			return nil, &record.Error{File: name, Line: 1, Err: fmt.Errorf("no column %s", c)}
		}
	}
	var hours []effort.Hour
	for {
		row, err := in.Read()
		if err == io.EOF {
			break
		}
		line, _ := in.FieldPos(0)
		var h effort.Hour
		if err == nil {
			h, err = readHour(row, at)
		}
		if err != nil {
			var syntax *csv.ParseError
			if errors.As(err, &syntax) {
				line, err = syntax.Line, syntax.Err
			}
			return nil, &record.Error{File: name, Line: line, Err: err}
		}
		for n := len(hours); n > 0 && h.Clock <= hours[n-1].Clock; {
			h.Clock += 24 * time.Hour
		}
		hours = append(hours, h)
	}
	if len(hours) == 0 {
		return nil, &record.Error{File: name, Line: 1, Err: errors.New("no hours")}
	}
	return hours, nil
}

// readHour reads one row.
func readHour(row []string, at map[string]int) (h effort.Hour, err error) {
	field := func(name string) string {
		if i, ok := at[name]; ok {
			return strings.TrimSpace(row[i])
		}
		return ""
	}
	if h.Clock, err = timeOfDay(field("time")); err != nil {
		return h, fmt.Errorf("time %q is not a time of day such as 09:00", field("time"))
	}
	for name, v := range map[string]*float64{"temperature_c": &h.Temperature, "humidity_percent": &h.Humidity, "wbgt_c": &h.WBGT} {
		if text := field(name); text != "" || name != "wbgt_c" {
			if *v, err = number(text); err != nil {
				return h, fmt.Errorf("%s %q is not a number", name, text)
			}
		}
	}
	switch strings.ToLower(field("shade")) {
	case "yes":
		h.Shade = true
	case "no", "":
	default:
		return h, fmt.Errorf("shade %q is not yes or no", field("shade"))
	}
	return h, nil
}
