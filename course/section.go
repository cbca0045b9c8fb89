package course

// A Section is the ground from one landmark to the next.
type Section struct {
	From, To Landmark
	Relief
}

// Length returns the horizontal length in metres.
func (s Section) Length() float64 { return s.To.Distance - s.From.Distance }

// Gradient returns the mean gradient, which hides what goes up and down.
func (s Section) Gradient() float64 { return (s.Ascent - s.Descent) / s.Length() }

// Sections returns the ground between neighbouring landmarks in order, the start and
// the finish being landmarks of those names where the course has none there. Landmarks
// at one and the same place open no section between them: the first names it.
func (c *Course) Sections() []Section {
	stops := []Landmark{{Name: "Start"}}
	for _, l := range c.landmarks {
		switch last := &stops[len(stops)-1]; {
		case l.Distance < endSlack:
			*last = l
			last.Distance = 0
		case l.Distance > last.Distance:
			stops = append(stops, l)
		}
	}
	if stops[len(stops)-1].Distance < c.Length()-endSlack {
		stops = append(stops, Landmark{Name: "Finish", Distance: c.Length()})
	}
	stops[len(stops)-1].Distance = c.Length()
	sections := make([]Section, 0, len(stops)-1)
	for i := 1; i < len(stops); i++ {
		a, b := stops[i-1], stops[i]
		sections = append(sections, Section{From: a, To: b, Relief: c.ReliefBetween(a.Distance, b.Distance)})
	}
	return sections
}
