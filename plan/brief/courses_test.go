package brief_test

import (
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/plan"
	"isoeffort.example/plan/story"
)

// A piece of a profile rises by half a cosine wave over its length.
type piece struct{ length, rise float64 }

// ground makes a course of pieces, a point every 20 m.
func ground(t rapid.TB, name string, start float64, pieces []piece, marks ...course.Landmark) *course.Course {
	t.Helper()
	var x, z []float64
	at, height := 0.0, start
	for _, p := range pieces {
		n := int(math.Max(1, math.Round(p.length/20)))
		for i := range n {
			u := float64(i) / float64(n)
			x, z = append(x, at+u*p.length), append(z, height+p.rise*(1-math.Cos(math.Pi*u))/2)
		}
		at, height = at+p.length, height+p.rise
	}
	c, err := course.New(append(x, at), append(z, height), course.Options{Name: name, Smoothing: course.AsGiven, Landmarks: marks})
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func station(name string, km float64) course.Landmark {
	return course.Landmark{Name: name, Distance: 1000 * km, Kind: course.Station}
}

func top(name string, km float64) course.Landmark {
	return course.Landmark{Name: name, Distance: 1000 * km, Kind: course.Top}
}

// The six courses, all of them invented.

// flatCity is a marathon on level streets.
func flatCity(t rapid.TB) *course.Course {
	var pieces []piece
	for i := range 14 {
		pieces = append(pieces, piece{1500, 5 - float64(i%3)}, piece{42195.0/14 - 1500, -5 + float64(i%3)})
	}
	return ground(t, "The Brindlequay Marathon", 12, pieces, station("Glovers' Bridge", 10), station("Tallow Market", 21.3), station("Saltpan Gate", 31))
}

// oneBig has one climb of 900 m in its middle.
func oneBig(t rapid.TB) *course.Course {
	return ground(t, "The Harrowmantle", 300,
		[]piece{{3000, 8}, {4000, 25}, {4000, -30}, {9500, 900}, {1200, 15}, {8300, -860}, {6000, -40}, {4000, 10}, {3000, -20}},
		station("Fennel Ford", 10.8), top("Harrowmantle", 20.5), station("Cray Hollow", 30))
}

// rollingLong is 85 km of hills.
func rollingLong(t rapid.TB) *course.Course {
	pieces := []piece{{3000, 3}, {1000, 24}, {800, -18}, {900, 22}, {700, -20}, {900, 23}, {1200, -13}, {1800, 122}, {1400, -82}, {1100, 52}, {2400, -66}}
	pieces = append(pieces, piece{3200, 190}, piece{1500, -84}, piece{1000, 70}, piece{3100, -110}, piece{5000, 280}, piece{4000, -193})
	pieces = append(pieces, piece{1250, 66}, piece{700, -36}, piece{2400, 182}, piece{11150, -332})
	for range 6 {
		pieces = append(pieces, piece{600, 27}, piece{640, -29})
	}
	pieces = append(pieces, piece{2600, 150}, piece{2200, -126})
	for range 8 {
		pieces = append(pieces, piece{500, 26}, piece{500, -25})
	}
	pieces = append(pieces, piece{1800, 116}, piece{2100, -124}, piece{4000, 40}, piece{2100, -35}, piece{1900, 119}, piece{9260, -215})
	return ground(t, "The Quillmere Round", 60, pieces,
		top("Otterback", 10.3), station("Pennywort Green", 15.2), top("Larkfold Height", 18.4), top("Candle Edge", 29), station("Wickyard", 33),
		top("Tinder Knoll", 34.25), top("Emberstair", 37.35), station("Halfmoon Barn", 48.5), top("Netter's Gate", 58.5), station("Oarbench", 70), top("Cooper's Stair", 80))
}

// mountain is 170 km over ten passes.
func mountain(t rapid.TB) *course.Course {
	var pieces []piece
	for _, p := range []struct{ up, rise, down, drop, valley float64 }{
		{9000, 850, 7000, 700, 3000},
		{6500, 620, 6000, 740, 2500},
		{12500, 1250, 9000, 980, 2000},
		{5500, 480, 4500, 520, 1500},
		{8000, 900, 8500, 930, 4000},
		{7000, 780, 6500, 700, 1500},
		{4200, 390, 5000, 560, 3000},
		{9500, 1010, 8200, 900, 2000},
		{4500, 520, 6000, 610, 1200},
		{7000, 640, 6500, 760, 900},
	} {
		pieces = append(pieces, piece{p.up, p.rise}, piece{p.down, -p.drop}, piece{p.valley / 2, 15}, piece{p.valley / 2, -15})
	}
	c := ground(t, "The Nine Lanterns", 1000, pieces)
	at, marks := 0.0, []course.Landmark{}
	tops := []string{"Col of Reeds", "Gannet Pass", "Great Lantern", "Small Lantern", "Hob Saddle", "Ashen Pass", "Wren Saddle", "Long Lantern", "Fold Pass", "Last Lantern"}
	towns := []string{"Birchstead", "Ninepin Fold", "Marl", "Tarnledge", "Kestrel Inn", "Upper Dray", "Sallow", "Quernwater", "Pellow", ""}
	for i := range tops {
		at += pieces[4*i].length
		marks = append(marks, course.Landmark{Name: tops[i], Distance: at, Kind: course.Top})
		at += pieces[4*i+1].length
		if towns[i] != "" {
			marks = append(marks, course.Landmark{Name: towns[i], Distance: at + 100, Kind: course.Station})
		}
		at += pieces[4*i+2].length + pieces[4*i+3].length
	}
	return ground(t, c.Name(), 1000, pieces, marks...)
}

// tenLaps is a lap of 8.5 km with one hill, ten times.
func tenLaps(t rapid.TB) *course.Course {
	lap := ground(t, "The Ten Bells", 80, []piece{{1500, 6}, {1800, 95}, {1400, -60}, {600, 25}, {1700, -70}, {1500, 4}}, top("Bell Hill", 3.3), station("The Green", 6.9))
	c, err := lap.Laps(10)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// shortRace is 10 km with one hill.
func shortRace(t rapid.TB) *course.Course {
	return ground(t, "The Pinfold Ten", 40, []piece{{2500, 6}, {1200, 48}, {1600, -50}, {2200, -4}, {2500, 3}}, top("Pinfold Hill", 3.7))
}

// A case is a course with the four runners' races on it.
type example struct {
	name   string
	course *course.Course
	races  [4]plan.Race
	marks  []story.Mark
}

// runners go from fast to slow: hour powers, W/kg.
var runners = [4]float64{18, 14, 11, 8.5}

func athlete(hourPower float64) effort.Athlete {
	a := effort.Usual(hourPower)
	if hourPower > 16 {
		a.Endurance = 0.07
	}
	return a
}

func examples(t testing.TB) []example {
	t.Helper()
	gun := time.Date(2026, 6, 13, 5, 30, 0, 0, time.UTC)
	stations := plan.Stations{Each: time.Minute, PerHour: time.Minute}
	long := func(c *course.Course, cutoffs ...plan.Cutoff) [4]plan.Race {
		return [4]plan.Race{
			{},
			{Start: gun, StartDelay: 4 * time.Minute, Stations: stations},
			{Start: gun, Stations: stations, Cutoffs: cutoffs, Share: 0.8},
			{Stations: stations, Cutoffs: cutoffs, StartDelay: 6 * time.Minute, Goal: cutoffs[len(cutoffs)-1].Time - 20*time.Minute},
		}
	}
	short := func(slow time.Duration) [4]plan.Race {
		return [4]plan.Race{{}, {StartDelay: 90 * time.Second, Start: gun.Add(4 * time.Hour)}, {Share: 0.7}, {Goal: slow, StartDelay: 5 * time.Minute}}
	}
	flat, big, rolling, high, laps, ten := flatCity(t), oneBig(t), rollingLong(t), mountain(t), tenLaps(t), shortRace(t)
	cut := func(name string, km, hours float64) plan.Cutoff {
		return plan.Cutoff{Name: name, Distance: 1000 * km, Time: time.Duration(hours * float64(time.Hour))}
	}
	list := []example{
		{"flat", flat, short(5*time.Hour + 30*time.Minute), nil},
		{"big", big, long(big, cut("Cray Hollow", 30, 5.75), cut("", big.Length()/1000, 8)), nil},
		{"rolling", rolling, long(rolling, cut("Wickyard", 33, 5.2), cut("Oarbench", 70, 11.3), cut("", rolling.Length()/1000, 14)), []story.Mark{
			{From: 41_000, To: 47_000, Kind: story.Exposed, Note: "no shade before Halfmoon Barn"}, {From: 71_500, To: 73_500, Kind: story.Surface, Note: "wet slate"},
		}},
		{"mountain", high, long(high, cut("Marl", 55.6, 15), cut("Upper Dray", 103.3, 29), cut("", high.Length()/1000, 48)), []story.Mark{{From: 90_000, To: 96_000, Kind: story.Exposed}}},
		{"laps", laps, long(laps, cut("The Green", 57.9, 9), cut("", laps.Length()/1000, 13.5)), nil},
		{"ten", ten, short(70 * time.Minute), nil},
	}
	list[2].races[2].Walks = plan.Walks{Every: 30 * time.Minute, Length: 2 * time.Minute}
	day, err := effort.NewDay([]effort.Hour{{Clock: 5 * time.Hour, Temperature: 9, Humidity: 80}, {Clock: 15 * time.Hour, Temperature: 24, Humidity: 40}},
		effort.Night{From: 21 * time.Hour, To: 5 * time.Hour, Factor: 0.95})
	if err != nil {
		t.Fatal(err)
	}
	list[3].races[2].Surroundings = effort.Surroundings{Day: day, Heat: effort.Heat{Loss: effort.HeatLoss}}
	list[3].races[2].Stops = []plan.Stop{{Distance: 85_000, Duration: 25 * time.Minute, Kind: plan.DropBag, Note: "dry socks, second lamp"}}
	return list
}
