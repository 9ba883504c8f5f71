package ui

import (
	"context"
	"path/filepath"
	"strings"

	"walkline/ui/desk"
	"walkline/ui/task"
	"walkline/valuation/lot"
)

// taking is one kind of table that can be taken in.
type taking struct {
	title   string // of the dialogs
	what    string // the file, in a sentence
	open    func(ctx context.Context, data []byte) (desk.Sheet, error)
	preview func(desk.Sheet) (desk.Preview, error)
	options func(*matching)
	apply   func(sheet desk.Sheet, done func([]desk.Refusal))
	refused func(desk.Sheet) ([]byte, error)
}

// comparables are tables of vehicles for sale or sold, for the open lot.
func (w *Window) comparables() taking {
	currency, of := w.state.Shop.Currency, lot.Lot{}
	if w.state.Open != nil && w.state.Place != desk.Bench {
		currency, of = w.state.Open.Case.Currency, w.state.Open.Case.Lot
	}
	return taking{
		title: "Import comparables", what: "A table of vehicles for sale or sold: CSV, text or .xlsx. It can also be dropped on the window.",
		open: func(ctx context.Context, data []byte) (desk.Sheet, error) {
			sheet, err := w.desk.OpenSheet(ctx, data, currency)
			sheet.Stated.Make, sheet.Stated.Model = of.Make, of.Model
			return sheet, err
		},
		preview: previewing(w.desk.Importer),
		options: (*matching).ofComparables,
		apply: applying(w, "Taking the comparables in…", w.desk.Take, w.desk.TakenIn,
			func(t desk.Taken) []desk.Refusal { return t.Refused }),
		refused: w.desk.Importer.Refused,
	}
}

// previewing returns what a reader shows of a sheet; nothing where it shows none.
func previewing(reader any) func(desk.Sheet) (desk.Preview, error) {
	if p, ok := reader.(desk.Previewer); ok {
		return p.Preview
	}
	return func(s desk.Sheet) (desk.Preview, error) { return desk.Preview{Rows: s.Rows}, nil }
}

// applies returns how a sheet is applied at once.
func (w *Window) applies(apply func(context.Context, desk.State, desk.Sheet) (desk.State, []desk.Refusal)) func(desk.Sheet,
	func([]desk.Refusal)) {
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
		title: "Import a run list", what: "A table of a sale's lots: number, year, make, model, VIN, odometer and so on, as CSV, text " +
			"or .xlsx. It can also be dropped on the Board.",
		open:    w.desk.OpenList,
		preview: previewing(w.desk.Lister),
		options: (*matching).ofRunList,
		apply: applying(w, "Taking the run list in…", w.desk.Enlist, w.desk.ListArrived,
			func(e desk.Enlisted) []desk.Refusal { return e.Refused }),
		refused: w.desk.Lister.RefusedList,
	}
}

// applying returns how a sheet is taken in away from the window: take does it, arrived shows what came of it.
func applying[T any](w *Window, saying string, take func(context.Context, desk.State, desk.Sheet) (T, error),
	arrived func(context.Context, desk.State, T, error) desk.State, refused func(T) []desk.Refusal) func(desk.Sheet, func([]desk.Refusal)) {
	return func(sheet desk.Sheet, done func([]desk.Refusal)) {
		w.say(desk.State{Notice: saying})
		s := w.state
		task.Start(w.runner, task.Order[T]{Key: "taking in",
			Work: func(ctx context.Context) (T, error) { return take(ctx, s, sheet) },
			Show: func(came T, err error) {
				w.act(func(ctx context.Context, s desk.State) desk.State { return arrived(ctx, s, came, err) })
				done(refused(came))
			}})
	}
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
	w.ask(asking{title: t.title, what: t.what, hint: "path of a table", verb: "Read"}, func(path string) { w.readFile(t, path) })
}

// readFile reads a table from a file.
func (w *Window) readFile(t taking, path string) {
	w.readTable(t, filepath.Base(path), func(ctx context.Context) ([]byte, error) { return w.desk.Read(ctx, path, mostBytes) })
}

// readTable reads a table away from the window and opens its dialog. One that is chosen meanwhile takes its place.
func (w *Window) readTable(t taking, name string, bring func(context.Context) ([]byte, error)) {
	w.say(desk.State{Notice: "Reading " + name + "…"})
	task.Start(w.runner, task.Order[desk.Sheet]{Key: "table",
		Work: func(ctx context.Context) (desk.Sheet, error) {
			data, err := bring(ctx)
			if err != nil {
				return desk.Sheet{}, err
			}
			sheet, err := t.open(ctx, data)
			sheet.Name = name
			return sheet, err
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

// Paste reads the cells that were copied from a spreadsheet or a web page as the table that the place is for.
func (w *Window) Paste(text string) {
	t, there := w.tableHere()
	switch {
	case w.modal() || strings.TrimSpace(text) == "":
	case !there:
		w.say(desk.State{Notice: whereTables})
	default:
		w.readTable(t, "the clipboard", func(context.Context) ([]byte, error) { return []byte(text), nil })
	}
}

// failed says what went wrong; no error says nothing.
func (w *Window) failed(doing string, err error) {
	if err != nil {
		w.say(desk.State{Trouble: "Could not " + doing + ": " + err.Error()})
	}
}

// mostBytes bounds what is read of a file; the reader refuses as much with its own sentence.
const mostBytes = 65 << 20
