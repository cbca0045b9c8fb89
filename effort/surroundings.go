package effort

import (
	"errors"
	"fmt"
	"math"
	"time"

	"isoeffort.example/effort/weather"
)

// Surroundings are what the race's place and day add to the ground. The zero value adds
// nothing, and each piece left at its zero is off exactly.
type Surroundings struct {
	// Drag is the air's drag coefficient in J s² m⁻³ kg⁻¹, as in AirPower. 0 is no air.
	Drag float64

	// HeadWind is a wind in m/s against the runner wherever the course leads, negative
	// from behind. It needs Drag.
	HeadWind float64

	// Wind is a wind from one direction, met by the course's heading. It adds to HeadWind
	// and needs Drag and a course that knows its heading.
	Wind Wind

	// ThinAir makes the drag proportional to the density of the air, at the altitude of
	// the place and the temperature of the hour (or the standard atmosphere's, without a
	// Day); Drag is then that at weather.StandardDensity.
	ThinAir bool

	Altitude Altitude
	Heat     Heat

	// Day is the weather and the dark by the clock. Without it there is no heat and no
	// night.
	Day *Day

	// Start is the time of day at which State.Moving is 0, since the midnight from which
	// Day counts.
	Start time.Duration

	// Stops are halts, in order of distance, after which the clock is later than the time
	// spent moving says. They only matter beside a Day, and are not part of moving time.
	Stops []Stop

	// Crowd is what a full start leaves of the road, and Limits hold the runner back on
	// stretches of the course. Neither has levers.
	Crowd  Crowd
	Limits []Limit
}

// Wind is a steady wind at the runner's height, which is one half to two thirds of that
// of a forecast at 10 m over open ground; see weather.WindAtHeight.
type Wind struct {
	Speed float64 // m/s
	From  float64 // the compass direction that it blows from, degrees
}

// A Stop is a halt of the clock's.
type Stop struct {
	Distance float64 // m from the start
	Time     time.Duration
}

// Altitude is the loss of capability with height above the sea,
//
//	A = 1 − Loss (1 − Acclimatised) max(0, altitude − From)/1000,
//
// and at least 0.3. Wehrlin & Hallén 2006, EAJP 96:404 (from memory) measured 0.063 from
// 300 m on, up to 2800 m and on unacclimatised runners; beyond it is extrapolated.
type Altitude struct {
	Loss float64 // share of capability for 1000 m. 0 is off; AltitudeLoss is usual
	From float64 // altitude in m from which it counts. 0 means 300; AtSea means 0

	// Acclimatised is the share of the loss that living at altitude has given back, 0 to
	// 1. Nothing published fixes it for one runner: a stated choice. 0 is none.
	Acclimatised float64
}

const (
	// AltitudeLoss is Wehrlin & Hallén's loss of maximal oxygen uptake for 1000 m.
	AltitudeLoss = 0.063

	// AtSea, as Altitude.From, counts from sea level.
	AtSea = -1

	usualFrom     = 300.0
	leastAltitude = 0.3
)

// Heat is the loss of capability with the WBGT, the wet-bulb globe temperature in °C:
//
//	H = 1 − L max(0, WBGT − Above) − ColdLoss max(0, Below − WBGT),
//	L = Loss (1 − Acclimatised) max(1, Expected/2.25 h)^Growth,
//
// and at least 0.3. Mantzios et al. 2022, MSSE 54:153, over 1258 races of all lengths up
// to the marathon: best from 7.5 to 15 °C, HeatLoss above, for the fastest runners.
// Slower runners lose more (Ely et al. 2007, MSSE 39:487, for the direction): Growth 1
// makes the loss grow in proportion to the time that they are out. [Growth is our own.]
//
// The figures say what runners lost, not what is safe: see weather.HeatCaution.
type Heat struct {
	Loss     float64 // for a degree. 0 is off; HeatLoss is usual
	Above    float64 // °C WBGT. 0 means 15
	ColdLoss float64 // for a degree. 0 is off, as usual
	Below    float64 // °C WBGT. 0 means 7.5

	Growth   float64       // exponent. 0 is one loss for all
	Expected time.Duration // the time the race will take. 0 means 2.25 h or less

	// Acclimatised is the share of the loss that getting used to heat has given back, 0
	// to 1: a stated choice. 0 is none.
	Acclimatised float64
}

const (
	// HeatLoss is Mantzios and others' loss for one °C of WBGT.
	HeatLoss = weather.LossPerDegree

	fastHours = 2.25 // the Expected at which Growth begins
	leastHeat = 0.3
)

// ErrSurroundings is wrapped by the error for surroundings out of range.
var ErrSurroundings = errors.New("surroundings out of range")

var surroundingsBounds = []bound{
	{"drag coefficient", "", 0, 0.1},
	{"head wind", " m/s", -15, 30},
	{"wind", " m/s", 0, 30},
	{"wind direction", " degrees", -360, 360},
	{"altitude loss", " for 1000 m", 0, 0.2},
	{"altitude from which capability falls", " m", 0, 9000},
	{"acclimatisation to altitude", "", 0, 1},
	{"heat loss", " for a degree", 0, 0.05},
	{"heat's bound", " °C", -20, 40},
	{"cold loss", " for a degree", 0, 0.05},
	{"cold's bound", " °C", -20, 40},
	{"growth of heat loss", "", 0, 2},
	{"expected duration", " h", 0, 1000},
	{"acclimatisation to heat", "", 0, 1},
	{"start", " h after midnight", -1000, 1000},
}

