package cohort

import (
	"context"
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"
)

// The solver, its restricted likelihood and its shrinkage agree with lme4's on a linear
// problem with athletes, courses and editions crossed: to four digits of each spread and
// fixed effect. Course effects are held to 1e-4 of ln T, the fourth digit after the point.
func TestCrossedEffectsAsLme4(t *testing.T) {
	t.Parallel()
	if testing.Short() {
		t.Skip("takes seconds, and minutes under the race detector")
	}
	p := crossed(t)
	for range 1500 {
		before := p.spreads
		if err := p.solve(context.Background(), 1, 0); err != nil {
			t.Fatal(err)
		}
		if err := p.weigh(context.Background(), 1, false); err != nil {
			t.Fatal(err)
		}
		if err := p.search(context.Background(), 1, searchSteps); err != nil {
			t.Fatal(err)
		}
		if p.spreads.far(&before) < 1e-8 {
			break
		}
	}
	want := map[string]float64{}
	for _, r := range readTable(t, "testdata/crossed-lme4.csv") {
		want[r[0]] = parse(t, r[1])
	}
	s := p.spreads
	for name, got := range map[string]float64{
		"athlete": s.root[0], "course": s.course, "edition": s.edition, "noise": s.noise,
		"intercept": p.effects[0], "slope": p.effects[1],
	} {
		if w := want[name]; math.Abs(got/w-1) > 1e-4 {
			t.Errorf("%s: %.6f, lme4 %.6f", name, got, w)
		}
	}
	for c, in := range p.courseIn {
		name := "course " + strconv.Itoa(in)
		if got, w := p.effects[p.nx()+c], want[name]; math.Abs(got-w) > 1e-4 {
			t.Errorf("%s: %.6f, lme4 %.6f", name, got, w)
		}
	}
}

// crossed is the linear problem of testdata/crossed.R, all but its four spreads held.
func crossed(t *testing.T) *problem {
	t.Helper()
	s := usualSpreads()
	s.nu, s.courseNu, s.editionNu = math.Inf(1), math.Inf(1), math.Inf(1)
	s.noDrift, s.noAgain, s.noSlopes, s.firmness, s.growth = true, true, true, 0, 0
	s.drift, s.again = 1e-6, 1e-6
	tab := &table{}
	rows := readTable(t, "testdata/crossed.csv")
	for _, r := range rows {
		tab.rows = append(tab.rows, row{athlete: int(parse(t, r[0])), course: int(parse(t, r[1])), edition: int(parse(t, r[2]))})
	}
	p := newProblem(tab, func(*row) bool { return true }, s)
	p.prepare(2)
	for i := range p.obs {
		r := rows[p.obs[i].row]
		p.obs[i].s[0], p.obs[i].x, p.obs[i].y = 1, []float64{1, parse(t, r[3])}, parse(t, r[4])
	}
	return p
}

func readTable(t *testing.T, name string) [][]string {
	t.Helper()
	f, err := os.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return rows[1:]
}

func parse(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}
