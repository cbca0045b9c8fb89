package plan

import (
	"fmt"
	"strings"
	"time"

	"isoeffort.example/course"
)

// A Start says what the start takes: the time to reach the line, and what a crowd behind
// it takes of the time that the same effort would have made of the free road.
//
// None of it is chased: even effort shares what there is to make up over the whole
// course. Plan.Behind says where it comes back.
type Start struct {
	Delay time.Duration
	Crowd time.Duration
}

// Behind returns how far the plan is at a distance behind the same runner with the same
// goal who had a free road from the gun on. Without a gun time as a goal, what the
// delay takes does not come back, and what the crowd takes only as far as the effort saved
// in it allows.
func (p *Plan) Behind(distance float64) time.Duration {
	if p.free == nil {
		return 0
	}
	return p.Race.StartDelay + millis(p.trace.At(distance).Moving) - millis(p.free.At(distance).Moving)
}

// StartAt returns the time of a race's gun from its date, and the clock on the wall of its
// place. A clock time that is skipped there, as in the hour when summer time begins, is
// refused, and so is one that comes twice: give an instant with its zone then. The
// error wraps ErrStart.
func StartAt(year int, month time.Month, day, hour, minute int, place *time.Location) (time.Time, error) {
	if place == nil {
		place = time.UTC
	}
	t := time.Date(year, month, day, hour, minute, 0, 0, place)
	wall := fmt.Sprintf("%04d-%02d-%02d %02d:%02d", year, int(month), day, hour, minute)
	if t.Format("2006-01-02 15:04") != wall {
		return time.Time{}, fmt.Errorf("plan: %w: %s in %v", ErrStart, wall, place)
	}
	for _, shift := range []time.Duration{-2 * time.Hour, -time.Hour, -30 * time.Minute, 30 * time.Minute, time.Hour, 2 * time.Hour} {
		if t.Add(shift).Format("2006-01-02 15:04") == wall {
			return time.Time{}, fmt.Errorf("plan: %w: %s in %v comes twice", ErrStart, wall, place)
		}
	}
	return t, nil
}

// Find returns the distance in metres of the landmark with a name, whatever the case of
// its letters. The error wraps ErrName if there is none, or if there are several, as on
// laps.
func Find(c *course.Course, name string) (float64, error) {
	var at []string
	distance := 0.0
	for _, l := range c.Landmarks() {
		if sameName(l.Name, name) {
			at, distance = append(at, fmt.Sprintf("%.2f km", l.Distance/1000)), l.Distance
		}
	}
	return distance, oneOf(at, "landmark", name)
}

// climbCalled returns the climb with a name, or with a name of its label.
func climbCalled(c *course.Course, name string) (found course.Climb, err error) {
	var at []string
	for _, climb := range c.Climbs(0) {
		if sameName(climb.Name, name) || sameName(climb.Label(), name) {
			at, found = append(at, fmt.Sprintf("%.2f km", climb.Start/1000)), climb
		}
	}
	return found, oneOf(at, "climb", name)
}

func sameName(a, b string) bool {
	return strings.EqualFold(strings.TrimSpace(a), strings.TrimSpace(b)) && strings.TrimSpace(b) != ""
}

// oneOf refuses a name that stands for no place, or for several.
func oneOf(at []string, kind, name string) error {
	switch len(at) {
	case 1:
		return nil
	case 0:
		return fmt.Errorf("plan: %w: no %s is called %q", ErrName, kind, name)
	}
	return fmt.Errorf("plan: %w: %q is the name of a %s at %s: give the distance", ErrName, name, kind, strings.Join(at, " and at "))
}
