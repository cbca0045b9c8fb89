// Package record holds what a runner did: the results of past races, as values and as
// files. It is the one reader of results files, so that every program takes the same
// ones, and refuses the same ones in the same words.
//
// # Results files
//
// A results file is CSV after RFC 4180, in UTF-8, one result to a row. Its first row
// names the columns, in any order and any case:
//
//	distance_m  horizontal length of the course, m; may be empty where gpx is not
//	time        H:MM:SS, H:MM:SS.s or seconds as a decimal number
//	date        2006-01-02 (midnight UTC is kept) or an RFC 3339 time with its zone
//	ascent_m    metres climbed; empty: 0
//	descent_m   metres lost; empty: equal to ascent_m
//	runner      who ran
//	race        the event
//	course      the ground, where several races share it or one changed it
//	gpx         path of a GPX file of the course, relative to the results file
//	role        fit, predict or empty; see Role
//	note        anything
//	dnf         yes for a race not finished: distance, ascent, descent and time are
//	            then those of the place reached
//
// The first three must be there, the others may be missing. Other columns are not used,
// and a warning names them. MM:SS is refused, because nobody can tell it from H:MM:
// forty minutes are 0:40:00 or 2400.
//
// Spreadsheet programs and hands write files of many kinds, and these are all taken: a
// byte order mark, LF or CRLF at the ends of lines, quoted fields, space around a
// field, blank lines, rows of separators only, and lines that start with #, which are
// comments. Where the header has more semicolons than commas, semicolons separate
// fields, and numbers may then have a decimal comma as well as a decimal point. No
// file may group the digits of a number: neither sign can be told from a decimal one.
//
// # Refusals
//
// What cannot be right is refused with the line it stands on, never mended in silence:
// see Result.Check. What can be right but seldom is comes as a warning.
//
// The package opens no files and reads no GPX: the caller does, and sets Result.Ground.
package record
