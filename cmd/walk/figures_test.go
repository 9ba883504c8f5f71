package main

import (
	"strings"
	"testing"

	"walkline/valuation"
	"walkline/valuation/money"
	"walkline/valuation/resale"
)

// Every figure of the decision stands in the terminal's text behind the words that say what it is. Each figure is one of a kind, so that
// no other can stand in its place.
func TestEveryFigureOfTheDecisionIsNamed(t *testing.T) {
	bid, stands := money.Amount(411100), money.Amount(122200)
	line, win, gain, hour := 3333.0, 0.444, 555.0, 66.0
	a := valuation.Answer{Currency: "USD", Decision: "bid", WalkAway: &bid, BindingRule: "min_profit",
		Profit: valuation.Profit{Mean: 1717, P10: -818, P90: 3919, LossChance: 0.121, PerHour: &hour},
		Resale: resaleFigures(), Repair: valuation.RepairFigures{Spread: valuation.Spread{Mean: 2121, P10: 2020, P90: 2323}},
		Hidden: valuation.HiddenFigures{Spread: valuation.Spread{Mean: 2525, P10: 2424, P90: 2626}},
		Hours:  valuation.Spread{Mean: 47}, Days: valuation.Spread{Mean: 58, P10: 51, P90: 69}, Labour: valuation.Spread{Mean: 2828},
		Exits: valuation.Exits{Plan: valuation.Rebuild, StopLine: &line, StopChance: 0.373, StopWay: valuation.AsItStands, WayOutWorth: 15100,
			Plans: map[string]*money.Amount{valuation.Rebuild: &bid, valuation.AsItStands: &stands, valuation.ForParts: nil}},
		Winning: valuation.Winning{WinChance: &win, ExpectedGain: &gain}}
	lines := strings.Split(text(valuation.Case{}, a), "\n")
	for _, c := range []struct{ name, figure string }{
		{"Walk-away bid", "USD 4,111"}, {"Expected profit", "1,717"}, {"Chance of a loss at this bid", "12 %"}, {"Per hour of mine", "66"},
		{"My hours", "47"}, {"Days until sold", "69"}, {"Plan: rebuild", "USD 4,111"},
		{"Plan: as it stands", "USD 1,222"}, {"Plan: for parts", "do not bid"}, {"3,333", "still"},
		{"of 100 cases", "37"}, {"adds", "USD 151"}, {"Chance to win", "44 %"}, {"Expected gain", "555"},
		{"Resale price", "9,393"}, {"Repair", "2,121"}, {"Hidden damage", "2,525"}, {"Profit", "-818"}, {"your labor", "2,828"}} {
		found := false
		for _, l := range lines {
			found = found || strings.Contains(l, c.name) && strings.Contains(l, c.figure)
		}
		if !found {
			t.Errorf("no line says %s of %q", c.figure, c.name)
		}
	}
}

func resaleFigures() (p resale.Price) {
	p.Mean, p.P10, p.P90 = 9393, 9292, 9494
	return p
}
