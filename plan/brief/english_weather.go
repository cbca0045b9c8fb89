package brief

import (
	"math"
	"time"
)

// Bounds in °C of what is told of the weather. [Our own]
const (
	steadyAir = 2.0 // between the start and the warmest, within which it is one temperature
	coldAir   = 5.0
	unlikely  = 10.0 // that the WBGT is above the air: the temperatures were not stated
)

// weatherWords tell the weather, what the plan allows for it, and what to do in heat or
// cold. What to do is common practice, no source; the cautions come with it.
func weatherWords(l Line, m Measure) string {
	return joined(temperatures(l, m), allowance(l, m), inHeat(*l.Air), inCold(l, m))
}

// temperatures are those of the start, and of the warmest place.
func temperatures(l Line, m Measure) string {
	a := l.Air
	switch {
	case a.WBGT > a.Warmest+unlikely:
		return ""
	case a.Warmest < a.Start+steadyAir && a.Coldest > a.Start-steadyAir:
		return "The forecast is about " + m.Degrees(a.Start) + " from start to finish."
	case a.Warmest < a.Start+steadyAir:
		return "The forecast is " + m.Degrees(a.Start) + " at the start, and colder later."
	}
	return "The forecast is " + m.Degrees(a.Start) + " at the start and " + m.Degrees(a.Warmest) + " around " + hour(l, a.WarmestAt, a.WarmestFrom, m) + "."
}

// hour is the time by the clock to the half hour, or without a clock the place.
func hour(l Line, t time.Time, from float64, m Measure) string {
	if t.IsZero() {
		return m.place(from)
	}
	t = t.Round(30 * time.Minute)
	gun := l.Clock.Add(-l.Elapsed)
	return timeOfDay(t, t.Sub(gun))
}

// allowance is what the plan allows for the weather. It rests on fast runners; slower ones
// lose more in heat (Ely et al. 2007, MSSE 39:487, from memory).
func allowance(l Line, m Measure) string {
	hot := l.Air.WBGT >= heatFrom
	switch {
	case hot && !l.Allowed:
		return "The plan allows no time for heat, which will make you slower: let it."
	case l.Took < 30*time.Second:
		return ""
	}
	s := "The plan allows " + m.about(l.Took) + " for it"
	if l.Night {
		s = "The plan allows " + m.about(l.Took) + " for weather and dark"
	}
	if hot {
		s += "; many lose more"
	}
	return s + "."
}

func inHeat(a Air) string {
	if a.WBGT < heatFrom {
		return ""
	}
	s := "Slow down early, seek shade, put water on your head. Dizzy, confused, or cold and shivering in the heat? Stop and get help."
	if a.WBGT >= severeFrom {
		s = "Heat like this is dangerous: races are shortened or called off for it. Do as the race and its medical team say. " + s
	}
	return s
}

func inCold(l Line, m Measure) string {
	a := l.Air
	if cold := math.Min(a.Coldest, a.Start); cold >= coldAir {
		return ""
	}
	if a.Coldest < a.Start-steadyAir {
		return "It falls to " + m.Degrees(a.Coldest) + " around " + hour(l, a.ColdestAt, a.ColdestFrom, m) + ": have a warm, dry layer with you."
	}
	return "Keep warm until the start, and have a dry layer for when you slow down."
}
