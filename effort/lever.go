package effort

// A Lever is a number of the athlete or of the surroundings that a time answers to. The
// slowest run is none: with the gaits held it does nothing. The surface acts as economy
// does.
type Lever int

// The levers. The first five are those of Number.
const (
	ByHourPower Lever = iota
	ByEndurance
	ByFade
	ByFadeShape
	ByBraking
	ByEconomy
	ByFastestWalk
	ByWalkFall
	ByFastestDescent
	ByMass
	ByLoad
	ByEagerness
	ByDrag
	ByHeadWind
	ByWindSpeed
	ByWindFrom
	ByAltitudeLoss
	ByHeatLoss
	ByColdLoss
	ByTemperature // of every hour; where ThinAir is on, of the air's density too
	ByHumidity    // of every hour
	ByWBGT        // of every hour, over what temperature and humidity make of it
	ByNightFactor
	ByStart
	ByAltitudeFrom
	ByAltitudeAcclimatised
	ByHeatAbove
	ByHeatGrowth
	ByHeatExpected
	ByHeatAcclimatised
	ByColdBelow
	Levers = 31
)

// leverTexts are the name and the unit of each lever.
var leverTexts = [Levers][2]string{
	ByHourPower:      {"hour power", "W/kg"},
	ByEndurance:      {"endurance exponent", ""},
	ByFade:           {"fade", ""},
	ByFadeShape:      {"fade shape", ""},
	ByBraking:        {"braking", ""},
	ByEconomy:        {"economy", ""},
	ByFastestWalk:    {"fastest walk", "m/s"},
	ByWalkFall:       {"walk fall", ""},
	ByFastestDescent: {"fastest descent", "m/s"},
	ByMass:           {"mass", "kg"},
	ByLoad:           {"load", "kg"},
	ByEagerness:      {"eagerness", ""},
	ByDrag:           {"drag", "J s²/(m³ kg)"},
	ByHeadWind:       {"head wind", "m/s"},
	ByWindSpeed:      {"wind", "m/s"},
	ByWindFrom:       {"wind direction", "degree"},
	ByAltitudeLoss:   {"altitude loss", "per 1000 m"},
	ByHeatLoss:       {"heat loss", "per °C"},
	ByColdLoss:       {"cold loss", "per °C"},
	ByTemperature:    {"temperature", "°C"},
	ByHumidity:       {"humidity", "%"},
	ByWBGT:           {"WBGT", "°C"},
	ByNightFactor:    {"night factor", ""},
	ByStart:          {"start", "s"},

	ByAltitudeFrom:         {"altitude from which capability falls", "m"},
	ByAltitudeAcclimatised: {"acclimatisation to altitude", ""},
	ByHeatAbove:            {"heat's bound", "°C"},
	ByHeatGrowth:           {"growth of heat loss", ""},
	ByHeatExpected:         {"expected duration", "s"},
	ByHeatAcclimatised:     {"acclimatisation to heat", ""},
	ByColdBelow:            {"cold's bound", "°C"},
}

func (l Lever) String() string {
	if l < 0 || l >= Levers {
		return "no lever"
	}
	return leverTexts[l][0]
}

// Unit returns the unit that the lever is counted in, empty for a bare number.
func (l Lever) Unit() string {
	if l < 0 || l >= Levers {
		return ""
	}
	return leverTexts[l][1]
}

// A Sensitivity is the derivative of a time by each lever, in seconds for one unit of it.
type Sensitivity [Levers]float64
