package main

import (
	"fmt"
	"strings"

	"walkline/ui/desk"
	"walkline/ui/view"
	"walkline/valuation"
	"walkline/valuation/money"
)

// text writes an answer for a person at a terminal.
func text(c valuation.Case, a valuation.Answer) string {
	p := page{currency: a.Currency}
	p.cur, _ = money.Lookup(a.Currency)
	_, v := verdictOf(c, a)
	p.title(c)
	p.line("")
	p.verdict(v)
	p.plans(v)
	p.list("Still to be entered", v.Next)
	p.list("Why", v.Reasons)
	p.ceilings(a)
	p.figures(a)
	p.work(a)
	if len(a.Needs) == 0 {
		p.waterfall(a)
		p.ladder(a)
		p.drivers(a)
	}
	p.list("Warnings", a.Warnings)
	p.checks(a)
	p.looks(a)
	p.totalLoss(a)
	p.cautions(a)
	return p.String()
}

// page is text under way.
type page struct {
	strings.Builder
	currency string
	cur      money.Currency
}

func (p *page) line(format string, args ...any) { fmt.Fprintf(p, format+"\n", args...) }

// whole writes a model figure in whole units, grouped.
func (p *page) whole(x float64) string { return p.cur.Whole(x) }

// verdictOf is what the window says of the answer: the terminal says the same in the same words.
func verdictOf(c valuation.Case, a valuation.Answer) (desk.Open, view.Verdict) {
	o := desk.Open{Case: c, Fresh: true, Valued: &desk.Valued{Of: c, Answer: a}}
	return o, view.NewVerdict(o)
}

// title names the lot and its sale.
func (p *page) title(c valuation.Case) {
	l := c.Lot
	p.line("Lot %s, %s %s: %s", orDash(l.Number), orDash(l.Sale), l.SaleDate, view.Vehicle(l.ModelYear, l.Make, l.Model, l.Trim))
}

// verdict says the bid, what sets it, and its figures.
func (p *page) verdict(v view.Verdict) {
	p.line("  %-32s %s", v.Headline, v.Figure)
	if v.Binds != "" {
		p.line("  %s", v.Binds)
	}
	for _, l := range v.Lines {
		p.line("  %-32s %s", l[0], l[1])
	}
	if v.Stop != "" {
		p.line("  %s", v.Stop)
	}
}

// plans says what each plan may bid, and what the stop line is worth.
func (p *page) plans(v view.Verdict) {
	for _, row := range v.Plans {
		p.line("  Plan: %-26s %s", strings.ToLower(row.Name), row.Bid)
	}
}

func orDash(s string) string {
	if s == "" {
		return "-"
	}
	return s
}

func (p *page) list(title string, items []string) {
	if len(items) == 0 {
		return
	}
	p.line("\n%s", title)
	for _, s := range items {
		p.line("  - %s", s)
	}
}

func (p *page) ceilings(a valuation.Answer) {
	if len(a.Ceilings) == 0 {
		return
	}
	p.line("\nEach limit alone would stop at")
	for _, c := range a.Ceilings {
		stop := "no bid"
		if c.Any {
			stop = "any bid"
		} else if c.Bid != nil {
			stop = p.cur.Group(*c.Bid)
		}
		p.line("  %-40s %12s", valuation.RuleWords[c.Rule], stop)
	}
}

func (p *page) figures(a valuation.Answer) {
	p.line("\n%-24s %12s %12s %12s", "In "+p.currency, "1 in 10 below", "expected", "1 in 10 above")
	row := func(name string, lo, mean, hi float64) {
		p.line("%-24s %12s %12s %12s", name, p.whole(lo), p.whole(mean), p.whole(hi))
	}
	row("Resale price", a.Resale.P10, a.Resale.Mean, a.Resale.P90)
	row("Repair", a.Repair.P10, a.Repair.Mean, a.Repair.P90)
	row("Hidden damage", a.Hidden.P10, a.Hidden.Mean, a.Hidden.P90)
	if len(a.Needs) > 0 {
		return
	}
	row("Profit", a.Profit.P10, a.Profit.Mean, a.Profit.P90)
	row("of which your labor", a.Labour.P10, a.Labour.Mean, a.Labour.P90)
	row("Your hours", a.Hours.P10, a.Hours.Mean, a.Hours.P90)
	row("Days until sold", a.Days.P10, a.Days.Mean, a.Days.P90)
	p.line("Half sell below %s. Profit: half below %s, 1 in 20 below %s, worst tenth %s on average, margin %.1f %%.", p.whole(a.Resale.P50),
		p.whole(a.Profit.P50), p.whole(a.Profit.P05), p.whole(a.Profit.WorstTenth), 100*a.Profit.Margin)
}

