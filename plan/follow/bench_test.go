package follow_test

import (
	"fmt"
	"testing"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/plan"
	"isoeffort.example/plan/follow"
)

// long is a plan for 100 km with 15 stations at the default step.
func long(b *testing.B) *plan.Plan {
	b.Helper()
	var marks []course.Landmark
	for i := 1; i < 16; i++ {
		marks = append(marks, course.Landmark{Name: fmt.Sprintf("Station %d", i), Distance: float64(6_000 * i), Kind: course.Station})
	}
	c := profile(b, 100_000, rolling, marks...)
	return even(b, c, effort.Usual(12), plan.Race{Goal: 15 * time.Hour, Stations: plan.Stations{Each: 3 * time.Minute}, Cutoffs: []plan.Cutoff{{Distance: 60_000, Time: 10 * time.Hour}, {Distance: 100_000, Time: 17 * time.Hour}}})
}

func BenchmarkRest(b *testing.B) {
	p := long(b)
	a := after(p, 48_000, 12*time.Minute)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := from(b, p, a).Rest(follow.Options{}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkPaper(b *testing.B) {
	p := long(b)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := follow.Paper(p, follow.CardOptions{}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkReview(b *testing.B) {
	p := long(b)
	a := recorded(p, p.Traverse(), noisy(0.1, 1))
	b.ReportAllocs()
	for b.Loop() {
		if _, err := follow.Review(p, a, follow.DebriefOptions{}); err != nil {
			b.Fatal(err)
		}
	}
}
