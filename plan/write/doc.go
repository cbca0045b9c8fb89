// Package write prints plans: as text for an 80-column page, as CSV, and as JSON.
//
// Times are rounded once, on the running total, so the parts printed add up to the
// totals printed: whole seconds in the text, milliseconds in CSV and JSON.
package write
