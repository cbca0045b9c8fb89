package fuel

import (
	"fmt"
	"math"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/effort/energy"
	"isoeffort.example/effort/weather"
	"isoeffort.example/plan"
)

type maker struct {
	p     *plan.Plan
	o     Options
	table Table

	net                            float64 // mean net metabolic power, W/kg of body mass
	unknownAir, reduced, dry, slow bool
}

// For returns the table of food and drink for a plan.
//
// It suggests whole portions every Options.Interval, MostAtOnce at one time at most, the first
// after one interval and the last no later than 15 minutes before the finish [Our own], so that
// what has been eaten at any time is never above the high end of the range times the time. The
// rate that comes of it is Total.PerHour. What a section asks for is picked up at its beginning.
// Where it is more than can be carried, the last portions of the section are left out and
// Section.Short says so.
//
// The error wraps ErrPlan for no plan, ErrStation, ErrOption, or one of package effort's.
func For(p *plan.Plan, o Options) (*Table, error) {
	if p == nil || p.Course == nil || p.Traverse() == nil {
		return nil, fmt.Errorf("fuel: %w", ErrPlan)
	}
	o, err := o.check(p.Course)
	if err != nil {
		return nil, err
	}
	m := &maker{p: p, o: o}
	if _, err := m.again(); err != nil {
		return nil, err
	}
	m.rates()
	m.sections()
	m.intakes()
	m.sum()
	m.table.Cautions, m.table.Notes = cautions(p), m.notes()
	return &m.table, nil
}

// again goes over the plan's own passage once more and finds its mean net metabolic power.
func (m *maker) again() (*effort.Traverse, error) {
	in, err := m.p.Integrator()
	if err != nil {
		return nil, fmt.Errorf("fuel: %w", err)
	}
	own := m.p.Traverse()
	t := in.Traverse(own.From, effort.Pace{
		Intensity: m.p.Intensity, Tilt: -m.p.HoldBack.Share, Ease: m.p.Race.Ease, Gaits: own.Gait,
	})
	cells, before, sum := in.Metabolic(nil), t.From.Moving, 0.0
	for i, s := range t.End {
		sum += float64(cells[i] * (s.Moving - before))
		before = s.Moving
	}
	m.net = sum / (before - t.From.Moving)
	return t, nil
}

func (m *maker) rates() {
	if m.o.Mass == 0 {
		m.o.Mass = m.p.Athlete.Mass
	}
	if m.o.Mass == 0 {
		m.o.Mass = DefaultMass
	}
	t := &m.table
	t.Course, t.Length = m.p.Course.Name(), m.p.Course.Length()
	t.Start, t.Finish = m.p.Race.Start, m.p.Gun
	t.Duration = m.p.Gun - m.p.Elapsed(0)
	joules := float64(m.net*m.p.Moving.Seconds()) + float64(effort.StandingPower*t.Duration.Seconds())
	t.Energy = Energy{
		Mass:         m.o.Mass,
		Kilocalories: energy.Kilocalories(joules * m.o.Mass),
		Kilojoules:   joules * m.o.Mass / 1000,
		Burnt:        burnt(m.net, m.p.Athlete.HourPower, m.o.Mass),
	}
	t.Rate = Rate(t.Duration, m.o.Rehearsed, t.Energy.Burnt)
	m.reduced = t.Rate != Rate(t.Duration, m.o.Rehearsed, math.Inf(1))
	t.Suggested = suggest(t.Rate, t.Duration, m.o.Rehearsed)
	m.bite()
}

type place struct {
	name string
	x    float64
}

func (m *maker) places() []place {
	c := m.p.Course
	at := []place{{"Start", 0}}
	for i, x := range m.o.Stations {
		at = append(at, place{nameAt(c, x, i), x})
	}
	if m.o.Stations == nil {
		for _, l := range c.Landmarks() {
			if l.Kind == course.Station && l.Distance > at[len(at)-1].x && l.Distance < c.Length() {
				at = append(at, place{l.Name, l.Distance})
			}
		}
	}
	return append(at, place{"Finish", c.Length()})
}

func nameAt(c *course.Course, x float64, i int) string {
	for _, l := range c.Landmarks() {
		if math.Abs(l.Distance-x) <= 25 && l.Name != "" {
			return l.Name
		}
	}
	return fmt.Sprintf("Station %d", i+1)
}

func (m *maker) sections() {
	at := m.places()
	gross := energy.Gross(m.net)
	for i := 1; i < len(at); i++ {
		from, to := m.elapsed(at[i-1].x), m.elapsed(at[i].x)
		d := to - from
		wbgt := m.wbgt(from + d/2)
		s := Section{
			FromName: at[i-1].name, ToName: at[i].name, From: at[i-1].x, To: at[i].x, Duration: d,
			Carbohydrate: scale(m.table.Rate, d.Hours()),
			WBGT:         wbgt,
			Fluid:        scale(Fluid(wbgt, gross, m.table.Duration), d.Hours()),
		}
		s.FluidShort = max(0, s.Fluid.High-m.carried())
		m.dry = m.dry || s.FluidShort > 0
		m.table.Sections = append(m.table.Sections, s)
	}
}

// packHolds is what a runner of whom nothing is known can carry, ml: common practice, no source.
const packHolds = 2000

// carried is the most fluid that the runner can carry, ml.
func (m *maker) carried() float64 {
	if m.o.MaxFluid > 0 {
		return m.o.MaxFluid
	}
	return packHolds
}

// elapsed is the gun time of arrival; all of the finish.
func (m *maker) elapsed(x float64) time.Duration {
	if x == m.p.Course.Length() {
		return m.p.Gun
	}
	return m.p.Elapsed(x)
}

func scale(r Range, by float64) Range { return Range{r.Low * by, r.High * by} }

// MildWBGT stands for weather that is not known, °C: the middle of Fluid's range. [Our own]
const MildWBGT = 19

func (m *maker) wbgt(gun time.Duration) float64 {
	s := m.p.Race.Surroundings
	if s.Day != nil {
		clock := s.Start + gun - m.p.Elapsed(0)
		if start := m.p.Race.Start; !start.IsZero() {
			h, min, sec := start.Clock()
			clock = time.Duration(h)*time.Hour + time.Duration(min)*time.Minute + time.Duration(sec)*time.Second + gun
		}
		if w := s.Day.WBGT(clock); w == w {
			return w
		}
	}
	if a := m.o.Air; a != nil {
		humidity := a.Humidity
		if humidity == 0 {
			humidity = DefaultHumidity
		}
		if w := weather.WBGT(a.Temperature, humidity); w == w {
			return w
		}
	}
	m.unknownAir = true
	return MildWBGT
}
