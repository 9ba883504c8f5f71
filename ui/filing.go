package ui

import (
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/desk"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/valuation/build"
	"walkline/valuation/lot"
)

// isBill reports whether a file may be that of a bill: a PDF or a picture.
func isBill(path string) bool { return isPhoto(path) || isPDF(path) }

func isPDF(path string) bool { return strings.EqualFold(filepath.Ext(path), ".pdf") }

// only returns the paths that pass.
func only(paths []string, pass func(string) bool) (out []string) {
	for _, p := range paths {
		if pass(p) {
			out = append(out, p)
		}
	}
	return out
}

// filed deals with dropped files where they may be those of a bill: on the open build it asks what they are. It reports whether it
// did; a picture on the page of the photographs is one, and any other file is a table.
func (w *Window) filed(paths []string) bool {
	papers, pdfs := only(paths, isBill), only(paths, isPDF)
	building := w.state.Place == desk.Builds && w.state.Build != nil && w.state.Build.Ours()
	switch {
	case building && len(papers) > 0 && (len(pdfs) > 0 || !w.builds().PhotosShown()):
		w.askFiles(papers, len(pdfs) == 0)
		return true
	case len(pdfs) > 0:
		w.say(desk.State{Notice: "A PDF is kept as the file of a bill: open its build, then drop it again."})
		return true
	}
	return false
}

// askFiles asks what files that were dropped on the open build are; only pictures can be photographs of it.
func (w *Window) askFiles(paths []string, pictures bool) {
	o := *w.state.Build
	names := make([]string, len(paths))
	for i, p := range paths {
		names[i] = filepath.Base(p)
	}
	words := widget.NewLabel("What is " + strings.Join(names, ", ") + "?")
	words.Wrapping = fyne.TextWrapWord
	body := container.NewVBox(words)
	d := dialog.NewCustomWithoutButtons("Dropped on "+view.BuildName(o.Bought), body, w.window)
	offer := func(words string, do func()) *widgets.Button {
		b := widgets.NewButton(words, w.handler(func() {
			d.Hide()
			do()
		}))
		b.Alignment = widget.ButtonAlignLeading
		body.Add(b)
		return b
	}
	at, bill := w.builds().BillInHand()
	first := offer("File of "+view.BillInHand(o, at, bill), func() { w.fileBills(o.ID, at, paths) })
	if at >= 0 {
		offer("File of a new bill", func() { w.fileBills(o.ID, -1, paths) })
	}
	if pictures {
		offer("Photo of the vehicle, taken after the work", func() { w.takePhotos(paths, "", lot.After) })
	}
	offer("None of these: leave it", func() {})
	d.Resize(fyne.NewSize(520, 0))
	w.openWith(d, func(e *fyne.KeyEvent) {
		switch e.Name {
		case fyne.KeyEscape:
			d.Hide()
		case fyne.KeyReturn, fyne.KeyEnter:
			first.OnTapped()
		}
	})
}

// fileBills keeps files and puts them to a bill of a build, -1: to the new one on the form, unless another build was opened meanwhile.
func (w *Window) fileBills(id int64, at int, paths []string) {
	w.builds().GoToBill(at)
	for _, path := range paths {
		w.keepFile(path, func(name, hash string) bool { return w.builds().FileOfBill(id, at, build.File{Name: name, Hash: hash}) })
	}
}
