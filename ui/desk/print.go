package desk

import (
	"errors"
	"strings"
	"unicode"

	"walkline/valuation"
	"walkline/valuation/lot"
)

// Press makes files to print.
type Press interface {
	// Decision returns the decision sheet of a lot as PDF; printed is the date on it.
	Decision(c valuation.Case, a valuation.Answer, printed lot.Date) ([]byte, error)
}

// DecisionSheet returns the decision sheet of a lot as it stands; a lot whose answer is not fresh is valued first. It touches no
// state and may run on any goroutine. Errors: the lot cannot be valued, with the first reason.
func (d *Desk) DecisionSheet(o Open) ([]byte, error) {
	if d.Press == nil {
		return nil, errors.New("this desk has no press")
	}
	if o.Fresh && o.Valued != nil {
		return d.Press.Decision(o.Case, o.Valued.Answer, d.Today())
	}
	v, err := d.Value(o.Case)
	if err != nil {
		return nil, err
	}
	return d.Press.Decision(o.Case, v.Answer, d.Today())
}

// FileName returns the name under which something about a lot is saved: "lot 14 Ostrane Pell decision.pdf". What file systems
// refuse in a name is left out.
func FileName(l lot.Lot, kind, ending string) string {
	words := []string{"lot", l.Number, l.Make, l.Model, kind}
	name := strings.Map(func(r rune) rune {
		if unicode.IsControl(r) || strings.ContainsRune(`/\:*?"<>|`, r) {
			return ' '
		}
		return r
	}, strings.Join(words, " "))
	const longest = 120 // runes; file systems take 255 bytes
	short := []rune(strings.Join(strings.Fields(name), " "))
	return string(short[:min(len(short), longest)]) + ending
}
