package fuel

import (
	"math"
	"time"
)

// lastBite is how long before the finish nothing more is planned: it would come too late to
// be of use. [Our own]
const lastBite = 15 * time.Minute

func (m *maker) intakes() {
	t := &m.table
	start, section, eaten := m.elapsed(0), 0, 0.0
	for d := m.o.Interval; d <= t.Duration-lastBite && t.Suggested > 0; d += m.o.Interval {
		due := m.due(d)
		if due <= eaten {
			continue
		}
		for section < len(t.Sections)-1 && start+d >= m.elapsed(t.Sections[section].To) {
			section++
		}
		s, portions := &t.Sections[section], min(due-eaten, math.Floor(MostAtOnce/m.o.Portion+1e-9))
		eaten += portions
		m.slow = m.slow || due > eaten
		grams := m.o.Portion * portions
		if most := m.o.MaxCarry; most > 0 {
			can := max(0, min(grams, m.o.Portion*math.Floor((most-s.Eat)/m.o.Portion)))
			s.Short += grams - can
			grams = can
		}
		s.Eat += grams
		if grams > 0 {
			t.Intakes = append(t.Intakes, Intake{start + d, m.where(start + d), grams})
		}
	}
}

// due is how many whole portions are to have been eaten so long after the start: the nearest to
// the suggested rate that the high end of the range allows.
func (m *maker) due(d time.Duration) float64 {
	portions := d.Hours() / m.o.Portion
	return min(math.Round(m.table.Suggested*portions), math.Floor(m.table.Rate.High*portions+1e-9))
}

// where is the place of a gun time, by halving, to a metre.
func (m *maker) where(gun time.Duration) float64 {
	low, high := 0.0, m.p.Course.Length()
	for high-low > 0.5 {
		if mid := (low + high) / 2; m.elapsed(mid) <= gun {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}

func (m *maker) sum() {
	t := &m.table
	for i := range t.Sections {
		s := &t.Sections[i]
		s.PickUp, s.Carry = s.Eat, s.Eat
		s.Carbohydrate = s.Carbohydrate.with(s.Eat + s.Short)
		t.Total.Eat += s.Eat
		t.Total.Short += s.Short
		t.Total.Fluid.Low += s.Fluid.Low
		t.Total.Fluid.High += s.Fluid.High
	}
	t.Total.Carbohydrate = scale(t.Rate, t.Duration.Hours()).with(t.Total.Eat + t.Total.Short)
	t.Total.PerHour = t.Total.Eat / t.Duration.Hours()
}

// with returns the range with an end moved to a value outside of it.
func (r Range) with(x float64) Range { return Range{min(r.Low, x), max(r.High, x)} }
