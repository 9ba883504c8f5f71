package wire

import (
	"context"
	"encoding/json"
	"fmt"

	"walkline/store"
	"walkline/ui/desk"
	"walkline/valuation/learn"
)

// Builds returns the lots that were won or lost, with what was foretold of them.
func (b Book) Builds(ctx context.Context) ([]desk.Bought, error) {
	stored, err := b.Store.Builds(ctx)
	list := make([]desk.Bought, len(stored))
	for i, s := range stored {
		list[i] = desk.Bought{ID: s.ID, State: s.State, Archived: s.Archived, Number: s.Number, Sale: s.Sale, SaleDate: s.SaleDate, VIN: s.VIN,
			ModelYear: s.ModelYear, Make: s.Make, Model: s.Model, Trim: s.Trim, Currency: s.Currency, Build: s.Build}
		if s.Foretold != nil && len(s.Foretold.Forecast) > 0 {
			var p learn.Prediction
			if err := json.Unmarshal(s.Foretold.Forecast, &p); err != nil {
				return nil, fmt.Errorf("reading what was foretold of lot %s: %w", s.Number, err)
			}
			list[i].Foretold = &p
		}
	}
	return list, err
}

// AddPast takes past buys that are not there yet.
func (b Book) AddPast(ctx context.Context, list []desk.Past) (desk.Counts, error) {
	past := make([]store.Past, len(list))
	for i, p := range list {
		past[i] = store.Past(p)
	}
	t, err := b.Store.AddPast(ctx, past)
	return desk.Counts{New: t.New, Same: t.Same, Changed: t.Changed}, err
}
