package record

import (
	"math"
	"time"
)

// A mark is a time on level ground that the best in the world have about run.
type mark struct {
	distance float64 // m
	seconds  float64
}

// marks are about the best of the world up to 2025, all from memory; some may have been
// bettered, and the last two are the least certain. levelSlack covers both.
var marks = [...]mark{
	{800, 1*60 + 40.9},
	{1500, 3*60 + 26},
	{5000, 12*60 + 35},
	{10_000, 26*60 + 11},
	{21_097.5, 57 * 60},
	{42_195, 2*3600 + 30},
	{100_000, 6*3600 + 5*60},
	{319_600, 24 * 3600},
	{485_000, 48 * 3600},
	{1_046_000, 144 * 3600},
}

const (
	// levelSlack is by how much a speed may exceed the marks: for marks bettered since,
	// for distances between them and for courses measured short, as off a map. It is wide
	// enough for every race in testdata/hills (Atkinson 1986, Statistical Science 1:397),
	// one of which has a time for 4.5 miles and 1000 feet of climb that is 7 % faster than
	// the level mark: a fault in its distance or its time that we cannot mend.
	levelSlack = 0.15

	// dropSlack is by how much more on a course that drops. Hill-race records put the
	// best speed on a descent at about 1.17 times the level one. Source: Kay 2012,
	// J Quant Anal Sports 8(4), second-hand; the rest is margin.
	dropSlack = 0.20

	// sprint is a speed in m/s that no runner holds, near the peak of the fastest 100 m.
	sprint = 12.5
)

// FastestTime returns the time below which nobody is believed to have run a course of
// the given horizontal distance, ascent and descent in metres. It is a bound for errors
// in a file and not a forecast.
//
// From 800 m it lies 15 % in speed above world bests on level ground, their log time
// interpolated in log distance, and on beyond the last of them at the same slope. Below
// 800 m it is 12.5 m/s throughout, so that it jumps from 64 to 96 s there. Where descent
// exceeds ascent the speed may be 20 % higher still; ascent alone does not slow the
// bound. It never decreases with distance.
//
// It is 0 unless distance > 0, and the greatest Duration for what exceeds that.
func FastestTime(distance, ascent, descent float64) time.Duration {
	if !(distance > 0) {
		return 0
	}
	seconds := distance / sprint
	if distance >= marks[0].distance {
		seconds = levelBest(distance) / (1 + levelSlack)
	}
	if descent > ascent {
		seconds /= 1 + dropSlack
	}
	if nanos := seconds * 1e9; nanos < math.MaxInt64 {
		return time.Duration(nanos)
	}
	return math.MaxInt64
}

// levelBest interpolates the marks, or extends the last two.
func levelBest(distance float64) float64 {
	i := 1
	for i < len(marks)-1 && marks[i].distance < distance {
		i++
	}
	a, b := marks[i-1], marks[i]
	exponent := math.Log(b.seconds/a.seconds) / math.Log(b.distance/a.distance)
	return a.seconds * math.Pow(distance/a.distance, exponent)
}
