package cell

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Number is a decimal number: Mantissa / 10^Scale.
type Number struct {
	Mantissa int64
	Scale    int
	Proves   byte // the decimal mark that its digits prove, '.' or ','; 0: none
	Lone     byte // a lone mark before three digits, which may part a thousand or a fraction; 0: none
}

// Float returns the number, rounded as a float.
func (n Number) Float() float64 {
	if n.Mantissa > 1<<53 || n.Mantissa < -1<<53 {
		x, _ := strconv.ParseFloat(n.Text(), 64) // a plain decimal number: never an error
		return x
	}
	return float64(n.Mantissa) / float64(power(n.Scale))
}

// power returns 10^n, n up to 18.
func power(n int) int64 {
	p := int64(1)
	for range n {
		p *= 10
	}
	return p
}

// Text returns the number as plain decimal text.
func (n Number) Text() string { return decimalText(n.Mantissa, n.Scale) }

func decimalText(mantissa int64, scale int) string {
	for scale > 0 && mantissa%10 == 0 {
		mantissa, scale = mantissa/10, scale-1
	}
	digits := strconv.FormatInt(mantissa, 10)
	if scale == 0 {
		return digits
	}
	sign := ""
	if mantissa < 0 {
		sign, digits = "-", digits[1:]
	}
	for len(digits) <= scale {
		digits = "0" + digits
	}
	return sign + digits[:len(digits)-scale] + "." + digits[len(digits)-scale:]
}

var (
	errNumber = errors.New("not a number")
	errGroups = errors.New("not a number: thousands are parted in threes")
	errSecond = errors.New("more than one number stands here")
)

func isDigit(c byte) bool { return '0' <= c && c <= '9' }

// parted returns what stands before the number in a cell, its digits and marks, and what stands after it. A space or an apostrophe is
// part of the number where three digits follow.
func parted(cell string) (before, digits, after string) {
	start := 0
	for start < len(cell) && !isDigit(cell[start]) {
		start++
	}
	end := start
	for end < len(cell) {
		if isDigit(cell[end]) {
			end++
			continue
		}
		width := markWidth(cell[end:])
		if width == 0 || end+width >= len(cell) || !isDigit(cell[end+width]) {
			break
		}
		if c := cell[end]; c != '.' && c != ',' && !threeDigits(cell[end+width:]) {
			break
		}
		end += width
	}
	return cell[:start], cell[start:end], cell[end:]
}

// markWidth returns how many bytes the mark at the start of a text takes, 0 for none.
func markWidth(text string) int {
	switch text[0] {
	case '.', ',', ' ', '\'':
		return 1
	}
	if text[0] < 0x80 {
		return 0
	}
	for _, mark := range []string{"\u00a0", "\u202f", "\u2009", "’"} {
		if strings.HasPrefix(text, mark) {
			return len(mark)
		}
	}
	return 0
}

func threeDigits(text string) bool {
	return len(text) >= 3 && isDigit(text[0]) && isDigit(text[1]) && isDigit(text[2]) && (len(text) == 3 || !isDigit(text[3]))
}

// mostDigits bounds a number: more are a slip, and would not fit.
const mostDigits = 18

// numberOf reads digits and marks; decimal is the mark that is stated, 0 for none. Errors: they are no number, or not written so.
func numberOf(digits string, decimal byte) (Number, error) {
	m := marksOf(digits)
	if m.digits == 0 || m.digits > mostDigits {
		return Number{}, errNumber
	}
	n := Number{Mantissa: m.mantissa}
	if m.digits == len(digits) { // nothing stands between them
		return n, nil
	}
	fraction := -1 // where it starts
	switch {
	case m.last < 0:
	case m.dots > 0 && m.commas > 0:
		fraction, n.Proves = m.last, digits[m.last]
	case m.dots+m.commas > 1:
		n.Proves = other(digits[m.last])
	case len(digits)-m.last-1 == 3 && m.last <= 3 && digits[0] != '0' && !m.spaced:
		n.Lone = digits[m.last]
		if decimal == n.Lone {
			fraction = m.last
		}
	default:
		fraction, n.Proves = m.last, digits[m.last]
	}
	if decimal != 0 && n.Proves != 0 && n.Proves != decimal {
		return n, fmt.Errorf("not written like %s, as the table is", Example(decimal))
	}
	whole := digits
	if fraction >= 0 {
		whole, n.Scale = digits[:fraction], len(digits)-fraction-1
	}
	return n, inThrees(whole)
}

