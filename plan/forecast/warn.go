package forecast

import "fmt"

// fewDraws is below which the ends of the interval are coarse.
const fewDraws = 200

// warn is what a reader should know of this forecast.
func (f *Forecast) warn() (out []string) {
	if f.Unfinished > 0 {
		out = append(out, fmt.Sprintf("%d of %d draws fade away before the finish at any pace; they count as slower than all others", f.Unfinished, f.Draws))
	}
	if len(f.Sources) == 0 {
		out = append(out, "every draw is the same athlete on the same kind of day: the forecast has no spread, and real days have")
	} else if f.Draws < fewDraws {
		out = append(out, fmt.Sprintf("%d draws are few: the outer times are coarse", f.Draws))
	}
	if f.Finishes.P < 0.5 && len(f.Cutoffs) > 0 {
		out = append(out, "less than half of the forecast days finish inside the cutoffs; a cutoff is no reason to run over one's effort")
	}
	return out
}
