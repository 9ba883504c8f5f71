package csvfile

import (
	"fmt"
	"slices"
	"strings"

	"walkline/valuation/money"
)

// Options is how one file is written. Every one is stated for the whole import.
type Options struct {
	Marks        Marks  `json:"marks"`
	Dates        Order  `json:"dates"`
	Unit         string `json:"unit"`          // mi | km, of mileages that don't say
	DistanceUnit string `json:"distance_unit"` // mi | km
	Currency     string `json:"currency"`      // ISO 4217 code
	Kind         string `json:"kind"`          // asked | sold, of prices that don't say
	Source       string `json:"source"`        // where the rows are from, when no column says
}

// Canonical returns the options of the files that [Write] writes and a case file names.
func Canonical(currency string) Options {
	return Options{Marks: Marks{Decimal: "."}, Dates: YearFirst, Unit: "mi", DistanceUnit: "mi", Currency: currency}
}

// check returns the currency, or what is not stated.
func (o Options) check() (money.Currency, error) {
	currency, ok := money.Lookup(o.Currency)
	switch {
	case !ok:
		return currency, fmt.Errorf("state the currency of the prices: %q is no ISO 4217 code", o.Currency)
	case o.Marks.Decimal != "." && o.Marks.Decimal != ",":
		return currency, fmt.Errorf("state the decimal mark: point or comma")
	case o.Marks.Thousands == o.Marks.Decimal || !slices.Contains([]string{"", ",", ".", " ", "'"}, o.Marks.Thousands):
		return currency, fmt.Errorf("state another mark for thousands than %q", o.Marks.Thousands)
	case layouts[o.Dates] == nil:
		return currency, fmt.Errorf("state the order of dates")
	case !slices.Contains([]string{"", "mi", "km"}, o.Unit), !slices.Contains([]string{"", "mi", "km"}, o.DistanceUnit):
		return currency, fmt.Errorf("state mileage and distance in mi or km")
	case !slices.Contains([]string{"", "asked", "sold"}, o.Kind):
		return currency, fmt.Errorf("state whether the prices are asked or sold")
	}
	return currency, nil
}

// Plain returns a cell that is not empty in plain notation. Errors: it is not written as o says.
func (o Options) Plain(field Field, cell string) (string, error) {
	switch field {
	case Price:
		return o.plainPrice(cell)
	case Mileage, Distance:
		bare, _ := WithoutUnit(cell)
		return o.Marks.plain(bare)
	case Condition:
		return o.Marks.plain(cell)
	case Date:
		day, err := o.Dates.day(cell)
		return string(day), err
	}
	return cell, nil
}

// plainPrice returns a price in plain notation. Errors: more decimals are written than the currency has.
func (o Options) plainPrice(cell string) (string, error) {
	bare, err := withoutCurrency(cell, o.Currency)
	if err != nil {
		return "", err
	}
	plain, err := o.Marks.plain(bare)
	_, fraction, _ := strings.Cut(plain, ".")
	if currency, ok := money.Lookup(o.Currency); ok && len(fraction) > int(currency.Digits) {
		return "", fmt.Errorf("more decimals than the %d of %s", currency.Digits, currency.Code)
	}
	return plain, err
}

// Doubt is one option that the file alone can't settle. The proposal is usable, but the user must be asked.
type Doubt struct {
	Option string   // marks, dates, unit, distance_unit, currency, kind
	Text   string   // the question, with a cell that shows why
	Ways   []string // the answers to choose from
}

// ProposeOptions returns the options that whole columns of a table suggest, and what remains in doubt. What given
// states is kept.
func ProposeOptions(t Table, m Match, given Options) (Options, []Doubt) {
	o := given
	var doubts []Doubt
	for _, propose := range []func(Table, Match, *Options) *Doubt{proposeCurrency, proposeUnit, proposeDistanceUnit, proposeKind, proposeMarks, proposeDates} {
		if d := propose(t, m, &o); d != nil {
			doubts = append(doubts, *d)
		}
	}
	return o, doubts
}

func proposeCurrency(_ Table, m Match, o *Options) *Doubt {
	if at := m.at(Price); o.Currency == "" && at >= 0 {
		for _, word := range strings.FieldsFunc(m[at].Name, func(r rune) bool { return r < 'A' || r > 'Z' }) {
			if _, ok := money.Lookup(word); ok {
				o.Currency = word
				return nil
			}
		}
	}
	if o.Currency == "" {
		return &Doubt{Option: "currency", Text: "In which currency are the prices?"}
	}
	return nil
}

var bothUnits = []string{"mi", "km"}

func proposeUnit(_ Table, m Match, o *Options) *Doubt {
	if o.Unit != "" {
		return nil
	}
	o.Unit = "mi"
	if m.Has(Unit) {
		return nil
	}
	return lengthUnit(m, Mileage, "unit", &o.Unit)
}

func proposeDistanceUnit(_ Table, m Match, o *Options) *Doubt {
	if o.DistanceUnit != "" {
		return nil
	}
	o.DistanceUnit = "mi"
	return lengthUnit(m, Distance, "distance_unit", &o.DistanceUnit)
}

// lengthUnit takes the unit that the name of a column states; without one it asks.
func lengthUnit(m Match, field Field, option string, into *string) *Doubt {
	at := m.at(field)
	if at < 0 {
		return nil
	}
	if named := unitIn(m[at].Name); named != "" {
		*into = named
		return nil
	}
	return &Doubt{option, fmt.Sprintf("Is %q in miles or kilometres?", m[at].Name), bothUnits}
}

func proposeKind(_ Table, m Match, o *Options) *Doubt {
	at := m.at(Price)
	if o.Kind != "" || m.Has(Kind) || at < 0 {
		return nil
	}
	o.Kind = "asked"
	words := strings.Fields(PlainName(m[at].Name))
	switch {
	case slices.Contains(words, "sold"):
		o.Kind = "sold"
	case !slices.ContainsFunc(words, func(word string) bool { return kinds[word] == "asked" }):
		return &Doubt{"kind", fmt.Sprintf("Are the prices in %q asked or sold?", m[at].Name), []string{"asked", "sold"}}
	}
	return nil
}
