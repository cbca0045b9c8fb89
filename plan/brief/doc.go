// Package brief gives the talk that a coach gives before a race: section by section, what
// comes, how hard it is, how it should feel, where to walk, what to check at which place,
// where the temptations are, where time comes back, and what is left at the end.
//
// Make turns a plan into a Briefing: lines of data, each with its sentences. The sentences
// come from a table of functions, Words, one a kind of line; another language is another
// table, and Line holds all the numbers that a sentence needs. Text prints a briefing for
// an 80-column page; its words are for reading aloud.
//
// # What is told
//
// A line has a weight: what must be told (the overview, climbs rated 4 and more, cutoffs
// at risk, descents of 300 m and more that are not gentle, planned walks, heat, what was
// given as a mark) and what may. The second is told, the weightiest first, until about 170
// words and 8 a kilometre are used, 1250 at most, which is about ten minutes of speech.
// What must be told may exceed that, mostly on short courses full of climbs, by some 100
// words. A few climbs are told one by one and the others in groups. On laps one lap is told
// in full, and then what changes. [Our own.]
//
// A goal beyond the runner is not briefed: the first line advises against it, and the rest
// is for the fastest plan that the runner can hold.
//
// # Times
//
// Times are to the nearest minute, cutoffs never rounded up; in the first twenty minutes to
// five seconds. A time by the clock on another day than the start has the day's name.
//
// # How it should feel
//
// Two measures that need no device. The talk test, from whole sentences to a few words at
// a time: Foster et al. 2008, J Cardiopulm Rehabil Prev 28:24, for the test, from memory;
// that it is set against the plan's effort as it is here is common practice, no source. And
// perceived exertion from 0 to 10: the category-ratio scale of Borg 1982, Med Sci Sports
// Exerc 14:377, on which 3 is moderate, 5 strong, 7 very strong and 10 as strong as can be,
// from memory. Perceived exertion rises about evenly with the share of a race that is done,
// to near the top of the scale where everything was given (de Koning et al. 2011, PLoS ONE
// 6:e15863, from memory): so Feel.At. The numbers at the start are our own.
//
// Nothing told asks for more than even effort: where time comes back, it is the ground
// that gives it.
//
// # Heat
//
// Where the race knows the weather, the briefing has it, the time that the plan allows for
// it, and from a WBGT of 18 °C on what to do in heat.
//
// # What it is not for
//
// Medical advice, or deciding whether somebody should start. The cautions belong to the
// briefing and are to be shown with it. The race's orders, its medical team and doctors
// come first.
package brief
