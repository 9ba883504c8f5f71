package ui

import (
	"context"
	"fmt"
	"io"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/desk"
	"walkline/ui/widgets"
)

// Import lets the user choose a table of comparables for the open lot: by its path, or from a list of files.
func (w *Window) Import() {
	if w.state.Open == nil {
		w.say(desk.State{Notice: "Open the lot that the comparables are for first."})
		return
	}
	path := widget.NewEntry()
	path.SetPlaceHolder("path of a CSV file")
	var d *dialog.CustomDialog
	take := func() {
		d.Hide()
		w.readFile(storage.NewFileURI(strings.TrimSpace(path.Text)))
	}
	path.OnSubmitted = func(string) { take() }
	browse := widget.NewButton("Look for it…", func() { d.Hide(); w.browse() })
	body := container.NewVBox(widget.NewLabel("A CSV file of vehicles for sale or sold. It can also be dropped on the window."),
		container.NewBorder(nil, nil, nil, browse, path))
	d = dialog.NewCustomWithoutButtons("Import comparables", body, w.window)
	d.SetButtons([]fyne.CanvasObject{widget.NewButton("Cancel", func() { d.Hide() }), widget.NewButton("Read", take)})
	d.Resize(fyne.NewSize(640, 180))
	w.open(d)
	w.window.Canvas().Focus(path)
}

// browse lets the user choose a file from a list.
func (w *Window) browse() {
	d := dialog.NewFileOpen(func(f fyne.URIReadCloser, err error) {
		if err != nil || f == nil {
			w.failed("read the file", err)
			return
		}
		w.readOpen(f)
	}, w.window)
	d.Resize(fyne.NewSize(860, 560))
	w.open(d)
}

// dropped takes a file dropped on the window; while a dialog is open it does nothing.
func (w *Window) dropped(_ fyne.Position, files []fyne.URI) {
	if w.modal || len(files) == 0 {
		return
	}
	if w.state.Open == nil {
		w.say(desk.State{Notice: "Open the lot that the comparables are for, then drop the file again."})
		return
	}
	w.readFile(files[0])
}

func (w *Window) readFile(u fyne.URI) {
	f, err := storage.Reader(u)
	if err != nil {
		w.failed("open "+u.Path(), err)
		return
	}
	w.readOpen(f)
}

// failed says what went wrong; no error says nothing.
func (w *Window) failed(doing string, err error) {
	if err != nil {
		w.say(desk.State{Trouble: "Could not " + doing + ": " + err.Error()})
	}
}

// mostBytes bounds what is read of a file; the reader refuses as much with its own sentence.
const mostBytes = 65 << 20

func (w *Window) readOpen(f fyne.URIReadCloser) {
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(f, mostBytes))
	if err != nil {
		w.failed("read "+f.URI().Name(), err)
		return
	}
	sheet, err := w.desk.OpenSheet(context.Background(), data, w.state.Open.Case.Currency)
	if err != nil {
		w.failed("read "+f.URI().Name(), err)
		return
	}
	w.match(f.URI().Name(), sheet)
}

// matching is the dialog in which a table's columns are matched and its notation stated.
type matching struct {
	w     *Window
	name  string
	sheet desk.Sheet
	found *widget.Label
	body  *fyne.Container
}

// match opens the dialog for a table.
func (w *Window) match(name string, sheet desk.Sheet) {
	m := &matching{w: w, name: name, sheet: sheet, found: widget.NewLabel("")}
	m.found.Wrapping = fyne.TextWrapWord
	m.build()
	m.preview()
	d := dialog.NewCustomConfirm("Import "+name, "Import", "Cancel", m.body, func(yes bool) {
		if yes {
			m.apply()
		}
	}, w.window)
	d.Resize(fyne.NewSize(1080, 600))
	w.open(d)
}

