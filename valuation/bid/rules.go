package bid

import "walkline/valuation/money"

// Rules are the house rules; a nil rule is off. JSON keys are those of the case file.
type Rules struct {
	MinProfit         *money.Amount `json:"min_profit"`           // least expected profit
	MinMargin         *float64      `json:"min_margin"`           // least expected profit / expected outlay
	MaxLossChance     *float64      `json:"max_loss_chance"`      // greatest P(profit < 0)
	MaxWorstTenthLoss *money.Amount `json:"max_worst_tenth_loss"` // greatest mean loss in the worst tenth of the profits
	MinPerHour        *money.Amount `json:"min_per_hour"`         // least (profit + own labour) / own hours
	MaxCash           *money.Amount `json:"max_cash"`             // greatest 90th percentile of money out before the sale
	MaxDays           *float64      `json:"max_days"`             // greatest 90th percentile of days
}

// The names of the rules, as the case file spells them.
const (
	MinProfit         = "min_profit"
	MinMargin         = "min_margin"
	MaxLossChance     = "max_loss_chance"
	MaxWorstTenthLoss = "max_worst_tenth_loss"
	MinPerHour        = "min_per_hour"
	MaxCash           = "max_cash"
	MaxDays           = "max_days"
)

// Names are the rules in their order.
var Names = []string{MinProfit, MinMargin, MaxLossChance, MaxWorstTenthLoss, MinPerHour, MaxCash, MaxDays}

// Without returns the rules with those of some names off.
func (r Rules) Without(names ...string) Rules {
	for _, name := range names {
		switch name {
		case MinProfit:
			r.MinProfit = nil
		case MinMargin:
			r.MinMargin = nil
		case MaxLossChance:
			r.MaxLossChance = nil
		case MaxWorstTenthLoss:
			r.MaxWorstTenthLoss = nil
		case MinPerHour:
			r.MinPerHour = nil
		case MaxCash:
			r.MaxCash = nil
		case MaxDays:
			r.MaxDays = nil
		}
	}
	return r
}

// Bounding reports whether a rule is on that a high enough bid must break.
func (r Rules) Bounding() bool {
	return r.MinProfit != nil || r.MinMargin != nil || r.MaxLossChance != nil && *r.MaxLossChance < 1 ||
		r.MaxWorstTenthLoss != nil || r.MinPerHour != nil || r.MaxCash != nil
}

// rule is one house rule that is on: by how much it holds at an invoice total, below 0 where it fails. The slack never rises
// with the total.
type rule struct {
	name  string
	limit float64 // money, for the bracket of the search; 0 otherwise
	slack func(at *reading) float64
}

// tie is how near to its limit a figure counts as meeting it, far below any minor unit and above the dust of float64.
const tie = 1e-7

// tieChance is the same for a chance.
const tieChance = 1e-12

// on lists the rules that are on, in their order.
func (p *Problem) on() []rule {
	var rs []rule
	add := func(is bool, name string, limit float64, slack func(*reading) float64) {
		if is {
			rs = append(rs, rule{name, limit, slack})
		}
	}
	r, major := p.Rules, p.Currency.Major
	profit, worst, hour, cash := major(value(r.MinProfit)), major(value(r.MaxWorstTenthLoss)), major(value(r.MinPerHour)),
		major(value(r.MaxCash))
	margin, loss, days := value(r.MinMargin), value(r.MaxLossChance), value(r.MaxDays)
	add(r.MinProfit != nil, MinProfit, profit, func(at *reading) float64 { return at.mean - profit + tie })
	add(r.MinMargin != nil, MinMargin, 0, func(at *reading) float64 { return at.mean - margin*at.outlay + tie })
	add(r.MaxLossChance != nil, MaxLossChance, 0, func(at *reading) float64 { return loss - p.LossChance(at.total) + tieChance })
	add(r.MaxWorstTenthLoss != nil, MaxWorstTenthLoss, worst, func(at *reading) float64 { return at.worst(p) + worst + tie })
	add(r.MinPerHour != nil, MinPerHour, 0, func(at *reading) float64 { return at.mean + p.labour - hour*p.hours + tie })
	add(r.MaxCash != nil, MaxCash, cash, func(at *reading) float64 { return cash - at.total - p.cash90 + tie })
	add(r.MaxDays != nil, MaxDays, 0, func(*reading) float64 { return days - p.days90 + tie })
	return rs
}

// reading is an invoice total with what rules look at there; the worst tenth is worked out when it is asked for.
type reading struct {
	total, mean, outlay float64
	worstTenth          float64
	known               bool
}

func (p *Problem) read(total float64) *reading {
	return &reading{total: total, mean: p.mean(total), outlay: p.outlay(total)}
}

func (at *reading) worst(p *Problem) float64 {
	if !at.known {
		at.worstTenth, at.known = p.worstTenth(at.total), true
	}
	return at.worstTenth
}

// value returns what v points to, or nothing.
func value[T any](v *T) (zero T) {
	if v == nil {
		return zero
	}
	return *v
}
