package effort

import (
	"errors"
	"fmt"
	"math"
	"time"

	"isoeffort.example/effort/weather"
)

// An Hour is the weather at one time of the clock.
type Hour struct {
	Clock       time.Duration // since the midnight before the race
	Temperature float64       // of the air in the shade, °C, -40 to 50
	Humidity    float64       // relative, %, 0 to 100

	// WBGT in °C as measured or forecast, say by weather.ISO7243 from a globe and a
	// natural wet bulb. 0 computes it from Temperature and Humidity.
	WBGT float64

	// Shade computes the WBGT for night, shade or overcast (weather.ShadeWBGT), and not
	// for moderate sun (weather.WBGT).
	Shade bool
}

// A Day is the weather by the clock, and the night. It does not change and may be shared
// between goroutines.
type Day struct {
	hours   []Hour
	night   Night
	first   float64 // seconds since midnight, of the tables
	repeats bool
	hotter  float64            // added to every WBGT, °C
	columns [dayColumns][]node // by dayStep
}

// The columns of a day.
const (
	wbgtColumn = iota
	temperatureColumn
	wbgtByTemperature
	wbgtByHumidity
	dayColumns
)

const (
	dayStep   = 600.0   // s between the nodes of a day
	dayLength = 86400.0 // s
	nightEdge = 1800.0  // s
)

// ErrDay is wrapped by the error for weather that cannot be.
var ErrDay = errors.New("weather out of range")

// NewDay makes a day from hours in order of their clock, and a night. Between hours
// temperature and humidity run straight. Hours that span less than a day repeat every
// day, running straight from the last to the first; otherwise the first and the last
// hold outside. No hours is a day without weather: no heat. The result is looked at
// every ten minutes of the clock and smoothly between.
//
// The error wraps ErrDay and names the hour, counted from 1.
func NewDay(hours []Hour, night Night) (*Day, error) {
	for i, h := range hours {
		if err := h.check(); err != nil {
			return nil, fmt.Errorf("effort: hour %d: %w", i+1, err)
		}
		if i > 0 && h.Clock <= hours[i-1].Clock {
			return nil, fmt.Errorf("effort: hour %d: %w: its clock is not after the hour's before", i+1, ErrDay)
		}
	}
	if err := night.check(); err != nil {
		return nil, fmt.Errorf("effort: night: %w", err)
	}
	d := &Day{hours: append([]Hour(nil), hours...), night: night}
	d.tabulate()
	return d, nil
}

func (h Hour) check() error {
	for _, v := range []struct {
		name      string
		value     float64
		low, high float64
	}{
		{"clock", h.Clock.Hours(), -1000, 1000},
		{"temperature", h.Temperature, -40, 50},
		{"humidity", h.Humidity, 0, 100},
		{"WBGT", h.WBGT, -40, 50},
	} {
		if !(v.value >= v.low && v.value <= v.high) {
			return fmt.Errorf("%w: %s %g is not within %g to %g", ErrDay, v.name, v.value, v.low, v.high)
		}
	}
	if w, _, _ := h.wbgt(); !finite(w) {
		return fmt.Errorf("%w: no WBGT for %g °C at %g %%", ErrDay, h.Temperature, h.Humidity)
	}
	return nil
}

// A Shift is a change to every hour of a day, to ask what if.
type Shift struct {
	Temperature float64 // °C
	Humidity    float64 // points of %
	WBGT        float64 // °C, over whatever the rest makes of it
}

// Shifted returns the day with every hour changed; hours whose WBGT was given keep it but
// for the shift of it. The error is as NewDay's.
func (d *Day) Shifted(s Shift) (*Day, error) {
	if !(math.Abs(s.WBGT) <= 50) {
		return nil, fmt.Errorf("effort: %w: a shift of the WBGT by %g °C", ErrDay, s.WBGT)
	}
	hours := append([]Hour(nil), d.hours...)
	for i := range hours {
		hours[i].Temperature += s.Temperature
		hours[i].Humidity += s.Humidity
	}
	shifted, err := NewDay(hours, d.night)
	if err != nil {
		return nil, err
	}
	shifted.hotter = d.hotter + s.WBGT
	return shifted, nil
}

// wbgt is the hour's WBGT and its derivatives by temperature and humidity.
func (h Hour) wbgt() (value, byTemperature, byHumidity float64) {
	switch {
	case h.WBGT != 0:
		return h.WBGT, 0, 0
	case h.Shade:
		byTemperature, byHumidity = weather.ShadeWBGTSlopes(h.Temperature, h.Humidity)
		return weather.ShadeWBGT(h.Temperature, h.Humidity), byTemperature, byHumidity
	}
	byTemperature, byHumidity = weather.WBGTSlopes(h.Temperature, h.Humidity)
	return weather.WBGT(h.Temperature, h.Humidity), byTemperature, byHumidity
}

