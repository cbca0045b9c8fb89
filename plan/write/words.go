package write

import (
	"fmt"
	"math"

	"isoeffort.example/internal/say"
)

// budgetWords writes a share of the effort budget, to the tenth next to all of it: it never
// says 100 % of what is over it.
func budgetWords(share float64) string {
	switch off := math.Abs(share - 1); {
	case off < 0.0005:
		return "100 %"
	case off < 0.01 && share > 0.99:
		return fmt.Sprintf("%.1f %%", 100*share)
	}
	return say.Percent(share)
}
