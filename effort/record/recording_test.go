package record_test

import (
	"errors"
	"math"
	"testing"
	"time"

	"isoeffort.example/effort/record"
)

var gun = time.Date(2026, 5, 1, 8, 0, 0, 0, time.UTC)

// jog makes fixes each second: 3 m/s for 20 minutes, two minutes of standing in which the
// receiver wanders by 0.1 m/s, a gap of 100 s at 3 m/s, and 2 m/s for ten minutes.
func jog() (fixes []record.Fix) {
	at, now := 0.0, gun
	step := func(seconds int, speed float64, every int) {
		for range seconds / every {
			at += speed * float64(every)
			now = now.Add(time.Duration(every) * time.Second)
			fixes = append(fixes, record.Fix{Time: now, Distance: at})
		}
	}
	fixes = append(fixes, record.Fix{Time: gun})
	step(1200, 3, 1)
	step(120, 0.1, 1)
	step(100, 3, 100)
	step(600, 2, 1)
	return fixes
}

// The halt is found to a few seconds, with its wandering out of the distance, and the gap
// is run through.
func TestReduce(t *testing.T) {
	t.Parallel()
	r, err := record.Reduce(jog(), record.RecordingOptions{})
	if err != nil {
		t.Fatal(err)
	}
	if len(r.Halts) != 1 || math.Abs(r.Halts[0].Took.Seconds()-120) > 3 || math.Abs(r.Halts[0].Distance-3600) > 10 {
		t.Errorf("halts %+v", r.Halts)
	}
	if len(r.Gaps) != 1 || r.Gaps[0].Took != 100*time.Second {
		t.Errorf("gaps %+v", r.Gaps)
	}
	if math.Abs(r.Length-(3600+300+1200)) > 10 || r.Elapsed != 2020*time.Second || r.Moving()+r.Stopped() != r.Elapsed {
		t.Errorf("%.1f m in %v, moving %v", r.Length, r.Elapsed, r.Moving())
	}
	for i, v := range r.Speed(5 * time.Minute) {
		want := [...]float64{3, 3, 3, 3, 100.0/300*3 + 200.0/300*2, 2}[i]
		if math.Abs(v-want) > 0.05 {
			t.Errorf("speed %d is %.3f, want %.3f", i, v, want)
		}
	}
	if at := r.Place(r.At(2000)); math.Abs(at-2000) > 1e-6 {
		t.Errorf("place %.6f", at)
	}
}

// A recording as a result has its stops told where they were.
func TestRecordingAsResult(t *testing.T) {
	t.Parallel()
	r, err := record.Reduce(jog(), record.RecordingOptions{})
	if err != nil {
		t.Fatal(err)
	}
	result, err := r.Result(nil, 1000)
	if err != nil {
		t.Fatal(err)
	}
	if len(result.Splits) != 4 || result.Stopped != r.Stopped() {
		t.Fatalf("%+v", result)
	}
	if s := result.Splits[2]; s.Stopped != 0 || math.Abs(s.Elapsed-s.Distance/3) > 3 {
		t.Errorf("before the halt %+v", s)
	}
	if s := result.Splits[3]; s.Stopped != result.Stopped.Seconds() {
		t.Errorf("after the halt %+v", s)
	}
}

func TestReduceRefuses(t *testing.T) {
	t.Parallel()
	for name, spoil := range map[string]func(f []record.Fix) []record.Fix{
		"few":         func(f []record.Fix) []record.Fix { return f[:5] },
		"back":        func(f []record.Fix) []record.Fix { f[9].Distance = 0; return f },
		"time":        func(f []record.Fix) []record.Fix { f[9].Time = f[8].Time; return f },
		"not finite":  func(f []record.Fix) []record.Fix { f[9].Distance = math.NaN(); return f },
		"nothing run": func(f []record.Fix) []record.Fix { return f[1202:1310] },
	} {
		if r, err := record.Reduce(spoil(jog()), record.RecordingOptions{}); !errors.Is(err, record.ErrRecording) {
			t.Errorf("%s: %+v, %v", name, r, err)
		}
	}
	if _, err := record.Reduce(jog(), record.RecordingOptions{HaltSpeed: -1}); !errors.Is(err, record.ErrTime) {
		t.Error(err)
	}
}
