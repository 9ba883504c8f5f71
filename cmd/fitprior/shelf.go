package main

import (
	"fmt"
	"io"
	"math/rand/v2"

	"walkline/valuation/prob"
	"walkline/valuation/resale"
)

// shelfTasks is how many prices of a set are foretold with and without a shelf, where no file of tasks names them.
const shelfTasks = 600

// judgeShelf prints how the model does on prices of sets of several models, with priors that never saw the set: without a shelf, with
// one that holds rows of other models alone, and with one that also holds the lot's own table, from which the lot draws. The rows that
// are given with the task are the same each time.
func judgeShelf(sets []set, fitted []resale.Market, sizes []int, out io.Writer) {
	for at, s := range sets {
		groups, names := byModel(s.rows)
		if len(names) < fewModels {
			continue
		}
		var others []resale.Market
		for i, m := range fitted {
			if i != at {
				others = append(others, m)
			}
		}
		prior := resale.Prior{Format: resale.PriorFormat, Walk: prob.Scale{SD: judgeWalk, Worth: 1}, Markets: broaden(others)}
		shelves := map[string]resale.Prior{}
		for _, n := range sizes {
			tasks := drawnTasks(groups, names, n)
			fmt.Fprintf(out, "\n%s, %d comparables of the own model, %d tasks, a market that no prior saw\n%-42s %7s %7s %6s %6s %7s %6s\n",
				s.name, n, len(tasks), "", "median", "mean", "COD", "PRD", "inside", "width")
			var bare *score
			for _, shelf := range []struct {
				words  string
				models int
			}{{"without a shelf", 0}, {"five other models on the shelf", 5},
				{"all other models on the shelf", len(names)}} {
				v := &score{}
				for _, t := range tasks {
					key := fmt.Sprint(t.name, shelf.models)
					with, known := shelves[key]
					if !known {
						with = withShelf(s, t.name, prior, shelf.models)
						shelves[key] = with
					}
					b := resale.Beliefs{AskedToSold: prob.Certain(1), Currency: s.currency}
					v.take(resale.Fit(t.comps, subject(t.subject), b, with).Price(), s.currency.Major(t.subject.Price))
				}
				if bare == nil {
					bare = v
				}
				fmt.Fprintf(out, "%-42s %s%s\n", shelf.words, v, v.against(bare))
			}
		}
	}
}

// withShelf returns the prior with the market that the rows of some models of a set, but for one model, teach.
func withShelf(s set, without string, p resale.Prior, models int) resale.Prior {
	groups, names := byModel(s.rows)
	rng := rand.New(rand.NewPCG(16, uint64(models)))
	var rows []resale.Row
	for _, k := range rng.Perm(len(names)) {
		if names[k] != without && models > 0 {
			rows, models = append(rows, groups[names[k]]...), models-1
		}
	}
	if m, ok := resale.ShopMarket(rows, p, s.currency); ok {
		p.Markets = append([]resale.Market{m}, p.Markets...)
	}
	return p
}

// shelfTask is one price to foretell from rows of its own model.
type shelfTask struct {
	name    string
	subject resale.Row
	comps   []resale.Row
}

// drawnTasks returns tasks of the models in turn, each with so many rows of the same model, chosen as a buyer does: within a few model
// years where there are enough.
func drawnTasks(groups map[string][]resale.Row, names []string, n int) []shelfTask {
	rng := rand.New(rand.NewPCG(15, uint64(n)))
	var out []shelfTask
	for i := 0; len(out) < shelfTasks && i < 20*shelfTasks; i++ {
		name := names[i%len(names)]
		group := groups[name]
		t := shelfTask{name: name, subject: group[rng.IntN(len(group))]}
		for _, narrow := range []bool{true, false} {
			for _, k := range rng.Perm(len(group)) {
				r := group[k]
				off := r.ModelYear - t.subject.ModelYear
				if near := -narrowYears <= off && off <= narrowYears; near == narrow && r.ID != t.subject.ID && len(t.comps) < n {
					t.comps = append(t.comps, r)
				}
			}
		}
		if len(t.comps) == n {
			out = append(out, t)
		}
	}
	return out
}
