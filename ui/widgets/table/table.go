package table

import (
	"image"
	"strings"
	"time"
	"walkline/ui/widgets/draw"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/theme"
)

var _ fyne.Focusable = (*Table)(nil)

// Column is one column of a table.
type Column struct {
	Title    string
	Width    float32 // at text scale 1
	Right    bool    // figures: right-aligned
	Sortable bool
	Grows    bool   // takes a share of the room that the columns leave, and gives one where they have too little
	Fits     string // the longest words of the column: they are never cut
	Pictured bool   // shows pictures: the rows are as high as they need
	Meaning  string // told while the pointer or the keyboard is on its title
}

// Row is one row of a table.
type Row struct {
	Cells   []string
	Ticked  bool
	Muted   bool // of second rank: left out, passed
	Strong  bool // a total: bold, and without a box
	Boxless bool // can't be ticked: without a box

	// Picture, where set, returns what a pictured column shows in place of its words; nil: the words.
	Picture func(column int) image.Image
}

// boxed reports whether the row has a box to tick.
func (r Row) boxed() bool { return !r.Strong && !r.Boxless }

// Table shows rows. A whole row is selected at a time. On the keyboard up, down, page up, page down, home and end walk the rows, Enter
// opens one, space ticks it; left and right walk the headers and S sorts by the marked one. The program sorts: the table only tells and
// shows which way.
type Table struct {
	widget.Table

	// OnSelected is called when the user goes to a row.
	OnSelected func(row int)
	// OnOpen is called on Enter, or a second tap at once on the same row.
	OnOpen func(row int)
	// OnTick, when set before the first showing, gives the table a first column of boxes; it is called when the user ticks or unticks, and
	// shows the row as it then is.
	OnTick func(row int, ticked bool)
	// OnTickMany, when set beside OnTick, is called when the user ticks all rows from one to another.
	OnTickMany func(from, to int)
	// OnDelete is called on the key Delete.
	OnDelete func(row int)
	// OnWidth is called when the user has given a column another width, at text scale 1.
	OnWidth func(column int, width float32)
	// Menu, when set, returns what may be done with a row: it opens on the second mouse button or the menu key.
	Menu func(row int) []*fyne.MenuItem
	// OnSight is called when other rows come in sight.
	OnSight func()
	// OnSort is called when the user asks for another order.
	OnSort func(column int, falling bool)
	// Empty is said in place of rows.
	Empty string

	columns  []Column
	count    int
	sight    int // the first row in sight
	row      func(int) Row
	selected int
	hovered  int
	marked   int // column whose header the keyboard is on
	sorted   int
	falling  bool
	focused  bool
	tapped   time.Time
	held     fyne.KeyModifier // while the mouse was pressed
	given    []float32        // widths of the columns as they were laid out
	heads    map[int]*headCell
	scale    float32 // text scale and width that the columns are sized for
	width    float32
}

// New returns an empty table.
func New(columns []Column) *Table {
	t := &Table{columns: columns, selected: -1, hovered: -1, sorted: -1, heads: map[int]*headCell{}}
	t.Length = func() (int, int) { return max(t.count, 1), len(t.columns) + t.lead() }
	t.CreateCell = func() fyne.CanvasObject { return newCell(t) }
	t.UpdateCell = t.updateCell
	t.ShowHeaderRow = true
	t.CreateHeader = func() fyne.CanvasObject { return newHeadCell(t) }
	t.UpdateHeader = t.updateHeader
	t.HideSeparators = true
	t.Table.OnSelected = func(id widget.TableCellID) { t.cellTapped(id) }
	t.ExtendBaseWidget(t)
	return t
}

// lead is 1 when the first column holds boxes.
func (t *Table) lead() int {
	if t.OnTick != nil {
		return 1
	}
	return 0
}

// SetRows shows rows and calls no handler. The selected row stays by its place.
func (t *Table) SetRows(rows []Row) {
	t.SetSource(len(rows), func(i int) Row { return rows[i] })
}

