package coursefile

import (
	"time"

	"isoeffort.example/course"
)

// Gaps between neighbouring points, m.
const (
	maxGap     = 20_000 // refused
	doubtedGap = 2000   // worth a warning
)

// join measures the way through tracks, mends its elevations and warns of what is
// doubtful.
func join(parts []part, o Options) (*profile, error) {
	out := newProfile(parts)
	starts, err := out.follow(parts, o)
	if err != nil {
		return nil, err
	}
	if len(parts) > 1 {
		out.warnOfParts(parts, starts)
	}
	out.warnOfGaps()
	if err := out.fill(o); err != nil {
		return nil, o.errorAt(out.lineOf(err, o), err)
	}
	out.warnOfTimes(parts)
	return out, nil
}

func newProfile(parts []part) *profile {
	n := 0
	for _, p := range parts {
		n += p.points()
	}
	return &profile{
		distance: make([]float64, 0, n), elevation: make([]float64, 0, n),
		line: make([]int32, 0, n), track: make([]course.Position, 0, n),
	}
}

// follow adds the points of tracks and returns the index at which each of them starts.
func (p *profile) follow(parts []part, o Options) (starts []int, err error) {
	distance := 0.0
	for _, part := range parts {
		starts = append(starts, len(p.track))
		for _, s := range part.Segments {
			for k, q := range s.Points {
				at := course.NewPosition(q.Lat, q.Lon)
				if n := len(p.track); n > 0 {
					leg := p.track[n-1].Distance(at)
					if leg > maxGap {
						return nil, o.gap(leg, s.line(k), n == starts[len(starts)-1], parts)
					}
					distance += leg
				}
				p.track = append(p.track, at)
				p.add(distance, q.Elevation, s.line(k))
			}
		}
	}
	return starts, nil
}

// gap refuses a gap, which may lie between two tracks.
func (o Options) gap(leg float64, line int, between bool, parts []part) error {
	err := o.errorAt(line, because(ErrGap, "%.1f km", leg/1000))
	if between {
		return o.amongSeveral(err, parts)
	}
	return err
}

// warnOfGaps counts the legs that may be gaps and says where the widest ends.
func (p *profile) warnOfGaps() {
	gaps, widest, end := 0, 0.0, 0
	for i := 1; i < len(p.distance); i++ {
		leg := p.distance[i] - p.distance[i-1]
		if leg > doubtedGap {
			gaps++
		}
		if leg > widest {
			widest, end = leg, i
		}
	}
	if gaps > 0 {
		p.warn("gap of over 2 km between neighbouring points at %s, the widest %.1f km up to km %.1f%s: bridged by a straight line",
			counted(gaps, "place"), widest/1000, p.distance[end]/1000, onLine(p.line[end]))
	}
}

// warnOfTimes warns of points that are earlier than the one before them: the parts of
// the course may be out of order.
func (p *profile) warnOfTimes(parts []part) {
	back, first := 0, 0
	var last time.Time
	i := 0
	for _, part := range parts {
		for _, s := range part.Segments {
			for _, q := range s.Points {
				if q.Time.Before(last) && !q.Time.IsZero() {
					if back == 0 {
						first = i
					}
					back++
				}
				if !q.Time.IsZero() {
					last = q.Time
				}
				i++
			}
		}
	}
	if back > 0 {
		p.warn("time goes back at %d of %d points%s: the order of the file was kept", back, i, firstAt(p.line[first]))
	}
}
