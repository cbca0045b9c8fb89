package coursefile

import (
	"cmp"
	"strings"
	"unicode"

	"isoeffort.example/course"
)

// A site is a waypoint on its way to become a landmark.
type site struct {
	landmark  course.Landmark // without a distance
	at        course.Position
	elevation float64 // NaN: not known
	line      int32
}

// sitesOf returns the waypoints in their order, nameless ones too.
func sitesOf(waypoints []Waypoint) []site {
	sites := make([]site, 0, len(waypoints))
	for _, w := range waypoints {
		l := course.Landmark{
			Name: oneLine(cmp.Or(oneLine(w.Name, maxName), oneLine(w.Description, maxName),
				oneLine(w.Comment, maxName), oneLine(w.Symbol, maxName), w.Type), maxName),
			Note: cmp.Or(oneLine(w.Description, maxNote), oneLine(w.Comment, maxNote)),
			Kind: cmp.Or(kindOf(w.Type), kindOf(w.Symbol)),
		}
		sites = append(sites, site{l, course.NewPosition(w.Lat, w.Lon), w.Elevation, w.line})
	}
	return sites
}

// Words that tell a landmark's kind. Those of three letters must stand alone, lest a
// stop become a top.
var kindWords = []struct {
	word string
	kind course.Kind
}{
	{"aid", course.Station},
	{"station", course.Station},
	{"water", course.Station},
	{"food", course.Station},
	{"control", course.Station},
	{"summit", course.Top},
	{"peak", course.Top},
	{"top", course.Top},
	{"climb", course.Top},
	{"hill", course.Top},
}

func kindOf(text string) course.Kind {
	words := strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return !unicode.IsLetter(r) })
	for _, k := range kindWords {
		for _, w := range words {
			if w == k.word || len(k.word) > 3 && strings.Contains(w, k.word) && !strings.HasPrefix(w, "waterfall") {
				return k.kind
			}
		}
	}
	return course.Place
}
