package view

import (
	"fmt"
	"math"

	"walkline/ui/desk"
	"walkline/valuation/money"
)

// DayColumns are the columns of the plan of a sale day.
var DayColumns = []Column{{"Sale day", false, 92}, {"Lot", false, 46}, {"Vehicle", false, 190}, {"Today's bid", true, 94},
	{"Walk-away bid", true, 104}, {"Chance to win", true, 94}, {"Expected gain", true, 96}, {"Bid on", true, 66},
	{"After one win", true, 96}, {"Cash, middle", true, 94}, {"Cash, full", true, 94}}

// DayRows returns what the plan says of its lots, in their order.
func DayRows(p *desk.DayPlan) [][]string {
	purse := NewPurse(p.Sale.Currency.Code)
	amount := func(a *money.Amount) string {
		if a == nil {
			return Dash
		}
		return purse.Exact(*a)
	}
	var rows [][]string
	for i, l := range p.Lots {
		b := p.Answer.Lots[i]
		name := fmt.Sprint(l.Entry.ModelYear, " ", l.Entry.Make, " ", l.Entry.Model)
		if l.FirstGuess {
			name = "first guess: " + name
		}
		rows = append(rows, []string{string(l.Entry.SaleDate), l.Entry.Number, name, amount(b.Bid), amount(p.Sale.Lots[i].WalkAway),
			Percent(b.WinChance), purse.Whole(b.Expected), Percent(b.Reach), amount(b.AfterWin), amount(b.CashMiddle), amount(b.CashFull)})
	}
	return rows
}

// DayWords says what a plan brings, what one more would bring, and which lots to leave.
func DayWords(p *desk.DayPlan) []string {
	purse, a := NewPurse(p.Sale.Currency.Code), p.Answer
	sure := "worked out exactly"
	if !a.Exact {
		sure = "simulated, give or take " + purse.Whole(2*a.Error)
	}
	more := func(x float64) string { return purse.Whole(math.Max(0, x)) }
	words := []string{fmt.Sprintf("Following the plan brings %s on average (%s).", purse.Whole(a.Expected), sure),
		fmt.Sprintf("Left to spend: %s, %.0f of your hours, %s. %s in hand were counted first: %s and %.0f hours.",
			purse.Show(p.Sale.Cash), p.Sale.Hours, Count(p.Sale.Bays, "bay"), Count(p.Hand.Builds, "build"), purse.Show(p.Hand.Cash),
			p.Hand.Hours),
		fmt.Sprintf("One more would bring: 1,000 of cash %s, ten of your hours %s, one bay %s.", more(a.Thousand), more(a.TenHours),
			more(a.Bay))}
	for _, l := range p.Lots {
		for _, id := range a.Leave {
			if id == fmt.Sprint(l.ID) {
				words = append(words, "Leave lot "+l.Entry.Number+".")
			}
		}
	}
	return append(words, p.Out...)
}

// todayWords says today's bid on a lot behind its walk-away bid; empty where there is no plan of it.
func todayWords(s desk.State, id int64, p Purse) string {
	plan := s.Planned()
	if plan == nil {
		return ""
	}
	b, in := plan.TodaysBid(id)
	switch {
	case !in:
		return ""
	case b.Bid == nil:
		return "; today: leave it"
	}
	return "; today's bid " + p.Exact(*b.Bid)
}
