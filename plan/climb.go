package plan

import (
	"fmt"
	"strings"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/plan/story"
)

// A Climb is a climb of the course and what to do on it.
type Climb struct {
	course.Climb
	Rating       story.Rating  // how hard it is where it stands, 0 to 10
	Start, Top   time.Duration // gun time at its foot and at its top
	Took         time.Duration // moving time between them
	Pace         time.Duration // per kilometre
	Gait         Gait
	WalkingShare float64 // of the moving time
	Bouts        []Bout  // from its foot to its top
}

func (p *Plan) describeClimbs(t *effort.Tally) {
	for _, c := range p.Course.Climbs(0) {
		s := p.split(c.Start, c.Top)
		climb := Climb{
			Climb: c, Rating: story.Rate(t, c.Start, c.Top), Start: s.Elapsed - s.Took - s.Stop, Top: s.Elapsed,
			Took: s.Took, Pace: s.Pace, Gait: s.Gait, WalkingShare: s.WalkingShare,
		}
		climb.Bouts = p.Bouts(c.Start, c.Top)
		p.Climbs = append(p.Climbs, climb)
	}
}

// nearlyAll is the share of a climb's time in one gait from which a word about the rest
// would only confuse.
const nearlyAll = 0.9

// Describe says in plain words what to do on the climb, as in "run to 12.3 km, then walk
// to the top". Distances are in units of so many metres with that name.
func (c Climb) Describe(metres float64, unit string) string {
	switch c.Gait {
	case Walk:
		return "walk all of it"
	case Run:
		return "run all of it, no harder than on the flat"
	}
	if c.WalkingShare >= nearlyAll {
		return "walk all of it"
	}
	if c.WalkingShare <= 1-nearlyAll {
		return "run all of it, no harder than on the flat"
	}
	at := func(distance float64) string { return fmt.Sprintf("%.1f", distance/metres) }
	var walks []string
	for _, b := range c.Bouts {
		if b.Gait == Walk {
			walks = append(walks, at(b.From)+"-"+at(b.To)+" "+unit)
		}
	}
	if len(walks) == 1 && walks[0] == at(c.Climb.Start)+"-"+at(c.Climb.Top)+" "+unit {
		return "walk all of it"
	}
	last := c.Bouts[len(c.Bouts)-1]
	switch {
	case len(c.Bouts) == 2 && last.Gait == Walk:
		return "run to " + at(last.From) + " " + unit + ", then walk to the top"
	case len(c.Bouts) == 2:
		return "walk to " + at(last.From) + " " + unit + ", then run to the top"
	case len(walks) <= 2:
		return "walk " + strings.Join(walks, " and ") + ", run the rest"
	case last.Gait == Walk:
		return "run and walk by turns, walk from " + at(last.From) + " " + unit
	}
	return "run and walk by turns: walk where it is steepest"
}
