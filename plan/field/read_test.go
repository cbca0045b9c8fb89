package field_test

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"reflect"
	"strings"
	"testing"
	"testing/iotest"
	"time"

	"isoeffort.example/effort"
	"isoeffort.example/plan"
	"isoeffort.example/plan/field"
)

// diff says that two values differ, and how.
func diff(want, got any) string {
	if reflect.DeepEqual(want, got) {
		return ""
	}
	return fmt.Sprintf("got %+v\nwant %+v", got, want)
}

func read(t *testing.T, text string) field.File {
	t.Helper()
	f, err := field.Read(strings.NewReader(text), field.ReadOptions{File: "r.csv"})
	if err != nil {
		t.Fatalf("Read: %v\nof %q", err, text)
	}
	return f
}

func TestReadEveryColumn(t *testing.T) {
	t.Parallel()
	f := read(t, `note,wave,start_delay,goal,results,fastest_walk,economy,braking,fade_shape,fade,endurance,hour_power,name
"windy, ""cold""",0:10:00,0:01:30.5,10:30:00,past/ilva.csv,1.9,1.1,2,0.9,0,0.08,13.5,Ilva Tarn
`)
	want := []field.Entry{{Line: 2, Runner: field.Runner{
		Name: "Ilva Tarn", Goal: 10*time.Hour + 30*time.Minute, StartDelay: 90*time.Second + 500*time.Millisecond, Wave: 10 * time.Minute,
		Athlete: effort.Athlete{HourPower: 13.5, Endurance: 0.08, FadeShape: 0.9, Braking: 2, Economy: 1.1, FastestWalk: 1.9},
		Results: "past/ilva.csv", Note: `windy, "cold"`,
	}}}
	if d := diff(want, f.Entries); d != "" || len(f.Warnings) > 0 {
		t.Error(d, f.Warnings)
	}
}

func TestReadAims(t *testing.T) {
	t.Parallel()
	f := read(t, `name,hour_power,net_goal,share,start_delay,wave
net,12,3600,,,
share,12,,0.5,,
front row,12,,,0,0:00:00
plain,12,,,,
`)
	for i, want := range []field.Runner{
		{Name: "net", Goal: time.Hour, Net: true},
		{Name: "share", Share: 0.5},
		{Name: "front row", StartDelay: plan.Off, Wave: plan.Off},
		{Name: "plain"},
	} {
		want.Athlete = effort.Usual(12)
		if d := diff(want, f.Entries[i].Runner); d != "" || f.Entries[i].Err != nil {
			t.Error(d, f.Entries[i].Err)
		}
	}
}

// Files as spreadsheet programs and hands write them, all with the same two runners.
func TestReadTolerates(t *testing.T) {
	t.Parallel()
	for name, text := range map[string]string{
		"plain":            "name,hour_power,goal\nIlva,12.5,1:00:00.5\nOddo,11,\n",
		"seconds":          "name,hour_power,goal\nIlva,12.5,3600.5\nOddo,11,\n",
		"other order":      "goal,name,hour_power\n1:00:00.5,Ilva,12.5\n,Oddo,11\n",
		"no last line end": "name,hour_power,goal\nIlva,12.5,1:00:00.5\nOddo,11,",
		"CRLF":             "name,hour_power,goal\r\nIlva,12.5,1:00:00.5\r\nOddo,11,\r\n",
		"byte order mark":  "\ufeffname,hour_power,goal\nIlva,12.5,1:00:00.5\nOddo,11,\n",
		"mark and quotes":  "\ufeff\"name\",\"hour_power\",\"goal\"\n\"Ilva\",\"12.5\",\"1:00:00.5\"\n\"Oddo\",\"11\",\"\"\n",
		"upper case":       "NAME,Hour_Power,Goal\nIlva,12.5,1:00:00.5\nOddo,11,\n",
		"space":            " name ,\thour_power , goal \n Ilva , 12.5 ,\t1:00:00.5 \n Oddo , 11 , \n",
		"space and quotes": "name, \"hour_power\" ,goal\n \"Ilva\" , \"12.5\",  \"1:00:00.5\"  \n\" Oddo \",11,\n",
		"blank lines":      "\n \nname,hour_power,goal\n\nIlva,12.5,1:00:00.5\n\t\nOddo,11,\n\n",
		"empty rows":       ",,\nname,hour_power,goal\n , ,\nIlva,12.5,1:00:00.5\n\"\",,\nOddo,11,\n",
		"comments":         "# a;b;c;d\nname,hour_power,goal\n# \"\nIlva,12.5,1:00:00.5\n#x,1,2\nOddo,11,\n",
		"semicolons":       "name;hour_power;goal\nIlva;12.5;1:00:00.5\nOddo;11;\n",
		"decimal comma":    "name;hour_power;goal\r\nIlva;12,5;1:00:00,5\r\nOddo;11;\r\n",
		"exponent":         "name,hour_power,goal\nIlva,1.25e1,1:00:00.500000000\nOddo,11,\n",
	} {
		f := read(t, text)
		if len(f.Entries) != 2 || len(f.Refused()) > 0 || len(f.Warnings) > 0 {
			t.Errorf("%s: %+v", name, f)
			continue
		}
		a, b := f.Entries[0].Runner, f.Entries[1].Runner
		if a.Name != "Ilva" || a.Athlete.HourPower != 12.5 || a.Goal != 3600500*time.Millisecond || b.Name != "Oddo" || b.Athlete.HourPower != 11 {
			t.Errorf("%s: %+v", name, f.Entries)
		}
	}
}

