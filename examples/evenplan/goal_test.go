package main

import (
	"encoding/csv"
	"encoding/json"
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

var spacings = []string{"landmark", "1km", "5km", "1mi", "0.5km"}

// goals are courses with goals from beyond the runner to a stroll.
var goals = []struct {
	name  string
	args  []string
	goals []string
}{
	{"demo", nil, []string{"8:15:00", "10:30:00"}},
	{"level", []string{"-course", "@/level.csv", "-athlete", "hour_power=12"}, []string{"0:40:00", "0:52:07", "1:30:00"}},
	{"hill", []string{"-course", "@/hill.csv", "-athlete", "hour_power=11"}, []string{"1:50:00", "2:30:00", "5:59:59"}},
	{"loop", []string{"-course", "../../testdata/gpx/hilly-72km.gpx", "-athlete", "hour_power=12"}, []string{"9:00:01"}},
}

func goalFolder(t *testing.T) string {
	return folder(t, map[string]string{"level.csv": profile(10_000, slope(0)), "hill.csv": profile(20_000, oneHill)})
}

// The plan meets the goal to the second, gun time or net time, and the splits end with
// the same totals at any spacing and in any format.
func TestGoal(t *testing.T) {
	t.Parallel()
	dir := goalFolder(t)
	for _, g := range goals {
		for _, goal := range g.goals {
			for _, start := range [][]string{nil, {"-start-delay", "7m30s"}, {"-start-delay", "7m30s", "-net"}} {
				args := append(append([]string{"-goal", goal}, start...), g.args...)
				t.Run(strings.Join(args, " "), func(t *testing.T) {
					t.Parallel()
					checkGoal(t, dir, args, seconds(goal), len(start) > 0, len(start) == 3)
				})
			}
		}
	}
}

func checkGoal(t *testing.T, dir string, args []string, goal float64, delayed, net bool) {
	gun, delay := goal, 0.0
	if delayed {
		delay = 450
	}
	if net {
		gun += delay
	}
	for i, every := range spacings {
		args := append([]string{"-every", every}, args...)
		p := plannedJSON(t, dir, args...)
		if !(math.Abs(p.Gun-gun) < 1) || p.Delay != delay || ms(p.Net) != ms(p.Gun)-ms(delay) || ms(p.Moving) != ms(p.Net) {
			t.Fatalf("gun_s %v, net_s %v, moving_s %v, start_delay_s %v, want a gun time of %v", p.Gun, p.Net, p.Moving, p.Delay, gun)
		}
		checkSums(t, p)
		if i == 0 { // TestText has the other spacings
			o := planned(t, dir, args...)
			checkPage(t, o.out)
			checkSplits(t, o.out)
			if !strings.Contains(words(o.out), "Finish "+hms(gun)+" gun time") {
				t.Errorf("the text does not finish at %s:\n%s", hms(gun), o.out)
			}
		}
	}
}

// checkSums checks that splits go forward and add up to the totals.
func checkSums(t *testing.T, p printed) {
	t.Helper()
	if len(p.Splits) == 0 {
		t.Fatal("no splits")
	}
	sum, from := int64(0), 0.0
	for _, s := range p.Splits {
		sum += ms(s.Split)
		if !(s.Distance > from) || ms(s.Moving) != sum || ms(s.Elapsed) != sum+ms(p.Delay) {
			t.Errorf("split at %.1f m: split_s %v, moving_s %v, elapsed_s %v, want sums of %v ms", s.Distance, s.Split, s.Moving, s.Elapsed, sum)
		}
		from = s.Distance
	}
	last := p.Splits[len(p.Splits)-1]
	if ms(last.Elapsed) != ms(p.Gun) || ms(last.Moving) != ms(p.Moving) || last.Distance != p.Course.Length {
		t.Errorf("the last split is at %.1f m, moving_s %v, elapsed_s %v; the plan %.1f m, %v, %v", last.Distance, last.Moving, last.Elapsed, p.Course.Length, p.Moving, p.Gun)
	}
}

var (
	clockTime  = regexp.MustCompile(`\b(\d+):(\d\d):(\d\d)\b`)
	finishTime = regexp.MustCompile(`(?m)^Finish +(\d+:\d\d:\d\d)\b`)
)

// checkSplits checks the table of splits of a page by adding as a reader would: delay and
// parts give each gun time, and the last is the finish printed above.
func checkSplits(t *testing.T, page string) {
	t.Helper()
	_, table, found := strings.Cut(page, "\nSPLITS")
	table, _, ended := strings.Cut(table, "\n\n")
	finish := finishTime.FindStringSubmatch(page)
	if !found || !ended || finish == nil {
		t.Fatalf("no table of splits or no finish in\n%s", page)
	}
	sum, lines := 0.0, 0
	for _, line := range strings.Split(table, "\n")[2:] {
		times := clockTime.FindAllString(line, -1)
		lines++
		if len(times) == 0 || len(times) > 2 {
			t.Errorf("neither start nor split: %s", line)
			continue
		}
		sum += seconds(times[0])
		if gun := seconds(times[len(times)-1]); gun != sum {
			t.Errorf("the parts add up to %s at: %s", hms(sum), line)
			sum = gun
		}
	}
	if lines == 0 || hms(sum) != finish[1] {
		t.Errorf("%d splits end at %s, the plan at %s", lines, hms(sum), finish[1])
	}
}

// seconds reads H:MM:SS.
func seconds(text string) float64 {
	part := clockTime.FindStringSubmatch(text)
	h, _ := strconv.Atoi(part[1])
	m, _ := strconv.Atoi(part[2])
	s, _ := strconv.Atoi(part[3])
	return float64(3600*h + 60*m + s)
}

func hms(seconds float64) string {
	s := int(math.Round(seconds))
	return fmt.Sprintf("%d:%02d:%02d", s/3600, s/60%60, s%60)
}

// No line of a page is longer than 80 characters, and its splits add up as printed,
// whatever the spacing, the units and the length of the times.
func TestText(t *testing.T) {
	t.Parallel()
	dir := goalFolder(t)
	for i, args := range [][]string{
		{"-start", "2026-06-14T05:30:00+02:00", "-start-delay", "12m13s"},
		{"-athlete", "hour_power=14"},
		{"-goal", "9:59:59", "-start-delay", "59s", "-net"},
		{"-goal", "99:59:59", "-start", "2026-06-14T05:30:00Z", "-step", "100"},
		{"-goal", "5:00:00", "-athlete", "hour_power=12"},
		{"-athlete", "hour_power=5"},
		{"-athlete", "hour_power=38"},
		{"-course", "@/level.csv"},
		{"-course", "../../testdata/gpx/long-route-166km.gpx", "-athlete", "hour_power=12", "-start-delay", "23h", "-start", "2026-06-14T05:30:00Z"},
	} {
		all := []string{"landmark", "1mi", "0.5km", "1km", "5km", "0.3mi", "42.2km", "1000km"}
		if i > 0 {
			all = all[:3]
		}
		for _, every := range all {
			t.Run(strings.Join(args, " ")+" "+every, func(t *testing.T) {
				t.Parallel()
				o := planned(t, dir, append([]string{"-every", every}, args...)...)
				checkPage(t, o.out)
				checkSplits(t, o.out)
			})
		}
	}
}

func TestCSV(t *testing.T) {
	t.Parallel()
	for _, every := range spacings {
		args := []string{"-every", every, "-start", "2026-06-14T05:30:00+02:00", "-start-delay", "7m30s", "-goal", "10:30:00"}
		o := planned(t, "nowhere", append([]string{"-format", "csv"}, args...)...)
		p := plannedJSON(t, "nowhere", args...)
		rows, err := csv.NewReader(strings.NewReader(o.out)).ReadAll()
		if err != nil || len(rows) != len(p.Splits)+1 {
			t.Fatalf("%s: %d rows for %d splits: %v", every, len(rows), len(p.Splits), err)
		}
		column := map[string]int{}
		for i, name := range rows[0] {
			column[name] = i
		}
		number := func(row []string, name string) float64 {
			v, err := strconv.ParseFloat(row[column[name]], 64)
			if err != nil {
				t.Fatalf("%s: %s: %v", every, name, err)
			}
			return v
		}
		sum := int64(450_000)
		for i, row := range rows[1:] {
			sum += ms(number(row, "split_s")) + ms(number(row, "stop_s"))
			if elapsed := ms(number(row, "elapsed_s")); elapsed != sum || elapsed != ms(p.Splits[i].Elapsed) || ms(number(row, "moving_s")) != sum-450_000 {
				t.Errorf("%s: split %d: elapsed_s %d ms, want %d", every, i+1, elapsed, sum)
			}
			if row[column["gait"]] != p.Splits[i].Gait || number(row, "distance_m") != p.Splits[i].Distance {
				t.Errorf("%s: split %d: %q", every, i+1, row)
			}
		}
		if got := rows[len(rows)-1][column["clock"]]; sum != 37_800_000 || got != "2026-06-14T16:00:00+02:00" {
			t.Errorf("%s: the splits end after %d ms, at %s", every, sum, got)
		}
	}
}

// The JSON has the members that are promised, of the kinds that are promised.
func TestJSON(t *testing.T) {
	t.Parallel()
	o := planned(t, "nowhere", "-format", "json", "-every", "5km")
	var raw map[string]any
	if err := json.Unmarshal([]byte(o.out), &raw); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"relative_intensity", "budget_spent", "moving_s", "first_half_s", "gun_s", "walking_share"} {
		if _, ok := raw[name].(float64); !ok {
			t.Errorf("%s is %v", name, raw[name])
		}
	}
	if text, ok := raw["schema"].(string); !ok || !strings.HasPrefix(text, "isoeffort.plan.") {
		t.Errorf("schema is %v", raw["schema"])
	}
	splits, ok := raw["splits"].([]any)
	if !ok || len(splits) != 18 {
		t.Fatalf("splits are %v", raw["splits"])
	}
	for i, s := range splits {
		split, ok := s.(map[string]any)
		if !ok {
			t.Fatalf("split %d is %v", i+1, s)
		}
		for _, name := range []string{"distance_m", "moving_s", "elapsed_s"} {
			if v, ok := split[name].(float64); !ok || !(v > 0) {
				t.Errorf("split %d: %s is %v", i+1, name, split[name])
			}
		}
		if gait := split["gait"]; gait != "run" && gait != "walk" && gait != "mixed" {
			t.Errorf("split %d: gait is %v", i+1, gait)
		}
	}
}
