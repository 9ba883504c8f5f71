package view

import (
	"fmt"
	"slices"
	"strings"

	"walkline/ui/desk"
	"walkline/valuation/build"
	"walkline/valuation/checks"
)

// BillColumns are the columns of the list of bills.
var BillColumns = []Column{{"Day", false, 104}, {"What", false, 150}, {"Line of work", false, 190}, {"Amount", true, 76}}

// kindWords are the kinds of bills that their code does not say.
var kindWords = map[string]string{"outside": "sublet work", "holding": "keeping it", "selling": "selling it"}

// KindWords says what a bill is for.
func KindWords(kind string) string {
	if words, ok := kindWords[kind]; ok {
		return words
	}
	return kind
}

// KindsInWords returns every kind of bill in words.
func KindsInWords() []string {
	words := make([]string, len(build.Kinds))
	for i, k := range build.Kinds {
		words[i] = KindWords(k)
	}
	return words
}

// PartSources are the sources of a part that the case file names, and none.
var PartSources = []string{"", "new_maker", "new_aftermarket", "used", "repaired", "made"}

// PartSourcesInWords returns them in words.
func PartSourcesInWords() []string {
	words := []string{"no part"}
	for _, s := range PartSources[1:] {
		words = append(words, SourceWords(s))
	}
	return words
}

// Bill returns the cells of a bill.
func Bill(o desk.OpenBuild, r build.Receipt) []string {
	_, names := Works(o)
	what := r.What
	if r.Kind != "part" {
		what = joined(", ", what, KindWords(r.Kind))
	}
	if checks.Donor(r.Donor) != "" {
		what = joined("; ", what, "! donor VIN")
	}
	return []string{Day(r.Date), what, names[r.Line], NewPurse(o.Currency).Group(r.Amount)}
}

// BillInHand names the bill that is on the form, of the open build: its place among the bills, -1 for a new one.
func BillInHand(o desk.OpenBuild, at int, r build.Receipt) string {
	if at < 0 {
		return "a new bill"
	}
	what := r.What
	if what == "" {
		what = KindWords(r.Kind)
	}
	return "the bill on the form: " + what + ", " + NewPurse(o.Currency).Show(r.Amount)
}

// BillTotal says what the bills come to.
func BillTotal(o desk.OpenBuild) string {
	p := NewPurse(o.Currency)
	all := fmt.Sprintf("%s, %s in all.", Count(len(o.Build.Receipts), "bill"), p.Show(o.Build.Spent()))
	var kinds []string
	for _, k := range build.Kinds {
		if x := o.Build.BillsOf(k); x != 0 {
			kinds = append(kinds, KindWords(k)+" "+p.Group(x))
		}
	}
	if len(kinds) > 1 {
		all += " " + sentence(strings.Join(kinds, ", ")) + "."
	}
	if back := o.Build.MoneyBack(); back > 0 {
		all += fmt.Sprintf(" Of it %s came back: that lowers what was paid, and the work still to pay does not grow.", p.Group(back))
	}
	return all
}

// PartsOf names the parts that a line of work needs, and which have been bought, so that a bill can name one.
func PartsOf(o desk.OpenBuild, line string) string {
	var parts []string
	for _, l := range o.Plan {
		if l.ID != line {
			continue
		}
		for _, p := range l.Parts {
			if o.Build.HasPart(line, p.Name) {
				parts = append(parts, p.Name+" (bought)")
			} else {
				parts = append(parts, p.Name)
			}
		}
	}
	if len(parts) == 0 {
		return ""
	}
	return "Parts of this line: " + strings.Join(parts, ", ") + ". A bill that names one takes it off the forecast."
}

// PartChoice is a part of the plan that a bill can be for.
type PartChoice struct{ Line, Name, Words string }

