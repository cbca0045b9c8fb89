package chart

import "math"

// lineHeight is that of a table's lines, pt.
const lineHeight = smallSize * 1.22

// A column of a table. The one of no width takes what the others leave.
type column struct {
	head  string
	width float64
	right bool // aligned to the right
}

// A table is set in several blocks side by side.
type table struct {
	columns []column
	rows    [][]string
	least   float64 // width of a block, pt
}

// blocks returns how many stand side by side in a width.
func (t table) blocks(width float64) int { return max(1, int(width/t.least)) }

// height returns that of the table in a width, with its heading.
func (t table) height(width float64) float64 {
	if len(t.rows) == 0 {
		return 0
	}
	return lineHeight*(1+math.Ceil(float64(len(t.rows))/float64(t.blocks(width)))) + 4
}

// fits returns how many rows have room in a width and height.
func (t table) fits(width, height float64) int {
	return max(0, int((height-4)/lineHeight-1)) * t.blocks(width)
}

// table writes a table at the foot of the page.
func (p *page) table(t table) {
	if len(t.rows) == 0 {
		return
	}
	const gap = 16.0
	n := t.blocks(p.right - p.left)
	high := t.height(p.right - p.left)
	wide := (p.right - p.left - gap*float64(n-1)) / float64(n)
	each := (len(t.rows) + n - 1) / n
	top := p.bottom + high
	for b := range n {
		rows := t.rows[min(b*each, len(t.rows)):min((b+1)*each, len(t.rows))]
		if len(rows) > 0 {
			p.block(t.columns, rows, p.left+float64(b)*(wide+gap), top, wide)
		}
	}
	p.bottom = top + 4
}

func (p *page) block(columns []column, rows [][]string, x, top, wide float64) {
	free := wide
	for _, c := range columns {
		free -= c.width
	}
	y := top - lineHeight
	p.line(pen{width: 0.5}, spot{x, y - 2}, spot{x + wide, y - 2})
	for i, c := range columns {
		w := c.width
		if w == 0 {
			w = free
		}
		p.cell(c, c.head, x, y, w, true)
		for k, row := range rows {
			p.cell(c, row[i], x, y-1.5-lineHeight*float64(k+1), w, false)
		}
		x += w
	}
}

func (p *page) cell(c column, s string, x, y, w float64, strong bool) {
	s = clip(s, strong, smallSize, w-4)
	if c.right {
		p.write(s, x+w-2, y, 1, smallSize, strong)
		return
	}
	p.write(s, x+1, y, 0, smallSize, strong)
}
