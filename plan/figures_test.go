package plan_test

import (
	"flag"
	"fmt"
	"math"
	"os"
	"strings"
	"testing"
	"time"

	"isoeffort.example/effort"
	"isoeffort.example/plan"
)

var update = flag.Bool("update", false, "take over what is computed into testdata")

// six are the courses of the golden file, all invented.
var six = []struct {
	name   string
	length float64
	height func(x float64) float64
}{
	{"10 km", 10_000, func(x float64) float64 { return 50 + 8*math.Sin(x/700) }},
	{"flat city", 42_195, func(x float64) float64 { return 20 + 5*math.Sin(x/1500) }},
	{"one big climb", 42_000, func(x float64) float64 { return 300 + 900*math.Exp(-math.Pow((x-20_000)/5000, 2)) }},
	{"rolling 85 km", 85_000, rolling},
	{"ten laps", 85_000, func(x float64) float64 { return 80 + 60*math.Pow(math.Sin(math.Pi*x/8500), 2) }},
	{"mountain 170 km", 170_000, func(x float64) float64 {
		return 1200 + 450*math.Sin(2*math.Pi*x/17_000) + 120*math.Sin(2*math.Pi*x/4300)
	}},
}

// figuresTable is the golden text: a line for each course and runner.
func figuresTable(t *testing.T) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%-16s %5s %9s %7s %8s %6s %7s %5s %5s %9s %9s %s\n", "course", "power", "gun", "opening", "marathon", "budget",
		"changes", "down", "run", "walk", "longest", "walked")
	fmt.Fprintf(&b, "%-16s %5s %9s %7s %8s %6s %7s %5s %5s %9s %9s %s\n", "", "W/kg", "h:m:s", "/km", "/km", "",
		"/h", "m/s", "m/s", "m/s", "run, h", "%")
	for _, c := range six {
		for _, power := range []float64{9, 11, 14, 18} {
			p := even(t, profile(t, c.length, c.height), effort.Usual(power), plan.Race{})
			f := p.Figures()
			checkFigures(t, c.name, power, p, f)
			pace := func(d time.Duration) string {
				s := int(math.Round(d.Seconds()))
				return fmt.Sprintf("%d:%02d", s/60, s%60)
			}
			fmt.Fprintf(&b, "%-16s %5.0f %9s %7s %8s %6.3f %7.1f %5.1f %5.1f %4.1f-%4.1f %9.2f %.0f\n", c.name, power, p.Gun.Round(time.Second),
				pace(f.Opening), pace(f.Marathon), p.Budget, f.ChangesPerHour, f.FastestDescent, f.FastestRun,
				f.SlowestWalk, f.FastestWalk, f.LongestRun.Hours(), 100*p.WalkingShare)
		}
	}
	return b.String()
}

// checkFigures are the bounds outside of which a coach would not believe a plan. Common
// practice, no source.
func checkFigures(t *testing.T, name string, power float64, p *plan.Plan, f plan.Figures) {
	// A marathon's own opening is up to 5 % faster than the whole of it, by the fade.
	if p.Gun > 3*time.Hour && f.Opening.Seconds() < 0.95*f.Marathon.Seconds() {
		t.Errorf("%s, %g: it opens at a level pace of %v, a marathon is run at %v", name, power, f.Opening, f.Marathon)
	}
	if f.FastestWalk > 1.81 || f.SlowestWalk != 0 && f.SlowestWalk < 0.2 { // 35 % after two days
		t.Errorf("%s, %g: walks at %.2f to %.2f m/s", name, power, f.SlowestWalk, f.FastestWalk)
	}
	if f.SlowestRun != 0 && f.SlowestRun < 1.1 {
		t.Errorf("%s, %g: runs at %.2f m/s", name, power, f.SlowestRun)
	}
	if f.ChangesPerHour > 6 {
		t.Errorf("%s, %g: %.1f changes of gait an hour", name, power, f.ChangesPerHour)
	}
	if f.FastestDescent > 1.35*p.Course.Length()/p.Moving.Seconds()+2 {
		t.Errorf("%s, %g: down at %.1f m/s", name, power, f.FastestDescent)
	}
}

// The numbers of a plan that a coach checks first, on six courses for four runners.
func TestFigures(t *testing.T) {
	t.Parallel()
	const file = "testdata/figures.txt"
	got := figuresTable(t)
	if *update {
		if err := os.MkdirAll("testdata", 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

// On level ground by hand: one speed, no walk, and a marathon's own pace.
func TestFiguresOnTheLevel(t *testing.T) {
	t.Parallel()
	p := even(t, profile(t, 42_195, flat), effort.Usual(16), plan.Race{HoldBack: plan.Off})
	f := p.Figures()
	if f.LongestRun != p.Moving || f.FastestWalk != 0 || f.ChangesPerHour != 0 || f.FastestDescent != 0 {
		t.Errorf("%+v of %v", f, p.Moving)
	}
	if mean := time.Duration(float64(p.Moving) / 42.195); math.Abs(float64(f.Marathon-mean.Round(time.Millisecond))) > float64(time.Second) {
		// UniformTime is the closed form of the same run
		t.Errorf("marathon at %v, planned at %v", f.Marathon, mean)
	}
}
