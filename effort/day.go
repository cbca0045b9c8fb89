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

// A Night is a runner's own factor on capability in the dark, for those who know theirs.
type Night struct {
	From, To time.Duration // times of day; each change takes half an hour around it. Equal: no night
	Factor   float64       // on capability. 0 means 1: no loss
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

func (n Night) check() error {
	if !(n.Factor == 0 || n.Factor >= 0.3 && n.Factor <= 1.5) {
		return fmt.Errorf("%w: factor %g is not within 0.3 to 1.5", ErrDay, n.Factor)
	}
	if n.From == n.To && n.factor() != 1 {
		return fmt.Errorf("%w: a factor of %g without the times of the night", ErrDay, n.Factor)
	}
	if n.From < 0 || n.To < 0 || n.From > 24*time.Hour || n.To > 24*time.Hour {
		return fmt.Errorf("%w: %v to %v are not times of day", ErrDay, n.From, n.To)
	}
	dark := (n.To - n.From + 24*time.Hour) % (24 * time.Hour)
	if n.From != n.To && (dark < 30*time.Minute || dark > 24*time.Hour-30*time.Minute) {
		return fmt.Errorf("%w: a night from %v to %v leaves less than half an hour of dark or of light", ErrDay, n.From, n.To)
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

// factor is on capability in the dark.
func (n Night) factor() float64 {
	if n.Factor == 0 {
		return 1
	}
	return n.Factor
}

// darkness is the share of the dark at a clock time in seconds, and its slope.
func (n Night) darkness(t float64) (value, slope float64) {
	if n.From == n.To {
		return 0, 0
	}
	// since is how long ago in seconds an event was, from half an edge before it on.
	since := func(event time.Duration) float64 {
		s := t - event.Seconds() + nightEdge/2
		return s - dayLength*math.Floor(s/dayLength)
	}
	from, to := since(n.From), since(n.To)
	if from <= to { // the night fell last
		return ramp(from)
	}
	value, slope = ramp(to)
	return 1 - value, -slope
}

// ramp goes smoothly from 0 to 1 over an edge, s seconds on.
func ramp(s float64) (value, slope float64) {
	u := math.Min(1, s/nightEdge)
	return u * u * (3 - 2*u), 6 * u * (1 - u) / nightEdge
}

// moment is a place in the tables: between node and the next, share of the step on.
type moment struct {
	node  int
	share float64
	held  bool // before the first node or beyond the last: nothing changes
}

// momentIn finds the place in a table of so many nodes, s seconds after its first.
func momentIn(nodes int, s float64, repeats bool) moment {
	if repeats && !(s >= 0 && s < dayLength) {
		s -= dayLength * math.Floor(s/dayLength)
	}
	place, last := s/dayStep, nodes-1
	switch {
	case !(place > 0):
		return moment{0, 0, true}
	case place >= float64(last):
		return moment{last, 0, true}
	}
	i := int(place)
	return moment{i, place - float64(i), false}
}

// at is the value of a table at a moment, and its slope.
func (m moment) at(table []node) (value, slope float64) {
	if m.held {
		return table[m.node].value, 0
	}
	a, b := table[m.node], table[m.node+1]
	if a == b && a.slope == 0 {
		return a.value, 0
	}
	return hermite(a, b, m.share, dayStep)
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
