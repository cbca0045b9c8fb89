package forecast

import (
	"context"
	"fmt"
	"math"
	"sync"
	"sync/atomic"
)

// never is the moving time in seconds of a runner who fades away.
var never = math.Inf(1)

// times are the moving times of every draw, noise counted.
type times struct {
	draws []Draw
	width int
	value []float64 // draw by draw
}

func (t *times) moving(draw, place int) float64 { return t.value[draw*t.width+place] }

// run covers the course with every draw. Each result has a place of its own, so that the
// number of workers does not show.
func (d *day) run(ctx context.Context, draws []Draw, workers int) (*times, error) {
	t := &times{draws: draws, width: len(d.at), value: make([]float64, len(draws)*len(d.at))}
	var next atomic.Int64
	var group sync.WaitGroup
	faults := make([]error, len(draws))
	for range min(workers, len(draws)) {
		group.Go(func() {
			p := &pacer{day: d}
			for {
				i := int(next.Add(1)) - 1
				if i >= len(draws) || ctx.Err() != nil {
					return
				}
				faults[i] = p.cover(draws[i], t.value[i*t.width:(i+1)*t.width])
			}
		})
	}
	group.Wait()
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	for i, err := range faults { // the first, whoever met it
		if err != nil {
			return nil, fmt.Errorf("forecast: draw %d: %w", i, err)
		}
	}
	return t, nil
}

func (t *times) unfinished() (n int) {
	for i := range t.draws {
		if math.IsInf(t.moving(i, 0), 1) {
			n++
		}
	}
	return n
}
