package record_test

import (
	"bytes"
	"errors"
	"strings"
	"testing"

	"isoeffort.example/effort/record"
)

func FuzzRead(f *testing.F) {
	for _, c := range refusals {
		f.Add([]byte(c.text))
	}
	f.Add([]byte("\ufeffnote;gpx;role;time;descent_m;ascent_m;distance_m;course;race;runner;date\r\n\"a\r\rb\";l.gpx;fit;0:50:07,25;31;30,5;9999,5;c;r;n;2024-10-05T01:02:03.5+24:59\r\n"))
	f.Add([]byte("time,distance_m,date,foo,\n# c\n1:00:00,1e3,2024-05-31,\"x\ny\",\n,,,,\n3600,-0,2024-05-31,,\n3600,7,2024-05-31,,\n"))
	f.Fuzz(func(t *testing.T, file []byte) {
		res, err := record.Read(bytes.NewReader(file), record.Options{File: "r.csv"})
		if err != nil {
			checkRefusal(t, err)
		} else {
			checkAccepted(t, res)
		}
		every, everyErr := record.Read(bytes.NewReader(file), record.Options{File: "r.csv", Every: true})
		checkEvery(t, every, everyErr, err)
	})
}

func checkRefusal(t *testing.T, err error) {
	t.Helper()
	located, ok := err.(*record.Error)
	if !ok || located.Line < 1 || located.File != "r.csv" {
		t.Fatalf("not located: %#v", err)
	}
	if text := err.Error(); strings.ContainsAny(text, "\n\r\x00") || len(text) > 500 {
		t.Fatalf("not one short line: %q", text)
	}
	for _, cause := range []error{
		record.ErrTime, record.ErrDistance, record.ErrAscent, record.ErrDate, record.ErrRole, record.ErrTooFast,
		record.ErrHeader, record.ErrSyntax, record.ErrText, record.ErrNoResults,
	} {
		if errors.Is(err, cause) {
			return
		}
	}
	t.Fatalf("no sentinel in %v", err)
}

func checkAccepted(t *testing.T, res record.Results) {
	t.Helper()
	last := 1
	for _, r := range res.Results {
		if err := r.Check(); err != nil {
			t.Fatalf("accepted %+v: %v", r, err)
		}
		if r.Line <= last {
			t.Fatalf("line %d after %d", r.Line, last)
		}
		last = r.Line
	}
	for _, w := range res.Warnings {
		if strings.ContainsAny(w, "\n\r\x00") {
			t.Fatalf("not one line: %q", w)
		}
	}
	checkRoundTrip(t, res.Results, res.Results)
}

// checkEvery holds Options.Every against what Read says without it.
func checkEvery(t *testing.T, res record.Results, err, first error) {
	t.Helper()
	all, isAll := err.(record.Errors)
	switch {
	case (err == nil) != (first == nil):
		t.Fatalf("%v, but with Every %v", first, err)
	case err == nil:
	case !isAll:
		checkRefusal(t, err)
	default:
		for _, fault := range all {
			checkRefusal(t, fault)
		}
		if all[0].Error() != first.Error() {
			t.Fatalf("%v, but with Every first %v", first, all[0])
		}
		if len(res.Results) > 0 {
			checkAccepted(t, res)
		}
	}
}
