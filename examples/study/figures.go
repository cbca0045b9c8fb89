package main

import (
	"fmt"
	"math"
	"sort"

	"isoeffort.example/calibrate/cohort"
	"isoeffort.example/effort"
)

func (s *study) figures(judged []judgement) (list []figure) {
	if len(judged) > 0 {
		list = append(list, residuals(judged), calibration(judged))
	}
	if len(s.model.Courses) > 0 {
		list = append(list, courseEffects(s.model.Courses))
	}
	return append(list, s.fades())
}

// residuals are histograms of ln(time/median), one line for each kind of forecast.
func residuals(judged []judgement) figure {
	const cells, most = 30, 0.45
	d := newDrawing(-most, most, 0, 0.2)
	top := 0.0
	counts := make([][cells]float64, len(judged))
	for k, j := range judged {
		for _, v := range j.logs {
			c := int((v + most) / (2 * most) * cells)
			counts[k][max(0, min(cells-1, c))] += 1 / float64(len(j.logs))
		}
		for _, v := range counts[k] {
			top = math.Max(top, v)
		}
	}
	d.yTop = top * 1.1
	d.axes("ln(time/median)", "share", []float64{-0.4, -0.2, 0, 0.2, 0.4}, ticks(d.yTop))
	for k := range judged {
		var x, y []float64
		for c, v := range counts[k] {
			left := -most + 2*most*float64(c)/cells
			x, y = append(x, left, left+2*most/cells), append(y, v, v)
		}
		d.line(x, y, k)
	}
	d.legend(names(judged), false)
	return figure{"Residuals", "Results held back about their forecasts; above 0 the race was slower. The outermost cells hold all beyond.", d.svg()}
}

func names(judged []judgement) (list []string) {
	for _, j := range judged {
		list = append(list, j.name)
	}
	return list
}

// calibration is the share of times below quantiles of the forecast.
func calibration(judged []judgement) figure {
	d := newDrawing(0, 1, 0, 1)
	at := []float64{0, 0.25, 0.5, 0.75, 1}
	d.axes("quantile foretold", "share of times below it", at, at)
	d.line([]float64{0, 1}, []float64{0, 1}, -1)
	quantiles := []float64{0.05, 0.25, 0.5, 0.75, 0.95}
	for k, j := range judged {
		d.line(quantiles, j.below(), k)
	}
	d.legend(names(judged), false)
	return figure{"Calibration", "On the thin line forecasts are as sure as they should be.", d.svg()}
}

// below is the share of times below each of the five quantiles that an interval has.
func (j *judgement) below() []float64 {
	shares := make([]float64, 5)
	for _, b := range j.bounds {
		for k, under := range b {
			if under {
				shares[k] += 1 / float64(len(j.bounds))
			}
		}
	}
	return shares
}

// courseEffects are the courses in order of their effect, each with its SD.
func courseEffects(courses []cohort.Course) figure {
	sorted := append([]cohort.Course(nil), courses...)
	sort.SliceStable(sorted, func(i, j int) bool { return sorted[i].Effect < sorted[j].Effect })
	low, top := sorted[0].Effect, sorted[0].Effect
	for _, c := range sorted {
		low, top = math.Min(low, c.Effect-c.SD), math.Max(top, c.Effect+c.SD)
	}
	d := newDrawing(0, float64(len(sorted)+1), low-0.02, top+0.02)
	d.axes("courses, from the one that runs fastest for its profile", "effect on ln(time)", nil, ticksBetween(d.yLow, d.yTop))
	for i, c := range sorted {
		d.bar(float64(i+1), c.Effect-c.SD, c.Effect+c.SD, c.Effect)
	}
	return figure{"Course effects", "How much slower a course runs than its distance and ascent say, with one SD either way.", d.svg()}
}

// fades are what is left of capability as the hours pass, for each group of pacing and for
// the population's prior.
func (s *study) fades() figure {
	const hours = 20
	d := newDrawing(0, hours, 0.4, 1)
	d.axes("hour-equivalents of work", "capability, of the fresh runner's", []float64{0, 5, 10, 15, 20}, []float64{0.4, 0.6, 0.8, 1})
	prior := s.model.Population.Prior
	curves := []effort.Athlete{{HourPower: 10, Endurance: 0.1, Fade: prior[effort.Fade].Median, FadeShape: prior[effort.FadeShape].Median}}
	labels := []string{fmt.Sprintf("taken as given: fade %.3f", prior[effort.Fade].Median)}
	if s.pacing != nil {
		for _, g := range s.pacing.Groups {
			curves = append(curves, effort.Athlete{HourPower: 10, Endurance: 0.1, Fade: g.Shape.Fade, FadeShape: g.Shape.FadeShape})
			labels = append(labels, fmt.Sprintf("hour power %.1f W/kg: fade %.3f, shape %.2f, tilt %.2f, braking %.2f", g.HourPower, g.Shape.Fade, g.Shape.FadeShape, g.Shape.Tilt, g.Shape.Braking))
		}
	}
	for k, a := range curves {
		var x, y []float64
		for h := 0.0; h <= hours; h += 0.5 {
			x, y = append(x, h), append(y, a.Capability(h)/a.HourPower)
		}
		d.line(x, y, k)
	}
	d.legend(labels, true)
	return figure{"Fade curves", "Of a field's splits, mispacing and all: they describe and do not advise.", d.svg()}
}
