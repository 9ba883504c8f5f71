package view

import (
	"fmt"
	"math"
	"strings"

	"walkline/ui/desk"
	"walkline/valuation/money"
)

// Words returns a code of the case file as words: "not_actual" reads "not actual".
func Words(code string) string { return strings.ReplaceAll(code, "_", " ") }

// AllWords returns each code as words.
func AllWords(codes []string) []string {
	out := make([]string, len(codes))
	for i, c := range codes {
		out[i] = Words(c)
	}
	return out
}

// Percent returns a chance as "12 %", below a tenth as "4.5 %".
func Percent(x float64) string {
	switch {
	case math.IsNaN(x):
		return ""
	case math.Abs(x) < 0.0995:
		return fmt.Sprintf("%.1f %%", 100*x)
	}
	return fmt.Sprintf("%.0f %%", 100*x)
}

// Purse writes money of one currency.
type Purse struct{ money.Currency }

// NewPurse returns the purse of a code; an unknown code writes plain numbers with two decimals.
func NewPurse(code string) Purse {
	c, ok := money.Lookup(code)
	if !ok {
		c = money.Currency{Code: code, Digits: 2}
	}
	return Purse{c}
}

// Exact returns an exact amount grouped, without its currency.
func (p Purse) Exact(a money.Amount) string { return p.Group(a) }

// Range returns two figures as "9,500 to 13,100".
func (p Purse) Range(lo, hi float64) string { return p.Whole(lo) + " to " + p.Whole(hi) }

// Count returns "1 row", "2 rows".
func Count(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return desk.Grouped(n) + " " + noun + "s"
}

// Vehicle returns year, make, model and trim as one line, "(vehicle not entered)" when there is none.
func Vehicle(year int, parts ...string) string {
	words := []string{}
	if year != 0 {
		words = append(words, fmt.Sprint(year))
	}
	for _, p := range parts {
		if p = strings.TrimSpace(p); p != "" {
			words = append(words, p)
		}
	}
	if len(words) == 0 {
		return "(vehicle not entered)"
	}
	return strings.Join(words, " ")
}
