package record_test

import (
	"errors"
	"fmt"
	"os"
	"strings"
	"time"

	"isoeffort.example/effort/record"
)

func ExampleRead() {
	file := strings.NewReader(`# two autumns
Date,Runner,Race,Distance_m,Ascent_m,Time,Role,Shoes
2023-10-07,Ilva,Autumn Loop,25000,600,2:11:40,fit,old
2024-10-05,Ilva,Autumn Loop,25000,600,2:05:07.5,predict,new
`)
	res, err := record.Read(file, record.Options{File: "ilva.csv"})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, r := range res.Results {
		fmt.Println(r.Line, r.Date.Format(time.DateOnly), r.Distance, r.Ascent, r.Descent, r.Time, r.Role)
	}
	fmt.Println(res.Warnings)
	// Output:
	// 3 2023-10-07 25000 600 600 2h11m40s fit
	// 4 2024-10-05 25000 600 600 2h5m7.5s predict
	// [ilva.csv: column "Shoes" is not used]
}

// A file as a spreadsheet program writes it where the comma is the decimal sign.
func ExampleRead_decimalComma() {
	file := "distance_m;time;date\r\n10012,5;0:39:58,2;2024-05-31\r\n"
	res, err := record.Read(strings.NewReader(file), record.Options{})
	fmt.Println(res.Results[0].Distance, res.Results[0].Time, err)
	// Output: 10012.5 39m58.2s <nil>
}

func ExampleRead_refused() {
	file := `distance_m,time,date
25000,2:05:07,2024-10-05
10000,40:00,2024-05-31
`
	_, err := record.Read(strings.NewReader(file), record.Options{File: "ilva.csv"})
	fmt.Println(err)
	fmt.Println(errors.Is(err, record.ErrTime))
	// Output:
	// ilva.csv:3: bad time: "40:00" may be hours and minutes or minutes and seconds; write H:MM:SS, such as 0:40:00
	// true
}

// Every row that is refused, with the others kept.
func ExampleRead_every() {
	file := `distance_m,time,date
-10000,0:50:00,2024-05-31
25000,2:05:07,2024-10-05
25000,2:05:07,05/10/2024
`
	res, err := record.Read(strings.NewReader(file), record.Options{File: "study.csv", Every: true})
	fmt.Println(len(res.Results), "accepted")
	fmt.Println(err)
	// Output:
	// 1 accepted
	// study.csv:2: bad distance: -10000 m is not positive
	// study.csv:4: bad date: "05/10/2024" is not a day of the form 2006-01-02 or such a time as 2006-01-02T15:04:05Z
}

func ExampleWrite() {
	err := record.Write(os.Stdout, []record.Result{{
		Runner: "Ilva", Race: "Autumn Loop", Date: time.Date(2024, 10, 5, 0, 0, 0, 0, time.UTC),
		Distance: 25_000, Ascent: 600, Descent: 600, Time: 2*time.Hour + 5*time.Minute + 7*time.Second,
	}})
	fmt.Println(err)
	// Output:
	// date,runner,race,course,distance_m,ascent_m,descent_m,time,role,gpx,note
	// 2024-10-05,Ilva,Autumn Loop,,25000,600,600,2:05:07,,,
	// <nil>
}

// The marathon bound, level and on a course that drops.
func ExampleFastestTime() {
	fmt.Println(record.FastestTime(42_195, 0, 0).Round(time.Second))
	fmt.Println(record.FastestTime(42_195, 100, 500).Round(time.Second))
	// Output:
	// 1h44m47s
	// 1h27m19s
}
