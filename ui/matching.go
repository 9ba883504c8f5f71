package ui

import (
	"context"
	"fmt"
	"maps"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/task"
	"walkline/ui/view"
	"walkline/ui/widgets"
)

// matching is the dialog in which a table's columns are matched and its notation stated.
type matching struct {
	taking
	w      *Window
	stated *fyne.Container
	sheet  desk.Sheet
	found  *widget.Label
	first  *fyne.Container // the first rows as they will stand
	asked  *fyne.Container // what the table leaves open
	doubts *fyne.Container // what was read one way and could be read another
	titles *fyne.Container // what the words of its titles were read as
	side   *fyne.Container // holds both, and what is stated
	open   bool            // the dialog is shown
	body   *fyne.Container // holds what is laid out of the sheet
	shown  desk.Preview    // what it gives
	counts *fyne.Container // of usable and refused rows, and what puts them right
	mends  *widgets.Button
	chose  string                     // of the file's own choices, the one that was used last
	word   string                     // of a title, whose meaning was chosen last
	means  map[string]*widgets.Select // by the words of the titles: they outlive a preview, for one of them may have the keyboard
	agree  *widgets.Button            // takes the rows in
	said   bool                       // a question has just been answered: the keyboard goes on to the next
	own    map[int]string             // what the user said that single columns are
	again  func(desk.Preview)         // hears of each preview while rows are put right; nil: nothing does
}

// match opens the dialog for a table.
func (w *Window) match(t taking, name string, sheet desk.Sheet) {
	m := &matching{taking: t, w: w, sheet: sheet, stated: container.New(layout.NewFormLayout()), found: widget.NewLabel(""),
		first: container.NewVBox(), asked: container.NewVBox(), titles: container.NewVBox(), doubts: container.NewVBox(), open: true,
		body: container.NewStack(), means: map[string]*widgets.Select{}, own: map[int]string{}}
	m.found.Wrapping = fyne.TextWrapWord
	m.mends = widgets.NewButton("Put rows right…", w.handler(m.mend))
	m.mends.Hide()
	m.build()
	d := w.question("Import "+name, "Import", "Cancel", widgets.NewLayer(m.body, w.runner), func(yes bool) {
		m.open = false
		w.runner.Cancel("preview")
		if w.runner.Cancel("reopen"); yes {
			m.take()
		}
		w.nextTable()
	})
	d.Resize(fyne.NewSize(1180, 660))
	m.agree = d.agree
	m.preview()
	w.open(d)
	m.onRival()
}

func (m *matching) build() {
	columns := container.NewVBox(inOne(widgets.NewCaption("Column"), widgets.NewCaption("is read as"), widgets.NewCaption("why"),
		widgets.NewCaption("first values")))
	for i, name := range m.sheet.Header {
		s := widgets.NewSelect(view.AllWords(m.sheet.Fields), nil)
		s.SetSelected(view.Words(m.sheet.Stated.Match[i]))
		why := widget.NewLabel(m.why(i))
		why.Wrapping = fyne.TextWrapWord
		s.OnChanged = func(string) {
			m.become(i, m.sheet.Fields[s.SelectedIndex()], why)
		}
		columns.Add(widget.NewSeparator())
		columns.Add(inOne(cut(name), s, why, cut(m.sample(i))))
	}
	m.stated.RemoveAll()
	m.ofFile()
	m.options(m)
	m.side = container.NewVBox(m.asked, m.stated)
	m.side.Add(m.doubts)
	m.side.Add(m.titles)
	split := container.NewHSplit(container.NewVScroll(columns), container.NewVScroll(m.side))
	split.Offset = 0.6
	rows := container.NewScroll(m.first)
	rows.SetMinSize(fyne.NewSize(0, footHeight/2))
	m.counts = container.NewBorder(nil, nil, nil, container.NewVBox(m.mends), m.found)
	foot := container.NewVScroll(m.counts)
	foot.SetMinSize(fyne.NewSize(0, footHeight/2))
	m.body.Objects = []fyne.CanvasObject{container.NewBorder(nil, container.NewVBox(foot, rows), nil, nil, split)}
	m.body.Refresh()
}

