package record

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/theme"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/ui/widgets/rail"
	"walkline/ui/widgets/table"
	"walkline/valuation/learn"
)

// Page is the page of the track record.
type Page struct {
	do       func(desk.Action)
	sections []*section
	rail     *rail.Rail
	waits    *widget.Label
	selected *widgets.Note
	empty    *fyne.Container
	full     *fyne.Container
	body     *fyne.Container
	record   *desk.TrackRecord
	undo     *widgets.Button // takes the last decision back
}

// section is one part of the page.
type section struct {
	name  string
	body  fyne.CanvasObject
	show  func(desk.TrackRecord)
	first fyne.Focusable
	noted bool // it shows itself what no figure of the record can show
}

// New returns the page, not yet showing a state.
func New(do func(desk.Action)) *Page {
	p := &Page{do: do, waits: widget.NewLabel("Working out the track record…"), selected: widgets.NewNote(widgets.Info, learn.Selection)}
	p.sections = []*section{newForecasts(), newChances(), newMoney(), newFactors(p), newHistory(p), newReplay(p)}
	var parts []rail.Section
	for _, s := range p.sections {
		parts = append(parts, rail.Section{Name: s.name, Body: s.body})
	}
	p.rail = rail.Across(parts, func(i int) {
		if p.record != nil {
			p.note(i)
			p.sections[i].show(*p.record)
		}
	})
	p.undo = widgets.NewButton("Undo", func() { do(desk.Undo()) })
	p.full = container.NewBorder(container.NewBorder(nil, nil, nil, p.undo, p.rail.Buttons), p.selected, nil, nil,
		container.New(form.Room{Width: 560, Height: 320}, p.rail.Room))
	p.empty = firstSteps(do)
	p.body = container.New(layout.NewCustomPaddedLayout(theme.Space, theme.Space, theme.Wide, theme.Wide),
		container.NewStack(p.waits, p.empty, p.full))
	return p
}

// firstSteps is what the page says while nothing was bought.
func firstSteps(do func(desk.Action)) *fyne.Container {
	words := widget.NewRichTextFromMarkdown("## No buy to learn from yet\n\nMark lots as bid and won on the Board: what was forecast is " +
		"frozen then. When a build is sold, what came is held against it here, " +
		"and factors of your own are proposed for the next bid.\n\nBuys from before this program can be imported: they show what they came " +
		"to, though nothing was forecast of them.")
	words.Wrapping = fyne.TextWrapWord
	past := widgets.NewButton("Import past buys…", func() { do(desk.Want(desk.ImportPastBuys)) })
	return container.NewCenter(container.New(form.FixedWidth{Width: 560},
		container.New(layout.NewCustomPaddedVBoxLayout(theme.Space), words, container.NewHBox(past))))
}

// Sections returns the names of the sections in order.
func (p *Page) Sections() []string { return p.rail.Names() }

// Go shows a section.
func (p *Page) Go(i int) { p.rail.Go(i) }

// Object returns the page to be laid out.
func (p *Page) Object() fyne.CanvasObject { return p.body }

// First returns what takes the keyboard in the section that is shown; nil while there is nothing.
func (p *Page) First() fyne.Focusable {
	if p.record == nil || p.record.Buys == 0 {
		return nil
	}
	return p.sections[p.rail.Current()].first
}

// Render writes a state into the page.
func (p *Page) Render(s desk.State) {
	p.record = s.Record
	p.undo.SetText("Undo: " + s.Reach.Undo)
	p.undo.Hidden = s.Reach.Undo == ""
	p.selected.Set(widgets.Info, view.SelectionWords(s.Record))
	p.waits.Hidden = s.Record != nil && s.Record.Problem == ""
	p.empty.Hidden = s.Record == nil || s.Record.Problem != "" || s.Record.Buys > 0
	p.full.Hidden = !p.waits.Hidden || !p.empty.Hidden
	if s.Record != nil && s.Record.Problem != "" {
		p.waits.SetText("! The track record could not be worked out: " + s.Record.Problem)
	}
	if !p.full.Hidden {
		p.note(p.rail.Current())
		p.sections[p.rail.Current()].show(*s.Record)
	}
	p.body.Refresh()
}

// note shows what no figure of the record can show below a section that does not show it itself.
func (p *Page) note(i int) {
	p.selected.Hidden = p.sections[i].noted
	p.full.Refresh()
}

// inWords is the least width of the columns that hold words: they share the room that is left.
const inWords = 150

// newTable returns a table with these columns.
func newTable(list []view.Column, empty string) *table.Table {
	columns := make([]table.Column, len(list))
	for i, c := range list {
		columns[i] = table.Column{Title: c.Title, Width: c.Width, Right: c.Figures, Grows: c.Width >= inWords}
	}
	t := table.New(columns)
	t.Empty = empty
	return t
}

// setRows shows rows of cells.
func setRows(t *table.Table, cells [][]string) {
	rows := make([]table.Row, len(cells))
	for i, c := range cells {
		rows[i] = table.Row{Cells: c}
	}
	t.SetRows(rows)
}