func (m *matching) build() {
	columns := container.New(layout.NewGridLayoutWithColumns(3), widgets.NewCaption("Column"), widgets.NewCaption("is read as"), widgets.NewCaption("first values"))
	for i, name := range m.sheet.Header {
		s := widget.NewSelect(m.sheet.Fields, nil)
		s.SetSelected(m.sheet.Stated.Match[i])
		s.OnChanged = func(field string) { m.sheet.Stated.Match[i] = field; m.preview() }
		columns.Add(widget.NewLabel(name))
		columns.Add(s)
		columns.Add(widget.NewLabel(m.sample(i)))
	}
	st := &m.sheet.Stated
	stated := container.New(layout.NewFormLayout())
	m.option(stated, "Numbers like", desk.MarkWays, &st.Marks)
	m.option(stated, "Dates", desk.DateWays, &st.Dates)
	m.option(stated, "Mileage in", []string{"mi", "km"}, &st.Unit)
	m.option(stated, "Distance in", []string{"mi", "km"}, &st.Distance)
	m.option(stated, "Prices", []string{"asked", "sold"}, &st.Kind)
	side := container.NewVBox(stated)
	for _, d := range m.sheet.Doubts {
		side.Add(widgets.NewNote(widgets.Care, d.Text))
	}
	split := container.NewHSplit(container.NewVScroll(columns), container.NewVScroll(side))
	split.Offset = 0.64
	foot := container.NewVScroll(m.found)
	foot.SetMinSize(fyne.NewSize(0, footHeight))
	m.body = container.NewBorder(nil, foot, nil, nil, split)
}

// footHeight is the room for what the table gives: a line of counts and a few refused rows.
const footHeight = 110

// sample returns the first values of a column.
func (m *matching) sample(column int) string {
	var values []string
	for _, r := range m.sheet.Sample {
		if column < len(r) && r[column] != "" && len(values) < 3 {
			values = append(values, r[column])
		}
	}
	s := strings.ReplaceAll(strings.Join(values, " · "), "\n", " ")
	if r := []rune(s); len(r) > 40 {
		s = string(r[:39]) + "…"
	}
	return s
}

func (m *matching) option(form *fyne.Container, words string, ways []string, at *string) {
	s := widget.NewSelect(ways, nil)
	s.SetSelected(*at)
	s.OnChanged = func(way string) { *at = way; m.preview() }
	form.Add(widget.NewLabel(words))
	form.Add(s)
}

// mostRefusals is how many refused rows the dialog lists.
const mostRefusals = 4

// preview says what the table gives as it is stated.
func (m *matching) preview() {
	rows, refused, err := m.w.desk.Importer.Read(m.sheet)
	if err != nil {
		m.found.SetText("! " + err.Error())
		return
	}
	lines := []string{fmt.Sprintf("Usable: %d of %d rows. Refused: %d.", len(rows), len(rows)+len(refused), len(refused))}
	for i, r := range refused {
		if i == mostRefusals {
			lines = append(lines, fmt.Sprintf("and %d more", len(refused)-i))
			break
		}
		lines = append(lines, fmt.Sprintf("line %d: %s", r.Line, r.Reason))
	}
	m.found.SetText(strings.Join(lines, "\n"))
}

// apply imports the rows and offers the refused ones for correction.
func (m *matching) apply() {
	var refused []desk.Refusal
	m.w.act(func(ctx context.Context, s desk.State) desk.State {
		s, refused = m.w.desk.Apply(ctx, s, m.sheet)
		return s
	})
	if len(refused) > 0 {
		m.w.offerRefused(m.sheet, refused)
	}
}

// offerRefused lists every refused row with its line and reason, and saves them as a table that can be corrected.
func (w *Window) offerRefused(sheet desk.Sheet, refused []desk.Refusal) {
	var lines []string
	for _, r := range refused {
		lines = append(lines, fmt.Sprintf("line %d: %s", r.Line, r.Reason))
	}
	list := widget.NewLabel(strings.Join(lines, "\n"))
	list.Wrapping = fyne.TextWrapWord
	d := dialog.NewCustomConfirm(fmt.Sprintf("Refused rows: %d", len(refused)), "Save them to correct…", "Leave them", container.NewVScroll(list), func(save bool) {
		if save {
			w.saveRefused(sheet)
		}
	}, w.window)
	d.Resize(fyne.NewSize(760, 420))
	w.open(d)
}

func (w *Window) saveRefused(sheet desk.Sheet) {
	data, err := w.desk.Importer.Refused(sheet)
	if err != nil {
		w.failed("write the refused rows", err)
		return
	}
	d := dialog.NewFileSave(func(f fyne.URIWriteCloser, err error) {
		if err != nil || f == nil {
			w.failed("save the refused rows", err)
			return
		}
		_, err = f.Write(data)
		if closing := f.Close(); err == nil {
			err = closing
		}
		w.failed("save the refused rows", err)
	}, w.window)
	d.SetFileName("refused.csv")
	w.open(d)
}
