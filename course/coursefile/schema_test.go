package coursefile

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"regexp"
	"slices"
	"strconv"
	"testing"
)

// The part of the schema of GPX 1.1 that its writer may use, from memory: the sequence
// of elements inside each type, of which each stands at most once but for those that
// repeat, and the types of the texts. The schema file itself could not be had, so this
// is no check by it. http://www.topografix.com/GPX/1/1/gpx.xsd
var gpxSchema = map[string][]string{
	"gpx":      {"metadata", "wpt*", "rte*", "trk*", "extensions"},
	"metadata": {"name", "desc", "author", "copyright", "link*", "time", "keywords", "bounds", "extensions"},
	"wpt": {
		"ele", "time", "magvar", "geoidheight", "name", "cmt", "desc", "src", "link*", "sym", "type",
		"fix", "sat", "hdop", "vdop", "pdop", "ageofdgpsdata", "dgpsid", "extensions",
	},
	"rte":    {"name", "cmt", "desc", "src", "link*", "number", "type", "extensions", "rtept*"},
	"trk":    {"name", "cmt", "desc", "src", "link*", "number", "type", "extensions", "trkseg*"},
	"trkseg": {"trkpt*", "extensions"},
}

// Lexical forms of XML Schema: xsd:decimal and xsd:dateTime in UTC.
var (
	xsdDecimal  = regexp.MustCompile(`^[+-]?([0-9]+(\.[0-9]*)?|\.[0-9]+)$`)
	xsdDateTime = regexp.MustCompile(`^[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}:[0-9]{2}(\.[0-9]+)?Z$`)
)

// checkGPX holds a document to gpxSchema.
func checkGPX(text []byte) error {
	in := xml.NewDecoder(bytes.NewReader(text))
	var names []string     // of the open elements
	var places []int       // in the sequence of each
	var content [][]string // the sequence of each, nil for a text
	for {
		token, err := in.Token()
		if errors.Is(err, io.EOF) && len(names) == 0 {
			return nil
		}
		if err != nil {
			return err
		}
		switch t := token.(type) {
		case xml.StartElement:
			if t.Name.Space != "http://www.topografix.com/GPX/1/1" {
				return fmt.Errorf("<%s> in the name space %q", t.Name.Local, t.Name.Space)
			}
			if n := len(names); n > 0 {
				at := slices.IndexFunc(content[n-1], func(s string) bool { return s == t.Name.Local || s == t.Name.Local+"*" })
				repeats := at >= 0 && content[n-1][at] == t.Name.Local+"*"
				if at < places[n-1] || at == places[n-1] && !repeats {
					return fmt.Errorf("<%s> must not stand here in <%s>", t.Name.Local, names[n-1])
				}
				places[n-1] = at
			} else if t.Name.Local != "gpx" {
				return fmt.Errorf("root <%s>", t.Name.Local)
			}
			if err := checkAttributes(t); err != nil {
				return err
			}
			kind := t.Name.Local
			if kind == "rtept" || kind == "trkpt" {
				kind = "wpt"
			}
			names, places, content = append(names, t.Name.Local), append(places, -1), append(content, gpxSchema[kind])
		case xml.EndElement:
			n := len(names) - 1
			names, places, content = names[:n], places[:n], content[:n]
		case xml.CharData:
			if len(names) == 0 {
				continue
			}
			if err := checkText(names[len(names)-1], content[len(names)-1] != nil, string(t)); err != nil {
				return err
			}
		}
	}
}

func checkAttributes(t xml.StartElement) error {
	got := map[string]string{}
	for _, a := range t.Attr {
		if a.Name.Local != "xmlns" {
			got[a.Name.Local] = a.Value
		}
	}
	switch t.Name.Local {
	case "gpx":
		if len(got) != 2 || got["version"] != "1.1" || got["creator"] == "" {
			return fmt.Errorf("attributes of the root %v", got)
		}
	case "wpt", "rtept", "trkpt":
		lat, err := strconv.ParseFloat(got["lat"], 64)
		lon, err2 := strconv.ParseFloat(got["lon"], 64)
		// latitudeType: −90 to 90; longitudeType: −180 to less than 180
		if len(got) != 2 || err != nil || err2 != nil || !(lat >= -90 && lat <= 90 && lon >= -180 && lon < 180) ||
			!xsdDecimal.MatchString(got["lat"]) || !xsdDecimal.MatchString(got["lon"]) {
			return fmt.Errorf("attributes of a point %v", got)
		}
	default:
		if len(got) > 0 {
			return fmt.Errorf("attributes of <%s> %v", t.Name.Local, got)
		}
	}
	return nil
}

func checkText(element string, group bool, text string) error {
	blank := len(bytes.TrimSpace([]byte(text))) == 0
	switch {
	case group && !blank,
		element == "ele" && !xsdDecimal.MatchString(text),
		element == "time" && !xsdDateTime.MatchString(text):
		return fmt.Errorf("text %q in <%s>", text, element)
	}
	return nil
}

// The check finds what breaks the schema.
func TestSchemaCheckCanFail(t *testing.T) {
	t.Parallel()
	const root = `<gpx version="1.1" creator="x" xmlns="http://www.topografix.com/GPX/1/1">`
	for text, good := range map[string]bool{
		root + `<metadata><name>a</name></metadata><wpt lat="1" lon="2"/><wpt lat="1" lon="2"/><trk><trkseg/></trk></gpx>`: true,
		`<gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1"></gpx>`:                                              false,
		`<gpx version="1.1" creator="x"></gpx>`:                                                                            false,
		root + `<trk/><rte/></gpx>`:                                                                                        false,
		root + `<name>a</name></gpx>`:                                                                                      false,
		root + `<metadata><desc>a</desc><name>a</name></metadata></gpx>`:                                                   false,
		root + `<metadata/><metadata/></gpx>`:                                                                              false,
		root + `<wpt lat="1"/></gpx>`:                                                                                      false,
		root + `<wpt lat="1" lon="180"/></gpx>`:                                                                            false,
		root + `<wpt lat="1e-7" lon="1"/></gpx>`:                                                                           false,
		root + `<wpt lat="1" lon="1"><ele>NaN</ele></wpt></gpx>`:                                                           false,
		root + `<wpt lat="1" lon="1"><time>2020-01-01T00:00:00+01:00</time></wpt></gpx>`:                                   false,
		root + `<wpt lat="1" lon="1"><name>a</name><ele>1</ele></wpt></gpx>`:                                               false,
		root + `<trk><trkseg><trkpt lat="1" lon="1"><ele>1</ele><ele>1</ele></trkpt></trkseg></trk></gpx>`:                 false,
		root + `<trk>words</trk></gpx>`:                                                                                    false,
		root + `<trk color="red"></trk></gpx>`:                                                                             false,
	} {
		if err := checkGPX([]byte(text)); (err == nil) != good {
			t.Errorf("%s: %v", text, err)
		}
	}
}
