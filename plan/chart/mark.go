package chart

import "math"

// A symbol marks a place.
type symbol int

const (
	placeSymbol symbol = iota
	stationSymbol
	topSymbol
	cutoffSymbol
	finishSymbol
	walkSymbol
	runSymbol
	climbSymbol
	actualSymbol
	planSymbol
	medianSymbol
)

// symbol draws one.
func (p *page) symbol(s symbol, x, y float64) {
	edge := pen{width: 0.7}
	switch s {
	case placeSymbol:
		p.area(white, edge, ring(x, y, 1.7)...)
	case stationSymbol:
		p.area(black, pen{}, ring(x, y, 2.3)...)
	case topSymbol:
		p.area(white, edge, spot{x - 2.8, y - 1.7}, spot{x + 2.8, y - 1.7}, spot{x, y + 3})
	case cutoffSymbol:
		p.area(white, pen{width: 0.9}, spot{x - 4.2, y}, spot{x, y - 4.2}, spot{x + 4.2, y}, spot{x, y + 4.2})
	case finishSymbol:
		p.box(black, edge, x-2.2, y-2.2, x+2.2, y+2.2)
	case walkSymbol:
		p.box(0.15, edge, x-5, y-2.5, x+5, y+2.5)
	case runSymbol:
		p.box(white, edge, x-5, y-2.5, x+5, y+2.5)
	case climbSymbol:
		p.box(ground, edge, x-5, y-2.5, x+5, y+2.5)
		p.hatch([]spot{{x - 5, y + 2.5}, {x + 5, y + 2.5}}, y-2.5)
	case actualSymbol, medianSymbol:
		p.line(pen{width: 1.4}, spot{x - 6, y}, spot{x + 6, y})
		if s == actualSymbol {
			p.area(black, pen{}, ring(x, y, 2)...)
		}
	case planSymbol:
		p.line(planPen, spot{x - 7, y}, spot{x + 7, y})
	}
}

// planPen draws the plan where other things are drawn against it.
var planPen = pen{width: 1, dash: []float64{5, 2.5}}

func ring(x, y, radius float64) []spot {
	const n = 16
	var round []spot
	for i := range n {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / n)
		round = append(round, spot{x + radius*cos, y + radius*sin})
	}
	return round
}

// A key is an entry of the legend.
type key struct {
	symbol symbol
	text   string
}

// legend writes what symbols mean, in lines at the foot.
func (p *page) legend(keys []key) {
	const indent, gap, line = 16.0, 12.0, 10.0
	var rows [][]key
	x := p.right + 1
	for _, k := range keys {
		w := indent + width(k.text, false, smallSize) + gap
		if x+w-gap > p.right {
			rows = append(rows, nil)
			x = p.left
		}
		rows[len(rows)-1] = append(rows[len(rows)-1], k)
		x += w
	}
	for i := len(rows) - 1; i >= 0; i-- {
		x := p.left
		for _, k := range rows[i] {
			p.symbol(k.symbol, x+6, p.bottom+4.3)
			text := clip(k.text, false, smallSize, p.right-x-indent)
			p.write(text, x+indent, p.bottom+2, 0, smallSize, false)
			x += indent + width(text, false, smallSize) + gap
		}
		p.bottom += line
	}
}
