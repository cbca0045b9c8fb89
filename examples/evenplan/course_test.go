package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

const rows = "distance_m,elevation_m\n"

// junk is bytes that are nothing.
var junk = strings.Repeat("\x00\xff\xfe\x81\"<\r", 500)

// badCourses are files that no course can be told from, and how the line starts that
// says so.
var badCourses = []struct{ name, text, want string }{
	{"words.gpx", "a walk in words\n", "words.gpx:1: not XML"},
	{"empty.gpx", "", "empty.gpx:1: file is empty"},
	{"junk.gpx", junk, "junk.gpx:1: not XML"},
	{"truncated.gpx", track(rolling(40)...)[:400], "truncated.gpx:9: malformed file"},
	{"mismatched.gpx", strings.Replace(track(rolling(4)...), "</trkseg>", "</trkzeg>", 1), "mismatched.gpx:7: malformed file"},
	{"page.gpx", "<html><body>not found</body></html>\n", "page.gpx:1: not a GPX document"},
	{"nothing.gpx", "<gpx version=\"1.1\"></gpx>\n", "nothing.gpx:1: no point of a track or route"},
	{"waypoint.gpx", "<gpx version=\"1.1\"><wpt lat=\"1\" lon=\"2\"><name>Lone</name></wpt></gpx>\n", "waypoint.gpx:1: no point of a track or route"},
	{"one.gpx", track(rolling(1)...), "one.gpx:3: fewer than two points"},
	{"place.gpx", track(rolling(1)[0], rolling(1)[0]), "place.gpx:4: fewer than two points"},
	{"level.gpx", strings.NewReplacer("<ele>", "<x>", "</ele>", "</x>").Replace(track(rolling(9)...)), "level.gpx:3: no elevation"},
	{"nan-lat.gpx", with(point("NaN", "-150", "1")), "nan-lat.gpx:6: bad coordinate"},
	{"inf-lat.gpx", with(point("+Inf", "-150", "1")), "inf-lat.gpx:6: bad coordinate"},
	{"huge-lat.gpx", with(point("1e308", "-150", "1")), "huge-lat.gpx:6: bad coordinate"},
	{"far-lat.gpx", with(point("90.001", "-150", "1")), "far-lat.gpx:6: bad coordinate"},
	{"empty-lat.gpx", with(point("", "-150", "1")), "empty-lat.gpx:6: bad coordinate: lat is missing"},
	{"no-lat.gpx", with("<trkpt lon=\"-150\"><ele>1</ele></trkpt>\n"), "no-lat.gpx:6: bad coordinate: lat is missing"},
	{"nan-lon.gpx", with(point("0.006", "NaN", "1")), "nan-lon.gpx:6: bad coordinate"},
	{"inf-lon.gpx", with(point("0.006", "-Inf", "1")), "inf-lon.gpx:6: bad coordinate"},
	{"far-lon.gpx", with(point("0.006", "180.5", "1")), "far-lon.gpx:6: bad coordinate"},
	{"empty-lon.gpx", with(point("0.006", "", "1")), "empty-lon.gpx:6: bad coordinate: lon is missing"},
	{"long-lat.gpx", with(point(strings.Repeat("1", 1_000_000), "-150", "1")), "long-lat.gpx:6: bad coordinate"},
	{"gap.gpx", with(point("0.3", "-150", "1")), "gap.gpx:6: gap of over 20 km"},
	{"high.gpx", with(point("0.006", "-150", "20000")), "high.gpx:6: elevation outside"},
	{"deep.gpx", with(point("0.006", "-150", "-20000")), "deep.gpx:6: elevation outside"},
	{"nan-height.gpx", with(point("0.006", "-150", "NaN")), "nan-height.gpx:6: value is not a finite number"},
	{"escape.gpx", with(point("0.006", "-150", "\x1b[31m")), "escape.gpx:6: malformed file"},
	{"long.gpx", track(parallel(1200)...), "long.gpx:1002: course longer than 1000 km"},
	{"results.gpx", string(demoResults), "results.gpx:1: not XML"},

	{"empty.csv", "", "empty.csv:1: file is empty"},
	{"junk.csv", junk, "junk.csv:1: "},
	{"noheader.csv", "0,1\n100,2\n", "noheader.csv:1: first line must name distance_m and elevation_m"},
	{"header.csv", rows, "header.csv:1: fewer than two points"},
	{"one.csv", rows + "0,1\n", "one.csv:2: fewer than two points"},
	{"place.csv", rows + "5,1\n5,2\n", "place.csv:3: fewer than two points"},
	{"back.csv", rows + "0,1\n100,2\n50,3\n200,3\n", "back.csv:4: distance goes back"},
	{"nan.csv", rows + "0,1\nNaN,2\n", "nan.csv:3: value is not a finite number"},
	{"inf.csv", rows + "0,1\n10,Inf\n", "inf.csv:3: value is not a finite number"},
	{"huge.csv", rows + "0,1\n1e308,1\n", "huge.csv:3: course longer than 1000 km"},
	{"word.csv", rows + "0,1\nten,2\n", "word.csv:3: not a number"},
	{"blank.csv", rows + "0,1\n,2\n", "blank.csv:3: not a number"},
	{"fields.csv", rows + "0,1\n10,2,3\n", "fields.csv:3: wrong number of fields"},
	{"quote.csv", rows + "0,1\n\"10,2\n", "quote.csv:3: malformed file"},
	{"noheights.csv", rows + "0,\n100,\n", "noheights.csv:2: no elevation"},
	{"high.csv", rows + "0,1\n1000,20000\n", "high.csv:3: elevation outside"},
	{"deep.csv", rows + "0,1\n1000,-20000\n", "deep.csv:3: elevation outside"},
	{"long.csv", rows + "0,1\n1000001,1\n", "long.csv:3: course longer than 1000 km"},
	{"line.csv", rows + "0,1\n" + strings.Repeat("9", 2_000_000) + ",1\n", "line.csv:3: value is not a finite number"},
	{"results.csv", string(demoResults), "results.csv:1: first line must name distance_m and elevation_m"},

	{"course.txt", track(rolling(40)...), "course.txt: file name ends neither in .gpx nor in .csv"},
	{"course", track(rolling(40)...), "course: file name ends neither in .gpx nor in .csv"},
	{"odd\nname\x1b[31m\u202e.txt", "", "odd name\ufffd[31m\ufffd.txt: file name ends neither"},
}

