package say

import (
	"fmt"
	"time"
)

// Exact by definition: the international mile and foot, in metres.
const (
	Mile = 1609.344
	Foot = 0.3048
)

// Units are what distances and heights are said in.
type Units struct {
	Distance float64 // m in one unit of distance
	Height   float64 // m in one unit of height
	Long     string  // symbol of the unit of distance
	Short    string  // symbol of the unit of height
}

// Metric returns kilometres and metres.
func Metric() Units { return Units{1000, 1, "km", "m"} }

// Imperial returns miles and feet.
func Imperial() Units { return Units{Mile, Foot, "mi", "ft"} }

// At returns a distance of so many metres to the tenth, with its symbol.
func (u Units) At(metres float64) string { return fmt.Sprintf("%.1f %s", metres/u.Distance, u.Long) }

// Pace returns the time per unit of distance, from the time per kilometre.
func (u Units) Pace(perKilometre time.Duration) time.Duration {
	return time.Duration(float64(perKilometre) * u.Distance / 1000)
}
