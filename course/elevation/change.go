package elevation

import "fmt"

// A Change is one repair, from a distance to another in metres.
type Change struct {
	From, To float64
	Kind     Kind

	// Old and New are the heights in metres at From, as given (NaN if none was) and as
	// they are in the cleaned profile.
	Old, New float64

	// Shift is what was added to all heights from From to To, for a Displaced stretch, a
	// Step and a Drift; for a Drift it is that at From.
	Shift float64

	// Text is the change in words.
	Text string
}

// Kind says what was wrong.
type Kind int

// The kinds of change.
const (
	Void      Kind = iota // a number that is no height of ground: taken as missing
	Zeros                 // zeros where there was no height: taken as missing
	Spike                 // a height far off its neighbours: taken as missing
	Displaced             // a stretch too high or too low, between a step and its return
	Step                  // a step after which all heights are off, as between two devices
	Drift                 // a slow drift, removed against known heights
	Gap                   // heights that were missing: filled
)

func (k Kind) String() string {
	return [...]string{"void", "zeros", "spike", "displaced", "step", "drift", "gap"}[k]
}

func (c Change) describe() string {
	place := fmt.Sprintf("%.2f km", c.From/1000)
	if c.To > c.From {
		place = fmt.Sprintf("%.2f to %.2f km", c.From/1000, c.To/1000)
	}
	switch c.Kind {
	case Void:
		return fmt.Sprintf("%s: %g m is no height of ground, now %.1f m", place, c.Old, c.New)
	case Zeros:
		return fmt.Sprintf("%s: zero stood for no height, now filled, from %.1f m on", place, c.New)
	case Spike:
		return fmt.Sprintf("%s: spike of %+.1f m, %.1f m is now %.1f m", place, c.Old-c.New, c.Old, c.New)
	case Displaced:
		if c.Shift == 0 {
			return fmt.Sprintf("%s: heights off by %+.1f m left out and filled", place, c.Old-c.New)
		}
		return fmt.Sprintf("%s: heights shifted back by %+.1f m, %.1f m is now %.1f m", place, c.Shift, c.Old, c.New)
	case Step:
		return fmt.Sprintf("%s: heights shifted by %+.1f m to undo a step, %.1f m is now %.1f m", place, c.Shift, c.Old, c.New)
	case Drift:
		return fmt.Sprintf("%s: drift removed against known heights, %+.1f m at its start, %.1f m is now %.1f m", place, c.Shift, c.Old, c.New)
	}
	return fmt.Sprintf("%s: no heights, now filled, from %.1f m on", place, c.New)
}
