// Package say puts times, shares and counts into words: the same ones wherever a plan, a
// forecast or a debrief is printed.
package say
