package ui

import (
	"context"
	"os"
	"path/filepath"
	"strings"

	"walkline/ui/desk"
	"walkline/ui/photo"
	"walkline/ui/task"
	"walkline/ui/widgets/pick"
	"walkline/valuation"
)

// foresee has what is left of the builds on show worked out away from the window: the open one, or all of the list that are
// not ended.
func (w *Window) foresee() {
	switch o := w.state.Build; {
	case w.state.Place != desk.Builds:
		w.runner.Cancel("foresee")
	case o == nil && w.state.Outlooks == nil:
		list, factors := w.state.Bought, w.state.Factors
		task.Start(w.runner, task.Order[map[int64]valuation.Foresight]{Key: "foresee",
			Work: func(ctx context.Context) (map[int64]valuation.Foresight, error) {
				return w.desk.ForeseeAll(ctx, factors, list)
			},
			Show: func(all map[int64]valuation.Foresight, err error) { w.show(w.state.ForeseenAll(list, all, err)) }})
	case o != nil && !o.Fresh && !o.Build.Outcome.Ended() && o.Ours():
		id, revision, c, b := o.ID, o.Revision, o.Case, o.Build
		task.Start(w.runner, task.Order[valuation.Foresight]{Key: "foresee", Wait: waiting,
			Work: func(context.Context) (valuation.Foresight, error) { return w.desk.Foresee(c, b) },
			Show: func(f valuation.Foresight, err error) { w.show(w.state.Foreseen(id, revision, f, err)) }})
	}
}

// chooseFile lets the user choose a photo or PDF, keeps it beside the store, and hands over its name and hash.
func (w *Window) chooseFile(chosen func(name, hash string) bool) {
	w.pickOne("File of a bill", "Attach", pick.For{Endings: append([]string{".pdf"}, photoEndings...), What: "photo or PDF"},
		func(path string) { w.keepFile(path, chosen) })
}

// keepFile keeps the photo or PDF of a bill away from the window, and hands over its name and hash. Where nobody takes it
// any more, that is said.
func (w *Window) keepFile(path string, chosen func(name, hash string) bool) {
	name := filepath.Base(path)
	task.Start(w.runner, task.Order[string]{
		Work: func(ctx context.Context) (string, error) {
			data, err := w.desk.Read(ctx, path, photo.MostBytes)
			if err != nil {
				return "", err
			}
			return w.desk.KeepBill(data)
		},
		Show: func(hash string, err error) {
			if err != nil {
				w.failed("keep "+name, err)
				return
			}
			if !chosen(name, hash) {
				w.say(desk.State{Notice: name + " was not put to a bill: another page was opened meanwhile, or the bill is gone."})
			}
		}})
}

// importPast lets the user choose a table of past buys.
func (w *Window) importPast() {
	w.choose(w.pastBuys())
}

// pastBuys returns the table of past buys.
func (w *Window) pastBuys() taking {
	usual := w.usual()
	return taking{
		title: "Import past buys", what: "A table of buys from before this program, as CSV, text or .xlsx. What you leave empty stays unknown.",
		open: func(ctx context.Context, data []byte) (desk.Sheet, error) {
			return w.desk.OpenPast(ctx, data, usual)
		},
		tables: w.desk.Past,
		apply:  applying(w, "Taking the past buys in", w.desk.TakePast, w.desk.PastArrived, refusedOf), refused: w.desk.Past.RefusedPast,
		options: func(m *matching) {
			m.option("Numbers like", desk.MarkWays, &m.sheet.Stated.Marks)
			m.option("Odometers in", []string{"mi", "km"}, &m.sheet.Stated.Unit)
			m.option("Dates", desk.DateWays, &m.sheet.Stated.Dates)
			m.option("Prices in", m.sheet.Currencies, &m.sheet.Stated.Currency)
		},
	}
}

// pastTemplate asks where to put a table of past buys to fill in, and writes it there.
func (w *Window) pastTemplate() {
	w.print(printing{title: "Table of past buys", name: "past-buys.csv",
		kind: "A CSV file with what each column means and two examples. Fill it in with any spreadsheet program, a buy a row, and import it.",
		make: func() ([]byte, error) { return w.desk.Past.PastTemplate(), nil }})
}

// openFile opens the kept file of a bill in the system's own viewer: a copy of it, so that no other program changes what is kept.
func (w *Window) openFile(name, hash string) {
	task.Start(w.runner, task.Order[string]{
		Work: func(context.Context) (string, error) {
			data, kind, err := w.desk.BillFile(hash)
			if err != nil {
				return "", err
			}
			return viewCopy(name, kind, data)
		},
		Show: func(path string, err error) {
			if err == nil {
				err = w.app.OpenURL(fileURL(path))
			}
			w.failed("open "+name, err)
		}})
}

// viewCopy writes a copy of a kept file to be looked at, in a folder of its own, and returns its path. Its ending is that of what the file
// is, whatever it is called.
func viewCopy(name, kind string, data []byte) (string, error) {
	folder, err := os.MkdirTemp("", "walkline-view-")
	if err != nil {
		return "", err
	}
	plain := filepath.Base(strings.ReplaceAll(name, `\`, "/"))
	path := filepath.Join(folder, strings.TrimSuffix(plain, filepath.Ext(plain))+"."+kind)
	return path, os.WriteFile(path, data, 0o400)
}

// writeLedger asks where to put every entry of the builds, for the accountant, and writes them there.
func (w *Window) writeLedger() {
	list := w.state.Bought
	w.print(printing{title: "Table of all entries", name: "builds.csv",
		kind: "A CSV file: a row for each purchase, charge, bill, hour and sale. Any spreadsheet program opens it.",
		make: func() ([]byte, error) { return w.desk.Press.Ledger(list), nil }})
}
