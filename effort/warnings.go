package effort

// Warnings returns what of the surroundings can do nothing on this ground, in plain words,
// to be shown beside any result: a wind without drag, say. It is nil where all that is
// given counts.
func (in *Integrator) Warnings() []string {
	s := &in.surroundings
	weathered := s.Day != nil && len(s.Day.hours) > 0
	var said []string
	for _, w := range []struct {
		idle bool
		text string
	}{
		{s.Drag == 0 && (s.HeadWind != 0 || s.Wind.Speed != 0), "there is a wind but no drag: it does nothing"},
		{s.Wind.Speed != 0 && in.ground.heading == nil, "the course does not know its direction: the wind from one side does nothing"},
		{s.ThinAir && s.Drag == 0, "thin air does nothing without drag"},
		{s.Day != nil && s.Heat.Loss > 0 && !weathered, "the day has no hours of weather: heat does nothing"},
		{weathered && s.Heat.Loss == 0 && s.Heat.ColdLoss == 0 && !s.ThinAir, "there is weather but no loss to heat or cold: it does nothing"},
		{s.Heat.Growth > 0 && s.Heat.Expected == 0 && s.Heat.Loss > 0, "the loss to heat grows with the expected duration, but none is given"},
		{s.Day == nil && len(s.Stops) > 0, "stops do nothing without a day"},
		{len(s.Stops) > 0 && s.Stops[len(s.Stops)-1].Distance >= in.ground.length, "a stop is beyond the finish"},
		{in.ground.totals && (s.Altitude.Loss > 0 || s.ThinAir), "a race known by its totals has no altitude: it is taken to be at sea level"},
	} {
		if w.idle {
			said = append(said, w.text)
		}
	}
	return said
}
