package wire

import (
	"context"
	"encoding/json"
	"fmt"

	"walkline/store"
	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/learn"
)

// Book is a store as the desk sees it.
type Book struct{ *store.Store }

var (
	_ desk.Book  = Book{}
	_ desk.Album = Book{}
)

// Entries returns the lots of the Board.
func (b Book) Entries(ctx context.Context) ([]desk.Entry, error) {
	stored, err := b.Store.Entries(ctx)
	entries := make([]desk.Entry, len(stored))
	for i, e := range stored {
		entries[i] = desk.Entry{ID: e.ID, State: e.State, Archived: e.Archived, Number: e.Number, Sale: e.Sale, SaleDate: e.SaleDate,
			ModelYear: e.ModelYear, Make: e.Make, Model: e.Model, Trim: e.Trim, Currency: e.Currency, Answer: (*desk.Summary)(e.Answer)}
	}
	return entries, err
}

// Undo takes the last edit of a lot back.
func (b Book) Undo(ctx context.Context, id int64) (valuation.Case, string, bool, error) {
	u, err := b.Store.Undo(ctx, id)
	return u.Case, u.Label, u.Done, err
}

// Redo does the edit again that was undone last.
func (b Book) Redo(ctx context.Context, id int64) (valuation.Case, string, bool, error) {
	u, err := b.Store.Redo(ctx, id)
	return u.Case, u.Label, u.Done, err
}

// Reach returns what undo and redo would do next.
func (b Book) Reach(ctx context.Context, id int64) (desk.Reach, error) {
	r, err := b.Store.Reach(ctx, id)
	return desk.Reach{Undo: r.Undo, Redo: r.Redo}, err
}

// at returns the store's history of a place.
func at(p desk.Place) store.Place {
	if p == desk.Bench {
		return store.Bench
	}
	return store.Board
}

// UndoAt takes the last step of a place back.
func (b Book) UndoAt(ctx context.Context, p desk.Place) (string, bool, error) {
	return b.Store.UndoAt(ctx, at(p))
}

// RedoAt does the step of a place again that was undone last.
func (b Book) RedoAt(ctx context.Context, p desk.Place) (string, bool, error) {
	return b.Store.RedoAt(ctx, at(p))
}

// ReachAt returns what undo and redo of a place would do next.
func (b Book) ReachAt(ctx context.Context, p desk.Place) (desk.Reach, error) {
	r, err := b.Store.ReachAt(ctx, at(p))
	return desk.Reach{Undo: r.Undo, Redo: r.Redo}, err
}

// Lots returns what every lot says of its vehicle and sale.
func (b Book) Lots(ctx context.Context) ([]desk.Listed, error) {
	stored, err := b.Store.Lots(ctx)
	list := make([]desk.Listed, len(stored))
	for i, l := range stored {
		list[i] = desk.Listed(l)
	}
	return list, err
}

// Enlist adds lots and gives lots that are there other facts.
func (b Book) Enlist(ctx context.Context, label string, added []valuation.Case, changed []desk.Listed) error {
	facts := make([]store.Listed, len(changed))
	for i, l := range changed {
		facts[i] = store.Listed(l)
	}
	return b.Store.Enlist(ctx, label, added, facts)
}

// Predict keeps a prediction for good.
func (b Book) Predict(ctx context.Context, id int64, c valuation.Case, a valuation.Answer, figures learn.Prediction) error {
	forecast, err := json.Marshal(figures)
	if err != nil {
		return fmt.Errorf("keeping what was foretold of lot %d: %w", id, err)
	}
	factors, err := json.Marshal(figures.Factors)
	if err != nil {
		return fmt.Errorf("keeping the factors of lot %d: %w", id, err)
	}
	_, err = b.Freeze(ctx, id, store.Prediction{Case: c, Answer: a, Factors: factors, Seed: c.Run.Seed, Engine: valuation.Engine, Forecast: forecast})
	return err
}