// PartChoices returns the parts of a line of work, or those of every line where none is named or it has none.
func PartChoices(o desk.OpenBuild, line string) []PartChoice {
	var all, own []PartChoice
	var words []string
	for _, l := range o.Plan {
		for _, p := range l.Parts {
			c := PartChoice{l.ID, p.Name, p.Name + ", " + l.Job}
			if o.Build.HasPart(l.ID, p.Name) {
				c.Words += " (bought)"
			}
			c.Words = Distinct(words, c.Words)
			words, all = append(words, c.Words), append(all, c)
			if l.ID == line {
				own = append(own, c)
			}
		}
	}
	if len(own) > 0 {
		return own
	}
	return all
}

// DonorWords says what is doubtful about the donor of a used part; empty: nothing, or the bill is for none.
func DonorWords(r build.Receipt) string {
	wrong := checks.Donor(r.Donor)
	switch {
	case wrong != "":
		return "! " + wrong
	case r.Source == "used" && strings.TrimSpace(r.Donor) == "":
		return "A used part: the inspection may ask for its donor's VIN."
	}
	return ""
}

// Distinct returns a name that is not among the others: a second one of a name gets a number.
func Distinct(others []string, name string) string {
	unique := name
	for n := 2; slices.Contains(others, unique); n++ {
		unique = fmt.Sprintf("%s (%d)", name, n)
	}
	return unique
}

// HoursColumns are the columns of the list of own hours.
var HoursColumns = []Column{{"Day", false, 104}, {"Trade", false, 84}, {"Line of work", false, 150}, {"What", false, 150},
	{"Hours", true, 50}}

// HoursEntry returns the cells of some own hours.
func HoursEntry(o desk.OpenBuild, w build.Work) []string {
	_, names := Works(o)
	return []string{Day(w.Date), w.Trade, names[w.Line], w.What, fmt.Sprintf("%.1f", w.Hours)}
}

// HoursTotal says what the own hours come to.
func HoursTotal(o desk.OpenBuild) string {
	worked := o.Build.Worked()
	return fmt.Sprintf("%.1f hours in all, %s at their rates.", sum(worked),
		NewPurse(o.Currency).Code+" "+NewPurse(o.Currency).Whole(build.Labour(worked, o.Case.Labour.Rates)))
}

// ChargeColumns are the columns of the sale's invoice.
var ChargeColumns = []Column{{"Charge", false, 200}, {"Amount", true, 96}}

// Charge returns the cells of one line of the invoice.
func Charge(o desk.OpenBuild, c build.Charge) []string {
	return []string{c.Name, NewPurse(o.Currency).Exact(c.Amount)}
}

// InvoiceTotal says what the invoice comes to, and what was foretold.
func InvoiceTotal(o desk.OpenBuild) string {
	p := NewPurse(o.Currency)
	if o.Build.Hammer == nil {
		return "The hammer price is not known."
	}
	total := *o.Build.Hammer
	for _, c := range o.Build.Charges {
		total += c.Amount
	}
	words := "Invoice total " + p.Show(total) + "."
	if o.Foretold != nil {
		words += fmt.Sprintf(" The forecast was made at a hammer price of %s, %s with fees and tax.", p.Group(o.Foretold.At),
			p.Group(o.Foretold.At+o.Foretold.Money.Fees))
	}
	return words
}

// HiddenRow is one hidden risk with what was foretold and seen of it.
type HiddenRow struct{ ID, Name, Said, Seen string }

// HiddenRows returns the risks that were foretold and those that the survey brings up now.
func HiddenRows(o desk.OpenBuild) []HiddenRow {
	var rows []HiddenRow
	add := func(id, name, words string) {
		if slices.ContainsFunc(rows, func(r HiddenRow) bool { return r.ID == id }) {
			return
		}
		seen := o.Build.Saw(id)
		if seen == "" {
			seen = "not known"
		}
		rows = append(rows, HiddenRow{id, name, words, seen})
	}
	if o.Foretold != nil {
		for _, r := range o.Foretold.Risks {
			add(r.ID, r.Name, "forecast with a chance of "+Percent(r.Chance))
		}
	}
	for _, r := range o.Risks {
		add(r.ID, r.Name, "what is entered now gives it a chance of "+Percent(r.Chance))
	}
	for _, s := range o.Build.Risks {
		add(s.Risk, Words(s.Risk), "no longer suggested by what is entered")
	}
	return rows
}
