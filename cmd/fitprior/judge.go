package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path/filepath"
	"strings"

	"walkline/valuation/prob"
	"walkline/valuation/resale"
)

// task is one price to foretell: the subject, its price forgotten by every method, and the comparables.
type task struct {
	set     set
	subject resale.Row
	comps   []resale.Row
	today   string       // day of valuation; empty: not stated
	prior   resale.Prior // fitted without the subject's model
	slopes  slopes       // of the other models, for the reference by pooling
}

// method is one way to foretell the price of a task.
type method struct {
	name     string
	forecast func(task) float64
}

// againSweeps are enough to forget one model of many.
const againSweeps = 6

// judge foretells every task of the sets that have tasks, with priors that never saw the subject's model, and prints how
// the model and the references did.
func judge(sets []set, dir string, sizes []int, out io.Writer) error {
	fitted := make([]resale.Market, len(sets))
	for i, s := range sets {
		fitted[i] = fitMarket(s)
	}
	judgeShelf(sets, fitted, sizes, out)
	judged := 0
	for at := range sets {
		table, err := readTable(filepath.Join(dir, sets[at].name+"_public_tasks.csv"))
		if errors.Is(err, fs.ErrNotExist) {
			continue
		}
		if err != nil {
			return err
		}
		judged++
		tasks := tasksOf(sets, at, table, fitted)
		judgeFresh(sets, at, fresh{table: table, fitted: fitted}, sizes, out)
		for _, regime := range []string{"narrow", "wide"} {
			for _, n := range sizes {
				judgeSize(sets[at], regime, tasks[regime], n, out)
			}
		}
	}
	if judged == 0 {
		return fmt.Errorf("no set has tasks in %s", dir)
	}
	return nil
}

// tasksOf returns the tasks of a set by regime, each with all of its comparables.
func tasksOf(sets []set, at int, table []map[string]string, fitted []resale.Market) map[string][]task {
	s := sets[at]
	rows := map[string]resale.Row{}
	for _, r := range s.rows {
		rows[r.ID] = r
	}
	type known struct {
		prior  resale.Prior
		slopes slopes
	}
	knowledge := map[string]known{}
	out := map[string][]task{}
	for _, line := range table {
		sub := rows[line["subject"]]
		name := sub.Make + " " + sub.Model
		k, ok := knowledge[name]
		if !ok {
			k = known{without(s, at, name, fitted), otherSlopes(sets, at, name)}
			knowledge[name] = k
		}
		t := task{set: s, subject: sub, prior: k.prior, slopes: k.slopes}
		for _, id := range strings.Fields(line["comps"]) {
			t.comps = append(t.comps, rows[id])
		}
		out[line["regime"]] = append(out[line["regime"]], t)
	}
	return out
}

// without returns the prior in which the set's market is fitted to the other models; a set of one model is left out.
func without(s set, at int, model string, fitted []resale.Market) resale.Prior {
	var markets []resale.Market
	for i, m := range fitted {
		switch {
		case i != at:
			markets = append(markets, m)
		case m.Models > 1:
			markets = append(markets, refit(s, model, m, againSweeps))
		}
	}
	return resale.Prior{Format: resale.PriorFormat, Walk: prob.Scale{SD: judgeWalk, Worth: 1}, Markets: broaden(markets)}
}

// judgeWalk is the drift of the market while judging, as the price index has it.
const judgeWalk = 0.08

// judgeSize prints how every method did on the first n comparables of each task, and on spoiled ones.
func judgeSize(s set, regime string, tasks []task, n int, out io.Writer) {
	fmt.Fprintf(out, "\n%s, %s, %d comparables, %d tasks\n%-42s %7s %7s %6s %6s %7s %6s\n", s.name, regime, n, len(tasks),
		"", "median", "mean", "COD", "PRD", "inside", "width")
	clean := func(t task, _ int) task { t.comps = t.comps[:min(n, len(t.comps))]; return t }
	fmt.Fprintf(out, "%-42s %s\n", "the model", judgeModel(tasks, clean))
	for _, m := range references {
		fmt.Fprintf(out, "%-42s %s\n", m.name, judgeMethod(tasks, m, clean))
	}
	for _, sp := range spoilings {
		fmt.Fprintf(out, "%s\n", sp.name)
		spoil := func(t task, i int) task { return sp.spoil(clean(t, i), i) }
		fmt.Fprintf(out, "  %-40s %s\n", "the model", judgeModel(tasks, spoil))
		for _, m := range references {
			fmt.Fprintf(out, "  %-40s %s\n", m.name, judgeMethod(tasks, m, spoil))
		}
	}
}

// judgeModel foretells tasks by the resale model.
func judgeModel(tasks []task, change func(task, int) task) *score {
	v := &score{}
	for i, t := range tasks {
		t = change(t, i)
		b := resale.Beliefs{AskedToSold: prob.Certain(1), Today: lotDate(t.today), Currency: t.set.currency}
		v.take(resale.Fit(t.comps, subject(t.subject), b, t.prior).Price(), t.set.currency.Major(t.subject.Price))
	}
	return v
}

func judgeMethod(tasks []task, m method, change func(task, int) task) *score {
	v := &score{}
	for i, t := range tasks {
		t = change(t, i)
		v.point(m.forecast(t), t.set.currency.Major(t.subject.Price))
	}
	return v
}
