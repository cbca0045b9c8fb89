// Package plan makes an even-effort plan for a race: one relative intensity over the whole
// course, the gait for every stretch, and the times that follow.
//
// A plan prescribes what a runner should do; it is no forecast of what runners do, who
// mostly start too fast. It rests on the athlete's hour power, endurance exponent and
// fade alone. In races beyond four hours it holds back a little at first: the model sees
// a small cost in that, which the plan states, and no benefit; that opening too hard ruins
// races is outside of it.
//
// The package knows no file formats: package plan/write prints plans.
//
// It is not for: medical advice, heat and cold, or deciding whether somebody should
// start. Local rules, the race's medical team and doctors come first.
package plan
