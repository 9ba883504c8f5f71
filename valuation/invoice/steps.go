package invoice

import "walkline/valuation/money"

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

// Nth returns the n-th legal bid, the lowest being the first. Limits: steps have passed CheckSteps, n >= 1.
func Nth(steps []Step, n int64) money.Amount {
	b := money.Amount(0)
	for i, s := range steps {
		if i+1 < len(steps) {
			tier := max(0, int64((steps[i+1].From-b+s.Step-1)/s.Step)) // steps until the next tier takes over
			if tier < n {
				b, n = b+money.Amount(tier)*s.Step, n-tier
				continue
			}
		}
		return b + money.Amount(n)*s.Step
	}
	return b
}
