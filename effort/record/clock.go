package record

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"isoeffort.example/internal/csvtext"
)

// parseTime reads a time as csvtext.Time does. Bounds are for Check to hold it against.
func parseTime(s string, decimalComma bool) (time.Duration, error) {
	d, err := csvtext.Time(s, decimalComma)
	if err != nil {
		return 0, fmt.Errorf("%w: %s %w", ErrTime, quote(s), err)
	}
	return d, nil
}

// clock writes a duration as H:MM:SS with as many decimals as it needs, so that
// parseTime returns it unchanged unless it is negative.
func clock(d time.Duration) string {
	sign, nanos := "", uint64(d)
	if d < 0 {
		sign, nanos = "-", -nanos
	}
	seconds := nanos / 1e9
	s := fmt.Sprintf("%s%d:%02d:%02d", sign, seconds/3600, seconds/60%60, seconds%60)
	if nanos %= 1e9; nanos > 0 {
		s += "." + strings.TrimRight(strconv.FormatUint(1e9+nanos, 10)[1:], "0")
	}
	return s
}
