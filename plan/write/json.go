package write

import (
	"encoding/json"
	"io"
	"time"

	"isoeffort.example/internal/page"
	"isoeffort.example/plan"
	"isoeffort.example/plan/caution"
)

// Schema names the form of what JSON prints. The number grows when a member changes its
// meaning or goes; members may be added without.
const Schema = "isoeffort.plan.1"

// number is printed with the digits that its accuracy deserves, so that every processor
// prints the same.
type number struct {
	value  float64
	places int
}

// MarshalJSON prints the number.
func (n number) MarshalJSON() ([]byte, error) { return []byte(decimal(n.value, n.places)), nil }

func secondsOf(d time.Duration) number { return number{d.Seconds(), 3} }

type jsonPlan struct {
	Schema            string       `json:"schema"`
	Course            jsonCourse   `json:"course"`
	Athlete           jsonAthlete  `json:"athlete"`
	RelativeIntensity number       `json:"relative_intensity"`
	BudgetSpent       number       `json:"budget_spent"`
	Moving            number       `json:"moving_s"`
	FirstHalf         number       `json:"first_half_s"`
	StartDelay        number       `json:"start_delay_s"`
	Stops             number       `json:"stops_s"`
	Gun               number       `json:"gun_s"`
	Net               number       `json:"net_s"`
	Goal              *jsonGoal    `json:"goal"`
	Aim               string       `json:"aim"`
	Standard          string       `json:"standard,omitempty"`
	NeedsHourPower    *number      `json:"needs_hour_power,omitempty"`
	CrowdCost         number       `json:"crowd_cost_s"`
	Start             string       `json:"start,omitempty"`
	WalkingShare      number       `json:"walking_share"`
	GaitChanges       int          `json:"gait_changes"`
	HoldBack          number       `json:"hold_back"`
	HoldBackCost      number       `json:"hold_back_cost_s"`
	BoutCost          number       `json:"bout_cost_s"`
	Best              jsonBest     `json:"best"`
	Splits            []jsonSplit  `json:"splits"`
	StopList          []jsonStop   `json:"stop_list"`
	Walks             []jsonWalk   `json:"planned_walks"`
	WalkCost          number       `json:"planned_walks_cost_s"`
	Cutoffs           []jsonCutoff `json:"cutoffs"`
	Climbs            []jsonClimb  `json:"climbs"`
	Warnings          []string     `json:"warnings"`
	Cautions          []string     `json:"cautions"`
	CautionIDs        []string     `json:"caution_ids"` // of package caution, in the same order
	Wave              number       `json:"wave_s"`
	WeatherCost       number       `json:"weather_cost_s"`
	Unmet             bool         `json:"goal_unmet"`
}

type jsonCourse struct {
	Name      string `json:"name"`
	Length    number `json:"length_m"`
	Ascent    number `json:"ascent_m"`
	Descent   number `json:"descent_m"`
	Smoothing number `json:"smoothing_m"`
}

type jsonAthlete struct {
	HourPower number `json:"hour_power"`
	Endurance number `json:"endurance"`
	Fade      number `json:"fade"`
	FadeShape number `json:"fade_shape"`
	Braking   number `json:"braking"`
	Results   int    `json:"results"`
}

type jsonGoal struct {
	Time number `json:"time_s"`
	Net  bool   `json:"net"`
}

type jsonBest struct {
	RelativeIntensity number  `json:"relative_intensity"`
	Moving            number  `json:"moving_s"`
	Gun               number  `json:"gun_s"`
	Low               *number `json:"gun_low_s"`
	High              *number `json:"gun_high_s"`
}

type jsonSplit struct {
	Place        string `json:"place,omitempty"`
	Distance     number `json:"distance_m"`
	Length       number `json:"length_m"`
	Ascent       number `json:"ascent_m"`
	Descent      number `json:"descent_m"`
	Split        number `json:"split_s"`
	Stop         number `json:"stop_s"`
	Moving       number `json:"moving_s"`
	Elapsed      number `json:"elapsed_s"`
	Clock        string `json:"clock,omitempty"`
	Pace         number `json:"pace_s_per_km"`
	LevelPace    number `json:"level_pace_s_per_km"`
	Gait         string `json:"gait"`
	WalkingShare number `json:"walking_share"`
}

type jsonClimb struct {
	Name         string `json:"name,omitempty"`
	Start        number `json:"start_m"`
	Top          number `json:"top_m"`
	Rise         number `json:"rise_m"`
	Gradient     number `json:"gradient"`
	Rating       number `json:"rating"`
	Moving       number `json:"moving_s"`
	Elapsed      number `json:"elapsed_s"`
	Gait         string `json:"gait"`
	WalkingShare number `json:"walking_share"`
	Advice       string `json:"advice"`
}

