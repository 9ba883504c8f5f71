package wire

import (
	"context"
	"encoding/json"
	"fmt"
	"slices"
	"time"

	"walkline/store"
	"walkline/store/casefile"
	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
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

// Decisions returns the history of the learned factors.
func (b Book) Decisions(ctx context.Context) ([]desk.Decision, error) {
	kept, err := b.Store.Decisions(ctx)
	list := make([]desk.Decision, len(kept))
	for i, k := range kept {
		list[i] = desk.Decision{ID: k.ID, On: lot.Date(k.At.Local().Format(time.DateOnly)), What: k.What, Factor: k.Factor, Words: k.Words}
		for text, into := range map[*json.RawMessage]*learn.Factors{&k.Before: &list[i].Before, &k.After: &list[i].After} {
			if err := json.Unmarshal(*text, into); err != nil {
				return nil, fmt.Errorf("reading the decision on %s: %w", k.Factor, err)
			}
		}
	}
	return list, err
}

// Decide adds a step to the history of the learned factors.
func (b Book) Decide(ctx context.Context, d desk.Decision) error {
	before, err := json.Marshal(d.Before)
	if err != nil {
		return fmt.Errorf("keeping the decision on %s: %w", d.Factor, err)
	}
	after, err := json.Marshal(d.After)
	if err != nil {
		return fmt.Errorf("keeping the decision on %s: %w", d.Factor, err)
	}
	return b.Store.Decide(ctx, store.Decision{What: d.What, Factor: d.Factor, Words: d.Words, Before: before, After: after})
}

// FrozenCases returns the case that was frozen last of each lot.
func (b Book) FrozenCases(ctx context.Context) (map[int64]valuation.Case, []string, error) {
	files, err := b.Store.FrozenCases(ctx)
	cases, doubts := map[int64]valuation.Case{}, []string(nil)
	for id, file := range files {
		c, faults := casefile.Read(file)
		if len(faults) > 0 {
			doubts = append(doubts, fmt.Sprintf("The frozen case of lot %s cannot be read: %v.", c.Lot.Number, faults[0]))
			continue
		}
		cases[id] = c
	}
	slices.Sort(doubts)
	return cases, doubts, err
}
