// Package duration tells how long an effort can be held: the power that a time to
// exhaustion allows, the time that an amount of work takes, and on level ground the time
// at a distance and the distance in a time.
//
// A Curve is the relation between power and time to exhaustion. Four are given, from
// papers or from the model of package effort:
//
//	PowerLaw     a power law of time; Riegel's prediction
//	Fading       the model's power law with its fade, on uniform running ground
//	Hyperbolic   critical power and a reserve of work above it
//	Logarithmic  power falling with the logarithm of time, and a break at about 6 min
//
// They agree where they were fitted, mostly between 3 and 60 minutes, and part beyond:
// the Example of Curve shows by how much. Power is effort power in W/kg, net of
// standing, and a mean over the effort; work is power times time, in J/kg.
//
// # How to read a curve
//
// Within its span (see Analytic) every curve of this package has a Power that is
// positive and falls with time, and work that grows with it. So each work has one time
// and each time one work. Outside the span, for a time that is not positive and for
// impossible parameters Power is NaN. Within the span but outside the times
// for which a curve was made (see About), Power extrapolates and does not say so.
//
// The functions of this package allocate no memory unless they fail. Putting a curve
// into a Curve does: do it once, not in a loop. Curves are values, and may be shared
// between goroutines.
//
// # What it is not for
//
// The curves describe healthy, trained people who pace themselves evenly, on level
// ground or what costs the same all the way. They know nothing of hills, air, heat,
// sleep, food, injury or illness: package effort plans a race. A time to exhaustion is a
// limit and no advice to go there.
package duration
