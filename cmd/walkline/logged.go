package main

import (
	"context"
	"errors"
	"log/slog"
	"os"

	"walkline/store/csvfile"
	"walkline/store/grid"
	"walkline/store/table"
	"walkline/ui/desk"
	"walkline/valuation/resale"
)

// The readers of tables, with what they took and refused written to the log: counts, and nothing of what the rows say.
type (
	logged     struct{ desk.Importer }
	loggedList struct{ desk.Lister }
	loggedPast struct{ desk.PastTables }
)

// tell writes down how a table was read.
func tell(what string, taken int, refused []desk.Refusal, err error) {
	if err != nil {
		slog.Warn("refused a table", "of", what, "why", kind(err))
		return
	}
	slog.Info("read a table", "of", what, "rows", taken+len(refused), "usable", taken, "refused", len(refused))
}

// kinds are why a table may be refused as a whole, in words of the program alone.
var kinds = []error{grid.ErrEmpty, grid.ErrTooLarge, grid.ErrWorkbook, grid.ErrBinary, grid.ErrQuote, grid.ErrSheet, csvfile.ErrNoRows,
	table.ErrStopped}

// kind returns why a table was refused, without the headings and cells that the error names.
func kind(err error) string {
	for _, k := range kinds {
		if errors.Is(err, k) {
			return k.Error()
		}
	}
	return "its columns or what was said of them"
}

// Read reads comparables.
func (l logged) Read(s desk.Sheet) ([]resale.Row, []desk.Refusal, error) {
	rows, refused, err := l.Importer.Read(s)
	tell("comparables", len(rows), refused, err)
	return rows, refused, err
}

// ReadList reads a run list.
func (l loggedList) ReadList(s desk.Sheet) ([]desk.ListRow, []desk.Refusal, error) {
	lots, refused, err := l.Lister.ReadList(s)
	tell("a run list", len(lots), refused, err)
	return lots, refused, err
}

// ReadPast reads past buys.
func (l loggedPast) ReadPast(s desk.Sheet) ([]desk.Past, []desk.Refusal, error) {
	past, refused, err := l.PastTables.ReadPast(s)
	tell("past buys", len(past), refused, err)
	return past, refused, err
}

// waitFor returns work that waits for a signal.
func waitFor(heard <-chan os.Signal) func(context.Context) (os.Signal, error) {
	return func(ctx context.Context) (os.Signal, error) {
		select {
		case s := <-heard:
			return s, nil
		case <-ctx.Done():
			return nil, ctx.Err()
		}
	}
}
