package chart_test

import (
	"bytes"
	"encoding/xml"
	"io"
	"math"
	"strconv"
	"strings"
	"testing"
	"unicode"

	"isoeffort.example/plan"
	"isoeffort.example/plan/chart"
)

// tb is what *testing.T and *rapid.T share.
type tb interface {
	Helper()
	Errorf(format string, args ...any)
	Fatalf(format string, args ...any)
	Fatal(args ...any)
}

// A label is a text of an SVG with its box in points, y downwards.
type label struct {
	text                 string
	x0, x1, top, foot, y float64
	size                 float64
}

// Extents of Liberation Sans above and below the base line, in sizes, from its table hhea:
// 1854 and 434 of 2048 units.
const ascent, descent = 0.905, 0.212

// drawing is what an SVG holds.
type drawing struct {
	width, height float64
	labels        []label
	spots         [][2]float64 // of all paths
}

// parse reads an SVG of this package and fails the test if it is not well formed.
func parse(t tb, svg []byte) drawing {
	t.Helper()
	var d drawing
	dec := xml.NewDecoder(bytes.NewReader(svg))
	for {
		tok, err := dec.Token()
		if err == io.EOF {
			return d
		}
		if err != nil {
			t.Fatalf("not well formed: %v", err)
		}
		e, ok := tok.(xml.StartElement)
		if !ok {
			continue
		}
		a := map[string]string{}
		for _, attr := range e.Attr {
			a[attr.Name.Local] = attr.Value
		}
		switch e.Name.Local {
		case "svg":
			f := strings.Fields(a["viewBox"])
			d.width, d.height = number(t, f[2]), number(t, f[3])
		case "path":
			d.spots = append(d.spots, spotsOf(t, a["d"])...)
		case "text":
			text, err := dec.Token()
			if err != nil {
				t.Fatal(err)
			}
			x, y, size := number(t, a["x"]), number(t, a["y"]), number(t, a["font-size"])
			d.labels = append(d.labels, label{
				string(text.(xml.CharData)), x, x + number(t, a["textLength"]), y - ascent*size, y + descent*size, y, size,
			})
		}
	}
}

func number(t tb, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
		t.Fatalf("not a number: %q", s)
	}
	return v
}

func spotsOf(t tb, path string) [][2]float64 {
	t.Helper()
	var spots [][2]float64
	for _, s := range strings.FieldsFunc(path, func(r rune) bool { return r == 'M' || r == 'L' || r == 'Z' }) {
		x, y, ok := strings.Cut(s, " ")
		if !ok {
			t.Fatalf("path %q", s)
		}
		spots = append(spots, [2]float64{number(t, x), number(t, y)})
	}
	return spots
}

// checkLaws fails the test unless all of a figure lies on its paper, no letter is under
// 7 pt and no two texts overlap.
func checkLaws(t tb, f *chart.Figure) drawing {
	t.Helper()
	var b bytes.Buffer
	if err := f.SVG(&b); err != nil {
		t.Fatal(err)
	}
	d := parse(t, b.Bytes())
	const rounding = 0.02 // pt: two coordinates to 0.01
	for i, l := range d.labels {
		if strings.ContainsFunc(l.text, func(r rune) bool { return unicode.IsControl(r) || r == unicode.ReplacementChar }) {
			t.Errorf("%q has letters that no font has", l.text)
		}
		if l.size < 7 {
			t.Errorf("%q is set in %g pt", l.text, l.size)
		}
		if l.x0 < 0 || l.x1 > d.width || l.top < 0 || l.foot > d.height {
			t.Errorf("%q leaves the paper: %.1f to %.1f of %.1f, %.1f to %.1f of %.1f", l.text, l.x0, l.x1, d.width, l.top, l.foot, d.height)
		}
		for _, o := range d.labels[:i] {
			if l.x0+rounding < o.x1 && o.x0+rounding < l.x1 && l.top+rounding < o.foot && o.top+rounding < l.foot {
				t.Errorf("%q (%.1f-%.1f, %.1f-%.1f) overlaps %q (%.1f-%.1f, %.1f-%.1f)",
					l.text, l.x0, l.x1, l.top, l.foot, o.text, o.x0, o.x1, o.top, o.foot)
			}
		}
	}
	for _, s := range d.spots {
		if s[0] < 0 || s[0] > d.width || s[1] < 0 || s[1] > d.height {
			t.Errorf("a line goes to %v, off the paper of %.1f by %.1f", s, d.width, d.height)
			break
		}
	}
	return d
}

// figures draws all three of a plan.
func figures(t tb, p *plan.Plan, o chart.Options) []*chart.Figure {
	t.Helper()
	var list []*chart.Figure
	for _, draw := range []func() (*chart.Figure, error){
		func() (*chart.Figure, error) { return chart.Profile(p, o) },
		func() (*chart.Figure, error) { return chart.Against(p, actual(p), o) },
		func() (*chart.Figure, error) { return chart.Fan(forecast(p), p, o) },
		func() (*chart.Figure, error) { return chart.Fan(forecast(p), nil, o) },
	} {
		f, err := draw()
		if err != nil {
			t.Fatal(err)
		}
		list = append(list, f)
	}
	return list
}

func TestLaws(t *testing.T) {
	t.Parallel()
	sizes := []chart.Options{
		{},
		{Imperial: true},
		{Width: chart.MinWidth, Height: chart.MinHeight},
		{Width: 148, Height: 210},
		{Width: 297, Height: 210, Imperial: true},
		{Width: 420, Height: 110},
	}
	runners := runners
	if testing.Short() {
		sizes, runners = sizes[1:3], runners[2:3]
	}
	for _, s := range scenes(t) {
		for _, r := range runners {
			t.Run(s.name+"/"+r.name, func(t *testing.T) {
				t.Parallel()
				p := planFor(t, s, r)
				for _, o := range sizes {
					for i, f := range figures(t, p, o) {
						t.Logf("figure %d, %g by %g mm", i, o.Width, o.Height)
						checkLaws(t, f)
					}
				}
			})
		}
	}
}