// marks is what stands between the digits of a number.
type marks struct {
	mantissa     int64
	digits       int
	dots, commas int
	last         int // place of the last point or comma, -1 for none
	spaced       bool
}

func marksOf(digits string) marks {
	m := marks{last: -1}
	for i := range len(digits) {
		switch c := digits[i]; {
		case isDigit(c):
			if m.digits++; m.digits <= mostDigits {
				m.mantissa = m.mantissa*10 + int64(c-'0')
			}
		case c == '.':
			m.dots, m.last = m.dots+1, i
		case c == ',':
			m.commas, m.last = m.commas+1, i
		default:
			m.spaced = true
		}
	}
	return m
}

// inThrees reports whether the groups of a whole number have three digits each, the first up to three, and one mark.
func inThrees(whole string) error {
	var mark byte
	for at := len(whole); ; {
		group := at
		for group > 0 && isDigit(whole[group-1]) {
			group--
		}
		switch {
		case group == 0 && (mark == 0 || at <= 3) && at > 0:
			return nil
		case group == 0, at-group != 3, mark != 0 && whole[group-1] != mark:
			return errGroups
		}
		mark = whole[group-1]
		for at = group; at > 0 && !isDigit(whole[at-1]); at-- {
		}
	}
}

func other(mark byte) byte {
	if mark == '.' {
		return ','
	}
	return '.'
}

// Example returns a number with a decimal mark, and the mark for thousands that usually goes with it.
func Example(decimal byte) string {
	if decimal == ',' {
		return "1.234,50"
	}
	return "1,234.50"
}

// ReadNumber returns the number that a cell is; decimal is the stated mark, 0 for none. Errors: it is none, or not written so.
func ReadNumber(cell string, decimal byte) (Number, error) {
	before, digits, after := parted(cell)
	before = strings.Trim(before, " '’")
	if strings.Trim(after, " ") != "" || before != "" && before != "-" && before != "−" && before != "+" {
		return Number{}, errNumber
	}
	n, err := numberOf(digits, decimal)
	if before == "-" || before == "−" {
		n.Mantissa = -n.Mantissa
	}
	return n, err
}

// SaysThousand reports whether a heading says that its numbers are thousands.
func SaysThousand(heading string) bool {
	for _, w := range Words(heading) {
		if thousands[w] || thousandOver[w] {
			return true
		}
	}
	return false
}

// thousandOver are further ways in which a heading says so.
var thousandOver = SetOf("thousands|000|000s|1000|1000s|x1000|milliers|duizend|duizenden|tysiace|tysiecy|migliaia")

// TimesThousand returns a number of thousands.
func (n Number) TimesThousand() Number {
	n.Scale -= 3
	for n.Scale < 0 && n.Mantissa < 1<<53 {
		n.Mantissa, n.Scale = n.Mantissa*10, n.Scale+1
	}
	return n
}

// thousands are the words and letters that stand for a thousand behind a number.
var thousands = SetOf("k|tsd|tausend|tys|mil|mille|mila|dzd|thousand")

// minor returns the number in units of 10^-digits. Errors: it has more decimals, or is too large.
func (n Number) minor(digits int) (int64, error) {
	for n.Scale > digits && n.Mantissa%10 == 0 {
		n.Mantissa, n.Scale = n.Mantissa/10, n.Scale-1
	}
	if n.Scale > digits {
		return 0, fmt.Errorf("more decimals than the %d of the currency", digits)
	}
	m := n.Mantissa
	for range digits - n.Scale {
		if m > math.MaxInt64/100 || m < math.MinInt64/100 {
			return 0, errors.New("larger than any price that can be held")
		}
		m *= 10
	}
	if m > 1<<53 || m < -1<<53 {
		return 0, errors.New("larger than any price that can be held")
	}
	return m, nil
}

// Evidence returns what the marks of a cell's number prove, and a lone mark before three digits.
func Evidence(cell string) (proves, lone byte) {
	if strings.IndexByte(cell, '.') < 0 && strings.IndexByte(cell, ',') < 0 {
		return 0, 0
	}
	_, digits, after := parted(cell)
	if digits == "" || strings.ContainsAny(after, "0123456789") {
		return 0, 0
	}
	n, err := numberOf(digits, 0)
	if err != nil {
		return 0, 0
	}
	return n.Proves, n.Lone
}
