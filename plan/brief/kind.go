package brief

import "fmt"

// Kind says what a line is about, and with it which of its fields are set.
type Kind int

// The kinds of line. Every line has From and Elapsed, and Clock where the race has a
// start time. Took is moving time, but where it says otherwise.
const (
	Beyond      Kind = iota // Took: the fastest sensible gun time, which is briefed; the goal is beyond the runner
	Overview                // Ascent, Descent, Level, OverGoal, Took (gun time of the finish), Clock there; EarlyPace of all, on short hilly courses
	Laps                    // Count laps of Length
	Harder                  // Share of the effort in the second half
	Effort                  // Feel, Level, OverGoal
	Late                    // Feel; perceived exertion rises
	Pace                    // EarlyPace, LatePace, on a level course; Gait near the end, Walk where it was not before
	Hills                   // even effort on hills
	Walking                 // Share of the moving time that is walked; Early walks; or From, where all is run before and walked after, Took
	Walks                   // Count planned walks of Took each
	Pauses                  // Took: all stops
	Wind                    // on a level course
	Weather                 // Air; Took: what weather, and with Night the dark, cost; Allowed
	Start                   // Took: delay; Crowd, Behind at half way, Returns
	Ground                  // Ascent, Descent, Sloping, Took, Gait, Whole, EarlyPace: what a section is
	Flat                    // level ground at the start that tempts, to To
	Drop                    // an early descent that tempts, to To; Descent, Gait
	Decoy                   // Climbs: the one taken for the other; Length is the gap
	OneClimb                // Climbs: it; the hardest of the course where Hardest is set, or one of them where Tied is
	SmallClimbs             // Climbs: Count that follow each other, up to To
	Descent                 // Descent from From to To
	MakeUp                  // gentle ground from From to To; Descent, Gait
	WalkPlaces              // planned walks of Took each, at Places
	LastWalk                // from here all is walked to the finish; Took
	Stop                    // Took, Name, Note: one halt; or Count of them up to To
	Cutoff                  // Limit, InHand, AtRisk, Departure
	Check                   // Ask, at a place; AtRisk: a cutoff of the plan is
	Halfway                 // Share of the effort that is still to come, Level
	LastClimb               // Climbs: it; Length, Ascent, Descent, Took with stops to the finish; Count smaller ones; Only
	ToGo                    // Length, Ascent, Took to the finish with stops
	Mark                    // MarkKind and Note, to To; Night
	Now                     // Feel at this share of the race
	Patch                   // what to do in a bad patch
	Dark                    // it gets dark
	Light                   // it gets light
	LapTimes                // Count of laps between the first and the last; Took and Slowest with stops
	LapClimb                // Climbs: one and the same on later laps; Count: the lap from which it is walked, or 0
	FinalLap                // Took with stops
	Sleepless               // a race through the nights; Count planned sleeps
	Home                    // Length that is left: how to finish
	After                   // after the finish
	kinds
)

var kindNames = [kinds]string{
	"beyond", "overview", "laps", "harder", "effort", "late", "pace", "hills", "walking", "walks", "pauses", "wind",
	"weather", "start", "ground", "flat", "drop", "decoy", "climb", "small climbs", "descent", "make-up", "walk places",
	"last walk", "stop", "cutoff",
	"check", "halfway", "last climb", "to go", "mark", "now", "patch", "dark", "light", "lap times", "lap climb",
	"final lap", "sleepless", "home", "after",
}

func (k Kind) String() string {
	if k < 0 || k >= kinds {
		return "no kind of line"
	}
	return kindNames[k]
}

// MarshalText writes the kind's name.
func (k Kind) MarshalText() ([]byte, error) { return []byte(k.String()), nil }

// UnmarshalText reads it.
func (k *Kind) UnmarshalText(text []byte) error {
	for i, name := range kindNames {
		if name == string(text) {
			*k = Kind(i)
			return nil
		}
	}
	return fmt.Errorf("brief: no kind of line is called %q", text)
}

// Ask says what to look at in a check.
type Ask int

// What is asked in a check.
const (
	Pacing Ask = iota
	Drinking
	Schedule
	Form
)

func (a Ask) String() string {
	names := [...]string{"pacing", "drinking", "schedule", "form"}
	if a < 0 || int(a) >= len(names) {
		return "nothing"
	}
	return names[a]
}

// MarshalText writes what is asked.
func (a Ask) MarshalText() ([]byte, error) { return []byte(a.String()), nil }
