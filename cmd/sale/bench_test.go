package main

import (
	"fmt"
	"math/rand/v2"
	"testing"
	"time"

	"walkline/valuation/money"
	"walkline/valuation/sale"
)

// plain is the dynamic program with no two states merged: each state that can be reached, to the cent, worked out once.
type plain struct {
	sale   sale.Sale
	ladder [][]rung
	known  []map[sale.Purse]float64
}

// rung is a legal bid with its invoice, its profit and the chance of that price.
type rung struct {
	total        money.Amount
	gain, chance float64
}

func newPlain(s sale.Sale) *plain {
	p := &plain{s, make([][]rung, len(s.Lots)), make([]map[sale.Purse]float64, len(s.Lots))}
	for i, l := range s.Lots {
		p.known[i] = map[sale.Purse]float64{}
		before, step := 0.0, l.Steps
		for b := step[0].Step; b <= *l.WalkAway; b += tier(l, b) {
			total, upTo := l.Terms.Total(b, usd).Total, l.Hammer.CDF(usd.Major(b))
			p.ladder[i] = append(p.ladder[i], rung{total, usd.Major(l.Worth - total), upTo - before})
			before = upTo
		}
	}
	return p
}

func tier(l sale.Lot, b money.Amount) (step money.Amount) {
	for _, s := range l.Steps {
		if b >= s.From {
			step = s.Step
		}
	}
	return step
}

func (p *plain) at(i int, left sale.Purse) float64 {
	if i == len(p.sale.Lots) {
		return 0
	}
	v, known := p.known[i][left]
	if known {
		return v
	}
	l := p.sale.Lots[i]
	lost := p.at(i+1, left)
	sum := lost
	v = lost
	for _, r := range p.ladder[i] {
		after := sale.Purse{Cash: left.Cash - r.total - l.Beside, Hours: left.Hours - l.Hours, Bays: left.Bays - 1}
		if after.Cash < 0 || after.Hours < 0 || after.Bays < 0 {
			break
		}
		if r.chance > 0 {
			sum += r.chance * (r.gain + p.at(i+1, after) - lost)
			v = max(v, sum)
		}
	}
	p.known[i][left] = v
	return v
}

// BenchmarkPlan plans sales of several lengths. Baseline: the dynamic program with no two states merged, where it is worked out in
// reasonable time; the plan also works out what one more thousand, ten hours and a bay would bring, the baseline does not.
func BenchmarkPlan(b *testing.B) {
	for _, lots := range []int{10, 20, 40, 400} {
		b.Run(fmt.Sprint(lots, " lots"), func(b *testing.B) {
			s := invented(rand.New(rand.NewPCG(21, uint64(lots))), lots)
			s.Bays = 2
			var answer sale.Answer
			for b.Loop() {
				answer = sale.New(s).Answer()
			}
			if lots > 20 {
				return
			}
			start := time.Now()
			want := newPlain(s).at(0, s.Purse)
			ratio := time.Since(start).Seconds() / (b.Elapsed().Seconds() / float64(b.N))
			if d := want - answer.Expected; d > 1e-6 || d < -1e-6 {
				b.Fatalf("%g, unmerged %g", answer.Expected, want)
			}
			b.ReportMetric(ratio, "unmerged/plan")
		})
	}
}
