package coursefile

import (
	"bufio"
	"io"
	"strconv"

	"isoeffort.example/course"
)

// WriteCSV writes the profile of a course, as it is after smoothing, with the columns
// distance_m and elevation_m. Read again by ReadCSV with course.AsGiven it is equal to
// the last digit, but that CSV holds no name, landmarks, stretches, warnings or
// directions; WriteLandmarks writes the landmarks. A smoothed profile that overshoots
// course.MinElevation or MaxElevation at an end is written all the same and refused
// there. It fails if w does.
func WriteCSV(w io.Writer, c *course.Course) error {
	out := bufio.NewWriterSize(w, 1<<16)
	_, _ = out.WriteString(distanceColumn + "," + elevationColumn + "\n")
	var row []byte
	for i := range c.Len() {
		x, z := c.Point(i)
		row = strconv.AppendFloat(row[:0], x, 'f', -1, 64)
		row = strconv.AppendFloat(append(row, ','), z, 'f', -1, 64)
		_, _ = out.Write(append(row, '\n'))
	}
	return out.Flush() // with the first error of all
}

// LandmarksOf returns the landmarks of a course as a list without cutoffs.
func LandmarksOf(c *course.Course) []Landmark {
	var list []Landmark
	for _, l := range c.Landmarks() {
		list = append(list, Landmark{Landmark: l})
	}
	return list
}
