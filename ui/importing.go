package ui

import (
	"context"
	"path/filepath"

	"walkline/ui/desk"
	"walkline/ui/task"
)

// taking is one kind of table that can be taken in.
type taking struct {
	title   string // of the dialogs
	what    string // the file, in a sentence
	open    func(data []byte) (desk.Sheet, error)
	usable  func(desk.Sheet) (rows int, refused []desk.Refusal, err error)
	options func(*matching)
	apply   func(sheet desk.Sheet, done func([]desk.Refusal))
	refused func(desk.Sheet) ([]byte, error)
}

// comparables are tables of vehicles for sale or sold, for the open lot.
func (w *Window) comparables() taking {
	return taking{
		title: "Import comparables", what: "A CSV file of vehicles for sale or sold. It can also be dropped on the window while a lot is open.",
		open: func(data []byte) (desk.Sheet, error) {
			return w.desk.OpenSheet(context.Background(), data, w.state.Open.Case.Currency)
		},
		usable: func(s desk.Sheet) (int, []desk.Refusal, error) {
			rows, refused, err := w.desk.Importer.Read(s)
			return len(rows), refused, err
		},
		options: (*matching).ofComparables,
		apply:   w.applies(w.desk.Apply),
		refused: w.desk.Importer.Refused,
	}
}

// applies returns how a sheet is applied at once.
func (w *Window) applies(apply func(context.Context, desk.State, desk.Sheet) (desk.State, []desk.Refusal)) func(desk.Sheet, func([]desk.Refusal)) {
	return func(sheet desk.Sheet, done func([]desk.Refusal)) {
		var refused []desk.Refusal
		w.act(func(ctx context.Context, s desk.State) desk.State {
			s, refused = apply(ctx, s, sheet)
			return s
		})
		done(refused)
	}
}

// runList is the table of the lots of a sale, for the Board.
func (w *Window) runList() taking {
	return taking{
		title: "Import a run list", what: "A CSV file of a sale's lots: number, year, make, model, VIN, odometer and so on. It can also be dropped on the Board.",
		open: func(data []byte) (desk.Sheet, error) { return w.desk.OpenList(context.Background(), data) },
		usable: func(s desk.Sheet) (int, []desk.Refusal, error) {
			lots, refused, err := w.desk.Lister.ReadList(s)
			return len(lots), refused, err
		},
		options: (*matching).ofRunList,
		apply:   w.enlist,
		refused: w.desk.Lister.RefusedList,
	}
}

// enlist takes a run list in, away from the window.
func (w *Window) enlist(sheet desk.Sheet, done func([]desk.Refusal)) {
	w.say(desk.State{Notice: "Taking the run list in…"})
	s := w.state
	task.Start(w.runner, task.Order[desk.Enlisted]{Key: "run list",
		Work: func(ctx context.Context) (desk.Enlisted, error) { return w.desk.Enlist(ctx, s, sheet) },
		Show: func(e desk.Enlisted, err error) {
			w.act(func(ctx context.Context, s desk.State) desk.State { return w.desk.ListArrived(ctx, s, e, err) })
			done(e.Refused)
		}})
}

// Import lets the user choose a table of comparables for the open lot: by its path, or from a list of files.
func (w *Window) Import() {
	if w.state.Open == nil {
		w.say(desk.State{Notice: "First open the lot that the comparables are for."})
		return
	}
	w.choose(w.comparables())
}

// ImportList lets the user choose a run list.
func (w *Window) ImportList() { w.choose(w.runList()) }

// choose asks for a table, by its path or from a list.
func (w *Window) choose(t taking) {
	w.ask(asking{title: t.title, what: t.what, hint: "path of a CSV file", verb: "Read"}, func(path string) { w.readFile(t, path) })
}

// readFile reads a table away from the window, and shows what it is taken for.
func (w *Window) readFile(t taking, path string) {
	name := filepath.Base(path)
	w.say(desk.State{Notice: "Reading " + name + "…"})
	task.Start(w.runner, task.Order[desk.Sheet]{Key: "table",
		Work: func(ctx context.Context) (desk.Sheet, error) {
			data, err := w.desk.Read(ctx, path, mostBytes)
			if err != nil {
				return desk.Sheet{}, err
			}
			return t.open(data)
		},
		Show: func(sheet desk.Sheet, err error) {
			if err != nil {
				w.failed("read "+name, err)
				return
			}
			w.say(desk.State{})
			w.match(t, name, sheet)
		}})
}

// failed says what went wrong; no error says nothing.
func (w *Window) failed(doing string, err error) {
	if err != nil {
		w.say(desk.State{Trouble: "Could not " + doing + ": " + err.Error()})
	}
}

// mostBytes bounds what is read of a file; the reader refuses as much with its own sentence.
const mostBytes = 65 << 20
