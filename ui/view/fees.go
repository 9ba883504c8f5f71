package view

import (
	"walkline/valuation"
	"walkline/valuation/money"
)

// Curve is a line through points, x and y in major units.
type Curve struct {
	XLabel, YLabel string
	Points         [][2]float64
}

// curvePoints is how many points a curve of fees has.
const curvePoints = 120

// FeeCurve returns what the sale charges on top of the hammer price, against the hammer price, up to where its schedules
// change last and well past it. A case whose terms have faults has no curve.
func FeeCurve(c valuation.Case) Curve {
	p := NewPurse(c.Currency)
	v := Curve{XLabel: "hammer price, " + p.Code, YLabel: "fees and tax, " + p.Code}
	if len(c.Buying.Check(p.Currency)) > 0 {
		return v
	}
	top := p.FromMajor(10000)
	for _, s := range c.Buying.Fees {
		top = max(top, s.Rows[len(s.Rows)-1].From*3/2)
	}
	for i := range curvePoints + 1 {
		b := top * money.Amount(i) / curvePoints
		v.Points = append(v.Points, [2]float64{p.Major(b), p.Major(c.Buying.Total(b, p.Currency).Total - b)})
	}
	return v
}
