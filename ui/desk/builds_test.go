package desk_test

import (
	"context"
	"errors"
	"slices"
	"strings"
	"testing"

	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/build"
	"walkline/valuation/invoice"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

func (b *book) Builds(context.Context) ([]desk.Bought, error) {
	var list []desk.Bought
	for _, e := range b.entries {
		if e.State == lot.Won || e.State == lot.Lost {
			x := desk.Bought{ID: e.ID, State: e.State, Currency: e.Currency, Build: b.came[e.ID].Clone()}
			if p, ok := b.said[e.ID]; ok {
				x.Foretold = &p
			}
			list = append(list, x)
		}
	}
	return list, b.broken
}

func (b *book) Build(_ context.Context, id int64) (build.Build, error) {
	return b.came[id].Clone(), b.broken
}

func (b *book) SaveBuild(_ context.Context, id int64, label string, came build.Build) error {
	if b.broken != nil {
		return b.broken
	}
	b.steps[id] = append(b.steps[id][:b.at[id]], step{label, b.cases[id], b.cases[id], b.came[id], came.Clone()})
	b.at[id]++
	b.came[id] = came.Clone()
	return nil
}

func (b *book) AddPast(ctx context.Context, list []desk.Past) (desk.Counts, error) {
	for _, p := range list {
		id, err := b.Add(ctx, p.Case)
		if err != nil {
			return desk.Counts{}, err
		}
		b.came[id] = p.Build
		b.entries[b.place(id)].State = lot.Won
	}
	return desk.Counts{New: len(list)}, b.broken
}

// gate is a case whose sale charges a gate fee of 75.
func gate() valuation.Case {
	c := valuation.Defaults()
	c.Currency = "USD"
	c.Buying.Fixed = []invoice.Fixed{{Name: "Gate", Amount: 7500}}
	c.Lot.SaleDate = "2026-11-01"
	return c
}

// won returns a desk with one lot that was won, its build open.
func won(t *testing.T) (*desk.Desk, *book, desk.State) {
	t.Helper()
	d, b := newDesk()
	id, err := b.Add(t.Context(), gate())
	if err != nil {
		t.Fatal(err)
	}
	s := d.SoldAt(t.Context(), d.Load(t.Context()), id, lot.Won, 420000)
	s = d.OpenBuild(t.Context(), d.Go(t.Context(), s, desk.Builds), id)
	if s.Trouble != "" || s.Build == nil {
		t.Fatal(s.Trouble, s.Build)
	}
	return d, b, s
}

func TestAWonLotBecomesABuild(t *testing.T) {
	_, _, s := won(t)
	b := s.Build.Build
	if b.Outcome != build.Open || *b.Hammer != 420000 || b.Dates.Bought != "2026-11-01" || !slices.Equal(b.Charges, []build.Charge{{Name: "Gate", Amount: 7500}}) {
		t.Errorf("%+v", b)
	}
	if s.Bought[0].Build.Dates.Bought != b.Dates.Bought || !s.Bought[0].Ours() {
		t.Errorf("%+v", s.Bought)
	}
}

func TestALostLotKeepsItsHammerPriceAndNothingElse(t *testing.T) {
	d, b := newDesk()
	id, _ := b.Add(t.Context(), gate())
	s := d.SoldAt(t.Context(), d.Load(t.Context()), id, lot.Lost, 510000)
	if s.Trouble != "" || s.Entries[0].State != lot.Lost {
		t.Fatal(s.Trouble, s.Entries)
	}
	want := money.Amount(510000)
	if got := b.came[id]; *got.Hammer != want || got.Outcome != "" || got.Dates.Bought != "" || len(got.Charges) > 0 {
		t.Errorf("%+v", got)
	}
	if s = d.Go(t.Context(), s, desk.Builds); s.Bought[0].Ours() {
		t.Error("a lost lot is ours")
	}
}

func TestEditsOfABuildAreSavedAndUndone(t *testing.T) {
	d, b, s := won(t)
	ctx := t.Context()
	s = d.EditBuild(ctx, s, "bill", func(b *build.Build) {
		b.Receipts = append(b.Receipts, build.Receipt{Kind: "part", What: "Hood", Amount: 18000})
	})
	if s.Trouble != "" || b.came[1].Spent() != 18000 || s.Bought[0].Build.Spent() != 18000 || s.Reach().Undo != "bill" || s.Build.Fresh {
		t.Fatal(s.Trouble, b.came[1], s.Reach())
	}
	revision := s.Build.Revision
	if s = d.Undo(ctx, s); s.Notice != "Undone: bill." || s.Build.Build.Spent() != 0 || s.Build.Revision <= revision {
		t.Fatalf("%q %q %+v", s.Notice, s.Trouble, s.Build.Build)
	}
	if s = d.Redo(ctx, s); s.Build.Build.Spent() != 18000 {
		t.Fatalf("%q %+v", s.Trouble, s.Build.Build)
	}
	if s = d.CloseBuild(ctx, s); s.Build != nil || s.Bought[0].Build.Spent() != 18000 {
		t.Errorf("%+v", s.Bought)
	}
	if s = d.EditBuild(ctx, s, "bill", func(*build.Build) { t.Error("edited with no build open") }); s.Trouble != "" {
		t.Error(s.Trouble)
	}
}

func TestWhatCannotBeOfABuildIsNotSaved(t *testing.T) {
	d, b, s := won(t)
	s = d.EditBuild(t.Context(), s, "day", func(b *build.Build) { b.Dates.Sold = "2020-01-01" })
	if !strings.Contains(s.Trouble, "Sold on 2020-01-01 comes before Bought") || b.came[1].Dates.Sold != "" {
		t.Errorf("%q %+v", s.Trouble, b.came[1])
	}
	b.broken = errors.New("full")
	if s = d.EditBuild(t.Context(), s, "note", func(b *build.Build) { b.Note = "n" }); !strings.Contains(s.Trouble, "full") || s.Build.Build.Note != "" {
		t.Errorf("%q %+v", s.Trouble, s.Build.Build)
	}
}

func TestTheInvoiceFollowsTheHammerPriceUntilItIsChangedByHand(t *testing.T) {
	d, _, s := won(t)
	at := func(a money.Amount) *money.Amount { return &a }
	s = d.EditBuild(t.Context(), s, "x", func(b *build.Build) { b.Charges = nil })
	s = d.SetHammer(t.Context(), s, at(500000))
	if *s.Build.Build.Hammer != 500000 || len(s.Build.Build.Charges) != 1 {
		t.Fatalf("%+v", s.Build.Build)
	}
	s = d.EditBuild(t.Context(), s, "charge", func(b *build.Build) { b.Charges[0].Amount = 8000 })
	if s = d.SetHammer(t.Context(), s, at(600000)); s.Build.Build.Charges[0].Amount != 8000 {
		t.Errorf("a charge entered by hand became %+v", s.Build.Build.Charges)
	}
	if s = d.SetHammer(t.Context(), s, nil); s.Build.Build.Hammer != nil {
		t.Error("the hammer price cannot be taken back")
	}
}

func TestAForecastOfAnOlderBuildIsDropped(t *testing.T) {
	d, _, s := won(t)
	old := s.Build.Revision
	s = d.EditBuild(t.Context(), s, "note", func(b *build.Build) { b.Note = "n" })
	f := valuation.Foresight{Currency: "USD"}
	if got := s.Foreseen(1, old, f, nil); got.Build.Forecast != nil {
		t.Error("an old forecast was shown")
	}
	if got := s.Foreseen(1, s.Build.Revision, f, nil); got.Build.Forecast == nil || !got.Build.Fresh {
		t.Error("the forecast was dropped")
	}
	_, err := d.Foresee(s.Build.Case, s.Build.Build)
	if err == nil || !strings.Contains(err.Error(), "worksheet has a fault") {
		t.Errorf("a case with faults was foreseen: %v", err)
	}
	if got := s.Foreseen(1, s.Build.Revision, f, err); got.Build.Problem == "" || got.Build.Forecast != nil {
		t.Errorf("%+v", got.Build)
	}
}
