package view

import (
	"fmt"
	"slices"

	"walkline/ui/desk"
	"walkline/valuation/checks"
)

// PackColumns are the columns of the jurisdictions on the Bench.
var PackColumns = []Column{{"Jurisdiction", false, 150}, {"Code", false, 64}, {"Whose", false, 100}}

// Pack is one jurisdiction as the Bench lists it.
type Pack struct {
	checks.Pack
	Yours bool
}

// Packs returns the jurisdictions, the user's in the place of the program's, that have every word of a search in their names.
func Packs(s desk.State, search string) []Pack {
	var all []Pack
	if s.Starter != nil {
		for _, p := range s.Starter.Packs {
			if !slices.ContainsFunc(s.Packs, func(own checks.Pack) bool { return own.ID == p.ID }) {
				all = append(all, Pack{p, false})
			}
		}
	}
	for _, p := range s.Packs {
		all = append(all, Pack{p, true})
	}
	return slices.DeleteFunc(all, func(p Pack) bool { return !contains([]string{p.ID, p.Name}, search) })
}

// Cells returns the cells of a jurisdiction.
func (p Pack) Cells() []string {
	whose := "ships with it"
	if p.Yours {
		whose = "yours"
	}
	code := p.ID
	if code == checks.Anywhere {
		code = "any"
	}
	return []string{p.Name, code, whose}
}

// PackGroup is one part of a jurisdiction: its title, and rows of words with what they rest on.
type PackGroup struct {
	Title string
	Rows  [][2]string // words, source
}

// Groups returns all that a jurisdiction holds, in words.
func (p Pack) Groups() []PackGroup {
	rows := func(list []checks.Row) [][2]string {
		var out [][2]string
		for _, r := range list {
			out = append(out, [2]string{r.Text, r.Source.Words()})
		}
		return out
	}
	groups := []PackGroup{
		{"What a damaged vehicle is called", thresholdRows(p.Thresholds)},
		{"What may be rebuilt", rebuildRows(p.Rebuild)},
		{"What the rebuilt inspection asks for", rows(p.Documents)},
		{"Fees and days", chargeRows(p.Fees, p.Currency)},
		{"Who counts as a dealer", limitRows(p.PrivateSales)},
		{"Emissions and safety", rows(p.Inspections)},
		{"To ask about", rows(p.Questions)},
	}
	return slices.DeleteFunc(groups, func(g PackGroup) bool { return len(g.Rows) == 0 })
}

func thresholdRows(list []checks.Threshold) [][2]string {
	var out [][2]string
	for _, t := range list {
		words := t.Name + ": " + t.Words()
		if t.Note != "" {
			words += ". " + t.Note
		}
		out = append(out, [2]string{words, t.Source.Words()})
	}
	return out
}

func rebuildRows(list []checks.Rebuild) [][2]string {
	var out [][2]string
	for _, r := range list {
		may := "may not be rebuilt"
		if r.Allowed {
			may = "may be rebuilt"
		}
		words := Words(r.Title) + ": " + may
		if r.Text != "" {
			words += ". " + r.Text
		}
		out = append(out, [2]string{words, r.Source.Words()})
	}
	return out
}

func chargeRows(list []checks.Charge, currency string) [][2]string {
	var out [][2]string
	for _, c := range list {
		words := c.Name
		if c.Amount != nil {
			words += ": " + NewPurse(currency).Show(*c.Amount)
		}
		if c.Days != nil {
			words += fmt.Sprintf(", %g to %g days, mostly %g", c.Days.Low, c.Days.High, c.Days.Likely)
		}
		out = append(out, [2]string{words, c.Source.Words()})
	}
	return out
}

func limitRows(l *checks.Limit) [][2]string {
	if l == nil {
		return nil
	}
	words := fmt.Sprintf("More than %s in %d months; it grants nothing below that.", Count(l.Most, "vehicle"), l.Months)
	if l.Text != "" {
		words += " " + l.Text
	}
	return [][2]string{{words, l.Source.Words()}}
}
