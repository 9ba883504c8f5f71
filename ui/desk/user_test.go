package desk_test

import (
	"context"
	"testing"

	"walkline/cmd/wire/trial"
	"walkline/store"
	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/bid"
	"walkline/valuation/invoice"
	"walkline/valuation/money"
	"walkline/valuation/prob"
)

// failing is a store whose writes, and readings of the Board, fail with broken while that is set.
type failing struct {
	*store.Store
	broken error
}

func (f *failing) Do(ctx context.Context, s book.Step) (book.Done, error) {
	if f.broken != nil {
		return book.Done{}, f.broken
	}
	return f.Store.Do(ctx, s)
}

func (f *failing) Undo(ctx context.Context, of book.Subject) (book.Done, error) {
	if f.broken != nil {
		return book.Done{}, f.broken
	}
	return f.Store.Undo(ctx, of)
}

func (f *failing) Entries(ctx context.Context) ([]book.Entry, error) {
	if f.broken != nil {
		return nil, f.broken
	}
	return f.Store.Entries(ctx)
}

func (f *failing) KeepFile(hash, kind string, data []byte) error {
	if f.broken != nil {
		return f.broken
	}
	return f.Store.KeepFile(hash, kind, data)
}

// user is someone at a desk over a store in a file of its own, and the state that is shown.
type user struct {
	*desk.Desk
	t    *testing.T
	kept *failing
	s    desk.State
}

// newUser returns a user before an empty Board. The catalogues are empty, the starter's terms nobody's but its currency.
func newUser(t *testing.T) *user {
	t.Helper()
	kept := &failing{Store: trial.Store(t)}
	u := &user{Desk: trial.Desk(kept), t: t, kept: kept}
	u.start()
	return u
}

// start starts the program again: all that is shown is read from the store.
func (u *user) start() { u.s = u.Load(u.t.Context()) }

// do does actions one after the other.
func (u *user) do(actions ...desk.Action) desk.State {
	for _, a := range actions {
		u.s = u.Do(u.t.Context(), u.s, a)
	}
	return u.s
}

// well does actions that must be kept.
func (u *user) well(actions ...desk.Action) desk.State {
	u.t.Helper()
	for _, a := range actions {
		if u.do(a); u.s.Trouble != "" || u.s.Clash != nil {
			u.t.Fatalf("%q: %s %+v", a.Words(), u.s.Trouble, u.s.Clash)
		}
	}
	return u.s
}

// add keeps lots without the user's doing, and returns their ids.
func (u *user) add(cases ...valuation.Case) []int64 {
	u.t.Helper()
	var lots []book.New
	for _, c := range cases {
		lots = append(lots, book.New{Case: c})
	}
	ids := trial.Add(u.t, u.kept, lots...)
	u.start()
	return ids
}

// lot returns what is kept of a lot.
func (u *user) lot(id int64) book.Lot {
	u.t.Helper()
	l, err := u.kept.Lot(u.t.Context(), id)
	if err != nil {
		u.t.Fatal(err)
	}
	return l
}

// frozen returns how many lots have a frozen prediction.
func (u *user) frozen() int {
	u.t.Helper()
	cases, doubts, err := u.kept.FrozenCases(u.t.Context())
	if err != nil || len(doubts) > 0 {
		u.t.Fatal(doubts, err)
	}
	return len(cases)
}

// newLot adds a lot, opens it and returns its id.
func (u *user) newLot() int64 {
	u.t.Helper()
	return u.well(desk.NewLot()).Open.ID
}

// rename returns the edit of the open lot's make.
func rename(words, name string) desk.Action {
	return desk.EditLot(words, func(c *valuation.Case) { c.Lot.Make = name })
}

// sound is a case that can be valued at once; every figure is made up.
func sound(number string) valuation.Case {
	c := valuation.Defaults()
	least := money.Amount(100000)
	c.Currency, c.ValuedOn, c.Run.Scenarios = "USD", "2026-11-20", 256
	c.Lot.Number, c.Lot.Sale, c.Lot.SaleDate = number, "Harrow Flats", "2026-11-01"
	c.Repair.UseCatalogue, c.Hidden.UseCatalogue = false, false
	c.Resale.Guess = &prob.Three{Low: 8000, Likely: 9000, High: 10000}
	c.Buying.BidSteps = []invoice.Step{{Step: 2500}}
	c.Buying.Fixed = []invoice.Fixed{{Name: "Gate", Amount: 7500}}
	c.Rules = bid.Rules{MinProfit: &least}
	c.Lot.Make, c.Lot.Title.Document, c.Findings = "Kettrick", "salvage", map[string]string{valuation.NothingSeen: "no"}
	return c
}

// at returns a pointer to an amount.
func at(a money.Amount) *money.Amount { return &a }

// change keeps another case of a lot without the user's doing.
func (u *user) change(after book.Lot) {
	u.t.Helper()
	before := u.lot(after.ID)
	if _, err := u.kept.Do(u.t.Context(), book.Step{Subject: book.Board, Label: "elsewhere",
		Lots: []book.Change{{Before: before, After: after}}}); err != nil {
		u.t.Fatal(err)
	}
}

// takeIn takes the rows of a sheet in for the open lot as the window does, and returns those that are refused.
func (u *user) takeIn(sheet desk.Sheet) []desk.Refusal {
	taken, err := u.Take(u.t.Context(), u.s, sheet)
	u.s = u.TakenIn(u.t.Context(), u.s, taken, err)
	return taken.Refused
}