// work lists each line of the known work and each risk, with its share of the mean.
func (p *page) work(a valuation.Answer) {
	lines, risks := a.Repair.Lines[:min(mostLines, len(a.Repair.Lines))], a.Hidden.Risks[:min(mostLines, len(a.Hidden.Risks))]
	if len(a.Repair.Lines) > 0 {
		p.line("\n%-72s %8s %12s", "Known work, each at its chance", "hours", "cost")
	}
	for _, l := range lines {
		p.line("  %-70s %8.1f %12s", l.Job, l.Hours, p.whole(l.Mean))
	}
	p.left(len(a.Repair.Lines) - len(lines))
	if len(a.Hidden.Risks) > 0 {
		p.line("\n%-72s %8s %12s", "Hidden damage", "chance", "when there")
	}
	for _, r := range risks {
		p.line("  %-70s %6.1f %% %12s", r.Name, 100*r.Chance, p.whole(r.MeanIfPresent))
	}
	p.left(len(a.Hidden.Risks) - len(risks))
}

// mostLines is how many lines of work, and of hidden damage, are written. Ours: far more than a lot has.
const mostLines = 200

// left says how many lines were left out.
func (p *page) left(n int) {
	if n > 0 {
		p.line("  and %d more: walk value --json has them all", n)
	}
}

func (p *page) waterfall(a valuation.Answer) {
	p.line("\nFrom the resale price to the bid")
	for _, b := range a.Waterfall {
		name := b.Name
		if name == "Expected profit" && b.Amount > 0 { // it is what the buyer would have to add
			name = "Expected loss"
		}
		p.line("  %-24s %14s", name, p.cur.Text(b.Amount))
	}
	p.line("\nInvoice at %s", p.cur.Show(a.Acquisition.Bid))
	for _, l := range a.Acquisition.Lines {
		p.line("  %-24s %14s", l.Name, p.cur.Text(l.Amount))
	}
	p.line("  %-24s %14s", "Total", p.cur.Text(a.Acquisition.Total))
}

func (p *page) ladder(a valuation.Answer) {
	p.line("\n%10s %12s %12s %8s %12s %8s %9s", "Bid", "invoice", "profit", "loss", "worst tenth", "margin", "per hour")
	for _, r := range a.Ladder {
		mark := ""
		if !r.Holds {
			mark = "  breaks a rule"
		}
		hour := "-"
		if r.PerHour != nil {
			hour = p.whole(*r.PerHour)
		}
		p.line("%10s %12s %12s %6.1f %% %12s %6.1f %% %9s%s", p.cur.Group(r.Bid), p.cur.Group(r.Acquisition), p.whole(r.MeanProfit),
			100*r.LossChance, p.whole(r.WorstTenth), 100*r.Margin, hour, mark)
	}
}

func (p *page) drivers(a valuation.Answer) {
	p.line("\nWhat the uncertainty comes from")
	for _, d := range a.Drivers {
		p.line("  %4.1f %%  %s", 100*d.Share, d.Name)
	}
}

func (p *page) checks(a valuation.Answer) {
	p.line("\nTo check")
	for _, c := range a.Checklist {
		worth := ""
		switch {
		case c.Worth != nil:
			worth = fmt.Sprintf(" (%.0f min, worth %s %s)", c.Minutes, p.cur.Code, p.whole(*c.Worth))
		case c.Minutes > 0:
			worth = fmt.Sprintf(" (%.0f min)", c.Minutes)
		}
		p.line("  [%s] %s: %s%s", map[string]string{"open": " ", "ok": "x", "bad": "!"}[c.State], c.Kind, c.Text, worth)
		if c.Source != "" {
			p.line("      %s", c.Source)
		}
	}
}

// looks says which looks fit into a number of minutes, and what they are worth together.
func (p *page) looks(a valuation.Answer) {
	if l := a.Looks; l.Perfect != nil {
		p.line("\nTo know of every risk whether it is there would be worth %s %s", p.cur.Code, p.whole(*l.Perfect))
	}
	for _, r := range a.Looks.Best {
		p.line("  best %.0f minutes: %d looks, %.0f min, together worth %s %s", r.Minutes, len(r.Looks), r.Spent, p.cur.Code, p.whole(r.Worth))
	}
}

// totalLoss says what the rules of total loss would call the vehicle, each with what it rests on.
func (p *page) totalLoss(a valuation.Answer) {
	t := a.TotalLoss
	if t == nil {
		return
	}
	p.line("\nTotal loss: repair %s at your own rates, hidden damage counted in, against a value of about %s before the damage",
		p.cur.Group(t.Repair), p.cur.Group(t.Value))
	if t.Salvage != nil {
		p.line("  Salvage value, the guess of the hammer price: %s", p.cur.Group(*t.Salvage))
	}
	for _, c := range t.Callings {
		says := "does not apply"
		if c.Unknown {
			says = "not known without a salvage value"
		} else if c.Applies {
			says = "applies"
		}
		p.line("  - %s, %s: %s. The rule is: %s. %s %s", c.Where, c.Name, says, c.Test, c.Note, c.Source.Words())
	}
}

func (p *page) cautions(a valuation.Answer) {
	p.list("Cautions (the maker's procedure, local codes and licensed practice decide)", a.Cautions())
	p.line("\nWhat the catalogue brings in is a starter value, from memory, until you change it. What a title allows: ask the agency.")
}
