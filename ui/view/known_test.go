package view

import (
	"slices"
	"testing"

	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/valuation/lot"
	"walkline/valuation/resale"
)

func TestKnownWords(t *testing.T) {
	s := desk.State{Entries: []book.Entry{
		{ID: 1, Sale: "Tern Landing", SaleDate: "2026-11-20", Make: "Ostrane", Model: "Pell", Trim: "Estate"},
		{ID: 2, Sale: "Harrow Flats", SaleDate: "2026-11-27", Make: "Corvid", Model: "Sallow"},
		{ID: 3, Sale: "harrow flats", SaleDate: "2026-11-30", Make: "Ostrane", Model: "Quill"}, {ID: 4, Make: "Ost"}}}
	s.Shop.Yards = []desk.Yard{{Sale: "Weir Street"}}
	s.Open = &desk.Open{ID: 4}
	s.Open.Case.Lot = lot.Lot{Make: "Ost"}
	for _, c := range []struct {
		label, typed string
		want         []string
	}{
		{"Sale", "Ost", []string{"Weir Street", "harrow flats", "Tern Landing"}},
		{"Make", "Ost", []string{"Corvid", "Ostrane"}},
		{"Model", "ostrane", []string{"Pell", "Quill"}},
		{"Model", "Marl", nil}, {"Trim", "Ostrane", []string{"Estate"}}, {"VIN", "", nil},
	} {
		s.Open.Case.Lot.Make = c.typed
		if got := wordsOf(Known(s, c.label)); !slices.Equal(got, c.want) {
			t.Errorf("%s, make %q: %q, want %q", c.label, c.typed, got, c.want)
		}
	}
	s.Open.Case.Lot.Make, s.Open.Case.Resale.Rows = "", []resale.Row{{Make: "Fenlow", Model: "Marl"}}
	if got := wordsOf(Known(s, "Model")); !slices.Contains(got, "Marl") {
		t.Errorf("the comparables' models are not offered: %q", got)
	}
}

// Source of the codes: ISO 3166-2:US has 50 states and one district.
func TestKnownStatesAndBrands(t *testing.T) {
	got := Known(desk.State{}, "Register in")
	if len(got) != 51 || !slices.Contains(got, Word{"US-MI", "Michigan"}) {
		t.Errorf("%d states: %v", len(got), got)
	}
	brands := wordsOf(Known(desk.State{}, "Brands on it"))
	for _, word := range brands {
		if _, known := lot.BrandOf(word); !known {
			t.Errorf("%q is no brand", word)
		}
	}
	if !slices.Contains(brands, "Flood damage") || slices.Contains(brands, "Reserved") {
		t.Errorf("brands: %q", brands)
	}
}

func wordsOf(words []Word) []string {
	var all []string
	for _, w := range words {
		all = append(all, w.Word)
	}
	return all
}
