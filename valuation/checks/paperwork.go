package checks

import (
	"fmt"
	"strings"

	"walkline/valuation/lot"
)

// The places of a paper item's list.
const (
	Bring    = "bring"    // to the sale
	Keep     = "keep"     // from the day of purchase, for the rebuilt inspection
	Standing = "standing" // the seller's own
)

// listed are on every lot's lists (common practice, no source).
var listed = []Item{
	{ID: "bring_paper", Where: Bring, Text: "The sale's list, this list, proof of who you are, bidder's papers, means of payment, resale " +
		"certificate if you have one."},
	{ID: "bring_tools", Where: Bring, Text: "Flashlight, magnet, tape, coin, gloves, code reader, mirror, white cloth, charged telephone " +
		"for photos."},
	{ID: "bring_number", Where: Bring, Text: "The telephone number and hours of the title office, and of whoever hauls it home."},
	{ID: "keep_before", Where: Keep, Why: "They cannot be taken afterwards.",
		Text: "Photos before any work: front left corner, front right, rear right, rear left, each damaged area far and near, VIN plate, " +
			"odometer, engine bay, cabin with any deployed airbag."},
	{ID: "keep_during", Where: Keep, Why: "Later nobody sees what lies under skin and paint.",
		Text: "Photos of the open repair: structure, welds, restraints, from the same places."},
	{ID: "keep_after", Where: Keep, Text: "Photos of the finished vehicle from the same four corners and places."},
	{ID: "keep_donor", Where: Keep, Why: "A part without a paper may keep the vehicle off the road.",
		Text: "For every used part a bill of sale with seller, day, price and the donor's VIN; a receipt for every new one."},
}

// paperwork returns the lists of paper: what to bring, what to keep, and the seller's standing, from the packs.
func paperwork(s Subject) []Item {
	items := []Item{}
	for _, i := range listed {
		i.Kind, i.Tick = "paper", true
		items = append(items, i)
	}
	own, documents := nearest(s.Packs, func(p Pack) []Row { return p.Documents })
	items = append(items, rowItems(own, "keep", Keep, documents)...)
	from, fees := nearest(s.Packs, func(p Pack) []Charge { return p.Fees })
	for n, c := range fees {
		items = append(items, Item{ID: rowID("fee", from, n), Kind: "paper", Where: Keep, Tick: true, Text: chargeWords(c, from.Currency),
			Source: c.Words()})
	}
	if _, l := Private(s.Packs); l != nil {
		items = append(items, Item{ID: "standing_private", Kind: "paper", Where: Standing, Tick: true, Most: l.Most, Source: l.Words(),
			Text: fmt.Sprintf("How many vehicles have you sold or offered in the last %d months? One more than %d counts as dealing under this "+
				"rule. It grants nothing below that: ask the agency what your state asks.", l.Months, l.Most), Why: l.Text})
	}
	tests, inspections := nearest(s.Packs, func(p Pack) []Row { return p.Inspections })
	items = append(items, rowItems(tests, "inspection", Standing, inspections)...)
	for _, p := range s.Packs {
		items = append(items, rowItems(p, "question", Standing, p.Questions)...)
	}
	return items
}

// Private returns the nearest limit from which a seller counts as a dealer, and the pack that it is from; nil where none
// is known.
func Private(packs []Pack) (Pack, *Limit) {
	for _, p := range packs {
		if p.PrivateSales != nil {
			return p, p.PrivateSales
		}
	}
	return Pack{}, nil
}

func rowItems(p Pack, what, where string, rows []Row) []Item {
	var items []Item
	for n, r := range rows {
		items = append(items, Item{ID: rowID(what, p, n), Kind: "paper", Where: where, Tick: true, Text: r.Text,
			Source: p.place() + r.Words()})
	}
	return items
}

// place names where the rows hold, before what they rest on; empty for those that hold anywhere.
func (p Pack) place() string {
	if p.ID == Anywhere {
		return ""
	}
	return p.Name + ": "
}

func rowID(what string, p Pack, n int) string {
	name := strings.ToLower(strings.ReplaceAll(p.ID, "-", "_"))
	if p.ID == Anywhere {
		name = "anywhere"
	}
	return fmt.Sprintf("%s_%s_%d", what, name, n+1)
}

// chargeWords says a fee and its wait.
func chargeWords(c Charge, currency string) string {
	words := c.Name
	if c.Amount != nil {
		words += " " + shown(*c.Amount, currency)
	}
	if c.Days != nil {
		words += fmt.Sprintf(", %g to %g days", c.Days.Low, c.Days.High)
	}
	return words + "."
}

// jurisdiction returns what is to be said of the packs themselves: none chosen, none there, or a title that may not be
// rebuilt there.
func jurisdiction(s Subject) []Item {
	code := strings.TrimSpace(s.Lot.Title.RegisterIn)
	switch {
	case len(s.Packs) == 0:
		return nil
	case code == "":
		return []Item{{ID: "register_unknown", Kind: "title", State: "open", Fixed: true, Minutes: 1,
			Text: "Enter where it will be registered (Facts, such as US-MI).",
			Why:  "What a salvage title allows and what the rebuilt inspection asks for differ from place to place."}}
	case !strings.EqualFold(s.Packs[0].ID, code):
		return []Item{{ID: "pack_missing", Kind: "title", State: "open", Fixed: true, Minutes: 10,
			Text: fmt.Sprintf("There is no list for %s: a general one stands in. Ask the agency what it asks for.", code),
			Why:  "A list of your own can be added on the Bench."}}
	}
	return rebuildStops(s.Lot.Title, s.Packs[0])
}

// rebuildStops returns a stop for each word of the title that the pack says may not be rebuilt.
func rebuildStops(t lot.Title, p Pack) []Item {
	var items []Item
	for _, word := range append([]string{t.Document}, t.Brands...) {
		for _, r := range p.Rebuild {
			if !r.Allowed && sameTitle(word, r.Title) && lot.ReadPaper(word) != lot.Dead {
				items = append(items, Item{ID: "stop_pack", Kind: "stop", State: "bad", Fixed: true, Source: r.Words(),
					Text: fmt.Sprintf("The title reads %q, and %s does not let such a vehicle be rebuilt: check with the agency.", word, p.Name),
					Why:  r.Text + " " + r.Words()})
			}
		}
	}
	return items
}

// sameTitle compares two words for a title, as the vocabulary knows them or as they are written.
func sameTitle(a, b string) bool {
	x, known := lot.BrandOf(a)
	y, too := lot.BrandOf(b)
	return known && too && x == y || plainTitle(a) == plainTitle(b) && plainTitle(a) != ""
}
