package treadmill_test

import (
	"errors"
	"io"
	"reflect"
	"strings"
	"testing"
	"testing/iotest"

	"isoeffort.example/effort/treadmill"
)

const head = "gradient,cost_j_per_kg_m,weight,speed_m_per_s\n"

func TestReadCSV(t *testing.T) {
	t.Parallel()
	text := "\ufeff# a comment\r\n Cost_J_per_kg_m ,note,GRADIENT,weight,speed_m_per_s\r\n" +
		"3.4,\"level, easy\",0,,3\r\n\r\n,,,,\r\n# up\r\n 5.9 ,,+1e-1,4,\r\n"
	points, warnings, err := treadmill.ReadCSV(strings.NewReader(text), "lab.csv")
	want := []treadmill.Point{{Gradient: 0, Cost: 3.4, Speed: 3}, {Gradient: 0.1, Cost: 5.9, Weight: 4}}
	if err != nil || !reflect.DeepEqual(points, want) {
		t.Errorf("%v, %+v", err, points)
	}
	if !reflect.DeepEqual(warnings, []string{`lab.csv:2: column "note" is not used`}) {
		t.Error(warnings)
	}
}

func TestReadCSVRefusals(t *testing.T) {
	t.Parallel()
	cases := []struct {
		name, text string
		line       int
		cause      error
		says       string
	}{
		{"empty", "", 1, treadmill.ErrNoPoints, "the file is empty"},
		{"header only", "# c\n" + head, 2, treadmill.ErrNoPoints, "below the header"},
		{"no cost", "gradient,weight\n0,1\n", 1, treadmill.ErrHeader, "column cost_j_per_kg_m is missing"},
		{"semicolons", "gradient;cost_j_per_kg_m\n0;3\n", 1, treadmill.ErrHeader, "column gradient is missing; commas separate columns"},
		{"twice", "gradient,Gradient,cost_j_per_kg_m\n", 1, treadmill.ErrHeader, "column gradient stands twice"},
		{"quote in the header", "gra\"dient\n", 1, treadmill.ErrSyntax, ""},
		{"few fields", head + "0,3,1,3\n0.1,4\n", 3, treadmill.ErrSyntax, "the header has 4 fields, this row 2"},
		{"decimal comma", "gradient,cost_j_per_kg_m\n0,1,3,4\n", 2, treadmill.ErrSyntax, "this row 4"},
		{"open quote", head + "0,3,1,3\n\"0.1,4,1,3\n", 3, treadmill.ErrSyntax, ""},
		{"gradient empty", head + ",3,1,3\n", 2, treadmill.ErrGradient, `"" is not a number`},
		{"gradient in percent", head + "10%,3,1,3\n", 2, treadmill.ErrGradient, `"10%" is not a number`},
		{"percent", head + "10,3,1,3\n", 2, treadmill.ErrGradient, "10 % is 0.10"},
		{"gradient NaN", head + "nan,3,1,3\n", 2, treadmill.ErrGradient, "not a finite number"},
		{"cost empty", head + "0,,1,3\n", 2, treadmill.ErrCost, `"" is not a number`},
		{"cost hexadecimal", head + "0,0x3,1,3\n", 2, treadmill.ErrCost, "not a number"},
		{"cost too large", head + "0,1e999,1,3\n", 2, treadmill.ErrCost, "not a finite number"},
		{"cost negative", head + "0,3,1,3\n\n# c\n0,-3,1,3\n", 5, treadmill.ErrCost, "-3 J/(kg m) is not positive"},
		{"weight 0", head + "0,3,0,3\n", 2, treadmill.ErrWeight, "it is 0; leave the field empty or the row out"},
		{"weight negative", head + "0,3,-1,3\n", 2, treadmill.ErrWeight, "-1"},
		{"speed 0", head + "0,3,1,0\n", 2, treadmill.ErrSpeed, "it is 0"},
		{"speed in km/h", head + "0,3,1,16\n", 2, treadmill.ErrSpeed, "16 m/s is not within"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			points, warnings, err := treadmill.ReadCSV(strings.NewReader(c.text), "lab.csv")
			var located *treadmill.FileError
			if !errors.As(err, &located) || located.Line != c.line || located.File != "lab.csv" || !errors.Is(err, c.cause) {
				t.Fatalf("got %v, want line %d: %v", err, c.line, c.cause)
			}
			if !strings.Contains(err.Error(), c.says) || points != nil || warnings != nil {
				t.Errorf("%q, want %q in it; %v %v", err, c.says, points, warnings)
			}
		})
	}
}

func TestReadCSVReader(t *testing.T) {
	t.Parallel()
	if _, _, err := treadmill.ReadCSV(iotest.ErrReader(io.ErrClosedPipe), "lab.csv"); !errors.Is(err, io.ErrClosedPipe) {
		t.Error(err)
	}
	endless := io.MultiReader(strings.NewReader(head), zeros{})
	if _, _, err := treadmill.ReadCSV(endless, "lab.csv"); !errors.Is(err, treadmill.ErrTooLarge) {
		t.Error(err)
	}
}

type zeros struct{}

func (zeros) Read(p []byte) (int, error) {
	for j := range p {
		p[j] = '0'
	}
	return len(p), nil
}

// Whatever a file holds, it is refused with a place or gives points that pass Check.
func FuzzReadCSV(f *testing.F) {
	f.Add(head + "0,3.4,,3\n-0.1,2.6,4,\n")
	f.Add("cost_j_per_kg_m,gradient\n\"3\",0\n")
	f.Add("\ufeff#\n" + head)
	f.Fuzz(func(t *testing.T, text string) {
		points, _, err := treadmill.ReadCSV(strings.NewReader(text), "f")
		var located *treadmill.FileError
		switch {
		case err != nil && (!errors.As(err, &located) || located.Line < 1 || strings.Contains(err.Error(), "\n") || points != nil):
			t.Errorf("error %q, points %v", err, points)
		case err == nil && len(points) == 0:
			t.Error("neither points nor an error")
		}
		for _, p := range points {
			if err := p.Check(); err != nil {
				t.Error(err)
			}
		}
	})
}
