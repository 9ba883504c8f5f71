package hedonic

import (
	"math"

	"walkline/valuation/prob"
)

// features returns the design row of t, and the groups of which t has a level that the table doesn't know: each adds its
// own spread once.
func (d *design) features(t Traits) (row []prob.Entry, unknown []int) {
	f := d.roomFor(1)
	d.put(&f, t.read(d.names, nil))
	return f.row, f.unknown
}

// features are rows under construction, one after the other.
type features struct {
	row     []prob.Entry
	unknown []int
}

// roomFor returns room for n rows.
func (d *design) roomFor(n int) features {
	return features{row: make([]prob.Entry, 0, n*(usualEffects+len(d.steps)+len(d.columns)))}
}

// usualEffects is about how many effects a row has beside drift and extra columns.
const usualEffects = 9

func (f *features) put(term int, x float64) {
	if term >= 0 && x != 0 {
		f.row = append(f.row, prob.Entry{Term: term, X: x})
	}
}

// all returns the design rows of sales, and the groups of which each has a level that the table doesn't know.
func (d *design) all(sales []Sale) (rows [][]prob.Entry, unknown [][]int) {
	f := d.roomFor(len(sales))
	rows, unknown = make([][]prob.Entry, len(sales)), make([][]int, len(sales))
	for i := range sales {
		at, of := len(f.row), len(f.unknown)
		d.put(&f, sales[i].Traits)
		rows[i], unknown[i] = f.row[at:len(f.row):len(f.row)], f.unknown[of:len(f.unknown):len(f.unknown)]
	}
	return rows, unknown
}

// put adds what t, its cells read, has of each effect.
func (d *design) put(f *features, t Traits) {
	f.put(0, 1)
	age, miles := t.Age-d.centre.Age, d.milesFrom(t)
	f.put(d.age, age)
	f.put(d.bend, ((t.Age-bendAt)*(t.Age-bendAt)-(d.centre.Age-bendAt)*(d.centre.Age-bendAt))/100)
	f.put(d.mileage, miles)
	if t.Asked {
		f.put(d.asked, 1)
	}
	if t.Brand != "" {
		f.put(d.brand, 1)
		if at, ok := d.brands[t.Brand]; ok {
			f.put(at, 1)
		}
	}
	if t.CondKnown {
		f.put(d.cond, t.Condition-d.centre.Condition)
	}
	for _, s := range d.steps {
		if t.Back > s.from {
			f.put(s.term, (min(t.Back, s.to)-s.from)/math.Sqrt(s.to-s.from))
		}
	}
	if at, ok := d.slopes[t.Model]; ok {
		f.put(at[0], age)
		f.put(at[1], miles)
	}
	d.putLevels(f, t)
	for i := range d.columns {
		d.columns[i].put(f, t)
	}
}

// putLevels adds the effects of t's model, year and trim.
func (d *design) putLevels(f *features, t Traits) {
	if d.models.terms != nil {
		f.putLevel(d.models, t.Model)
	}
	if d.years != nil {
		at, off := d.nearestYear(t.Year)
		f.put(at, 1)
		for range min(off, mostYears) {
			f.unknown = append(f.unknown, d.yearly)
		}
	}
	if d.trims.terms != nil && t.Trim != "" {
		f.putLevel(d.trims, d.trimOf(t))
	}
}

func (f *features) putLevel(l levelled, name string) {
	if at, ok := l.terms[name]; ok {
		f.put(at, 1)
		return
	}
	f.unknown = append(f.unknown, l.group)
}

func (c *column) put(f *features, t Traits) {
	own := t.cells[c.at]
	if c.words {
		f.putLevel(levelled{c.levels, c.group}, own.word)
		return
	}
	x := c.mean
	if own.counts {
		x = own.number
	}
	f.put(c.term, math.Min(c.reach, math.Max(-c.reach, (x-c.centre)/c.scale)))
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
