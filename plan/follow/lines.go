package follow

import (
	"fmt"
	"strings"
	"time"
)

// Lines are the rules in as few lines as they need, each for itself, for the back of a
// card: first what holds everywhere, and then, for each delay, the places where it differs,
// those in a row that say the same in one line. Of times that differ along such a row the
// least in hand is given. A cutoff that is missed is told of at the shortest delay that
// misses it, with the least by which.
func (c *Card) Lines() []string {
	if len(c.Rules) == 0 {
		return nil
	}
	var out []string
	delays := c.delays()
	safe := 0
	for safe < len(delays) && c.allHold(delays[safe]) {
		safe++
	}
	if safe > 0 {
		line := fmt.Sprintf("Up to %s late anywhere: hold the planned effort, no more. You finish as much later.", spell(delays[safe-1]))
		out = append(out, line+safeWords(c.Plan, 0))
	}
	for _, late := range delays[safe:] {
		out = append(out, c.runs(late)...)
	}
	return out
}

// delays are those of the rules, ascending.
func (c *Card) delays() (out []time.Duration) {
	for _, r := range c.Rules {
		if r.Distance != c.Rules[0].Distance {
			break
		}
		out = append(out, r.Late)
	}
	return out
}

// allHold reports whether every place has the planned effort and safe cutoffs at a delay.
func (c *Card) allHold(late time.Duration) bool {
	for _, r := range c.Rules {
		if r.Late == late && r.kind != holdOn {
			return false
		}
	}
	return true
}

// runs are the lines of a delay.
func (c *Card) runs(late time.Duration) (out []string) {
	var row []Rule
	flush := func() {
		if len(row) > 0 {
			out = append(out, rowWords(c, row))
		}
		row = nil
	}
	for i, r := range c.Rules {
		if r.Late != late {
			continue
		}
		if r.kind >= missedLater && i > 0 && c.Rules[i-1].Distance == r.Distance && sameCutoff(c.Rules[i-1], r) {
			flush()
			continue // told of at the shorter delay
		}
		if n := len(row); n > 0 && !sameRule(row[n-1], r) {
			flush()
		}
		row = append(row, r)
	}
	flush()
	return out
}

// sameRule reports whether two rules say the same.
func sameRule(a, b Rule) bool { return a.kind != missedHere && sameCutoff(a, b) }

// sameCutoff reports whether two rules are of one kind and about one cutoff.
func sameCutoff(a, b Rule) bool {
	if a.kind != b.kind || (a.Cutoff == nil) != (b.Cutoff == nil) {
		return false
	}
	return a.Cutoff == nil || a.Cutoff.Cutoff == b.Cutoff.Cutoff
}

// rowWords says what a row of rules has in common.
func rowWords(c *Card, row []Rule) string {
	worst := row[0]
	for _, r := range row[1:] {
		if r.Cutoff != nil && r.Cutoff.InHand < worst.Cutoff.InHand {
			worst = r
		}
		worst.Finish = max(worst.Finish, r.Finish)
	}
	worst.Distance = row[len(row)-1].Distance
	var names []string
	for _, r := range row {
		names = append(names, r.place())
	}
	at := "at " + strings.Join(names, " or ")
	if n := len(names); n > 2 {
		at = "from " + names[0] + " to " + names[n-1]
	}
	late, more := spell(row[0].Late)+" late", ""
	if worst.kind >= missedLater {
		more = " or more"
		late += more
		for _, r := range row {
			if r.Cutoff.InHand > worst.Cutoff.InHand {
				worst.Cutoff = r.Cutoff // at least so much, at every one of the places
			}
		}
	}
	return fmt.Sprintf("%s %s: %s", late, at, worst.advice(c.Plan, more))
}
