package coursefile

import (
	"fmt"
	"math"
	"strings"
	"time"

	"isoeffort.example/course"
)

// What makes joined tracks look like alternatives or separate days. [Our own]
const (
	apartParts = 500.0         // m from the end of one to the start of the next
	restParts  = 4 * time.Hour // between them
	sharedPart = 0.5           // of the length of one, on the ground of an earlier one
	leastPart  = 500.0         // m, below which a part has too little ground to judge by
	maxDoubts  = 3             // that the warning names
)

// warnOfParts says that tracks were joined and what speaks against it.
func (p *profile) warnOfParts(parts []part, starts []int) {
	kind := "tracks"
	if parts[0].Route {
		kind = "routes"
	}
	joined := fmt.Sprintf("%d %s were joined in the order of the file", len(parts), kind)
	doubts, more := p.doubts(parts, starts)
	if len(doubts) == 0 {
		p.warn("%s", joined)
		return
	}
	if more > 0 {
		doubts = append(doubts, fmt.Sprintf("and %d more doubts", more))
	}
	p.warn("%s, but may be alternatives or separate days (%s); one can be chosen of %s", joined, strings.Join(doubts, ", "), listed(parts))
}

// doubts returns the first doubts in words and how many more there are: in a file of
// nothing but tracks there are a million.
func (p *profile) doubts(parts []part, starts []int) (found []string, more int) {
	doubt := func(format string, args ...any) {
		if len(found) == maxDoubts {
			more++
			return
		}
		found = append(found, fmt.Sprintf(format, args...))
	}
	shared := p.shared(starts)
	for i := 1; i < len(parts); i++ {
		a, b, start := parts[i-1], parts[i], starts[i]
		if leg := p.distance[start] - p.distance[start-1]; leg > apartParts {
			doubt("%d starts %.1f km from the end of %d", b.number, leg/1000, a.number)
		}
		if rest := b.first().Sub(a.last()); rest > restParts && !a.last().IsZero() && !b.first().IsZero() {
			doubt("%d starts %.0f h after the end of %d", b.number, rest.Hours(), a.number)
		}
		if shared[i] > sharedPart {
			doubt("%d runs over ground of earlier ones for %.0f %%", b.number, 100*shared[i])
		}
	}
	return found, more
}

// first and last return the time of the first and of the last point, zero if it has none.
func (p part) first() time.Time {
	for _, s := range p.Segments {
		if len(s.Points) > 0 {
			return s.Points[0].Time
		}
	}
	return time.Time{}
}

func (p part) last() (last time.Time) {
	for _, s := range p.Segments {
		if n := len(s.Points); n > 0 {
			last = s.Points[n-1].Time
		}
	}
	return last
}

// shared returns for each part which share of its length lies on the ground of earlier
// parts: within about 25 to 50 m. It is all zeros for what is too long for a course.
func (p *profile) shared(starts []int) []float64 {
	shares := make([]float64, len(starts))
	if p.distance[len(p.distance)-1] > course.MaxLength {
		return shares
	}
	trodden := ground{origin: p.track[0], cells: map[cell]bool{}}
	for i, start := range starts {
		end := len(p.track)
		if i+1 < len(starts) {
			end = starts[i+1]
		}
		places := p.sampled(start, end)
		on := 0
		for _, at := range places {
			if trodden.near(at) {
				on++
			}
		}
		if p.distance[end-1]-p.distance[start] >= leastPart {
			shares[i] = float64(on) / float64(len(places))
		}
		for _, at := range places {
			trodden.cells[trodden.cell(at)] = true
		}
	}
	return shares
}

// A place on the map, in degrees.
type degrees struct{ lat, lon float64 }

// sampled returns places along the points from start up to but not including end, one
// every half cell.
func (p *profile) sampled(start, end int) []degrees {
	places := []degrees{{p.track[start].Lat(), p.track[start].Lon()}}
	next := p.distance[start] + cellSize/2
	for i := start + 1; i < end; i++ {
		a, b := p.track[i-1], p.track[i]
		east := math.Remainder(b.Lon()-a.Lon(), 360)
		for ; next <= p.distance[i]; next += cellSize / 2 {
			share := (next - p.distance[i-1]) / (p.distance[i] - p.distance[i-1])
			places = append(places, degrees{a.Lat() + share*(b.Lat()-a.Lat()), a.Lon() + share*east})
		}
	}
	return places
}

// cellSize is the width of a cell of the ground, m.
const cellSize = 25

// ground is a set of cells of the map around an origin, square at its latitude.
type ground struct {
	origin course.Position
	cells  map[cell]bool
}

type cell struct{ north, east int32 }

func (g *ground) cell(at degrees) cell {
	const metresPerDegree = 111_320 // of the equator; to a per cent anywhere
	north := (at.lat - g.origin.Lat()) * metresPerDegree
	east := math.Remainder(at.lon-g.origin.Lon(), 360) * metresPerDegree * math.Cos(g.origin.Lat()*math.Pi/180)
	return cell{int32(math.Floor(north / cellSize)), int32(math.Floor(east / cellSize))}
}

// near reports whether a place lies in one of the cells or beside one.
func (g *ground) near(at degrees) bool {
	c := g.cell(at)
	for north := c.north - 1; north <= c.north+1; north++ {
		for east := c.east - 1; east <= c.east+1; east++ {
			if g.cells[cell{north, east}] {
				return true
			}
		}
	}
	return false
}
