package record

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// parseNumber reads a decimal number, with a decimal comma too where that is allowed.
// It knows no hexadecimal and no grouped digits.
func parseNumber(s string, decimalComma bool) (float64, error) {
	if decimalComma && strings.Count(s, ",") == 1 && !strings.Contains(s, ".") {
		s = strings.Replace(s, ",", ".", 1)
	}
	v, err := strconv.ParseFloat(s, 64)
	switch {
	case math.IsNaN(v) || math.IsInf(v, 0):
		return 0, fmt.Errorf("%s is not a finite number", quote(s))
	case err != nil || strings.ContainsAny(s, "xX_"):
		return 0, fmt.Errorf("%s is not a number", quote(s))
	}
	return v, nil
}

// formatNumber writes the shortest decimal number that reads back as v.
func formatNumber(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
