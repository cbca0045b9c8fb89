package record_test

import (
	"errors"
	"strings"
	"testing"

	"isoeffort.example/effort/record"
)

const header = "distance_m,time,date,ascent_m,descent_m,role,gpx\n"

// refusals are files, the line that is to blame and the cause.
var refusals = []struct {
	name, text string
	line       int
	cause      error
	says       string
}{
	{"empty file", "", 1, record.ErrNoResults, "the file is empty"},
	{"comments only", "# a\n\n# b\n", 1, record.ErrNoResults, "the file is empty"},
	{"header only", "# a\n" + header, 2, record.ErrNoResults, "below the header"},
	{"header and empty rows", header + ",,,,,,\n\n", 1, record.ErrNoResults, ""},

	{"no known column", "a,b\n1,2\n", 1, record.ErrHeader, "columns distance_m, time, date are missing"},
	{"two columns missing", "\ntime\n1\n", 2, record.ErrHeader, "columns distance_m, date are missing"},
	{"one column missing", "time,distance_m\n1,2\n", 1, record.ErrHeader, "column date is missing"},
	{"tabs", "time\tdistance_m\tdate\n1\t2\t3\n", 1, record.ErrHeader, "are missing"},
	{"duplicate", "time,distance_m,date,Time\n1,2,3,4\n", 1, record.ErrHeader, `column "time" stands twice`},
	{"bare quote in the header", "time,dist\"ance_m,date\n1,2,3\n", 1, record.ErrSyntax, ""},

	{"too few fields", header + "10000,3600,2024-05-31\n", 2, record.ErrSyntax, "the header has 7 fields, this row 3"},
	{"too many fields", header + "10000,3600,2024-05-31,,,,,\n", 2, record.ErrSyntax, "this row 8"},
	{"unquoted decimal comma", "distance_m,time,date\n10000,5,3600,2024-05-31\n", 2, record.ErrSyntax, "this row 4"},
	{"bare quote", header + "10000,3600,2024-05-31,,,,\n10000,36\"00,2024-05-31,,,,\n", 3, record.ErrSyntax, "bare \""},
	{"text after a quote", header + "\"10000\"x,3600,2024-05-31,,,,\n", 2, record.ErrSyntax, ""},
	{"quote left open", header + "\"10000,3600,2024-05-31,,,,\n1,1,1,,,,\n", 2, record.ErrSyntax, ""},
	{"NUL", header + "10000,3600,2024-05-31,,,,a\x00b\n", 2, record.ErrText, "byte 0x00"},
	{"other encoding", header + "\n10000,3600,2024-05-31,,,,Stra\xdfe\n", 3, record.ErrText, "byte 0xdf"},
	{"UTF-16", "\xff\xfed\x00i\x00", 1, record.ErrText, "UTF-16"},

	{"distance empty", header + ",3600,2024-05-31,,,,\n", 2, record.ErrDistance, "no gpx is given"},
	{"distance zero", header + "0,3600,2024-05-31,,,,\n", 2, record.ErrDistance, "not positive"},
	{"distance zero beside gpx", header + "0,3600,2024-05-31,,,,a.gpx\n", 2, record.ErrDistance, "not positive"},
	{"distance negative", header + "-10000,3600,2024-05-31,,,,\n", 2, record.ErrDistance, "-10000 m is not positive"},
	{"distance NaN", header + "NaN,3600,2024-05-31,,,,\n", 2, record.ErrDistance, "not a finite number"},
	{"distance Inf", header + "+Inf,3600,2024-05-31,,,,\n", 2, record.ErrDistance, "not a finite number"},
	{"distance overflow", header + "1e999,3600,2024-05-31,,,,\n", 2, record.ErrDistance, "not a finite number"},
	{"distance unreadable", header + "10 km,3600,2024-05-31,,,,\n", 2, record.ErrDistance, `"10 km" is not a number`},
	{"distance hexadecimal", header + "0x2710,3600,2024-05-31,,,,\n", 2, record.ErrDistance, "not a number"},
	{"distance as in program text", header + "10_000,3600,2024-05-31,,,,\n", 2, record.ErrDistance, "not a number"},
	{"distance grouped", header + "\"10,000\",3600,2024-05-31,,,,\n", 2, record.ErrDistance, "not a number"},
	{"distance grouped twice", "distance_m;time;date\n1.000,5;3600;2024-05-31\n", 2, record.ErrDistance, "not a number"},
	{"distance too long", header + "1000001,3600000,2024-05-31,,,,\n", 2, record.ErrDistance, "longer than 1000 km"},

	{"ascent negative", header + "10000,3600,2024-05-31,-1,,,\n", 2, record.ErrAscent, "ascent -1 m"},
	{"ascent NaN", header + "10000,3600,2024-05-31,nan,,,\n", 2, record.ErrAscent, "finite"},
	{"ascent unreadable", header + "10000,3600,2024-05-31,high,,,\n", 2, record.ErrAscent, `"high"`},
	{"descent negative", header + "10000,3600,2024-05-31,,-1,,\n", 2, record.ErrAscent, "descent -1 m"},
	{"descent Inf", header + "10000,3600,2024-05-31,,-inf,,\n", 2, record.ErrAscent, "finite"},
	{"descent unreadable", header + "10000,3600,2024-05-31,,?,,\n", 2, record.ErrAscent, `"?"`},
	{"too steep", header + "1000,3600,2024-05-31,501,,,\n", 2, record.ErrAscent, "steeper than 100 %"},
	{"too steep down", header + "1000,3600,2024-05-31,0,1001,,\n", 2, record.ErrAscent, "steeper than 100 %"},

	{"time empty", header + "10000,,2024-05-31,,,,\n", 2, record.ErrTime, ""},
	{"time zero", header + "10000,0:00:00,2024-05-31,,,,\n", 2, record.ErrTime, "not positive"},
	{"time zero seconds", header + "10000,0.0,2024-05-31,,,,\n", 2, record.ErrTime, "not positive"},
	{"time negative", header + "10000,-3600,2024-05-31,,,,\n", 2, record.ErrTime, `"-3600"`},
	{"time NaN", header + "10000,NaN,2024-05-31,,,,\n", 2, record.ErrTime, ""},
	{"time Inf", header + "10000,Inf,2024-05-31,,,,\n", 2, record.ErrTime, ""},
	{"time unreadable", header + "10000,an hour,2024-05-31,,,,\n", 2, record.ErrTime, `"an hour" is not H:MM:SS`},
	{"time with two parts", header + "10000,40:00,2024-05-31,,,,\n", 2, record.ErrTime, "hours and minutes or minutes and seconds"},
	{"time with two parts and decimals", header + "10000,40:00.5,2024-05-31,,,,\n", 2, record.ErrTime, "hours and minutes"},
	{"time with four parts", header + "10000,0:1:00:00,2024-05-31,,,,\n", 2, record.ErrTime, ""},
	{"60 seconds", header + "10000,0:40:60,2024-05-31,,,,\n", 2, record.ErrTime, ""},
	{"60 minutes", header + "10000,0:60:00,2024-05-31,,,,\n", 2, record.ErrTime, ""},
	{"one digit of minutes", header + "10000,1:4:00,2024-05-31,,,,\n", 2, record.ErrTime, ""},
	{"point without digits", header + "10000,0:40:00.,2024-05-31,,,,\n", 2, record.ErrTime, ""},
	{"no hours", header + "10000,:40:00,2024-05-31,,,,\n", 2, record.ErrTime, ""},
	{"time decimal comma between commas", header + "10000,\"0:40:00,5\",2024-05-31,,,,\n", 2, record.ErrTime, ""},
	{"time too long", header + "10000,1000:00:01,2024-05-31,,,,\n", 2, record.ErrTime, "longer than 1000 h"},
	{"time overflow", header + "10000,99999999999999999999,2024-05-31,,,,\n", 2, record.ErrTime, ""},

	{"date empty", header + "10000,3600,,,,,\n", 2, record.ErrDate, ""},
	{"date unreadable", header + "10000,3600,31.05.2024,,,,\n", 2, record.ErrDate, `"31.05.2024" is not a day of the form 2006-01-02`},
	{"no such day", header + "10000,3600,2023-02-29,,,,\n", 2, record.ErrDate, ""},
	{"time without zone", header + "10000,3600,2024-05-31T09:00:00,,,,\n", 2, record.ErrDate, ""},
	{"date too early", header + "10000,3600,1899-12-31,,,,\n", 2, record.ErrDate, "1899"},
	{"date too late", header + "10000,3600,2201-01-01,,,,\n", 2, record.ErrDate, "2201"},

	{"role", header + "10000,3600,2024-05-31,,,test,\n", 2, record.ErrRole, `"test" is neither fit nor predict nor empty`},
	{"too fast", header + "10000,0:20:00,2024-05-31,,,,\n", 2, record.ErrTooFast, "faster than any human: 10 km in 0:20:00; below 0:2"},
	{"minutes taken for seconds", header + "10000,40,2024-05-31,,,,\n", 2, record.ErrTooFast, ""},
	{"third row", header + "10000,3600,2024-05-31,,,,\n# c\n\n10000,3600,2024-05-31,,,,\n10000,3600,x,,,,\n", 6, record.ErrDate, ""},
	{"row of two lines", header + "10000,3600,2024-05-31,,,,\"a\nb\"\nx,3600,2024-05-31,,,,\"a\nb\"\n", 4, record.ErrDistance, ""},
}

