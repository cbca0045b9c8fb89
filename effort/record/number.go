package record

import "strconv"

// formatNumber writes the shortest decimal number that reads back as v.
func formatNumber(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
