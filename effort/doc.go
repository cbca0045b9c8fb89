// Package effort turns ground into time: what a metre of climb, descent or flat costs a
// runner, what a runner can give as the hours pass, and the integrator that brings the
// two together over a course at an intensity, for a time, or for the best that the
// runner's effort budget allows.
//
// Units are SI and per kilogram of body mass: power in W/kg, energy in J/kg, the energy
// cost of locomotion in J/(kg m) along the slope. A gradient is rise over horizontal
// run. Energies are net, above standing, unless said otherwise.
//
// # The model
//
// Effort power is metabolic power plus braking (see BrakingCost); it is what pacing
// shares out. An Athlete's capability starts at the hour power and fades with the work
// done. Relative intensity is effort power over present capability. A race may spend
//
//	B = (1/3600 s) ∫ ε^(1/k) dt = 1
//
// of effort budget, ε being the relative intensity and k the endurance exponent. For a
// constant ε this is the power law ε = (T/3600 s)^−k, which is Riegel's
// T2 = T1 (D2/D1)^b with b = 1/(1−k) as long as nothing fades (Riegel 1981, American
// Scientist 69:285). Within this model even effort, one relative intensity from start
// to finish, is the fastest way to spend a budget wherever cost does not depend on
// speed: capability is then a function of place alone, and minimising ∫ dw/(ε cap)
// under a bound on ∫ ε^(n−1) dw/cap, w the work and n = 1/k, gives ε the same at
// every point, whatever the hills, whatever the fade and whatever the altitude. Wind and
// the hours of a day bend that by 1 s/h at most where all is run; walks bend it by up to
// 22 s/h for someone who walks all day (see Pace.Ease).
//
// # Pieces
//
// A Curve is what a gait costs; Curves choose others than the model's. A Slope answers
// for one gradient: speed, gait, transition. A Ground is a course cut into cells, an
// Integrator moves an Athlete over it in Surroundings, Solve meets a Demand, and Fastest
// gives with the fastest time its derivative by every Lever. The subpackages hold what
// can be had for itself: weather, duration, energy, curve, treadmill, efforttest.
//
// # What it is not for
//
// The curves come from healthy adults, mostly well-trained men, on treadmills and good
// ground. Nothing here knows about illness, injury, heat strain or morale, and no figure
// of it is medical advice.
package effort