// inOne lays out side by side what belongs to one column of a table, each on the first line of the row, however many lines another needs.
func inOne(cells ...fyne.CanvasObject) fyne.CanvasObject {
	row := container.New(layout.NewGridLayoutWithColumns(len(cells)))
	for _, c := range cells {
		row.Add(container.NewVBox(c))
	}
	return row
}

// why returns why a column is taken for what it is.
func (m *matching) why(column int) string {
	if column < len(m.sheet.Why) {
		return m.sheet.Why[column]
	}
	return ""
}

// ofComparables adds what is stated for a table of comparables.
func (m *matching) ofComparables() {
	st := &m.sheet.Stated
	m.option("Numbers like", desk.MarkWays, &st.Marks)
	m.option("Dates", desk.DateWays, &st.Dates)
	m.option("Mileage in", []string{"mi", "km"}, &st.Unit)
	m.option("Distance in", []string{"mi", "km"}, &st.Distance)
	m.option("Prices", []string{"asked", "sold"}, &st.Kind)
	m.untitled()
}

// ofRunList adds what is stated for a run list.
func (m *matching) ofRunList() {
	st := &m.sheet.Stated
	sale := widgets.NewTextEntry()
	sale.SetPlaceHolder("if no column says")
	sale.Complete("Sale")
	sale.SetText(st.Sale)
	sale.OnChanged = func(s string) { st.Sale = strings.TrimSpace(s); m.preview() }
	m.row("Sale", sale)
	day := widgets.NewTextEntry()
	day.SetPlaceHolder("if no column says")
	day.SetText(form.DayShown(st.SaleDate))
	says := widgets.NewCaption("")
	day.OnChanged = func(s string) {
		d, read, err := form.ReadDay(s)
		if says.SetText(read); err != nil {
			says.SetText("! " + err.Error())
			return
		}
		st.SaleDate = d
		m.preview()
	}
	m.row("Sale day", container.NewBorder(nil, nil, nil, says, day))
	m.option("Numbers like", desk.MarkWays, &st.Marks)
	m.option("Odometers in", []string{"mi", "km"}, &st.Unit)
	m.option("Dates", desk.DateWays, &st.Dates)
	m.option("Prices in", m.sheet.Currencies, &st.Currency)
}

// footHeight is the room for what the table gives: a line of counts, a few refused rows, and the first rows as they will stand.
const footHeight = 216

// sample returns the first values of a column.
func (m *matching) sample(column int) string {
	var values []string
	for _, r := range m.sheet.Sample {
		if column < len(r) && r[column] != "" && len(values) < 3 {
			values = append(values, r[column])
		}
	}
	return short(strings.Join(values, " · "), 40)
}

// option adds a choice of what is stated for the whole table.
func (m *matching) option(words string, ways []string, at *string) {
	s := widgets.NewSelect(ways, nil)
	s.SetSelected(*at)
	s.OnChanged = func(way string) {
		*at = way
		m.sheet.Doubts = slices.DeleteFunc(slices.Clone(m.sheet.Doubts), func(d desk.Doubt) bool { // it is said now
			return m.sheet.Stated.Notation(d.Option) == at
		})
		m.preview()
	}
	m.row(words, s)
}

func (m *matching) row(words string, field fyne.CanvasObject) {
	m.stated.Add(widget.NewLabel(words))
	m.stated.Add(field)
}

// mostRefusals is how many refused rows the dialog lists.
const mostRefusals = 4

// preview says what the table gives as it is stated, worked out away from the window.
func (m *matching) preview() {
	sheet := m.sheet
	sheet.Stated.Match, sheet.Stated.Titles = slices.Clone(sheet.Stated.Match), maps.Clone(sheet.Stated.Titles)
	task.Start(m.w.runner, task.Order[desk.Preview]{Key: "preview",
		Work: func(ctx context.Context) (desk.Preview, error) {
			return desk.Foreseen(desk.Watched(ctx, func(done float64) { task.Report(ctx, done, "") }), m.tables, sheet)
		},
		Report: func(done float64, _ string) {
			if m.open && done > 0 {
				m.found.SetText(fmt.Sprintf("Reading the rows again: %.0f %%. Another change, or Cancel, stops it.", 100*done))
			}
		},
		Show: func(p desk.Preview, err error) {
			switch {
			case !m.open:
			case err != nil:
				m.found.SetText("! " + err.Error())
				m.close(true)
			default:
				m.show(p)
			}
		}})
}

