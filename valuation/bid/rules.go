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

// Bounding reports whether a rule is on that a high enough bid must break.
func (r Rules) Bounding() bool {
	return r.MinProfit != nil || r.MinMargin != nil || r.MaxLossChance != nil && *r.MaxLossChance < 1 ||
		r.MaxWorstTenthLoss != nil || r.MinPerHour != nil || r.MaxCash != nil
}

// rule is one house rule that is on: whether it holds at an invoice total, in major units.
type rule struct {
	name  string
	limit float64 // money, for the bracket of the search; 0 otherwise
	holds func(total float64) bool
}

// tie is how near to its limit a figure counts as meeting it, far below any minor unit and above the dust of float64.
const tie = 1e-7

// on lists the rules that are on, in their order.
func (p *Problem) on() []rule {
	var rs []rule
	add := func(is bool, name string, limit float64, holds func(float64) bool) {
		if is {
			rs = append(rs, rule{name, limit, holds})
		}
	}
	r, major := p.Rules, p.Currency.Major
	profit, worst, hour, cash := value(r.MinProfit), value(r.MaxWorstTenthLoss), value(r.MinPerHour), value(r.MaxCash)
	add(r.MinProfit != nil, MinProfit, major(profit), func(a float64) bool { return p.mean(a) >= major(profit)-tie })
	add(r.MinMargin != nil, MinMargin, 0, func(a float64) bool { return p.mean(a) >= value(r.MinMargin)*p.outlay(a)-tie })
	add(r.MaxLossChance != nil, MaxLossChance, 0, func(a float64) bool { return p.LossChance(a) <= value(r.MaxLossChance)+1e-12 })
	add(r.MaxWorstTenthLoss != nil, MaxWorstTenthLoss, major(worst), func(a float64) bool { return -p.worstTenth(a) <= major(worst)+tie })
	add(r.MinPerHour != nil, MinPerHour, 0, func(a float64) bool { return p.mean(a)+p.labour >= major(hour)*p.hours-tie })
	add(r.MaxCash != nil, MaxCash, major(cash), func(a float64) bool { return a+p.cash90 <= major(cash)+tie })
	add(r.MaxDays != nil, MaxDays, 0, func(float64) bool { return p.days90 <= value(r.MaxDays)+tie })
	return rs
}

// value returns what v points to, or nothing.
func value[T any](v *T) (zero T) {
	if v == nil {
		return zero
	}
	return *v
}
