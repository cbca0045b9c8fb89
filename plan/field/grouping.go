package field

import (
	"cmp"
	"context"
	"fmt"
	"slices"
	"time"

	"isoeffort.example/plan"
)

// group makes the schedules, and puts every runner where they belong.
func (g *grouper) group(ctx context.Context) (*Grouping, error) {
	var schedules []Group
	for _, target := range g.targets() {
		schedule, err := g.schedule(ctx, target)
		if err != nil {
			return nil, err
		}
		schedules = append(schedules, schedule)
	}
	out := &Grouping{Groups: slices.Clone(schedules)} // the workers read one, this loop writes the other
	done, n := 0, len(g.entries)
	for p := range inOrder(ctx, g.options.Workers, n, func(i int) placed { return g.place(i, schedules) }) {
		out.put(g.entries[done], done, g.holders[done], p)
		done++
		g.options.Progress(done, n)
	}
	if done < n {
		return nil, stopped(ctx, done, n)
	}
	return out, nil
}

// put puts entry i where it belongs.
func (g *Grouping) put(e Entry, i int, h holder, p placed) {
	if p.group < 0 || p.err != nil {
		other := Other{Outcome: Outcome{Index: i, Line: e.Line, Runner: e.Runner, Err: p.err}}
		if p.err == nil {
			other.Best = h.best
		}
		g.Others = append(g.Others, other)
		return
	}
	group := &g.Groups[p.group]
	group.Members = append(group.Members, Member{Index: i, Line: e.Line, Runner: e.Runner, Best: h.best, Following: p.following})
}

// targets are those asked for, or those by count.
func (g *grouper) targets() []time.Duration {
	if g.options.Count == 0 {
		return g.options.Targets
	}
	var times []time.Duration
	for _, h := range g.holders {
		if h.err == nil {
			times = append(times, h.fastest)
		}
	}
	slices.Sort(times)
	var targets []time.Duration
	n, round := g.options.Count, g.options.Round
	for k := 1; k <= n && len(times) > 0; k++ {
		slowest := times[max((k*len(times)+n-1)/n-1, 0)]
		targets = append(targets, (slowest+round-1)/round*round)
	}
	return slices.Compact(targets)
}

// schedule makes the schedule of a target, for the slowest runner who can hold it.
func (g *grouper) schedule(ctx context.Context, target time.Duration) (Group, error) {
	group := Group{Target: target, MadeFor: -1}
	var able []int
	for i, h := range g.holders {
		if h.err == nil && h.fastest <= target {
			able = append(able, i)
		}
	}
	slices.SortStableFunc(able, func(a, b int) int { return cmp.Compare(g.holders[b].fastest, g.holders[a].fastest) })
	race := g.race
	race.Goal = target
	for _, i := range able {
		if ctx.Err() != nil {
			return group, stopped(ctx, 0, len(g.entries))
		}
		a := g.holders[i].athlete
		p, err := plan.Even(g.c, a, race)
		if err != nil {
			return group, fmt.Errorf("field: %w: %v for %s: %w", ErrTarget, target, place(g.entries[i].Line, i), err)
		}
		f, err := Follow(p, a, g.options.Every)
		if err != nil {
			return group, err
		}
		if f.Budget <= g.options.Within {
			group.Plan, group.MadeFor = p, i
			return group, nil
		}
	}
	return group, nil
}

// placed is where a runner belongs; a group of −1 is none.
type placed struct {
	group     int
	following Following
	err       error
}

// place finds the fastest group that fits entry i.
func (g *grouper) place(i int, groups []Group) (p placed) {
	h := g.holders[i]
	if p.group, p.err = -1, h.err; h.err != nil {
		return p
	}
	err := guard(func() error {
		for j, group := range groups {
			if group.Plan == nil || h.fastest > group.Target {
				continue
			}
			f, err := Follow(group.Plan, h.athlete, g.options.Every)
			if err != nil {
				return err
			}
			if f.Budget <= g.options.Within {
				p.group, p.following = j, f
				return nil
			}
		}
		return nil
	})
	if err != nil {
		p.err = g.entries[i].fault(i, g.options.File, err)
	}
	return p
}
