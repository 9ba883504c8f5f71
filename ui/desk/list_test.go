package desk_test

import (
	"context"
	"errors"
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	"walkline/ui/desk"
	"walkline/valuation/lot"
)

// enlist takes a run list of a sale in.
func (u *user) enlist(table, sale string) desk.Enlisted {
	u.t.Helper()
	sheet, err := u.OpenList(u.t.Context(), []byte(table), desk.Opening{})
	if err != nil {
		u.t.Fatal(err)
	}
	sheet.Stated.Sale, sheet.Stated.SaleDate = sale, "2026-11-28"
	e, err := u.Enlist(u.t.Context(), u.s, sheet)
	u.s = u.ListArrived(u.t.Context(), u.s, e, err)
	return e
}

const runList = "Lot,Year,Make,Model,Odometer (mi)\n14,2019,Ostrane,Pell,61200\n16,20x7,Ostrane,Pell,61200\n15,2017,Kettrick,Dunlin,98000\n"

func TestARunListIsTakenInOnceAndTakenBack(t *testing.T) {
	u := newUser(t)
	u.well(desk.EditShop("yard", func(shop *desk.Shop) {
		shop.Buying = fees(1000)
		shop.Yards = []desk.Yard{{Sale: "North yard", Buying: fees(2000)}}
	}))
	undone := u.s.Reach // the edit above, made on the Board
	e := u.enlist(runList, "North yard")
	if len(u.s.Entries) != 2 || len(e.Refused) != 1 || u.s.Notice != "3 rows read: 2 new, 0 the same, 0 changed, 1 refused." {
		t.Fatalf("%d lots, %q %q", len(u.s.Entries), u.s.Notice, u.s.Trouble)
	}
	if c := u.lot(u.s.Entries[0].ID).Case; c.Buying.Fixed[0].Amount != 2000 || c.ValuedOn != "2026-11-20" || c.Lot.Number != "14" {
		t.Errorf("the first lot is %+v", c)
	}
	if u.enlist(runList, "North yard"); len(u.s.Entries) != 2 || !strings.HasPrefix(u.s.Notice,
		"3 rows read: 0 new, 2 the same, 0 changed, 1 refused.") {
		t.Errorf("the same list again: %d lots, %q", len(u.s.Entries), u.s.Notice)
	}
	if s := u.well(desk.Undo()); len(s.Entries) != 0 || s.Notice != "Undone: run list." || s.Reach.Undo != undone.Undo {
		t.Errorf("taken back, %d lots, %q, %+v", len(s.Entries), s.Notice, s.Reach)
	}
	again, err := u.OpenList(t.Context(), []byte(runList), desk.Opening{})
	if err != nil || again.Stated.Sale != "North yard" || again.Stated.SaleDate != "" || len(again.Doubts) != 0 {
		t.Errorf("the next list with these columns: %+v, %v", again, err)
	}
	u.kept.broken = errors.New("the disk is full")
	if u.enlist(runList, "South yard"); !strings.Contains(u.s.Trouble, "the disk is full") {
		t.Errorf("%q", u.s.Trouble)
	}
}

