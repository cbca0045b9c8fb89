package coursefile

import "time"

// Gaps between neighbouring points, m.
const (
	maxGap     = 20_000 // refused
	doubtedGap = 2000   // worth a warning
)

// profile measures the path, mends its elevations and warns of what is doubtful.
func (p *path) profile(o Options) (*profile, error) {
	out := &profile{track: p.at}
	if p.parts > 1 {
		out.warn("%d %s were joined in the order of the file", p.parts, p.kind)
	}
	out.add(0, p.elevation[0], p.marks[0].line)
	distance := 0.0
	for i := 1; i < len(p.at); i++ {
		leg := p.at[i-1].Distance(p.at[i])
		if leg > maxGap {
			return nil, o.errorAt(p.marks[i].line, because(ErrGap, "%.1f km", leg/1000))
		}
		distance += leg
		out.add(distance, p.elevation[i], p.marks[i].line)
	}
	out.warnOfGaps()
	if err := out.fill(); err != nil {
		return nil, o.errorAt(0, err)
	}
	p.warnOfTimes(out)
	return out, nil
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
		p.warn("gap of over 2 km between neighbouring points at %s, the widest %.1f km up to km %.1f, line %d: bridged by a straight line",
			counted(gaps, "place"), widest/1000, p.distance[end]/1000, p.line[end])
	}
}

// warnOfTimes warns of points that are earlier than the one before them: the parts of
// the course may be out of order.
func (p *path) warnOfTimes(out *profile) {
	back, first := 0, 0
	var last time.Time
	for _, m := range p.marks {
		if m.time.IsZero() {
			continue
		}
		if m.time.Before(last) {
			if back == 0 {
				first = m.line
			}
			back++
		}
		last = m.time
	}
	if back > 0 {
		out.warn("time goes back at %d of %d points, first at line %d: the order of the file was kept", back, len(p.marks), first)
	}
}
