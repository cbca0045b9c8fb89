package energy

import "math"

// A Store is the glycogen that a runner can use, as glucose in g per kg of body mass. It
// is an estimate from body mass alone, never a promise. The zero value, and a part that
// is zero, means that of UsualStore.
type Store struct {
	Muscle Bounds // of the legs: glycogen of resting muscles stays in them
	Liver  Bounds
}

// UsualStore returns the store of a trained runner on a mixed diet, rested:
// 3 to 5 g/kg in the legs' muscles, 0.5 (after a night's fast) to 1.4 g/kg in the liver.
//
// LoadedStore returns it after two or three days of rest and much carbohydrate, with
// breakfast: 5 to 7.5 and 1.0 to 1.5 g/kg.
//
// The figures are [Our own] choice about textbook values, from memory: 17.5 g per kg of
// thigh muscle on a mixed diet and 33 loaded (Bergström, Hermansen, Hultman & Saltin
// 1967, Acta Physiol Scand 71:140, nine men), leg muscle a fifth of body mass, which
// makes 3.5 and 6.6 g/kg; 80 to 110 g in a fed liver. All the carbohydrate of a body of
// 70 kg, 400 to 600 g, is more than the usual store, as it counts the arms and what
// muscle never gives up. The bounds are meant to hold most people, without a stated
// share; runners with much body fat are at or below the low end, as fat holds none.
func UsualStore() Store { return Store{Muscle: Bounds{3, 5}, Liver: Bounds{0.5, 1.4}} }

// LoadedStore is documented with UsualStore.
func LoadedStore() Store { return Store{Muscle: Bounds{5, 7.5}, Liver: Bounds{1.0, 1.5}} }

// Grams returns the whole store in g/kg. It is NaN if one part is negative, infinite,
// NaN or has its low end above its high one.
func (s Store) Grams() Bounds {
	usual := UsualStore()
	if s.Muscle == (Bounds{}) {
		s.Muscle = usual.Muscle
	}
	if s.Liver == (Bounds{}) {
		s.Liver = usual.Liver
	}
	if !s.Muscle.valid() || !s.Liver.valid() {
		return nowhere()
	}
	return Bounds{s.Muscle.Low + s.Liver.Low, s.Muscle.High + s.Liver.High}
}

// Energy returns the whole store in J/kg, NaN where Grams is.
func (s Store) Energy() Bounds {
	g := s.Grams()
	return Bounds{g.Low * CarbohydrateEnergy, g.High * CarbohydrateEnergy}
}

// The share of carbohydrate eaten on the way that is burnt while the exercise lasts.
// Source: Jeukendrup 2014, Sports Med 44:S25, for the magnitude, from memory; the bounds
// are [Our own].
const (
	leastOxidised = 0.6
	mostOxidised  = 0.9
)

// Lasts returns the hours until the store is estimated to be empty, at the earliest and
// at the latest, for a body mass in kg that burns carbohydrate at a rate use in
// g/(kg h) and eats it at intake in g/h:
//
//	hours = store / (use − η intake/mass),  η = 0.6 to 0.9
//
// Low is with the small store, the high use and η of 0.6, High with the opposite of each.
// +Inf means that it does not empty at that rate. The rates are constant: for a race
// whose use changes, see Balance.
//
// Legs and liver count as one store. Runners slow down before it is empty, and low blood
// sugar may come before or after: the answer says when to be wary, not when it happens.
// A mass that is 0, negative, infinite or NaN, a negative or infinite use or intake, and
// bounds the wrong way round give NaN.
func (s Store) Lasts(use Bounds, intake, mass float64) Bounds {
	d := drain(use, intake, mass)
	g := s.Grams()
	return Bounds{hours(g.Low, d.High), hours(g.High, d.Low)}
}

// Balance returns what is estimated to be left in the store, in g/kg, when so much
// carbohydrate has been burnt, in g/kg, and eaten, in g: the low end with the small
// store, the high use and the low η of Lasts, not below 0; what was eaten does not fill
// the store beyond its start. NaN as for Lasts.
func (s Store) Balance(burnt Bounds, eaten, mass float64) Bounds {
	d := drain(burnt, eaten, mass)
	g := s.Grams()
	return Bounds{left(g.Low, d.High), left(g.High, d.Low)}
}

// left is what remains, between 0 and the whole store; NaN stays NaN.
func left(store, drained float64) float64 { return math.Max(0, store-math.Max(drained, 0)) }

// drain is what is taken from the store, per kg.
func drain(use Bounds, intake, mass float64) Bounds {
	if !use.valid() || !possible(intake) || !positive(mass) {
		return nowhere()
	}
	eaten := intake / mass
	return Bounds{use.Low - mostOxidised*eaten, use.High - leastOxidised*eaten}
}

// hours is how long a store lasts; NaN stays NaN.
func hours(store, drain float64) float64 {
	if drain <= 0 && !math.IsNaN(store) {
		return math.Inf(1)
	}
	return store / drain
}
