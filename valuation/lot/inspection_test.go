package lot_test

import (
	"testing"

	"walkline/valuation/lot"
)

// Only a title that is still salvage waits for the rebuilt inspection (common practice, no source; brands by the words of AAMVA D20 as
// published in NIEM 6.0); what a title does not tell stays open.
func TestInspectionByTheTitle(t *testing.T) {
	tx := func(document string, brands ...string) lot.Title {
		return lot.Title{IssuedIn: "US-TX", RegisterIn: "us-tx", Document: document, Brands: brands}
	}
	away := func(t lot.Title) lot.Title { t.IssuedIn = "US-OK"; return t }
	for _, x := range []struct {
		title lot.Title
		want  lot.Inspection
	}{
		{tx("salvage"), lot.Uninspected}, {away(tx("Salvage Certificate")), lot.Uninspected}, {tx("11"), lot.Uninspected},
		{tx("clear", "salvage"), lot.Uninspected}, {tx("clear"), lot.Inspected}, {away(tx("Clean Title")), lot.Inspected},
		{lot.Title{Document: "clear"}, lot.Inspected}, {tx("clear", "prior taxi"), lot.Inspected}, {tx("clear", "not actual"), lot.Inspected},
		{tx("rebuilt"), lot.Inspected}, {tx("rebuilt salvage"), lot.Inspected}, {tx("rebuilt", "salvage"), lot.Inspected},
		{tx("rebuilt", "flood damage"), lot.Inspected}, {away(tx("rebuilt")), lot.InspectionOpen}, {away(tx("rebuilt", "salvage")),
			lot.InspectionOpen},
		{lot.Title{Document: "rebuilt"}, lot.InspectionOpen}, {tx("clear", "flood damage"), lot.InspectionOpen},
		{tx("flood damage"), lot.InspectionOpen}, {tx(""), lot.InspectionOpen}, {tx("", "prior taxi"), lot.InspectionOpen},
		{tx(lot.NotYetKnown), lot.InspectionOpen}, {tx("blue form"), lot.InspectionOpen}, {tx("bill of sale"), lot.InspectionOpen},
		{tx("clear", "odd brand"), lot.InspectionOpen},
	} {
		if got := x.title.Inspection(); got != x.want {
			t.Errorf("%+v: %d, want %d", x.title, got, x.want)
		}
	}
}
