package elevation

import "math"

// A spike is a height that is off the median of what its neighbours on either side
// make of its place: by more than this many times the usual, and steeply. [Our own]
const (
	spikePairs    = 6   // neighbours on either side
	spikeScatter  = 5   // times the SD of such misses
	spikeLeast    = 2   // m
	spikeGradient = 0.5 // of the way to the nearest neighbour
	spikeSide     = 3   // heights on either side that a spike of several stands out from
	spikeBlock    = 256 // heights over which the usual miss is taken
	spikeSkip     = 3   // every which of them counts for it: 86 tell it to 10 %
	spikePasses   = 3   // a large spike may hide a small one beside it
)

// dropSpikes takes spikes for missing heights. It goes by the median of deviations
// where the filter of Hampel does; taking pairs of neighbours makes it indifferent to
// slopes.
func (r *recording) dropSpikes() {
	at := r.known()
	if len(at) < 2*spikePairs {
		return
	}
	miss := make([]float64, len(at))
	for i := range at {
		miss[i] = r.miss(at, i)
	}
	usual := usualMisses(miss)
	var spikes []int // by place among the known
	for i := range at {
		if r.isSpike(at, i, miss[i], usual[i/spikeBlock]) {
			spikes = append(spikes, i)
		}
	}
	for range spikePasses {
		if len(spikes) == 0 || len(at)-len(spikes) < 2*spikePairs {
			return
		}
		for _, i := range spikes {
			r.drop(at[i], at[i]+1, Spike)
		}
		at, spikes = r.besides(at, spikes, usual)
	}
}

// besides judges the neighbours of dropped spikes anew, without them.
func (r *recording) besides(at, dropped []int, usual []float64) (rest, spikes []int) {
	rest = make([]int, 0, len(at)-len(dropped))
	k := 0
	for i, point := range at {
		if k < len(dropped) && dropped[k] == i {
			k++
			continue
		}
		rest = append(rest, point)
	}
	judged := -1
	for k, i := range dropped {
		i -= k // among the rest
		for j := max(i-spikePairs, judged+1); j < min(i+spikePairs, len(rest)); j++ {
			block := min((j+k)/spikeBlock, len(usual)-1)
			if r.isSpike(rest, j, r.miss(rest, j), usual[block]) {
				spikes = append(spikes, j)
			}
			judged = j
		}
	}
	return rest, spikes
}

func (r *recording) isSpike(at []int, i int, miss, usual float64) bool {
	if math.Abs(miss) <= spikeScatter*usual {
		return false
	}
	limit := max(spikeScatter*usual, spikeLeast, spikeGradient*r.nearest(at, i))
	if i < 2 || i >= len(at)-2 { // judged from one side
		limit *= 2
	}
	return math.Abs(miss) > limit && (r.juts(at, i, 1, limit, miss) || r.juts(at, i, spikeSide, limit, miss))
}

// juts reports whether a height stands out, on the side of its miss, from those on either
// side: from the medians of count heights, by half the limit and steeply if they are more
// than one. The edge of a step does not, nor the top of a small hill. Beyond the ends
// there is nothing to stand out from.
func (r *recording) juts(at []int, i, count int, limit, miss float64) bool {
	for _, side := range [][]int{at[max(0, i-count):i], at[i+1 : min(len(at), i+1+count)]} {
		if len(side) == 0 {
			continue
		}
		off := r.elevation[at[i]] - r.middle(side)
		need := limit / 2
		if count > 1 {
			need = max(need, spikeGradient*math.Abs(r.distance[at[i]]-r.distance[side[len(side)/2]]))
		}
		if off*miss < 0 || math.Abs(off) < need {
			return false
		}
	}
	return true
}

// miss is a height less what its neighbours make of it: the median of the straight lines
// through pairs of them, one on either side, or, near the ends, two on one side.
func (r *recording) miss(at []int, i int) float64 {
	var guess [spikePairs]float64
	n := 0
	for k := 1; k <= spikePairs; k++ {
		a, b := i-k, i+k
		switch {
		case i < 2:
			a, b = i+k, i+2*k
		case i >= len(at)-2:
			a, b = i-2*k, i-k
		}
		if a < 0 || b >= len(at) {
			break
		}
		xa, xb := r.distance[at[a]], r.distance[at[b]]
		za, zb := r.elevation[at[a]], r.elevation[at[b]]
		guess[n] = za + (r.distance[at[i]]-xa)/(xb-xa)*(zb-za)
		n++
	}
	return r.elevation[at[i]] - median(guess[:n])
}

// nearest is the distance to the nearer neighbour.
func (r *recording) nearest(at []int, i int) float64 {
	near := math.Inf(1)
	if i > 0 {
		near = r.distance[at[i]] - r.distance[at[i-1]]
	}
	if i+1 < len(at) {
		near = min(near, r.distance[at[i+1]]-r.distance[at[i]])
	}
	return near
}

// usualMisses returns the spread of misses in blocks, at least that of neighbouring
// blocks and of the whole: rough stretches are no spikes, nor is the first stone after
// smooth ones.
func usualMisses(miss []float64) []float64 {
	blocks := (len(miss) + spikeBlock - 1) / spikeBlock
	own := make([]float64, blocks)
	scratch := make([]float64, 0, spikeBlock)
	for b := range own {
		scratch = scratch[:0]
		for i := b * spikeBlock; i < min(len(miss), (b+1)*spikeBlock); i += spikeSkip {
			scratch = append(scratch, miss[i])
		}
		own[b] = spread(scratch)
	}
	whole := median(append([]float64(nil), own...))
	usual := make([]float64, blocks)
	for b := range own {
		usual[b] = max(whole, own[b], own[max(b-1, 0)], own[min(b+1, blocks-1)])
	}
	return usual
}
