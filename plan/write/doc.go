// Package write prints plans: as text for an 80-column page, as CSV, as JSON with a
// published schema, and as a card to fold, in HTML.
//
// Times are rounded once, on the running total, so the parts printed add up to the
// totals printed: whole seconds in the text, milliseconds in CSV and JSON.
package write
