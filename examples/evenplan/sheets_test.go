package main

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// Each sheet is printed for the invented runner, in its own words.
func TestSheets(t *testing.T) {
	t.Parallel()
	for format, want := range map[string]string{
		"card": "split card</title>", "late": "IF YOU ARE LATE", "briefing": "THE RACE", "fuel": "Drink to thirst", "forecast": "FORECAST, no plan", "profile": "<svg ",
		"gpx": "<gpx ",
	} {
		t.Run(format, func(t *testing.T) {
			t.Parallel()
			o := planned(t, "nowhere", "-format", format, "-goal", "10:40:00", "-start-delay", "5m")
			if !strings.Contains(o.out, want) {
				t.Errorf("no %q in\n%.400s", want, o.out)
			}
			if format != "card" && format != "profile" && format != "gpx" {
				checkPage(t, o.out)
			}
		})
	}
}

// A goal that the forecast gives less than one in ten gets no card.
func TestUnlikelyCard(t *testing.T) {
	t.Parallel()
	checkRefused(t, evenplan("nowhere", "-format", "card", "-goal", "9:00:00"), "evenplan: the goal is beyond this runner: no card without an override")
	if o := planned(t, "nowhere", "-format", "card-not-advised", "-goal", "9:00:00"); strings.Count(o.out, "NOT ADVISED") != 2 {
		t.Errorf("no warning on both sides:\n%s", o.out)
	}
}

// During the race: on time there is nothing to change, late the sheet says so, and where.
func TestPassage(t *testing.T) {
	t.Parallel()
	o := planned(t, "nowhere", "-goal", "10:40:00", "-passage", "20=2:25:00", "-passage", "mossbell barn=5:40:00")
	checkPage(t, o.out)
	for _, want := range []string{"where you stand", "Mossbell Barn, 44.0 km at 5:40:00", "later than planned", "the rest of the race", "Finish"} {
		if !strings.Contains(o.out, want) {
			t.Errorf("no %q in\n%s", want, o.out)
		}
	}
	for _, bad := range [][]string{{"-passage", "90=5:00:00"}, {"-passage", "nowhere=5:00:00"}, {"-passage", "44=0:10:00", "-passage", "20=2:00:00"}, {"-passage", "44"}} {
		checkRefused(t, evenplan("nowhere", bad...), "evenplan: ")
	}
}

// After the race: the plan's own GPX, recorded as it was planned, loses nothing anywhere.
func TestRecorded(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	args := []string{"-goal", "10:40:00", "-start", "2026-06-14T05:30:00Z"}
	gpx := planned(t, dir, append(args, "-format", "gpx")...)
	if err := os.WriteFile(filepath.Join(dir, "race.gpx"), []byte(gpx.out), 0o600); err != nil {
		t.Fatal(err)
	}
	o := planned(t, dir, append(args, "-recorded", "@/race.gpx")...)
	checkPage(t, o.out)
	if !strings.Contains(o.out, "debrief") {
		t.Errorf("no debrief:\n%s", o.out)
	}
	if late := regexp.MustCompile(`Finish .* ([+-]?\d+:\d\d)\s*$`).FindStringSubmatch(o.out); late != nil && late[1] != "0:00" {
		t.Errorf("late by %s:\n%s", late[1], o.out)
	}
	checkRefused(t, evenplan(dir, "-recorded", "@/none.gpx"), "none.gpx: ")
}
