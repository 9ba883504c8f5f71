package main

import (
	"context"
	"encoding/json"
	"fmt"

	"walkline/ui/desk"
	"walkline/valuation"
)

// shopSteps is the history of the Board or of the Bench.
type shopSteps struct {
	past, future []shopStep
}

// shopStep is one step, both ways.
type shopStep struct {
	label       string
	back, forth func()
}

// step changes some lots as a step of a place.
func (b *book) step(at desk.Place, label string, lots []*page, change func(*page)) {
	before := make([]page, len(lots))
	for i, p := range lots {
		before[i] = *p
	}
	forth := func() {
		for _, p := range lots {
			change(p)
		}
	}
	b.done(at, shopStep{label, func() {
		for i, p := range lots {
			p.state, p.archived, p.removed = before[i].state, before[i].archived, before[i].removed
		}
	}, forth})
	forth()
}

// done puts a step on the history of a place.
func (b *book) done(at desk.Place, s shopStep) {
	h := b.shop[at]
	h.past, h.future = append(h.past, s), nil
}

// change changes a lot as a step of the Board; %s of the label is its number.
func (b *book) change(id int64, label string, change func(*page)) error {
	p, err := b.find(id, false)
	if err == nil {
		b.step(desk.Board, fmt.Sprintf(label, p.now.Lot.Number), []*page{p}, change)
	}
	return err
}

// Keep keeps a setting as a step of the Bench.
func (b *book) Keep(_ context.Context, label, name string, value any) error {
	text, err := json.Marshal(value)
	if err != nil {
		return err
	}
	before, had := b.settings[name]
	b.done(desk.Bench, shopStep{label, func() {
		b.settings[name] = before
		if !had {
			delete(b.settings, name)
		}
	}, func() { b.settings[name] = text }})
	b.settings[name] = text
	return nil
}

// UndoAt takes the last step of a place back.
func (b *book) UndoAt(_ context.Context, at desk.Place) (string, bool, error) {
	h := b.shop[at]
	n := len(h.past) - 1
	if n < 0 {
		return "", false, nil
	}
	s := h.past[n]
	s.back()
	h.past, h.future = h.past[:n], append(h.future, s)
	return s.label, true, nil
}

// RedoAt does the step again that was taken back last.
func (b *book) RedoAt(_ context.Context, at desk.Place) (string, bool, error) {
	h := b.shop[at]
	n := len(h.future) - 1
	if n < 0 {
		return "", false, nil
	}
	s := h.future[n]
	s.forth()
	h.past, h.future = append(h.past, s), h.future[:n]
	return s.label, true, nil
}

// ReachAt returns what undo and redo would do.
func (b *book) ReachAt(_ context.Context, at desk.Place) (desk.Reach, error) {
	var r desk.Reach
	h := b.shop[at]
	if n := len(h.past); n > 0 {
		r.Undo = h.past[n-1].label
	}
	if n := len(h.future); n > 0 {
		r.Redo = h.future[n-1].label
	}
	return r, nil
}

// Lots returns what every lot says of its vehicle and sale.
func (b *book) Lots(context.Context) ([]desk.Listed, error) {
	var list []desk.Listed
	for _, p := range b.lots {
		if !p.removed {
			list = append(list, desk.Listed{ID: p.id, State: p.state, Lot: p.now.Lot})
		}
	}
	return list, nil
}

// Enlist adds lots and gives lots that are there other facts; only the former are taken back in one step.
func (b *book) Enlist(ctx context.Context, label string, added []valuation.Case, changed []desk.Listed) error {
	for _, l := range changed {
		c := b.lots[l.ID-1].now.Clone()
		c.Lot = l.Lot
		if err := b.Save(ctx, l.ID, label, c); err != nil {
			return err
		}
	}
	_, err := b.AddAll(ctx, label, added)
	return err
}