// tabulate fills the tables.
func (d *Day) tabulate() {
	if n := len(d.hours); n > 0 {
		d.first = d.hours[0].Clock.Seconds()
		span := d.hours[n-1].Clock.Seconds() - d.first
		if d.repeats = span < dayLength; d.repeats {
			span = dayLength
		}
		nodes := int(math.Ceil(span/dayStep)) + 1
		for c := range d.columns {
			d.columns[c] = make([]node, nodes)
		}
		for i := range nodes {
			for c, value := range d.columnsAt(d.first + float64(i)*dayStep) {
				d.columns[c][i].value = value
			}
		}
		for c := range d.columns {
			slopes(d.columns[c], dayStep, d.repeats)
		}
	}
}

// slopes fills in the slopes of nodes a step apart by central differences; a table that
// does not repeat is level at its ends.
func slopes(table []node, step float64, repeats bool) {
	n := len(table) - 1
	for i := 1; i < n; i++ {
		table[i].slope = (table[i+1].value - table[i-1].value) / (2 * step)
	}
	if repeats && n > 1 {
		table[0].slope = (table[1].value - table[n-1].value) / (2 * step)
		table[n].slope = table[0].slope
	}
}

// columnsAt is the weather at a time in seconds since midnight: between two hours, both
// are weighed by how near they are, each with the temperature and humidity of the time.
func (d *Day) columnsAt(t float64) (row [dayColumns]float64) {
	a, b, share := d.around(t)
	now := a
	now.Temperature += share * (b.Temperature - a.Temperature)
	now.Humidity += share * (b.Humidity - a.Humidity)
	for _, end := range []struct {
		hour   Hour
		weight float64
	}{{a, 1 - share}, {b, share}} {
		if end.weight == 0 {
			continue
		}
		end.hour.Temperature, end.hour.Humidity = now.Temperature, now.Humidity
		value, byTemperature, byHumidity := end.hour.wbgt()
		row[wbgtColumn] += end.weight * value
		row[wbgtByTemperature] += end.weight * byTemperature
		row[wbgtByHumidity] += end.weight * byHumidity
	}
	row[temperatureColumn] = now.Temperature
	return row
}

// around returns the hours on either side of a time and how far it is from the one to
// the other.
func (d *Day) around(t float64) (a, b Hour, share float64) {
	n := len(d.hours)
	for i := 1; i < n; i++ {
		if t <= d.hours[i].Clock.Seconds() {
			a, b = d.hours[i-1], d.hours[i]
			return a, b, (t - a.Clock.Seconds()) / (b.Clock - a.Clock).Seconds()
		}
	}
	a, b = d.hours[n-1], d.hours[0]
	if !d.repeats {
		return a, a, 0
	}
	gap := dayLength - (a.Clock - b.Clock).Seconds()
	return a, b, math.Min(1, math.Max(0, t-a.Clock.Seconds())/gap)
}

// weather is the moment in the columns at a clock time in seconds.
func (d *Day) weather(clock float64) moment {
	return momentIn(len(d.columns[0]), clock-d.first, d.repeats)
}

// darkAt is the share of the dark at a clock time in seconds, and its slope.
func (d *Day) darkAt(clock float64) (value, slope float64) {
	return d.night.darkness(clock)
}

// wbgtAt is the WBGT at a moment, and its slope.
func (d *Day) wbgtAt(m moment) (value, slope float64) {
	value, slope = m.at(d.columns[wbgtColumn])
	return value + d.hotter, slope
}

// WBGT returns the WBGT in °C at a time since midnight, NaN on a day without weather.
func (d *Day) WBGT(clock time.Duration) float64 {
	if len(d.hours) == 0 {
		return math.NaN()
	}
	value, _ := d.wbgtAt(d.weather(clock.Seconds()))
	return value
}

// Temperature returns the temperature of the air in °C at a time since midnight, NaN on a
// day without weather.
func (d *Day) Temperature(clock time.Duration) float64 {
	if len(d.hours) == 0 {
		return math.NaN()
	}
	value, _ := d.weather(clock.Seconds()).at(d.columns[temperatureColumn])
	return value
}

// Darkness returns the share of the dark, 0 to 1, at a time since midnight.
func (d *Day) Darkness(clock time.Duration) float64 {
	value, _ := d.darkAt(clock.Seconds())
	return value
}