// parallel is n points a kilometre apart along a parallel.
func parallel(n int) []string {
	var points []string
	for i := range n {
		points = append(points, point("0", fmt.Sprintf("%.3f", -170+0.009*float64(i)), "5"))
	}
	return points
}

func TestBadCourse(t *testing.T) {
	t.Parallel()
	for _, bad := range badCourses {
		t.Run(fmt.Sprintf("%q", bad.name), func(t *testing.T) {
			t.Parallel()
			dir := folder(t, map[string]string{bad.name: bad.text})
			checkRefused(t, evenplan(dir, "-course", "@/"+bad.name), bad.want)
		})
	}
}

func TestBadCourseFile(t *testing.T) {
	t.Parallel()
	dir := folder(t, nil)
	if err := os.Mkdir(filepath.Join(dir, "folder.gpx"), 0o700); err != nil {
		t.Fatal(err)
	}
	checkRefused(t, evenplan(dir, "-course", "@/nowhere.gpx"), "nowhere.gpx: no such file or directory")
	checkRefused(t, evenplan(dir, "-course", "@/no/where.csv"), "no/where.csv: no such file or directory")
	checkRefused(t, evenplan(dir, "-course", "@/folder.gpx"), "folder.gpx: is a directory")
}

// Whatever is in the files of the library's tests, the program makes a plan or says on
// one line why it does not.
func TestOddFiles(t *testing.T) {
	t.Parallel()
	for _, pattern := range []string{"odd", "gpxgo"} {
		names, err := filepath.Glob("../../testdata/gpx/" + pattern + "/*.gpx")
		if err != nil || len(names) == 0 {
			t.Fatal(pattern, err)
		}
		for _, name := range names {
			t.Run(filepath.Base(name), func(t *testing.T) {
				t.Parallel()
				switch o := evenplan(filepath.Dir(name), "-course", name, "-athlete", "hour_power=12"); o.status {
				case 0:
					checkPage(t, o.out)
				default:
					checkRefused(t, o, filepath.Base(name)+":")
				}
			})
		}
	}
}

