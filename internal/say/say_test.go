package say_test

import (
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"

	"isoeffort.example/internal/say"
)

func TestTimes(t *testing.T) {
	t.Parallel()
	const s, m, h = time.Second, time.Minute, time.Hour
	half := 500 * time.Millisecond
	for _, c := range []struct {
		name string
		say  func(time.Duration) string
		d    time.Duration
		want string
	}{
		{"HMS", say.HMS, 0, "0:00:00"},
		{"HMS", say.HMS, 9*h + 5*m + 7*s, "9:05:07"},
		{"HMS", say.HMS, 119*h + 59*m + 59*s + half, "120:00:00"},
		{"HMS", say.HMS, 59*s + half - 1, "0:00:59"},
		{"HMS", say.HMS, -65 * s, "-0:01:05"},
		{"HMS", say.HMS, -half + 1, "0:00:00"},
		{"HMS", say.HMS, math.MinInt64, "-2562047:47:16"}, // no Duration is below, to round to
		{"MS", say.MS, 5*m + 40*s, "5:40"},
		{"MS", say.MS, h + 15*m, "75:00"},
		{"MS", say.MS, -5 * s, "-0:05"},
		{"Short", say.Short, h - s, "59:59"},
		{"Short", say.Short, h - half, "1:00:00"},
		{"Short", say.Short, -2 * h, "-2:00:00"},
		{"HM", say.HM, 5*h + 4*m + 29*s, "5:04"},
		{"HM", say.HM, 5*h + 4*m + 30*s, "5:05"},
		{"HM", say.HM, 59*m + 30*s, "1:00"},
		{"HM", say.HM, -30 * m, "-0:30"},
		{"Signed", say.Signed, 0, "0:00"},
		{"Signed", say.Signed, half - 1, "0:00"},
		{"Signed", say.Signed, -half + 1, "0:00"},
		{"Signed", say.Signed, 65 * s, "+1:05"},
		{"Signed", say.Signed, -65 * s, "-1:05"},
		{"Signed", say.Signed, h + s, "+1:00:01"},
		{"Lasting", say.Lasting, 1 * s, "1 second"},
		{"Lasting", say.Lasting, 119 * s, "119 seconds"},
		{"Lasting", say.Lasting, 120 * s, "2:00"},
	} {
		if got := c.say(c.d); got != c.want {
			t.Errorf("%s(%v) = %q, want %q", c.name, c.d, got, c.want)
		}
	}
}

// What is said of a time reads back as that time, to the second.
func TestTimesReadBack(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		h, m, s := rapid.IntRange(0, 999).Draw(t, "h"), rapid.IntRange(0, 59).Draw(t, "m"), rapid.IntRange(0, 59).Draw(t, "s")
		off := time.Duration(rapid.IntRange(-499_999_999, 499_999_999).Draw(t, "ns"))
		d := time.Duration(h)*time.Hour + time.Duration(m)*time.Minute + time.Duration(s)*time.Second
		back, err := time.ParseDuration(replaced(say.HMS(d + off)))
		if err != nil || back != d {
			t.Fatalf("%v was said as %s, which is %v (%v)", d+off, say.HMS(d+off), back, err)
		}
	})
}

// replaced turns H:MM:SS into what time.ParseDuration reads.
func replaced(hms string) string {
	out, units := "", "hm"
	for _, r := range hms {
		if r == ':' {
			out, units = out+units[:1], units[1:]
			continue
		}
		out += string(r)
	}
	return out + "s"
}

func TestPercent(t *testing.T) {
	t.Parallel()
	for share, want := range map[float64]string{
		0: "0 %", 1e-9: "under 1 %", 0.0099: "under 1 %", 0.01: "1 %", 0.874: "87 %", 1: "100 %", 1.2: "120 %", 100: "10000 %", 100.01: "over 10000 %", math.Inf(1): "over 10000 %",
	} {
		if got := say.Percent(share); got != want {
			t.Errorf("Percent(%g) = %q, want %q", share, got, want)
		}
	}
	if got := say.Percent(math.NaN()); got != "NaN %" {
		t.Errorf("Percent(NaN) = %q", got)
	}
}

func TestWords(t *testing.T) {
	t.Parallel()
	for _, c := range [][2]string{
		{say.Count(1, "stretch", "stretches"), "1 stretch"},
		{say.Count(0, "stretch", "stretches"), "0 stretches"},
		{say.Count(int64(12), "minute", "minutes"), "12 minutes"},
		{say.Capital("über"), "Über"},
		{say.Capital(""), ""},
		{say.Sentence("walk it"), "Walk it."},
		{say.Sentence("Walk it."), "Walk it."},
		{say.Sentence(""), ""},
	} {
		if c[0] != c[1] {
			t.Errorf("%q, want %q", c[0], c[1])
		}
	}
}

// A marathon is 26 miles and 385 yards, of three feet each; 5:00 a kilometre is 8:03 a mile.
func TestUnits(t *testing.T) {
	t.Parallel()
	if length := 26*say.Mile + 385*3*say.Foot; math.Abs(length-42_195) > 0.5 {
		t.Errorf("a marathon has %g m", length)
	}
	if got := math.Abs(say.Mile/say.Foot - 5280); got > 1e-9 {
		t.Errorf("a mile is off from 5280 feet by %g", got)
	}
	if got := say.MS(say.Imperial().Pace(5 * time.Minute)); got != "8:03" {
		t.Errorf("5:00 a kilometre is %s a mile", got)
	}
	if got := say.MS(say.Metric().Pace(5 * time.Minute)); got != "5:00" {
		t.Errorf("5:00 a kilometre is %s a kilometre", got)
	}
	for got, want := range map[string]string{say.Metric().At(21_097.5): "21.1 km", say.Imperial().At(42_195): "26.2 mi"} {
		if got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
