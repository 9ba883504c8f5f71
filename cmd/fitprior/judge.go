package main

import (
	"fmt"
	"math"
	"math/rand/v2"
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
	errs, widths   []float64
	medians, plain []float64 // errors of the two baselines
	gross          []float64 // errors with one price in ten grossly wrong
	inside         int
	grossInside    int
}

// judge predicts every task of every set with priors that never saw the subject's model.
func judge(sets []set, dir string) error {
	fitted := make([]resale.Market, len(sets))
	for i, s := range sets {
		fitted[i] = fitMarket(s)
	}
	for at, s := range sets {
		tasks, err := readTable(filepath.Join(dir, s.name+"_public_tasks.csv"))
		if err != nil {
			return err
		}
		verdicts := judgeSet(s, at, tasks, fitted)
		for _, k := range sortedKeys(verdicts) {
			fmt.Println(k, verdicts[k])
		}
	}
	return nil
}

func judgeSet(s set, at int, tasks []map[string]string, fitted []resale.Market) map[string]*verdict {
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
			p = without(s, at, name, fitted)
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

// judgeWalk is the drift of the market while judging: the sets hold prices of one moment, so that it isn't used.
const judgeWalk = 0.08

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
	truth := s.currency.Major(sub.Price)
	got := forecast(sub, rows, p, s)
	v.errs = append(v.errs, math.Abs(got.P50/truth-1))
	v.medians = append(v.medians, math.Abs(medianPrice(rows, s)/truth-1))
	v.plain = append(v.plain, math.Abs(plainRegression(sub, rows, s)/truth-1))
	v.widths = append(v.widths, (got.P90-got.P10)/got.P50)
	if got.P10 <= truth && truth <= got.P90 {
		v.inside++
	}
	got = forecast(sub, spoiled(rows), p, s)
	v.gross = append(v.gross, math.Abs(got.P50/truth-1))
	if got.P10 <= truth && truth <= got.P90 {
		v.grossInside++
	}
}

func forecast(sub resale.Row, rows []resale.Row, p resale.Prior, s set) resale.Price {
	return resale.Fit(rows, subject(sub), resale.Beliefs{AskedToSold: prob.Certain(1), Currency: s.currency}, p).Price()
}

// spoiled returns rows with gross errors: about one price in ten is three times or a third of what it was.
func spoiled(rows []resale.Row) []resale.Row {
	rng := rand.New(rand.NewPCG(uint64(len(rows)), uint64(rows[0].Price)))
	out := append([]resale.Row(nil), rows...)
	for i := range out {
		switch rng.IntN(20) {
		case 0:
			out[i].Price *= 3
		case 1:
			out[i].Price /= 3
		}
	}
	return out
}

// String returns the median and mean absolute percentage error, the coverage and the median width of the 80 % interval.
func (v *verdict) String() string {
	n := float64(len(v.errs))
	return fmt.Sprintf("n=%3.0f  %s  inside %4.1f %%  width %4.1f %%  (one in ten grossly wrong %s inside %4.1f %%; median of "+
		"comparables %s, log least squares %s)", n, ape(v.errs), 100*float64(v.inside)/n, 100*mid(v.widths), ape(v.gross),
		100*float64(v.grossInside)/n, ape(v.medians), ape(v.plain))
}

// ape returns the median and mean of errors as percentages.
func ape(errs []float64) string {
	mean := 0.0
	for _, e := range errs {
		mean += e / float64(len(errs))
	}
	return fmt.Sprintf("%5.2f / %5.2f %%", 100*mid(errs), 100*mean)
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
