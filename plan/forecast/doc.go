// Package forecast says what is likely on a race day, from draws of an athlete: quantiles
// of the time at each landmark, the probability of each cutoff and of a goal, and which
// number of the athlete the spread comes from.
//
// A forecast describes. A plan (package plan) prescribes, and a forecast is no advice: its
// runners start too fast as fields do (see Tilt) and spend the whole effort budget
// whatever comes. Nobody should pace by its times.
//
// Each draw is one athlete on one day, who goes by the relative intensity
//
//	ε(s) = ε̄ (1 + t (1 − 2s)),   s the share of the course's work done, t the pacing tilt,
//
// ε̄ such that the effort budget is spent at the finish. All moving times of that day are
// multiplied by exp(noise); the start delay and the stops are not.
//
// # Cutoffs
//
// Whoever is late at a cutoff is out of the race there. Place.Times counts everybody, as
// if no cutoff stopped them, and so is never narrowed by leaving out the slow;
// Place.Reached is the probability of getting there inside every cutoff before, and
// Place.InRace are the quantiles among those who do. The last are conditional: later
// places have fewer and faster runners in them.
//
// # What it is not for
//
// The spread is that of the draws: what the athlete's numbers rest on, the tilt and a
// day's noise. Weather that turns, illness, falls, a wrong way and giving up are outside
// of it, so that a probability of finishing is one of being fast enough and not of
// arriving. It is no medical advice and no reason to chase a cutoff: local rules, the
// race's medical team and doctors come first.
package forecast
