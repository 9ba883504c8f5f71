package desk_test

import (
	"errors"
	"testing"

	"walkline/ui/desk"
)

const sold = "2019 Kettrick Pell, 45,000 miles"

// A listing that is read again with nothing new is no step: undo takes the first reading back, and its facts with it.
func TestAListingReadTwiceIsOneStep(t *testing.T) {
	u := newUser(t)
	u.newLot()
	u.well(desk.FillIn(sold), desk.FillIn(sold))
	u.well(desk.Undo())
	if o := u.s.Open; o.Listed != nil || o.Case.Lot.Make != "" {
		t.Errorf("taken back, the page shows %+v of a lot by %q", o.Listed, o.Case.Lot.Make)
	}
	u.well(desk.Redo())
	if o := u.s.Open; o.Listed == nil || len(o.Listed.Facts) == 0 || o.Case.Lot.Make != "Kettrick" {
		t.Errorf("done again, the page shows %+v of a lot by %q", o.Listed, o.Case.Lot.Make)
	}
}

// What is said of a listing stays while the first thing that is missing is shown.
func TestWhatAListingGaveStaysSaid(t *testing.T) {
	u := newUser(t)
	u.newLot()
	said := u.well(desk.FillIn(sold)).Notice
	if s := u.well(desk.Seek("damage").Quietly()); said == "" || s.Notice != said || s.Sought != "damage" {
		t.Errorf("%q, then %q", said, s.Notice)
	}
	u.kept.broken = errors.New("disk is full")
	wrong := u.do(desk.FillIn("2019 Kettrick Pell, GT trim, keys")).Trouble
	if s := u.do(desk.Seek("damage").Quietly()); wrong == "" || s.Trouble != wrong {
		t.Errorf("%q, then %q", wrong, s.Trouble)
	}
	u.kept.broken = nil
	if s := u.well(desk.Seek("damage")); s.Notice != "" {
		t.Errorf("a wish of its own leaves %q", s.Notice)
	}
}