func TestRefusals(t *testing.T) {
	for _, c := range refusals {
		t.Run(c.name, func(t *testing.T) {
			res, err := record.Read(strings.NewReader(c.text), record.Options{File: "r.csv"})
			var located *record.Error
			if !errors.As(err, &located) {
				t.Fatalf("got %v, %v", res, err)
			}
			if located.Line != c.line || located.File != "r.csv" || !errors.Is(err, c.cause) {
				t.Errorf("got %v, want line %d: %v", err, c.line, c.cause)
			}
			if !strings.Contains(err.Error(), c.says) || strings.Contains(err.Error(), "\n") {
				t.Errorf("text %q, want %q in it", err, c.says)
			}
			if len(res.Results)+len(res.Warnings) > 0 {
				t.Errorf("results beside an error: %+v", res)
			}
		})
	}
}

// A field is repeated on one line and not at length.
func TestRefusalTextIsShort(t *testing.T) {
	field := strings.Repeat("é\n", 5000)
	_, err := record.Read(strings.NewReader(header+"10000,\""+field+"\",2024-05-31,,,,\n"), record.Options{File: "r.csv"})
	if err == nil || len(err.Error()) > 300 || strings.Contains(err.Error(), "\n") {
		t.Errorf("got %v", err)
	}
}
