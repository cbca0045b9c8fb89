package plan

import (
	"math"
	"time"

	"isoeffort.example/course"
)

// A Split is the plan from the split before, or the start, to a place.
type Split struct {
	Landmark      *course.Landmark // at the place, if the split is for one
	Distance      float64          // of the place, m from the start
	Length        float64          // from the place before, m
	course.Relief                  // from the place before

	Took    time.Duration // moving time from the place before
	Moving  time.Duration // moving time from the start
	Elapsed time.Duration // gun time on arrival
	Stop    time.Duration // planned stops since the place before, one there included, one here not
	Clock   time.Time     // on arrival; zero if the race has no start time

	// Pace is the moving time per kilometre, and LevelPace that of running on level
	// ground at the same effort.
	Pace, LevelPace time.Duration

	Gait         Gait
	WalkingShare float64 // of the moving time
}

// Spacing says where splits are taken: every so many metres, or, at 0, at the landmarks.
type Spacing float64

// Spacings of common use.
const (
	AtLandmarks    Spacing = 0
	EveryKilometre Spacing = 1000
	EveryMile      Spacing = 1609.344
)

// Splits returns the plan cut at a spacing; the last split ends at the finish. It panics
// if the spacing is negative, not a number or under 1 m.
func (p *Plan) Splits(every Spacing) []Split {
	if every == AtLandmarks {
		var splits []Split
		for _, s := range p.Course.Sections() {
			to := s.To
			split := p.split(s.From.Distance, s.To.Distance)
			split.Landmark = &to
			splits = append(splits, split)
		}
		return splits
	}
	if !(every >= 1) {
		panic("plan: spacing of splits under 1 m")
	}
	var splits []Split
	length, from := p.Course.Length(), 0.0
	n := int(math.Ceil(length/float64(every) - 1e-9))
	for i := 1; i <= n; i++ {
		to := float64(every) * float64(i)
		if i == n {
			to = length
		}
		splits = append(splits, p.split(from, to))
		from = to
	}
	return splits
}

// Elapsed returns the gun time at which the plan arrives at a distance in metres, before a
// stop there.
func (p *Plan) Elapsed(distance float64) time.Duration {
	return p.Race.StartDelay + millis(p.trace.At(distance).Moving) + p.stopped(distance)
}

// Between returns the plan between two distances in metres, from < to, as one split.
func (p *Plan) Between(from, to float64) Split { return p.split(from, to) }

func (p *Plan) split(from, to float64) Split {
	a, b := p.trace.At(from), p.trace.At(to)
	s := Split{
		Distance: to, Length: to - from,
		Relief: p.Course.ReliefBetween(from, to),
		Moving: millis(b.Moving), Took: millis(b.Moving) - millis(a.Moving),
		Stop: p.stopped(to) - p.stopped(from),
	}
	s.Elapsed = p.Race.StartDelay + s.Moving + p.stopped(to)
	if !p.Race.Start.IsZero() {
		s.Clock = p.Race.Start.Add(s.Elapsed)
	}
	seconds := b.Moving - a.Moving
	s.Pace = millis(1000 * seconds / s.Length)
	power := (b.Work - a.Work) * 3600 * p.Athlete.HourPower / seconds
	s.LevelPace = millis(1000 / p.Athlete.LevelSpeed(power, p.Race.Surroundings))
	s.WalkingShare = p.trace.WalkingTime(from, to) / seconds
	if s.Gait = gaitOf(s.WalkingShare); len(p.Bouts(from, to)) > 2 {
		s.Gait = Mixed // a whole bout of the other gait lies in it
	}
	return s
}
