// Package fuel makes a table of food and drink from a plan: carbohydrate by time and place
// within published ranges for the duration and the intensity, carried and picked up at the
// aid stations, in bites small enough to keep down, and fluid as a range by heat within which
// thirst decides.
//
// Its rates are ranges for grown, healthy runners and no prescription. The package is not for
// diabetes, pregnancy, minors or any condition in which what somebody eats or drinks is a
// medical matter, and not for salt or caffeine. Show Table.Cautions wherever its figures are shown.
package fuel
