package csvfile

import (
	"strings"

	"walkline/store/cell"
	"walkline/store/table"
	"walkline/valuation/lot"
	"walkline/valuation/resale"
)

// split takes a vehicle that stands in one cell: its year, make and model, a reading and a price in parts of their own, and the rest as
// trim. What has a column of its own stands above it.
func split(c *Comparable, text string, s *table.Stated) error {
	v := cell.Vehicle(text, s.Make, s.Model)
	setIf(&c.Make, v.Make)
	setIf(&c.Model, v.Model)
	setIf(&c.Trim, v.Trim)
	if c.ModelYear == 0 {
		c.ModelYear, c.unsure = v.Year, v.Unsure
	}
	if c.Mileage == nil && v.Length.Known && v.Length.Float() <= lot.MostMileage {
		x := v.Length.Float()
		c.Mileage, c.Unit, c.Status = &x, v.Length.Unit, v.Length.Status
	}
	return nil
}

func setIf(at *string, text string) {
	if *at == "" {
		*at = text
	}
}

// parted takes the lot's make and model off a model cell that says more, and leaves the rest as trim. The lot's model without a make is of
// its make.
func parted(c *Comparable, s *table.Stated) {
	if c.Make == "" && c.KinOf(s.Make, s.Model) != resale.Other {
		c.Make = s.Make
	}
	if s.Model == "" || strings.EqualFold(c.Model, s.Model) || len(c.Model) <= len(s.Model) {
		return
	}
	words := strings.Fields(c.Model)
	if !cell.Cut(&words, s.Model) {
		return
	}
	if cell.Cut(&words, s.Make) || c.Make == "" {
		setIf(&c.Make, s.Make)
	}
	c.Model = s.Model
	if rest := strings.Join(words, " "); rest != "" {
		c.Trim = strings.TrimSpace(rest + " " + c.Trim)
	}
}
