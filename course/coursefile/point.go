package coursefile

import (
	"encoding/xml"
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"isoeffort.example/course"
)

// The globe, in degrees.
const (
	maxLat = 90
	maxLon = 180
)

// placeOf returns the place that the attributes of a GPX point give.
func placeOf(attributes []xml.Attr) (lat, lon float64, err error) {
	if lat, err = attribute(attributes, "lat", maxLat); err != nil {
		return 0, 0, err
	}
	if lon, err = attribute(attributes, "lon", maxLon); err != nil {
		return 0, 0, err
	}
	return lat, westernLine(lon), nil
}

// westernLine gives the date line its western longitude.
func westernLine(lon float64) float64 {
	if lon == maxLon {
		return -maxLon
	}
	return lon
}

func attribute(attributes []xml.Attr, name string, limit float64) (float64, error) {
	value, found := "", false
	for _, a := range attributes {
		if a.Name.Space != "" || a.Name.Local != name {
			continue
		}
		if found {
			return 0, because(ErrCoordinate, "%s is given twice", name)
		}
		value, found = strings.TrimSpace(a.Value), true
	}
	return coordinate(name, value, limit)
}

func coordinate(name, value string, limit float64) (float64, error) {
	if value == "" {
		return 0, because(ErrCoordinate, "%s is missing", name)
	}
	degrees, err := number(name, value)
	switch {
	case err != nil:
		return 0, fmt.Errorf("%w: %w", ErrCoordinate, err)
	case degrees < -limit || degrees > limit:
		return 0, because(ErrCoordinate, "%s %s is outside -%g to %g", name, oneLine(value, 40), limit, limit)
	}
	return degrees, nil
}

// voids are the numbers that recorders and terrain models write where they know no height.
var voids = [...]float64{-9999, 9999, -32768, -32767, 32767, 65535, -99999, 99999}

// recordedElevation reads a height in metres of a recording, NaN for a number that stands
// for none.
func recordedElevation(text string) (float64, error) {
	if z, err := number("elevation", text); err == nil && slices.Contains(voids[:], z) {
		return math.NaN(), nil
	}
	return elevationOf(text)
}

func elevationOf(text string) (float64, error) {
	z, err := number("elevation", text)
	if err == nil && (z < course.MinElevation || z > course.MaxElevation) {
		return 0, because(course.ErrElevationRange, "%g m", z)
	}
	return z, err
}

// parseTime reads a time with or without fraction and zone, which is UTC if it is not
// given. It is zero if it cannot be read or falls outside the years that can be
// written.
func parseTime(s string) time.Time {
	for _, layout := range []string{time.RFC3339, "2006-01-02T15:04:05", "2006-01-02 15:04:05Z07:00", time.DateTime} {
		if t, err := time.Parse(layout, s); err == nil {
			if t = t.UTC(); writable(t) {
				return t
			}
			break
		}
	}
	return time.Time{}
}

// writable reports whether RFC 3339 can write a time: in UTC it knows the years to 9999,
// and XML Schema does not know the year 0.
func writable(t time.Time) bool {
	year := t.UTC().Year()
	return year >= 1 && year <= 9999
}
