package write

import (
	"fmt"
	"math"
	"time"
)

// units are what distances and heights are printed in.
type units struct {
	distance float64 // m in one unit of distance
	height   float64 // m in one unit of height
	long     string
	short    string
}

var (
	metric   = units{1000, 1, "km", "m"}
	imperial = units{1609.344, 0.3048, "mi", "ft"}
)

// hms writes a duration as H:MM:SS, rounded to the second.
func hms(d time.Duration) string {
	s := seconds(d)
	return fmt.Sprintf("%d:%02d:%02d", s/3600, s/60%60, s%60)
}

// ms writes a duration as M:SS.
func ms(d time.Duration) string {
	s := seconds(d)
	return fmt.Sprintf("%d:%02d", s/60, s%60)
}

// short writes a small duration in words.
func short(d time.Duration) string {
	if s := seconds(d); s < 120 {
		return count(int(s), "second", "seconds")
	}
	return brief(d)
}

// brief is ms under an hour and hms from there.
func brief(d time.Duration) string {
	if seconds(d) < 3600 {
		return ms(d)
	}
	return hms(d)
}

// seconds rounds a duration to whole seconds, halves up.
func seconds(d time.Duration) int64 { return int64(math.Floor(d.Seconds() + 0.5)) }

// pace is the time per unit of distance, from the time per kilometre.
func (u units) pace(perKilometre time.Duration) time.Duration {
	return time.Duration(float64(perKilometre) * u.distance / 1000)
}
