package table

import (
	"slices"
	"strings"

	"walkline/store/cell"
	"walkline/store/grid"
)

// sampled is how many rows are looked at to tell a column by its cells.
const sampled = 60

// looks is what the cells of a column look like, in shares of those that are not empty.
type looks struct {
	n                                               int
	years, days, signs, units, vins, titles, yearIn float64
	numbers, digits, spaced                         float64
}

func look(body []grid.Row, column int) looks {
	var l looks
	for _, r := range body[:min(len(body), sampled)] {
		c := at(r.Cells, column)
		if cell.Nothing(c) {
			continue
		}
		l.n++
		l.take(c)
	}
	if n := float64(l.n); n > 0 {
		for _, share := range []*float64{&l.years, &l.days, &l.signs, &l.units, &l.vins, &l.titles, &l.yearIn, &l.numbers, &l.digits,
			&l.spaced} {
			*share /= n
		}
	}
	return l
}

func (l *looks) take(c string) {
	count := func(share *float64, is bool) {
		if is {
			*share++
		}
	}
	price, moneyErr := cell.ReadMoney(c, 0)
	length, lengthErr := cell.ReadLength(c, 0)
	_, dayErr := cell.ReadDay(c, "", "2000-01-01")
	_, number := cell.ReadNumber(c, 0)
	_, title := cell.Title(c)
	year := len(c) == 4 && number == nil && c >= "1900" && c <= "2099"
	count(&l.years, year)
	count(&l.numbers, number == nil)
	count(&l.days, dayErr == nil && number != nil)
	count(&l.signs, moneyErr == nil && price.Sign != "")
	count(&l.units, lengthErr == nil && (length.Unit != "" || length.Status != ""))
	count(&l.vins, len(c) == 17 && !strings.Contains(c, " ") && strings.ContainsAny(c, "0123456789"))
	count(&l.titles, title)
	count(&l.yearIn, len(c) > 6 && strings.Contains(c, " ") && dayErr != nil && cell.Vehicle(c, "", "").Year > 0)
	count(&l.digits, strings.ContainsAny(c, "0123456789"))
	count(&l.spaced, strings.Contains(c, " "))
}

// most is the share of cells from which on a column is what they look like.
const most = 0.7

// guess tells columns that no heading names by their cells, where these leave no other reading, and what no heading names at all by its
// place: make, model and trim after the year. It also tells a column of advertisements from one of titles.
func (k *Kind[T]) guess(columns []Became, body []grid.Row, headless bool) {
	has := map[string]bool{}
	for _, c := range columns {
		has[c.Field] = true
	}
	take := func(i int, form Form, why string) {
		if (form == Money || form == Day) && k.count(form) > 1 {
			return // that it is one does not say which
		}
		for _, c := range k.Columns {
			if c.Form == form && !has[c.Name] && (form != Text || c.Name == "vin") {
				columns[i].Field, columns[i].Why = c.Name, why
				has[c.Name] = true
				return
			}
		}
	}
	for i := range columns {
		if k.wordsOnly(columns[i], body, i) {
			has[columns[i].Field] = false
			columns[i].Field, columns[i].Why = k.left(), "its cells are words and no "+strings.ReplaceAll(columns[i].Field, "_", " ")
		}
		if k.byLooks(i, columns, body, has, take) {
			continue
		}
		open := columns[i].Field == Other || columns[i].Field == Ignored && columns[i].Why != "it says why the row was refused before"
		isTitle := false
		if f := k.at(columns[i].Field); f >= 0 {
			isTitle = k.Columns[f].Form == Title
		}
		if !open && !isTitle {
			continue
		}
		switch l := look(body, i); {
		case l.n == 0:
		case isTitle:
			k.noTitle(&columns[i], l, has, func() { take(i, Vehicle, "its cells name vehicles") })
		case l.vins >= most:
			take(i, Text, "its cells are VINs")
		case k.byCells(i, columns, body, has):
		case l.signs >= most && k.priced(columns, body) == 1:
			take(i, Money, "its cells carry a sign of money")
		case l.units >= most:
			take(i, Odometer, "its cells carry a unit of length")
		case l.yearIn >= most && k.Split != nil && !has["model"] && !has["make"]:
			take(i, Vehicle, "its cells name vehicles")
		case !headless:
		case l.years >= most:
			take(i, Year, "its cells are years")
		case l.days >= most:
			take(i, Day, "its cells are days")
		case l.titles >= most:
			take(i, Title, "its cells are words of titles")
		}
	}
	if headless {
		k.byPlace(columns, body, has)
	}
}