// What a list says beside the facts is kept with the lot and read on the Board; a later list stands above an earlier one, what it leaves
// out stays, and nothing is priced or marked from it.
func TestWhatTheListSaysIsKeptWithTheLot(t *testing.T) {
	u := newUser(t)
	u.enlist("Lot,Make,Model,Damage,Value before (USD),Repair estimate (USD),Note\n"+
		"14,Ostrane,Pell,front left,\"12,500\",4200,keys in office\n15,Kettrick,Dunlin,,,,\n", "North yard")
	if len(u.s.Entries) != 2 {
		t.Fatalf("%d lots, %q", len(u.s.Entries), u.s.Trouble)
	}
	first, second := u.lot(u.s.Entries[0].ID).Case, u.lot(u.s.Entries[1].ID).Case
	says := first.Lot.Listed
	if says == nil || !slices.Equal(says.Areas, []string{"11"}) || *says.ValueBefore != 12500 || *says.RepairEstimate != 4200 ||
		says.Currency != "USD" || says.Note != "keys in office" || says.RunOrder != 1 {
		t.Fatalf("the first lot has %+v", says)
	}
	if second.Lot.Listed.Said() || second.Lot.Listed.RunOrder != 2 || len(first.Damage) > 0 || first.Resale.Guess != nil {
		t.Errorf("the second has %+v; the first is marked %v", second.Lot.Listed, first.Damage)
	}
	if e := u.s.Entries[0]; !reflect.DeepEqual(e.Listed, says) {
		t.Errorf("the Board has %+v", e.Listed)
	}
	u.enlist("Lot,Make,Model,Repair estimate (USD)\n14,Ostrane,Pell,5100\n", "North yard")
	if now := u.lot(u.s.Entries[0].ID).Case.Lot.Listed; *now.RepairEstimate != 5100 || *now.ValueBefore != 12500 || now.Note == "" {
		t.Errorf("after a later list: %+v", now)
	}
	u.well(desk.Undo())
	if now := u.lot(u.s.Entries[0].ID).Case.Lot.Listed; !reflect.DeepEqual(now, says) {
		t.Errorf("taken back: %+v", now)
	}
}

// A long table says how far its reading is, each time that it is read anew and when it is taken in, and ends where it is told to: then
// nothing is kept.
func TestALongReadingIsWatchedAndEnded(t *testing.T) {
	u := newUser(t)
	table := []byte("Lot,Make,Model,Odometer (mi)\n")
	for n := range 10000 {
		table = fmt.Appendf(table, "%d,Ostrane,Pell,%d\n", n+1, 40000+n)
	}
	sheet, err := u.OpenList(t.Context(), table, desk.Opening{})
	if err != nil {
		t.Fatal(err)
	}
	for name, read := range map[string]func(context.Context) error{
		"a preview": func(ctx context.Context) error { _, err := desk.Foreseen(ctx, u.Lister, sheet); return err },
		"taking in": func(ctx context.Context) error { _, err := u.Enlist(ctx, u.s, sheet); return err },
	} {
		ctx, stop := context.WithCancel(t.Context())
		var told []float64
		err := read(desk.Watched(ctx, func(done float64) {
			if told = append(told, done); len(told) == 3 {
				stop()
			}
		}))
		if err == nil || len(told) != 3 || told[2] <= told[1] || told[1] <= told[0] {
			t.Errorf("%s: %v, told %v", name, err, told)
		}
		stop()
	}
	if all, err := u.Book.Entries(t.Context()); err != nil || len(all) != 0 {
		t.Errorf("%d lots are kept, %v", len(all), err)
	}
	sheet.Stated.Sale = "North yard"
	if p, err := desk.Foreseen(t.Context(), u.Lister, sheet); err != nil || p.Rows != 10000 {
		t.Errorf("read whole afterwards: %d rows, %v", p.Rows, err)
	}
}

