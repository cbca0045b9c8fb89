package efforttest_test

import (
	"strings"
	"testing"

	"isoeffort.example/effort"
	"isoeffort.example/effort/efforttest"
)

// sink keeps what a curve allocates from being optimised away.
var sink []float64

func wasteful(v, i float64) float64 {
	sink = []float64{lawful(v, i)}
	return sink[0]
}

// The tests of this file are not parallel, because of Check.

func TestCheckSaysWhatIsBroken(t *testing.T) {
	for _, c := range []struct {
		curve effort.Curve
		want  string // the law, "" for none
	}{
		{function(lawful), ""},
		{function(wasteful), string(efforttest.NoAllocation)},
		{parts{lawful, func(v float64) float64 { return 0 * wasteful(v, 0) }, slope}, string(efforttest.NoAllocation)},
		{function(func(v, i float64) float64 { return lawful(v, i) - 0.1 }), string(efforttest.Positive)},
		{function(func(float64, float64) float64 { panic("always") }), string(efforttest.NoPanic)},
		{nil, string(efforttest.GoodDomain)},
	} {
		var said recorder
		efforttest.Check(&said, c.curve, domain)
		if c.want == "" && len(said) == 0 {
			continue
		}
		if len(said) != 1 || c.want == "" || !strings.Contains(said[0], ": "+c.want+": at") {
			t.Errorf("Check said %q, want the law %q", said, c.want)
		}
	}
}

// The curves of package effort, over the ranges that they state.
func TestCurvesOfTheModel(t *testing.T) {
	run, walk, least := effort.MinettiRunning{}, effort.LooneyWalking{}, effort.MinettiWalking{}
	efforttest.Check(t, run, efforttest.Domain{Gradient: run.About().Gradient, Speed: run.About().Speed})
	efforttest.Check(t, walk, efforttest.Domain{Gradient: walk.About().Gradient, Speed: walk.About().Speed})
	efforttest.Check(t, least, efforttest.Domain{Gradient: least.About().Gradient, Speed: least.About().Speed})
}

// The curve of the Example, tested as its author would.
func TestOwnCurve(t *testing.T) {
	efforttest.Check(t, Own{}, efforttest.Domain{Gradient: [2]float64{-0.2, 0.5}, Speed: [2]float64{0.5, 6}})
}
