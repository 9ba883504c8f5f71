package ui

import (
	"context"
	"path/filepath"
	"strings"

	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/task"
	"walkline/ui/widgets/pick"
	"walkline/valuation/lot"
)

// taking is one kind of table that can be taken in.
type taking struct {
	title   string // of the dialogs
	what    string // the file, in a sentence
	open    func(ctx context.Context, data []byte) (desk.Sheet, error)
	tables  desk.Tables
	options func(*matching)
	apply   func(sheet desk.Sheet, done func([]desk.Refusal))
	refused func(desk.Sheet) ([]byte, error)
}

// usual is by what a table is read where it leaves it open: the shop's currency and unit, and the system's order of days.
func (w *Window) usual() desk.Opening {
	shop := w.state.Shop
	return desk.Opening{Currency: shop.Currency, Usual: shop.OdometerUnit, Order: form.DayOrder().String()}
}

// comparables are tables of vehicles for sale or sold, for the open lot.
func (w *Window) comparables() taking {
	usual, of, id := w.usual(), lot.Lot{}, int64(0)
	if o := w.state.Before(); o != nil {
		usual.Currency, of, id = o.Case.Currency, o.Case.Lot, o.ID
		usual.Usual = of.OdometerUnit
	}
	return taking{
		title: "Import comparables", what: "A table of vehicles for sale or sold: CSV, text or .xlsx. It can also be dropped on the window.",
		open: func(ctx context.Context, data []byte) (desk.Sheet, error) {
			sheet, err := w.desk.OpenSheet(ctx, data, usual)
			sheet.Stated.Make, sheet.Stated.Model = of.Make, of.Model
			return sheet, err
		},
		tables:  w.desk.Importer,
		options: (*matching).ofComparables,
		apply: applying(w, "Taking the comparables in", w.desk.TakeFor(id), w.desk.TakenIn,
			func(t desk.Taken) []desk.Refusal { return t.Refused }),
		refused: w.desk.Importer.Refused,
	}
}

// runList is the table of the lots of a sale, for the Board.
func (w *Window) runList() taking {
	usual := w.usual()
	return taking{
		title: "Import a run list", what: "A table of a sale's lots: number, year, make, model, VIN, odometer and so on, as CSV, text " +
			"or .xlsx. It can also be dropped on the Board.",
		open:    func(ctx context.Context, data []byte) (desk.Sheet, error) { return w.desk.OpenList(ctx, data, usual) },
		tables:  w.desk.Lister,
		options: (*matching).ofRunList,
		apply:   applying(w, "Taking the run list in", w.desk.Enlist, w.desk.ListArrived, refusedOf),
		refused: w.desk.Lister.RefusedList,
	}
}

// applying returns how a sheet is taken in away from the window: take does it, arrived shows what came of it. It can be
// cancelled until all is kept.
func applying[T any](w *Window, saying string, take func(context.Context, desk.State, desk.Sheet) (T, error),
	arrived func(context.Context, desk.State, T, error) desk.State, refused func(T) []desk.Refusal) func(desk.Sheet, func([]desk.Refusal)) {
	return func(sheet desk.Sheet, done func([]desk.Refusal)) {
		s := w.state
		behindBar(w, barred[T]{words: saying,
			work: func(ctx context.Context) (T, error) { return take(ctx, s, sheet) },
			show: func(came T, err error) {
				w.act(func(ctx context.Context, s desk.State) desk.State { return arrived(ctx, s, came, err) })
				done(refused(came))
			},
			gone: func() { w.cancelled(saying) }})
	}
}

// refusedOf are the rows that a list or past buys did not take.
func refusedOf(e desk.Enlisted) []desk.Refusal { return e.Refused }

// Import lets the user choose a table of comparables, for the lot in sight or for the shelf: by its path, or from a list of files.
func (w *Window) Import() { w.choose(w.comparables()) }

// ImportList lets the user choose a run list.
func (w *Window) ImportList() { w.choose(w.runList()) }

// choose asks for a table, by its path or from a list.
func (w *Window) choose(t taking) {
	w.ask(asking{title: t.title, what: t.what, hint: "path of a table", verb: "Read", of: pick.For{What: "table"}},
		func(path string) { w.readFile(t, path) })
}

// readFile reads a table from a file.
func (w *Window) readFile(t taking, path string) {
	w.readTable(t, filepath.Base(path), func(ctx context.Context) ([]byte, error) { return w.desk.Read(ctx, path, mostBytes) })
}

// readTable reads a table away from the window and opens its dialog. One that is chosen meanwhile takes its place.
func (w *Window) readTable(t taking, name string, bring func(context.Context) ([]byte, error)) {
	words := "Reading " + name
	bar := w.waiting(words, func() {
		w.runner.Cancel("table")
		w.cancelled(words)
	})
	task.Start(w.runner, task.Order[desk.Sheet]{Key: "table",
		Work: func(ctx context.Context) (desk.Sheet, error) {
			data, err := bring(ctx)
			if err != nil {
				return desk.Sheet{}, err
			}
			sheet, err := t.open(desk.Watched(ctx, func(done float64) { task.Report(ctx, done, "") }), data)
			sheet.Name = name
			return sheet, err
		},
		Report: func(done float64, _ string) { bar.set(done) },
		Show: func(sheet desk.Sheet, err error) {
			bar.close()
			if err != nil {
				w.failed("read "+name, err)
				w.nextTable()
				return
			}
			w.say(desk.State{})
			w.match(t, name, sheet)
		}})
}

// readAny reads a table away from the window, sees what it is likely to be, and opens its dialog; where that is not what the place takes,
// the user is asked first.
func (w *Window) readAny(name string, bring func(context.Context) ([]byte, error)) {
	here, sure := w.kindHere()
	type looked struct {
		data []byte
		kind desk.Kind
	}
	w.say(desk.State{Notice: "Reading " + name + "…"})
	task.Start(w.runner, task.Order[looked]{Key: "table",
		Work: func(ctx context.Context) (looked, error) {
			data, err := bring(ctx)
			if err != nil {
				return looked{}, err
			}
			return looked{data, w.desk.Likeliest(ctx, data, here)}, nil
		},
		Show: func(l looked, err error) {
			if err != nil {
				w.failed("read "+name, err)
				w.nextTable()
				return
			}
			w.say(desk.State{})
			read := func(kind desk.Kind) {
				w.readTable(w.takingOf(kind), name, func(context.Context) ([]byte, error) { return l.data, nil })
			}
			if sure && l.kind == here {
				read(here)
				return
			}
			w.askKind(name, here, l.kind, read)
		}})
}

// Paste reads the cells that were copied from a spreadsheet or a web page.
func (w *Window) Paste(text string) {
	if w.modal() || strings.TrimSpace(text) == "" {
		return
	}
	w.readAny("the clipboard", func(context.Context) ([]byte, error) { return []byte(text), nil })
}

// failed says what went wrong; no error says nothing.
func (w *Window) failed(doing string, err error) {
	if err != nil {
		w.say(desk.State{Trouble: "Could not " + doing + ": " + err.Error()})
	}
}

// mostBytes bounds what is read of a file; the reader refuses as much with its own sentence.
const mostBytes = 65 << 20
