package main

import (
	"strings"
	"testing"
	"unicode/utf8"
)

// badFlags are command lines that cannot be followed, and what the line says behind
// "evenplan: ".
var badFlags = []struct {
	args []string
	want string
}{
	{[]string{"-unknown"}, "flag provided but not defined: -unknown"},
	{[]string{"-goal"}, "flag needs an argument: -goal"},
	{[]string{"course.gpx"}, "unexpected argument \"course.gpx\""},
	{[]string{"-net"}, "-net: "},
	{[]string{"-net=perhaps", "-goal", "9:00:00"}, "invalid boolean value"},
	{[]string{"-athlete", "hour_power=12", "-results", "past.csv"}, "-athlete and -results: "},
	{[]string{"-athlete", "hour_power=12", "-runner", "Ada Quill"}, "-runner: "},
	{[]string{"-course", ""}, "-course: no file named"},
	{[]string{"-results", ""}, "-results: no file named"},
	{[]string{"-goal", "1:00:00", "-start-delay", "1h"}, "-goal 1h0m0s: not longer than the start delay"},
	{[]string{"-goal", "1:00:00", "-start-delay", "2h"}, "-goal 1h0m0s: not longer than the start delay"},
	{[]string{"-athlete", "hour_power=1", "-goal", "20:00:00", "-step", "1000"}, "athlete out of range: "},
}

// badValues are values out of range for each flag, besides those for every one.
var badValues = map[string][]string{
	"length":      {"0", "99", "1000001", "1e308", "-1"},
	"smooth":      {"5001", "1e308", "-1"},
	"air":         {"0.11", "1e308", "-0.01", "-1"},
	"step":        {"0", "0.5", "10001", "1e308", "-1"},
	"hold-back":   {"0.21", "1e308", "-0.01", "2%"},
	"min-bout":    {"3", "2h", "-3m", "1e308", "-1", "180"},
	"start-delay": {"8", "25h", "-5m", "1e308", "-1", "99999999h"},
	"goal": {
		"0:00:00", "10:00", "9", "1:60:00", "1:00:60", "1:0:00", "-1:00:00", "1000:00:01", "99999999999999999999:00:00",
		"+1:00:00", "1:00:00.5", "1:00:00\n", "10h", "1e3:00:00", "-1", "1e308",
	},
	"start":                 {"2026-06-14", "2026-06-14T05:30:00", "05:30", "2026-13-01T05:30:00Z", "-1", "1e308"},
	"format":                {"TEXT", "xml", "text,json", "-1", "1e308"},
	"every":                 {"1", "km", "0km", "0.05km", "1001km", "1000000km", "-1km", "NaNkm", "Infkm", "1e308mi", "1KM", "1 km", "landmarks", "-1", "1e308"},
	"track":                 {"-1", "1.5", "1e308"},
	"wave":                  {"8", "25h", "-5m"},
	"crowd":                 {"1.8", "1.8,", "0,100", "11,100", "1.8,-1", "1.8,1e7", "1,2,3", "NaN,100"},
	"stop":                  {"10m", "5=", "=5m", "5=0s", "5=-1m", "5=x"},
	"station-stop":          {"8", "25h", "-5m"},
	"station-stop-per-hour": {"8", "25h", "-5m"},
	"share":                 {"0", "1.1", "-1"},
	"make-cutoffs":          {"5", "-5m"},
	"standards":             {"gold", "gold=", "gold=9", "gold=9:00:00,", "gold=9:00:00,gold=8:00:00"},
	"walk-every":            {"30", "30s", "25h", "-1m"},
	"night":                 {"21:00", "21-5", "25:00-05:00"},
	"night-factor":          {"0.2", "1.1", "-1"},
	"mark":                  {"exposed", "exposed=5", "exposed=9-5", "wet=1-2", "exposed=a-b"},
	"athlete": {
		"hour_power", "hour_power=", "hour_power=x", "hour_power=NaN", "hour_power=Inf", "hour_power=1e308", "hour_power=-1",
		"hour_power=0", "hour_power=41", "endurance=0", "endurance=0.5", "fade=-0.1", "fade=0.6", "fade_shape=0",
		"fade_shape=3", "braking=-1", "braking=11", "hour_power=12,hour_power=13", "hour_power=12,", ",", "Hour_Power=12",
		"speed=3", "hour_power=12;fade=0", "hour_power=12\nfade=0", "hour_power=12 fade=0", "1e308", "-1",
	},
}

func TestBadFlags(t *testing.T) {
	t.Parallel()
	check := func(want string, args ...string) {
		t.Run(strings.Join(args, " "), func(t *testing.T) {
			t.Parallel()
			checkRefused(t, evenplan("nowhere", args...), "evenplan: "+want)
		})
	}
	for _, bad := range badFlags {
		check(bad.want, bad.args...)
	}
	for flag, values := range badValues {
		for _, value := range append([]string{"", "NaN", "Inf", "-Inf", "x", "\x1b[31m", strings.Repeat("9", 100_000)}, values...) {
			check("", "-"+flag+"="+value)
		}
	}
}

// The ends of each range are in it.
func TestFlagsInRange(t *testing.T) {
	t.Parallel()
	dir := folder(t, map[string]string{"course.csv": profile(12_000, oneHill)})
	for _, args := range [][]string{
		{"-length", "100"},
		{"-length", "1000000", "-step", "10000"},
		{"-smooth", "0"},
		{"-smooth", "5000"},
		{"-smooth", "1e-9"},
		{"-air", "0"},
		{"-air", "0.1"},
		{"-step", "1"},
		{"-step", "10000"},
		{"-hold-back", "0"},
		{"-hold-back", "0.2"},
		{"-min-bout", "0"},
		{"-min-bout", "1ns"},
		{"-min-bout", "1h"},
		{"-start-delay", "0"},
		{"-start-delay", "24h"},
		{"-goal", "0:00:01"},
		{"-goal", "1:00:00", "-start-delay", "2h", "-net"},
		{"-goal", "1:00:00", "-start-delay", "59m59s"},
		{"-start", "0000-01-01T00:00:00Z"},
		{"-start", "9999-12-31T23:59:59-12:00"},
		{"-every", "0.1km"},
		{"-every", "1000km"},
		{"-every", "2.5mi"},
		{"-every", "landmark"},
		{"-athlete", "hour_power=40,endurance=0.01,fade=0,fade_shape=2,braking=0"},
		{"-athlete", "hour_power=40,endurance=0.4,fade=0.5,fade_shape=0.1,braking=10"},
		{"-athlete", " hour_power=12, fade=0"},
		{"-athlete", "fade=0"},
		{"-runner", ""},
		{"-runner", "Ada Quill"},
		{"--format=text"},
	} {
		t.Run(strings.Join(args, " "), func(t *testing.T) {
			t.Parallel()
			o := planned(t, dir, append(args, "-course", "@/course.csv")...)
			checkPage(t, o.out)
		})
	}
}

func TestHelp(t *testing.T) {
	t.Parallel()
	for _, flag := range []string{"-h", "-help", "--help"} {
		o := planned(t, "nowhere", flag)
		checkPage(t, o.out)
		for name := range badValues {
			if !strings.Contains(o.out, "\n  -"+name+" ") {
				t.Errorf("%s does not explain -%s", flag, name)
			}
		}
		if o.err != "" || !utf8.ValidString(o.out) {
			t.Errorf("%s: standard error %q", flag, o.err)
		}
	}
}
