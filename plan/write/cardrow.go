package write

import (
	"cmp"
	"fmt"
	"slices"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/internal/page"
	"isoeffort.example/internal/say"
	"isoeffort.example/plan"
)

// cardRows are the lines of all places: the splits, and cutoffs and stops between them.
func (t *sheet) cardRows(every plan.Spacing, plans []*plan.Plan) []cardRow {
	first := plans[0]
	var rows []cardRow
	from := 0.0
	for _, s := range first.Splits(every) {
		for _, extra := range t.extras(from, s.Distance) {
			rows = append(rows, t.cardRow(plans, first.Between(from, extra.Distance), extra.Name))
			from = extra.Distance
		}
		if from > s.Distance-s.Length { // one of those cut it
			landmark := s.Landmark
			s = first.Between(from, s.Distance)
			s.Landmark = landmark
		}
		rows = append(rows, t.cardRow(plans, s, t.place(s)))
		from = s.Distance
	}
	return rows
}

// extras are the cutoffs and stops strictly between two distances, in order, one a place.
func (t *sheet) extras(from, to float64) (out []course.Landmark) {
	add := func(distance float64, name string) {
		if distance <= from || distance >= to {
			return
		}
		i, found := slices.BinarySearchFunc(out, distance, func(l course.Landmark, d float64) int { return cmp.Compare(l.Distance, d) })
		if !found {
			out = slices.Insert(out, i, course.Landmark{Distance: distance, Name: name})
		}
	}
	for _, m := range t.plan.Cutoffs {
		add(m.Distance, page.Plain(m.Name))
	}
	for _, s := range t.plan.Stops {
		add(s.Distance, s.Kind.String())
	}
	return out
}

// startRow is the start line, where it takes time to reach it.
func (t *sheet) startRow(plans []*plan.Plan) []cardRow {
	if t.plan.Race.StartDelay == 0 {
		return nil
	}
	r := cardRow{At: "0.0", Place: "Start line", Clock: t.clock(t.plan.Race.StartDelay)}
	for _, p := range plans {
		if len(plans) == 1 {
			r.Times = append(r.Times, say.HMS(p.Race.StartDelay))
		} else {
			r.Times = append(r.Times, say.HM(p.Race.StartDelay))
		}
	}
	return []cardRow{r}
}

func (t *sheet) cardRow(plans []*plan.Plan, s plan.Split, place string) cardRow {
	r := cardRow{At: fmt.Sprintf("%.1f", s.Distance/t.units.Distance), Place: page.Clip(place, widestOnCard), Clock: t.clock(s.Elapsed), Gait: gaitHint(s)}
	for _, p := range plans {
		if at := p.Elapsed(s.Distance); len(plans) == 1 {
			r.Times = append(r.Times, say.HMS(at))
		} else {
			r.Times = append(r.Times, say.HM(at))
		}
	}
	for _, stop := range t.plan.Stops {
		if stop.Distance == s.Distance {
			r.Stop = joined(r.Stop, stopWords(stop))
		}
	}
	for _, m := range t.plan.Cutoffs {
		if m.Distance == s.Distance {
			r.Cutoff, r.Risk = joined(r.Cutoff, t.closes(m)), r.Risk || m.AtRisk
		}
	}
	return r
}

// closes is when a cutoff closes, by the clock where there is one: the minute before, never
// the one after.
func (t *sheet) closes(m plan.Margin) string {
	limit := m.Limit.Truncate(time.Minute)
	text := say.HM(limit)
	if start := t.plan.Race.Start; !start.IsZero() {
		text = t.clock(start.Add(m.Limit).Truncate(time.Minute).Sub(start))
	}
	if m.Departure {
		text = "leave " + text
	}
	if m.InHand < 0 {
		text += " MISSED"
	}
	return text
}

// stopWords is a stop's time and what is there besides an aid station.
func stopWords(s plan.Stop) string {
	text := spare(s.Duration)
	if s.Kind == plan.DropBag || s.Kind == plan.Sleep {
		text += ", " + s.Kind.String()
	}
	if s.Note != "" {
		text += ", " + page.Clip(page.Plain(s.Note), 20)
	}
	return text
}

// joined puts two things in one cell.
func joined(a, b string) string {
	if a == "" {
		return b
	}
	return a + "; " + b
}

// gaitHint is what a stretch is covered by, in a word.
func gaitHint(s plan.Split) string {
	switch w := s.WalkingShare; {
	case w >= 0.95:
		return "walk"
	case w >= 0.65:
		return "mostly walk"
	case w >= 0.35:
		return "half walk"
	case w > 0.05:
		return "mostly run"
	}
	return "run"
}

// thinned leaves out lines, evenly, until there are no more than so many; those with a
// cutoff, a station and the finish stay as long as there is room for them.
func thinned(rows []cardRow, most int) []cardRow {
	if len(rows) <= most {
		return rows
	}
	kept, rest := 0, 0
	matters := func(i int) bool { return rows[i].Cutoff != "" || rows[i].Stop != "" || i == len(rows)-1 }
	for i := range rows {
		if matters(i) {
			kept++
		}
	}
	if rest = most - kept; rest < 0 { // too many of them: every so many of all
		matters, kept, rest = func(i int) bool { return i == len(rows)-1 }, 1, most-1
	}
	var out []cardRow
	seen, taken, others := 0, 0, len(rows)-kept
	for i, r := range rows {
		if matters(i) {
			out = append(out, r)
			continue
		}
		if seen++; taken < seen*rest/others {
			taken++
			out = append(out, r)
		}
	}
	return out
}
