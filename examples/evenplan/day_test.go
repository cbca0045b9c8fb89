package main

import (
	"strings"
	"testing"
)

const (
	dayLandmarks = "name,distance_m,kind,cutoff,note\nBarn,4000,station,1:00:00,soup\nTower,9000,station,08:30,\n"
	dayWeather   = "time,temperature_c,humidity_percent,shade\n06:00,12,80,yes\n12:00,26,45,no\n"
	dayStart     = "2026-06-14T06:00:00Z"
)

// The whole of a race day on the command line, and what of it must be found on the page.
func TestDay(t *testing.T) {
	t.Parallel()
	dir := folder(t, map[string]string{"course.csv": profile(20_000, oneHill), "marks.csv": dayLandmarks, "weather.csv": dayWeather})
	base := []string{"-course", "@/course.csv", "-athlete", "hour_power=12", "-landmarks", "@/marks.csv", "-start", dayStart}
	for _, tt := range []struct {
		name string
		args []string
		want []string
	}{
		{"cutoffs", nil, []string{"CUTOFFS (gun time)", "Barn: be there by 1:00:00 (07:00)", "Tower: be there by 2:30:00 (08:30)"}},
		{"leaving", []string{"-cutoffs-on-leaving"}, []string{"Barn: leave by 1:00:00"}},
		{"wave", []string{"-wave", "10m"}, []string{"of your own wave", "Barn: be there by 0:50:00 (06:50)", "Tower: be there by 2:30:00 (08:30)"}},
		{"stops", []string{"-stop", "barn=3m:dry socks", "-stop", "6.5=90s"}, []string{"STOPS, 4:30 in all", "3:00 at Barn: dry socks", "6.5 km  1:30 at the roadside"}},
		{"stations", []string{"-station-stop", "1m", "-station-stop-per-hour", "1m"}, []string{"at Barn", "at Tower"}},
		{"crowd", []string{"-crowd", "1.5,3000", "-start-delay", "2m"}, []string{"You cross the line 2:00 after the gun; the crowd costs"}},
		{"share", []string{"-share", "0.5"}, []string{"50 % of what one race allows. You asked for this share of it."}},
		{"standards", []string{"-standards", "gold=1:20:00,silver=2:20:00"}, []string{"Silver is the fastest of the standard times inside it", "2:20:00 gun time"}},
		{"cutoffs made", []string{"-make-cutoffs", "5m"}, []string{"This is the least effort that is 5:00 early at every cutoff."}},
		{"walks", []string{"-walk-every", "20m", "-walk-length", "2m"}, []string{"WALKS of 2 minutes, where they cost least"}},
		{"walks by the watch", []string{"-walk-every", "20m", "-walk-by-watch"}, []string{"WALKS of 3 minutes, by the watch"}},
		{"weather", []string{"-weather", "@/weather.csv"}, []string{"the plan estimates what the"}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			t.Parallel()
			o := planned(t, dir, append(append([]string(nil), base...), tt.args...)...)
			checkPage(t, o.out)
			text := strings.Join(strings.Fields(o.out), " ")
			for _, want := range tt.want {
				if !strings.Contains(strings.ToLower(text), strings.ToLower(strings.Join(strings.Fields(want), " "))) {
					t.Errorf("no %q in\n%s", want, o.out)
				}
			}
		})
	}
}

// Night and heat make the same runner slower.
func TestWeatherSlows(t *testing.T) {
	t.Parallel()
	dir := folder(t, map[string]string{"course.csv": profile(20_000, oneHill), "weather.csv": dayWeather})
	base := []string{"-course", "@/course.csv", "-athlete", "hour_power=12", "-start", "2026-06-14T09:00:00Z", "-format", "csv"}
	finish := func(args ...string) string {
		lines := strings.Split(strings.TrimSpace(planned(t, dir, append(append([]string(nil), base...), args...)...).out), "\n")
		return lines[len(lines)-1]
	}
	plain, hot, dark := finish(), finish("-weather", "@/weather.csv"), finish("-night", "08:00-20:00", "-night-factor", "0.9")
	if plain == hot || plain == dark || hot == dark {
		t.Errorf("plain %s\nhot   %s\ndark  %s", plain, hot, dark)
	}
}

