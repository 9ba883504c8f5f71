package widgets

import (
	"errors"
	"fmt"
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

// Known returns the number x.
func Known(x float64) Number { return Number{Known: true, Value: decimal.NewFromFloat(x)} }

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

// Parse reads what a person typed: "1.2k", "1,200", "1 200", "30%", "USD 1,200.50", "120,000 mi". A comma groups
// thousands and a point starts decimals; what could be read in two ways is refused.
//
// Errors say in a few words what is wrong.
func Parse(typed string, s Spec) (Number, error) {
	body, percent := stripped(typed, s)
	if body == "" {
		if s.Optional && !percent {
			return Number{}, nil
		}
		return Number{}, errors.New("a number is needed")
	}
	value, err := numberIn(body)
	if err != nil {
		return Number{}, err
	}
	switch {
	case percent && (s.Kind == Money || s.Kind == Whole):
		return Number{}, errors.New("a percentage does not fit here")
	case percent || s.Kind == Percent:
		value = value.Shift(-2)
	}
	if err := s.allows(value); err != nil {
		return Number{}, err
	}
	return Exactly(value), nil
}

// stripped takes spaces, the unit and a per cent sign off, and says whether there was one.
func stripped(typed string, s Spec) (body string, percent bool) {
	body = strings.TrimSpace(strings.Map(plainer, typed))
	if s.Unit != "" && s.Unit != "%" {
		body = withoutUnit(body, s.Unit)
	}
	if s.Kind == Money {
		body = strings.TrimSpace(strings.Replace(body, "¤", "", 1))
	}
	if rest, ok := strings.CutSuffix(body, "%"); ok {
		return strings.TrimSpace(rest), true
	}
	return body, false
}

// plainer turns the many spaces, dashes and currency signs of the keyboard into one of each.
func plainer(r rune) rune {
	switch r {
	case '\u00a0', '\u2009', '\u202f', '\t':
		return ' '
	case '−', '–':
		return '-'
	case '’':
		return '\''
	case '$', '€', '£', '¥', '₹', '₩':
		return '¤'
	}
	return r
}

func withoutUnit(body, unit string) string {
	low, u := strings.ToLower(body), strings.ToLower(unit)
	switch {
	case strings.HasSuffix(low, u):
		return strings.TrimSpace(body[:len(body)-len(unit)])
	case strings.HasPrefix(low, u):
		return strings.TrimSpace(body[len(unit):])
	}
	return body
}

// largestTyped is beyond every price, distance and time that the program handles.
var largestTyped = decimal.New(1, 12)

// numberIn reads a sign, grouped digits, decimals and a "k" or "m" for thousands and millions.
func numberIn(body string) (decimal.Decimal, error) {
	unread := fmt.Errorf("%q is not a number", body)
	sign, rest := "", body
	if r, ok := strings.CutPrefix(rest, "-"); ok {
		sign, rest = "-", strings.TrimSpace(r)
	}
	rest, shift := withoutMultiple(rest)
	whole, decimals, point := strings.Cut(rest, ".")
	if !digitsOnly(decimals) || whole == "" && decimals == "" || point && decimals == "" {
		return decimal.Zero, unread
	}
	whole, err := ungrouped(whole, body)
	if err != nil {
		return decimal.Zero, err
	}
	if whole == "" {
		whole = "0"
	}
	const longest = 24
	if len(whole)+len(decimals) > longest {
		return decimal.Zero, errors.New("too many digits")
	}
	value, err := decimal.NewFromString(sign + whole + "." + decimals + "0")
	if err != nil {
		return decimal.Zero, unread
	}
	value = value.Shift(shift)
	if value.Abs().GreaterThan(largestTyped) {
		return decimal.Zero, errors.New("too large")
	}
	return value, nil
}

// withoutMultiple takes a trailing k or m off and returns the power of ten that it stands for.
func withoutMultiple(s string) (string, int32) {
	for suffix, shift := range map[string]int32{"k": 3, "K": 3, "m": 6, "M": 6} {
		if rest, ok := strings.CutSuffix(s, suffix); ok {
			return strings.TrimSpace(rest), shift
		}
	}
	return s, 0
}

// ungrouped returns the digits of a whole part in groups of three, parted by one kind of mark.
func ungrouped(whole, body string) (string, error) {
	unread := fmt.Errorf("%q is not a number", body)
	mark := strings.IndexAny(whole, ", '")
	if mark < 0 {
		if !digitsOnly(whole) {
			return "", unread
		}
		return whole, nil
	}
	groups := strings.Split(whole, whole[mark:mark+1])
	for i, g := range groups {
		if !digitsOnly(g) || g == "" {
			return "", unread
		}
		if i > 0 && len(g) != 3 || i == 0 && len(g) > 3 {
			if whole[mark] == ',' && len(groups) == 2 && i == 1 {
				return "", fmt.Errorf("write %s.%s for decimals", groups[0], g)
			}
			return "", errors.New("groups of three digits, please")
		}
	}
	return strings.Join(groups, ""), nil
}

func digitsOnly(s string) bool {
	for _, r := range s {
		if r < '0' || r > '9' {
			return false
		}
	}
	return true
}

// allows says what is wrong with a value that was read well.
func (s Spec) allows(value decimal.Decimal) error {
	switch {
	case s.Kind == Whole && !value.IsInteger():
		return errors.New("a whole number, please")
	case s.Kind == Money && !value.Equal(value.Truncate(s.Digits)):
		if s.Digits == 0 {
			return errors.New("no decimals, please")
		}
		return fmt.Errorf("at most %d decimals", s.Digits)
	case s.Least != nil && value.LessThan(decimal.NewFromFloat(*s.Least)):
		return fmt.Errorf("at least %s", s.Show(Known(*s.Least)))
	case s.Most != nil && value.GreaterThan(decimal.NewFromFloat(*s.Most)):
		return fmt.Errorf("at most %s", s.Show(Known(*s.Most)))
	}
	return nil
}

// Show returns a number as the field writes it: "1,200", "1,200.50", "30 %", empty when not known.
func (s Spec) Show(n Number) string {
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
	return Grouped(rounded(value, s.Digits))
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
