package field

import (
	"errors"
	"fmt"
	"time"

	"isoeffort.example/internal/csvtext"
)

// longest is the longest time that is read.
const longest = 1000 * time.Hour

// parseTime reads a time as csvtext.Time does, of at most longest.
func parseTime(s string, decimalComma bool) (time.Duration, error) {
	d, err := csvtext.Time(s, decimalComma)
	if errors.Is(err, csvtext.ErrNoTime) || d > longest {
		return 0, fmt.Errorf("%w, of at most 1000 hours", csvtext.ErrNoTime)
	}
	return d, err
}
