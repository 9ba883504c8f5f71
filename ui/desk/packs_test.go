package desk_test

import (
	"strings"
	"testing"

	"walkline/ui/desk"
	"walkline/valuation/checks"
	"walkline/valuation/invoice"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/prob"
)

const harrowPack = `{"format":"walkline-jurisdiction/1","id":"US-XX","name":"Harrow","currency":"USD",
	"documents":[{"text":"The blue form.","citation":"","status":"from memory"}]}`

func TestAJurisdictionIsAddedKeptAndTakenAway(t *testing.T) {
	d, b := newDesk()
	s := d.NewLot(t.Context(), d.Load(t.Context()))
	before := s.Open.Revision
	s, faults := d.AddPack(t.Context(), s, []byte(harrowPack))
	if len(faults) > 0 || s.Trouble != "" || len(s.Packs) != 1 || s.Open.Revision == before || s.Open.Fresh {
		t.Fatalf("%v %q %+v", faults, s.Trouble, s.Packs)
	}
	if !strings.HasSuffix(s.Notice, " is among the jurisdictions.") {
		t.Errorf("added without a word: %q", s.Notice)
	}
	if s, _ = d.AddPack(t.Context(), s, []byte(strings.Replace(harrowPack, "blue", "red", 1))); len(s.Packs) != 1 {
		t.Errorf("the same id twice: %d packs", len(s.Packs))
	}
	again, _ := newDesk()
	again.Book = b
	after := again.Load(t.Context())
	if len(after.Packs) != 1 || after.Packs[0].Documents[0].Text != "The red form." {
		t.Errorf("after a start: %+v", after.Packs)
	}
	if s = d.RemovePack(t.Context(), s, "US-XX"); len(s.Packs) != 0 {
		t.Errorf("removed: %+v", s.Packs)
	}
}

func TestAFaultyJurisdictionIsRefusedWithItsFaults(t *testing.T) {
	d, _ := newDesk()
	s, faults := d.AddPack(t.Context(), d.Load(t.Context()), []byte(strings.Replace(harrowPack, "US-XX", "Harrow Flats", 1)))
	if len(faults) != 1 || faults[0].Key != "id" || len(s.Packs) != 0 || !strings.Contains(s.Trouble, "US-MI") {
		t.Errorf("%v %q", faults, s.Trouble)
	}
}

// A lot is valued with the user's jurisdictions as well as the program's, the user's first.
func TestALotIsValuedWithTheUsersJurisdiction(t *testing.T) {
	d, _ := newDesk()
	d.Know.Packs = []checks.Pack{{ID: "US-XX", Name: "Shipped"}, {ID: "*", Name: "Anywhere"}}
	s, _ := d.AddPack(t.Context(), d.Load(t.Context()), []byte(harrowPack))
	c := d.Starter
	c.ValuedOn, c.Run.Scenarios = "2026-11-20", 256
	c.Resale.Guess = &prob.Three{Low: 8000, Likely: 9000, High: 10000}
	c.Buying.BidSteps = []invoice.Step{{Step: 2500}}
	least := money.Amount(100000)
	c.Rules.MinProfit = &least
	c.Lot.Title = lot.Title{RegisterIn: "us-xx"}
	v, err := d.Value(c)
	if err != nil {
		t.Fatal(err)
	}
	for _, i := range v.Answer.Checklist {
		if i.Text == "The blue form." {
			return
		}
	}
	t.Errorf("the list of %s is not on the checklist: %+v", s.Packs[0].Name, v.Answer.Checklist)
}

func TestSoldInTwelveMonths(t *testing.T) {
	d, _ := newDesk()
	s := d.NewLot(t.Context(), d.Load(t.Context()))
	if s.Open.Standing != (desk.Standing{}) {
		t.Errorf("%+v", s.Open.Standing)
	}
	n := 3
	s = d.SetSold(t.Context(), s, &n)
	if s.Trouble != "" || s.Open.Standing.Stated == nil || *s.Open.Standing.Stated != 3 {
		t.Errorf("%q %+v", s.Trouble, s.Open.Standing)
	}
	s = d.SetSold(t.Context(), s, nil)
	if s.Open.Standing.Stated != nil {
		t.Error("not taken back")
	}
}
