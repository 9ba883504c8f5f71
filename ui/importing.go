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
	"walkline/valuation/lot"
)

// Import lets the user choose a table of comparables for the open lot: by its path, or from a list of files.
func (w *Window) Import() {
	if w.state.Open == nil {
		w.say(desk.State{Notice: "Open the lot that the comparables are for first."})
		return
	}
	w.askTable("Import comparables", "A CSV file of vehicles for sale or sold. It can also be dropped on the window.", w.comparables())
}

// table is a kind of table that the window imports.
type table struct {
	open    func(data []byte) (desk.Sheet, error)
	read    func(s desk.Sheet) (usable int, refused []desk.Refusal, err error)
	apply   func(ctx context.Context, s desk.State, sheet desk.Sheet) (desk.State, []desk.Refusal)
	refused func(s desk.Sheet) ([]byte, error)
	options func(m *matching) []option
}

// comparables returns the table of comparables for the open lot.
func (w *Window) comparables() table {
	return table{
		open: func(data []byte) (desk.Sheet, error) {
			return w.desk.OpenSheet(context.Background(), data, w.state.Open.Case.Currency)
		},
		read: func(s desk.Sheet) (int, []desk.Refusal, error) {
			rows, refused, err := w.desk.Importer.Read(s)
			return len(rows), refused, err
		},
		apply: w.desk.Apply, refused: w.desk.Importer.Refused,
		options: func(m *matching) []option {
			st := &m.sheet.Stated
			return []option{{"Numbers like", desk.MarkWays, &st.Marks}, {"Dates", desk.DateWays, &st.Dates}, {"Mileage in", []string{"mi", "km"}, &st.Unit},
				{"Distance in", []string{"mi", "km"}, &st.Distance}, {"Prices", []string{"asked", "sold"}, &st.Kind}}
		},
	}
}

// askTable asks for a table of a kind: by its path, or from a list of files.
func (w *Window) askTable(title, help string, t table) {
	path := widget.NewEntry()
	path.SetPlaceHolder("path of a CSV file")
	var d *dialog.CustomDialog
	take := func() {
		d.Hide()
		w.readFile(storage.NewFileURI(strings.TrimSpace(path.Text)), t)
	}
	path.OnSubmitted = func(string) { take() }
	browse := widget.NewButton("Look for it…", func() { d.Hide(); w.browse(t) })
	body := container.NewVBox(widget.NewLabel(help), container.NewBorder(nil, nil, nil, browse, path))
	d = dialog.NewCustomWithoutButtons(title, body, w.window)
	d.SetButtons([]fyne.CanvasObject{widget.NewButton("Cancel", func() { d.Hide() }), widget.NewButton("Read", take)})
	d.Resize(fyne.NewSize(640, 180))
	w.open(d)
	w.window.Canvas().Focus(path)
}

// browse lets the user choose a file from a list.
func (w *Window) browse(t table) {
	d := dialog.NewFileOpen(func(f fyne.URIReadCloser, err error) {
		if err != nil || f == nil {
			w.failed("read the file", err)
			return
		}
		w.readOpen(f, t)
	}, w.window)
	d.Resize(fyne.NewSize(860, 560))
	w.open(d)
}

// Drop takes files dropped on the window: pictures become photographs of the open lot, of the selected area while Damage is
// shown and of the whole vehicle elsewhere; any other file is read as a table. While a dialog is open it does nothing.
func (w *Window) Drop(files []fyne.URI) {
	if w.modal || len(files) == 0 {
		return
	}
	var paths []string
	for _, f := range files {
		paths = append(paths, f.Path())
	}
	pictures := photoFiles(paths)
	switch {
	case w.state.Place == desk.Builds:
		w.readFile(files[0], w.pastBuys())
	case w.state.Open == nil:
		w.say(desk.State{Notice: "Open the lot that the file is for, then drop it again."})
	case len(pictures) > 0:
		w.takePhotos(pictures, w.droppedOn(), lot.Before)
	default:
		w.readFile(files[0], w.comparables())
	}
}

// droppedOn returns the area that dropped pictures are of.
func (w *Window) droppedOn() string {
	if w.state.Place != desk.Worksheet {
		return ""
	}
	area, shown := w.sheet().DamageShown()
	if !shown {
		return ""
	}
	return area
}

func (w *Window) readFile(u fyne.URI, t table) {
	f, err := storage.Reader(u)
	if err != nil {
		w.failed("open "+u.Path(), err)
		return
	}
	w.readOpen(f, t)
}

// failed says what went wrong; no error says nothing.
func (w *Window) failed(doing string, err error) {
	if err != nil {
		w.say(desk.State{Trouble: "Could not " + doing + ": " + err.Error()})
	}
}

// mostBytes bounds what is read of a file; the reader refuses as much with its own sentence.
const mostBytes = 65 << 20

func (w *Window) readOpen(f fyne.URIReadCloser, t table) {
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(f, mostBytes))
	if err != nil {
		w.failed("read "+f.URI().Name(), err)
		return
	}
	sheet, err := t.open(data)
	if err != nil {
		w.failed("read "+f.URI().Name(), err)
		return
	}
	w.match(f.URI().Name(), sheet, t)
}

// matching is the dialog in which a table's columns are matched and its notation stated.
type matching struct {
	w     *Window
	kind  table
	name  string
	sheet desk.Sheet
	found *widget.Label
	body  *fyne.Container
}

// match opens the dialog for a table.
func (w *Window) match(name string, sheet desk.Sheet, t table) {
	m := &matching{w: w, kind: t, name: name, sheet: sheet, found: widget.NewLabel("")}
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
	stated := container.New(layout.NewFormLayout())
	for _, o := range m.kind.options(m) {
		m.option(stated, o)
	}
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

// option is one thing that is stated for a whole table.
type option struct {
	words string
	ways  []string
	at    *string
}

func (m *matching) option(form *fyne.Container, o option) {
	s := widget.NewSelect(o.ways, nil)
	s.SetSelected(*o.at)
	s.OnChanged = func(way string) { *o.at = way; m.preview() }
	form.Add(widget.NewLabel(o.words))
	form.Add(s)
}

// mostRefusals is how many refused rows the dialog lists.
const mostRefusals = 4

// preview says what the table gives as it is stated.
func (m *matching) preview() {
	usable, refused, err := m.kind.read(m.sheet)
	if err != nil {
		m.found.SetText("! " + err.Error())
		return
	}
	lines := []string{fmt.Sprintf("Usable: %d of %d rows. Refused: %d.", usable, usable+len(refused), len(refused))}
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
		s, refused = m.kind.apply(ctx, s, m.sheet)
		return s
	})
	if len(refused) > 0 {
		m.w.offerRefused(m.sheet, refused, m.kind)
	}
}

// offerRefused lists every refused row with its line and reason, and saves them as a table that can be corrected.
func (w *Window) offerRefused(sheet desk.Sheet, refused []desk.Refusal, t table) {
	var lines []string
	for _, r := range refused {
		lines = append(lines, fmt.Sprintf("line %d: %s", r.Line, r.Reason))
	}
	list := widget.NewLabel(strings.Join(lines, "\n"))
	list.Wrapping = fyne.TextWrapWord
	d := dialog.NewCustomConfirm(fmt.Sprintf("Refused rows: %d", len(refused)), "Save them to correct…", "Leave them", container.NewVScroll(list), func(save bool) {
		if save {
			w.saveRefused(sheet, t)
		}
	}, w.window)
	d.Resize(fyne.NewSize(760, 420))
	w.open(d)
}

func (w *Window) saveRefused(sheet desk.Sheet, t table) {
	data, err := t.refused(sheet)
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
