package csvfile

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"github.com/shopspring/decimal"
)

// record is one comparable in plain notation, as gocsv maps it. The types of its fields refuse what they can't hold.
type record struct {
	ID        string `csv:"id"`
	Price     price  `csv:"price"`
	Kind      kind   `csv:"kind"`
	Date      string `csv:"date"`
	ModelYear year   `csv:"model_year"`
	Make      string `csv:"make"`
	Model     string `csv:"model"`
	Trim      string `csv:"trim"`
	Mileage   length `csv:"mileage"`
	Unit      unit   `csv:"mileage_unit"`
	Title     title  `csv:"title"`
	Distance  length `csv:"distance"`
	Condition grade  `csv:"condition"`
	Note      string `csv:"note"`
	Source    string `csv:"source"`
	Excluded  tick   `csv:"excluded"`
}

// price is a sum above zero, as a plain decimal number.
type price string

// UnmarshalCSV takes a plain decimal number. Errors: none, zero, negative or no number.
func (p *price) UnmarshalCSV(cell string) error {
	if cell == "" {
		return fmt.Errorf("a comparable needs a price")
	}
	d, err := decimal.NewFromString(cell)
	if err != nil || strings.ContainsAny(cell, "eE") {
		return fmt.Errorf("not a price")
	}
	if !d.IsPositive() {
		return fmt.Errorf("a price is above zero")
	}
	*p = price(cell)
	return nil
}

// kind is asked or sold; empty: the file does not say.
type kind string

var kinds = map[string]kind{
	"": "", "asked": "asked", "asking": "asked", "ask": "asked", "listed": "asked", "for sale": "asked", "active": "asked", "advertised": "asked",
	"sold": "sold", "sale": "sold", "closed": "sold",
}

// UnmarshalCSV takes a word for asked or sold.
func (k *kind) UnmarshalCSV(cell string) error {
	known, ok := kinds[strings.ToLower(cell)]
	if !ok {
		return fmt.Errorf("neither asked nor sold")
	}
	*k = known
	return nil
}

// year is a model year; 0: not known.
type year int

// UnmarshalCSV takes four digits.
func (y *year) UnmarshalCSV(cell string) error {
	if cell == "" {
		*y = 0
		return nil
	}
	n, err := strconv.Atoi(cell)
	if err != nil || !digits(cell) || n < firstYear || n > lastYear {
		return fmt.Errorf("a model year is four digits, like 2019")
	}
	*y = year(n)
	return nil
}

// MarshalCSV returns nothing for a year that is not known.
func (y year) MarshalCSV() (string, error) {
	if y == 0 {
		return "", nil
	}
	return strconv.Itoa(int(y)), nil
}

// number is a value that may be unknown.
type number struct {
	value float64
	known bool
}

// read takes a plain number from low to high, or nothing.
func (n *number) read(cell string, low, high float64, want string) error {
	*n = number{}
	if cell == "" {
		return nil
	}
	x, err := strconv.ParseFloat(cell, 64)
	if err != nil || math.IsNaN(x) || x < low || x > high {
		return fmt.Errorf("%s", want)
	}
	*n = number{x, true}
	return nil
}

// MarshalCSV returns the shortest number that reads back as the same.
func (n number) MarshalCSV() (string, error) {
	if !n.known {
		return "", nil
	}
	return strconv.FormatFloat(n.value, 'f', -1, 64), nil
}

// pointer returns the value, nil when it is not known.
func (n number) pointer() *float64 {
	if !n.known {
		return nil
	}
	return &n.value
}

// numberOf returns the number that p points to.
func numberOf(p *float64) number {
	if p == nil {
		return number{}
	}
	return number{*p, true}
}

// length is a mileage or a distance.
type length struct{ number }

// longest bounds a mileage or distance: no vehicle has gone further, so more is a slip. Starter value, ours.
const longest = 9_999_999

// UnmarshalCSV takes a plain number from 0 up.
func (l *length) UnmarshalCSV(cell string) error {
	return l.read(cell, 0, longest, "a mileage or distance is from 0 to 9999999")
}

// grade is a condition.
type grade struct{ number }

// UnmarshalCSV takes a plain number from 1 to 5.
func (g *grade) UnmarshalCSV(cell string) error {
	return g.read(cell, 1, 5, "a condition is a number from 1 (poor) to 5 (as new)")
}

// unit is mi or km; empty: the file does not say.
type unit string

// UnmarshalCSV takes a word for miles or kilometres.
func (u *unit) UnmarshalCSV(cell string) error {
	known, ok := units[strings.ToLower(cell)]
	if !ok && cell != "" {
		return fmt.Errorf("neither mi nor km")
	}
	*u = unit(known)
	return nil
}

// title is the word for a title brand, in small letters.
type title string

// UnmarshalCSV takes any word; "clean" is another word for clear.
func (t *title) UnmarshalCSV(cell string) error {
	word := strings.ToLower(cell)
	if word == "clean" {
		word = "clear"
	}
	*t = title(word)
	return nil
}

// tick is yes or no.
type tick bool

var yes, no = []string{"yes", "y", "true", "1", "x"}, []string{"", "no", "n", "false", "0"}

// UnmarshalCSV takes a word for yes or no.
func (t *tick) UnmarshalCSV(cell string) error {
	word := strings.ToLower(cell)
	if !slices.Contains(yes, word) && !slices.Contains(no, word) {
		return fmt.Errorf("neither yes nor no")
	}
	*t = tick(slices.Contains(yes, word))
	return nil
}

// MarshalCSV returns yes, or nothing.
func (t tick) MarshalCSV() (string, error) {
	if t {
		return "yes", nil
	}
	return "", nil
}
