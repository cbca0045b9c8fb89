package chart

import (
	"reflect"
	"strings"
)

// Words are all texts of the figures. An empty one means the English one, which English
// returns; what stands in braces is filled in.
type Words struct {
	Course  string // a course without a name
	Climb   string // a climb without a name
	Finish  string // the finish, where no landmark stands
	Place   string // a landmark or passage without a name
	Decimal string // the sign between whole numbers and tenths

	Km, Mile, Metre, Foot string // units
	Minute, Hour          string

	Run, Walk, Mixed string // gaits
	Gait             string // heading of the band of gaits
	GunTime          string // heading of the gun times under the axis
	Climbs           string // heading of the numbers under the profile

	ProfileTitle, AgainstTitle, FanTitle string // {course}

	Summary string // {length}, {up}, {down}, {gun}, {walking}
	Target  string // a label's second line: {at}, {time}
	Cutoff  string // a label's third line: {time}
	Missed  string // the same where the plan is later: {time}
	AtRisk  string // the same where a day's luck may make it so: {time}
	Stop    string // a label's third line: {time}
	Steeper string // {times}
	LeftOut string // places without a label: {n}, {all}
	Smaller string // climbs without a number: {n}, {all}
	TooMuch string // a plan beyond the runner: {budget}

	// Legend.
	Station, Top, Landmark, CutoffMark, Finished string

	// Headings of the table of climbs.
	Number, Name, From, Length, Rise, Gradient, Rating, Took string

	// Headings of the table of splits.
	At, Part, Pace string

	// Against.
	Behind, Ahead string // the two sides of the plan: {unit}
	Met           string // a label's third line: {difference}, {time}
	Result        string // of a race that came to the finish: {time}, {difference}
	Latest        string // of one that did not: {at}, {time}, {difference}
	OnPlan        string // a difference of nothing
	Actual, Plan  string // legend
	Above, Below  string // cutoffs off the picture: {places}
	More          string // after the first places of a list: {n}

	// Fan.
	Median, Quantile string // at the right end; Quantile: {percent}
	FanNote          string // {percent}, the share of races within the outermost band
	Alone            string // title without a plan: {course}
	Later, Earlier   string // the two sides of the middle, without a plan: {unit}
	Arrival          string // heading: gun time of the plan
	Likely           string // heading of the median
	Range            string // heading of the interval: {low}, {high}
	CutoffTime       string // heading

	Caution string
}

var english = Words{
	Course: "Course", Climb: "–", Finish: "Finish", Place: "Unnamed place", Decimal: ".",
	Km: "km", Mile: "mi", Metre: "m", Foot: "ft", Minute: "min", Hour: "hours",
	Run: "run", Walk: "walk", Mixed: "mixed", Gait: "gait", GunTime: "gun time", Climbs: "climb",
	ProfileTitle: "{course}: profile and target times", AgainstTitle: "{course}: the race against the plan",
	FanTitle: "{course}: forecast about the plan",
	Summary:  "{length}, {up} up, {down} down. Target {gun} gun time, {walking} of the moving time walked.",
	Target:   "{at}, {time}", Cutoff: "cutoff {time}", Missed: "misses cutoff {time}", AtRisk: "cutoff {time} at risk", Stop: "stop {time}",
	Steeper: "Heights are drawn {times} times too tall.",
	LeftOut: "Places without a label for want of room: {n} of {all}.",
	Smaller: "Climbs without a number, those rated lowest: {n} of {all}.",
	TooMuch: "This target is beyond the runner: it takes {budget} of the effort budget.",
	Station: "aid station", Top: "top", Landmark: "place", CutoffMark: "cutoff", Finished: "finish",
	Number: "no.", Name: "climb", From: "from", Length: "length", Rise: "rise", Gradient: "grad.", Rating: "rating", Took: "time",
	At: "place", Part: "part", Pace: "pace",
	Behind: "{unit} behind the plan", Ahead: "{unit} ahead of the plan", Met: "{difference}",
	Result: "Finished {time}, {difference}.", Latest: "Latest passage: {at} after {time}, {difference}.", OnPlan: "on plan", Actual: "as run", Plan: "plan",
	Above:  "Cutoffs beyond the picture, with the time in hand: {places}.",
	Below:  "Cutoffs beyond the picture, with the time by which the plan misses them: {places}.",
	More:   "and {n} more",
	Median: "median", Quantile: "{percent} %",
	FanNote: "If the forecast is right, {percent} of such races pass within the light band. What stands at the right end of a line is the share that passes before it. A forecast says what may come, not what to aim for.",
	Alone:   "{course}: forecast", Later: "{unit} later than the middle", Earlier: "{unit} earlier than the middle", Arrival: "plan", Likely: "median", Range: "{low} % to {high} %", CutoffTime: "cutoff",
	Caution: "Go by effort and never chase a lost minute or a cutoff. Medical team, local rules and your doctor come first.",
}

// English returns the texts that empty ones stand for.
func English() Words { return english }

// filled returns the words with the English ones where there are none.
func (w Words) filled() Words {
	v, e := reflect.ValueOf(&w).Elem(), reflect.ValueOf(english)
	for i := range v.NumField() {
		if v.Field(i).String() == "" {
			v.Field(i).SetString(e.Field(i).String())
		}
	}
	return w
}

// fill puts values in the place of names in braces: fill(s, "n", "3").
func fill(s string, pairs ...string) string {
	for i := 0; i < len(pairs); i += 2 {
		pairs[i] = "{" + pairs[i] + "}"
	}
	return strings.NewReplacer(pairs...).Replace(s)
}
