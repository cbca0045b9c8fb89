package effort

import "math"

// sensitivity differentiates the time of the traverse that the integrator holds, made at
// exp(x) without tilt, by every lever at equal budget with the gaits held:
// dT/dθ = ∂T/∂θ − (∂T/∂ε)/(∂B/∂ε) ∂B/∂θ, at the finish.
func (in *Integrator) sensitivity(x float64) (s Sensitivity) {
	time := in.backward(x, 1, 0)
	spent := in.backward(x, 0, 1)
	exchange := 0.0
	if spent.byIntensity > 1e-9 {
		exchange = time.byIntensity / spent.byIntensity
	}
	for l := range s {
		s[l] = time.by[l] - exchange*spent.by[l]
	}
	return s
}

// adjoint goes back over a traverse and gathers the derivatives of one number J of its
// finish: in exact arithmetic those of the forward computation, line by line.
type adjoint struct {
	in        *Integrator
	x         float64 // ln ε
	intensity float64

	moving, spent, worn float64 // dJ by the state after the cell at hand

	by          Sensitivity
	byIntensity float64 // by ln ε
}

// backward returns the derivatives of moving · time + spent · budget at the finish.
func (in *Integrator) backward(x, moving, spent float64) adjoint {
	b := adjoint{in: in, x: x, intensity: math.Exp(x), moving: moving, spent: spent}
	still := in.mover.air
	for j := len(in.ground.cells) - 1; j >= in.out.First; j-- {
		before := in.out.From
		if j > in.out.First {
			before = in.out.End[j-1]
		}
		in.meetAgain(j)
		in.keep(j)
		b.under(j, before)
	}
	in.mover.air = still
	in.free()
	return b
}

// under goes back over cell j under its ceiling, where it has one: its intensity is then
// fixed, whatever that of the rest.
func (b *adjoint) under(j int, before State) {
	intensity, _, held := b.in.ceiling(j, b.intensity, 0)
	if !held {
		b.cell(j, before)
		return
	}
	whole := *b
	b.x, b.intensity = math.Log(intensity), intensity
	b.cell(j, before)
	b.x, b.intensity, b.byIntensity = whole.x, whole.intensity, whole.byIntensity
}

// cell goes back over cell j. Of what it did:
//
//	t += L/v,  worn += ε_g^m P L/(3600 P60 v),  B += ε_g^n L/(3600 v),  ε_g = ε P/p
func (b *adjoint) cell(j int, before State) {
	in, a := b.in, &b.in.athlete
	end := &in.out.End[j]
	power, offer := in.out.Power[j], in.offer[j]
	dt, worn, spent := end.Moving-before.Moving, b.worn*(end.Worn-before.Worn), b.spent*(end.Spent-before.Spent)
	n := in.mover.order
	lnUsed := b.x + math.Log(power/offer)

	bySpeed := -(b.moving*dt + worn + spent)
	byUsed := a.Eagerness*worn + n*spent
	b.byIntensity += byUsed
	b.by[ByEagerness] += worn * lnUsed
	b.by[ByEndurance] -= spent * lnUsed * n * n
	b.by[ByHourPower] -= worn / a.HourPower

	s := b.stride(j, in.ground.cells[j].length*in.ground.remaining(j, before.Distance)/dt)
	byOffer, byPower := worn+s.elasticity*bySpeed, -s.elasticity*bySpeed/power
	if power != offer { // at a greatest speed
		byOffer, byPower = -byUsed, (byUsed+worn)/power
		b.topSpeed(&s, bySpeed+byPower*s.slope*s.speed)
	}
	b.powers(&s, byPower)
	b.offered(&s, before, byOffer, byPower*s.air)
}

// backStride is what a stride of the traverse was made of.
type backStride struct {
	cell                    int
	speed, slope            float64 // slope of the power by speed
	elasticity              float64 // if all the power on offer is used
	metabolic, braking, air float64 // parts of the power, W/kg
}

