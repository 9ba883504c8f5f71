package hedonic

import (
	"math"

	"walkline/valuation/prob"
)

// features returns the design row of t, and the groups of which t has a level that the table doesn't know: each adds its
// own spread once.
func (d *design) features(t Traits) (row []prob.Entry, unknown []int) {
	row = make([]prob.Entry, 0, 9+len(d.steps)+len(d.columns))
	put := func(term int, x float64) {
		if term >= 0 && x != 0 {
			row = append(row, prob.Entry{Term: term, X: x})
		}
	}
	put(0, 1)
	age := t.Age - d.centre.Age
	put(d.age, age)
	put(d.bend, ((t.Age-bendAt)*(t.Age-bendAt)-(d.centre.Age-bendAt)*(d.centre.Age-bendAt))/100)
	miles := d.milesFrom(t)
	put(d.mileage, miles)
	if t.Asked {
		put(d.asked, 1)
	}
	if t.Brand != "" {
		put(d.brand, 1)
		if at, ok := d.brands[t.Brand]; ok {
			put(at, 1)
		}
	}
	if t.CondKnown {
		put(d.cond, t.Condition-d.centre.Condition)
	}
	for _, s := range d.steps {
		if t.Back > s.from {
			put(s.term, (min(t.Back, s.to)-s.from)/math.Sqrt(s.to-s.from))
		}
	}
	if d.models.terms != nil {
		unknown = d.putLevel(put, d.models, t.Model, unknown)
		if at, ok := d.slopes[t.Model]; ok {
			put(at[0], age)
			put(at[1], miles)
		}
	}
	if d.years != nil {
		at, off := d.nearestYear(t.Year)
		put(at, 1)
		for range min(off, mostYears) {
			unknown = append(unknown, d.yearly)
		}
	}
	if d.trims.terms != nil && t.Trim != "" {
		unknown = d.putLevel(put, d.trims, d.trimOf(t), unknown)
	}
	for i := range d.columns {
		unknown = d.columns[i].put(put, t, unknown)
	}
	return row, unknown
}

func (d *design) putLevel(put func(int, float64), l levelled, name string, unknown []int) []int {
	at, ok := l.terms[name]
	if !ok {
		return append(unknown, l.group)
	}
	put(at, 1)
	return unknown
}

func (c *column) put(put func(int, float64), t Traits, unknown []int) []int {
	v := Key(t.More[c.name])
	if c.words {
		at, ok := c.levels[v]
		if !ok {
			return append(unknown, c.group)
		}
		put(at, 1)
		return unknown
	}
	x, ok := Number(v)
	if !ok {
		x = c.mean
	}
	put(c.term, math.Min(c.reach, math.Max(-c.reach, (x-c.centre)/c.scale)))
	return unknown
}

// milesFrom returns how far t is from the subject in the units of the mileage's form. A row without a mileage takes what
// its age makes likely.
func (d *design) milesFrom(t Traits) float64 {
	if d.mileage < 0 {
		return 0
	}
	miles := t.Miles
	if !t.MilesKnown {
		miles = max(0, d.gap.at+d.gap.slope*t.Age)
	}
	return d.form.At(miles) - d.form.At(d.centre.Miles)
}
