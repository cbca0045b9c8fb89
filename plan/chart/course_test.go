package chart_test

import (
	"math"
	"testing"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/plan"
)

// A ramp rises by half a cosine wave over a length.
type ramp struct{ length, rise float64 }

func ramps(list ...ramp) func(x float64) float64 {
	return func(x float64) float64 {
		z := 0.0
		for _, r := range list {
			if x < r.length {
				return z + r.rise*(1-math.Cos(math.Pi*x/r.length))/2
			}
			z, x = z+r.rise, x-r.length
		}
		return z
	}
}

func ground(t testing.TB, name string, length, base float64, height func(x float64) float64, marks ...course.Landmark) *course.Course {
	t.Helper()
	n := int(math.Round(length / 20))
	x, z := make([]float64, n+1), make([]float64, n+1)
	for i := range x {
		x[i] = length * float64(i) / float64(n)
		z[i] = base + height(x[i])
	}
	c, err := course.New(x, z, course.Options{Name: name, Smoothing: course.AsGiven, Landmarks: marks})
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func station(name string, at float64) course.Landmark {
	return course.Landmark{Name: name, Distance: at, Kind: course.Station}
}

func top(name string, at float64) course.Landmark {
	return course.Landmark{Name: name, Distance: at, Kind: course.Top}
}

func place(name string, at float64) course.Landmark {
	return course.Landmark{Name: name, Distance: at}
}

// A scene is a course with what its race adds.
type scene struct {
	name    string
	course  *course.Course
	cutoffs []plan.Cutoff
	stops   []plan.Stop
}

// scenes are six invented courses.
func scenes(t testing.TB) []scene {
	t.Helper()
	return []scene{city(t), bigClimb(t), rolling(t), mountain(t), laps(t), short(t)}
}

func city(t testing.TB) scene {
	c := ground(t, "Saltglass City Run", 42195, 8, func(x float64) float64 {
		return 2 + 1.6*math.Sin(2*math.Pi*x/9100) + 0.8*math.Sin(2*math.Pi*x/2300)
	}, station("Ropewalk", 5000), station("Tide Gate", 10000), station("Corn Steps", 15000), station("Glass Bridge", 20000),
		place("Half way", 21097), station("Far Quay", 25000), station("Lime Row", 30000), station("Bell Yard", 35000), station("Kiln Lane", 40000))
	return scene{"city", c, nil, nil}
}

func bigClimb(t testing.TB) scene {
	c := ground(t, "Hollowhorn Up and Down", 28000, 310, ramps(ramp{3000, 40}, ramp{9000, 1150}, ramp{1200, -60}, ramp{10800, -1060}, ramp{4000, -60}),
		station("Sheepwash", 3000), station("Upper Fold", 8200), top("Hollowhorn", 12000), station("Lantern Hut", 13200), station("Sheepwash", 24000))
	return scene{"climb", c, []plan.Cutoff{{Name: "Hollowhorn", Distance: 12000, Time: 4 * time.Hour}}, nil}
}

func rollingHeight(x float64) float64 {
	return 30*math.Sin(2*math.Pi*x/2600) + 60*math.Sin(2*math.Pi*x/9000+1) + 12*math.Sin(2*math.Pi*x/1100)
}

func rolling(t testing.TB) scene {
	marks := []course.Landmark{
		station("Pennyoar Green", 11500), top("Wickerlamp Height", 18900), station("Kelpwright's Yard", 22500), station("Mossbell Barn", 34000),
		place("Half-Lamp Stone", 42500), station("Netmender's Gate", 45200), top("Oarsmith's Bench", 55200),
		station("Wherryfold", 57700), station("Lampwright's Stair", 70100), place("Snuffer's Knoll", 78300),
	}
	c := ground(t, "The Kettlebrack Rolling Eighty-Five", 85000, 200, rollingHeight, marks...)
	return scene{
		"rolling", c,
		[]plan.Cutoff{{Name: "Mossbell Barn", Distance: 34000, Time: 6 * time.Hour}, {Name: "Wherryfold", Distance: 57700, Time: 10 * time.Hour}},
		[]plan.Stop{{Distance: 34000, Duration: 5 * time.Minute}},
	}
}

func mountain(t testing.TB) scene {
	var list []ramp
	var marks []course.Landmark
	at := 0.0
	for i, rise := range []float64{850, 1250, 600, 1400, 980, 700, 1150, 520, 890, 640} {
		up, down := 5500+float64(i%3)*1500, 7000+float64(i%4)*900
		list = append(list, ramp{up, rise}, ramp{down, -rise * 0.985}, ramp{1500, 20})
		marks = append(marks, top([]string{
			"Gannet Pass", "Great Tarn Col", "Sill", "Roof of Orr", "Windlass", "Cold Saddle", "Ember Col", "Low Door", "Sleet Gap", "Last Light",
		}[i], at+up), station([]string{
			"Anvil", "Barley Cross", "Cairnholt", "Dunmarrow", "Elderfoot", "Fennock", "Garth", "Thistlerig", "Inver Sands", "Juniper Mill",
		}[i], at+up+down), place([]string{"Ford", "Footbridge", "Old wall", "Chapel", "Sluice", "Larch wood", "Quarry", "Weir", "Shepherd's stone", "Lime kiln"}[i], at+up+down/2))
		at += up + down + 1500
	}
	list = append(list, ramp{170000 - at, -30})
	c := ground(t, "Orr Skyline Hundred and Seventy", 170000, 640, ramps(list...), marks...)
	cut := []plan.Cutoff{}
	for i, k := range []int{1, 4, 7, 10, 13, 16, 19, 22, 25, 28} {
		cut = append(cut, plan.Cutoff{Name: marks[k].Name, Distance: marks[k].Distance, Time: time.Duration(i+1) * 4 * time.Hour})
	}
	return scene{"mountain", c, cut, []plan.Stop{{Distance: marks[13].Distance, Duration: 20 * time.Minute}}}
}

func laps(t testing.TB) scene {
	lap := ground(t, "Ten times round Fennock Mere", 5000, 90, func(x float64) float64 {
		return 22 * (1 - math.Cos(2*math.Pi*x/5000)) * (1 + 0.3*math.Sin(4*math.Pi*x/5000))
	}, top("Mere Brow", 2300), station("Boathouse", 5000))
	c, err := lap.Laps(10)
	if err != nil {
		t.Fatal(err)
	}
	return scene{"laps", c, nil, nil}
}

func short(t testing.TB) scene {
	c := ground(t, "Cooper's Ten", 10000, 45, func(x float64) float64 {
		return 14*math.Sin(2*math.Pi*x/10000) + 6*math.Sin(2*math.Pi*x/3100)
	}, station("Green", 5000))
	return scene{"short", c, nil, nil}
}

// A runner plans for a share of the budget.
type runner struct {
	name  string
	power float64 // W/kg
	share float64
}

// runners are four, from fast to slow: over the 42 km of the city some 3, 3:40, 4:40 and 6
// hours.
var runners = []runner{{"fast", 15.5, 1}, {"steady", 13, 1}, {"easy", 11, 0.8}, {"slow", 9, 0.6}}

func planFor(t testing.TB, s scene, r runner) *plan.Plan {
	t.Helper()
	p, err := plan.Even(s.course, effort.Usual(r.power), plan.Race{
		Share: r.share, Cutoffs: s.cutoffs, Stops: s.stops, StartDelay: 4 * time.Minute, Step: 20,
	})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func wave(rise, waves, length float64) func(x float64) float64 {
	return func(x float64) float64 { return rise / 2 * (1 - math.Cos(2*math.Pi*waves*x/length)) }
}
