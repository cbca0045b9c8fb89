package brief

import (
	"cmp"
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/internal/page"
	"isoeffort.example/plan"
	"isoeffort.example/plan/story"
)

// ErrLaps is wrapped by the error for a number of laps that the course cannot have.
var ErrLaps = errors.New("laps out of range")

// mostLaps is the greatest number of laps.
const mostLaps = 500

// Options of Make. The zero value is ready.
type Options struct {
	// Imperial tells distances in miles and heights in feet.
	Imperial bool

	// Marks are what the user says of the course, as for story.Tell.
	Marks []story.Mark

	// Laps is on how many equal laps the course is run. 0 finds out: where landmarks of
	// the same names come again at the same heights on every lap. 1 tells it as one way.
	Laps int

	// Words is the language. Its zero value, and what is missing in it, is English.
	Words Words
}

// A Briefing is the talk. Show the cautions with it.
type Briefing struct {
	Course   string    `json:"course"`
	Length   float64   `json:"length_m"`
	Imperial bool      `json:"imperial,omitempty"`
	Opening  []Line    `json:"opening"`
	Sections []Section `json:"sections"`
	Closing  []Line    `json:"closing"`
	Cautions []Caution `json:"cautions"`

	words Words
}

// A Section is a piece of the course that is told together.
type Section struct {
	From float64 `json:"from_m"`
	To   float64 `json:"to_m"`

	// FromName and ToName are the landmarks at its ends, if there are. FirstLap and
	// LastLap are set instead where laps are told, counted from 1.
	FromName string `json:"from_name,omitempty"`
	ToName   string `json:"to_name,omitempty"`
	FirstLap int    `json:"first_lap,omitempty"`
	LastLap  int    `json:"last_lap,omitempty"`

	// Arrival is the gun time at its end, and Clock the time of day then.
	Arrival time.Duration `json:"-"`
	Clock   time.Time     `json:"clock,omitzero"`

	Heading string `json:"heading"`
	Lines   []Line `json:"lines"`
}

// Make makes the briefing for a plan. Where the goal is beyond the runner (plan.Plan.Budget
// over plan.BeyondBudget, or Unmet), no time of such a plan is told: the first line says so,
// and the rest is about the fastest plan for the same race that the runner can hold.
//
// The error wraps ErrLaps, story.ErrMark, or one of package effort's for an athlete that
// makes no sense; a nil plan, or one that plan.Even did not make, is a programmer's mistake
// and panics.
func Make(p *plan.Plan, o Options) (*Briefing, error) {
	if o.Laps < 0 || o.Laps > mostLaps {
		return nil, fmt.Errorf("brief: %w: %d is not within 0 to %d", ErrLaps, o.Laps, mostLaps)
	}
	over := p.Unmet || p.Budget > plan.BeyondBudget
	if !p.Unmet && over {
		best, err := fastest(p)
		if err != nil {
			return nil, fmt.Errorf("brief: %w", err)
		}
		p = best
	}
	s, err := story.Tell(p.Course, story.Options{Athlete: p.Athlete, Marks: o.Marks})
	if err != nil {
		return nil, fmt.Errorf("brief: %w", err)
	}
	t := teller{plan: p, over: over, story: s, length: p.Course.Length(), laps: o.Laps, measure: measureOf(p.Course.Length(), o.Imperial), words: o.Words}
	if t.laps == 0 {
		t.laps = lapsOf(p.Course)
	}
	t.feel = feel(p)
	t.level = levelCourse(p)
	t.whole = p.WalkingShare < fewWalks || mostly(p.WalkingShare) == plan.Walk
	t.climbs = climbsOf(p)
	t.divide()
	t.gather()
	t.choose()
	return t.briefing(), nil
}

