package brief

import "maps"

// Words is a language. Each function gets a line (or a section) with its numbers, and a
// Measure to write distances, heights and times with or to choose units by, and returns
// the sentences; "" leaves the line out. The functions must give the same text for the
// same line, and may be called more than once, from several goroutines if briefings are
// made at the same time. What is missing is English: a translator starts from nothing, and
// adds kind after kind. How much is told goes by words as spaces part them.
type Words struct {
	Lines    map[Kind]func(l Line, m Measure) string
	Cautions map[string]string // by Caution.ID
	Heading  func(s Section, m Measure) string

	// Opening, Closing and Careful head the parts of the printed text.
	Opening, Closing, Careful string
}

// English returns the words that a zero Options stands for. It is the caller's to change.
func English() Words {
	lines := map[Kind]func(Line, Measure) string{}
	for _, some := range []map[Kind]func(Line, Measure) string{openingWords, climbWords, groundWords, placeWords, lapWords} {
		maps.Copy(lines, some)
	}
	return Words{
		Lines: lines, Cautions: cautionWords(), Heading: heading,
		Opening: "THE RACE", Closing: "TO THE FINISH AND AFTER", Careful: "CAUTIONS",
	}
}

// over is these words, and where they are missing those of another language.
func (w Words) over(other Words) Words {
	for kind, say := range w.Lines {
		if say != nil {
			other.Lines[kind] = say
		}
	}
	maps.Copy(other.Cautions, w.Cautions)
	if w.Heading != nil {
		other.Heading = w.Heading
	}
	for _, part := range []struct {
		to   *string
		text string
	}{{&other.Opening, w.Opening}, {&other.Closing, w.Closing}, {&other.Careful, w.Careful}} {
		if part.text != "" {
			*part.to = part.text
		}
	}
	return other
}

// say is a line's sentences.
func (w Words) say(l Line, m Measure) string {
	if say := w.Lines[l.Kind]; say != nil {
		return say(l, m)
	}
	return ""
}
