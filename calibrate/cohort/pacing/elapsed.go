package pacing

import (
	"fmt"
	"math"

	"isoeffort.example/effort"
	"isoeffort.example/effort/record"
)

// A Field is the ground of one race, ready for the times of its runners. It may be shared
// between goroutines.
type Field struct {
	m     *Model
	trail *trail
	place *place // nil if the course was not fitted
}

// Field prepares a race from results of it with splits, of whatever role: of them the
// distances, ascents and descents are used and no time.
func (m *Model) Field(race []record.Result) (*Field, error) {
	if len(race) == 0 {
		return nil, fmt.Errorf("pacing: %w", ErrNoSplits)
	}
	t, err := newTrail(race, m.o.Profiles[race[0].Race])
	if err != nil {
		return nil, fmt.Errorf("pacing: race %q: %w", race[0].Race, err)
	}
	return &Field{m, t, m.places[race[0].Course]}, nil
}

// Elapsed returns the seconds since the start at distances of the race for one who
// finishes in so many seconds. Where the model has no pace for that they are in proportion
// to the distance, and even is true. Seconds that are not positive and finite give NaN.
func (f *Field) Elapsed(seconds float64, at []float64) (elapsed []float64, even bool) {
	if !(seconds > 0) || math.IsInf(seconds, 1) {
		elapsed = make([]float64, len(at))
		for i := range elapsed {
			elapsed[i] = math.NaN()
		}
		return elapsed, true
	}
	in, err := effort.NewIntegrator(f.trail.ground, effort.Usual(10), effort.Surroundings{})
	if err != nil {
		return nil, true
	}
	s := shapeOf(f.m.Groups, f.trail.hourPower(Usual(), f.m.o.Endurance, seconds))
	elapsed, even = f.trail.curve(in, s, f.m.o.Endurance, seconds, at)
	for i := range elapsed {
		elapsed[i] *= seconds
	}
	return elapsed, even
}

// ElapsedThere is Elapsed with what the course's sections did beside their profile in the
// races that were fitted; without those it is Elapsed.
func (f *Field) ElapsedThere(seconds float64, at []float64) []float64 {
	elapsed, _ := f.Elapsed(seconds, at)
	for i := range elapsed {
		if f.place == nil {
			break
		}
		elapsed[i] += seconds * f.place.lateness(at[i]/f.trail.official)
		if i > 0 {
			elapsed[i] = math.Max(elapsed[i], elapsed[i-1])
		}
	}
	return elapsed
}
