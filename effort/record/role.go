package record

import "fmt"

// Role says what a result is for in a calibration that is checked against results it
// did not see.
type Role int

// The roles. Their texts in a file are empty, "fit" and "predict".
const (
	AnyRole Role = iota // not said: the caller decides
	Fit                 // the athlete is fitted to it
	Predict             // held back, to be predicted
)

// roles are the texts of the roles, in their order.
var roles = [...]string{AnyRole: "", Fit: "fit", Predict: "predict"}

// String returns the role as a results file has it.
func (r Role) String() string {
	if r.known() {
		return roles[r]
	}
	return fmt.Sprintf("Role(%d)", int(r))
}

func (r Role) known() bool { return r >= 0 && int(r) < len(roles) }

func parseRole(s string) (Role, error) {
	for r, text := range roles {
		if s == text {
			return Role(r), nil
		}
	}
	return AnyRole, fmt.Errorf("%w: %s is neither fit nor predict nor empty", ErrRole, quote(s))
}
