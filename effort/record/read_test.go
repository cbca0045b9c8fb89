package record_test

import (
	"errors"
	"io"
	"os"
	"reflect"
	"strings"
	"testing"
	"testing/iotest"
	"time"

	"isoeffort.example/effort/record"
)

func day(year int, month time.Month, d int) time.Time {
	return time.Date(year, month, d, 0, 0, 0, 0, time.UTC)
}

func read(t *testing.T, text string, o record.Options) record.Results {
	t.Helper()
	res, err := record.Read(strings.NewReader(text), o)
	if err != nil {
		t.Fatalf("Read: %v\nof %q", err, text)
	}
	return res
}

func TestReadEveryColumn(t *testing.T) {
	res := read(t, `note,gpx,role,time,descent_m,ascent_m,distance_m,course,race,runner,date
"windy, ""cold""",loop.gpx,fit,2:05:07.25,310,300.5,25000,Long Loop,Autumn Loop,Ilva,2024-10-05
`, record.Options{File: "r.csv"})
	want := []record.Result{{
		Runner: "Ilva", Race: "Autumn Loop", Course: "Long Loop",
		Date: day(2024, 10, 5), Distance: 25000, Ascent: 300.5, Descent: 310,
		Time: 2*time.Hour + 5*time.Minute + 7*time.Second + 250*time.Millisecond,
		Role: record.Fit, GPX: "loop.gpx", Note: `windy, "cold"`, Line: 2,
	}}
	if !reflect.DeepEqual(res.Results, want) {
		t.Errorf("got %+v\nwant %+v", res.Results, want)
	}
	if len(res.Warnings) != 0 {
		t.Errorf("warnings %q", res.Warnings)
	}
}

// Files as spreadsheet programs and hands write them, all with the same one result.
func TestReadTolerates(t *testing.T) {
	for name, text := range map[string]string{
		"plain":              "distance_m,time,date\n10000.5,0:40:00.5,2024-05-31\n",
		"seconds":            "distance_m,time,date\n10000.5,2400.5,2024-05-31\n",
		"other order":        "date,time,distance_m\n2024-05-31,0:40:00.5,10000.5\n",
		"no last line end":   "distance_m,time,date\n10000.5,0:40:00.5,2024-05-31",
		"CRLF":               "distance_m,time,date\r\n10000.5,0:40:00.5,2024-05-31\r\n",
		"byte order mark":    "\ufeffdistance_m,time,date\n10000.5,0:40:00.5,2024-05-31\n",
		"mark and quotes":    "\ufeff\"distance_m\",\"time\",\"date\"\n\"10000.5\",\"0:40:00.5\",\"2024-05-31\"\n",
		"upper case":         "DISTANCE_M,Time,Date\n10000.5,0:40:00.5,2024-05-31\n",
		"space":              " distance_m , time , date \n 10000.5 , 0:40:00.5 ,\t2024-05-31 \n",
		"space, then quotes": "distance_m, \"time\", date\n10000.5, \"0:40:00.5\", 2024-05-31\n",
		"blank lines":        "\n\n  \ndistance_m,time,date\n\n \n10000.5,0:40:00.5,2024-05-31\n\n",
		"empty rows":         ",,\ndistance_m,time,date\n,,\n10000.5,0:40:00.5,2024-05-31\n,,\n , , \n",
		"comments":           "# a; b; c; d\ndistance_m,time,date\n# \"\n10000.5,0:40:00.5,2024-05-31\n#1,2,3\n",
		"semicolons":         "distance_m;time;date\n10000.5;0:40:00.5;2024-05-31\n",
		"decimal comma":      "distance_m;time;date\n10000,5;0:40:00,5;2024-05-31\n",
		"comma in seconds":   "distance_m;time;date\r\n10000,5;2400,5;2024-05-31\r\n",
		"exponent":           "distance_m,time,date\n1.00005e4,2400.5,2024-05-31\n",
		"leading zeros":      "distance_m,time,date\n010000.50,00:40:00.500,2024-05-31\n",
		"RFC 3339":           "distance_m,time,date\n10000.5,2400.5,2024-05-31T02:00:00+02:00\n",
		"empty options":      "distance_m,time,date,role,gpx,ascent_m,descent_m,note\n10000.5,2400.5,2024-05-31,,,,,\n",
	} {
		t.Run(name, func(t *testing.T) {
			res := read(t, text, record.Options{})
			if len(res.Results) != 1 || len(res.Warnings) != 0 {
				t.Fatalf("got %+v", res)
			}
			r := res.Results[0]
			if r.Distance != 10000.5 || r.Time != 2400500*time.Millisecond || !r.Date.Equal(day(2024, 5, 31)) {
				t.Errorf("got %+v", r)
			}
		})
	}
}

func TestReadDescentIsAscentUnlessGiven(t *testing.T) {
	res := read(t, `distance_m,time,date,ascent_m,descent_m
10000,3600,2024-05-31,200,
10000,3600,2024-05-31,200,0
10000,3600,2024-05-31,,150
10000,3600,2024-05-31,,
`, record.Options{})
	want := [][2]float64{{200, 200}, {200, 0}, {0, 150}, {0, 0}}
	for i, r := range res.Results {
		if got := [2]float64{r.Ascent, r.Descent}; got != want[i] {
			t.Errorf("row %d: %v, want %v", i, got, want[i])
		}
	}
}

