package main

import (
	"fmt"
	"io"
	"math/rand/v2"
	"slices"

	"walkline/valuation/resale"
)

// freshTasks is how many vehicles that no task foretells are foretold of a set: the standard error of a coverage is then 1.4 points; with
// the 150 of a file of tasks it is 3.3.
const freshTasks = 800

// fresh is what tables around other vehicles than those of the tasks are drawn with.
type fresh struct {
	table  []map[string]string // the set's tasks
	fitted []resale.Market
}

// judgeFresh prints how the model does on tables drawn around vehicles that no task foretells: what is chosen by measurement is chosen on
// these, and the tasks are left to judge it. A set nearly all of whose vehicles are foretold by tasks gives its own, with other
// comparables.
func judgeFresh(sets []set, at int, f fresh, sizes []int, out io.Writer) {
	s, priors := sets[at], map[string]resale.Prior{}
	for _, narrow := range []bool{true, false} {
		tasks := f.draw(s, narrow, slices.Max(sizes))
		for i, t := range tasks {
			name := t.subject.Make + " " + t.subject.Model
			if _, known := priors[name]; !known {
				priors[name] = without(s, at, name, f.fitted)
			}
			tasks[i].prior = priors[name]
		}
		for _, n := range sizes {
			v := judgeModel(tasks, func(t task, _ int) task { t.comps = t.comps[:min(n, len(t.comps))]; return t })
			fmt.Fprintf(out, "%s, vehicles of no task, %s, %d comparables, %d tables: %s, interval score %.4f\n", s.name,
				map[bool]string{true: "narrow", false: "wide"}[narrow], n, len(tasks), v, v.interval())
		}
	}
}

// draw returns tables of so many rows around vehicles of the models in turn.
func (f fresh) draw(s set, narrow bool, n int) []task {
	foretold := map[string]bool{}
	for _, line := range f.table {
		foretold[line["subject"]] = true
	}
	if 2*len(foretold) > len(s.rows) {
		clear(foretold)
	}
	groups, names := byModel(s.rows)
	rng := rand.New(rand.NewPCG(17, 3))
	var out []task
	for i := 0; len(out) < freshTasks && i < 40*freshTasks; i++ {
		group := groups[names[i%len(names)]]
		at := group[rng.IntN(len(group))]
		if foretold[at.ID] {
			continue
		}
		if rows := drawRows(group, at, rng, narrow); len(rows) >= n {
			out = append(out, task{set: s, subject: at, comps: rows})
		}
	}
	return out
}