func TestMendedCourse(t *testing.T) {
	t.Parallel()
	at := func(points []string, i int, replacement string) []string {
		points[i] = replacement
		return points
	}
	timed := func(i int, second string) string {
		return strings.Replace(rolling(40)[i], "</ele>", "</ele><time>2026-05-01T10:00:"+second+"Z</time>", 1)
	}
	for name, file := range map[string]struct{ text, want string }{
		"heights.gpx": {track(at(rolling(40), 3, point("0.006", "-150", ""))...), "heights.gpx: elevation missing at 1 of 40 points, first at line 6"},
		"times.gpx":   {track(at(at(rolling(40), 3, timed(3, "30")), 4, timed(4, "10"))...), "times.gpx: time goes back at 1 of 40 points, first at line 7"},
		"gap.gpx":     {track(append(rolling(40)[:20], rolling(40)[32:]...)...), "gap.gpx: gap of over 2 km between neighbouring points at 1 place"},
		"heights.csv": {rows + "0,5\n1000,\n2000,9\n", "heights.csv: elevation missing at 1 of 3 points, first at line 3"},
		"steep.csv":   {rows + "0,0\n500,0\n1000,1500\n2000,0\n", "steep.csv: gradient of +"},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			dir := folder(t, map[string]string{name: file.text})
			o := planned(t, dir, "-course", "@/"+name, "-athlete", "hour_power=12")
			if !strings.HasPrefix(o.err, file.want) || strings.Count(o.err, "\n") != 1 {
				t.Errorf("standard error is %q, want one line that starts with %q", o.err, file.want)
			}
			_, cause, _ := strings.Cut(strings.TrimSpace(o.err), ": ")
			if !strings.Contains(strings.ToLower(words(o.out)), strings.ToLower(cause)) {
				t.Errorf("the plan does not say %q", cause)
			}
		})
	}
}

// words is a page without its line ends and indents.
func words(page string) string { return strings.Join(strings.Fields(page), " ") }

// hostile are names that would break a table, a terminal or a format.
var hostile = []string{
	"Line\nbreak\r\n\r\nand more", "tab\there", "\u202eturned round\u202c", "\u2067isolated\u2069 \u200fmark",
	"zero\u200bwidth\u200d", strings.Repeat("Long", 400), strings.Repeat("word ", 200), "C1\u0085\u009bcontrol",
	"=cmd()", "\"quoted\", and, commas; %s%d%n", "<b>bold</b>", "separator\u2028and\u2029more", "\ufeffmark", "\u05d0\u05d1\u05d2",
}

// hostileCourse has a waypoint of each hostile name beside it and bears one itself.
func hostileCourse() string {
	var b strings.Builder
	b.WriteString("<gpx version=\"1.1\">\n")
	escape := strings.NewReplacer("<", "&lt;", "\r", "&#13;", "\n", "&#10;")
	for i, name := range hostile {
		fmt.Fprintf(&b, "<wpt lat=\"%.4f\" lon=\"-150\"><name>%s</name><type>top</type></wpt>\n", 0.01+0.012*float64(i), escape.Replace(name))
	}
	fmt.Fprintf(&b, "<trk><name>%s</name><trkseg>\n%s</trkseg></trk></gpx>\n",
		escape.Replace(strings.Join(hostile, " ")), strings.Join(rolling(120), ""))
	return b.String()
}

func TestHostileNames(t *testing.T) {
	t.Parallel()
	dir := folder(t, map[string]string{"names.gpx": hostileCourse()})
	for _, every := range []string{"landmark", "1km", "5km", "1mi", "0.5km"} {
		o := planned(t, dir, "-course", "@/names.gpx", "-every", every, "-start", "2026-06-14T05:30:00+02:00", "-start-delay", "7m30s", "-goal", "30:00:00")
		checkPage(t, o.out)
		checkSplits(t, o.out)
	}
	p := plannedJSON(t, dir, "-course", "@/names.gpx")
	if len(p.Splits) != len(hostile)+1 {
		t.Errorf("%d splits, want one at each of %d names and the finish", len(p.Splits), len(hostile))
	}
	o := planned(t, dir, "-course", "@/names.gpx", "-format", "csv")
	if got := strings.Count(o.out, "\n"); got != len(hostile)+2 {
		t.Errorf("CSV of %d lines, want a header, %d places and the finish", got, len(hostile))
	}
}
