package valuation

import (
	"cmp"

	"walkline/valuation/bid"
	"walkline/valuation/checks"
	"walkline/valuation/invoice"
	"walkline/valuation/money"
	"walkline/valuation/resale"
)

// AnswerFormat is the version of the answer that this engine writes.
const AnswerFormat = "walkline-answer/1"

// Answer is what one valuation says. JSON keys are those of the case file. Money that must be exact is a decimal string
// (a [money.Amount] in the currency's minor units); model figures are numbers in major units.
type Answer struct {
	Format      string        `json:"format"`
	Currency    string        `json:"currency"`
	Decision    string        `json:"decision"` // bid | do_not_bid
	WalkAway    *money.Amount `json:"walk_away"`
	BindingRule string        `json:"binding_rule"` // a house rule, Stopped or Unready
	Reasons     []string      `json:"reasons"`
	Needs       []Need        `json:"needs"` // what a bid still needs; none: the lot is ready
	Warnings    []string      `json:"warnings"`
	Ceilings    []bid.Ceiling `json:"ceilings"`   // written as an object, in the order of the rules
	NoCeiling   []string      `json:"no_ceiling"` // the rules that hold at every bid that was looked at: their ceiling is the last of those
	Resale      resale.Price  `json:"resale"`
	Repair      RepairFigures `json:"repair"`
	Hidden      HiddenFigures `json:"hidden"`
	Days        Spread        `json:"days"`
	Hours       Spread        `json:"hours"`
	Acquisition Acquisition   `json:"acquisition"`
	Profit      Profit        `json:"profit"`
	Ladder      []Rung        `json:"ladder"`
	Waterfall   []Bar         `json:"waterfall"`
	Drivers     []Driver      `json:"drivers"`
	Checklist   []checks.Item `json:"checklist"`
	Labour      Spread        `json:"own_labour"`
	Looks       checks.Looks  `json:"looks"`
	TotalLoss   *TotalLoss    `json:"total_loss"`  // nil: no value before the damage to compare with, or no pack
	FirstGuess  *FirstGuess   `json:"first_guess"` // nil: the lot has been looked at; else every figure is a first guess
	Exits
	Winning
}

// Spread is a simulated figure's mean and its 10th and 90th percentiles.
type Spread struct {
	Mean float64 `json:"mean"`
	P10  float64 `json:"p10"`
	P90  float64 `json:"p90"`
}

// RepairFigures is the cost of the known work, own labour at its rates included, and each line's share.
type RepairFigures struct {
	Spread
	Lines []LineFigure `json:"lines"`
}

// LineFigure is the mean cost and hours of one repair line, its chance counted in.
type LineFigure struct {
	ID      string  `json:"id"`
	Job     string  `json:"job"`
	Area    string  `json:"area"`
	Mean    float64 `json:"mean"`
	Hours   float64 `json:"hours"`
	Why     string  `json:"why"`
	Caution string  `json:"caution"`
}

// HiddenFigures is the cost of the damage that may be there, own labour at its rates included.
type HiddenFigures struct {
	Spread
	Risks []RiskFigure `json:"risks"`
}

// RiskFigure is one risk's chance after the findings and its mean cost when it is there.
type RiskFigure struct {
	ID            string  `json:"id"`
	Name          string  `json:"name"`
	Chance        float64 `json:"chance"`
	MeanIfPresent float64 `json:"mean_if_present"`
	Why           string  `json:"why"`
	Caution       string  `json:"caution"`
}

// Acquisition is the invoice at the walk-away bid (at the lowest legal bid when the decision is not to bid).
type Acquisition struct {
	Bid   money.Amount   `json:"bid"`
	Lines []invoice.Line `json:"lines"`
	Total money.Amount   `json:"total"`
}

// Profit is the profit at the bid of [Acquisition], after the winner's allowance.
type Profit struct {
	Mean       float64  `json:"mean"`
	P05        float64  `json:"p05"`
	P10        float64  `json:"p10"`
	P50        float64  `json:"p50"`
	P90        float64  `json:"p90"`
	LossChance float64  `json:"loss_chance"`
	WorstTenth float64  `json:"worst_tenth_mean"`
	Margin     float64  `json:"margin"`
	PerHour    *float64 `json:"per_hour"` // nil: no own hours
}