// SetSource is SetRows for many rows: row is asked for those in sight only, and again each time they are drawn.
func (t *Table) SetSource(count int, row func(int) Row) {
	fewer := count < t.count
	t.count, t.row = count, row
	t.selected = min(t.selected, count-1)
	t.hovered = -1
	t.Refresh()
	if fewer { // what is left may lie above what was in sight
		t.ScrollTo(widget.TableCellID{Row: max(t.selected, 0), Col: 0})
	}
}

// Rows returns how many rows there are.
func (t *Table) Rows() int { return t.count }

// Refresh brings widths, heights and cells up to the theme.
func (t *Table) Refresh() {
	t.sizeColumns()
	t.Table.Refresh()
}

// Resize sizes the columns for the room and keeps the selected row in sight.
func (t *Table) Resize(size fyne.Size) {
	if size == t.Size() {
		return
	}
	t.Table.Resize(size)
	t.sizeColumns()
	t.show()
}

// sizeColumns gives the columns their widths; one that the user dragged stays until the table's own width changes.
func (t *Table) sizeColumns() {
	if t.scale == theme.Scale() && t.width == t.Size().Width {
		return
	}
	t.scale, t.width = theme.Scale(), t.Size().Width
	if t.lead() == 1 {
		t.SetColumnWidth(0, boxSide()+theme.Wide)
	}
	growing := 0
	for _, c := range t.columns {
		if c.Grows {
			growing++
		}
	}
	spare := t.width - t.Width()
	if spare < 0 && t.width < t.narrowest() {
		spare = 0 // it is scrolled sideways whatever the columns give
	}
	t.given = make([]float32, len(t.columns))
	for i, c := range t.columns {
		t.given[i] = c.width()
		if c.Grows {
			t.given[i] = max(t.given[i]+spare/float32(growing), leastShare*t.given[i])
		}
		t.SetColumnWidth(i+t.lead(), t.given[i])
	}
}

// narrowest returns the width of the columns where those that grow have given what they can.
func (t *Table) narrowest() float32 {
	width := t.Width()
	for _, c := range t.columns {
		if c.Grows {
			width -= (1 - leastShare) * c.width()
		}
	}
	return width
}

// leastShare is what a column that grows keeps of its width where there is too little room.
const leastShare = 0.7

// width returns the width that the column is given at the text scale of the moment.
func (c Column) width() float32 {
	width := c.Width * theme.Scale()
	if c.Fits != "" {
		width = max(width, draw.TextWidth(c.Fits, theme.SizeBody, fyne.TextStyle{})+2*theme.Space+theme.Half)
	}
	return width
}

// SetColumns shows other columns, or the same ones in other widths; the rows are to be set again.
func (t *Table) SetColumns(columns []Column) {
	t.columns, t.width, t.marked = columns, 0, min(t.marked, len(columns)-1)
	t.Refresh()
}

// DragEnd tells which column was given another width.
func (t *Table) DragEnd() {
	t.Table.DragEnd()
	for i, given := range t.given {
		if h := t.heads[i]; h != nil && h.column == i && t.OnWidth != nil && abs(h.Size().Width-given) > 1 {
			t.given[i] = h.Size().Width
			t.OnWidth(i, h.Size().Width/theme.Scale())
		}
	}
}

func abs(x float32) float32 { return max(x, -x) }

// Width returns the width that shows every column whole.
func (t *Table) Width() float32 {
	width := float32(0)
	if t.lead() == 1 {
		width = boxSide() + theme.Wide + theme.Half
	}
	for _, c := range t.columns {
		width += c.width() + theme.Half
	}
	return width
}

// SetSort shows which column the rows are sorted by; -1 for none.
func (t *Table) SetSort(column int, falling bool) {
	t.sorted, t.falling = column, falling
	t.Table.Refresh()
}

// SelectRow goes to a row and calls no handler; -1 for none.
func (t *Table) SelectRow(row int) {
	if row < -1 || row >= t.count {
		return
	}
	t.selected = row
	t.show()
}

