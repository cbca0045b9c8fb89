package calibrate_test

import (
	"encoding/json"
	"math"
	"os"
	"testing"
	"time"

	"isoeffort.example/calibrate"
	"isoeffort.example/effort"
	"isoeffort.example/effort/record"
)

// The mode agrees with SciPy's to 4 digits on problems on level ground, where the model is
// its closed form: with normal errors, with heavy tails, and with a runner who changes.
// testdata/closed.py wrote the file. Standard errors are those of the Hessian with normal
// errors, to 2 %, second derivatives being differences in both; with heavy tails ours are
// not the Hessian's, on purpose, and must be no smaller.
func TestAgainstSciPy(t *testing.T) {
	t.Parallel()
	text, err := os.ReadFile("testdata/closed.json")
	if err != nil {
		t.Fatal(err)
	}
	var cases []struct {
		Name         string
		Tails, Drift float64
		Numbers, SE  [3]float64
	}
	if err := json.Unmarshal(text, &cases); err != nil {
		t.Fatal(err)
	}
	var results []record.Result
	for i, took := range []time.Duration{1200, 2520, 5760, 12900, 2900} {
		r := result([]float64{5000, 10_000, 21_097.5, 42_195, 10_000}[i], 0, took*time.Second)
		r.Date = day.Add(time.Duration(i) * time.Duration(365.25*12*float64(time.Hour)))
		results = append(results, r)
	}
	prior := calibrate.Recreational()
	prior[effort.FadeShape].LogSD, prior[effort.Braking].LogSD = 0, 0
	for _, c := range cases {
		o := calibrate.Options{Prior: prior, NoiseWeight: 1e9, Tails: c.Tails, Drift: c.Drift}
		if c.Tails == 0 {
			o.Tails = math.Inf(1)
		}
		e := fit(t, o, results...)
		for n, want := range c.Numbers {
			n := effort.Number(n)
			if off := e.Athlete.Get(n)/want - 1; math.Abs(off) > 1e-4 {
				t.Errorf("%s: %v %.6g, want %.6g", c.Name, n, e.Athlete.Get(n), want)
			}
			ratio := e.SE(n) / c.SE[n]
			if c.Tails == 0 && math.Abs(ratio-1) > 0.02 || ratio < 0.98 {
				t.Errorf("%s: standard error of the %v %.5f, want %.5f", c.Name, n, e.SE(n), c.SE[n])
			}
		}
	}
}
