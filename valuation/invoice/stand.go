package invoice

import "walkline/valuation/money"

// Stand returns where most stands among the legal bids: the greatest legal bid that is not above it, and how many legal
// bids there are up to that one. Below the lowest legal bid both are 0. Limits: steps have passed CheckSteps.
func Stand(steps []Step, most money.Amount) (legal money.Amount, count int64) {
	for i, s := range steps {
		left := max(0, int64((most-legal)/s.Step)) // steps of this tier that fit below most
		if i+1 < len(steps) {
			tier := int64((steps[i+1].From - legal + s.Step - 1) / s.Step) // steps until the next tier takes over
			if tier <= left {
				legal, count = legal+money.Amount(max(0, tier))*s.Step, count+max(0, tier)
				continue
			}
		}
		return legal + money.Amount(left)*s.Step, count + left
	}
	return legal, count
}

// Legal reports whether b can be bid.
func Legal(steps []Step, b money.Amount) bool {
	at, n := Stand(steps, b)
	return n > 0 && at == b
}

// Before returns the legal bid below b, 0 where there is none.
func Before(steps []Step, b money.Amount) money.Amount {
	at, _ := Stand(steps, b-1)
	return at
}

// After returns the legal bid above b, which need not be legal itself.
func After(steps []Step, b money.Amount) money.Amount {
	at, _ := Stand(steps, b)
	return Next(steps, at)
}