func TestReadRolesAndGPX(t *testing.T) {
	res := read(t, `distance_m,time,date,role,gpx
,3600,2024-05-31,fit,a/b.gpx
10000,3600,2024-05-31,predict,
10000,3600,2024-05-31,,c.gpx
`, record.Options{})
	for i, want := range []record.Result{
		{Role: record.Fit, GPX: "a/b.gpx"},
		{Role: record.Predict, Distance: 10000},
		{Role: record.AnyRole, Distance: 10000, GPX: "c.gpx"},
	} {
		if r := res.Results[i]; r.Role != want.Role || r.GPX != want.GPX || r.Distance != want.Distance {
			t.Errorf("row %d: got %+v", i, r)
		}
	}
}

// A date keeps the zone that the file names, whatever the machine's own.
func TestReadDateKeepsItsZone(t *testing.T) {
	res := read(t, "distance_m,time,date\n10000,3600,2024-05-31T09:30:00.5-07:00\n", record.Options{})
	if got := res.Results[0].Date.Format(time.RFC3339Nano); got != "2024-05-31T09:30:00.5-07:00" {
		t.Errorf("got %s", got)
	}
	if name, _ := res.Results[0].Date.Zone(); name != "" {
		t.Errorf("zone %q", name)
	}
}

func TestReadLinesCountWhatIsSkipped(t *testing.T) {
	res := read(t, "# one\n\ndistance_m,time,date,note\n10000,3600,2024-05-31,\"two\r\nlines\"\n,,,\n# x\n9000,3600,2024-05-31,a\n", record.Options{})
	if a, b := res.Results[0], res.Results[1]; a.Line != 4 || b.Line != 8 || a.Note != "two\nlines" {
		t.Errorf("got %+v", res.Results)
	}
}

func TestReadWarnings(t *testing.T) {
	text := `distance_m,time,date,foo,Heart;rate,,
10000,3600,2024-05-31,1,2,3,4
10000,12:00:00,2024-05-31,1,2,3,4
10000,3600,2024-06-02,1,2,3,4
10000,3600,2024-06-01,1,2,3,4
`
	now := time.Date(2024, 5, 31, 18, 0, 0, 0, time.UTC)
	want := []string{
		`column "foo" is not used`,
		`column "Heart;rate" is not used`,
		`columns without a name are not used: 2`,
		`line 3: slower than 1 km/h: 10000 m in 12:00:00; check the units`,
		`line 4: the date 2024-06-02 lies in the future`,
	}
	if res := read(t, text, record.Options{Now: now}); !reflect.DeepEqual(res.Warnings, want) {
		t.Errorf("got %q\nwant %q", res.Warnings, want)
	}
	if res := read(t, text, record.Options{}); len(res.Warnings) != 4 {
		t.Errorf("without Now: %q", res.Warnings)
	}
	named := read(t, text, record.Options{File: "r.csv", Now: now}).Warnings
	if named[0] != `r.csv: `+want[0] || named[3] != "r.csv:3: slower than 1 km/h: 10000 m in 12:00:00; check the units" {
		t.Errorf("with a file's name: %q", named)
	}
}

func TestReadEvery(t *testing.T) {
	text := `distance_m,time,date
10000,0:40:00,2024-05-31
-1,0:40:00,2024-05-31
10000,0:20:00,2024-05-31
10000,0:40:00
10000,0:4"0:00,2024-05-31
9000,0:40:00,2024-05-31
`
	res, err := record.Read(strings.NewReader(text), record.Options{File: "r.csv", Every: true})
	var all record.Errors
	if !errors.As(err, &all) || len(all) != 4 {
		t.Fatalf("got %v", err)
	}
	for i, want := range []struct {
		line  int
		cause error
	}{{3, record.ErrDistance}, {4, record.ErrTooFast}, {5, record.ErrSyntax}, {6, record.ErrSyntax}} {
		if all[i].Line != want.line || !errors.Is(all[i], want.cause) || !errors.Is(err, want.cause) {
			t.Errorf("fault %d: %v", i, all[i])
		}
	}
	if strings.Count(err.Error(), "\n") != 3 {
		t.Errorf("text %q", err)
	}
	if len(res.Results) != 2 || res.Results[1].Line != 7 {
		t.Errorf("results %+v", res.Results)
	}
	if _, err := record.Read(strings.NewReader("time\n1\n"), record.Options{Every: true}); !errors.Is(err, record.ErrHeader) {
		t.Errorf("bad header: %v", err)
	}
	if res, err := record.Read(strings.NewReader("distance_m,time,date\n1,1,2024-05-31\n"), record.Options{Every: true}); err != nil || len(res.Results) != 1 {
		t.Errorf("no fault: %v, %v", res, err)
	}
}

func TestReadFailingReader(t *testing.T) {
	_, err := record.Read(iotest.ErrReader(os.ErrPermission), record.Options{File: "r.csv"})
	var located *record.Error
	if !errors.As(err, &located) || !errors.Is(err, os.ErrPermission) || located.Line != 0 {
		t.Errorf("got %v", err)
	}
}

type endless struct{}

func (endless) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = '#'
	}
	return len(p), nil
}

func TestReadEndlessFile(t *testing.T) {
	if _, err := record.Read(io.Reader(endless{}), record.Options{}); !errors.Is(err, record.ErrTooLarge) {
		t.Errorf("got %v", err)
	}
}
