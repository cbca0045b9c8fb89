package coursefile

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"isoeffort.example/course"
)

// Course makes a course of a recording, as the package's comment describes. Of the
// options it heeds all but the limits. Every error is an *Error.
func (r *Recording) Course(o Options) (*course.Course, error) {
	if o.File == "" {
		o.File = r.file
	}
	if err := r.check(o); err != nil {
		return nil, err
	}
	parts, err := r.choose(o)
	if err != nil {
		return nil, err
	}
	p, err := join(parts, o)
	if err != nil {
		return nil, err
	}
	p.warnings = append(slices.Clone(r.Warnings), p.warnings...)
	landmarks := p.place(sitesOf(r.Waypoints), o)
	c, err := p.course(o, r.nameOf(parts), landmarks)
	if err != nil && len(parts) > 1 {
		return nil, o.amongSeveral(err, parts)
	}
	return c, err
}

// A part is a track of a course and its number in the recording.
type part struct {
	*Track
	number int
}

// choose returns the tracks that the course is to run through.
func (r *Recording) choose(o Options) ([]part, error) {
	var all []part
	for i := range r.Tracks {
		if t := &r.Tracks[i]; t.points() > 0 {
			all = append(all, part{t, i + 1})
		}
	}
	if len(all) == 0 {
		return nil, o.errorAt(cmp.Or(r.vacant, r.end), ErrNoTrack)
	}
	if o.TrackName == "" && o.Track == 0 {
		if tracks := slices.DeleteFunc(slices.Clone(all), func(p part) bool { return p.Route }); len(tracks) > 0 {
			return tracks, nil
		}
		return all, nil
	}
	return pick(all, o)
}

// pick returns the tracks that the options ask for.
func pick(all []part, o Options) ([]part, error) {
	left := all
	if o.TrackName != "" {
		name := oneLine(o.TrackName, maxName)
		left = slices.DeleteFunc(slices.Clone(all), func(p part) bool { return oneLine(p.Name, maxName) != name })
		if len(left) == 0 {
			return nil, o.errorAt(all[0].line(), because(ErrChoice, "%q among %s", name, listed(all)))
		}
	}
	switch {
	case o.Track == 0:
		return left, nil
	case o.Track < 0 || o.Track > len(left):
		return nil, o.errorAt(left[0].line(), because(ErrChoice, "number %d among %s", o.Track, listed(left)))
	}
	return left[o.Track-1 : o.Track], nil
}

// line returns the line of the first point, 0 if it is not known.
func (p part) line() int {
	for _, s := range p.Segments {
		if len(s.Points) > 0 {
			return s.line(0)
		}
	}
	return 0
}

// maxListed is how many tracks a text lists.
const maxListed = 12

// listed shows tracks by number, name and length, to choose from.
func listed(parts []part) string {
	var texts []string
	for i, p := range parts {
		if i == maxListed {
			texts = append(texts, fmt.Sprintf("and %d more", len(parts)-i))
			break
		}
		kind := "track"
		if p.Route {
			kind = "route"
		}
		name := ""
		if p.Name != "" {
			name = " " + quoted(p.Name)
		}
		texts = append(texts, fmt.Sprintf("%d %s%s %.1f km", p.number, kind, name, p.Length()/1000))
	}
	return strings.Join(texts, ", ")
}

// amongSeveral adds to a refusal of joined tracks that one of them may do.
func (o Options) amongSeveral(err error, parts []part) error {
	located := o.errorAt(0, err)
	cause := fmt.Errorf("%w; one can be chosen of %s", located.Err, listed(parts))
	return &Error{File: located.File, Line: located.Line, Err: oneLineError{cause}}
}

// nameOf returns the name of a course.
func (r *Recording) nameOf(parts []part) string {
	for _, p := range parts {
		if name := oneLine(p.Name, maxName); name != "" {
			return name
		}
	}
	return oneLine(r.Name, maxName)
}
