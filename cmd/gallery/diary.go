package main

import (
	"context"
	"reflect"

	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/build"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
)

// Builds returns the lots that were won or lost.
func (b *book) Builds(context.Context) ([]desk.Bought, error) {
	var list []desk.Bought
	for _, p := range b.lots {
		if p.removed || p.state != lot.Won && p.state != lot.Lost {
			continue
		}
		l := p.now.Lot
		var said *learn.Prediction
		for _, f := range b.foretold {
			if f.id == p.id {
				said = &f.said
			}
		}
		list = append(list, desk.Bought{Foretold: said, ID: p.id, State: p.state, Archived: p.archived, Number: l.Number, Sale: l.Sale, SaleDate: l.SaleDate, VIN: l.VIN,
			ModelYear: l.ModelYear, Make: l.Make, Model: l.Model, Trim: l.Trim, Currency: p.now.Currency, Build: p.came.Clone()})
	}
	return list, nil
}

// Build returns what came of a lot.
func (b *book) Build(_ context.Context, id int64) (build.Build, error) {
	p, err := b.find(id, false)
	if err != nil {
		return build.Build{}, err
	}
	return p.came.Clone(), nil
}

// SaveBuild keeps what came of a lot as the next step; what is as it was makes no step.
func (b *book) SaveBuild(_ context.Context, id int64, label string, came build.Build) error {
	return b.mark(id, func(p *page) {
		if reflect.DeepEqual(p.came, came) {
			return
		}
		p.past, p.future = append(p.past, p.step(label)), nil
		p.came = came.Clone()
	})
}

// AddPast takes past buys that are not there yet, by what their table calls them.
func (b *book) AddPast(_ context.Context, list []desk.Past) (desk.Counts, error) {
	var counts desk.Counts
	for _, past := range list {
		known := false
		for _, p := range b.lots {
			known = known || p.came.Imported.As == past.Build.Imported.As
		}
		if known {
			counts.Same++
			continue
		}
		counts.New++
		b.lots = append(b.lots, &page{id: int64(len(b.lots) + 1), state: lot.Won, now: past.Case.Clone(), came: past.Build.Clone()})
	}
	return counts, nil
}

// Decisions returns the history of the learned factors.
func (b *book) Decisions(context.Context) ([]desk.Decision, error) { return b.decided, nil }

// Decide adds a step to it.
func (b *book) Decide(_ context.Context, d desk.Decision) error {
	d.ID, d.On = int64(len(b.decided)+1), "2026-11-25"
	b.decided = append(b.decided, d)
	return nil
}

// FrozenCases returns the case that was frozen last of each lot.
func (b *book) FrozenCases(context.Context) (map[int64]valuation.Case, []string, error) {
	cases := map[int64]valuation.Case{}
	for _, f := range b.foretold {
		cases[f.id] = f.c
	}
	return cases, nil, nil
}
