package view

import (
	"cmp"
	"slices"
	"strings"

	"walkline/ui/desk"
	"walkline/valuation/lot"
)

// Word is a word that an entry can offer, with a line of second rank behind it.
type Word struct{ Word, Note string }

// Known returns the words that the book and the catalogues hold for the field of a label; nil for a field that offers none.
func Known(s desk.State, label string) []Word {
	switch label {
	case "Sale":
		return knownSales(s)
	case "Make", "Model", "Trim":
		return knownVehicles(s, label)
	case "Brands on it":
		return brandWords()
	case "Title":
		return []Word{{"clear", ""}, {"rebuilt", ""}, {"salvage", ""}}
	case "Issued in", "Register in":
		return knownStates(s)
	case "Yard":
		return knownYards(s)
	}
	return nil
}

// words gathers words, each once in whatever case its letters are, in the order in which they come.
type words struct {
	there map[string]bool
	all   []Word
}

func (w *words) add(word, note string) {
	word = strings.TrimSpace(word)
	if key := strings.ToLower(word); word != "" && !w.there[key] {
		if w.there == nil {
			w.there = map[string]bool{}
		}
		w.there[key] = true
		w.all = append(w.all, Word{word, note})
	}
}

// sorted returns the words by the alphabet.
func (w *words) sorted() []Word {
	slices.SortFunc(w.all, func(a, b Word) int { return cmp.Compare(strings.ToLower(a.Word), strings.ToLower(b.Word)) })
	return w.all
}

// knownSales are the yards of the shop, and the sales of the lots, the latest first.
func knownSales(s desk.State) []Word {
	var w words
	for _, y := range s.Shop.Yards {
		w.add(y.Sale, "its fees are on the Bench")
	}
	for _, sale := range s.Sales() {
		w.add(sale.Name, "")
	}
	return w.all
}

// knownVehicles are the makes, models or trims of lots, builds and comparables; of the open lot's make and model, where it has them.
func knownVehicles(s desk.State, label string) []Word {
	var w words
	var made, model string
	if s.Open != nil {
		made, model = s.Open.Case.Lot.Make, s.Open.Case.Lot.Model
	}
	see := func(itsMake, itsModel, itsTrim string) {
		ofMake := made == "" || strings.EqualFold(itsMake, made)
		switch {
		case label == "Make":
			w.add(itsMake, "")
		case label == "Model" && ofMake:
			w.add(itsModel, "")
		case label == "Trim" && ofMake && (model == "" || strings.EqualFold(itsModel, model)):
			w.add(itsTrim, "")
		}
	}
	for _, e := range s.Entries {
		if s.Open == nil || e.ID != s.Open.ID { // what is half typed is no word yet
			see(e.Make, e.Model, e.Trim)
		}
	}
	for _, b := range s.Bought {
		see(b.Make, b.Model, b.Trim)
	}
	for _, c := range s.Shelf {
		see(c.Row.Make, c.Row.Model, c.Row.Trim)
	}
	if s.Open != nil {
		for _, r := range s.Open.Case.Resale.Rows {
			see(r.Make, r.Model, r.Trim)
		}
	}
	return w.sorted()
}

// brandWords are the standard vocabulary of title brands.
func brandWords() []Word {
	var w words
	for _, b := range lot.Brands {
		if b.Words != "Reserved" {
			w.add(b.Words, "")
		}
	}
	return w.sorted()
}

// knownStates are the jurisdictions that there are rules for, and the other states, by code.
func knownStates(s desk.State) []Word {
	var w words
	packs := s.Packs
	if s.Know != nil {
		packs = s.Know.Packs
	}
	for _, p := range packs {
		if p.ID != "*" {
			w.add(p.ID, p.Name)
		}
	}
	for _, state := range states {
		w.add(state.Word, state.Note)
	}
	return w.sorted()
}

// states are the fifty states and the federal district by their codes. Source: ISO 3166-2:US, from memory.
var states = []Word{
	{"US-AL", "Alabama"}, {"US-AK", "Alaska"}, {"US-AZ", "Arizona"}, {"US-AR", "Arkansas"}, {"US-CA", "California"},
	{"US-CO", "Colorado"}, {"US-CT", "Connecticut"}, {"US-DC", "District of Columbia"}, {"US-DE", "Delaware"},
	{"US-FL", "Florida"}, {"US-GA", "Georgia"}, {"US-HI", "Hawaii"}, {"US-ID", "Idaho"}, {"US-IL", "Illinois"},
	{"US-IN", "Indiana"}, {"US-IA", "Iowa"}, {"US-KS", "Kansas"}, {"US-KY", "Kentucky"}, {"US-LA", "Louisiana"},
	{"US-ME", "Maine"}, {"US-MD", "Maryland"}, {"US-MA", "Massachusetts"}, {"US-MI", "Michigan"}, {"US-MN", "Minnesota"},
	{"US-MS", "Mississippi"}, {"US-MO", "Missouri"}, {"US-MT", "Montana"}, {"US-NE", "Nebraska"}, {"US-NV", "Nevada"},
	{"US-NH", "New Hampshire"}, {"US-NJ", "New Jersey"}, {"US-NM", "New Mexico"}, {"US-NY", "New York"},
	{"US-NC", "North Carolina"}, {"US-ND", "North Dakota"}, {"US-OH", "Ohio"}, {"US-OK", "Oklahoma"}, {"US-OR", "Oregon"},
	{"US-PA", "Pennsylvania"}, {"US-RI", "Rhode Island"}, {"US-SC", "South Carolina"}, {"US-SD", "South Dakota"},
	{"US-TN", "Tennessee"}, {"US-TX", "Texas"}, {"US-UT", "Utah"}, {"US-VT", "Vermont"}, {"US-VA", "Virginia"},
	{"US-WA", "Washington"}, {"US-WV", "West Virginia"}, {"US-WI", "Wisconsin"}, {"US-WY", "Wyoming"},
}

// knownYards are those that were asked for parts of the open lot.
func knownYards(s desk.State) []Word {
	var w words
	if s.Open == nil {
		return nil
	}
	for _, line := range s.Open.Case.Repair.Lines {
		for _, part := range line.Parts {
			for _, option := range part.Options {
				if option.Quote != nil {
					w.add(option.Quote.Yard, option.Quote.Phone)
				}
			}
		}
	}
	return w.sorted()
}
