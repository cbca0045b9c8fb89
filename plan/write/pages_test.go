package write_test

import (
	"bytes"
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"testing"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/plan"
	"isoeffort.example/plan/write"
)

var update = flag.Bool("update", false, "take over what is printed into testdata")

// ground is one of six invented courses.
type ground struct {
	file, name string
	length     float64
	height     func(x float64) float64
	stations   []string // evenly spread
	tops       map[string]float64
	start      int           // o'clock
	limit      time.Duration // at the finish
}

var sixGrounds = []ground{
	{"short", "The Tallow Ten", 10_000, func(x float64) float64 { return 50 + 8*math.Sin(x/700) }, []string{"Quay Steps"}, nil, 10, 2 * time.Hour},
	{"city", "The Brindlequay Marathon", 42_195, func(x float64) float64 { return 20 + 5*math.Sin(x/1500) }, []string{"Glovers' Bridge", "Tallow Market", "Saltpan Gate"}, nil, 9, 6*time.Hour + 30*time.Minute},
	{"climb", "The Harrowmantle", 42_000, func(x float64) float64 { return 300 + 900*math.Exp(-math.Pow((x-20_000)/5000, 2)) }, []string{"Fennel Ford", "Cray Hollow"}, map[string]float64{"Harrowmantle": 20_000}, 8, 9 * time.Hour},
	{"rolling", "The Kettlebrack Eighty-Five", 85_000, func(x float64) float64 {
		return 200 + 30*math.Sin(2*math.Pi*x/2600) + 60*math.Sin(2*math.Pi*x/9000+1) + 12*math.Sin(2*math.Pi*x/1100)
	}, []string{"Pennywort", "Wickyard", "Half-Lamp", "Oarbench"}, map[string]float64{"Otterback": 18_550, "Candle Edge": 36_550}, 6, 15 * time.Hour},
	{"laps", "The Ten Bells", 85_000, func(x float64) float64 { return 80 + 60*math.Pow(math.Sin(math.Pi*x/8500), 2) }, []string{"Green 1", "Green 2", "Green 3", "Green 4", "Green 5", "Green 6", "Green 7", "Green 8", "Green 9"}, nil, 6, 14 * time.Hour},
	{"mountain", "The Nine Lanterns", 170_000, func(x float64) float64 {
		return 1200 + 450*math.Sin(2*math.Pi*x/17_000) + 120*math.Sin(2*math.Pi*x/4300)
	}, []string{"Birchstead", "Marl", "Tarnside", "Upper Dray", "Sallow", "Pellow"}, map[string]float64{"Great Lantern": 72_000}, 18, 46 * time.Hour},
}

func (g ground) course(t *testing.T) *course.Course {
	t.Helper()
	n := int(g.length / 20)
	x, z := make([]float64, n+1), make([]float64, n+1)
	for i := range x {
		x[i] = g.length * float64(i) / float64(n)
		z[i] = g.height(x[i])
	}
	o := course.Options{Name: g.name, Smoothing: course.AsGiven}
	for i, s := range g.stations {
		o.Landmarks = append(o.Landmarks, course.Landmark{Name: s, Distance: math.Round(g.length*float64(i+1)/float64(len(g.stations)+1)/100) * 100, Kind: course.Station})
	}
	for name, at := range g.tops {
		o.Landmarks = append(o.Landmarks, course.Landmark{Name: name, Distance: at, Kind: course.Top})
	}
	c, err := course.New(x, z, o)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// race has a start by the clock, a delay, halts, and cutoffs at the second station and the
// finish.
func (g ground) race(c *course.Course) plan.Race {
	r := plan.Race{
		Start: time.Date(2026, 6, 13, g.start, 0, 0, 0, time.UTC), StartDelay: 2 * time.Minute,
		Cutoffs: []plan.Cutoff{{Distance: c.Length(), Time: g.limit}},
	}
	if len(g.stations) > 1 {
		at, _ := plan.Find(c, g.stations[1])
		r.Cutoffs = append(r.Cutoffs, plan.Cutoff{Name: g.stations[1], Distance: at, Time: time.Duration(float64(g.limit) * at / c.Length()).Truncate(15 * time.Minute)})
		r.Stations = plan.Stations{Each: time.Minute, PerHour: 30 * time.Second}
	}
	return r
}

// The text plan of four runners on six courses and one card of each: read, and kept.
func TestPages(t *testing.T) {
	t.Parallel()
	for _, g := range sixGrounds {
		t.Run(g.file, func(t *testing.T) {
			t.Parallel()
			c := g.course(t)
			for _, power := range []float64{9, 11, 14, 18} {
				p, err := plan.Even(c, effort.Usual(power), g.race(c))
				if err != nil {
					t.Fatal(err)
				}
				var page bytes.Buffer
				if err := write.Text(&page, p, plan.AtLandmarks); err != nil {
					t.Fatal(err)
				}
				keep(t, fmt.Sprintf("%s-%02.0f.txt", g.file, power), page.Bytes())
				if power == 11 {
					page.Reset()
					if err := write.Card(&page, plan.AtLandmarks, write.CardOptions{}, p); err != nil {
						t.Fatal(err)
					}
					keep(t, g.file+".html", page.Bytes())
				}
			}
		})
	}
}

// keep compares a page with the one kept, or with -update keeps it.
func keep(t *testing.T, name string, page []byte) {
	t.Helper()
	file := filepath.Join("testdata", name)
	if *update {
		if err := os.MkdirAll("testdata", 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, page, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(page, want) {
		got, want := bytes.Split(page, []byte("\n")), bytes.Split(want, []byte("\n"))
		for i := range got {
			if i >= len(want) || !bytes.Equal(got[i], want[i]) {
				t.Errorf("%s:%d: printed is\n%s\n(-update takes it over)", file, i+1, got[i])
				break
			}
		}
	}
}