// show writes a preview.
func (m *matching) show(p desk.Preview) {
	lines := []string{fmt.Sprintf("Usable: %s of %s rows. Refused: %s. Passed over: %s.", desk.Grouped(p.Rows),
		desk.Grouped(p.Rows+len(p.Refused)), desk.Grouped(len(p.Refused)), desk.Grouped(len(p.Skipped)))}
	if len(p.Uses) > 0 {
		lines = append(lines, strings.Join(p.Uses, " "))
	}
	lines = append(lines, few(p.Refused)...)
	lines = append(lines, few(p.Skipped)...)
	m.found.SetText(strings.Join(lines, "\n"))
	m.shown, m.mends.Hidden = p, len(p.Refused)+len(p.Odd) == 0 && len(m.sheet.Stated.Mended) == 0
	m.counts.Refresh() // makes room for the button
	m.ask(p)
	m.close(len(m.sheet.Rivals)+len(p.Open) > 0)
	m.side.Refresh() // what is left moves up
	m.goOn()
	if m.again != nil {
		m.again(p)
	}
	m.first.RemoveAll()
	if len(p.First) > 0 {
		m.first.Add(firstRows(p))
	}
	if len(p.Teaches) > 0 {
		m.first.Add(form.Small(strings.Join(p.Teaches[:min(len(p.Teaches), mostTaught)], "\n")))
	}
	if more := len(p.Teaches) - mostTaught; more > 0 {
		m.first.Add(form.Small(fmt.Sprintf("And %d more rows.", more)))
	}
}

// mostTaught is how many rows of past buys are told what they teach.
const mostTaught = 200

// few writes the first of a list of rows.
func few(list []desk.Refusal) []string {
	var lines []string
	for i, r := range list {
		if i == mostRefusals {
			return append(lines, fmt.Sprintf("and %d more", len(list)-i))
		}
		lines = append(lines, brief(fmt.Sprintf("line %d: %s", r.Line, r.Reason), mostShown/10))
	}
	return lines
}

// firstRows returns the first rows as they will stand, without the fields that none of them has.
func firstRows(p desk.Preview) fyne.CanvasObject {
	var shown []int
	names := append([]string{"line"}, p.Columns...)
	for i := range names {
		if slices.ContainsFunc(p.First, func(row []string) bool { return row[i] != "" }) {
			shown = append(shown, i)
		}
	}
	grid := container.New(layout.NewGridLayoutWithColumns(len(shown)))
	for _, i := range shown {
		grid.Add(widgets.NewCaption(view.Words(names[i])))
	}
	for _, row := range p.First {
		for _, i := range shown {
			grid.Add(widgets.NewLine(short(dayOr(names[i], row[i]), 24)))
		}
	}
	return grid
}

// short returns a text in one line of so many characters.
func short(text string, most int) string {
	text = strings.ReplaceAll(text, "\n", " ")
	if r := []rune(text); len(r) > most {
		return string(r[:most-1]) + "…"
	}
	return text
}

// take takes the rows in and offers the refused ones for correction.
func (m *matching) take() {
	m.apply(m.sheet, func(refused []desk.Refusal) {
		if len(refused) > 0 {
			m.offerRefused(refused)
		}
	})
}

// offerRefused lists every refused row with its line and reason, and saves them as a table that can be corrected.
func (m *matching) offerRefused(refused []desk.Refusal) {
	var lines []string
	for _, r := range refused {
		lines = append(lines, fmt.Sprintf("line %d: %s", r.Line, r.Reason))
	}
	d := m.w.question(fmt.Sprintf("Refused rows: %d", len(refused)), "Save them to correct…", "Leave them", newListing(lines),
		func(save bool) {
			if save {
				m.saveRefused()
			}
		})
	d.Resize(fyne.NewSize(760, 420))
	m.w.open(d)
}

func (m *matching) saveRefused() {
	m.w.print(printing{title: "Table of refused rows", name: "refused.csv",
		kind: "The refused rows as a CSV file. Correct them and import it.",
		make: func() ([]byte, error) { return m.refused(m.sheet) }})
}
