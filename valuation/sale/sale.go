package sale

import (
	"walkline/valuation/invoice"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// Law is the distribution of what a lot may go for, before it is raised to a legal bid: the chance of a draw at or below x major units.
type Law interface{ CDF(x float64) float64 }

// Lot is one lot to come, as the plan sees it.
type Lot struct {
	ID       string
	Day      lot.Date      // on which it runs; has to stand where something comes in
	Worth    money.Amount  // the greatest invoice total at which the lot breaks even
	WalkAway *money.Amount // nil: do not bid
	Beside   money.Amount  // cash that a win takes beyond its invoice; it is in Worth already
	Hours    float64       // of the own hours
	Days     float64       // carried, not used
	Hammer   Law
	Steps    []invoice.Step
	Terms    invoice.Terms
}

// WorthOf returns the worth at which bidding up to the walk-away bid brings that profit on average, in major units; the lot's own worth
// where no price can win. It is for a lot whose price tells of it: then the plan is not led to expect of a cheap win what the mean lot
// brings. Source: the value of a lot given that it was won, Milgrom and Weber, Econometrica 50 (1982) (from memory).
func (l Lot) WorthOf(gain float64, cur money.Currency) money.Amount {
	o := newOffer(l, Later{}, cur)
	profit, chance := o.mean(len(o.bids))
	if chance == 0 {
		return l.Worth
	}
	return l.Worth + cur.FromMajor((gain-profit)/chance)
}

// Purse is what is left to spend. After results it may lie below zero; then nothing is bid.
type Purse struct {
	Cash  money.Amount
	Hours float64
	Bays  int
}

// Income is money that comes in between the lots: it is there for lots of its day and of later days.
type Income struct {
	Day    lot.Date
	Amount money.Amount
}

// Freed is bays that come free between the lots: they are there for lots of its day and of later days.
type Freed struct {
	Day  lot.Date
	Bays int
}

// Later is the profit that a unit brings when it is kept for the next sale: of a major unit of cash, an hour, a bay.
type Later struct {
	Cash, Hour, Bay float64
}

// Sale is the problem: the lots in the order in which they run, and what there is for them.
type Sale struct {
	Currency money.Currency
	Purse             // before what comes in
	In       []Income // in any order
	Freed    []Freed  // in any order
	Later    Later
	Lots     []Lot
	Effort   int // the most prices that the exact program looks at, 0 for the usual; beyond it the grid stands in
}

// Bid is what the plan says of one lot.
type Bid struct {
	ID         string
	Bid        *money.Amount // as if every lot before it were lost; nil: no bid
	By         Bound         // what keeps Bid below the walk-away bid
	WinChance  float64       // of the hammer price at or below Bid
	Expected   float64       // mean profit at Bid, lots that are lost counted as nothing
	Reach      float64       // chance that the lot is bid on when the plan is followed
	AfterWin   *money.Amount // the middle bid after exactly one win, nil: no bid, or no lot before it can be won
	CashMiddle *money.Amount // cash after a win at the middle of the prices that win, nil: none wins
	CashFull   *money.Amount // cash after a win at the full bid
}

// Answer is the plan as seen before the first lot. What one more brings is worked out anew with that much more.
type Answer struct {
	Expected float64 // what following the plan brings, in major units
	Exact    bool
	Error    float64 // standard error of Expected, 0 where it is exact
	Lots     []Bid
	Thousand float64 // what 1,000 more in cash would bring
	TenHours float64
	Bay      float64
	Leave    []string // the lots that are not bid on, however the sale goes
}

// Policy says how far to go on a lot; ok false says to let it go.
type Policy interface {
	Stop(lot int, left Purse) (bid money.Amount, ok bool)
}
