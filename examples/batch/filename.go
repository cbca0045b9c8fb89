package main

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// longestStem is the most bytes of a file's name before its ending and number.
const longestStem = 100

// filenames makes names of files that are safe in every folder, and each only once.
type filenames map[string]bool

// next returns the name of the file for a runner. Two names that differ only in letters'
// case or in what a file's name cannot hold are told apart by a number.
func (f filenames) next(name string) string {
	base := stem(name)
	try := base
	for n := 2; f[strings.ToLower(try)]; n++ {
		try = fmt.Sprintf("%s-%d", base, n)
	}
	f[strings.ToLower(try)] = true
	return try + ".txt"
}

// stem keeps letters of every script, their marks, and digits; one dash stands for whatever
// lies between. So no name leads out of the folder, hides a file or needs quotes.
func stem(name string) string {
	var b strings.Builder
	gap := false
	for _, r := range name {
		if !unicode.IsLetter(r) && !unicode.IsDigit(r) && !unicode.IsMark(r) {
			gap = true
			continue
		}
		if gap && b.Len() > 0 {
			b.WriteByte('-')
		}
		gap = false
		if b.Len()+utf8.RuneLen(r) > longestStem {
			break
		}
		b.WriteRune(r)
	}
	s := strings.TrimRight(b.String(), "-")
	if s == "" || reserved[strings.ToLower(s)] {
		return strings.TrimRight("runner-"+s, "-")
	}
	return s
}

// reserved are names that some systems keep for devices, whatever the ending.
var reserved = map[string]bool{
	"con": true, "prn": true, "aux": true, "nul": true,
	"com1": true, "com2": true, "com3": true, "com4": true, "com5": true, "com6": true, "com7": true, "com8": true, "com9": true,
	"lpt1": true, "lpt2": true, "lpt3": true, "lpt4": true, "lpt5": true, "lpt6": true, "lpt7": true, "lpt8": true, "lpt9": true,
}
