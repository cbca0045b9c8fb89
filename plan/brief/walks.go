package brief

import (
	"time"

	"isoeffort.example/plan"
)

// A walk to the finish is told of from lastWalk on, and walks of the first third from
// fewWalks and earlyWalk on. [Our own]
const (
	lastWalk  = 20 * time.Minute
	earlyWalk = time.Minute
	mostWalks = 0.9 // of the walking, from which the last walk is all there is
)

// walked is the share of the moving time between two places that is walked.
func (t *teller) walked(from, to float64) float64 {
	return t.plan.Traverse().WalkingTime(from, to) / max(t.moving(from, to).Seconds(), 1)
}

// gatherWalks tells where planned walks are, and from where all is walked.
func (t *teller) gatherWalks() {
	if at, ok := t.lastWalk(); ok {
		t.tell(must, Line{Kind: LastWalk, From: at, To: t.length, Took: t.moving(at, t.length)})
	}
	var l Line
	for i, w := range t.plan.Walks {
		if i == 0 || t.sectionAt(w.From) != t.sectionAt(l.From) {
			if i > 0 {
				t.tell(must, l)
			}
			l = Line{Kind: WalkPlaces, From: w.From, Took: wholeMinutes(w.Took)}
		}
		l.Places = append(l.Places, w.From)
		l.To = w.To
	}
	if l.Places != nil {
		t.tell(must, l)
	}
}

func wholeMinutes(d time.Duration) time.Duration { return max(d.Round(time.Minute), time.Minute) }

// lastWalk is from where all is walked to the finish, where that is worth a word.
func (t *teller) lastWalk() (from float64, ok bool) {
	bouts := t.plan.Bouts(0, t.length)
	last := bouts[len(bouts)-1]
	return last.From, len(bouts) > 1 && last.Gait == plan.Walk && !t.whole && t.moving(last.From, t.length) >= lastWalk
}

// oneGait reports whether all from a place on is covered in one gait, and that is told.
func (t *teller) oneGait(from float64) bool {
	last, ok := t.lastWalk()
	return t.whole || ok && from >= last
}

// openWalking tells how much is walked.
func (t *teller) openWalking() {
	p := t.plan
	if len(p.Walks) > 0 {
		t.open(must, Line{Kind: Walks, Count: len(p.Walks), Took: wholeMinutes(p.Walks[0].Took)})
	}
	if p.WalkingShare < fewWalks {
		return
	}
	l := Line{Kind: Walking, Share: p.WalkingShare, Pausing: len(p.Walks) > 0}
	third := t.length / 3
	early := t.plan.Traverse().WalkingTime(0, third)
	l.Early = early >= earlyWalk.Seconds() && early >= fewWalks*t.moving(0, third).Seconds()
	if at, ok := t.lastWalk(); ok && t.moving(at, t.length).Seconds() >= mostWalks*p.WalkingShare*p.Moving.Seconds() {
		l.From, l.Took = at, t.moving(at, t.length)
	}
	t.open(likely+10, l)
}
