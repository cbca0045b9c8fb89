package effort

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"
)

const hourLong = time.Hour

// On the hours the weather is what was given, between them it runs straight; hours of
// less than a day repeat every day, others are held outside.
func TestHoursByTheClock(t *testing.T) {
	t.Parallel()
	short := day(t, []Hour{{Clock: 6 * hourLong, Temperature: 10, Humidity: 50, WBGT: 12}, {Clock: 16 * hourLong, Temperature: 30, Humidity: 50, WBGT: 22}}, Night{})
	long := day(t, []Hour{{Clock: -2 * hourLong, Temperature: 10, Humidity: 50, WBGT: 12}, {Clock: 28 * hourLong, Temperature: 30, Humidity: 50, WBGT: 22}}, Night{})
	for _, c := range []struct {
		day   *Day
		clock float64
		share float64
	}{
		{short, 6, 0},
		{short, 16, 1},
		{short, 11, 0.5},
		{short, 23, 0.5},
		{short, 2, 2.0 / 7},
		{short, 30, 0},
		{short, 40, 1},
		{short, -18, 0},
		{short, -8, 1},
		{short, 6 + 24*30, 0},
		{long, -2, 0},
		{long, 28, 1},
		{long, 13, 0.5},
		{long, -30, 0},
		{long, 200, 1},
	} {
		clock := Seconds(3600 * c.clock)
		near(t, fmt.Sprint("WBGT at ", clock), c.day.WBGT(clock), 12+10*c.share, 1e-9)
		near(t, fmt.Sprint("temperature at ", clock), c.day.Temperature(clock), 10+20*c.share, 1e-9)
	}
	if d := day(t, nil, Night{}); !math.IsNaN(d.WBGT(0)) || !math.IsNaN(d.Temperature(0)) {
		t.Error("a day without hours has weather")
	}
}

// Between the nodes of ten minutes a bend is rounded off: the cubic through nodes on
// either side misses it by up to 0.45 of the steepest change of a step, by 200 000 random
// rows of hours 12 minutes apart and more; those of a day and the next may lie closer.
func TestBendsAreRoundedOff(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		d := drawDay(t)
		if len(d.hours) == 0 {
			return
		}
		steepest := 0.0 // °C a step
		for i, h := range d.hours {
			next := d.hours[(i+1)%len(d.hours)]
			gap := (next.Clock - h.Clock).Seconds()
			if i+1 == len(d.hours) { // over the night to the first
				if gap += dayLength; gap >= 0 && gap < 720 {
					return
				}
				gap = math.Max(dayStep, gap)
			}
			steepest = math.Max(steepest, dayStep/gap*math.Abs(next.Temperature-h.Temperature))
		}
		for _, h := range d.hours {
			near(t, "temperature on the hour", d.Temperature(h.Clock), h.Temperature, 0.451*steepest+1e-9)
		}
		at := drawClock(t, "at", -100, 100)
		if d.repeats {
			near(t, "a day later", d.WBGT(at+24*hourLong), d.WBGT(at), 1e-6)
		}
	})
}

// Shifted by nothing a day is the same to the last bit, and shifts add up.
func TestShifted(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		d, at := drawDay(t), drawClock(t, "at", -48, 72)
		same, err := d.Shifted(Shift{})
		if err != nil {
			t.Fatal(err)
		}
		if len(d.hours) == 0 {
			return
		}
		if same.WBGT(at) != d.WBGT(at) || same.Temperature(at) != d.Temperature(at) || same.Darkness(at) != d.Darkness(at) {
			t.Errorf("shifted by nothing: WBGT %g, before %g", same.WBGT(at), d.WBGT(at))
		}
		by := rapid.Float64Range(-5, 5).Draw(t, "by")
		once, err := d.Shifted(Shift{WBGT: by, Temperature: by})
		if err != nil {
			t.Fatal(err)
		}
		twice, err := once.Shifted(Shift{WBGT: by, Temperature: 1})
		if err != nil {
			t.Fatal(err)
		}
		near(t, "temperature", twice.Temperature(at), d.Temperature(at)+by+1, 1e-9)
		back, err := once.Shifted(Shift{WBGT: -by, Temperature: -by})
		if err != nil {
			t.Fatal(err)
		}
		near(t, "there and back", back.WBGT(at), d.WBGT(at), 1e-9)
	})
}

