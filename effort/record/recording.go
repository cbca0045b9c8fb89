package record

import (
	"errors"
	"fmt"
	"math"
	"time"

	"isoeffort.example/course"
)

// A Fix is one point of a recorded run.
type Fix struct {
	Time     time.Time
	Distance float64 // run since the first fix, m
}

// ErrRecording is wrapped by the error for fixes that are no run.
var ErrRecording = errors.New("bad recording")

// RecordingOptions are the options of Reduce. The zero value is ready.
type RecordingOptions struct {
	// HaltSpeed is the speed in m/s below which the runner stands still. 0 means 0.3: a
	// receiver at rest wanders by about that, and steep ground is climbed faster. [Our own.]
	HaltSpeed float64

	// ShortestHalt is the least time that counts as one. 0 means 15 s. [Our own.]
	ShortestHalt time.Duration

	// Gap is the time between two fixes from which the recording is said to have a gap. 0
	// means 60 s. What was run in a gap is taken as run evenly, unless it was slower than
	// HaltSpeed: then it is a halt.
	Gap time.Duration
}

// A Recording is a run without its halts: moving time over distance. It does not change.
type Recording struct {
	Start   time.Time
	Length  float64 // m, without what was wandered in halts
	Elapsed time.Duration
	Halts   []Halt
	Gaps    []Halt // with where they begin and how long they last

	at, moving []float64 // m, s
}

// A Halt is a stretch of time at one place.
type Halt struct {
	Distance float64 // m
	Took     time.Duration
}

// fewestFixes is what a recording needs at least.
const fewestFixes = 10

// Reduce takes the halts out of a recording. A halt is a stretch, as long as ShortestHalt or
// longer, over each ShortestHalt of which the runner stays slower than HaltSpeed on the mean;
// the metres wandered in it are taken out too.
//
// The error wraps ErrRecording and names the fix: fewer than 10, times that do not increase,
// a distance that falls or is not finite, nothing run; or ErrTime for an option below 0.
func Reduce(fixes []Fix, o RecordingOptions) (*Recording, error) {
	if o.HaltSpeed < 0 || math.IsNaN(o.HaltSpeed) || o.ShortestHalt < 0 || o.Gap < 0 {
		return nil, fmt.Errorf("%w: options %+v", ErrTime, o)
	}
	if o.HaltSpeed == 0 {
		o.HaltSpeed = 0.3
	}
	if o.ShortestHalt == 0 {
		o.ShortestHalt = 15 * time.Second
	}
	if o.Gap == 0 {
		o.Gap = time.Minute
	}
	if err := checkFixes(fixes); err != nil {
		return nil, err
	}
	last := fixes[len(fixes)-1]
	r := &Recording{Start: fixes[0].Time, Elapsed: last.Time.Sub(fixes[0].Time)}
	r.reduce(fixes, halted(fixes, o), o)
	if r.Length = r.at[len(r.at)-1]; !(r.Length > 0) {
		return nil, fmt.Errorf("%w: nothing was run", ErrRecording)
	}
	return r, nil
}

func checkFixes(fixes []Fix) error {
	if len(fixes) < fewestFixes {
		return fmt.Errorf("%w: %d fixes, at least %d are needed", ErrRecording, len(fixes), fewestFixes)
	}
	for i, f := range fixes {
		switch {
		case math.IsNaN(f.Distance) || math.IsInf(f.Distance, 0):
			return fmt.Errorf("%w: fix %d at %g m", ErrRecording, i+1, f.Distance)
		case i == 0:
		case !f.Time.After(fixes[i-1].Time):
			return fmt.Errorf("%w: fix %d is not after the one before", ErrRecording, i+1)
		case f.Distance < fixes[i-1].Distance:
			return fmt.Errorf("%w: fix %d goes back to %g m", ErrRecording, i+1, f.Distance)
		case f.Time.Sub(fixes[0].Time) > MaxTime:
			return fmt.Errorf("%w: fix %d is over %d h after the first", ErrRecording, i+1, MaxTime/time.Hour)
		}
	}
	return nil
}

// halted says of each step from a fix to the next whether it belongs to a halt.
func halted(fixes []Fix, o RecordingOptions) []bool {
	out := make([]bool, len(fixes)-1)
	slow := func(i, j int) bool {
		return fixes[j].Distance-fixes[i].Distance < o.HaltSpeed*fixes[j].Time.Sub(fixes[i].Time).Seconds()
	}
	j := 0
	for i := range out {
		for j = max(j, i+1); j < len(fixes)-1 && fixes[j].Time.Sub(fixes[i].Time) < o.ShortestHalt; j++ {
		}
		if fixes[j].Time.Sub(fixes[i].Time) < o.ShortestHalt || !slow(i, i+1) || !slow(i, j) {
			continue
		}
		end := j
		for end > i+1 && !slow(end-1, end) { // the moving end is none of it
			end--
		}
		for k := i; k < end; k++ {
			out[k] = true
		}
	}
	return out
}

