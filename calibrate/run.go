package calibrate

import (
	"fmt"
	"math"
	"time"

	"isoeffort.example/effort"
	"isoeffort.example/effort/record"
)

// run is one result prepared for the fit.
type run struct {
	result       record.Result
	number       int     // from 1, among the results given
	seconds      float64 // of moving
	weight       float64
	surroundings effort.Surroundings

	ground *effort.Ground // as searched over
	whole  *effort.Ground // in all its cells, where ground has fewer
	offset float64        // ln of the time over whole, over that over ground

	closed closed
	free   pace      // the fastest
	paced  pace      // in the time that was run
	ends   []float64 // of the sections, m; none without splits
	took   []float64 // each section, s
	rows   int       // of the residuals: the finish, and the sections
	drift  []float64 // factors of the walk's steps, for ln(hour power) on that day
}

// searchCells is how many cells a ground has at most while it is searched over.
const searchCells = 300

// prepare makes runs of the results that count.
func (p *problem) prepare(results []record.Result) error {
	for i, r := range results {
		weight := 1.0
		if p.o.Weights != nil {
			weight = p.o.Weights[i]
		}
		if r.Role == record.Predict || weight == 0 {
			continue
		}
		u, err := p.o.prepare(r)
		if err != nil {
			return fmt.Errorf("calibrate: result %d: %w", i+1, err)
		}
		u.number, u.weight = i+1, weight
		p.runs = append(p.runs, u)
	}
	if len(p.runs) == 0 {
		return fmt.Errorf("calibrate: %w", ErrNoResults)
	}
	p.date()
	return nil
}

// prepare makes a run of one result.
func (o *Options) prepare(r record.Result) (*run, error) {
	if err := r.Check(); err != nil {
		return nil, err
	}
	u := &run{result: r, seconds: (r.Time - r.Stopped).Seconds(), surroundings: o.Surroundings, rows: 1, weight: 1}
	if o.SurroundingsOf != nil {
		u.surroundings = o.SurroundingsOf(r)
	}
	if len(r.Splits) > 0 && !r.DNF {
		u.cut()
	}
	return u, u.lay(o)
}

// lay makes the ground.
func (u *run) lay(o *Options) (err error) {
	r := &u.result
	c := r.Ground
	step := o.Step
	if c == nil {
		if c = u.sectioned(); c == nil {
			u.ground, err = o.Curves.SummaryGround(r.Distance, r.Ascent, r.Descent)
			return err
		}
		step = math.Max(1, c.Length()/(4*sectionHills))
	}
	if u.ground, err = o.Curves.Ground(c, step); err != nil || u.ground.Len() <= searchCells {
		return err
	}
	u.whole = u.ground
	u.ground, err = o.Curves.Ground(c, math.Min(10_000, c.Length()/searchCells))
	return err
}

// cut finds the sections that splits make. Stops that are not told place by place are taken
// out in proportion to time.
func (u *run) cut() {
	r := &u.result
	told := false
	for _, s := range r.Splits {
		told = told || s.Stopped > 0
	}
	before := 0.0
	for _, s := range r.Splits {
		moving := s.Elapsed - s.Stopped
		if !told {
			moving = s.Elapsed * u.seconds / r.Time.Seconds()
		}
		u.ends, u.took = append(u.ends, s.Distance), append(u.took, moving-before)
		before = moving
	}
	u.ends, u.took = append(u.ends, r.Length()), append(u.took, u.seconds-before)
	u.rows += len(u.took)
}

// date gives runs their weights by age and their factors of the walk, and finds the day
// that the hour power is for.
func (p *problem) date() {
	first, last := p.runs[0].result.Date, p.runs[0].result.Date
	for _, u := range p.runs {
		if u.result.Date.Before(first) {
			first = u.result.Date
		}
		if u.result.Date.After(last) {
			last = u.result.Date
		}
	}
	p.on = p.o.On
	if p.on.IsZero() {
		p.on = last
	}
	for _, u := range p.runs {
		if p.o.HalfLife > 0 {
			age := math.Abs(float64(p.on.Sub(u.result.Date)))
			u.weight *= math.Exp2(-age / float64(p.o.HalfLife))
		}
	}
	p.wander()
}

const year = 365.25 * 24 * float64(time.Hour)
