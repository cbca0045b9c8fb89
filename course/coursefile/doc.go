// Package coursefile reads courses from GPX 1.0 and 1.1 files, from GeoJSON (RFC 7946)
// and from CSV profiles, and lists of landmarks from CSV; it writes GPX 1.1, GeoJSON and
// both kinds of CSV. What it reads may be packed by gzip.
//
// Open reads a file to a course at once. A Recording, which ReadRecording reads from GPX
// and GeoJSON, is what the file holds before a course is made of it: tracks to choose
// from, waypoints, times. WriteGPX and WriteGeoJSON write it.
//
// A file is refused with an *Error, which says where and wraps a cause of this package
// or of package course, when a course cannot be told from it: malformed text, no track
// and no route, no elevation at all, a place that is missing or lies off the globe, a
// gap of over 20 km. A cause that is the whole file's has the line to look at: that where
// the track starts that has no elevation, that at which it gets too long, the last one of
// a file in which something is missing. Only a file that was not read, for its name or an
// error of the operating system, has none. What can be mended is mended, and each mending is a line of
// course.Course.Warnings: elevations missing in part, gaps of over 2 km, times that go
// back, waypoints that are left out.
//
// Nothing is read beyond the limits of Options, unpacked or not. Points are gathered as
// they come by, so that the memory needed is a few times the size of the file and not
// that of a tree of it.
//
// # Tracks
//
// The course runs through all points of the tracks in file order, segments and tracks
// joined by straight lines; where no track has a point, through those of the routes.
// Options.Track and TrackName choose otherwise. Where tracks are joined that may be
// alternatives or separate days, a warning says why and lists them to choose from: one
// starts over 500 m from the end of the one before or over 4 h after it, or over half of
// it runs on ground of earlier ones.
//
// Elevations that are missing are interpolated over distance from their neighbours; at
// the two ends the nearest one holds. With Options.Clean they are given to package
// course/elevation as missing. Times are not used; distances are those of
// course.Position.Distance, in the horizontal, and the course knows the direction in
// which it runs (course.Course.Direction).
//
// # Waypoints
//
// Waypoints become landmarks. Each stands at the place on the course nearest to it,
// between points too; one more than 500 m from the course is left out. Where the
// course comes by again (out and back, laps) a waypoint has several such places: all
// that are less than 25 m farther from it than the nearest, 200 m or more apart along
// the course. The places are then chosen so that as many waypoints as possible stand in
// file order, each beyond the one before; a waypoint that does not fit into that order
// gets the first of its places. Where Options.Landmarks states the distance of that name,
// it is the place nearest to it. A waypoint without a name is called by its
// description, comment, symbol or type, and left out where it has none of them.
//
// Its kind comes from its type or, failing that, its symbol: course.Station where the
// text holds "station", "water", "food", "control" or the word "aid"; course.Top where
// it holds "summit", "peak", "climb", "hill" or the word "top". A waterfall is no
// station.
//
// # GPX
//
// Elements outside the name space of the root, and those that are not needed, are passed
// over, whatever is in them. A point of a track or a waypoint that cannot be right fails
// the file. A point of a route does where there is no track; else the route is left out
// with a warning.
//
// # GeoJSON
//
// LineStrings and MultiLineStrings are tracks, Points and MultiPoints are waypoints, on
// their own, in Features or in collections; other geometries are left out with a
// warning. The third number of a position is the elevation; one of two numbers has none.
// Of the properties are read: name (or title) and desc (or description) of both; cmt,
// sym, type and time of waypoints, which mean what the elements of GPX of these names
// mean; and of a line kind, which is "route" for a Track.Route, and times, RFC 3339
// times or null, one for each position in the order of the coordinates. GeoJSON itself
// knows no times: that member is ours. The collection may have a name and a desc too.
//
// A LineString must have two positions, a segment of a track need not: one whose points
// are all the same, if only one, is written with that position once more, and read with
// one fewer.
//
// # CSV
//
// Decimal point, comma between fields, UTF-8; the first line names the columns, which
// stand in any order and among others. A profile has distance_m and elevation_m: metres
// from the start, not decreasing, and metres above sea level. An empty elevation is a
// missing one. There are no positions in it, so the course does not know in which
// direction it runs.
//
// A list of landmarks has name and distance_m, metres from the start of the course as
// measured, and may have kind (place, station, top; a place if empty), cutoff, note and
// elevation_m. A cutoff is a time since the start, H:MM:SS, or a time of day, HH:MM; see
// ParseCutoff. An elevation is used only where Options.ListedHeights says so.
// Options.Landmarks puts the list on a course.
package coursefile