// JSON prints a plan with its splits at a spacing. Members that end in _m are in metres,
// in _s in seconds; moving_s and elapsed_s of a split are running totals, elapsed_s
// counting from the gun; best has null limits for an athlete taken as known, and goal
// is null where none was given.
//
// JSONSchema says the same as a JSON Schema.
//
// JSON panics where plan.Splits does; its error is the writer's.
func JSON(w io.Writer, p *plan.Plan, every plan.Spacing) error {
	out := json.NewEncoder(w)
	out.SetIndent("", "  ")
	out.SetEscapeHTML(false)
	return out.Encode(toJSON(p, every))
}

func toJSON(p *plan.Plan, every plan.Spacing) jsonPlan {
	relief, a := p.Course.Relief(), p.Athlete
	j := jsonPlan{
		Schema: Schema,
		Course: jsonCourse{
			page.Plain(p.Course.Name()),
			number{p.Course.Length(), 1},
			number{relief.Ascent, 1},
			number{relief.Descent, 1},
			number{relief.Smoothing, 1},
		},
		Athlete: jsonAthlete{
			number{a.HourPower, 4},
			number{a.Endurance, 5},
			number{a.Fade, 5},
			number{shapeOf(a.FadeShape), 4},
			number{a.Braking, 4},
			p.Race.Basis.Results,
		},
		RelativeIntensity: number{p.Intensity, 6}, BudgetSpent: number{p.Budget, 6},
		Moving: secondsOf(p.Moving), FirstHalf: secondsOf(p.FirstHalf),
		StartDelay: secondsOf(p.Race.StartDelay), Stops: secondsOf(p.Stopped),
		Gun: secondsOf(p.Gun), Net: secondsOf(p.Gun - p.Race.StartDelay),
		WalkingShare: number{p.WalkingShare, 6}, GaitChanges: p.GaitChanges,
		HoldBack: number{p.HoldBack.Share, 4}, HoldBackCost: secondsOf(p.HoldBack.Cost), BoutCost: secondsOf(p.BoutCost),
		Best: jsonBest{RelativeIntensity: number{p.Best.Intensity, 6}, Moving: secondsOf(p.Best.Moving), Gun: secondsOf(p.Best.Gun)},
		Aim:  aimOf(p.Race), Standard: page.Plain(p.Standard.Name), CrowdCost: secondsOf(p.Start.Crowd),
		Splits:   jsonSplits(p, every),
		StopList: jsonStops(p), Walks: jsonWalks(p), WalkCost: secondsOf(p.WalkCost), Cutoffs: jsonCutoffs(p),
		Climbs:   jsonClimbs(p),
		Warnings: append([]string{}, p.Warnings...), Cautions: caution.Texts(p), CautionIDs: cautionIDs(p),
		Wave: secondsOf(p.Race.Wave), WeatherCost: secondsOf(p.WeatherCost), Unmet: p.Unmet,
	}
	if p.Race.Goal > 0 {
		j.Goal = &jsonGoal{secondsOf(p.Race.Goal), p.Race.Net}
	}
	if p.Needs.HourPower > 0 {
		j.NeedsHourPower = &number{p.Needs.HourPower, 3}
	}
	if !p.Race.Start.IsZero() {
		j.Start = p.Race.Start.Format(time.RFC3339)
	}
	if p.Best.High > 0 {
		low, high := secondsOf(p.Best.Low), secondsOf(p.Best.High)
		j.Best.Low, j.Best.High = &low, &high
	}
	return j
}

// shapeOf is the fade shape that 0 stands for.
func shapeOf(shape float64) float64 {
	if shape == 0 {
		return 1
	}
	return shape
}

func jsonSplits(p *plan.Plan, every plan.Spacing) []jsonSplit {
	var out []jsonSplit
	for _, s := range p.Splits(every) {
		j := jsonSplit{
			Distance: number{s.Distance, 1}, Length: number{s.Length, 1},
			Ascent: number{s.Ascent, 1}, Descent: number{s.Descent, 1},
			Split: secondsOf(s.Took), Stop: secondsOf(s.Stop), Moving: secondsOf(s.Moving), Elapsed: secondsOf(s.Elapsed),
			Pace: number{s.Pace.Seconds(), 1}, LevelPace: number{s.LevelPace.Seconds(), 1},
			Gait: s.Gait.String(), WalkingShare: number{s.WalkingShare, 4},
		}
		if s.Landmark != nil {
			j.Place = page.Plain(s.Landmark.Name)
		}
		if !s.Clock.IsZero() {
			j.Clock = s.Clock.Round(time.Second).Format(time.RFC3339)
		}
		out = append(out, j)
	}
	return out
}

func jsonClimbs(p *plan.Plan) []jsonClimb {
	out := []jsonClimb{}
	for _, c := range p.Climbs {
		out = append(out, jsonClimb{
			Name: page.Plain(c.Name), Start: number{c.Climb.Start, 1}, Top: number{c.Climb.Top, 1},
			Rise: number{c.Rise, 1}, Gradient: number{c.Gradient(), 4},
			Rating: number{c.Rating.Value, 1}, Moving: secondsOf(c.Took), Elapsed: secondsOf(c.Top),
			Gait: c.Gait.String(), WalkingShare: number{c.WalkingShare, 4}, Advice: c.Describe(1000, "km"),
		})
	}
	return out
}
