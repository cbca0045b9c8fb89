package energy

import "time"

// IntakeRange returns the usual carbohydrate intake for a race of the given duration, in
// g/h for any body mass, for a runner who has rehearsed eating at such rates or one who
// has not:
//
//	duration     not rehearsed   rehearsed
//	up to 2 h           0–30        0–30
//	up to 2 h 30       30–60       30–60
//	longer             30–60       60–90
//
// Beyond 60 g/h it takes mixtures of glucose and fructose and a trained gut. Whoever
// moves at low intensity burns less and needs less. A duration that is not positive gives
// NaN.
//
// Source: Jeukendrup 2014, Sports Med 44:S25, doi:10.1007/s40279-014-0148-z, from memory:
// small amounts up to 75 minutes, 30 g/h to two hours, 60 g/h for two to three, 90 g/h
// beyond two and a half. Those are the upper ends here; where two and three hours overlap, the
// steps are those of package fuel. The range for a runner who has not rehearsed is common
// practice, no source.
// Show Caution with it.
func IntakeRange(duration time.Duration, rehearsed bool) Bounds {
	switch {
	case duration <= 0:
		return nowhere()
	case duration <= 2*time.Hour:
		return Bounds{0, 30}
	case duration > 150*time.Minute && rehearsed:
		return Bounds{60, 90}
	default:
		return Bounds{30, 60}
	}
}