// Each bad row is refused where it stands, and the good ones after it are read.
func TestReadRefusesRows(t *testing.T) {
	t.Parallel()
	head := "name,hour_power,endurance,fade,fade_shape,braking,goal,net_goal,share,start_delay,results\n"
	for row, want := range map[string]struct {
		cause error
		text  string
	}{
		"Oddo,12,,,,,,,,":                         {field.ErrSyntax, "bad CSV: the header has 11 fields, this row 10"},
		"Oddo,12,,,,,,,,,,":                       {field.ErrSyntax, "bad CSV: the header has 11 fields, this row 12"},
		`"Oddo,12,,,,,,,,,`:                       {field.ErrSyntax, "bad CSV: a quote is left open"},
		`Od"do,12,,,,,,,,,`:                       {field.ErrSyntax, "bad CSV: a quote inside a field without quotes"},
		`"Od"do,12,,,,,,,,,`:                      {field.ErrSyntax, "bad CSV: text after a closing quote"},
		"Zo\xeb,12,,,,,,,,,":                      {field.ErrText, "not UTF-8 text: byte 0xeb; save it as CSV in UTF-8"},
		"Od\x00do,12,,,,,,,,,":                    {field.ErrText, "not UTF-8 text: control character 0x00"},
		",12,,,,,,,,,":                            {field.ErrName, "bad name: it is empty"},
		strings.Repeat("o", 201) + ",12,,,,,,,,,": {field.ErrName, `bad name: "` + strings.Repeat("o", 40) + `"… has over 200 bytes`},
		"Oddo,,,,,,,,,,":                          {field.ErrNumber, `"Oddo": bad number: hour_power is empty, and no results are named`},
		"Oddo,fast,,,,,,,,,":                      {field.ErrNumber, `"Oddo": bad number: hour_power "fast" is not a finite number`},
		"Oddo,NaN,,,,,,,,,":                       {field.ErrNumber, `"Oddo": bad number: hour_power "NaN" is not a finite number`},
		"Oddo,0x1p3,,,,,,,,,":                     {field.ErrNumber, `"Oddo": bad number: hour_power "0x1p3" is not a finite number`},
		"Oddo,0,,,,,,,,,":                         {field.ErrNumber, `"Oddo": bad number: hour_power is 0`},
		"Oddo,12,,,0,,,,,,":                       {field.ErrNumber, `"Oddo": bad number: fade_shape is 0`},
		"Oddo,99,,,,,,,,,":                        {effort.ErrAthlete, `"Oddo": effort: athlete out of range: hour power 99 is not within 1 to 40`},
		"Oddo,12,,-1,,,,,,,":                      {effort.ErrAthlete, `"Oddo": effort: athlete out of range: fade -1 is not within 0 to 0.5`},
		"Oddo,,,7,,,,,,,r.csv":                    {effort.ErrAthlete, `"Oddo": effort: athlete out of range: fade 7 is not within 0 to 0.5`},
		"Oddo,12,,,,,40:00,,,,":                   {field.ErrTime, `"Oddo": bad time: goal "40:00" may be hours and minutes or minutes and seconds; write H:MM:SS, such as 0:40:00`},
		"Oddo,12,,,,,1:60:00,,,,":                 {field.ErrTime, `"Oddo": bad time: goal "1:60:00" is not H:MM:SS or a number of seconds, of at most 1000 hours`},
		"Oddo,12,,,,,1:00:00.,,,,":                {field.ErrTime, `"Oddo": bad time: goal "1:00:00." is not H:MM:SS or a number of seconds, of at most 1000 hours`},
		"Oddo,12,,,,,-3600,,,,":                   {field.ErrTime, `"Oddo": bad time: goal "-3600" is not H:MM:SS or a number of seconds, of at most 1000 hours`},
		"Oddo,12,,,,,1000:00:01,,,,":              {field.ErrTime, `"Oddo": bad time: goal "1000:00:01" is not H:MM:SS or a number of seconds, of at most 1000 hours`},
		"Oddo,12,,,,,0,,,,":                       {field.ErrTime, `"Oddo": bad time: a goal of 0`},
		"Oddo,12,,,,,3600,3600,,,":                {field.ErrAim, `"Oddo": more than one aim: give one of goal, net_goal and share`},
		"Oddo,12,,,,,3600,,0.5,,":                 {field.ErrAim, `"Oddo": more than one aim: give one of goal, net_goal and share`},
		"Oddo,12,,,,,,,1.5,,":                     {field.ErrNumber, `"Oddo": bad number: share 1.5 is not within 0.001 to 1`},
		"Oddo,12,,,,,,,,soon,":                    {field.ErrTime, `"Oddo": bad time: start_delay "soon" is not H:MM:SS or a number of seconds, of at most 1000 hours`},
		"ilva  TARN,12,,,,,,,,,":                  {field.ErrDuplicate, `name stands twice: "ilva  TARN" is that of line 2`},
	} {
		f := read(t, head+"Ilva Tarn,12,,,,,,,,,\n"+row+"\nFenna,11,,,,,,,,,\n")
		if len(f.Entries) != 3 || f.Entries[0].Err != nil || f.Entries[2].Err != nil || f.Entries[2].Line != 4 || f.Entries[2].Runner.Name != "Fenna" {
			t.Errorf("%q: %+v", row, f.Entries)
			continue
		}
		err := f.Entries[1].Err
		if !errors.Is(err, want.cause) || err.Error() != "r.csv:3: "+want.text {
			t.Errorf("%q:\ngot  %v\nwant r.csv:3: %s", row, err, want.text)
		}
	}
}