// A result list is a list with hammer prices: lots in the book take them by sale and number, others are kept in the archive, all in one
// step, and every one that can be valued teaches what lots go for.
func TestAResultListTeachesWhatLotsGoFor(t *testing.T) {
	u := newUser(t)
	u.well(desk.EditShop("terms", func(s *desk.Shop) { s.Buying, s.Rules = sound("").Buying, sound("").Rules }))
	u.enlist("Lot,Year,Make,Model,Value before (USD)\n14,2019,Ostrane,Pell,12500\n15,2019,Ostrane,Pell,12500\n"+
		"16,2019,Ostrane,Pell,\n", "North yard")
	u.well(desk.MarkLots(lot.Won, u.s.Entries[1].ID))
	const results = "Lot,Year,Make,Model,Value before (USD),Damage,Winning bid\n14,2019,Ostrane,Pell,12500,front,3900\n" +
		"15,2019,Ostrane,Pell,12500,,4100\n16,2019,Ostrane,Pell,,,2000\n40,2018,Kettrick,Dunlin,9000,rear,2500\n"
	e := u.enlist(results, "North yard")
	if want := "4 rows read: 1 new, 0 the same, 3 changed, 0 refused. 4 hammer prices kept. 1 of lots that were not on the Board are in the " +
		"archive. 1 teach nothing yet: the list has no value for the lot, and no comparables fit."; u.s.Notice != want {
		t.Errorf("%q %q, left %q", u.s.Notice, u.s.Trouble, e.Left)
	}
	states := map[string]lot.State{}
	for _, x := range u.s.Entries {
		states[x.Number] = x.State
		if l := u.lot(x.ID); l.Build.Hammer == nil || x.Archived != (x.Number == "40") {
			t.Errorf("lot %s: %v, archived %v", x.Number, l.Build.Hammer, x.Archived)
		}
	}
	if want := map[string]lot.State{"14": lot.Lost, "15": lot.Won, "16": lot.Lost, "40": lot.Lost}; !reflect.DeepEqual(states, want) {
		t.Errorf("%v", states)
	}
	learned, err := u.Results(t.Context())
	prices := map[float64]bool{}
	for _, r := range learned {
		prices[r.Price] = r.Finished > 0
	}
	if err != nil || !prices[3900] || !prices[2500] || prices[2000] {
		t.Errorf("learned from %+v, %v", learned, err)
	}
	if u.enlist(results, "North yard"); !strings.HasPrefix(u.s.Notice, "4 rows read: 0 new, 4 the same, 0 changed, 0 refused.") {
		t.Errorf("the same list again: %q", u.s.Notice)
	}
	u.enlist(strings.Replace(results, "3900", "3950", 1), "North yard")
	if !strings.Contains(u.s.Notice, "lot 14 went for USD 3,900 here, USD 3,950 on the list") {
		t.Errorf("another price: %q", u.s.Notice)
	}
	u.well(desk.Undo())
	if learned, _ := u.Results(t.Context()); len(u.s.Entries) != 3 || len(learned) != 0 || u.s.Entries[0].State != lot.ToLookAt {
		t.Errorf("taken back: %d lots, %+v", len(u.s.Entries), learned)
	}
}

// A run list is taken back on the Board after one of its lots was won: that one stays and is named; with nothing else left the undo is
// refused by name.
func TestAnUndoneListSaysWhichLotsStay(t *testing.T) {
	u := newUser(t)
	u.enlist(runList, "North yard")
	id := u.s.Entries[0].ID
	u.well(desk.OpenLot(id))
	u.well(desk.MarkLots(lot.Won, id))
	u.well(desk.Go(desk.Board))
	if s := u.well(desk.Undo()); len(s.Entries) != 1 || s.Notice != "Undone: run list. Still here, because changed since: lot 14 (won)." {
		t.Fatalf("%d lots, %q %q", len(s.Entries), s.Notice, s.Trouble)
	}
	if s := u.well(desk.Redo()); len(s.Entries) != 2 || u.lot(id).State != lot.Won {
		t.Errorf("done again: %d lots, lot 14 is %s", len(s.Entries), u.lot(id).State)
	}
	u.well(desk.MarkLots(lot.Bid, u.s.Entries[1].ID))
	u.well(desk.Undo())
	u.well(desk.MoveLots("East", "2026-11-30", u.s.Entries[1].ID))
	u.well(desk.Undo())
	u.well(desk.OpenLot(u.s.Entries[1].ID))
	u.well(desk.MarkLots(lot.Bid, u.s.Open.ID))
	u.well(desk.Go(desk.Board))
	s := u.do(desk.Undo())
	const want = "Nothing was changed. Still here, because changed since: lot 15 (bid). To take a lot off all the same, use Lot > Remove."
	if s.Trouble != want || len(s.Entries) != 2 {
		t.Errorf("%d lots, %q", len(s.Entries), s.Trouble)
	}
}
