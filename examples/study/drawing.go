package main

import (
	"fmt"
	"html"
	"html/template"
	"math"
	"strings"
)

// A drawing is axes and what is drawn between them, in black and greys.
type drawing struct {
	xLow, xTop, yLow, yTop float64
	parts                  strings.Builder
}

const (
	drawWidth, drawHeight           = 640.0, 330.0
	leftEdge, rightEdge             = 60.0, 620.0
	topEdge, bottomEdge, legendLine = 12.0, 280.0, 15.0
)

func newDrawing(xLow, xTop, yLow, yTop float64) *drawing {
	return &drawing{xLow: xLow, xTop: xTop, yLow: yLow, yTop: yTop}
}

func (d *drawing) x(v float64) float64 {
	return leftEdge + (v-d.xLow)/(d.xTop-d.xLow)*(rightEdge-leftEdge)
}

func (d *drawing) y(v float64) float64 {
	v = math.Max(d.yLow, math.Min(d.yTop, v))
	return bottomEdge - (v-d.yLow)/(d.yTop-d.yLow)*(bottomEdge-topEdge)
}

func (d *drawing) axes(xName, yName string, xs, ys []float64) {
	d.rule(leftEdge, bottomEdge, rightEdge, bottomEdge)
	d.rule(leftEdge, topEdge, leftEdge, bottomEdge)
	for _, v := range xs {
		d.rule(d.x(v), bottomEdge, d.x(v), bottomEdge+4)
		d.text(d.x(v), bottomEdge+17, "middle", fmt.Sprintf("%.3g", v))
	}
	for _, v := range ys {
		d.rule(leftEdge-4, d.y(v), leftEdge, d.y(v))
		d.text(leftEdge-7, d.y(v)+4, "end", fmt.Sprintf("%.3g", v))
	}
	d.text((leftEdge+rightEdge)/2, bottomEdge+36, "middle", xName)
	d.text(leftEdge+6, topEdge+2, "start", yName)
}

func (d *drawing) rule(x1, y1, x2, y2 float64) {
	fmt.Fprintf(&d.parts, `<path d="M%.1f %.1fL%.1f %.1f" stroke="#000" stroke-width=".8"/>`, x1, y1, x2, y2)
}

func (d *drawing) text(x, y float64, anchor, text string) {
	fmt.Fprintf(&d.parts, `<text x="%.1f" y="%.1f" text-anchor="%s">%s</text>`, x, y, anchor, html.EscapeString(text))
}

// styles tell lines apart without colour.
var styles = [...]string{
	`stroke-width="1"`, `stroke-width="1.2" stroke-dasharray="7 3"`, `stroke-width="1.4" stroke-dasharray="2 2"`,
	`stroke-width="2.4"`, `stroke-width="2" stroke-dasharray="9 3 2 3"`,
}

func style(k int) string {
	if k < 0 {
		return `stroke-width=".5"`
	}
	return styles[k%len(styles)]
}

func (d *drawing) line(xs, ys []float64, k int) {
	for i := range xs {
		c := "L"
		if i == 0 {
			c = `<path fill="none" stroke="#000" ` + style(k) + ` d="M`
		}
		fmt.Fprintf(&d.parts, "%s%.1f %.1f", c, d.x(xs[i]), d.y(ys[i]))
	}
	d.parts.WriteString(`"/>`)
}

// bar is a value with its ends.
func (d *drawing) bar(x, low, top, middle float64) {
	fmt.Fprintf(&d.parts, `<path d="M%.1f %.1fV%.1f" stroke="#999" stroke-width="1"/><circle cx="%.1f" cy="%.1f" r="1.3"/>`, d.x(x), d.y(low), d.y(top), d.x(x), d.y(middle))
}

// legend names the lines, above what is drawn or below it.
func (d *drawing) legend(names []string, below bool) {
	start := topEdge + 20
	if below {
		start = bottomEdge - legendLine*float64(len(names))
	}
	for k, name := range names {
		y := start + legendLine*float64(k)
		fmt.Fprintf(&d.parts, `<path d="M%.1f %.1fh34" stroke="#000" %s/>`, leftEdge+14, y, style(k))
		d.text(leftEdge+54, y+4, "start", name)
	}
}

func (d *drawing) svg() template.HTML {
	return template.HTML(fmt.Sprintf(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %g %g" font-family="sans-serif" font-size="11" role="img">%s</svg>`, drawWidth, drawHeight, d.parts.String()))
}

func ticks(top float64) []float64 { return ticksBetween(0, top) }

// ticksBetween are three to eight round values.
func ticksBetween(low, top float64) (list []float64) {
	step := math.Pow(10, math.Floor(math.Log10(top-low)))
	for (top-low)/step < 3 {
		step /= 2
	}
	for v := math.Ceil(low/step) * step; v <= top; v += step {
		list = append(list, math.Round(v/step)*step)
	}
	return list
}
