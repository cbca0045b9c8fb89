package effort

import "math"

// Gravity is the standard acceleration of free fall in m/s² (ISO 80000-3).
const Gravity = 9.80665

// RunningCost returns the net energy of running one metre along gradient i, in J/(kg m):
//
//	155.4 i⁵ − 30.4 i⁴ − 43.3 i³ + 46.3 i² + 19.5 i + 3.6
//
// It was fitted to ten elite mountain runners on a treadmill for i in [−0.45, 0.45] and
// is held constant outside; runners differ by about 20 % (Lacour & Bourdin 2015).
// RunningCost(NaN) is NaN.
//
// Source: Minetti, Moia, Roi, Susta & Ferretti 2002, J Appl Physiol 93:1039,
// doi:10.1152/japplphysiol.01177.2001; coefficients from memory, they agree with the
// means in its abstract within 1 SD.
func RunningCost(i float64) float64 {
	i = clampGradient(i, -0.45, 0.45)
	return ((((155.4*i-30.4)*i-43.3)*i+46.3)*i+19.5)*i + 3.6
}

// WalkingLeastCost returns the energy of walking one metre along gradient i at the most
// economical speed there, in J/(kg m):
//
//	280.5 i⁵ − 58.7 i⁴ − 76.8 i³ + 51.9 i² + 19.6 i + 2.5
//
// Fitted and held like RunningCost, from the same source. It stands here for
// comparison: its level value is more than 1 SD above the 1.64 ± 0.50 of the source's
// own abstract, so the model walks by WalkingPower.
func WalkingLeastCost(i float64) float64 {
	i = clampGradient(i, -0.45, 0.45)
	return ((((280.5*i-58.7)*i-76.8)*i+51.9)*i+19.6)*i + 2.5
}

// StandingPower is the metabolic power of standing in W/kg, which gross figures contain
// and net figures do not. Source: Looney et al. 2019, as WalkingPower.
const StandingPower = 1.44

// WalkingPower returns the net metabolic power in W/kg of walking at speed v in m/s along
// gradient i:
//
//	1.94 v^0.43 + 0.24 v⁴ + 0.34 v G (1 − 1.05^(1 − 1.11^(G+32))),  G = 100 i
//
// It was fitted for v up to 1.96 m/s and i in [−0.40, 0.45], with a standard error of
// 0.42 W/kg; the gradient is held constant outside, the speed is not. A negative speed
// gives NaN. Add StandingPower for the gross power.
//
// Source: Looney, Santee, Hansen, Bonventre, Chalmers & Potter 2019, Med Sci Sports
// Exerc 51:1954, doi:10.1249/MSS.0000000000002002, second-hand.
func WalkingPower(v, i float64) float64 { return walkingBase(v) + v*walkingGrade(i) }

// walkingGrade is the part of WalkingPower that gradient adds, per metre walked.
func walkingGrade(i float64) float64 {
	g := 100 * clampGradient(i, -0.40, 0.45)
	return 0.34 * g * (1 - math.Exp(ln105*(1-math.Exp(ln111*(g+32)))))
}

var ln105, ln111 = math.Log(1.05), math.Log(1.11)

// BrakingCost returns the effort of holding back one metre along gradient i for a
// braking of 1, in J/(kg m): g₀ for each metre of drop,
//
//	g₀ max(0, −i) / √(1+i²)
//
// It is effort of the legs that limits speed and tires but uses no oxygen: our own
// modelling choice. With RunningCost it gives speeds on descents of 5, 10, 15, 20 and
// 30 % of 1.113, 1.151, 1.094, 0.967 and 0.682 times the level one; the fastest times
// in hill races give 1.134, 1.167, 1.086, 0.938 and 0.646 (Kay 2012, J Quant Anal
// Sports 8(4), second-hand). Without it the running curve is too fast downhill, as its
// own authors say. BrakingCost(NaN) is NaN.
func BrakingCost(i float64) float64 {
	if i >= 0 {
		return 0
	}
	return Gravity / math.Hypot(1, 1/i)
}

// AirPower returns the power in W/kg against the air at speed v in m/s with a head wind
// w in m/s (negative: from behind), for a drag coefficient in J s² m⁻³ kg⁻¹:
// drag v (v+w) |v+w|. A coefficient of 0 turns the air off; a negative one, or a
// negative speed, gives NaN.
//
// Source: di Prampero 1986, Int J Sports Med 7:55, from memory, for the form and for
// DefaultDrag. Pugh 1971, Davies 1980 and da Silva et al. 2022 disagree by a factor of
// two to three, so it is a parameter.
func AirPower(drag, v, w float64) float64 {
	if drag < 0 || v < 0 {
		return math.NaN()
	}
	return drag * v * (v + w) * math.Abs(v+w)
}

// DefaultDrag is a usual drag coefficient, J s² m⁻³ kg⁻¹; see AirPower.
const DefaultDrag = 0.01

// Surface factors, which multiply the cost of a course.Stretch. Source: Soule & Goldman
// 1972, J Appl Physiol 32:706, from memory, for walking with loads: use with care for
// running.
const (
	Blacktop   = 1.0
	DirtRoad   = 1.1
	LightBrush = 1.2
	HeavyBrush = 1.5
	Bog        = 1.8
	LooseSand  = 2.1
)

// clampGradient is min(max(i, low), top) that lets NaN through.
func clampGradient(i, low, top float64) float64 { return math.Min(math.Max(i, low), top) }
