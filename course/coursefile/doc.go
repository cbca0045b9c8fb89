// Package coursefile reads courses from GPX 1.0 and 1.1 files and from CSV profiles.
//
// A file is refused with an *Error, which says where and wraps a cause of this package
// or of package course, when a course cannot be told from it: malformed text, no track
// and no route, no elevation at all, a place that is missing or lies off the globe, a
// gap of over 20 km. What can be mended is mended, and each mending is a line of
// course.Course.Warnings: elevations missing in part, gaps of over 2 km, times that go
// back, waypoints that are left out.
//
// # GPX
//
// The course runs through all points of the tracks in file order, segments and tracks
// joined by straight lines; where no track has a point, through those of the routes.
// Elevations that are missing are interpolated over distance from their neighbours; at
// the two ends the nearest one holds. Times are not used; distances are those of
// course.Position.Distance, in the horizontal, and the course knows the direction in
// which it runs (course.Course.Direction).
//
// Waypoints become landmarks. Each stands at the place on the course nearest to it,
// between points too; one more than 500 m from the course is left out. Where the
// course comes by again (out and back, laps) a waypoint has several such places: all
// that are less than 25 m farther from it than the nearest, 200 m or more apart along
// the course. The places are then chosen so that as many waypoints as possible stand in
// file order, each beyond the one before; a waypoint that does not fit into that order
// gets the first of its places. A waypoint without a name is called by its
// description, comment, symbol or type, and left out where it has none of them.
//
// Its kind comes from its type or, failing that, its symbol: course.Station where the
// text holds "station", "water", "food", "control" or the word "aid"; course.Top where
// it holds "summit", "peak", "climb", "hill" or the word "top". A waterfall is no
// station.
//
// # CSV
//
// The first line names the columns, among them distance_m and elevation_m: metres from
// the start, not decreasing, and metres above sea level. Decimal point, comma between
// fields, UTF-8. An empty elevation is a missing one. There are no positions in it, so
// the course does not know in which direction it runs.
package coursefile
