package valuation

import (
	"fmt"
	"slices"
	"strings"

	"walkline/valuation/bid"
	"walkline/valuation/checks"
	"walkline/valuation/invoice"
	"walkline/valuation/lot"
)

// Stopped stands in the place of the binding rule where a stop forbids every bid.
const Stopped = "stop"

// RuleWords says a rule in words.
var RuleWords = map[string]string{
	bid.MinProfit:         "least expected profit",
	bid.MinMargin:         "least expected margin",
	bid.MaxLossChance:     "greatest chance of a loss",
	bid.MaxWorstTenthLoss: "most lost on average, worst 1 in 10",
	bid.MinPerHour:        "least return per hour of mine",
	bid.MaxCash:           "most cash tied up",
	bid.MaxDays:           "longest time",
	Stopped:               "a stop: see Checks",
	Unready:               "what is still missing",
}

// limited says what a rule limits, as it reads after "your limit on".
var limited = map[string]string{
	bid.MinProfit:         "the expected profit",
	bid.MinMargin:         "the expected margin",
	bid.MaxLossChance:     "the chance of a loss",
	bid.MaxWorstTenthLoss: "the average loss in the worst 1 in 10",
	bid.MinPerHour:        "what an hour of yours brings",
	bid.MaxCash:           "the cash tied up, 9 times in 10",
	bid.MaxDays:           "the days until it is sold, 9 times in 10",
}

// grounds says why the walk-away bid is where it is.
func (w *work) grounds() []string {
	at := *w.found.Bid
	next := w.problem.Judge(invoice.Next(w.c.Buying.BidSteps, at))
	rule := w.found.Binding
	limit, figure := w.limit(rule), w.figure(rule, next)
	words := "it would be " + figure
	if strings.HasSuffix(limit, " "+figure) {
		words = "it is just broken"
	}
	out := []string{fmt.Sprintf("Your limit on %s, %s, sets this bid; at %s %s.", limited[rule], limit, w.currency.Group(next.Bid), words)}
	return append(out, w.planWords()...)
}

// refusal says why no bid can be made.
func (w *work) refusal() []string {
	f := w.problem.Judge(w.found.Lowest)
	var out []string
	for _, name := range f.Broken {
		out = append(out, fmt.Sprintf("Even at the lowest bid of the sale, %s, %s is %s; your limit is %s.", w.currency.Show(w.found.Lowest),
			limited[name], w.figure(name, f), w.limit(name)))
	}
	if w.guarded && len(out) == 0 {
		out = append(out, "Nobody has marked damage on this lot. Whoever has seen it bids more where it is sound: what is left to you loses.")
	}
	return out
}

// money writes a model figure in whole units of the currency.
func (w *work) money(x float64) string {
	return w.currency.Code + " " + w.currency.Whole(x)
}

// limit says what a rule asks.
func (w *work) limit(rule string) string {
	r := w.c.Rules
	switch rule {
	case bid.MinProfit:
		return "at least " + w.currency.Show(*r.MinProfit)
	case bid.MinMargin:
		return fmt.Sprintf("at least %.1f %%", 100**r.MinMargin)
	case bid.MaxLossChance:
		return fmt.Sprintf("at most %.1f %%", 100**r.MaxLossChance)
	case bid.MaxWorstTenthLoss:
		return "at most " + w.currency.Show(*r.MaxWorstTenthLoss)
	case bid.MinPerHour:
		return "at least " + w.currency.Show(*r.MinPerHour)
	case bid.MaxCash:
		return "at most " + w.currency.Show(*r.MaxCash)
	}
	return fmt.Sprintf("at most %g days", *r.MaxDays)
}

// figure says what a bid brings where a rule looks.
func (w *work) figure(rule string, f bid.Figures) string {
	m := w.problem.Means(f.Bid)
	switch rule {
	case bid.MinProfit:
		return w.money(f.Mean)
	case bid.MinMargin:
		return fmt.Sprintf("%.1f %%", 100*f.Margin)
	case bid.MaxLossChance:
		return fmt.Sprintf("%.1f %%", 100*f.LossChance)
	case bid.MaxWorstTenthLoss:
		if f.WorstTenth > 0 {
			return "a profit of " + w.money(f.WorstTenth)
		}
		return w.money(-f.WorstTenth)
	case bid.MinPerHour:
		if f.PerHour == nil {
			return "not known, as no hours of yours are in it"
		}
		return w.money(*f.PerHour)
	case bid.MaxCash:
		return w.money(m.Cash90 + w.currency.Major(f.Total))
	}
	return fmt.Sprintf("%.0f days", m.Days90)
}

