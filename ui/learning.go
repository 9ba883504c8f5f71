package ui

import (
	"context"

	"walkline/ui/desk"
	"walkline/ui/task"
)

// learn has the track record worked out away from the window while its page is shown and there is none.
func (w *Window) learn() {
	if w.state.Place != desk.Record {
		w.runner.Cancel("learn")
		w.runner.Cancel("replay")
		return
	}
	if w.state.Record != nil && !w.state.Record.Stale {
		return
	}
	w.runner.Cancel("effects") // they are of the record before
	w.runner.Cancel("replay")
	list := w.state.Bought
	task.Start(w.runner, task.Order[desk.TrackRecord]{Key: "learn",
		Work: func(ctx context.Context) (desk.TrackRecord, error) { return w.desk.Learn(ctx, list) },
		Show: func(r desk.TrackRecord, err error) { w.show(w.state.Learned(r, err)) }})
}

// lookAt has what a proposal would change worked out.
func (w *Window) lookAt(key string) {
	if w.state.Record == nil {
		return
	}
	r := *w.state.Record
	for _, p := range r.Proposals {
		if p.Key == key {
			task.Start(w.runner, task.Order[[]desk.Effect]{Key: "effects",
				Work: func(ctx context.Context) ([]desk.Effect, error) { return w.desk.Effects(ctx, r, p) },
				Show: func(e []desk.Effect, err error) { w.show(w.state.Shown(r, key, e, err)) }})
		}
	}
}

// replay tries today's factors on every past lot; the notice says how far it is.
func (w *Window) replay() {
	if w.state.Record == nil {
		return
	}
	list, of := w.state.Bought, *w.state.Record
	task.Start(w.runner, task.Order[desk.Replay]{Key: "replay",
		Work: func(ctx context.Context) (desk.Replay, error) {
			return w.desk.Again(ctx, list, of.Now, of.Currency, func(done float64, words string) { task.Report(ctx, done, words) })
		},
		Report: func(_ float64, words string) { w.say(desk.State{Notice: words}) },
		Show:   func(r desk.Replay, err error) { w.show(w.state.Replayed(of, r, err)) }})
}