// fastest is the plan for the same race on the whole budget.
func fastest(p *plan.Plan) (*plan.Plan, error) {
	r := p.Race
	r.Goal, r.Net, r.Share, r.Standards, r.MakeCutoffs, r.InHand = 0, false, 0, nil, false, 0
	return plan.Even(p.Course, p.Athlete, r)
}

// teller makes one briefing.
type teller struct {
	plan    *plan.Plan
	over    bool // in place of one for a goal beyond the runner
	story   *story.Story
	length  float64
	laps    int
	measure Measure
	words   Words
	feel    Feel
	level   bool
	whole   bool    // one gait from start to finish
	climbs  []Climb // of the plan, in order

	sections         []Section
	opening, closing []Line
	lines            []Line // of the sections
}

// levelCourse reports whether a course has so few hills that pace can be told.
func levelCourse(p *plan.Plan) bool {
	const hardlyAny = 0.008 // m of ascent, and of descent, a metre [our own]
	r, bound := p.Course.Relief(), hardlyAny*p.Course.Length()
	return len(p.Climbs) == 0 && r.Ascent <= bound && r.Descent <= bound
}

// elapsed is the gun time on arrival at a distance.
func (t *teller) elapsed(distance float64) time.Duration {
	d := t.plan.Race.StartDelay + t.moving(0, distance)
	for _, s := range t.plan.Stops {
		if s.Distance < distance {
			d += s.Duration
		}
	}
	return d
}

// moving is the moving time between two distances.
func (t *teller) moving(from, to float64) time.Duration {
	d := t.plan.State(to).Moving
	if from > 0 {
		d -= t.plan.State(from).Moving
	}
	return effort.Seconds(d).Round(time.Millisecond)
}

// clock is the time of day so long after the gun, if the race has a start time.
func (t *teller) clock(elapsed time.Duration) time.Time {
	if t.plan.Race.Start.IsZero() {
		return time.Time{}
	}
	return t.plan.Race.Start.Add(elapsed)
}

// placed fills in when the plan is at the line's place.
func (t *teller) placed(l Line) Line {
	l.Elapsed = t.elapsed(l.From)
	l.Clock = t.clock(l.Elapsed)
	l.Delayed = t.plan.Race.StartDelay > 0
	if t.laps > 1 {
		l.Lap = t.lapOf(l.From)
	}
	return l
}

// tell adds a line to the sections.
func (t *teller) tell(weight int, l Line) {
	l.weight = weight
	t.lines = append(t.lines, t.placed(l))
}

// open adds a line to the opening.
func (t *teller) open(weight int, l Line) {
	l.weight = weight
	t.opening = append(t.opening, t.placed(l))
}

// gather collects everything that could be told.
func (t *teller) gather() {
	t.gatherOpening()
	t.gatherStart()
	t.gatherGround()
	t.gatherFeel()
	t.gatherLaps()
	t.gatherClimbs()
	t.gatherChecks()
	t.gatherStretches()
	t.gatherWalks()
	t.gatherRules()
	t.gatherClosing()
	slices.SortStableFunc(t.opening, func(a, b Line) int { return cmp.Compare(a.Kind, b.Kind) })
	slices.SortStableFunc(t.lines, func(a, b Line) int { return cmp.Compare(a.From, b.From) })
}

// landmark is the name of the landmark nearest to a place, within samePlace, or "".
func landmark(c *course.Course, distance float64) string {
	name, nearest := "", samePlace
	for _, l := range c.Landmarks() {
		if off := max(l.Distance-distance, distance-l.Distance); off <= nearest && l.Name != "" {
			name, nearest = page.Plain(l.Name), off
		}
	}
	return name
}

// samePlace is how near in metres a landmark is to be the one at a place.
const samePlace = 25.0

// MarshalJSON writes the section with its time in seconds.
func (s Section) MarshalJSON() ([]byte, error) {
	type fields Section
	return json.Marshal(struct {
		fields
		Arrival float64 `json:"arrival_s"`
	}{fields(s), s.Arrival.Seconds()})
}