// warnings gathers the doubts of every stage.
func (w *work) warnings() []string {
	var out []string
	if w.guessed {
		out = append(out, fmt.Sprintf("First guess: nobody has marked damage on this lot. It is valued over %d kinds of damage that such lots "+
			"have. Look at it before you bid.", max(1, len(w.parts))))
	}
	if w.guarded && w.found.Bid != nil {
		out = append(out, "The bid is lower than your limits ask for: whoever has seen the lot bids more where it is sound, "+
			"and leaves you the rest.")
	}
	for _, said := range w.market.price.Warnings {
		out = append(out, said.Text)
	}
	if g := w.found.Gap; g != nil {
		out = append(out, fmt.Sprintf("The fee schedule is not even: %s breaks a rule while the higher bid %s holds them all.",
			w.currency.Show(g.Fails), w.currency.Show(g.Passes)))
	}
	for _, i := range checks.Contradictions(w.inQuestion()) {
		out = append(out, i.Text)
	}
	out = append(append(out, w.unused()...), w.uncounted()...)
	out = append(append(out, w.stopDoubts()...), w.starterWays()...)
	if said := w.c.learnedWords(); said != "" {
		out = append(out, said)
	}
	if w.c.Run.WinnersAllowance && w.c.Market.Rivals == nil {
		out = append(out, fmt.Sprintf("How many others bid is not entered: %d others are counted, %s.", w.c.Market.rivals(), w.c.Market.whose()))
	}
	if w.c.Run.WinnersAllowance && w.problem.Allowance > 0 {
		out = append(out, fmt.Sprintf("Profits are counted after a winner's allowance of %s: with %d other bidders, whoever wins has "+
			"probably overvalued it.",
			w.money(w.problem.Allowance), w.c.Market.rivals()))
	}
	return out
}

// unused names what the case holds and this valuation could not use.
func (w *work) unused() []string {
	var out []string
	if missing := w.unpaid(); len(missing) > 0 {
		out = append(out, "No labor rate for "+strings.Join(missing, ", ")+": those hours of yours are counted at nothing.")
	}
	known := map[string]bool{}
	for _, i := range w.items {
		known[i.ID] = true
	}
	known[NothingSeen] = true
	for _, id := range sortedKeys(w.c.Findings) {
		if !known[id] {
			out = append(out, fmt.Sprintf("The finding %q informs no risk of this lot and changes nothing.", id))
		}
	}
	return out
}

// uncounted names the facts that speak for cost or price and that no figure, or not every figure, counts.
func (w *work) uncounted() []string {
	var out []string
	l := w.c.Lot
	for _, n := range w.c.Needs() {
		if w.c.byHand() {
			out = append(out, "With the catalogues on, this would still be asked before a bid: "+n.Text)
		}
	}
	if l.Keys != nil && !*l.Keys && !w.c.Repair.UseCatalogue {
		out = append(out, "There are no keys, and the catalogue, which has a job for that, is not used: add the keys and their programming "+
			"under Repair.")
	}
	if w.c.Selling.Papers == nil {
		out = append(out, "The fees for title, inspection and registration are not entered: nothing is counted for them. "+
			"Enter them under Costs, Selling.")
	}
	if l.Keys == nil && w.c.Repair.UseCatalogue {
		out = append(out, fmt.Sprintf("Whether there are keys is not known: work and damage of missing keys are counted with a chance of "+
			"%.0f %% (starter value).", 100*keysMissing))
	}
	if l.Condition == "unknown" && w.c.Hidden.UseCatalogue {
		out = append(out, "How it runs is not known: each way in which it may stand is counted as likely as another (starter value).")
	}
	if days := w.c.Time.InspectionQueueDays; l.Title.Inspection() == lot.InspectionOpen && !days.Zero() {
		out = append(out, fmt.Sprintf("Whether the rebuilt inspection is asked for is not known by the title: its wait, %.0f days on average, "+
			"is counted. Ask the agency.", days.Mean()))
	}
	out = slices.Concat(out, w.discounted(), w.c.unheard(), w.struck)
	return append(out, w.staleQuotes()...)
}

// quoteDays is for how many days a quote of a part is taken to stand. Starter value, from memory: replace it with yours.
const quoteDays = 60

// staleQuotes names the quotes that are so old that their price may be gone.
func (w *work) staleQuotes() []string {
	var out []string
	for _, l := range w.lines {
		for _, p := range l.Parts {
			for _, o := range p.Options {
				if days, known := o.Day().Days(w.c.ValuedOn); known && days > quoteDays {
					out = append(out, fmt.Sprintf("The quote for %s (%s, %s) is of %s, %d days old: ask again.", p.Name,
						strings.ReplaceAll(o.Source, "_", " "), l.Job, o.Day(), days))
				}
			}
		}
	}
	return out
}

// unpaid returns the trades that have hours and no rate.
func (w *work) unpaid() []string {
	has := map[string]bool{}
	for _, l := range w.lines {
		for trade := range l.Hours {
			has[trade] = true
		}
	}
	for _, r := range w.risks {
		for trade := range r.Hours {
			has[trade] = true
		}
	}
	var out []string
	for _, trade := range lot.Trades {
		if _, paid := w.c.Labour.Rates[trade]; has[trade] && !paid {
			out = append(out, trade)
		}
	}
	return out
}