// Selected returns the selected row, -1 for none.
func (t *Table) Selected() int { return t.selected }

// show scrolls to the selected row and redraws.
func (t *Table) show() {
	if t.selected >= 0 && t.Size().Height > 0 {
		t.ScrollTo(widget.TableCellID{Row: t.selected, Col: 0})
	}
	t.Table.Refresh()
}

// Facts returns every row in words, with the titles of its columns.
func (t *Table) Facts() []string {
	if t.count == 0 {
		return []string{t.Empty}
	}
	facts := make([]string, t.count)
	for i := range facts {
		r := t.row(i)
		var parts []string
		for j, cell := range r.Cells {
			if cell != "" && j < len(t.columns) {
				parts = append(parts, strings.TrimSpace(t.columns[j].Title+" "+cell))
			}
		}
		if t.OnTick != nil && r.boxed() {
			parts = append(parts, map[bool]string{true: "ticked", false: "not ticked"}[r.Ticked])
		}
		facts[i] = strings.Join(parts, ", ")
	}
	return facts
}

const openWithin = 400 * time.Millisecond

// cellTapped acts on a tap, after widget.Table has found its cell; the cell's own mark is taken back.
func (t *Table) cellTapped(id widget.TableCellID) {
	t.UnselectAll()
	if id.Row >= t.count {
		return
	}
	from, held := max(t.selected, 0), t.held
	t.held = 0
	again := id.Row == t.selected && time.Since(t.tapped) < openWithin
	t.tapped = time.Now()
	t.takeKeyboard()
	t.goTo(id.Row)
	switch {
	case t.OnTickMany != nil && held&fyne.KeyModifierShift != 0:
		t.OnTickMany(min(from, id.Row), max(from, id.Row))
	case t.OnTick != nil && held&fyne.KeyModifierShortcutDefault != 0:
		t.tick()
	case t.lead() == 1 && id.Col == 0:
		t.tick()
	case again:
		t.open()
	}
}

// takeKeyboard gives the keyboard to a table that was tapped, so that arrows and Enter go on from there.
func (t *Table) takeKeyboard() {
	if c := draw.CanvasOf(t); c != nil && !t.focused {
		c.Focus(t)
	}
}

func (t *Table) goTo(row int) {
	if row < 0 || row >= t.count || row == t.selected {
		return
	}
	t.selected = row
	t.show()
	if t.OnSelected != nil {
		t.OnSelected(row)
	}
}

// open opens the selected row; where none is, it goes to the first, so that Enter always leads on.
func (t *Table) open() {
	switch {
	case t.selected < 0:
		t.goTo(0)
	case t.OnOpen != nil:
		t.OnOpen(t.selected)
	}
}

func (t *Table) tick() {
	if t.selected < 0 || t.OnTick == nil || !t.row(t.selected).boxed() {
		return
	}
	t.OnTick(t.selected, !t.row(t.selected).Ticked)
}

// sortBy asks for an order: rising first, falling when the column leads already.
func (t *Table) sortBy(column int) {
	if column < 0 || column >= len(t.columns) || !t.columns[column].Sortable || t.OnSort == nil {
		return
	}
	falling := column == t.sorted && !t.falling
	t.SetSort(column, falling)
	t.OnSort(column, falling)
}

// FirstInSight returns the first row in sight, or one that lies a row or two above it; 0 where there is none.
func (t *Table) FirstInSight() int { return max(0, min(t.sight, t.count-1)) }

// sees notes that a row is being drawn: the first in sight is no later, and lies no further from it than the table is high.
func (t *Table) sees(row int) {
	rows := int(t.Size().Height/(max(t.rowHeight(), headHeight())+theme.Half)) + 1
	sight := max(min(t.sight, row), row-rows)
	if sight == t.sight {
		return
	}
	t.sight = sight
	if t.OnSight != nil {
		t.OnSight()
	}
}
