// Package chart draws plans: the profile with its climbs, gait and target splits; a race
// run against its plan; and a forecast as a fan about the plan. A Figure is written as SVG
// or PNG, or drawn on any canvas of gonum/plot.
//
// The figures are made for paper: greys, hatches and line styles and no colour, so that a
// black and white print loses nothing, at A5 as at A4, and no letter under 7 pt. All texts
// stand level; no two overlap, and what finds no room is left out and counted on the
// figure. [All layouts are our own.]
//
// The same input gives the same SVG, byte for byte on one machine; on others coordinates,
// rounded to 0.01 pt, may differ where the last bit of a float64 tips them.
//
// It is not for screens that want to zoom, and it computes nothing: what is drawn is in the
// plan, the passages or the forecast.
package chart

import "errors"

// The causes for which a figure cannot be drawn.
var (
	ErrOption  = errors.New("option out of range")
	ErrPlan    = errors.New("no plan")
	ErrPassage = errors.New("passage off the course, out of order or at no time")
	ErrFan     = errors.New("forecast out of order or at no time")
)
