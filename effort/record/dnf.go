package record

import (
	"fmt"
	"strings"
)

// parseDNF reads whether a race was not finished.
func parseDNF(s string) (bool, error) {
	switch strings.ToLower(s) {
	case "", "no":
		return false, nil
	case "yes":
		return true, nil
	}
	return false, fmt.Errorf("%w: dnf %s is not yes, no or empty", ErrRole, quote(s))
}

func formatDNF(dnf bool) string {
	if dnf {
		return "yes"
	}
	return ""
}
