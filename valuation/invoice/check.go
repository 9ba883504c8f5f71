package invoice

import (
	"fmt"

	"github.com/shopspring/decimal"

	"walkline/valuation/money"
)

// Fault is one thing wrong with the terms: where (a path inside the terms), the value, and what would be right.
type Fault struct {
	Path, Value, Want string
}

// Check returns every fault of the terms; none means that Total is safe.
func (t Terms) Check(c money.Currency) []Fault {
	var fs []Fault
	for i, s := range t.Fees {
		fs = append(fs, s.check(fmt.Sprintf("fees[%d]", i), c)...)
	}
	for i, f := range t.Fixed {
		if f.Amount < 0 {
			fs = append(fs, Fault{fmt.Sprintf("fixed[%d].amount", i), c.Text(f.Amount), "no less than 0"})
		}
	}
	fs = append(fs, fraction("payment_surcharge", t.Surcharge)...)
	fs = append(fs, fraction("tax.rate", t.Tax.Rate)...)
	if t.Tax.Base != "hammer" && t.Tax.Base != "hammer_and_fees" {
		fs = append(fs, Fault{"tax.base", t.Tax.Base, "hammer or hammer_and_fees"})
	}
	return fs
}

func (s Schedule) check(path string, c money.Currency) []Fault {
	var fs []Fault
	if s.Mode != "whole" && s.Mode != "slice" {
		fs = append(fs, Fault{path + ".mode", s.Mode, "whole or slice"})
	}
	if len(s.Rows) == 0 {
		fs = append(fs, Fault{path + ".rows", "nothing", "at least one row"})
	}
	for i, r := range s.Rows {
		at := fmt.Sprintf("%s.rows[%d]", path, i)
		if r.From < 0 || i > 0 && r.From <= s.Rows[i-1].From {
			fs = append(fs, Fault{at + ".from", c.Text(r.From), "0 or more, and above the row before"})
		}
		fs = append(fs, r.check(at, c)...)
	}
	return fs
}

func (r Row) check(at string, c money.Currency) []Fault {
	fs := fraction(at+".percent", r.Percent)
	if r.Flat < 0 {
		fs = append(fs, Fault{at + ".flat", c.Text(r.Flat), "no less than 0"})
	}
	if r.Minimum != nil && *r.Minimum < 0 {
		fs = append(fs, Fault{at + ".minimum", c.Text(*r.Minimum), "no less than 0"})
	}
	if r.Maximum != nil && (*r.Maximum < 0 || r.Minimum != nil && *r.Maximum < *r.Minimum) {
		fs = append(fs, Fault{at + ".maximum", c.Text(*r.Maximum), "no less than 0 and than the row's minimum"})
	}
	return fs
}

func fraction(path string, d decimal.Decimal) []Fault {
	if d.IsNegative() || d.GreaterThan(decimal.New(1, 0)) {
		return []Fault{{path, d.String(), "a fraction from 0 to 1 (15 % is 0.15)"}}
	}
	return nil
}

// CheckSteps returns every fault of the bid steps; none means that bids can be looked for.
func CheckSteps(steps []Step, c money.Currency) []Fault {
	if len(steps) == 0 {
		return []Fault{{"bid_steps", "nothing", "at least one step, from 0"}}
	}
	var fs []Fault
	for i, s := range steps {
		at := fmt.Sprintf("bid_steps[%d]", i)
		if i == 0 && s.From != 0 {
			fs = append(fs, Fault{at + ".from", c.Text(s.From), "0 for the first step"})
		}
		if i > 0 && s.From <= steps[i-1].From {
			fs = append(fs, Fault{at + ".from", c.Text(s.From), "above the step before"})
		}
		if s.Step <= 0 {
			fs = append(fs, Fault{at + ".step", c.Text(s.Step), "more than 0"})
		}
	}
	return fs
}
