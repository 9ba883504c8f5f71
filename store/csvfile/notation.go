package csvfile

import (
	"fmt"
	"slices"
	"strings"
	"time"
	"unicode"

	"walkline/valuation/lot"
)

// Marks is how numbers are written.
type Marks struct {
	Decimal   string `json:"decimal"`   // "." or ","
	Thousands string `json:"thousands"` // ",", ".", " ", "'" or empty for none
}

// String returns the marks as an example.
func (m Marks) String() string { return "1" + m.Thousands + "234" + m.Decimal + "50" }

// KnownMarks are the ways to write numbers that are told apart, the first preferred where a file fits several.
var KnownMarks = []Marks{{".", ","}, {",", "."}, {".", " "}, {",", " "}, {".", "'"}, {",", "'"}}

// spaces makes every kind of space and apostrophe that parts thousands the plain one.
var spaces = strings.NewReplacer("\u00a0", " ", "\u202f", " ", "\u2009", " ", "’", "'", "−", "-")

// plain returns a number written with these marks as a plain decimal number ("1234.50"). One apostrophe before it, the
// spreadsheets' mark for text, is left out: it stays where a refused "-5" is set right to "5".
// Errors: it is not written so: a mark is foreign, or thousands are not parted in threes.
func (m Marks) plain(cell string) (string, error) {
	unsigned, negative := strings.CutPrefix(strings.TrimPrefix(spaces.Replace(cell), "'"), "-")
	whole, fraction, parted := strings.Cut(unsigned, m.Decimal)
	groups := []string{whole}
	if m.Thousands != "" {
		groups = strings.Split(whole, m.Thousands)
	}
	good := !parted || digits(fraction)
	for i, group := range groups {
		inThrees := len(group) == 3 || i == 0 && len(group) < 3 || len(groups) == 1
		good = good && digits(group) && inThrees
	}
	if !good {
		return "", fmt.Errorf("not a number written like %s", m)
	}
	text := strings.Join(groups, "")
	if parted {
		text += "." + fraction
	}
	if negative {
		text = "-" + text
	}
	return text, nil
}

func isDigit(r rune) bool { return '0' <= r && r <= '9' }

func digits(s string) bool {
	return s != "" && strings.TrimFunc(s, isDigit) == ""
}

// signs are the signs that stand for a currency beside its code. Common practice, from memory.
var signs = map[string][]string{
	"USD": {"$", "us$"}, "CAD": {"$", "ca$", "c$"}, "AUD": {"$", "au$", "a$"}, "NZD": {"$", "nz$"}, "MXN": {"$", "mx$"},
	"EUR": {"€"}, "GBP": {"£"}, "JPY": {"¥"}, "CNY": {"¥"}, "CHF": {"fr", "fr."}, "INR": {"₹"}, "KRW": {"₩"}, "PLN": {"zł"},
	"SEK": {"kr", "kr."}, "NOK": {"kr", "kr."}, "DKK": {"kr", "kr."}, "BRL": {"r$"}, "ZAR": {"r"}, "TRY": {"₺"}, "UAH": {"₴"}, "CZK": {"kč"},
}

// withoutCurrency returns a price without the sign or code of its currency. Errors: the sign is another currency's.
func withoutCurrency(cell, code string) (string, error) {
	letter := func(r rune) bool { return unicode.IsLetter(r) || unicode.Is(unicode.Sc, r) }
	rest := strings.TrimSpace(spaces.Replace(cell))
	start := strings.IndexFunc(rest, func(r rune) bool { return isDigit(r) || r == '-' })
	end := strings.LastIndexFunc(rest, isDigit)
	if start < 0 || end < 0 || !strings.ContainsFunc(rest[:start]+rest[end+1:], letter) {
		return rest, nil
	}
	for _, sign := range []string{rest[:start], rest[end+1:]} {
		sign = strings.ToLower(strings.TrimSpace(sign))
		if sign != "" && sign != strings.ToLower(code) && !slices.Contains(signs[code], sign) {
			return "", fmt.Errorf("%q does not stand for %s, the currency of this import", sign, code)
		}
	}
	return rest[start : end+1], nil
}

// WithoutUnit returns a mileage without the unit that it may end in, and that unit.
func WithoutUnit(cell string) (rest, unit string) {
	rest = strings.TrimSpace(spaces.Replace(cell))
	end := strings.LastIndexFunc(rest, isDigit)
	if unit = units[strings.ToLower(strings.Trim(rest[end+1:], " ."))]; unit != "" {
		return rest[:end+1], unit
	}
	return rest, ""
}

// Order is how dates are written.
type Order string

// The orders of a date.
const (
	YearFirst  Order = "year first"  // 2026-03-04
	DayFirst   Order = "day first"   // 4/3/2026, 4.3.2026, 4 Mar 2026
	MonthFirst Order = "month first" // 3/4/2026, Mar 4, 2026
)

// layouts are the ways to write a date in each order, as time.Parse takes them.
var layouts = map[Order][]string{
	YearFirst:  {"2006-1-2", "2006/1/2", "2006.1.2"},
	DayFirst:   {"2/1/2006", "2.1.2006", "2-1-2006", "2 Jan 2006", "2 January 2006", "2-Jan-2006"},
	MonthFirst: {"1/2/2006", "1.2.2006", "1-2-2006", "Jan 2, 2006", "January 2, 2006", "Jan 2 2006", "January 2 2006"},
}

// examples show each order in a sentence.
var examples = map[Order]string{YearFirst: "2026-03-04", DayFirst: "4/3/2026", MonthFirst: "3/4/2026"}

// The years that a date may lie in: the first motor car, and a bound that catches slips.
const firstYear, lastYear = 1886, 2200

// day returns a date written in this order; a time of day after it is dropped.
// Errors: it is not written so, no such day exists, or its year is out of bounds.
func (o Order) day(cell string) (lot.Date, error) {
	text := spaces.Replace(cell)
	if at := strings.IndexAny(text, " T"); at > 0 && strings.Contains(text[at:], ":") {
		text = text[:dateEnd(text)]
	}
	for _, layout := range layouts[o] {
		t, err := time.Parse(layout, text)
		if err == nil && t.Year() >= firstYear && t.Year() <= lastYear {
			return lot.Date(t.Format(time.DateOnly)), nil
		}
	}
	return "", fmt.Errorf("no day of the calendar, read %s as in %s", o, examples[o])
}

// dateEnd returns where the date ends in a text with a time of day: before the last space or T ahead of the first colon.
func dateEnd(text string) int {
	return strings.LastIndexAny(text[:strings.Index(text, ":")], " T")
}
