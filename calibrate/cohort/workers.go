package cohort

import (
	"context"
	"sync"
	"sync/atomic"
)

// each calls do(i) for every i below n, on several goroutines, unless the context ends.
// What do writes must be its own, so that the order of the calls changes nothing.
func each(ctx context.Context, workers, n int, do func(i int)) error {
	if workers > n {
		workers = n
	}
	var next atomic.Int64
	var all sync.WaitGroup
	for range workers {
		all.Go(func() {
			for ctx.Err() == nil {
				i := int(next.Add(1)) - 1
				if i >= n {
					return
				}
				do(i)
			}
		})
	}
	all.Wait()
	return ctx.Err()
}