// What cannot be is refused with the hour's number.
func TestDayRefused(t *testing.T) {
	t.Parallel()
	good := Hour{Clock: hourLong, Temperature: 20, Humidity: 50}
	at := func(h Hour) []Hour { return []Hour{{Temperature: 18, Humidity: 60}, good, h} }
	bad := []Hour{
		{Clock: hourLong, Temperature: 20, Humidity: 50}, // not after the one before
		{Clock: 0, Temperature: 20, Humidity: 50},
		{Clock: 1001 * hourLong, Temperature: 20, Humidity: 50},
		{Clock: 2 * hourLong, Temperature: 51, Humidity: 50},
		{Clock: 2 * hourLong, Temperature: 20, Humidity: 101},
	}
	for _, v := range odd {
		h := good
		h.Clock = 2 * hourLong
		for _, number := range []*float64{&h.Temperature, &h.Humidity, &h.WBGT} {
			before := *number
			if *number = v; number == &h.Humidity || v != -1 && v != -1e-300 {
				bad = append(bad, h)
			}
			*number = before
		}
	}
	for _, h := range bad {
		if _, err := NewDay(at(h), Night{}); !errors.Is(err, ErrDay) || !strings.Contains(err.Error(), "hour 3") {
			t.Errorf("%+v: %v", h, err)
		}
	}
	for _, n := range []Night{
		{Factor: math.NaN()},
		{Factor: math.Inf(1)},
		{Factor: -1},
		{Factor: 0.29},
		{Factor: 1.51},
		{From: -1},
		{To: -1},
		{From: 25 * hourLong},
		{To: 24*hourLong + 1},
	} {
		if _, err := NewDay(nil, n); !errors.Is(err, ErrDay) || !strings.Contains(err.Error(), "night") {
			t.Errorf("%+v: %v", n, err)
		}
	}
}

// A shift that makes an hour impossible is refused.
func TestShiftRefused(t *testing.T) {
	t.Parallel()
	d := day(t, []Hour{{Temperature: 20, Humidity: 50}}, Night{})
	for _, v := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 1e300, 1000} {
		for _, s := range []Shift{{Temperature: v}, {Humidity: v}, {WBGT: v}} {
			if _, err := d.Shifted(s); !errors.Is(err, ErrDay) {
				t.Errorf("%+v: %v", s, err)
			}
		}
	}
}

// A Day that was not made by NewDay is no weather and no night, or refused: no panic.
func TestZeroDay(t *testing.T) {
	t.Parallel()
	defer func() {
		if r := recover(); r != nil {
			t.Errorf("panic: %v", r)
		}
	}()
	g := level(t, 10_000)
	in, err := NewIntegrator(g, Usual(12), Surroundings{Day: &Day{}})
	if err != nil {
		return
	}
	plain := solve(t, integrator(t, g, Usual(12), Surroundings{}), State{}, Demand{}).Clone()
	sameTraverse(t, "zero day", solve(t, in, State{}, Demand{}).Traverse, plain)
}

// The dark is a share between 0 and 1, 1/2 on its times where they are further apart than
// their edges, repeats every day and is smooth: an edge of half an hour changes by no
// more than 1/1200 a second (1.5/1800 by its cubic), the table's rounding aside.
func TestDarkness(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		n := Night{Factor: 0.9, From: drawClock(t, "from", 0, 24)}
		n.To = (n.From + drawClock(t, "dark", 0.5, 23.5)) % (24 * hourLong)
		checkDarkness(t, n)
	})
	for _, n := range []Night{
		{From: 21 * hourLong, To: 5 * hourLong},
		{From: hourLong, To: 5 * hourLong},
		{From: 0, To: 12 * hourLong},
		{From: 12 * hourLong, To: 24 * hourLong},
	} {
		checkDarkness(t, n)
	}
	for _, n := range []Night{
		{From: 23 * hourLong, To: 23*hourLong + 10*time.Minute},
		{From: 4*hourLong + 20*time.Minute, To: 4 * hourLong},
		{From: 0, To: 24 * hourLong},
		{From: 24 * hourLong, To: 0},
	} {
		if _, err := NewDay(nil, n); !errors.Is(err, ErrDay) {
			t.Errorf("%v to %v: %v", n.From, n.To, err)
		}
	}
}

func checkDarkness(t rapid.TB, n Night) {
	d := day(t, nil, n)
	before := d.Darkness(0)
	for s := 10; s <= 86_400; s += 10 {
		clock := time.Duration(s) * time.Second
		now := d.Darkness(clock)
		if !(now >= 0 && now <= 1) {
			t.Errorf("%v to %v: %.4f dark at %v", n.From, n.To, now, clock)
			return
		}
		if math.Abs(now-before) > 1.1*10.0/1200 {
			t.Errorf("%v to %v: from %.4f to %.4f in the 10 s before %v", n.From, n.To, before, now, clock)
			return
		}
		before = now
	}
	gap := math.Mod((n.To-n.From).Hours()+24, 24)
	if gap > 0.5 && gap < 23.5 {
		near(t, "at nightfall", d.Darkness(n.From), 0.5, 0.02)
		near(t, "at daybreak", d.Darkness(n.To+24*hourLong), 0.5, 0.02)
		near(t, "in the middle", d.Darkness(n.From+Seconds(1800*gap)), 1, 1e-9)
	}
}
