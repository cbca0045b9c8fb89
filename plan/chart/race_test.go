package chart_test

import (
	"math"
	"time"

	"isoeffort.example/plan"
	"isoeffort.example/plan/chart"
)

// actual is a race that starts fast, by up to 3 %, and comes in 4 % late.
func actual(p *plan.Plan) []chart.Passage {
	var list []chart.Passage
	for _, s := range p.Splits(plan.AtLandmarks) {
		if s.Length < 1 {
			continue
		}
		x := s.Distance / p.Course.Length()
		late := 0.04*math.Pow(x, 3) - 0.03*math.Sin(math.Pi*x)*(1-x)
		list = append(list, chart.Passage{Distance: s.Distance, Time: s.Elapsed + time.Duration(late*float64(p.Gun))})
	}
	return list
}

// forecast lies about the plan as people run: a little early at first, then late, the
// spread growing.
func forecast(p *plan.Plan) chart.Forecast {
	f := chart.Forecast{Quantiles: []float64{0.05, 0.25, 0.5, 0.75, 0.95}}
	for _, s := range p.Splits(plan.AtLandmarks) {
		if s.Length < 1 {
			continue
		}
		x := s.Distance / p.Course.Length()
		pt := chart.FanPoint{Name: "Finish", Distance: s.Distance}
		if s.Landmark != nil {
			pt.Name = s.Landmark.Name
		}
		middle := 0.02*x*x - 0.012*math.Sin(math.Pi*x)*(1-x)
		for _, z := range []float64{-1.645, -0.674, 0, 0.674, 1.645} {
			spread := z * 0.03 * math.Pow(x, 1.2)
			if z > 0 {
				spread *= 1.3
			}
			pt.Times = append(pt.Times, s.Elapsed+time.Duration((middle+spread)*float64(p.Gun)))
		}
		f.Points = append(f.Points, pt)
	}
	return f
}
