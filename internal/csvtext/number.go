package csvtext

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Number reads a decimal number, with a decimal comma too where that is allowed. It knows no
// hexadecimal and no grouped digits. The error says what the text is not.
func Number(s string, decimalComma bool) (float64, error) {
	if decimalComma && strings.Count(s, ",") == 1 && !strings.Contains(s, ".") {
		s = strings.Replace(s, ",", ".", 1)
	}
	v, err := strconv.ParseFloat(s, 64)
	switch {
	case math.IsNaN(v) || math.IsInf(v, 0):
		return 0, fmt.Errorf("%s is not a finite number", Quote(s))
	case err != nil || strings.ContainsAny(s, "xX_"):
		return 0, fmt.Errorf("%s is not a number", Quote(s))
	}
	return v, nil
}
