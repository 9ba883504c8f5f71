package widgets

import (
	"errors"
	"fmt"
	"strings"

	"github.com/shopspring/decimal"
)

// Parse reads what a person typed: "1.2k", "1,200", "1 200", "30%", "USD 1,200.50", "120,000 mi". A comma groups
// thousands and a point starts decimals; what could be read in two ways is refused, with both readings: "84.000" is 84 to one
// person and 84,000 to another.
//
// After DecimalComma(true) the two marks change places.
//
// Errors say in a few words what is wrong.
func Parse(typed string, s Spec) (Number, error) {
	n, err := s.parse(marked(typed))
	if err != nil {
		err = errors.New(marked(err.Error()))
	}
	return n, err
}

func (s Spec) parse(typed string) (Number, error) {
	body, percent := stripped(typed, s)
	if body == "" {
		if s.Optional && !percent {
			return Number{}, nil
		}
		return Number{}, errors.New("a number is needed")
	}
	if !percent {
		if err := s.twoReadings(body); err != nil {
			return Number{}, err
		}
	}
	value, err := numberIn(body)
	if err != nil {
		return Number{}, err
	}
	switch {
	case percent && (s.Kind == Money || s.Kind == Whole):
		return Number{}, errors.New("a percentage does not fit")
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

// twoReadings refuses one point with three digits behind it, which parts thousands in much of the world. A zero before the point,
// more than three digits there, a comma or a "k" leave one reading; so does a share, or money with thousandths.
func (s Spec) twoReadings(body string) error {
	if s.Kind == Percent || s.Kind == Money && s.Digits >= 3 {
		return nil
	}
	whole, behind, _ := strings.Cut(strings.TrimSpace(strings.TrimPrefix(body, "-")), ".")
	if len(behind) != 3 || !digitsOnly(behind) || !digitsOnly(whole) || whole == "" || whole[0] == '0' || len(whole) > 3 {
		return nil
	}
	decimals := "." + behind + "0" // a fourth decimal leaves one reading
	if behind[2] == '0' {
		decimals = strings.TrimRight(strings.TrimRight("."+behind, "0"), ".")
	}
	return fmt.Errorf("write %s,%s or %s%s", whole, behind, whole, decimals)
}

// largestTyped is beyond every price, distance and time that the program handles.
var largestTyped = decimal.New(1, 12)

// numberIn reads a sign, grouped digits, decimals and a "k" or "m" for thousands and millions.
func numberIn(body string) (decimal.Decimal, error) {
	unread := notANumber(body)
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

// notANumber quotes what was typed, the beginning of it when it is long.
func notANumber(body string) error {
	const most = 8
	if runes := []rune(body); len(runes) > most {
		body = string(runes[:most]) + "…"
	}
	return fmt.Errorf("%q is not a number", body)
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
	unread := notANumber(body)
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
			return "", errors.New("group digits by three")
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