// A row that was refused does not keep its name from the row that mends it.
func TestReadRefusedRowHasNoName(t *testing.T) {
	t.Parallel()
	f := read(t, "name,hour_power\nIlva,many\nIlva,12\nIlva,13\n")
	if f.Entries[1].Err != nil || !errors.Is(f.Entries[2].Err, field.ErrDuplicate) || !strings.HasSuffix(f.Entries[2].Err.Error(), "line 3") {
		t.Errorf("%+v", f.Entries)
	}
}

func TestReadRefusesFiles(t *testing.T) {
	t.Parallel()
	for text, want := range map[string]struct {
		cause error
		text  string
	}{
		"":                           {field.ErrNoRunners, "r.csv:1: no runners: the file is empty"},
		"\n# only this\n":            {field.ErrNoRunners, "r.csv:1: no runners: the file is empty"},
		"name,hour_power\n\n":        {field.ErrNoRunners, "r.csv:2: no runners: nothing stands below the header"},
		"hour_power\n12\n":           {field.ErrHeader, "r.csv:1: bad header: column name is missing"},
		"# x\nname,goal\nIlva,\n":    {field.ErrHeader, "r.csv:2: bad header: columns hour_power and results are both missing"},
		"name,hour_power,Name\n":     {field.ErrHeader, `r.csv:1: bad header: column "name" stands twice`},
		"name,\"hour_power\nIlva,\n": {field.ErrSyntax, "r.csv:1: bad CSV: a quote is left open"},
		"\xff\xfen\x00a\x00":         {field.ErrText, "r.csv: not UTF-8 text: it is UTF-16; save it as CSV in UTF-8"},
	} {
		f, err := field.Read(strings.NewReader(text), field.ReadOptions{File: "r.csv"})
		if !errors.Is(err, want.cause) || err.Error() != want.text || f.Entries != nil {
			t.Errorf("%q: %v, want %s", text, err, want.text)
		}
	}
	if _, err := field.Read(iotest.ErrReader(os.ErrPermission), field.ReadOptions{}); !errors.Is(err, os.ErrPermission) {
		t.Errorf("a failing reader: %v", err)
	}
	if _, err := field.Read(endless{}, field.ReadOptions{}); !errors.Is(err, field.ErrTooLarge) {
		t.Errorf("an endless file: %v", err)
	}
}

