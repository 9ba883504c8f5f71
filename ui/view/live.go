package view

import (
	"fmt"
	"strings"

	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/bid"
	"walkline/valuation/invoice"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// Live is what is read across a room while a lot is bid for. A figure that is not known, or not of the lot as it stands, is a
// dash.
type Live struct {
	Lot     string
	Sale    string
	State   string // what became of it, where that was recorded
	Current string // where the bidding stands
	Pays    string // what that costs with everything on the invoice, or what is wrong with it
	Doubt   bool   // Pays says what is wrong
	Name    string // what Limit is: the walk-away bid, or today's bid where the plan of the day sets a lower one
	Limit   string
	Beside  string // what stands behind Name: the other of the two; empty: no plan
	Binds   string // what sets it, or why there is none
	Steps   string // how many steps are left, or STOP; what became of the lot, where that was recorded
	Stop    bool
	Refused bool   // no bid may be made at all
	Plan    string // what each plan may bid, where more than one is priced
	At      string // the bid that the odds are of
	Odds    []LiveOdd
}

// LiveOdd is one figure of the odds.
type LiveOdd struct {
	Name, Figure string
	Bad          bool // a loss where a profit should stand, or a rule that fails
}

// The odds of the walk-away bid, whatever bid the others are of.
const (
	liveWin  = "Win at walk-away"
	liveGain = "Gain at walk-away"
	liveFrom = "Both go by"
)

// Dash stands where a figure is not known.
const Dash = "—"

// unseen stands before what sets or forbids a bid on a lot that nobody has looked at.
const unseen = "FIRST GUESS: nobody has looked at this lot. Look before you bid. "

// NewLive returns what is to be read of an open lot.
func NewLive(s desk.State) Live {
	if s.Open == nil {
		return Live{}
	}
	o := *s.Open
	p := NewPurse(o.Case.Currency)
	v := Live{Lot: LotTitle(o.Case), Sale: strings.TrimSpace(o.Case.Lot.Sale + "  " + Day(o.Case.Lot.SaleDate)), Current: "none yet",
		Name: walkAwayBid, Limit: "not known"}
	if o.State == lot.Won || o.State == lot.Lost || o.State == lot.Passed {
		v.State = "marked: " + string(o.State)
	}
	if o.Went != nil && v.State != "" {
		v.State += " at " + p.Show(*o.Went)
	}
	if o.Current > 0 {
		v.Current = p.Exact(o.Current)
	}
	v.Odds = []LiveOdd{{"Expected profit", Dash, false}, {"Chance of a loss", Dash, false}, {"Worst tenth", Dash, false},
		{"Per hour of mine", Dash, false}, {liveWin, Dash, false}, {liveGain, Dash, false}}
	v.Binds = unknown(o)
	if v.Binds == "" {
		v.know(o, p)
	}
	if v.State == "" {
		v.plan(s, p)
	} else { // bidding is over
		v.Steps, v.Stop = strings.ToUpper(string(o.State)), false
	}
	if steps := Steps(o); o.Current > 0 {
		if doubt := notLegal(p, steps, o.Current); doubt != "" {
			v.Pays, v.Doubt = doubt, true
		}
	}
	return v
}

// unknown says why a lot has no figures that can be relied on now; empty when it has.
func unknown(o desk.Open) string {
	switch {
	case len(o.Faults) > 0:
		return "Not valued. " + StillMissing(o)[0].Words
	case o.Problem != "":
		return "Not valued. " + sentence(o.Problem)
	case o.Valued == nil:
		return "Being valued…"
	case len(o.Valued.Answer.Needs) > 0:
		return "No bid yet: it " + needWords(needKeys(o.Valued.Answer)) + "."
	case !o.Fresh:
		return "Edited since: being valued anew…"
	}
	return ""
}

// know writes what is known of a lot as it stands.
func (v *Live) know(o desk.Open, p Purse) {
	a := o.Valued.Answer
	v.limit(o, p)
	b := o.Current
	if b == 0 {
		b = invoice.After(o.Valued.Of.Buying.BidSteps, 0)
	}
	at := o.Valued.Odds.At(b)
	v.At = "At a bid of " + p.Show(b)
	chance, gain := odds(a, p)
	v.Odds, v.Plan = append(liveOdds(p, at), LiveOdd{liveWin, chance, false}, LiveOdd{liveGain, gain, false}), planWords(a)
	if v.Plan == "" && unpriced(o.Valued.Of) != "" {
		v.Plan = "Only a rebuild is priced."
	}
	if a.WinFrom != "" {
		v.Odds = append(v.Odds, LiveOdd{liveFrom, a.WinFrom, false})
	}
	if o.Current > 0 {
		v.Pays = "costs " + p.Show(at.Total) + " with everything on the invoice"
	}
	if a.WalkAway != nil && o.Current > *a.WalkAway {
		v.Binds = broken(at)
	}
}

// limit writes the walk-away bid and the steps that are left to it.
func (v *Live) limit(o desk.Open, p Purse) {
	a := o.Valued.Answer
	if a.WalkAway == nil {
		v.Limit, v.Steps, v.Stop, v.Refused = "do not bid", "STOP", true, true
		if len(a.Reasons) > 0 {
			v.Binds = a.Reasons[0]
		}
		if a.FirstGuess != nil {
			v.Binds = unseen + v.Binds
		}
		return
	}
	v.Limit, v.Binds = p.Exact(*a.WalkAway), "Set by: "+shortRules[a.BindingRule]+"."
	if a.FirstGuess != nil {
		v.Binds = unseen + v.Binds
	}
	v.left(o, *a.WalkAway)
}

// left writes the steps that are left to a limit.
func (v *Live) left(o desk.Open, limit money.Amount) {
	steps := o.Valued.Of.Buying.BidSteps
	_, top := invoice.Stand(steps, limit)
	_, now := invoice.Stand(steps, o.Current)
	v.Stop = o.Current > limit
	switch left := top - now; {
	case v.Stop:
		v.Steps = "STOP"
	case left == 0:
		v.Steps = "no step left"
	default:
		v.Steps = Count(int(left), "step") + " left"
	}
}

// liveOdds returns the odds at a bid; what is lost on average is called a loss.
func liveOdds(p Purse, at valuation.Outlook) []LiveOdd {
	f := at.Profit
	fails := map[string]bool{}
	for _, r := range at.Rules {
		fails[r.Rule] = !r.Holds
	}
	mean := LiveOdd{"Expected profit", p.Whole(f.Mean), fails[bid.MinProfit] || fails[bid.MinMargin]}
	if f.Mean < 0 {
		mean = LiveOdd{"Expected LOSS", p.Whole(-f.Mean), true}
	}
	worst := LiveOdd{"Worst tenth gains", p.Whole(f.WorstTenth), fails[bid.MaxWorstTenthLoss]}
	if f.WorstTenth < 0 {
		worst = LiveOdd{"Worst tenth loses", p.Whole(-f.WorstTenth), fails[bid.MaxWorstTenthLoss]}
	}
	hour := LiveOdd{"Per hour of mine", "no hours of yours", false}
	if f.PerHour != nil {
		hour = LiveOdd{"Per hour of mine", p.Whole(*f.PerHour), fails[bid.MinPerHour]}
	}
	return []LiveOdd{mean, {"Chance of a loss", Percent(f.LossChance), fails[bid.MaxLossChance]}, worst, hour}
}

// shortRules says a house rule in few words, for a look across the room.
var shortRules = map[string]string{
	bid.MinProfit: "least profit", bid.MinMargin: "least margin", bid.MaxLossChance: "chance of a loss", bid.MaxWorstTenthLoss: "worst tenth",
	bid.MinPerHour: "per hour of mine", bid.MaxCash: "cash tied up", bid.MaxDays: "longest time",
	valuation.Unready: "something is missing",
}

// shortRule says what binds a bid in few words.
func shortRule(rule string) string {
	if words, ok := shortRules[rule]; ok {
		return words
	}
	return valuation.RuleWords[rule]
}

// broken names the house rules that fail at a bid.
func broken(at valuation.Outlook) string {
	var names []string
	for _, r := range at.Rules {
		if !r.Holds {
			names = append(names, shortRules[r.Rule])
		}
	}
	if len(names) == 0 {
		return ""
	}
	return "Breaks: " + strings.Join(names, ", ") + "."
}

// Steps returns the bid steps of an open lot's sale, nothing while they are not well stated.
func Steps(o desk.Open) []invoice.Step {
	cur, known := money.Lookup(o.Case.Currency)
	if !known || len(o.Case.Buying.BidSteps) == 0 || len(invoice.CheckSteps(o.Case.Buying.BidSteps, cur)) > 0 {
		return nil
	}
	return o.Case.Buying.BidSteps
}

// Raised returns the legal bid so many steps above or below where the bidding stands; below the lowest it has not begun.
func Raised(steps []invoice.Step, bid money.Amount, by int) money.Amount {
	for ; by > 0; by-- {
		bid = invoice.After(steps, bid)
	}
	for ; by < 0; by++ {
		bid = invoice.Before(steps, bid)
	}
	return bid
}

// Facts returns what is to be read, in words.
func (v Live) Facts() []string {
	facts := []string{v.Lot, "Current bid: " + v.Current, v.Pays, v.Name + ": " + v.Limit + v.Beside, v.Steps, v.Binds, v.Plan, v.State,
		v.At}
	for _, o := range v.Odds {
		facts = append(facts, fmt.Sprintf("%s: %s", o.Name, o.Figure))
	}
	var said []string
	for _, f := range facts {
		if f != "" {
			said = append(said, f)
		}
	}
	return said
}
