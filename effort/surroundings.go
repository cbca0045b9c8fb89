package effort

import (
	"errors"
	"fmt"
)

// Surroundings are what the race's place and day add to the ground. The zero value adds
// nothing.
type Surroundings struct {
	// Drag is the air's drag coefficient in J s² m⁻³ kg⁻¹, as in AirPower. 0 is no air.
	Drag float64

	// HeadWind is the wind's speed in m/s against the runner, negative from behind.
	HeadWind float64
}

// ErrSurroundings is wrapped by the error for surroundings out of range.
var ErrSurroundings = errors.New("surroundings out of range")

// Check returns an error that wraps ErrSurroundings if a number is out of range.
func (s Surroundings) Check() error {
	if !(s.Drag >= 0 && s.Drag <= 0.1) {
		return fmt.Errorf("effort: %w: drag coefficient %g is not within 0 to 0.1", ErrSurroundings, s.Drag)
	}
	if !(s.HeadWind >= -15 && s.HeadWind <= 30) {
		return fmt.Errorf("effort: %w: head wind %g m/s is not within -15 to 30 m/s", ErrSurroundings, s.HeadWind)
	}
	return nil
}
