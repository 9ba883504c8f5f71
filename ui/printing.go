package ui

import (
	"context"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/task"
	"walkline/ui/widgets"
	"walkline/ui/widgets/pick"
)

// printing is a file to print on its way to the disk.
type printing struct {
	title string            // of the dialog, and in what is said: "Decision sheet"
	name  string            // the file's
	kind  string            // what file it is, in a sentence
	more  fyne.CanvasObject // asked beside its place; nil: nothing
	make  func() ([]byte, error)
	save  func(ctx context.Context, path string) error // writes the file itself, and never over another; make is not used then
}

// printable says what a PDF is for.
const printable = "A PDF file. Open it with any viewer to print it."

// PrintDecision asks where to put the decision sheet of the lot in hand, and writes it there.
func (w *Window) PrintDecision() {
	o := w.state.InHand()
	switch {
	case o == nil:
		w.say(desk.State{Notice: "First open the lot that the decision sheet is for."})
		return
	case len(o.Faults) > 0:
		w.say(desk.State{Trouble: "There is no verdict to print yet. The lot's worksheet names what is still to be entered."})
		return
	}
	lot := *o
	more, paper := w.choosePaper()
	w.print(printing{title: "Decision sheet", name: desk.FileName(o.Case.Lot, "decision", ".pdf"), kind: printable, more: more,
		make: func() ([]byte, error) { return w.desk.DecisionSheet(context.Background(), lot, *paper) }})
}

// choosePaper returns the choice of a paper with the name of the one chosen, which is kept for the next time.
func (w *Window) choosePaper() (fyne.CanvasObject, *string) {
	paper := w.app.Preferences().String(paperKept)
	choice := widgets.NewSelect(papers, nil)
	choice.SetSelectedIndex(max(slices.Index(paperNames, paper), 0))
	choice.OnChanged = func(string) {
		paper = paperNames[choice.SelectedIndex()]
		w.app.Preferences().SetString(paperKept, paper)
	}
	return container.NewHBox(widget.NewLabel("Paper"), form.Roomy(choice, papers)), &paper
}

// PrintPlan asks where to put the plan of the sale day, and writes it there.
func (w *Window) PrintPlan() {
	plan := w.state.Planned()
	if plan == nil {
		w.say(desk.State{Notice: "First open the sale plan. It has to be worked out before it is printed."})
		return
	}
	more, paper := w.choosePaper()
	w.print(printing{title: "Sale plan", name: "sale plan " + string(w.state.Day.Date) + ".pdf", kind: printable, more: more,
		make: func() ([]byte, error) { return w.desk.PlanSheet(*plan, *paper) }})
}

// paperKept is the setting of the toolkit that keeps the paper chosen last, by its name among paperNames: the printer is the machine's.
const paperKept = "paper"

// The papers of a decision sheet, as the user reads them and as the press names them.
var (
	papers     = []string{"usual for the currency", "Letter", "A4"}
	paperNames = []string{"", "letter", "a4"}
)

// PrintRebuilt asks where to put the file for the rebuilt inspection of the open build, and writes it there.
func (w *Window) PrintRebuilt() {
	o := w.state.Build
	if o == nil || w.state.Place != desk.Builds {
		w.say(desk.State{Notice: "First open the build that the file is for."})
		return
	}
	built, by := *o, w.state.Shop.Builder
	w.print(printing{title: "File for the rebuilt inspection", name: desk.FileName(o.Case.Lot, "rebuilt inspection", ".pdf"), kind: printable,
		make: func() ([]byte, error) { return w.desk.RebuiltFile(context.Background(), built, by) }})
}

// printSetting remembers the folder of the file printed last.
const printSetting = "print folder"

// printFolder is where the next file is proposed: beside the last one, else in the user's own folder.
func (w *Window) printFolder() string {
	var folder string
	if found, err := w.desk.Book.Setting(context.Background(), printSetting, &folder); err == nil && found {
		return folder
	}
	home, err := os.UserHomeDir()
	if err != nil {
		return ""
	}
	return home
}

