package widgets

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"github.com/shopspring/decimal"
)

// Kind is what a number entry takes.
type Kind int

// The kinds of numbers.
const (
	Plain   Kind = iota // any number; "30%" is 0.3
	Whole               // a number without decimals
	Money               // an amount in major units, with at most Spec.Digits decimals
	Percent             // a share: "30" and "30%" are both 0.3
)

// Spec says what a number may be.
type Spec struct {
	Kind      Kind
	Unit      string   // shown beside the field, and allowed behind or before the number: "mi", "h", "USD"
	Digits    int32    // decimals at most, for Money; the decimals shown otherwise, 0 for as many as there are
	Optional  bool     // an empty field means "not known"
	Ungrouped bool     // no commas between thousands: a year
	Least     *float64 // smallest value allowed; nil: none
	Most      *float64 // largest value allowed; nil: none
}

// Bound returns a pointer to x, for the limits of a Spec.
func Bound(x float64) *float64 { return &x }

// Number is what a field says: a value, or that it is not known.
type Number struct {
	Known bool
	Value decimal.Decimal // major units, or a share for Percent
}

// Known returns the number x; one that is none (NaN, infinite) is not known.
func Known(x float64) Number {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return Number{}
	}
	return Number{Known: true, Value: decimal.NewFromFloat(x)}
}

// Exactly returns the number d.
func Exactly(d decimal.Decimal) Number { return Number{Known: true, Value: d} }

// Float returns the value as a float64, 0 when not known.
func (n Number) Float() float64 {
	f, _ := n.Value.Float64()
	return f
}

// Int returns the whole part of the value, 0 when not known.
func (n Number) Int() int { return int(n.Value.IntPart()) }

// Minor returns the value in minor units of a currency with so many digits, rounded half away from zero.
func (n Number) Minor(digits int32) int64 { return n.Value.Shift(digits).Round(0).IntPart() }

// Equal reports whether both say the same.
func (n Number) Equal(m Number) bool {
	return n.Known == m.Known && (!n.Known || n.Value.Equal(m.Value))
}

// allows says what is wrong with a value that was read well.
func (s Spec) allows(value decimal.Decimal) error {
	switch {
	case s.Kind == Whole && !value.IsInteger():
		return errors.New("whole numbers only")
	case s.Kind == Money && !value.Equal(value.Truncate(s.Digits)):
		if s.Digits == 0 {
			return errors.New("no decimals here")
		}
		return fmt.Errorf("at most %d decimals", s.Digits)
	case s.Least != nil && value.LessThan(decimal.NewFromFloat(*s.Least)):
		return fmt.Errorf("at least %s", s.show(Known(*s.Least)))
	case s.Most != nil && value.GreaterThan(decimal.NewFromFloat(*s.Most)):
		return fmt.Errorf("at most %s", s.show(Known(*s.Most)))
	}
	return nil
}

// Show returns a number as the field writes it: "1,200", "1,200.50", "30 %", empty when not known; with the marks of DecimalComma.
func (s Spec) Show(n Number) string { return marked(s.show(n)) }

func (s Spec) show(n Number) string {
	if !n.Known {
		return ""
	}
	value := n.Value
	if s.Ungrouped {
		return rounded(value, s.Digits)
	}
	if s.Kind == Percent {
		return Grouped(rounded(value.Shift(2), s.Digits)) + " %"
	}
	if s.Kind == Money {
		if value.IsInteger() {
			return Grouped(value.StringFixed(0))
		}
		return Grouped(value.StringFixed(s.Digits))
	}
	digits := rounded(value, s.Digits)
	if s.twoReadings(digits) != nil {
		digits += "0"
	}
	return Grouped(digits)
}

// rounded writes a value with at most so many decimals, 0 for as many as it has, and no zeros at the end.
func rounded(value decimal.Decimal, digits int32) string {
	if digits > 0 {
		value = value.Round(digits)
	}
	return value.String()
}

// Grouped puts commas between thousands of a number written in digits.
func Grouped(digits string) string {
	sign := ""
	if rest, ok := strings.CutPrefix(digits, "-"); ok {
		sign, digits = "-", rest
	}
	whole, decimals, point := strings.Cut(digits, ".")
	for i := len(whole) - 3; i > 0; i -= 3 {
		whole = whole[:i] + "," + whole[i:]
	}
	if point {
		whole += "." + decimals
	}
	return sign + whole
}
