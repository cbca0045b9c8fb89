package effort

import "testing"

// A slower solve each way, gaits chosen anew, must see the same slopes.
func TestFastestTimeSlopes(t *testing.T) {
	a := Athlete{HourPower: 11, Endurance: 0.1, Fade: 0.02, FadeShape: 1, Braking: 1}
	g, err := NewGround(profile(t, 80_000, 10, waves), 0)
	if err != nil {
		t.Fatal(err)
	}
	in, err := NewIntegrator(g, a, Surroundings{})
	if err != nil {
		t.Fatal(err)
	}
	moving, slope, err := in.FastestTime()
	if err != nil {
		t.Fatal(err)
	}
	t.Log(moving, slope, in.Sweeps())
}
