package valuation

import (
	"slices"

	"walkline/valuation/hidden"
	"walkline/valuation/lot"
	"walkline/valuation/prob"
	"walkline/valuation/resale"
)

// How far above its reading an odometer that can't be trusted may stand, as a multiple, and after how many miles or kilometers one of
// five digits begins anew. Starter values, from memory: replace them with yours.
const (
	mostAbove   = 2.0
	likelyAbove = 1.5
	fiveDigits  = 100_000
)

// mileage returns the mileage that the reading may stand for, at or above it, in its unit; nil where the reading is the mileage, or
// there is none.
func (c Case) mileage() *prob.Three {
	l := c.Lot
	if l.Odometer == nil || l.OdometerStatus == "actual" && !c.odometerBranded() {
		return nil
	}
	x := float64(*l.Odometer)
	if own := c.Resale.TrueMileage; own != nil {
		return &prob.Three{Low: max(own.Low, x), Likely: max(own.Likely, x), High: max(own.High, x)}
	}
	may := prob.Three{Low: x, Likely: x, High: mostAbove * x}
	if l.Misread() || c.odometerBranded() {
		may.Likely = likelyAbove * x
	}
	if l.OdometerStatus == "exceeds_limits" {
		may.Likely, may.High = max(may.Likely, x+fiveDigits), max(may.High, x+fiveDigits)
	}
	return &may
}

// odometerBranded reports whether the title says that the reading is not the mileage.
func (c Case) odometerBranded() bool { return slices.Contains(c.causes(), CauseOdometer) }

// milesRisk is the risk that the mileage is higher than shown.
const milesRisk = "odometer_doubt"

// unknownMiles returns the risks without that of more miles than are shown, where the statement or the title says so: a known fact is no
// risk, and the price knows it already, by the mileage that is counted or as the buyer's own guess of it.
func (c Case) unknownMiles(risks []hidden.Risk) []hidden.Risk {
	if !c.Lot.Misread() && !c.odometerBranded() {
		return risks
	}
	return slices.DeleteFunc(risks, func(r hidden.Risk) bool { return r.ID == milesRisk })
}

// doubt returns what is not sure of the vehicle as it will be sold, the learned discounts on it.
func (c Case) doubt() resale.Doubt {
	_, lead := c.leading()
	d := resale.Doubt{Mileage: c.mileage(), Brand: c.learnedOff(lead), General: c.brandDiscount()}
	if c.odometerBranded() {
		d.Off = c.discountOf(CauseOdometer)
	}
	return d
}

// discounts adds the faults of the figures by cause and of the mileage.
func (f *faults) discounts(c Case) {
	for _, cause := range sortedKeys(c.Resale.Discounts) {
		at := "resale.discounts." + cause
		f.word(at, cause, Causes)
		f.three(at, c.Resale.Discounts[cause])
		f.unless(c.Resale.Discounts[cause].High < 1, at+".high", c.Resale.Discounts[cause].High, "a fraction below 1 (28 % is 0.28)")
	}
	if t := c.Resale.TrueMileage; t != nil {
		f.three("resale.true_mileage", *t)
		f.unless(t.High <= lot.MostMileage, "resale.true_mileage.high", t.High, "a mileage that a vehicle can have")
	}
}
