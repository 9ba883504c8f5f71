package desk_test

import (
	"strings"
	"testing"

	"walkline/ui/desk"
	"walkline/valuation/checks"
	"walkline/valuation/lot"
)

const harrowPack = `{"format":"walkline-jurisdiction/1","id":"US-XX","name":"Harrow","currency":"USD",
	"documents":[{"text":"The blue form.","citation":"","status":"from memory"}]}`

func TestAJurisdictionIsAddedKeptAndTakenAway(t *testing.T) {
	u := newUser(t)
	u.newLot()
	before := u.s.Open.Revision
	s := u.well(desk.AddPack([]byte(harrowPack)))
	if len(s.PackFaults) > 0 || len(s.Packs) != 1 || s.Open.Revision == before || s.Open.Fresh {
		t.Fatalf("%v %+v", s.PackFaults, s.Packs)
	}
	if !strings.HasSuffix(s.Notice, " is among the jurisdictions.") {
		t.Errorf("added without a word: %q", s.Notice)
	}
	if s = u.well(desk.AddPack([]byte(strings.Replace(harrowPack, "blue", "red", 1)))); len(s.Packs) != 1 {
		t.Errorf("the same id twice: %d packs", len(s.Packs))
	}
	if u.start(); len(u.s.Packs) != 1 || u.s.Packs[0].Documents[0].Text != "The red form." {
		t.Errorf("after a start: %+v", u.s.Packs)
	}
	if s = u.well(desk.RemovePack("US-XX")); len(s.Packs) != 0 {
		t.Errorf("removed: %+v", s.Packs)
	}
}

func TestAFaultyJurisdictionIsRefusedWithItsFaults(t *testing.T) {
	u := newUser(t)
	s := u.do(desk.AddPack([]byte(strings.Replace(harrowPack, "US-XX", "Harrow Flats", 1))))
	if len(s.PackFaults) != 1 || s.PackFaults[0].Key != "id" || len(s.Packs) != 0 || !strings.Contains(s.Trouble, "US-MI") {
		t.Errorf("%v %q", s.PackFaults, s.Trouble)
	}
	if err := u.kept.PutSetting(t.Context(), "jurisdictions",
		[]any{map[string]string{"currency": "USD", "id": "US-XX", "form": "?"}}); err != nil {
		t.Fatal(err)
	}
	if u.start(); !strings.Contains(u.s.Trouble, "US-XX") || len(u.s.Packs) != 0 {
		t.Errorf("one that cannot be read any more: %q", u.s.Trouble)
	}
}

// A lot is valued with the user's jurisdictions as well as the program's, the user's first.
func TestALotIsValuedWithTheUsersJurisdiction(t *testing.T) {
	u := newUser(t)
	u.Know.Packs = []checks.Pack{{ID: "US-XX", Name: "Shipped"}, {ID: "*", Name: "Anywhere"}}
	u.well(desk.AddPack([]byte(harrowPack)))
	c := sound("14")
	c.Lot.Title = lot.Title{RegisterIn: "us-xx"}
	v, err := u.Value(t.Context(), c)
	if err != nil {
		t.Fatal(err)
	}
	for _, i := range v.Answer.Checklist {
		if i.Text == "The blue form." {
			return
		}
	}
	t.Errorf("the list of %s is not on the checklist: %+v", u.s.Packs[0].Name, v.Answer.Checklist)
}

func TestSoldInTwelveMonths(t *testing.T) {
	u := newUser(t)
	u.newLot()
	if u.s.Open.Standing != (desk.Standing{}) {
		t.Errorf("%+v", u.s.Open.Standing)
	}
	n := 3
	s := u.well(desk.SetSold(&n))
	if s.Open.Standing.Stated == nil || *s.Open.Standing.Stated != 3 || s.Reach.Undo != "vehicles sold in twelve months" {
		t.Errorf("%+v %+v", s.Open.Standing, s.Reach)
	}
	if s = u.well(desk.SetSold(nil)); s.Open.Standing.Stated != nil {
		t.Error("not taken back")
	}
	if s = u.well(desk.Undo()); s.Open.Standing.Stated == nil || *s.Open.Standing.Stated != 3 {
		t.Errorf("undone: %+v", s.Open.Standing)
	}
}