// Rung is one bid of the ladder.
type Rung struct {
	Bid         money.Amount `json:"bid"`
	Acquisition money.Amount `json:"acquisition"`
	MeanProfit  float64      `json:"mean_profit"`
	LossChance  float64      `json:"loss_chance"`
	WorstTenth  float64      `json:"worst_tenth_mean"`
	Margin      float64      `json:"margin"`
	PerHour     *float64     `json:"per_hour"`
	Holds       bool         `json:"holds"`
}

// Bar is one step of the waterfall from the resale price down to the bid; the bars before the last add up to the last.
type Bar struct {
	Name   string       `json:"name"`
	Amount money.Amount `json:"amount"`
	Kind   string       `json:"kind"` // what it is of, see [BarKinds]; an answer of an older version has none
}

// The kinds of a bar, which tell what it is whatever it is called.
const (
	BarResale    = "resale"
	BarOlder     = "older"
	BarStop      = "stop"
	BarAsIs      = "as_it_stands"
	BarParts     = "for_parts"
	BarHours     = "own_hours"
	BarSelling   = "selling"
	BarRepair    = "repair"
	BarHidden    = "hidden"
	BarFreight   = "freight"
	BarStorage   = "storage"
	BarHolding   = "holding"
	BarCapital   = "capital"
	BarAllowance = "allowance"
	BarFees      = "fees"
	BarProfit    = "profit"
	BarBid       = "walk_away"
	BarLowest    = "lowest_bid"
)

// BarKinds are the kinds of the bars by the names that they have in the answer.
var BarKinds = map[string]string{"Resale": BarResale, "Growing older": BarOlder, stopBar: BarStop, "Sold as it stands": BarAsIs,
	"Sold for parts": BarParts, "My hours": BarHours, "Selling": BarSelling, "Repair": BarRepair, "Hidden damage": BarHidden,
	"Freight": BarFreight,
	"Storage": BarStorage, "Holding": BarHolding, "Capital": BarCapital, "Winner's allowance": BarAllowance, "Fees and tax": BarFees,
	"Expected profit": BarProfit, "Walk-away bid": BarBid, "Lowest legal bid": BarLowest}

// Of returns what the bar is of; of an answer that an older version wrote, by the name that it had then.
func (b Bar) Of() string { return cmp.Or(b.Kind, BarKinds[b.Name]) }

// bar returns the bar of that name.
func bar(name string, amount money.Amount) Bar {
	return Bar{Name: name, Amount: amount, Kind: BarKinds[name]}
}

// Driver is one cause's share of the variance of the profit.
type Driver struct {
	Name  string  `json:"name"`
	Share float64 `json:"share"`
	// resale | factor | line | risk | hours | freight | storage | time | rest: names of lines and risks are the user's
	Kind string `json:"kind"`
}

// TotalLoss is what the rules of the places of issue and of registration would call the vehicle.
type TotalLoss struct {
	Repair   money.Amount     `json:"repair"`  // expected repair with hidden damage, at the buyer's own rates: an insurer's estimate differs
	Value    money.Amount     `json:"value"`   // with a clear title, as finished: what stands for the value just before the damage
	Salvage  *money.Amount    `json:"salvage"` // the likely hammer price; nil: no guess
	Callings []checks.Calling `json:"callings"`
}

// Exits are the plans and the option to stop. All but the plans speak of the rebuild.
type Exits struct {
	Plan       string                   `json:"plan"`        // whose figures the answer holds: that with the highest bid
	Plans      map[string]*money.Amount `json:"plans"`       // walk-away bid of each plan that was priced; nil: do not bid
	StopWay    string                   `json:"stop_way"`    // the way that stopping leads to; empty: no stop is planned
	StopLine   *float64                 `json:"stop_line"`   // money still to spend at the strip-down at which stopping is as good
	StopChance float64                  `json:"stop_chance"` // share of the scenarios that stop
	// walk-away bid with the option to stop less that without, no bid being nothing
	WayOutWorth money.Amount `json:"way_out_worth"`
}

// Winning is how the walk-away bid does against the guess of the hammer price, or else against what lots of the kind went for; nil where
// neither is known. No bid wins nothing.
type Winning struct {
	WinChance    *float64 `json:"win_chance"`
	ExpectedGain *float64 `json:"expected_gain"` // mean profit of bidding up to the walk-away bid, nothing when it is not won
	WinBasis     string   `json:"win_basis"`     // guess | results; empty: nobody can say
	WinFrom      string   `json:"win_from"`      // the same in words, as they read after "by"; empty: nobody can say
}