func (b *adjoint) stride(j int, v float64) backStride {
	in := b.in
	c, m := &in.ground.cells[j], &in.mover
	w := m.runWay(c)
	if in.out.Gait[j] == Walk {
		w = m.walkWay(c)
	}
	power, slope := m.powerAt(&w, v)
	s := backStride{cell: j, speed: v, slope: slope, elasticity: in.offer[j] / (v * slope)}
	s.air = m.airPower(v)
	s.braking = m.braking * c.brake * v
	s.metabolic = power - s.air - s.braking
	return s
}

// topSpeed books what a relative change of a greatest speed is worth.
func (b *adjoint) topSpeed(s *backStride, value float64) {
	m, a := &b.in.mover, &b.in.athlete
	c := &b.in.ground.cells[s.cell]
	climb := math.Max(0, c.gradient)
	switch {
	case m.limit > 0 && s.speed >= m.limit*(1-1e-9): // which is no lever
	case m.descends(c) && (b.in.out.Gait[s.cell] == Run || m.fastestDescent < m.fastestWalk):
		b.by[ByFastestDescent] += value / a.FastestDescent
	case b.in.out.Gait[s.cell] == Walk:
		b.by[ByFastestWalk] += value / a.FastestWalk
		b.by[ByWalkFall] -= value * climb / (1 + a.WalkFall*climb)
	}
}

// powers books what one W/kg more at the speed at hand is worth.
func (b *adjoint) powers(s *backStride, value float64) {
	in, a, m := b.in, &b.in.athlete, &b.in.mover
	b.masses(s.metabolic, s.braking, value)
	c := &in.ground.cells[s.cell]
	b.by[ByBraking] += value * (1 + a.Load/a.Mass) * c.brake * s.speed
	b.by[ByEconomy] += value * s.metabolic / a.Economy
	u := s.speed + m.wind
	r := m.relative(u)
	density := 1.0
	if len(in.places) > 0 {
		density = in.places[s.cell].met
	}
	b.by[ByDrag] += value * density * s.speed * u * r
	if r == 0 {
		return
	}
	byHead, byCross := value*m.drag*s.speed*(r+u*u/r), value*m.drag*s.speed*u*m.cross/r
	b.by[ByHeadWind] += byHead
	if in.ground.heading == nil {
		return
	}
	wind := in.surroundings.Wind
	head, cross := Wind{1, wind.From}.along(in.ground.heading[s.cell])
	b.by[ByWindSpeed] += byHead*head + byCross*cross
	head, cross = Wind{wind.Speed, wind.From + 90}.along(in.ground.heading[s.cell])
	b.by[ByWindFrom] += (byHead*head + byCross*cross) * math.Pi / 180
}

// masses books what load and mass are worth, which both kinds of power are in proportion
// to 1 + Load/Mass.
func (b *adjoint) masses(metabolic, braking, value float64) {
	a := &b.in.athlete
	each := value * (metabolic + braking) / (1 + a.Load/a.Mass)
	b.by[ByLoad] += each / a.Mass
	b.by[ByMass] -= each * a.Load / (a.Mass * a.Mass)
}

