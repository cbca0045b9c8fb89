package chart_test

import (
	"reflect"
	"regexp"
	"strings"
	"testing"

	"isoeffort.example/plan/chart"
)

// Every text can be replaced: with words of no letters, none are left but those of names.
func TestWords(t *testing.T) {
	t.Parallel()
	var w chart.Words
	v, english := reflect.ValueOf(&w).Elem(), reflect.ValueOf(chart.English())
	braces := regexp.MustCompile(`\{[a-z]+\}`)
	for i := range v.NumField() {
		v.Field(i).SetString("§" + strings.Join(braces.FindAllString(english.Field(i).String(), -1), " "))
	}
	s := mountain(t)
	s.course = s.course.Named("")
	letters := regexp.MustCompile(`\pL\pL`)
	names := map[string]bool{}
	for _, l := range s.course.Landmarks() {
		names[l.Name] = true
	}
	for _, f := range figures(t, planFor(t, s, runners[3]), chart.Options{Words: w}) {
		for _, l := range checkLaws(t, f).labels {
			rest := l.text
			for name := range names {
				rest = strings.ReplaceAll(rest, name, "")
			}
			if letters.MatchString(rest) && l.text != "Finish" { // the forecast's name
				t.Errorf("%q is no word of ours", l.text)
			}
			if braces.MatchString(l.text) {
				t.Errorf("%q is not filled in", l.text)
			}
		}
	}
}
