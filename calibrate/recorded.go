package calibrate

import (
	"fmt"
	"math"
	"time"

	"gonum.org/v1/gonum/stat"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/effort/record"
)

// A Window is a stretch of a recorded run, and the effort that an athlete of the model takes
// for it.
type Window struct {
	From, To float64 // m along the course
	Moving   time.Duration

	Intensity float64 // relative, the same all over the window
	Power     float64 // mean effort power, W/kg
	Work      float64 // effort before the window, in hour-equivalents
	Spent     float64 // effort budget spent by its end
}

// DefaultWindow is the time over which intensity is averaged before it is raised to the
// power of the budget: in shorter ones the noise of a recording alone would fill it. [Our
// own.]
const DefaultWindow = 20 * time.Minute

// Windows returns the effort of a recorded run over its course, window by window of moving
// time; 0 means DefaultWindow, and less than a minute is refused. Halts take no effort. Limits,
// crowd and stops of the surroundings are not looked at. The error wraps ErrOption, or
// effort.ErrDemand where no pace of the model takes the time of a window.
func Windows(a effort.Athlete, c *course.Course, r *record.Recording, s effort.Surroundings, every time.Duration) ([]Window, error) {
	if every == 0 {
		every = DefaultWindow
	}
	if every < time.Minute {
		return nil, fmt.Errorf("calibrate: %w: windows of %v", ErrOption, every)
	}
	s.Limits, s.Crowd, s.Stops = nil, effort.Crowd{}, nil
	whole := r.Moving().Seconds()
	n := max(1, int(math.Round(whole/every.Seconds())))
	scale := c.Length() / r.Length
	var out []Window
	state, in := effort.State{}, &effort.Integrator{}
	for i := range n {
		end := min(whole, whole*float64(i+1)/float64(n))
		w := Window{From: r.Place(whole*float64(i)/float64(n)) * scale, To: math.Min(c.Length(), r.Place(end)*scale), Work: state.Work}
		if i == n-1 {
			w.To = c.Length()
		}
		took := whole / float64(n)
		w.Moving = effort.Seconds(took)
		after, err := w.run(in, a, c, s, state, took)
		if err != nil {
			return out, fmt.Errorf("calibrate: window at %.0f m: %w", w.From, err)
		}
		state = after
		out = append(out, w)
	}
	return out, nil
}

// run finds the intensity of a window after what was done before it.
func (w *Window) run(in *effort.Integrator, a effort.Athlete, c *course.Course, s effort.Surroundings, before effort.State, took float64) (effort.State, error) {
	part, err := c.Part(w.From, w.To)
	if err != nil {
		return before, err
	}
	g, err := effort.NewGround(part, 0)
	if err != nil {
		return before, err
	}
	if err := in.Reset(g, a, s); err != nil {
		return before, err
	}
	before.Distance = 0
	solved, err := in.Solve(before, effort.Demand{Moving: before.Moving + took})
	if err != nil {
		return before, err
	}
	after := solved.Finish()
	w.Intensity, w.Spent = solved.Intensity, after.Spent
	w.Power = (after.Work - before.Work) * 3600 * a.HourPower / took
	return after, nil
}

// fewestWindows is what an apparent fade needs.
const fewestWindows = 5

// ApparentFade returns how fast effort power fell over one run, the share of it lost per
// hour-equivalent of work, with its standard error, by least squares of ln(power) on work. It
// is fade and pacing tilt in one, as a single run cannot part them: a runner who starts too
// fast has a greater one. Fit, given the run as a result with splits, parts them as far as
// the priors and other results allow. It is NaN for fewer than 5 windows.
func ApparentFade(windows []Window) (fade, se float64) {
	n := len(windows)
	if n < fewestWindows {
		return math.NaN(), math.NaN()
	}
	var work, power []float64
	for i, w := range windows {
		end := 2*w.Work - windows[max(0, i-1)].Work
		if i+1 < n {
			end = windows[i+1].Work
		}
		work, power = append(work, (w.Work+end)/2), append(power, math.Log(w.Power))
	}
	intercept, slope := stat.LinearRegression(work, power, nil, false)
	squares, spread := 0.0, 0.0
	center := stat.Mean(work, nil)
	for i := range work {
		e := power[i] - intercept - slope*work[i]
		squares += e * e
		spread += (work[i] - center) * (work[i] - center)
	}
	return -slope, math.Sqrt(squares / float64(n-2) / spread)
}
