package main

import (
	"context"
	"log/slog"
	"time"

	"walkline/store"
	"walkline/ui/task"
)

// The daily backup waits until the window is there, and is looked after again while it stays open. Ours: a computer that slept over
// midnight is late by no more than that.
const (
	dailyWait  = 5 * time.Second
	dailyAgain = 30 * time.Minute
)

// daily writes the backup of each day to the folder that the user chose, if there is one.
type daily struct {
	runner  task.Runner
	clock   later
	now     func() time.Time
	book    *store.Store
	folder  func() string // as it is chosen by then; empty: none
	say     warner
	faulted string // the day of the last fault that was said
}

// keep makes the backup of the day, and of every day after it while the window is open.
func (d *daily) keep() {
	d.make()
	d.clock.After(dailyAgain, d.keep)
}

// make writes the backup of the day unless it is there. That it can't is said once a day, and tried again.
func (d *daily) make() {
	folder, now := d.folder(), d.now()
	if folder == "" {
		return
	}
	task.Start(d.runner, task.Order[string]{Key: "daily backup", Wait: dailyWait,
		Work: func(ctx context.Context) (string, error) { return d.book.Daily(ctx, folder, now) },
		Show: func(made string, err error) {
			switch day := now.Format(time.DateOnly); {
			case err != nil && d.faulted != day:
				d.faulted = day
				slog.Error("no daily backup", "folder", folder, "error", err, "detail", store.Detail(err))
				d.say.Warn("The daily backup could not be made: " + err.Error())
			case err == nil && made != "":
				slog.Info("daily backup", "file", made)
			}
		}})
}
