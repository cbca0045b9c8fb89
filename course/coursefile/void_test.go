package coursefile_test

import (
	"fmt"
	"strings"
	"testing"

	"isoeffort.example/course/coursefile"
	"isoeffort.example/course/elevation"
)

// track is a GPX file of a climb, its heights by number.
func track(height func(i int) string) string {
	var b strings.Builder
	b.WriteString(`<gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1"><trk><trkseg>` + "\n")
	for i := range 500 {
		fmt.Fprintf(&b, "<trkpt lat=\"%.6f\" lon=\"8\"><ele>%s</ele></trkpt>\n", 47+float64(i)*0.0002, height(i))
	}
	b.WriteString("</trkseg></trk></gpx>\n")
	return b.String()
}

// A number that stands for no height is none: filled, and said.
func TestVoidHeights(t *testing.T) {
	t.Parallel()
	for _, void := range []string{"-9999", "-32768", "99999", "-9999.0"} {
		for _, clean := range []*elevation.Options{nil, {}} {
			text := track(func(i int) string {
				if i == 200 {
					return void
				}
				return fmt.Sprint(500 + i/5)
			})
			c, err := coursefile.ReadGPX(strings.NewReader(text), coursefile.Options{Clean: clean})
			if err != nil {
				t.Fatalf("%s: %v", void, err)
			}
			if said := strings.Join(c.Warnings(), "\n"); !strings.Contains(said, "elevation missing at 1 of 500 points, first at line 202") {
				t.Errorf("%s: %s", void, said)
			}
			if at := c.Elevation(c.Length() * 200 / 499); at < 530 || at > 550 {
				t.Errorf("%s: %g m there", void, at)
			}
		}
	}
}

// Heights that are 0 throughout are doubted.
func TestAllZeroHeights(t *testing.T) {
	t.Parallel()
	for height, want := range map[string]bool{"0": true, "3": false} {
		c, err := coursefile.ReadGPX(strings.NewReader(track(func(int) string { return height })), coursefile.Options{})
		if err != nil {
			t.Fatal(err)
		}
		if got := strings.Contains(strings.Join(c.Warnings(), "\n"), "every elevation is 0"); got != want {
			t.Errorf("%s m throughout: %q", height, c.Warnings())
		}
	}
}
