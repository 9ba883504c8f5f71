package ui

import (
	"context"
	"slices"

	"walkline/ui/desk"
	"walkline/valuation"
)

// EditShop changes the shop's terms.
func (w *Window) EditShop(label string, change func(*desk.Shop)) {
	w.act(func(ctx context.Context, s desk.State) desk.State { return w.desk.EditShop(ctx, s, label, change) })
}

// EditOwn changes the shop's own entries of the catalogues.
func (w *Window) EditOwn(label string, change func(*valuation.Own)) {
	w.act(func(ctx context.Context, s desk.State) desk.State { return w.desk.EditOwn(ctx, s, label, change) })
}

// SetCurrency changes the currency of the shop's terms.
func (w *Window) SetCurrency(code string) {
	w.act(func(ctx context.Context, s desk.State) desk.State { return w.desk.SetCurrency(ctx, s, code) })
}

// SetSold keeps how many vehicles the user says to have sold in twelve months.
func (w *Window) SetSold(n *int) {
	w.act(func(ctx context.Context, s desk.State) desk.State { return w.desk.SetSold(ctx, s, n) })
}

// TakeTerms gives the open lot the shop's terms.
func (w *Window) TakeTerms() { w.act(w.desk.TakeTerms) }

// BenchSections returns the names of the Bench's sections.
func (w *Window) BenchSections() []string { return w.bench().Sections() }

// GoBench shows a section of the Bench.
func (w *Window) GoBench(name string) {
	w.goTo(desk.Bench)
	w.bench().Go(slices.Index(w.bench().Sections(), name))
	w.focusPage()
}
