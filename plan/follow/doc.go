// Package follow holds a plan against what happens: during the race, before it on paper
// for the race, and after it.
//
// From takes one passage or several, a place and a time, and says where the runner stands
// in time and in effort budget, where that leads, and which cutoffs are still safe.
// Standing.Rest makes the plan for what is left of the course. Paper prints three schedules
// side by side, and what to do when late, for those who carry no watch or trust none.
// Review holds a finished race, from a recording or from splits, against its plan.
//
// # What a time tells of effort
//
// The runner's times are known and the effort is not, so it is taken from the model: over
// each stretch the one relative intensity, spread as the plan spreads it, that takes the
// time observed in the plan's surroundings, planned stops left out. The gaits are the
// plan's where that intensity is within a tenth of the plan's, and those of the gait rule
// elsewhere: a runner much slower than planned walks more. Stretches last 20 minutes or
// more, which averages relative intensity before it is raised to its power, since noise
// alone would fill the budget otherwise; what goes on within them is not seen. [Our own.]
//
// So a passage as planned gives back the plan, and a race run as planned a debrief of
// zeros, both to the rounding of the times.
//
// The package does not know why somebody is late: a wrong turn, a bad stomach and a heavy
// leg look alike in a time. It is not for deciding whether a runner may go on: the
// race's officials and its medical team do that, and they come before every line here.
package follow
