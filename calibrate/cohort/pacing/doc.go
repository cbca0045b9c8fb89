// Package pacing finds how runners of a field spend a race, whatever their time: the fade,
// its shape, the braking and the pacing tilt under which the shares of the finish time at
// their splits come out most likely, shared by all and then by groups of speed. Given a
// finish time it foretells the splits.
//
// # Model
//
// Package effort's, run for a runner whose fresh hour power makes the finish time the
// best that the budget allows, at even effort but for the tilt. The errors of the shares
// at splits are taken as Laplace's, rounded at nothing, each runner counting once.
// [Our own.] Groups are cut by that hour power at the usual numbers; each has numbers of
// its own, held by those shared, and between the groups' middles they run straight. The
// endurance exponent is given: splits hardly tell of it.
//
// Tilt and fade of a field are what runners do, mispacing and all: they describe. Do not
// plan with them.
package pacing
