package follow

import "isoeffort.example/internal/page"

// sheet is the page that this package prints on.
type sheet struct{ page.Page }

// places prints rows whose first cell is a place.
func (t *sheet) places(rows [][]string) { t.Table(rows, page.Table{Gap: 2, Least: 8}) }
