package listing

import (
	"cmp"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"walkline/store/cell"
	"walkline/valuation"
	"walkline/valuation/lot"
)

// doors is how the number of doors is written: 4DR, 4-door, 2 doors.
var doors = regexp.MustCompile(`(?i)^([2-5])[- ]?(dr|drs|door|doors)$`)

func findDoors(r *reading, w *words) {
	w.take(2, func(s string) bool {
		m := doors.FindStringSubmatch(s)
		if m == nil {
			return false
		}
		r.Doors, _ = strconv.Atoi(m[1])
		r.fact("Doors", m[1])
		return true
	})
}

// valued is how a text names what the whole vehicle was worth before it was hurt. Common practice, no source.
var valued = regexp.MustCompile(`(?i)^(?:(?:estimated |est |the )?(?:retail |market )?value(?: before(?: loss| damage)?)?|valued|worth)` +
	`(?: of| at| is|:)? (.*\d.*)$`)

// findValue takes a piece that says nothing else than what the vehicle was worth: beside other words it may be the worth of its tires.
func findValue(r *reading, w *words) {
	m := valued.FindStringSubmatch(strings.Join(w.telling(), " "))
	if m != nil && r.worth(m[1]) {
		*w = nil
	}
}

// worth takes the value before the damage, and reports whether a text is one.
func (r *reading) worth(text string) bool {
	p, err := cell.ReadMoney(text, 0)
	if x := p.Float(); err != nil || x <= 0 {
		return false
	}
	r.Lot.Listed, r.sign = &lot.Listed{ValueBefore: new(p.Float())}, p.Sign
	r.fact(valueField, text)
	return true
}

// The fields of facts that only a case can judge.
const (
	valueField = "Value before"
	dayField   = "Sale day"
)

// has reports whether a fact of a field was understood.
func (f *Found) has(field string) bool {
	return slices.ContainsFunc(f.Facts, func(x Fact) bool { return x.Field == field })
}

// unfact takes the facts of a field back that the case does not bear, and says why.
func (f *Found) unfact(field, why string) {
	f.Facts = slices.DeleteFunc(f.Facts, func(x Fact) bool {
		if x.Field == field {
			f.Left = append(f.Left, strings.ToLower(field)+" "+x.Words+why)
		}
		return x.Field == field
	})
}

// price gives the value before the damage its currency: that of the case where the sign may stand for it. Beside figures of another
// currency that the lot has already it is left, since one list has one currency.
func (f *Found) price(c valuation.Case) {
	l, have := f.Lot.Listed, c.Lot.Listed
	codes := cell.Currencies(f.sign)
	switch {
	case l == nil:
	case have != nil && have.ValueBefore != nil && *have.ValueBefore != *l.ValueBefore:
		f.Lot.Listed = nil
		f.unfact(valueField, " (the lot has another already)")
	case f.sign == "" || cell.Stands(f.sign, c.Currency):
		l.Currency = c.Currency
	case len(codes) == 1:
		l.Currency = codes[0]
	default:
		f.Lot.Listed = nil
		f.unfact(valueField, " (of which currency?)")
	}
	if l = f.Lot.Listed; l == nil || have == nil || have.ValueBefore == nil && have.RepairEstimate == nil {
		return
	}
	if there := cmp.Or(have.Currency, c.Currency); there != l.Currency {
		f.Lot.Listed = nil
		f.unfact(valueField, " (the lot's figures of the list are in "+there+")")
		return
	}
	l.Currency = have.Currency
}

// saleDay is how a text names the day of the sale.
var saleDay = regexp.MustCompile(`(?i)^(?:sale|sells|auction)(?: day| date)?(?: on| is|:)? (.*\d.*)$`)

func findSaleDay(r *reading, w *words) {
	w.take(7, func(s string) bool {
		m := saleDay.FindStringSubmatch(s)
		return m != nil && r.sells(m[1])
	})
}

// sells takes the day of the sale, and reports whether a text is one. Of "12/01/2026" only a case can say which number is the month;
// a second text leaves the days that both can mean.
func (r *reading) sells(text string) bool {
	days := readings(text)
	if len(days) == 0 {
		return false
	}
	words := text
	if len(days) == 1 {
		words = string(days[0])
	}
	if r.has(dayField) {
		days = slices.DeleteFunc(days, func(d lot.Date) bool { return !slices.Contains(r.days, d) })
	}
	r.fact(dayField, words)
	if r.days, r.Lot.SaleDate = days, ""; len(days) == 1 {
		r.Lot.SaleDate = days[0]
	}
	return true
}

// readings returns the days that a text can mean: none, one, or two where either number may be the month.
func readings(text string) (days []lot.Date) {
	for _, order := range []cell.Order{cell.MonthFirst, cell.DayFirst} {
		if day, err := cell.ReadDay(text, order, ""); err == nil && !slices.Contains(days, day) {
			days = append(days, day)
		}
	}
	return days
}

// day chooses between two readings of the sale's day: a lot that is listed is not sold yet, so one that is over on the day of the valuation
// is not meant. Where both may be, or two texts name two days, none is taken.
func (f *Found) day(c valuation.Case) {
	ahead := slices.DeleteFunc(slices.Clone(f.days), func(d lot.Date) bool { return c.ValuedOn == "" || d < c.ValuedOn })
	switch at := slices.IndexFunc(f.Facts, func(x Fact) bool { return x.Field == dayField }); {
	case at < 0 || len(f.days) == 1:
	case len(f.days) == 0:
		f.unfact(dayField, " (two days are said: enter the day)")
	case len(ahead) == 1:
		f.Lot.SaleDate = ahead[0]
		f.Facts[at].Words = string(ahead[0]) + " (the other reading of " + f.Facts[at].Words + " is over)"
	default:
		f.unfact(dayField, " (which number is the month? Enter the day)")
	}
}
