package ui

import (
	"context"
	"time"

	"walkline/ui/desk"
	"walkline/ui/task"
)

// lying is how long the shelf must lie still before it is worked out what it teaches: that takes a second or two.
const lying = 2 * time.Second

// fitMarket has what the shelf teaches worked out away from the window, where it may have changed.
func (w *Window) fitMarket() {
	before := w.state.Market
	if !before.Stale {
		return
	}
	w.state.Market.Stale = false // ordered; a change meanwhile orders it again
	task.Start(w.runner, task.Order[desk.Market]{Key: "market", Wait: lying,
		Work: func(ctx context.Context) (desk.Market, error) { return w.desk.FitMarket(ctx, before) },
		Show: func(m desk.Market, err error) {
			w.act(func(ctx context.Context, s desk.State) desk.State { return w.desk.MarketFitted(ctx, s, m, err) })
		}})
}
