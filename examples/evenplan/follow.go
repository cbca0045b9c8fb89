package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"strings"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/course/coursefile"
	"isoeffort.example/plan"
	"isoeffort.example/plan/follow"
)

// passageAt is when a place was passed.
type passageAt struct {
	place string
	gun   clock
}

// followFlags are those for during and after the race.
func (d *dayOptions) followFlags(fs *flag.FlagSet) {
	fs.Func("passage", "during the race: a place passed and its gun time, as `PLACE=H:MM:SS`, the place being kilometres or a landmark's name; prints where the runner stands and a plan for the rest; may be given again", func(s string) error {
		place, text, ok := cutLast(s, "=")
		var at clock
		if !ok || strings.TrimSpace(place) == "" || at.Set(strings.TrimSpace(text)) != nil {
			return errors.New("not a place with = and a gun time, such as 44=5:20:00")
		}
		d.passages = append(d.passages, passageAt{strings.TrimSpace(place), at})
		return nil
	})
	fs.StringVar(&d.recorded, "recorded", "", "after the race: a GPX `file` recorded in it, with times; prints the debrief")
}

func cutLast(s, sep string) (before, after string, ok bool) {
	i := strings.LastIndex(s, sep)
	if i < 0 {
		return s, "", false
	}
	return s[:i], s[i+len(sep):], true
}

// during reports whether the race has begun.
func (d *dayOptions) during() bool { return len(d.passages) > 0 || d.recorded != "" }

// follow prints where the runner stands and the rest, or the debrief.
func (d *dayOptions) follow(w io.Writer, p *plan.Plan, every plan.Spacing) error {
	if d.recorded != "" {
		return d.debrief(w, p, every)
	}
	var passages []follow.Passage
	for _, at := range d.passages {
		distance, err := placeOn(p.Course, at.place)
		if err != nil {
			return fmt.Errorf("-passage: %w", err)
		}
		passages = append(passages, follow.Passage{Distance: distance, Gun: time.Duration(at.gun)})
	}
	s, err := follow.From(p, passages...)
	if err != nil {
		return err
	}
	rest, err := s.Rest(follow.Options{})
	if err != nil {
		return err
	}
	if err := s.Text(w); err != nil {
		return err
	}
	if _, err := fmt.Fprintln(w); err != nil {
		return err
	}
	return rest.Text(w)
}

// debrief holds a recording against the plan.
func (d *dayOptions) debrief(w io.Writer, p *plan.Plan, every plan.Spacing) error {
	r, err := coursefile.OpenRecording(d.recorded, coursefile.Options{})
	if err != nil {
		return err
	}
	review, err := follow.Review(p, follow.Actual{Fixes: fixesOf(r)}, follow.DebriefOptions{Every: every})
	if err != nil {
		return fmt.Errorf("%s: %w", d.recorded, err)
	}
	return review.Text(w)
}

// fixesOf are the points of a recording that have a time, with the distance so far.
func fixesOf(r *coursefile.Recording) (fixes []follow.Fix) {
	along, last := 0.0, course.Position{}
	for _, t := range r.Tracks {
		for _, s := range t.Segments {
			for _, point := range s.Points {
				at := course.NewPosition(point.Lat, point.Lon)
				if last != (course.Position{}) {
					along += last.Distance(at)
				}
				last = at
				if !point.Time.IsZero() {
					fixes = append(fixes, follow.Fix{Distance: along, Time: point.Time})
				}
			}
		}
	}
	return fixes
}

// placeOn is the distance of a place given as kilometres or as a landmark's name.
func placeOn(c *course.Course, place string) (float64, error) {
	if km, err := number(place); err == nil {
		return 1000 * km, nil
	}
	at, err := plan.Find(c, place)
	if err != nil {
		return 0, errors.New(strings.TrimPrefix(err.Error(), "plan: "))
	}
	return at, nil
}
