package desk_test

import (
	"testing"

	"walkline/ui/desk"
)

// What a step takes back of one lot says nothing of another that was opened while it was being taken back.
func TestAnUndoThatEndsOnAnotherLotLeavesItsListing(t *testing.T) {
	u := newUser(t)
	other := u.add(sound("14"))[0]
	u.newLot()
	u.well(desk.FillIn(sold))
	rest, err := u.Ahead(t.Context(), u.s, desk.Undo())
	if err != nil {
		t.Fatal(err)
	}
	u.well(desk.OpenLot(other), desk.FillIn(sold))
	if u.s.Open.Listed == nil {
		t.Fatal("nothing is said of the listing of the other lot")
	}
	if u.well(rest); u.s.Open.ID != other || u.s.Open.Listed == nil {
		t.Errorf("lot %d in sight, its listing %+v", u.s.Open.ID, u.s.Open.Listed)
	}
}

// An undo of the Board that comes to its end on Live does not change the lot that is called there.
func TestAnUndoOfTheBoardThatEndsOnLiveLeavesTheLot(t *testing.T) {
	u := newUser(t)
	ids := u.add(sound("14"), sound("27"))
	u.well(desk.Go(desk.Board), desk.ArchiveLots(true, ids[1]))
	rest, err := u.Ahead(t.Context(), u.s, desk.Undo())
	if err != nil {
		t.Fatal(err)
	}
	u.well(desk.OpenLot(ids[0]), desk.Go(desk.Live))
	if u.well(rest); u.s.Open.ID != ids[0] {
		t.Errorf("lot %d is called", u.s.Open.ID)
	}
}
