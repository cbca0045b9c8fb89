package story_test

import (
	"errors"
	"math"
	"testing"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/plan/story"
)

// ground is a course of straight pieces of a length and a rise in metres.
func ground(t testing.TB, pieces ...[2]float64) *course.Course {
	t.Helper()
	x, z := []float64{0}, []float64{500}
	for i, p := range pieces {
		x, z = append(x, x[i]+p[0]), append(z, z[i]+p[1])
	}
	c, err := course.New(x, z, course.Options{Smoothing: course.AsGiven})
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// rolling fills so many metres with rollers of 1.2 km whose rise is that of a rolling race,
// 21 m in a kilometre, none of them a climb of 30 m.
func rolling(length float64) (pieces [][2]float64) {
	n := math.Max(1, math.Round(length/1200))
	for range int(n) {
		half := length / n / 2
		pieces = append(pieces, [2]float64{half, 0.042 * half}, [2]float64{half, -0.042 * half})
	}
	return pieces
}

// Climbs of a rolling race of 86 km, as common practice has them (no source): 2 km with
// 100 m of ascent after a sixth of the race: 2; 3 km with 185 m after a quarter: 6.5;
// 2 km with 105 m after two fifths: 5; just under 2 km with 120 m after nine tenths: 8.5.
// Each comes out within 1, in that order.
func TestRatingsOfARollingRace(t *testing.T) {
	t.Parallel()
	const length = 86_000.0
	climbs := []struct{ at, length, rise, want float64 }{
		{1.0 / 6, 2000, 100, 2}, {1.0 / 4, 3000, 185, 6.5}, {2.0 / 5, 2000, 105, 5}, {9.0 / 10, 1950, 120, 8.5},
	}
	var pieces [][2]float64
	done := 0.0
	for _, c := range climbs {
		pieces = append(pieces, rolling(c.at*length-done)...)
		pieces = append(pieces, [2]float64{c.length, c.rise}, [2]float64{3000, -c.rise})
		done = c.at*length + c.length + 3000
	}
	pieces = append(pieces, rolling(length-done)...)
	s, err := story.Tell(ground(t, pieces...), story.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if len(s.Climbs) != len(climbs) {
		t.Fatalf("%d climbs", len(s.Climbs))
	}
	t.Logf("effort %.0f J/kg", s.Effort)
	for i, c := range s.Climbs {
		t.Logf("%.1f km, %.0f m: %.2f, extra %.0f J/kg at %.3f", c.Start/1000, c.Rise, c.Value, c.Extra, c.Share)
		if math.Abs(c.Value-climbs[i].want) > 1 {
			t.Errorf("climb %d: %.2f, by common practice %.1f", i+1, c.Value, climbs[i].want)
		}
	}
	order := []int{0, 2, 1, 3}
	for i := 1; i < len(order); i++ {
		if s.Climbs[order[i]].Value <= s.Climbs[order[i-1]].Value {
			t.Errorf("climb %d is not rated above climb %d", order[i]+1, order[i-1]+1)
		}
	}
}

// hills is an invented course of a length in metres with some 25 hills of very unequal
// size, the greatest of them, of the rise given, at four fifths.
func hills(t testing.TB, length, rise float64) *course.Course {
	t.Helper()
	var x, z []float64
	period := math.Max(700, length/25)
	for d := 0.0; d <= length; d += 10 {
		from := (d/length - 0.8) / 0.06
		size := rise / 2 * (0.45*math.Abs(math.Sin(7.1*d/length+0.3)) + 0.55*math.Exp(-from*from))
		x, z = append(x, d), append(z, 800+size*math.Sin(2*math.Pi*d/period))
	}
	c, err := course.New(x, z, course.Options{Smoothing: course.AsGiven})
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// Ratings keep their spread from 10 km to 170 km: on each course they reach from below 1
// to above 9, or nearly.
func TestRatingsSpread(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ length, rise float64 }{
		{10_000, 90}, {21_000, 110}, {42_000, 200}, {60_000, 280}, {100_000, 450}, {170_000, 800},
	} {
		s, err := story.Tell(hills(t, c.length, c.rise), story.Options{LeastRise: 5})
		if err != nil {
			t.Fatal(err)
		}
		low, top := 10.0, 0.0
		for _, climb := range s.Climbs {
			low, top = math.Min(low, climb.Value), math.Max(top, climb.Value)
		}
		relief := s.Course.Relief()
		t.Logf("%.0f km, %.0f m up: %d climbs rated %.1f to %.1f", c.length/1000, relief.Ascent, len(s.Climbs), low, top)
		if low > 1 || top < 9 {
			t.Errorf("%.0f km: ratings from %.2f to %.2f do not spread over 1 to 9", c.length/1000, low, top)
		}
	}
}

func TestStory(t *testing.T) {
	t.Parallel()
	c := ground(t,
		[2]float64{3000, 0},    // an early flat
		[2]float64{2000, -80},  // an early descent
		[2]float64{20000, 0},   //
		[2]float64{1000, 40},   // a decoy
		[2]float64{1500, -50},  //
		[2]float64{4000, 360},  // the real one
		[2]float64{6000, -240}, // gentle
		[2]float64{9000, 0},    //
		[2]float64{900, 31},    // a small one
		[2]float64{2000, -61},  //
		[2]float64{800, 0},     //
	)
	s, err := story.Tell(c, story.Options{Marks: []story.Mark{{From: 9000, To: 12000, Kind: story.Shaded}, {From: 100, To: 900, Kind: story.Crowded}}})
	if err != nil {
		t.Fatal(err)
	}
	if s.Highest.Distance != 31500 || s.Lowest.Elevation != 410 {
		t.Errorf("highest %v, lowest %v", s.Highest, s.Lowest)
	}
	if len(s.Decoys) != 1 || s.Decoys[0].Climb.Start != 25000 || s.Decoys[0].Gap != 1500 {
		t.Errorf("decoys %+v", s.Decoys)
	}
	if s.Last == nil || s.Last.Start != 27500 || len(s.Last.Small) != 1 || s.Last.After.To != c.Length() {
		t.Errorf("last %+v", s.Last)
	}
	if len(s.MakeUp) == 0 || s.MakeUp[0].From < 31400 || s.MakeUp[0].From > 31800 {
		t.Errorf("make up %+v", s.MakeUp)
	}
	if len(s.Overspend) != 2 || s.Overspend[0].Why != story.EarlyFlat || s.Overspend[1].Why != story.EarlyDescent {
		t.Errorf("overspend %+v", s.Overspend)
	}
	if len(s.ToGo) != 4 || s.ToGo[0].Distance != c.Length()-42195 || s.ToGo[3].Left != 5000 {
		t.Errorf("to go %+v", s.ToGo)
	}
	if s.Marks[0].Kind != story.Crowded {
		t.Errorf("marks %+v", s.Marks)
	}
	for _, parts := range [][]story.Part{s.Halves, s.Quarters} {
		share, ascent := 0.0, 0.0
		for _, p := range parts {
			share, ascent = share+p.Effort, ascent+p.Ascent
		}
		if math.Abs(share-1) > 1e-12 || math.Abs(ascent-c.Relief().Ascent) > 1e-9 {
			t.Errorf("parts add up to %g of effort, %g m", share, ascent)
		}
	}
}

// Climbs by effort: a least extra effort keeps the hard ones, wherever they stand.
func TestLeastExtra(t *testing.T) {
	t.Parallel()
	c := hills(t, 42_000, 200)
	all, err := story.Tell(c, story.Options{LeastRise: 5})
	if err != nil {
		t.Fatal(err)
	}
	const least = 1500
	large := 0
	for _, climb := range all.Climbs {
		if climb.Extra >= least {
			large++
		}
	}
	hard, err := story.Tell(c, story.Options{LeastExtra: least})
	if err != nil {
		t.Fatal(err)
	}
	if len(hard.Climbs) == 0 || len(hard.Climbs) == len(all.Climbs) || len(hard.Climbs) < large-2 || len(hard.Climbs) > large+2 {
		t.Errorf("%d climbs of %d J/kg, %d of %d by their own extra", len(hard.Climbs), least, large, len(all.Climbs))
	}
	if len(hard.Descents) == 0 {
		t.Error("no descents")
	}
}

// A flat course has a story too: no climb, no decoy, nothing to make up.
func TestFlat(t *testing.T) {
	t.Parallel()
	s, err := story.Tell(ground(t, [2]float64{10000, 0}), story.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if len(s.Climbs)+len(s.Decoys)+len(s.MakeUp)+len(s.Overspend) > 0 || s.Last != nil {
		t.Errorf("%+v", s)
	}
}

func TestRefused(t *testing.T) {
	t.Parallel()
	c := ground(t, [2]float64{10000, 0})
	for _, m := range []story.Mark{
		{From: -1, To: 5}, {From: 5, To: 5}, {From: 0, To: 10001}, {From: math.NaN(), To: 5}, {From: 0, To: 5, Kind: 9},
	} {
		if _, err := story.Tell(c, story.Options{Marks: []story.Mark{m}}); !errors.Is(err, story.ErrMark) {
			t.Errorf("%+v: %v", m, err)
		}
	}
	if _, err := story.Tell(c, story.Options{Athlete: effort.Athlete{HourPower: -1}}); !errors.Is(err, effort.ErrAthlete) {
		t.Error(err)
	}
}
