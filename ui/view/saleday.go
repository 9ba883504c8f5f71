package view

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"walkline/ui/desk"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// DayColumns are the columns of the plan of a sale day.
var DayColumns = []Column{{"Sale day", false, 114}, {"Lot", false, 46}, {"Vehicle", false, 182}, {"Today's bid", true, 94},
	{"Walk-away bid", true, 104}, {"Chance, today's bid", true, 116},
	{"Gain, today's bid", true, 106}, {"Bid on", true, 66},
	{"Bid after a win", true, 100}, {"Cash left, usual", true, 108}, {"Cash left, top bid", true, 116}}

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
		rows = append(rows, []string{Day(l.Entry.SaleDate), l.Entry.Number, name, amount(b.Bid), amount(p.Sale.Lots[i].WalkAway),
			Percent(b.WinChance), purse.Whole(b.Expected), Percent(b.Reach), amount(b.AfterWin), amount(b.CashMiddle), amount(b.CashFull)})
	}
	return rows
}

// DayCare are the cautions that stand under a printed plan.
func DayCare(p *desk.DayPlan) []string {
	words := []string{"Never bid beyond the walk-away bid. The plan's bid may be lower: cash and bays that it saves go to later lots.",
		"Before the first win, bid up to today's bid. After one win, bid up to the amount under bid after a win.",
		"After a second win the paper no longer holds. Record the results, and print the plan anew.",
		"Look at each lot before you bid, and follow the rules of the sale. The plan is arithmetic on what was entered, not advice."}
	if slices.ContainsFunc(p.Lots, func(l desk.DayLot) bool { return l.FirstGuess }) {
		words = append(words, "A first guess rests on the list alone. Nobody has looked at that lot.")
	}
	return words
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
		fmt.Sprintf("Left to spend: %s, %.0f of your hours, %s.", purse.Show(p.Sale.Cash), p.Sale.Hours, Count(p.Sale.Bays, "bay")) +
			handWords(p.Hand, purse),
		fmt.Sprintf("More to spend would add: %s for 1,000 of cash, %s for ten of your hours, %s for one bay.", more(a.Thousand),
			more(a.TenHours), more(a.Bay))}
	if in := comingWords(p, purse); in != "" {
		words = slices.Insert(words, 2, in)
	}
	if free := freeWords(p); free != "" {
		words = append(words, free)
	}
	if last := len(p.Lots) - 1; last > 0 && p.Lots[0].Entry.SaleDate != p.Lots[last].Entry.SaleDate {
		words = append(words, "A lot that is still to be won keeps its bay for all these days. Once the win is recorded, its work's end counts.")
	}
	words = append(words, laterWords(p, purse)...)
	if leave := Left(p); len(leave) > 0 {
		words = append(words, "Leave "+Lots(leave)+".")
	}
	if n := len(p.Unlooked); n > 0 {
		words = append(words, "Not in the plan, because nobody has looked: "+Lots(p.Unlooked)+
			". In simulated seasons, leaving them out earned more.")
	}
	if later := desk.ByDay(p.Unmarked); later != "" {
		words = append(words, "Later days count only lots marked bid. Not marked, so not in the plan: "+later+".")
	}
	if len(p.Undated) > 0 {
		words = append(words, "Sold, so over for the plan: "+Lots(p.Undated)+". The day of the sale (sold on) is not entered under Builds yet.")
	}
	return append(words, p.Out...)
}

// ComingFrom says what brings an amount of money.
func ComingFrom(c desk.Coming) string {
	if c.Build == 0 {
		return "typed"
	}
	return "build " + c.Number
}

// mostComing is how many amounts that come in are named one by one. Ours: what is read at a glance.
const mostComing = 4

// comingWords says what comes in and from when on it counts; none: nothing.
func comingWords(p *desk.DayPlan, purse Purse) string {
	var parts []string
	var days []lot.Date
	all := money.Amount(0)
	for _, in := range p.Sale.In {
		parts, days, all = append(parts, purse.Show(in.Amount)+" from "+Day(in.Day)), append(days, in.Day), all+in.Amount
	}
	switch {
	case len(parts) == 0:
		return ""
	case len(parts) > mostComing:
		return fmt.Sprintf("Comes in on top: %s in %d amounts, from %s to %s.", purse.Show(all), len(parts), Day(slices.Min(days)),
			Day(slices.Max(days)))
	}
	return "Comes in on top: " + strings.Join(parts, "; ") + "."
}

// freeWords says which bays come free and from when on; none: nothing.
func freeWords(p *desk.DayPlan) string {
	var parts []string
	var days []lot.Date
	for _, f := range p.Frees {
		parts, days = append(parts, "build "+f.Number+" from "+Day(f.Day)), append(days, f.Day)
	}
	switch {
	case len(parts) == 0:
		return ""
	case len(parts) > mostComing:
		return fmt.Sprintf("Their work over, %d builds free their bays, from %s to %s.", len(parts), Day(slices.Min(days)),
			Day(slices.Max(days)))
	}
	return "Their work over, these free a bay: " + strings.Join(parts, "; ") + "."
}

// laterWords says what is kept counts for, and what the past year says of it.
func laterWords(p *desk.DayPlan, purse Purse) (words []string) {
	if l := p.Sale.Later; l.Bay+l.Hour+l.Cash > 0 {
		words = append(words, fmt.Sprintf("Kept for the next sale, a bay is worth %s, an hour %s, 1,000 of cash %s. Each win counts "+
			"less by what it uses.", purse.Whole(l.Bay), purse.Whole(l.Hour), purse.Whole(1000*l.Cash)))
	}
	if y := p.Year; y.Builds > 0 {
		words = append(words, fmt.Sprintf("Past year: %s sold made %s on average and took %s of the bays' days: a bay brought %s.",
			Count(y.Builds, "build"), purse.Whole(y.Profit), whole(y.Taken), purse.Whole(y.Bay())))
	}
	return words
}

// handWords says what builds in hand take first; none: nothing.
func handWords(h desk.Hand, purse Purse) string {
	if h.Builds == 0 {
		return ""
	}
	return fmt.Sprintf(" %s in hand counted first: %s and %.0f hours.", Count(h.Builds, "build"), purse.Show(h.Cash), h.Hours)
}

// Left returns the numbers of the lots that the plan leaves, however the sale goes.
func Left(p *desk.DayPlan) []string {
	var out []string
	for _, l := range p.Lots {
		if slices.Contains(p.Answer.Leave, fmt.Sprint(l.ID)) {
			out = append(out, l.Entry.Number)
		}
	}
	return out
}

// Lots names lots by their numbers: "lot 14", "lots 14, 27".
func Lots(numbers []string) string {
	if len(numbers) == 1 {
		return "lot " + numbers[0]
	}
	return "lots " + strings.Join(numbers, ", ")
}
