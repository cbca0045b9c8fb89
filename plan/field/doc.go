// Package field plans for many runners on one course: a whole field in parallel, pace
// groups, and the latest times at which the field may pass each landmark.
//
// Each plans runner by runner, in order, and one runner's fault stops no other. Groups
// puts runners into the fastest group whose schedule they can follow. LatestPassages says
// until when a place may be passed for the later cutoffs still to be made.
//
// # Runners files
//
// Read reads the runners of a field from CSV, in UTF-8, one runner to a line. The first
// line names the columns, in any order and any case:
//
//	name          who runs; once only, whatever the case of its letters
//	hour_power    W/kg; may be empty where results is not
//	endurance     endurance exponent; empty: 0.10
//	fade          for an hour-equivalent of work; empty: 0.02
//	fade_shape    empty: 1
//	braking       empty: 1
//	economy       factor on the metabolic cost; empty: 1
//	fastest_walk  m/s; empty: 1.8
//	results       path of a results file (package effort/record) that the caller fits the
//	              numbers to; nothing is read here
//	goal          finish time to plan for, gun time; empty: the aim of the race
//	net_goal      the same as net time, from the start line; one of the two at most
//	share         of the effort budget to plan for, 0.001 to 1, instead of a time
//	start_delay   time from the gun to the start line; empty: that of the race
//	wave          from the first gun to the runner's own; empty: that of the race
//	note          anything
//
// The first must be there, and hour_power or results; the others may be missing. Other
// columns are not used, and a warning names them. Times are H:MM:SS, H:MM:SS.s or seconds;
// MM:SS is refused, because nobody can tell it from H:MM.
//
// As with results files, spreadsheet programs and hands may write them: a byte order mark,
// LF or CRLF, quoted fields, space around a field, blank lines, lines of separators only,
// and comments on lines that start with #. Where the header has more semicolons than
// commas, semicolons separate fields, and numbers may then have a decimal comma. But no
// field goes over several lines, so that a quote left open spoils one row and not the rest.
//
// # What it is not for
//
// No figure here says that somebody is fit to start or to go on: the race's officials,
// its medical team and the runner's doctor decide that.
package field
