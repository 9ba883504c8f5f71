package csvfile

import (
	"fmt"

	"walkline/valuation/money"
)

// way is one candidate for an option, tried on whole columns.
type way struct {
	name    string
	options Options
	read    []string // what each cell reads as; empty where it can't
	refused int
}

// proposeMarks finds how numbers are written.
func proposeMarks(t Table, m Match, o *Options) *Doubt {
	if o.Marks != (Marks{}) {
		return nil
	}
	var ways []way
	for _, marks := range KnownMarks {
		w := way{name: marks.String(), options: *o}
		w.options.Marks = marks
		ways = append(ways, w)
	}
	cells := columnCells(t, m, Price, Mileage, Distance, Condition)
	best, doubt := settled(ways, cells, "marks", "numbers")
	o.Marks = best.options.Marks
	return doubt
}

// proposeDates finds the order in which dates are written.
func proposeDates(t Table, m Match, o *Options) *Doubt {
	if o.Dates != "" {
		return nil
	}
	var ways []way
	for _, order := range []Order{YearFirst, DayFirst, MonthFirst} {
		w := way{name: fmt.Sprintf("%s (%s)", order, examples[order]), options: *o}
		w.options.Dates = order
		ways = append(ways, w)
	}
	best, doubt := settled(ways, columnCells(t, m, Date), "dates", "dates")
	o.Dates = best.options.Dates
	return doubt
}

// cell is one cell that is not empty and what its column means.
type cell struct {
	field Field
	text  string
}

// columnCells returns every cell of the columns with those meanings.
func columnCells(t Table, m Match, fields ...Field) []cell {
	var cells []cell
	for _, field := range fields {
		at := m.at(field)
		for _, r := range t.Records {
			if at >= 0 && r.Fault == "" && r.Cells[at] != "" {
				cells = append(cells, cell{field, r.Cells[at]})
			}
		}
	}
	return cells
}

// settled returns the way that reads the most cells, the earlier of equals, and a doubt when another reads as many
// differently or reads cells that this one can't. A cell that no way reads settles nothing.
func settled(ways []way, cells []cell, option, what string) (way, *Doubt) {
	best := 0
	for i := range ways {
		ways[i].try(cells)
		if ways[i].refused < ways[best].refused {
			best = i
		}
	}
	b := ways[best]
	for i, other := range ways {
		if at := differing(b.read, other.read); i != best && at >= 0 && other.refused <= b.refused {
			text := fmt.Sprintf("How are the %s written? %q reads as %s or as %s.", what, cells[at].text, shown(b.read[at]), shown(other.read[at]))
			return b, &Doubt{option, text, []string{b.name, other.name}}
		}
	}
	for _, other := range ways {
		for at := range cells {
			if b.read[at] == "" && other.read[at] != "" {
				text := fmt.Sprintf("No one way of writing %s fits the file: most are written like %s, but %q only reads like %s.", what, b.name, cells[at].text, other.name)
				return b, &Doubt{option, text, []string{b.name, other.name}}
			}
		}
	}
	return b, nil
}

// try reads every cell in this way, as far as its notation and its field's bounds go.
func (w *way) try(cells []cell) {
	w.read = make([]string, len(cells))
	for i, c := range cells {
		plain, err := w.options.Plain(c.field, c.text)
		if err == nil {
			err = w.options.bounds(c.field, plain)
		}
		if err != nil {
			w.refused++
			continue
		}
		w.read[i] = plain
	}
}

// bounds returns why a plain value can't be one of its field.
func (o Options) bounds(field Field, plain string) error {
	switch field {
	case Price:
		if currency, ok := money.Lookup(o.Currency); ok {
			_, err := currency.Parse(plain)
			return err
		}
	case Mileage, Distance:
		return new(length).UnmarshalCSV(plain)
	case Condition:
		return new(grade).UnmarshalCSV(plain)
	}
	return nil
}

// differing returns the first place where two readings of the same cells differ, -1 for none.
func differing(a, b []string) int {
	for i := range a {
		if a[i] != b[i] {
			return i
		}
	}
	return -1
}

// shown returns a reading for a sentence.
func shown(read string) string {
	if read == "" {
		return "nothing"
	}
	return read
}
