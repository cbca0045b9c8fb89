package record_test

import (
	"bytes"
	"io"
	"strings"
	"testing"
	"time"

	"isoeffort.example/effort/record"
)

// study is a results file of n rows with every column filled.
func study(n int) []byte {
	results := make([]record.Result, n)
	for i := range results {
		r := good()
		r.Runner, r.Race, r.Course, r.Note = "Ilva of the Weir", "Autumn Loop", "Long Loop", "wet, windy"
		r.Distance += float64(i) / 8
		r.Time += time.Duration(i) * 17 * time.Millisecond
		r.Role = record.Role(i % 3)
		results[i] = r
	}
	var file bytes.Buffer
	if err := record.Write(&file, results); err != nil {
		panic(err)
	}
	return file.Bytes()
}

// A study of 20 000 rows is meant to read in well under 100 ms.
func BenchmarkRead20000(b *testing.B) {
	file := study(20_000)
	b.SetBytes(int64(len(file)))
	b.ReportAllocs()
	for b.Loop() {
		if res, err := record.Read(bytes.NewReader(file), record.Options{}); err != nil || len(res.Results) != 20_000 {
			b.Fatal(err)
		}
	}
}

// The same with every row refused.
func BenchmarkReadEvery20000Refused(b *testing.B) {
	file := []byte(strings.ReplaceAll(string(study(20_000)), "2024-05-31", "31.05.2024"))
	b.ReportAllocs()
	for b.Loop() {
		if _, err := record.Read(bytes.NewReader(file), record.Options{Every: true}); err == nil {
			b.Fatal("accepted")
		}
	}
}

func BenchmarkWrite20000(b *testing.B) {
	res, err := record.Read(bytes.NewReader(study(20_000)), record.Options{})
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if err := record.Write(io.Discard, res.Results); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkFastestTime(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		record.FastestTime(57_000, 900, 900)
	}
}
