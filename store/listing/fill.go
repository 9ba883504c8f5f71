package listing

import (
	"cmp"
	"slices"
	"strings"

	"walkline/store/runlist"
	"walkline/valuation"
	"walkline/valuation/lot"
)

// Fill returns a case with what a text adds to it, and what the text says. What the case knows already stays; where the text says
// otherwise, it is told among what is left. Errors: as of [Read].
func Fill(c valuation.Case, text string) (valuation.Case, Found, error) {
	f, err := Read(text)
	if err != nil {
		return c, f, err
	}
	c = c.Clone()
	have := c.Lot
	f.price(c)
	f.day(c)
	if have.Title.Document == lot.NotYetKnown && f.Lot.Title.Document != "" {
		have.Title.Document = ""
	}
	have.Number, have.Sale = cmp.Or(have.Number, f.Lot.Number), cmp.Or(have.Sale, f.Lot.Sale)
	says := f.Lot
	says.Number, says.Sale = have.Number, have.Sale
	f.stays("lot number", have.Number, f.Lot.Number)
	f.stays("sale", have.Sale, f.Lot.Sale)
	if have.SaleDate != "" {
		says.SaleDate = have.SaleDate
		f.stays("sale day", string(have.SaleDate), string(f.Lot.SaleDate))
	}
	filled, otherwise := runlist.Filled(have, says)
	if len(filled.Airbags) == 0 {
		filled.Airbags = f.Lot.Airbags
	}
	if len(filled.Title.Brands) == 0 {
		filled.Title.Brands = f.Lot.Title.Brands
	}
	c.Lot, f.Left = filled, append(f.Left, otherwise...)
	for _, d := range f.Damage {
		if !slices.ContainsFunc(c.Damage, func(x lot.Damage) bool { return x.Area == d.Area }) {
			c.Damage = append(c.Damage, d)
		}
	}
	if f.Driven+f.Powertrain != "" || f.Doors > 0 {
		if c.Survey == nil {
			c.Survey = &lot.Survey{}
		}
		c.Survey.Driven, c.Survey.Powertrain = cmp.Or(c.Survey.Driven, f.Driven), cmp.Or(c.Survey.Powertrain, f.Powertrain)
		c.Survey.Doors = cmp.Or(c.Survey.Doors, f.Doors)
	}
	return c, f, nil
}

// stays tells of what the case knows already and the text says otherwise.
func (f *Found) stays(what, have, says string) {
	if says != "" && !strings.EqualFold(have, says) {
		f.Left = append(f.Left, what+" is "+have+" here, "+says+" in the text")
	}
}
