package truth

import (
	"walkline/assets"
	"walkline/store/casefile"
	"walkline/valuation"
	"walkline/valuation/bid"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// Today is the day of every valuation.
const Today = lot.Date("2026-11-20")

// scenarios is how many scenarios a lot is played with: enough for a bid to within about a step.
const scenarios = 1024

// Template reads the lot of the demo that a simulated shop's lots are variations of, and the catalogues; the one house rule is that a lot
// pays for itself. Errors: what the program ships can't be read.
func Template() (valuation.Case, valuation.Knowledge, error) {
	know, faults := casefile.Knowledge(assets.Jobs(), assets.Risks(), assets.ResalePrior())
	data, err := assets.Demo("front.json")
	if err != nil {
		return valuation.Case{}, know, err
	}
	c, more := casefile.Read(data)
	if faults = append(faults, more...); len(faults) > 0 {
		return c, know, faults[0]
	}
	c.Resale.Comparables, c.Resale.Rows, c.ValuedOn = "", nil, Today
	c.Run.Scenarios, c.Run.WinnersAllowance = scenarios, false
	nothing := money.Amount(0)
	c.Rules = bid.Rules{MinProfit: &nothing}
	return c, know, nil
}

// Learned returns all that builds teach, taken over, and the proposals themselves.
func Learned(builds []learn.Build, start learn.Starter) (learn.Factors, []learn.Proposal) {
	f := learn.Factors{}
	proposals := learn.Propose(builds, Today, f, start)
	for _, p := range proposals {
		f = learn.Apply(f, p)
	}
	return f, proposals
}
