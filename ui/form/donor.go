package form

import (
	"walkline/ui/damage"
	"walkline/valuation"
	"walkline/valuation/lot"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
)

// Donor adds the fields of the donor vehicle that a lot is planned with.
func Donor(f *Form) {
	at := func(c *valuation.Case) *repair.Donor {
		if c.Repair.Donor == nil {
			c.Repair.Donor = new(repair.Donor)
		}
		return c.Repair.Donor
	}
	f.Text("Donor vehicle", func(c *valuation.Case) *string { return &at(c).Vehicle })
	words := make([]string, len(lot.Areas))
	for i, area := range lot.Areas {
		words[i] = damage.Area(area)
	}
	const columns = 2
	f.Row("Donor is hit at", f.ticks("Donor is hit at", lot.Areas, words, columns, func(c *valuation.Case) *[]string { return &at(c).Hit }),
		func(valuation.Case) {})
	narrow(f.Three("Donor costs", Amounts, func(c *valuation.Case) any { return &at(c).Price }))
	narrow(f.Three("Donor's freight", Amounts, func(c *valuation.Case) any { return &at(c).Freight }))
	lead := f.Three("Donor's lead days", Days, func(c *valuation.Case) any { return &at(c).LeadDays })
	lead.SetFigures(4)
	lead.SetRoom(0)
	Hours(f, func(c *valuation.Case) *map[string]prob.Three { return &at(c).Hours })
	usable := Percents
	usable.Optional = true
	f.Number("Donor's parts usable", usable, func(c *valuation.Case) any { return &at(c).Sound }).SetRoom(0)
	narrow(f.owned("Its rest brings", Amounts, func(c *valuation.Case) { at(c).Starter = false },
		func(c *valuation.Case) any { return &at(c).Brings }))
}

// FromDonor adds a tick for whether the parts of a line come off the donor vehicle.
func FromDonor(f *Form, id string) {
	f.tick("Off the donor vehicle", "ask it first", func(c valuation.Case) bool { return c.Repair.Donor.Fed(id) },
		func(c *valuation.Case, on bool) { c.Repair.Donor.Take(id, on) })
}
