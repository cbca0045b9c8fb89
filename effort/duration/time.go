package duration

import (
	"fmt"
	"math"
	"time"
)

// Time returns the time in which work in J/kg is done to exhaustion: the inverse of Work,
// to the nanosecond or to the last digits of Power where those are coarser. It asks Power
// some 15 times, for times up to a day never more than 40.
//
// The error wraps ErrInput for work that is not a positive number, and ErrBeyond for work
// less or more than the curve has a time for: up to the reserve of a Hyperbolic curve,
// beyond the end of a Logarithmic one's span, any for a curve of impossible parameters.
func Time(c Curve, work float64) (time.Duration, error) {
	if !positive(work) {
		return 0, inputError("work of %g J/kg", work)
	}
	shortest, longest := span(c)
	b := bracket{
		low:  end{shortest, miss(c, shortest, work)},
		high: end{longest, miss(c, longest, work)},
	}
	if !(b.low.miss <= 0 && b.high.miss >= 0) {
		return 0, fmt.Errorf("duration: %w: no time for %g J/kg, only for %g to %g", ErrBeyond, work, Work(c, shortest), Work(c, longest))
	}
	for i := 0; b.high.t-b.low.t > 1; i++ {
		t := b.next(i)
		m := miss(c, t, work)
		if math.IsNaN(m) {
			return 0, fmt.Errorf("duration: %w: no power at %v, within the curve's span", ErrBeyond, t)
		}
		b.narrow(end{t, m})
	}
	if -miss(c, b.low.t, work) <= miss(c, b.high.t, work) {
		return b.low.t, nil
	}
	return b.high.t, nil
}

// miss is the logarithm of the share of the work that a time does.
func miss(c Curve, t time.Duration, work float64) float64 { return math.Log(Work(c, t) / work) }

// A bracket holds a time between one that is too short, or right, and one too long.
type bracket struct {
	low, high end
	side      int // of the last change: −1 low, 1 high
}

type end struct {
	t    time.Duration
	miss float64
}

// next is a time strictly between the two ends: by regula falsi, as miss is all but
// linear in the logarithm of time, and each fourth time the middle, so that it ends.
func (b *bracket) next(i int) time.Duration {
	share := b.low.miss / (b.low.miss - b.high.miss)
	if i%4 == 3 || math.IsNaN(share) {
		share = 0.5
	}
	low, high := float64(b.low.t), float64(b.high.t)
	t := low * math.Pow(high/low, share)
	return min(max(time.Duration(math.Round(t)), b.low.t+1), b.high.t-1)
}

// narrow moves one end. The other one's miss is halved if it stays for a second time
// (the Illinois rule; Dowell & Jarratt 1971, BIT 11:168, from memory).
func (b *bracket) narrow(e end) {
	if e.miss <= 0 {
		if b.side < 0 {
			b.high.miss /= 2
		}
		b.low, b.side = e, -1
		return
	}
	if b.side > 0 {
		b.low.miss /= 2
	}
	b.high, b.side = e, 1
}
