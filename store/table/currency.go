package table

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"

	"walkline/store/cell"
)

// possible are the currencies that all signs met so far may stand for; nil: no sign was met.
type possible []string

// narrow takes another sign; one that no currency shares with those before changes nothing.
func (p *possible) narrow(sign string) {
	codes := cell.Currencies(sign)
	if *p == nil {
		*p = codes
		return
	}
	both := slices.DeleteFunc(slices.Clone(*p), func(c string) bool { return !slices.Contains(codes, c) })
	if len(both) > 0 {
		*p = both
	}
}

// currency settles the one currency of a table: stated, of a column, of a heading, of the signs in its cells, else the one wanted.
func (s *settling) currency() {
	stated := s.stated
	if stated.Currency != "" || !slices.Contains(s.usedForms(), Money) {
		return
	}
	may := s.named()
	times := s.signs()
	bySign := slices.SortedFunc(maps.Keys(times), func(a, b string) int { return cmp.Or(times[b]-times[a], strings.Compare(a, b)) })
	for _, sign := range bySign {
		may.narrow(sign)
	}
	rival := rivalOf(bySign, times)
	switch {
	case rival != "" && stated.Wanted == "":
		s.ask("currency", fmt.Sprintf("Prices carry %q and %q. Which currency is the table's?", bySign[0], rival),
			slices.Concat(cell.Currencies(bySign[0]), cell.Currencies(rival))...)
	case len(may) == 1:
		stated.Currency = may[0]
	case stated.Wanted != "" && (may == nil || slices.Contains(may, stated.Wanted)):
		stated.Currency = stated.Wanted
	case may == nil:
		s.ask("currency", "In which currency are the prices? No heading and no cell says it.", "USD", "CAD", "EUR", "GBP", "PLN", "CHF",
			"another code of ISO 4217")
	default:
		s.ask("currency", "In which currency are the prices? Their sign stands for several.", may...)
	}
}

// usedForms returns the forms of the columns that are read.
func (s *settling) usedForms() (forms []Form) {
	for i, form := range s.forms {
		if s.used[i] {
			forms = append(forms, form)
		}
	}
	return forms
}

// named returns what a column of currencies and the headings of money say; a row that says otherwise is refused.
func (s *settling) named() (may possible) {
	for i, c := range s.columns {
		switch {
		case !s.used[i]:
		case s.forms[i] == Currency:
			for _, code := range s.cells(i) {
				may.narrow(code)
				break
			}
		case s.forms[i] == Money:
			parts := func(r rune) bool { return strings.ContainsRune(" ()[],/-_.:", r) }
			for _, word := range strings.FieldsFunc(c.Heading, parts) {
				if strings.ToUpper(word) == word || strings.ContainsAny(word, "€£$łč") || len(word) > 3 {
					may.narrow(word)
				}
			}
		}
	}
	return may
}

// signs counts the signs that stand in cells of money.
func (s *settling) signs() map[string]int {
	times := map[string]int{}
	for i := range s.columns {
		if !s.used[i] || s.forms[i] != Money {
			continue
		}
		for _, text := range s.cells(i) {
			if p, _ := cell.ReadMoney(text, 0); p.Sign != "" { // a word beside the price may be no word of money: its sign stands
				times[strings.ToLower(p.Sign)]++
			}
		}
	}
	return times
}

// rivalOf returns a sign that no currency shares with the first, where it stands too often for a
// slip: the first has not twice as many.
func rivalOf(signs []string, times map[string]int) string {
	for _, sign := range signs {
		shared := slices.ContainsFunc(cell.Currencies(signs[0]), func(code string) bool { return cell.Stands(sign, code) })
		if !shared && times[signs[0]] < 2*times[sign] {
			return sign
		}
	}
	return ""
}