// offered books what a relative change of the power on offer, and one of the air's
// density, is worth, and takes the state back to before the cell:
//
//	ln p = ln ε + ln P60 + ln A + ln H(u) − φ F(half, q)
//	half = worn + ε^m w/(3600 P60),  u = t + w/p₀,  w = cost · length/2
//
// p₀ being p without H.
func (b *adjoint) offered(s *backStride, before State, byOffer, byDensity float64) {
	in, a, m := b.in, &b.in.athlete, &b.in.mover
	c := &in.ground.cells[s.cell]
	cost := m.runCost(c)
	work := c.length * in.ground.remaining(s.cell, before.Distance) * cost / 2
	ahead := in.haste(b.intensity) * work / (3600 * a.HourPower)
	f, byWork, byShape := fadeTimeSlopes(before.Worn+ahead, a.FadeShape)

	byClock, byCost := 0.0, 0.0
	if len(in.places) > 0 {
		byClock, byCost = b.day(s, before, work, byOffer, byDensity)
	}
	byFresh := byOffer - byCost // by ln p₀
	byHalf := -byFresh * a.Fade * byWork
	b.byIntensity += byFresh + byHalf*ahead*a.Eagerness
	b.by[ByHourPower] += (byFresh - byHalf*ahead) / a.HourPower
	b.by[ByFade] -= byFresh * f
	b.by[ByFadeShape] -= byFresh * a.Fade * byShape
	b.by[ByEagerness] += byHalf * ahead * b.x
	height := in.surroundings.Altitude.factor(c.altitude)
	b.by[ByAltitudeLoss] += byFresh * height.byLoss / height.value
	b.by[ByAltitudeFrom] += byFresh * height.byFrom / height.value
	b.by[ByAltitudeAcclimatised] += byFresh * height.byAcclimatised / height.value

	each := (byCost + byHalf*ahead) / cost
	braking := m.braking * c.brake
	b.masses(cost-braking, braking, each)
	b.by[ByBraking] += each * (1 + a.Load/a.Mass) * c.brake
	b.by[ByEconomy] += each * (cost - braking) / a.Economy
	b.worn += byHalf
	b.moving += byClock
}

// day books what the day's levers are worth, and returns what a later clock, and a
// relative change of the work ahead, is worth through it.
func (b *adjoint) day(s *backStride, before State, work, byOffer, byDensity float64) (byClock, byCost float64) {
	in := b.in
	sur, place := &in.surroundings, &in.places[s.cell]
	if sur.Day == nil && !sur.ThinAir {
		return 0, 0
	}
	// The power on offer without the day's factor is found again from what it was.
	fresh := in.fresh(s.cell, before, work, b.intensity)
	clock := before.Moving + place.clock + work/fresh
	h := in.hourAt(place, clock)
	b.dayLevers(clock, byOffer, byDensity)
	byClock = byOffer*h.capabilitySlope + byDensity*h.densitySlope
	b.by[ByStart] += byClock
	return byClock, byClock * work / fresh
}

// dayLevers books the levers of weather and night at a clock time in seconds.
func (b *adjoint) dayLevers(clock, byOffer, byDensity float64) {
	sur := &b.in.surroundings
	day := sur.Day
	if day == nil {
		return
	}
	dark, _ := day.darkAt(clock)
	b.by[ByNightFactor] += byOffer * dark / (1 - (1-day.night.factor())*dark)
	if len(day.hours) == 0 {
		return
	}
	now := day.weather(clock)
	if sur.ThinAir {
		temperature, _ := now.at(day.columns[temperatureColumn])
		b.by[ByTemperature] -= byDensity / (temperature + zeroCelsius)
	}
	wbgt, _ := day.wbgtAt(now)
	heat := sur.Heat.factor(b.in.heatShare, wbgt)
	each := byOffer / heat.value
	b.by[ByHeatLoss] += each * heat.byLoss
	b.by[ByColdLoss] += each * heat.byColdLoss
	b.by[ByWBGT] += each * heat.byWBGT
	b.by[ByHeatAbove] += each * heat.byAbove
	b.by[ByColdBelow] += each * heat.byBelow
	b.shares(each * sur.Heat.Loss * heat.byLoss)
	byTemperature, _ := now.at(day.columns[wbgtByTemperature])
	byHumidity, _ := now.at(day.columns[wbgtByHumidity])
	b.by[ByTemperature] += each * heat.byWBGT * byTemperature
	b.by[ByHumidity] += each * heat.byWBGT * byHumidity
}

// shares books the levers that the loss to heat is in proportion to, of which a relative
// change is worth value.
func (b *adjoint) shares(value float64) {
	h := &b.in.surroundings.Heat
	if h.Acclimatised < 1 {
		b.by[ByHeatAcclimatised] -= value / (1 - h.Acclimatised)
	}
	if longer := h.longer(); longer > 1 {
		b.by[ByHeatGrowth] += value * math.Log(longer)
		b.by[ByHeatExpected] += value * h.Growth / h.Expected.Seconds()
	}
}
