package brief

import (
	"encoding/json"
	"time"

	"isoeffort.example/plan"
	"isoeffort.example/plan/story"
)

// A Line is one thing that is told: what it is about, the numbers, and the sentences.
// Distances and heights are metres, distances from the start; Kind says which fields are
// set. In JSON times are seconds.
type Line struct {
	Kind Kind    `json:"kind"`
	Nth  int     `json:"nth"` // lines of this kind that were told before it
	From float64 `json:"from_m"`
	To   float64 `json:"to_m,omitzero"`
	Name string  `json:"name,omitempty"` // of the place, or of the course

	Elapsed time.Duration `json:"-"`              // gun time on arrival at From
	Clock   time.Time     `json:"clock,omitzero"` // then
	Took    time.Duration `json:"-"`
	Slowest time.Duration `json:"-"` // of laps
	Crowd   time.Duration `json:"-"` // what a crowd at the start takes
	Behind  time.Duration `json:"-"` // at half way, by what the start takes
	Returns bool          `json:"returns,omitempty"`

	EarlyPace time.Duration `json:"-"` // per kilometre, in the first quarter, or over all of what the line is about
	LatePace  time.Duration `json:"-"` // in the last

	Length   float64 `json:"length_m,omitzero"`
	Ascent   float64 `json:"ascent_m,omitzero"`
	Descent  float64 `json:"descent_m,omitzero"`
	Share    float64 `json:"share,omitzero"`
	Count    int     `json:"count,omitzero"`
	Level    bool    `json:"level,omitempty"` // the course has hardly a hill
	Hardest  bool    `json:"hardest,omitempty"`
	Tied     bool    `json:"tied,omitempty"`      // other climbs have the same rating in whole numbers
	Sloping  float64 `json:"sloping,omitzero"`    // share of Length that climbs, or falls, whichever it does more
	Early    bool    `json:"early,omitempty"`     // some of the first third is walked
	Night    bool    `json:"night,omitempty"`     // it is dark there, or on the way
	Allowed  bool    `json:"allowed,omitempty"`   // the plan makes an allowance for heat
	Only     bool    `json:"only,omitempty"`      // there is no other climb
	Whole    bool    `json:"whole,omitempty"`     // the whole course, or all from here on, is in the gait of this line
	OverGoal bool    `json:"over_goal,omitempty"` // the goal is beyond the runner
	Lap      int     `json:"lap,omitzero"`        // on which the place is, from 1; 0 where there are no laps

	Gait   plan.Gait `json:"-"`
	Climbs []Climb   `json:"climbs,omitempty"`
	Places []float64 `json:"places_m,omitempty"`
	Air    *Air      `json:"air,omitempty"`
	Feel   *Feel     `json:"feel,omitempty"`

	Limit     time.Duration `json:"-"` // of a cutoff, since the runner's own gun
	LimitAt   time.Time     `json:"limit_clock,omitzero"`
	InHand    time.Duration `json:"-"`
	AtRisk    bool          `json:"at_risk,omitempty"`
	Departure bool          `json:"departure,omitempty"`
	Finish    bool          `json:"finish,omitempty"`  // the place is the finish
	Pausing   bool          `json:"pausing,omitempty"` // the plan has stops

	Ask      Ask            `json:"-"`
	StopKind plan.StopKind  `json:"-"`
	MarkKind story.MarkKind `json:"-"`
	Note     string         `json:"note,omitempty"`
	Delayed  bool           `json:"delayed,omitempty"` // the gun goes before the runner crosses the line

	// Text is what Words made of it; one or a few sentences.
	Text string `json:"text"`

	weight int // what is told first where words are short; must is always told
}

// A Climb is what a line tells of a climb.
type Climb struct {
	Start  float64   `json:"start_m"`
	Top    float64   `json:"top_m"`
	Rise   float64   `json:"rise_m"`
	Name   string    `json:"name,omitempty"`
	Rating float64   `json:"rating"`
	Gait   plan.Gait `json:"-"`

	// Walked is the share of the moving time that is walked. Where a climb falls into two
	// pieces, run and walked or the other way round, Change is where the second starts,
	// in metres from the foot, and WalkFirst is how; otherwise Change is 0.
	Walked    float64 `json:"walked"`
	Change    float64 `json:"change_m,omitzero"`
	WalkFirst bool    `json:"walk_first,omitempty"`
}

// seconds writes a duration for JSON.
func seconds(d time.Duration) *float64 {
	if d == 0 {
		return nil
	}
	s := d.Round(time.Millisecond).Seconds()
	return &s
}

// MarshalJSON writes the line with its times in seconds.
func (l Line) MarshalJSON() ([]byte, error) {
	type fields Line
	out := struct {
		fields
		Elapsed   float64  `json:"elapsed_s"`
		Took      *float64 `json:"took_s,omitempty"`
		Slowest   *float64 `json:"slowest_s,omitempty"`
		Crowd     *float64 `json:"crowd_s,omitempty"`
		Behind    *float64 `json:"behind_half_way_s,omitempty"`
		EarlyPace *float64 `json:"early_pace_s_per_km,omitempty"`
		LatePace  *float64 `json:"late_pace_s_per_km,omitempty"`
		Limit     *float64 `json:"limit_s,omitempty"`
		InHand    *float64 `json:"in_hand_s,omitempty"`
		Ask       string   `json:"ask,omitempty"`
		Gait      string   `json:"gait,omitempty"`
		MarkKind  string   `json:"mark,omitempty"`
		StopKind  string   `json:"stop,omitempty"`
	}{
		fields: fields(l), Elapsed: l.Elapsed.Seconds(), Took: seconds(l.Took), Slowest: seconds(l.Slowest),
		Crowd: seconds(l.Crowd), Behind: seconds(l.Behind), EarlyPace: seconds(l.EarlyPace), LatePace: seconds(l.LatePace),
		Limit: seconds(l.Limit), InHand: seconds(l.InHand),
	}
	switch l.Kind {
	case Check:
		out.Ask = l.Ask.String()
	case Ground, Drop, MakeUp:
		out.Gait = l.Gait.String()
	case Mark:
		out.MarkKind = l.MarkKind.String()
	case Stop:
		out.StopKind = l.StopKind.String()
	}
	return json.Marshal(out)
}

// MarshalJSON writes the climb with its gait in words.
func (c Climb) MarshalJSON() ([]byte, error) {
	type fields Climb
	return json.Marshal(struct {
		fields
		Gait string `json:"gait"`
	}{fields(c), c.Gait.String()})
}
