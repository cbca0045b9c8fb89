package effort

import (
	"math"

	"isoeffort.example/effort/weather"
)

// place is what the surroundings make of one cell, whatever the hour.
type place struct {
	air                // at the standard's density
	met        float64 // the density that the last traverse met, a factor on the drag
	capability float64 // altitude's factor
	standard   float64 // temperature of the standard atmosphere there, °C
	density    float64 // that of the air over the standard, at 0 °C; 1 without ThinAir
	clock      float64 // what the clock is ahead of State.Moving, s
}

// hour is what the day makes of a place at a time: factors, and their relative
// derivatives by the clock.
type hour struct {
	capability, capabilitySlope float64
	density, densitySlope       float64
}

// zeroCelsius is 0 °C in K.
const zeroCelsius = 273.15

// meet prepares the places, or none where nothing depends on them.
func (in *Integrator) meet(s Surroundings) {
	in.surroundings = s
	in.places = in.places[:0]
	in.heatShare = s.Heat.share()
	windy := s.Wind.Speed != 0 && in.ground.heading != nil
	if s.Altitude.Loss == 0 && s.Day == nil && !s.ThinAir && !windy {
		return
	}
	stop, clock, start := 0, s.Start.Seconds(), 0.0
	for j := range in.ground.cells {
		c := &in.ground.cells[j]
		for stop < len(s.Stops) && s.Stops[stop].Distance <= start {
			clock += s.Stops[stop].Time.Seconds()
			stop++
		}
		p := place{air: in.mover.air, density: 1, clock: clock}
		p.capability = s.Altitude.factor(c.altitude).value
		if windy {
			p.blow(s.Wind, in.ground.heading[j])
		}
		if s.ThinAir {
			p.density = weather.AirDensity(c.altitude, 0) / weather.StandardDensity
			p.standard = weather.StandardTemperature(c.altitude)
		}
		in.places = append(in.places, p)
		start = c.end
	}
}

// blow adds a wind that comes from a compass direction to what the air does on a cell
// with a mean heading.
func (p *place) blow(w Wind, heading [2]float64) {
	head, cross := w.along(heading)
	p.wind += head
	p.cross = cross
}

// along returns the parts of the wind against and across a heading, m/s. A cell that
// turns has a mean heading shorter than 1, and meets less of the wind on the mean.
func (w Wind) along(heading [2]float64) (head, cross float64) {
	sin, cos := math.Sincos(w.From * math.Pi / 180)
	return w.Speed * (sin*heading[0] + cos*heading[1]), w.Speed * (sin*heading[1] - cos*heading[0])
}

// hourAt is what the day makes of a place at a clock time in seconds.
func (in *Integrator) hourAt(p *place, clock float64) hour {
	s := &in.surroundings
	h := hour{capability: 1, density: p.density}
	day, now := s.Day, moment{}
	weathered := day != nil && len(day.hours) > 0
	if weathered {
		now = day.weather(clock)
	}
	if s.ThinAir {
		temperature, slope := p.standard, 0.0
		if weathered {
			temperature, slope = now.at(day.columns[temperatureColumn])
		}
		kelvin := temperature + zeroCelsius
		h.density *= zeroCelsius / kelvin
		h.densitySlope = -slope / kelvin
	}
	if weathered && (s.Heat.Loss != 0 || s.Heat.ColdLoss != 0) {
		wbgt, slope := day.wbgtAt(now)
		f := s.Heat.factor(in.heatShare, wbgt)
		h.capability, h.capabilitySlope = f.value, f.byWBGT*slope/f.value
	}
	if day != nil && day.night.factor() != 1 {
		dark, slope := day.darkAt(clock)
		lost := 1 - day.night.factor()
		h.capability *= 1 - lost*dark
		h.capabilitySlope -= lost * slope / (1 - lost*dark)
	}
	return h
}
