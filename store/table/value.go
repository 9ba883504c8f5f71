package table

import (
	"fmt"
	"strconv"
	"strings"

	"walkline/store/cell"
	"walkline/store/grid"
	"walkline/valuation/lot"
)

// read reads a cell as its column is written.
func (p *plan[T]) read(form Form, column int, text string, r *grid.Row) (err error) {
	v, decimal := &p.value, p.notation[column].decimal
	typed := r.Number(column)
	if typed {
		decimal = '.'
	}
	switch form {
	case Money:
		var price cell.Price
		if price, err = cell.ReadMoney(text, decimal); err == nil {
			price.Number, err = p.counted(price.Number, column, text)
			if p.stated.Currency == "" && price.Sign != "" && !cell.Stands(price.Sign, p.money.Code) {
				return fmt.Errorf("%q: the currency of the prices is asked first", price.Sign)
			}
		}
		if err == nil {
			if err = p.lone(price.Number, decimal, typed); err == nil {
				v.Number = price.Float()
				v.Amount, err = price.Amount(p.money)
			}
		}
	case Odometer, Distance:
		if v.Length, err = cell.ReadLength(text, decimal); err == nil && v.Length.Known {
			v.Length.Number, err = p.counted(v.Length.Number, column, text)
		}
		if err == nil && form == Odometer {
			err = p.lone(v.Length.Number, decimal, typed)
		}
		if v.Unit = v.Length.Unit; v.Unit == "" {
			v.Unit = p.notation[column].unit
		}
	case Number:
		var n cell.Number
		n, err = cell.ReadNumber(text, decimal)
		v.Number = n.Float()
	case Day:
		v.Day, err = cell.ReadDay(text, p.notation[column].order, p.stated.On)
	case Year:
		v.Year, err = p.year(text)
	case Title:
		v.Text, err = p.title(text)
	case Currency:
		if p.stated.Currency != "" && !cell.Stands(text, p.stated.Currency) {
			err = fmt.Errorf("not %s, the currency of this table", p.stated.Currency)
		}
	case Unit:
		if v.Unit = cell.UnitOf(text); v.Unit == "" {
			err = fmt.Errorf("neither mi nor km")
		}
	}
	return err
}

// counted returns the number of a cell whose heading says that its numbers are thousands, unless the cell says so itself.
func (p *plan[T]) counted(n cell.Number, column int, text string) (cell.Number, error) {
	if !p.notation[column].thousand || cell.SaysThousand(strings.TrimLeft(text, "0123456789., $€£'")) {
		return n, nil
	}
	if n.Float() >= 1000 {
		return n, fmt.Errorf("the heading says thousands")
	}
	n = n.TimesThousand()
	n.Lone = 0
	return n, nil
}

// lone refuses a group of three digits behind the mark that stands before decimals: it is a thousand anywhere else.
func (p *plan[T]) lone(n cell.Number, decimal byte, typed bool) error {
	if !typed && n.Lone != 0 && n.Lone == decimal && p.money.Digits < 3 {
		return fmt.Errorf("not written like %s, as the table is", cell.Example(decimal))
	}
	return nil
}

// year reads a model year: four digits, two with or without an apostrophe, or a day or month of which it is the year.
func (p *plan[T]) year(text string) (int, error) {
	if n := max(cell.ShortYear(text), cell.TwoDigits(text)); n > 0 {
		return n, nil
	}
	n, err := strconv.Atoi(strings.TrimSuffix(text, ".0"))
	if err != nil {
		day, derr := cell.ReadDay(text, p.stated.Dates, "")
		if derr != nil || strings.Trim(text, "0123456789./- T:") != "" && !strings.ContainsAny(text, "0123456789") {
			return 0, errYear
		}
		n = day.Year()
	}
	if n < lot.FirstModelYear || n > lot.LastModelYear || len(text) < 4 {
		return 0, errYear
	}
	return n, nil
}

var errYear = fmt.Errorf("a model year is four digits, like 2019")

// title returns what a title says; a word met before is not read again.
func (p *plan[T]) title(text string) (string, error) {
	t, met := p.titles[text]
	if !met {
		t.means, t.known = titleOf(text, p.stated)
		p.titles[strings.Clone(text)] = t
	}
	if !t.known {
		return "", fmt.Errorf("a title word that is not known: say what it means")
	}
	return t.means, nil
}

// Reading returns the reading of an odometer. Errors: it is no whole number, or more than any vehicle has.
func (v Value) Reading() (int, error) {
	x := v.Length.Float()
	if whole := int(x); x == float64(whole) && whole <= lot.MostMileage {
		return whole, nil
	}
	return 0, fmt.Errorf("an odometer is a whole number from 0 to %d", lot.MostMileage)
}