type endless struct{}

func (endless) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = '#'
	}
	return len(p), nil
}

func TestReadWarnings(t *testing.T) {
	t.Parallel()
	f := read(t, "name,hour_power,Shoe;size,,\nIlva,12,40,,\n")
	want := []string{`r.csv: column "Shoe;size" is not used`, "r.csv: columns without a name are not used: 2"}
	if d := diff(want, f.Warnings); d != "" {
		t.Error(d)
	}
}

// thousands is a runners file of n rows of which three are broken.
func thousands(n int) []byte {
	var b bytes.Buffer
	b.WriteString("name,hour_power,endurance,fade,braking,goal,start_delay\n")
	for i := range n {
		switch i {
		case n / 4:
			fmt.Fprintf(&b, "\"Runner %d,12,0.1,0.02,1,,\n", i)
		case n / 2:
			fmt.Fprintf(&b, "Runner %d,twelve,0.1,0.02,1,,\n", i)
		case n - 1:
			b.WriteString("Runner 7,12,0.1,0.02,1,,\n")
		default:
			fmt.Fprintf(&b, "Runner %d,%.2f,0.1,0.02,%.1f,,0:0%d:30\n", i, 8+float64(i%1000)/100, 1+float64(i%10)/10, i%8)
		}
	}
	return b.Bytes()
}

// 100 000 runners with three broken rows: three clear errors, and the rest done.
func TestThreeBrokenRowsOfManyThousand(t *testing.T) {
	t.Parallel()
	const n = 100_000
	f, err := field.Read(bytes.NewReader(thousands(n)), field.ReadOptions{File: "r.csv"})
	if err != nil || len(f.Entries) != n {
		t.Fatal(err, len(f.Entries))
	}
	var planned int
	var failed []string
	for out, err := range field.Each(t.Context(), nil, plan.Race{}, f.Entries, field.Options{Plan: stub}) {
		switch {
		case err != nil:
			t.Fatal(err)
		case out.Err != nil:
			failed = append(failed, out.Err.Error())
		case out.Plan.Athlete != f.Entries[planned+len(failed)].Runner.Athlete:
			t.Fatalf("entry %d has another's plan", out.Index)
		default:
			planned++
		}
	}
	want := []string{
		"r.csv:25002: bad CSV: a quote is left open",
		`r.csv:50002: "Runner 50000": bad number: hour_power "twelve" is not a finite number`,
		`r.csv:100001: name stands twice: "Runner 7" is that of line 9`,
	}
	if d := diff(want, failed); d != "" || planned != n-3 {
		t.Errorf("%d planned; %s", planned, d)
	}
}

func BenchmarkRead(b *testing.B) {
	text := thousands(100_000)
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		if _, err := field.Read(bytes.NewReader(text), field.ReadOptions{}); err != nil {
			b.Fatal(err)
		}
	}
}

// What is accepted can be planned for, and whatever comes is refused on its line.
func FuzzRead(f *testing.F) {
	f.Add([]byte("name,hour_power,goal,share,wave\nIlva,12,1:00:00,,0\nOddo,11,,0.5,\n"))
	f.Add([]byte("\ufeffname;hour_power;fade\r\n\"Il\"\"va\";12,5;0,02\r\n# x\r\n;;\r\n"))
	f.Add([]byte("name,results\nIlva,past.csv\nilva,\n\"x\n"))
	f.Add(thousands(20))
	f.Fuzz(func(t *testing.T, text []byte) {
		file, err := field.Read(bytes.NewReader(text), field.ReadOptions{File: "r.csv"})
		if err != nil {
			return
		}
		last, seen := 1, map[string]bool{}
		for _, e := range file.Entries {
			if e.Line <= last {
				t.Fatalf("line %d after line %d", e.Line, last)
			}
			last = e.Line
			if e.Err != nil {
				var located *field.Error
				if !errors.As(e.Err, &located) || located.Line != e.Line || strings.ContainsAny(e.Err.Error(), "\n\r\x00") {
					t.Fatalf("%q", e.Err)
				}
				continue
			}
			a := e.Runner.Athlete
			if a.HourPower == 0 && e.Runner.Results != "" {
				a.HourPower = 12
			}
			if err := a.Check(); err != nil || e.Runner.Name == "" || seen[e.Runner.Name] || strings.TrimSpace(e.Runner.Name) != e.Runner.Name {
				t.Fatalf("%+v: %v", e, err)
			}
			seen[e.Runner.Name] = true
		}
	})
}