// Check returns an error that wraps ErrSurroundings if a number is out of range.
func (s Surroundings) Check() error { return s.check() }

// check is Check without a copy.
func (s *Surroundings) check() error {
	values := [...]float64{
		s.Drag, s.HeadWind, s.Wind.Speed, s.Wind.From, s.Altitude.Loss, s.Altitude.from(),
		s.Altitude.Acclimatised, s.Heat.Loss, s.Heat.Above, s.Heat.ColdLoss, s.Heat.Below, s.Heat.Growth,
		s.Heat.Expected.Hours(), s.Heat.Acclimatised, s.Start.Hours(),
	}
	if i := misfit(values[:], surroundingsBounds); i >= 0 {
		return surroundingsBounds[i].refusal(ErrSurroundings, values[i])
	}
	return s.checkMore()
}

func (s *Surroundings) checkMore() error {
	before := 0.0
	for _, p := range s.Stops {
		if !(p.Distance >= before && finite(p.Distance)) || p.Time < 0 {
			return fmt.Errorf("effort: %w: stop of %v at %g m: stops go forward and take time", ErrSurroundings, p.Time, p.Distance)
		}
		before = p.Distance
	}
	if err := s.Crowd.check(); err != nil {
		return err
	}
	for _, l := range s.Limits {
		if err := l.check(); err != nil {
			return err
		}
	}
	if low, top := s.Heat.bounds(); low > top && s.Heat.ColdLoss > 0 {
		return fmt.Errorf("effort: %w: cold's bound %g °C is above heat's %g °C", ErrSurroundings, low, top)
	}
	if s.Day == nil && (s.Heat.Loss > 0 || s.Heat.ColdLoss > 0) {
		return fmt.Errorf("effort: %w: heat without a day's weather", ErrSurroundings)
	}
	return nil
}

// from is the altitude in m from which capability falls.
func (a Altitude) from() float64 {
	switch a.From {
	case 0:
		return usualFrom
	case AtSea:
		return 0
	}
	return a.From
}

// Factor returns what is left of capability at an altitude in metres, 1 if switched off. It
// is NaN at NaN and where a number is out of range.
func (a Altitude) Factor(altitude float64) float64 {
	if (&Surroundings{Altitude: a}).check() != nil {
		return math.NaN()
	}
	return a.factor(altitude).value
}

// altitudeFactor is a factor on capability and its derivatives.
type altitudeFactor struct{ value, byLoss, byFrom, byAcclimatised float64 }

func (a Altitude) factor(altitude float64) altitudeFactor {
	above := math.Max(0, altitude-a.from()) / 1000
	f := altitudeFactor{byLoss: -(1 - a.Acclimatised) * above, byAcclimatised: a.Loss * above}
	f.value = 1 + a.Loss*f.byLoss
	if f.value < leastAltitude {
		return altitudeFactor{value: leastAltitude}
	}
	if above > 0 {
		f.byFrom = a.Loss * (1 - a.Acclimatised) / 1000
	}
	return f
}

// bounds are the WBGT in °C between which nothing is lost.
func (h Heat) bounds() (low, top float64) {
	low, top = h.Below, h.Above
	if low == 0 {
		low = weather.BestWBGTLow
	}
	if top == 0 {
		top = weather.BestWBGTTop
	}
	return low, top
}

// share is what Loss is multiplied by.
func (h Heat) share() float64 { return (1 - h.Acclimatised) * h.growth() }

// growth is how much more is lost over the expected duration than by the fastest.
func (h Heat) growth() float64 { return math.Pow(h.longer(), h.Growth) }

// longer is how many times as long as the fastest the race is expected to take.
func (h Heat) longer() float64 { return math.Max(1, h.Expected.Hours()/fastHours) }

// Factor returns what is left of capability at a WBGT in °C, 1 if switched off. It is NaN
// at NaN and where a number is out of range.
func (h Heat) Factor(wbgt float64) float64 {
	if (&Surroundings{Heat: h, Day: &Day{}}).check() != nil {
		return math.NaN()
	}
	return h.factor(h.share(), wbgt).value
}

// heatFactor is a factor on capability and its derivatives.
type heatFactor struct{ value, byLoss, byColdLoss, byWBGT, byAbove, byBelow float64 }

// factor is Factor, share being given.
func (h Heat) factor(share, wbgt float64) heatFactor {
	low, top := h.bounds()
	hot, cold := math.Max(0, wbgt-top), math.Max(0, low-wbgt)
	f := heatFactor{value: 1 - h.Loss*share*hot - h.ColdLoss*cold, byLoss: -share * hot, byColdLoss: -cold}
	if f.value < leastHeat {
		return heatFactor{value: leastHeat}
	}
	if hot > 0 {
		f.byAbove = h.Loss * share
	}
	if cold > 0 {
		f.byBelow = -h.ColdLoss
	}
	f.byWBGT = -f.byAbove - f.byBelow
	return f
}
