package brief

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"

	"isoeffort.example/internal/say"
)

// A Measure writes distances, heights, paces and times as they are spoken, as numbers with
// the symbols of metric or imperial units, so in any language. Words get it with every line.
type Measure struct {
	Imperial bool
	Course   float64 // its length in metres, which no place exceeds
}

const (
	wholeFrom = 10.0 // units from which places are told in whole ones
	farCourse = 30.0 // units from which a course is told so
)

func measureOf(length float64, imperial bool) Measure { return Measure{imperial, length} }

func (m Measure) units() say.Units {
	if m.Imperial {
		return say.Imperial()
	}
	return say.Metric()
}

// unit is the unit of distance in metres, and symbol its symbol.
func (m Measure) unit() float64  { return m.units().Distance }
func (m Measure) symbol() string { return m.units().Long }

// Place writes a distance from the start, never one beyond the finish: whole units on a
// long course from 10 on, tenths otherwise.
func (m Measure) Place(metres float64) string {
	value, end := metres/m.unit(), m.Course/m.unit()
	if end >= farCourse && value >= wholeFrom-0.05 {
		return fmt.Sprintf("%.0f %s", math.Min(math.Round(value), math.Floor(end)), m.symbol())
	}
	return trimmed(math.Min(math.Round(10*value), math.Floor(10*end+1e-6))/10) + " " + m.symbol()
}

// Stretch writes a length: metres or yards under a unit, tenths up to ten, and whole units
// beyond.
func (m Measure) Stretch(metres float64) string {
	value := metres / m.unit()
	switch {
	case value >= wholeFrom-0.05:
		return fmt.Sprintf("%.0f %s", value, m.symbol())
	case value >= 0.95:
		return trimmed(math.Round(10*value)/10) + " " + m.symbol()
	case m.Imperial:
		return fmt.Sprintf("%.0f yd", 50*math.Max(1, math.Round(metres/0.9144/50)))
	}
	return fmt.Sprintf("%.0f m", 50*math.Max(1, math.Round(metres/50)))
}

// Exactly writes a length to the tenth.
func (m Measure) Exactly(metres float64) string {
	return trimmed(math.Round(10*metres/m.unit())/10) + " " + m.symbol()
}

// Height writes a rise or a drop, to 10 m or to 10 ft, and to 50 ft from 500 on.
func (m Measure) Height(metres float64) string {
	if m.Imperial {
		step := 10.0
		if metres >= 500*say.Foot {
			step = 50
		}
		return fmt.Sprintf("%.0f ft", step*math.Max(1, math.Round(metres/say.Foot/step)))
	}
	return fmt.Sprintf("%.0f m", 10*math.Max(1, math.Round(metres/10)))
}

// Pace writes a time per kilometre as one for a unit of distance.
func (m Measure) Pace(perKilometre time.Duration) string {
	return say.MS(m.units().Pace(perKilometre))
}

// Degrees writes a temperature in °C in whole degrees, Celsius or Fahrenheit.
func (m Measure) Degrees(celsius float64) string {
	if m.Imperial {
		return fmt.Sprintf("%d °F", int(math.Round(celsius*9/5+32)))
	}
	return fmt.Sprintf("%d °C", int(math.Round(celsius)))
}

// Watch writes a time as a watch shows it, in hours and minutes.
func (m Measure) Watch(d time.Duration) string { return say.HM(d) }

// trimmed writes a number to a tenth, and without one that is 0.
func trimmed(value float64) string {
	return strings.TrimSuffix(strconv.FormatFloat(value, 'f', 1, 64), ".0")
}