// noTitle takes a column that its heading names as one of titles for the make or the vehicles that its cells name instead.
func (k *Kind[T]) noTitle(c *Became, l looks, has map[string]bool, vehicle func()) {
	if make := k.at("make"); l.titles == 0 && l.yearIn == 0 && l.digits == 0 && make >= 0 && !has["make"] &&
		slices.Contains(cell.Words(c.Heading), "brand") {
		c.Field, c.Why, has["make"] = "make", "its cells are no words of titles", true
	} else if l.titles < 0.3 && l.yearIn > 0.5 && k.Split != nil && !has["vehicle"] {
		has[c.Field] = false
		vehicle()
	}
}

// wordsOnly reports whether a column that its heading names in part as days or numbers holds nothing but words: "sold by".
func (k *Kind[T]) wordsOnly(c Became, body []grid.Row, column int) bool {
	f := k.at(c.Field)
	if f < 0 || c.Why != byHeading {
		return false
	}
	form := k.Columns[f].Form
	if _, score := k.best(c.Heading); score >= exact || !numeric(form) && form != Year && form != Day {
		return false
	}
	l := look(body, column)
	return l.n > 0 && l.digits == 0 && l.days == 0 && l.units == 0
}

// priced returns how many columns that no heading names carry a sign of money.
func (k *Kind[T]) priced(columns []Became, body []grid.Row) (n int) {
	for i, c := range columns {
		if c.Field == k.left() && look(body, i).signs >= most {
			n++
		}
	}
	return n
}

// count returns how many fields of a kind have a form.
func (k *Kind[T]) count(form Form) (n int) {
	for i := range k.Columns {
		if k.Columns[i].Form == form {
			n++
		}
	}
	return n
}

// byLooks takes a column of notes whose cells name vehicles, and one of a text whose cells are days, for what they are.
func (k *Kind[T]) byLooks(i int, columns []Became, body []grid.Row, has map[string]bool, take func(int, Form, string)) bool {
	f := k.at(columns[i].Field)
	if f < 0 || k.Columns[f].Form != Text && k.Columns[f].Form != Vehicle {
		return false
	}
	switch l := look(body, i); {
	case k.Columns[f].Form == Vehicle && l.days < most:
		return false
	case k.Columns[f].Form == Vehicle:
		columns[i].Field, columns[i].Why, has[columns[i].Field] = k.left(), "its cells are days and no vehicles", false
		take(i, Day, "its cells are days")
	case k.Columns[f].Many && k.Split != nil && !has["model"] && !has["make"] && !has["vehicle"] && l.yearIn >= most:
		take(i, Vehicle, "its cells name vehicles")
	case k.daysIn(f, has) && l.days >= most:
		has[columns[i].Field] = false
		take(i, Day, "its cells are days")
	default:
		return false
	}
	return true
}

// daysIn reports whether days in a column of a text would be those of the kind's one field of days, which no other column is: "Auction".
func (k *Kind[T]) daysIn(field int, has map[string]bool) bool {
	taken := slices.ContainsFunc(k.Columns, func(c Column[T]) bool { return c.Form == Day && has[c.Name] })
	return k.count(Day) == 1 && !taken && !k.Columns[field].Many
}

// byCells takes a column for the field that has words of its own for cells, where all of its cells are such words.
func (k *Kind[T]) byCells(i int, columns []Became, body []grid.Row, has map[string]bool) bool {
	for _, f := range k.Columns {
		if f.Cells == nil || has[f.Name] {
			continue
		}
		of := func(r grid.Row) bool { c := at(r.Cells, i); return cell.Nothing(c) || f.Cells.Has(c) }
		if !slices.ContainsFunc(body, func(r grid.Row) bool { return !of(r) }) {
			columns[i].Field, columns[i].Why, has[f.Name] = f.Name, "its cells are words of "+strings.ReplaceAll(f.Name, "_", " "), true
			return true
		}
	}
	return false
}

// byPlace takes texts beside each other for make, model and trim, and the one number that is left for the price.
func (k *Kind[T]) byPlace(columns []Became, body []grid.Row, has map[string]bool) {
	next := []string{"make", "model", "trim"}
	if has["vehicle"] || k.at("make") < 0 {
		next = nil
	}
	var numbers []int
	for i := range columns {
		if columns[i].Field != Other && columns[i].Field != Ignored {
			continue
		}
		l := look(body, i)
		switch {
		case l.numbers >= most && l.years < most:
			numbers = append(numbers, i)
		case l.n > 0 && l.digits < 0.5 && len(next) > 0:
			columns[i].Field, columns[i].Why = next[0], "no heading names it: texts in this order"
			next = next[1:]
		}
	}
	if len(numbers) == 1 && !has["price"] && k.at("price") >= 0 && (has["mileage"]) {
		columns[numbers[0]].Field, columns[numbers[0]].Why = "price", "no heading names it: the one number that is left"
	}
}