// reduce joins what was moved, and gathers halts and gaps.
func (r *Recording) reduce(fixes []Fix, halted []bool, o RecordingOptions) {
	r.at, r.moving = []float64{0}, []float64{0}
	at, moving, resting := 0.0, 0.0, false
	for i, halt := range halted {
		took := fixes[i+1].Time.Sub(fixes[i].Time)
		if took >= o.Gap {
			r.Gaps = append(r.Gaps, Halt{at, took})
		}
		switch {
		case halt && resting:
			r.Halts[len(r.Halts)-1].Took += took
		case halt:
			r.Halts = append(r.Halts, Halt{at, took})
		default:
			at += fixes[i+1].Distance - fixes[i].Distance
			moving += took.Seconds()
			r.at, r.moving = append(r.at, at), append(r.moving, moving)
		}
		resting = halt
	}
}

// Moving returns the time without halts.
func (r *Recording) Moving() time.Duration { return r.Elapsed - r.Stopped() }

// Stopped returns the time of all halts.
func (r *Recording) Stopped() (sum time.Duration) {
	for _, h := range r.Halts {
		sum += h.Took
	}
	return sum
}

// At returns the moving time in seconds at a distance, between fixes in proportion: 0 before
// the start, and all of it beyond the end.
func (r *Recording) At(distance float64) float64 { return between(r.at, r.moving, distance) }

// Place returns the distance in metres after so many seconds of moving.
func (r *Recording) Place(moving float64) float64 { return between(r.moving, r.at, moving) }

// between interpolates y at x, x not falling.
func between(xs, ys []float64, x float64) float64 {
	low, top := 0, len(xs)-1
	switch {
	case !(x > xs[0]):
		return ys[0]
	case x >= xs[top]:
		return ys[top]
	}
	for top-low > 1 {
		if middle := (low + top) / 2; xs[middle] <= x {
			low = middle
		} else {
			top = middle
		}
	}
	return ys[low] + (ys[top]-ys[low])*(x-xs[low])/(xs[top]-xs[low])
}

// Speed returns the mean speed in m/s of each so long a stretch of moving time, the last
// one as long as what is left unless that is less than half: noise of the fixes averages
// out over some 20 s. It is nil for a stretch that is not positive.
func (r *Recording) Speed(every time.Duration) (speeds []float64) {
	whole := r.moving[len(r.moving)-1]
	if every <= 0 || whole == 0 {
		return nil
	}
	n := max(1, int(math.Round(whole/every.Seconds())))
	before := 0.0
	for i := range n {
		end := whole
		if i < n-1 {
			end = float64(i+1) * every.Seconds()
		}
		place := r.Place(end)
		speeds = append(speeds, (place-r.Place(before))/(end-before))
		before = end
	}
	return speeds
}

// Result makes the run a result over a course, with splits about every so many metres (at least
// 100), halts told. What was recorded is laid over the course in proportion; by more than
// 10 % it is not that course, and the error wraps ErrRecording. A nil course leaves a level
// summary of the length recorded.
func (r *Recording) Result(c *course.Course, every float64) (Result, error) {
	whole := r.Length
	out := Result{Date: r.Start, Time: r.Elapsed, Stopped: r.Stopped(), Ground: c, Distance: whole}
	if c != nil {
		relief := c.Relief()
		whole = c.Length()
		out.Distance, out.Ascent, out.Descent = whole, relief.Ascent, relief.Descent
	}
	scale := whole / r.Length
	if !(math.Abs(math.Log(scale)) <= math.Log(1.1)) {
		return Result{}, fmt.Errorf("%w: %.2f km were recorded, the course has %.2f km", ErrRecording, r.Length/1000, whole/1000)
	}
	n := int(whole / math.Max(100, every))
	for i := 1; i < n; i++ {
		d := whole * float64(i) / float64(n)
		s := Split{Distance: d, Ascent: math.NaN(), Descent: math.NaN()}
		for _, h := range r.Halts {
			if h.Distance*scale < d {
				s.Stopped += h.Took.Seconds()
			}
		}
		s.Elapsed = r.At(d/scale) + s.Stopped
		out.Splits = append(out.Splits, s)
	}
	return out, out.Check()
}
