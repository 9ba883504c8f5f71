package main

import (
	"fmt"
	"math"
	"path/filepath"
	"sort"
	"strings"

	"walkline/valuation/prob"
	"walkline/valuation/resale"
)

// sizes are the numbers of comparables at which tasks are judged.
var sizes = []int{1, 3, 5, 10, 20, 40}

// againSweeps are enough to forget one model of many.
const againSweeps = 6

// verdict collects the errors of one set, regime and size.
type verdict struct {
	errs, widths []float64
	inside       int
}

// judge predicts every task of every set with priors that never saw the subject's model.
func judge(sets []set, dir string) error {
	all := resale.Prior{Walk: resale.Scale{SD: 0.08, Worth: 300}}
	for _, s := range sets {
		all.Markets = append(all.Markets, fitMarket(s))
	}
	for at, s := range sets {
		tasks, err := readTable(filepath.Join(dir, s.name+"_public_tasks.csv"))
		if err != nil {
			return err
		}
		verdicts := judgeSet(s, at, tasks, all)
		for _, k := range sortedKeys(verdicts) {
			fmt.Println(k, verdicts[k])
		}
	}
	return nil
}

func judgeSet(s set, at int, tasks []map[string]string, all resale.Prior) map[string]*verdict {
	rows := map[string]resale.Row{}
	for _, r := range s.rows {
		rows[r.ID] = r
	}
	out := map[string]*verdict{}
	priors := map[string]resale.Prior{}
	for _, task := range tasks {
		sub := rows[task["subject"]]
		name := sub.Make + " " + sub.Model
		p, ok := priors[name]
		if !ok {
			p = without(s, at, name, all)
			priors[name] = p
		}
		for _, n := range sizes {
			k := fmt.Sprintf("%-12s %-6s %3d", s.name, task["regime"], n)
			if out[k] == nil {
				out[k] = &verdict{}
			}
			out[k].take(sub, comps(task["comps"], rows, n), p, s)
		}
	}
	return out
}

// without returns the prior in which the set's market is fitted to the other models; a set of one model is left out.
func without(s set, at int, model string, all resale.Prior) resale.Prior {
	p := all
	p.Markets = nil
	for i, m := range all.Markets {
		switch {
		case i != at:
			p.Markets = append(p.Markets, m)
		case m.Models > 1:
			p.Markets = append(p.Markets, refit(s, model, m, againSweeps))
		}
	}
	return p
}

func comps(list string, rows map[string]resale.Row, n int) []resale.Row {
	var out []resale.Row
	for _, id := range strings.Fields(list) {
		if len(out) < n {
			out = append(out, rows[id])
		}
	}
	return out
}

func (v *verdict) take(sub resale.Row, rows []resale.Row, p resale.Prior, s set) {
	b := resale.Beliefs{AskedToSold: prob.Certain(1), Currency: s.currency}
	got := resale.Fit(rows, subject(sub), b, p).Price()
	truth := s.currency.Major(sub.Price)
	v.errs = append(v.errs, math.Abs(got.P50/truth-1))
	v.widths = append(v.widths, (got.P90-got.P10)/got.P50)
	if got.P10 <= truth && truth <= got.P90 {
		v.inside++
	}
}

// String returns the median and mean absolute percentage error, the coverage and the median width of the 80 % interval.
func (v *verdict) String() string {
	mean := 0.0
	for _, e := range v.errs {
		mean += e / float64(len(v.errs))
	}
	n := float64(len(v.errs))
	return fmt.Sprintf("n=%3.0f  %5.2f / %5.2f %%  inside %4.1f %%  width %4.1f %%", n, 100*mid(v.errs), 100*mean, 100*float64(v.inside)/n, 100*mid(v.widths))
}

func mid(xs []float64) float64 {
	s := append([]float64(nil), xs...)
	sort.Float64s(s)
	return (s[(len(s)-1)/2] + s[len(s)/2]) / 2
}

func sortedKeys(m map[string]*verdict) []string {
	out := make([]string, 0, len(m))
	for k := range m {
		out = append(out, k)
	}
	sort.Strings(out)
	return out
}
