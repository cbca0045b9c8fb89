package record

import (
	"fmt"
	"time"
)

// parseDate reads a day, as midnight UTC, or an RFC 3339 time, in the zone it names and
// never in the machine's own.
func parseDate(s string) (time.Time, error) {
	form := time.RFC3339
	if len(s) == len(time.DateOnly) {
		form = time.DateOnly
	}
	t, err := time.ParseInLocation(form, s, time.UTC)
	if err != nil {
		return time.Time{}, fmt.Errorf("%w: %s is not a day of the form 2006-01-02 or such a time as 2006-01-02T15:04:05Z", ErrDate, quote(s))
	}
	return t, nil
}

// formatDate writes what parseDate reads back as the same instant: a day where t is
// midnight UTC, otherwise a time in its zone or, where RFC 3339 cannot name that, in UTC.
func formatDate(t time.Time) string {
	const day = 24 * 60 * 60
	_, offset := t.Zone()
	if offset%60 != 0 || offset <= -day || offset >= day {
		t, offset = t.UTC(), 0
	}
	if offset == 0 && t.Equal(t.Truncate(24*time.Hour)) {
		return t.Format(time.DateOnly)
	}
	return t.Format(time.RFC3339Nano)
}
