// Package invented makes up results of runners who do not exist on courses that do not
// exist, for demonstrations and for tests of what package cohort finds again.
package invented

import (
	"fmt"
	"math"
	"math/rand/v2"
	"sort"
	"time"

	"isoeffort.example/effort"
	"isoeffort.example/effort/record"
)

// races are n races of a runner, with a fitness that drifts from one to the next.
func (f Field) races(rng *rand.Rand, r runner, courses []course, n int, truth Truth, wrong map[string][2]float64) []record.Result {
	type start struct {
		course *course
		date   time.Time
		race   string
	}
	seen := map[string]bool{}
	var starts []start
	for tries := 0; len(starts) < n && tries < 4000; tries++ {
		c := &courses[rng.IntN(len(courses))]
		off := (math.Log(c.distance) - r.habit) / 0.5
		if rng.Float64() > math.Exp(-off*off/2)*math.Min(1, c.popularity) {
			continue
		}
		year := int(r.since + rng.Float64()*r.span)
		if year < c.since {
			continue
		}
		race := fmt.Sprintf("%s %d", c.name, firstYear+year)
		if seen[race] {
			continue
		}
		seen[race] = true
		date := time.Date(firstYear+year, time.January, 10+c.day, 0, 0, 0, 0, time.UTC)
		starts = append(starts, start{c, date, race})
	}
	sort.SliceStable(starts, func(i, j int) bool { return starts[i].date.Before(starts[j].date) })
	fitness, before := f.Drift*rng.NormFloat64(), time.Time{}
	var results []record.Result
	for _, s := range starts {
		if !before.IsZero() {
			keep := math.Exp(-s.date.Sub(before).Hours() / 24 / 400)
			fitness = keep*fitness + f.Drift*math.Sqrt(1-keep*keep)*rng.NormFloat64()
		}
		before = s.date
		if _, ok := truth.Edition[s.race]; !ok {
			truth.Edition[s.race] = f.Edition * rng.NormFloat64()
			wrong[s.race] = f.fault(rng)
		}
		results = append(results, f.race(rng, r, s.course, s.race, s.date, fitness+truth.Edition[s.race], wrong[s.race]))
	}
	return results
}

// fault is by what factors an edition's distance and ascent are listed wrongly.
func (f Field) fault(rng *rand.Rand) [2]float64 {
	if rng.Float64() >= f.Wrong {
		return [2]float64{1, 1}
	}
	return [2]float64{math.Exp(0.08 * rng.NormFloat64()), math.Exp(0.25 * rng.NormFloat64())}
}

func (f Field) race(rng *rand.Rand, r runner, c *course, race string, date time.Time, day float64, wrong [2]float64) record.Result {
	ground, err := effort.NewSummaryGround(c.distance, c.ascent, c.ascent)
	if err != nil {
		panic(err) // the courses above are possible
	}
	work := ground.RunningWork(r.athlete)
	hours := r.athlete.UniformTime(work).Hours()
	noise := f.Noise * math.Pow(hours/4, 0.12) * student(rng, 5)
	if rng.Float64() < 0.03 {
		noise += 0.15 * rng.ExpFloat64()
	}
	hours *= math.Exp(c.effect + day + noise)
	listed := math.Min(c.listedAscent*wrong[1], 0.4*c.distance*wrong[0])
	result := record.Result{
		Runner: r.name, Race: race, Course: c.name, Date: date,
		Distance: math.Round(c.distance * wrong[0]), Ascent: math.Round(listed), Descent: math.Round(listed),
		Time: effort.Seconds(math.Round(hours * 3600)),
	}
	if least := record.FastestTime(result.Distance, result.Ascent, result.Descent); result.Time < least {
		result.Time = least.Round(time.Second) + time.Second
	}
	if c.splits {
		result.Splits = splits(rng, r, result, work)
	}
	return result
}

// splits are those of even effort with a pacing tilt of about 0.03 at each fifth of the
// work.
func splits(rng *rand.Rand, r runner, result record.Result, work float64) []record.Split {
	const parts = 5
	tilt := 0.03 + 0.04*rng.NormFloat64()
	var clock [parts + 1]float64
	h := work / 3600 / r.athlete.HourPower
	for i := range parts {
		s := (float64(i) + 0.5) / parts
		pace := math.Exp(r.athlete.Fade*h*s) / (1 + tilt*(1-2*s)) * math.Exp(0.01*rng.NormFloat64())
		clock[i+1] = clock[i] + pace
	}
	list := make([]record.Split, 0, parts-1)
	for i := 1; i < parts; i++ {
		share := float64(i) / parts
		list = append(list, record.Split{
			Distance: share * result.Distance, Ascent: share * result.Ascent, Descent: share * result.Descent,
			Elapsed: result.Time.Seconds() * clock[i] / clock[parts],
		})
	}
	return list
}

// student is a draw of Student's t.
func student(rng *rand.Rand, freedom int) float64 {
	sum := 0.0
	for range freedom {
		z := rng.NormFloat64()
		sum += z * z
	}
	return rng.NormFloat64() / math.Sqrt(sum/float64(freedom))
}
