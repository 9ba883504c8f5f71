package ui

import (
	"context"
	"path/filepath"
	"slices"

	"fyne.io/fyne/v2"

	"walkline/ui/desk"
	"walkline/ui/task"
	"walkline/ui/view"
	"walkline/ui/widgets/pick"
	"walkline/valuation"
)

// addPack asks for the document of a jurisdiction and adds it, or says all that is wrong with it.
func (w *Window) addPack() {
	w.ask(asking{title: "Add a jurisdiction",
		what: "A JSON file of one jurisdiction: thresholds, what may be rebuilt, papers, fees, each with its source. It is used in place of " +
			"the program's own of the same code.",
		hint: "path of a JSON file", verb: "Add", of: pick.For{What: "JSON file", Endings: []string{".json"}}}, w.readPack)
}

func (w *Window) readPack(path string) {
	task.Start(w.runner, task.Order[[]byte]{Key: "pack",
		Work: func(ctx context.Context) ([]byte, error) { return w.desk.Read(ctx, path, mostPack) },
		Show: func(data []byte, err error) {
			if err != nil {
				w.failed("read "+path, err)
				return
			}
			w.Do(desk.AddPack(data))
			if faults := w.state.PackFaults; len(faults) > 0 {
				w.listFaults(filepath.Base(path), faults)
			}
		}})
}

// mostPack is the size of the largest document of a jurisdiction that is read. Ours: a hundred times one of the program's own.
const mostPack = 4 << 20

// listFaults lists all that is wrong with a document.
func (w *Window) listFaults(name string, faults []valuation.Fault) {
	var lines []string
	for _, f := range faults {
		lines = append(lines, f.Error())
	}
	d := w.telling(name+" was not added: "+view.Count(len(faults), "fault"), "Close", newListing(lines))
	d.Resize(fyne.NewSize(760, 420))
	w.open(d)
}

// backUp asks where to put a copy of all that is kept, and writes it there.
func (w *Window) backUp() {
	w.print(printing{title: "Backup", name: "walkline-" + string(w.desk.Today()) + ".db",
		kind: "A whole copy of all lots and settings, and a folder of their photos beside it.", save: w.desk.Backup})
}

// restoreBackup asks for a backup and makes it ready to take the place of what is here at the next start.
func (w *Window) restoreBackup() {
	w.ask(asking{title: "Restore from a backup",
		what: "The backup takes the place of what is here when the program starts next. What is here then is set aside whole, beside it: " +
			"nothing is lost.",
		hint: "path of the backup's file", verb: "Restore", of: pick.For{What: "backup"}}, func(path string) {
		w.say(desk.State{Notice: "Checking " + path + "…"})
		task.Start(w.runner, task.Order[struct{}]{Key: "restore",
			Work: func(ctx context.Context) (struct{}, error) { return struct{}{}, w.desk.StageRestore(ctx, path) },
			Show: func(_ struct{}, err error) {
				w.act(func(_ context.Context, s desk.State) desk.State { return w.desk.Staged(s, path, err) })
			}})
	})
}

// BenchSections returns the names of the Bench's sections.
func (w *Window) BenchSections() []string { return w.bench().Sections() }

// GoBench shows a section of the Bench.
func (w *Window) GoBench(name string) {
	w.goTo(desk.Bench)
	w.bench().Go(slices.Index(w.bench().Sections(), name))
	w.focusPage()
}

// DailyFolder is the preference that holds the folder of the daily backups; empty: none are made.
const DailyFolder = "daily backup folder"

// chooseDaily asks for the folder that a backup is written to on each day that the window is open.
func (w *Window) chooseDaily() {
	now := w.app.Preferences().String(DailyFolder)
	if now == "" {
		now = "path of a folder, best on another disk"
	}
	w.ask(asking{title: "Daily backup", what: "On each day that the window is open, a whole copy is written there. It keeps the last " +
		"eight. Empty: no daily backup.",
		hint: now, verb: "Use it", of: pick.For{What: "folder", Folders: true}}, func(path string) {
		w.app.Preferences().SetString(DailyFolder, path)
		if path == "" {
			w.say(desk.State{Notice: "No daily backup is made."})
			return
		}
		w.say(desk.State{Notice: "From now on, a daily backup is written to " + path + ", the first within half an hour."})
	})
}