// print asks for a place, by its path or from a list, and writes the file there.
func (w *Window) print(p printing) {
	path := widgets.NewTextEntry()
	path.SetPlaceHolder("path of the file")
	path.SetText(filepath.Join(w.printFolder(), p.name))
	problem := widgets.NewCaption("")
	var d *dialog.CustomDialog
	save := w.handler(func() {
		to := strings.TrimSpace(path.Text)
		why := placeFor(to)
		if _, err := os.Lstat(to); why == "" && err == nil && p.save != nil {
			why = "There is a file of that name already: choose another name."
		}
		if why != "" {
			problem.SetWarning(true)
			problem.SetText("! " + why)
			return
		}
		d.Hide()
		w.unlessThere(p, to)
	})
	path.OnSubmitted = func(string) { save() }
	path.OnEscape = func() { d.Hide() }
	browse := widgets.NewButton("Look for a place…", w.handler(func() { w.pickPlace(path) }))
	body := container.NewVBox(widget.NewLabel(p.kind),
		container.NewBorder(nil, nil, nil, browse, path), problem)
	if p.more != nil {
		body.Add(p.more)
	}
	d = dialog.NewCustomWithoutButtons(p.title, body, w.window)
	d.SetButtons([]fyne.CanvasObject{widgets.NewButton("Cancel", func() { d.Hide() }), widgets.NewButton("Save", save)})
	d.Resize(fyne.NewSize(720, 240))
	w.open(d)
	w.focusIn(path)
}

// placeFor says in a sentence why a file cannot be put at a path; empty: it can.
func placeFor(path string) string {
	switch {
	case path == "":
		return "Enter where to put the file."
	case !filepath.IsAbs(path):
		return "Enter the whole path, starting at the root of the disk."
	}
	if info, err := os.Stat(path); err == nil && info.IsDir() {
		return "That is a folder: add a name for the file."
	}
	if info, err := os.Stat(filepath.Dir(path)); err != nil || !info.IsDir() {
		return "There is no folder " + filepath.Dir(path) + "."
	}
	return ""
}

// unlessThere writes the file, after a question when there is one of that name.
func (w *Window) unlessThere(p printing, path string) {
	if _, err := os.Stat(path); err != nil {
		w.write(p, path)
		return
	}
	there := widget.NewLabel("There is a file " + path + " already.")
	w.open(w.question("Replace it?", "Replace it", "Keep it", there, handling(w, func(yes bool) {
		if yes {
			w.write(p, path)
		}
	})))
}

// write makes the file away from the window, writes it and says where it is.
func (w *Window) write(p printing, path string) {
	w.say(desk.State{Notice: "Writing " + path + "…"})
	task.Start(w.runner, task.Order[string]{Key: "print",
		Work: func(ctx context.Context) (string, error) {
			if p.save != nil {
				return path, p.save(ctx, path)
			}
			data, err := p.make()
			if err != nil {
				return "", err
			}
			return path, w.desk.Put(path, data)
		},
		Show: func(path string, err error) { w.written(p, path, err) }})
}

// written says where a file is, and remembers its folder.
func (w *Window) written(p printing, path string, err error) {
	if err != nil {
		w.failed("write the "+strings.ToLower(p.title), err)
		return
	}
	said := desk.State{Notice: "The " + strings.ToLower(p.title) + " is in " + path}
	if err := w.desk.Book.PutSetting(context.Background(), printSetting, filepath.Dir(path)); err != nil {
		said.Trouble = said.Notice + ", but its folder could not be remembered: " + err.Error()
	}
	w.say(said)
	w.saved.is(path)
}

// pickPlace lets the user pick the folder of a file that is to be written; its name stays.
func (w *Window) pickPlace(path *widgets.TextEntry) {
	name := filepath.Base(path.Text)
	w.pick("Folder for "+name, "Put it here", pick.For{Folder: filepath.Dir(path.Text), Folders: true, What: "folder"},
		func(folders []string) {
			path.SetText(filepath.Join(folders[0], name))
			w.focusIn(path)
		})
}