func TestBadDay(t *testing.T) {
	t.Parallel()
	dir := folder(t, map[string]string{
		"course.csv": profile(20_000, oneHill), "marks.csv": dayLandmarks, "weather.csv": dayWeather,
		"off.csv":      "name,distance_m,kind,cutoff,note\nMoon,400000,place,1:00:00,\n",
		"back.csv":     "name,distance_m,kind,cutoff,note\nA,4000,place,2:00:00,\nB,8000,place,1:00:00,\n",
		"twice.csv":    "name,distance_m,kind,cutoff,note\nGate,4000,place,,\nGate,8000,place,,\n",
		"nohead.csv":   "",
		"nocolumn.csv": "time,humidity_percent\n06:00,50\n",
		"badtime.csv":  "time,temperature_c,humidity_percent\n06:00,10,50\n6 o'clock,10,50\n",
		"badnum.csv":   "time,temperature_c,humidity_percent\n06:00,10,50\n07:00,warm,50\n",
		"humid.csv":    "time,temperature_c,humidity_percent\n06:00,10,150\n",
		"ragged.csv":   "time,temperature_c,humidity_percent\n06:00,10\n",
		"shade.csv":    "time,temperature_c,humidity_percent,shade\n06:00,10,50,maybe\n",
		"empty.csv":    "time,temperature_c,humidity_percent\n",
	})
	for _, tt := range []struct {
		want string
		args []string
	}{
		{"marks.csv: the cutoff of \"Tower\" is a time of day", []string{"-landmarks", "@/marks.csv"}},
		{"missing.csv: ", []string{"-landmarks", "@/missing.csv"}},
		{"", []string{"-landmarks", "@/off.csv"}},
		{"evenplan: cutoff off the course or out of order: \"B\" at 8.00 km closes at 1h0m0s", []string{"-landmarks", "@/back.csv"}},
		{"evenplan: -stop: no such place, or several: no landmark is called \"Barn\"", []string{"-stop", "Barn=5m"}},
		{"evenplan: -stop: no such place, or several: \"gate\" is the name of a landmark at 4.00 km and at 8.00 km", []string{"-landmarks", "@/twice.csv", "-stop", "gate=5m"}},
		{"evenplan: stop off the course", []string{"-stop", "25=5m"}},
		{"evenplan: no such place, or several: no climb is called \"Moon\"", []string{"-walk-climb", "Moon"}},
		{"evenplan: option out of range: walks of 3m0s every 3m0s", []string{"-walk-every", "3m"}},
		{"evenplan: option out of range: planned walks without saying how often", []string{"-walk-by-watch"}},
		{"evenplan: goal out of range: there are no cutoffs to make", []string{"-make-cutoffs", "5m"}},
		{"evenplan: goal out of range: a time, a share of the budget, standards and cutoffs are four aims", []string{"-share", "0.5", "-goal", "3:00:00"}},
		{"evenplan: -known-heights: only -clean uses them", []string{"-known-heights"}},
		{"evenplan: -weather and -night go by the clock", []string{"-weather", "@/weather.csv"}},
		{"evenplan: -night and -night-factor: give both", []string{"-start", dayStart, "-night", "21:00-05:00"}},
		{"nohead.csv:1: no header", []string{"-start", dayStart, "-weather", "@/nohead.csv"}},
		{"nocolumn.csv:1: no column temperature_c", []string{"-start", dayStart, "-weather", "@/nocolumn.csv"}},
		{"badtime.csv:3: time \"6 o'clock\"", []string{"-start", dayStart, "-weather", "@/badtime.csv"}},
		{"badnum.csv:3: temperature_c \"warm\"", []string{"-start", dayStart, "-weather", "@/badnum.csv"}},
		{"humid.csv: ", []string{"-start", dayStart, "-weather", "@/humid.csv"}},
		{"ragged.csv:2: ", []string{"-start", dayStart, "-weather", "@/ragged.csv"}},
		{"shade.csv:2: shade \"maybe\"", []string{"-start", dayStart, "-weather", "@/shade.csv"}},
		{"empty.csv:1: no hours", []string{"-start", dayStart, "-weather", "@/empty.csv"}},
		{"evenplan: -track and -track-name: a CSV profile has no tracks", []string{"-track", "7"}},
	} {
		t.Run(strings.Join(tt.args, " "), func(t *testing.T) {
			t.Parallel()
			checkRefused(t, evenplan(dir, append(tt.args, "-course", "@/course.csv", "-athlete", "hour_power=12")...), tt.want)
		})
	}
}
