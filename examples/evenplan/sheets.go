package main

import (
	"context"
	"fmt"
	"io"
	"math"

	"isoeffort.example/plan"
	"isoeffort.example/plan/brief"
	"isoeffort.example/plan/chart"
	"isoeffort.example/plan/follow"
	"isoeffort.example/plan/forecast"
	"isoeffort.example/plan/fuel"
	"isoeffort.example/plan/write"
)

// writers are the formats by name.
var writers = map[string]func(io.Writer, *plan.Plan, plan.Spacing) error{
	"text": write.Text, "csv": write.CSV, "json": write.JSON, "gpx": write.GPX,
	"card": card, "card-not-advised": overridden, "late": late, "fuel": food, "forecast": likely, "profile": profileChart,
}

// briefingFormat is one more, which needs the marks of the command line.
const briefingFormat = "briefing"

// formats explains them, for -format.
const formats = "text, csv, json; gpx with the planned times; card: a page of HTML to print and fold, card-not-advised the same for a goal that gets none, with a warning; " +
	"late: three schedules and what to do when late; briefing: the talk before the race; fuel: what to eat and drink where; " +
	"forecast: what is likely; profile: a picture as SVG"

// card is a page of HTML to print and fold, for a goal that the forecast allows.
func card(w io.Writer, p *plan.Plan, every plan.Spacing) error {
	return printCard(w, p, every, false)
}

// overridden is card for a goal that is not advised.
func overridden(w io.Writer, p *plan.Plan, every plan.Spacing) error {
	return printCard(w, p, every, true)
}

func printCard(w io.Writer, p *plan.Plan, every plan.Spacing, override bool) error {
	o := write.CardOptions{Override: override}
	if goal := max(p.Race.Goal, p.Standard.Time); goal > 0 && !p.Race.Basis.Known() {
		likely := *p
		likely.Race.Goal, likely.Race.Standards = goal, nil
		f, err := forecastOf(&likely)
		if err != nil {
			return err
		}
		o.Goal = &f.Goal.Chance
	}
	return write.Card(w, every, o, p)
}

func late(w io.Writer, p *plan.Plan, every plan.Spacing) error {
	c, err := follow.Paper(p, follow.CardOptions{Every: every})
	if err != nil {
		return err
	}
	return c.Text(w)
}

// briefing is the talk before the race, with what the user says of the course.
func (d *dayOptions) briefing(w io.Writer, p *plan.Plan, every plan.Spacing) error {
	b, err := brief.Make(p, brief.Options{Imperial: inMiles(every), Marks: d.told})
	if err != nil {
		return err
	}
	return brief.Text(w, b)
}

func food(w io.Writer, p *plan.Plan, every plan.Spacing) error {
	t, err := fuel.For(p, fuel.Options{})
	if err != nil {
		return err
	}
	u := fuel.Metric
	if inMiles(every) {
		u = fuel.Imperial
	}
	return t.WriteText(w, u)
}

// forecastOf is what is likely for the runner, with the tilt of runners of whom nothing else is
// known.
func forecastOf(p *plan.Plan) (*forecast.Forecast, error) {
	draws, err := forecast.FromBasis(p.Athlete, p.Race.Basis, forecast.FieldTilt())
	if err != nil {
		return nil, err
	}
	return forecast.Of(context.Background(), p.Course, draws, p.Race, forecast.Options{Workers: 2})
}

func likely(w io.Writer, p *plan.Plan, _ plan.Spacing) error {
	f, err := forecastOf(p)
	if err != nil {
		return err
	}
	return forecast.Text(w, f)
}

func profileChart(w io.Writer, p *plan.Plan, every plan.Spacing) error {
	f, err := chart.Profile(p, chart.Options{Imperial: inMiles(every)})
	if err != nil {
		return err
	}
	if err := f.SVG(w); err != nil {
		return fmt.Errorf("profile: %w", err)
	}
	return nil
}

// inMiles reports whether a spacing is one of miles.
func inMiles(every plan.Spacing) bool {
	miles := float64(every / plan.EveryMile)
	return every > 0 && math.Abs(miles-math.Round(miles)) < 1e-9
}
