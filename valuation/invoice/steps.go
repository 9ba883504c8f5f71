package invoice

import "walkline/valuation/money"

// MostBids is the greatest number of legal bids that is looked through.
const MostBids = 200_000

// Ladder returns the legal bids up to and including most, in rising order, and whether all of them fit in MostBids.
// The lowest legal bid is the first step. Limits: steps have passed CheckSteps.
func Ladder(steps []Step, most money.Amount) (bids []money.Amount, whole bool) {
	tier := 0
	for b := money.Amount(0); ; {
		for tier+1 < len(steps) && b >= steps[tier+1].From {
			tier++
		}
		b += steps[tier].Step
		if b > most {
			return bids, true
		}
		if len(bids) == MostBids {
			return bids, false
		}
		bids = append(bids, b)
	}
}

// Next returns the legal bid above b. Limits: b is 0 or legal.
func Next(steps []Step, b money.Amount) money.Amount {
	step := steps[0].Step
	for _, s := range steps {
		if b >= s.From {
			step = s.Step
		}
	}
	return b + step
}
