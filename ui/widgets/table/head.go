package table

import (
	"image/color"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/theme"
	"walkline/ui/widgets/draw"
)

// headCell is the header of a column: its title, an arrow when the rows are sorted by it, a line under it when the keyboard is on
// it.
type headCell struct {
	widget.BaseWidget
	table  *Table
	column int

	words *draw.Text
	arrow *canvas.Polygon
	under *canvas.Rectangle
	right bool
}

func newHeadCell(t *Table) *headCell {
	h := &headCell{table: t, words: draw.NewText("", theme.SizeSmall, theme.ColorMuted), arrow: canvas.NewPolygon(3, color.Transparent),
		under: canvas.NewRectangle(color.Transparent)}
	h.ExtendBaseWidget(h)
	return h
}

// Tapped sorts by the column.
func (h *headCell) Tapped(*fyne.PointEvent) {
	draw.FocusOn(h.table)
	h.table.marked = max(h.column, 0)
	h.table.sortBy(h.column)
}

// MouseIn tells what the column means.
func (h *headCell) MouseIn(*desktop.MouseEvent) {
	if h.column >= 0 {
		draw.Explain(h, h.table.columns[h.column].Meaning)
	}
}

// MouseMoved does nothing.
func (h *headCell) MouseMoved(*desktop.MouseEvent) {}

// MouseOut takes it back.
func (h *headCell) MouseOut() { draw.Explain(h, "") }

// Cursor is a hand over a column that sorts.
func (h *headCell) Cursor() desktop.Cursor {
	if h.column >= 0 && h.table.columns[h.column].Sortable {
		return desktop.PointerCursor
	}
	return desktop.DefaultCursor
}

func (t *Table) updateHeader(id widget.TableCellID, o fyne.CanvasObject) {
	h := o.(*headCell)
	h.column = id.Col - t.lead()
	t.heads[h.column] = h
	h.words.Text.Text, h.right = "", false
	sorted := h.column >= 0 && h.column == t.sorted
	if h.column >= 0 {
		c := t.columns[h.column]
		h.words.Text.Text, h.right = c.Title, c.Right
	}
	h.words.Tone = theme.ColorMuted
	if sorted {
		h.words.Tone = draw.Foreground
	}
	h.words.Dress()
	h.arrow.Hidden = !sorted
	h.arrow.FillColor = theme.Color(draw.Foreground)
	h.arrow.Angle = 0
	if t.falling {
		h.arrow.Angle = 180
	}
	h.under.FillColor = theme.Color(theme.ColorGridLine)
	if t.focused && h.column == t.marked {
		h.under.FillColor = theme.Color(theme.ColorAccent)
	}
	h.layout(h.Size())
	canvas.Refresh(h)
}

const arrowSide = 9

func (h *headCell) layout(size fyne.Size) {
	y := (size.Height - h.words.MinSize().Height) / 2
	width := h.words.MinSize().Width
	arrowX := theme.Space + width + theme.Half
	if h.right {
		h.words.Place(fyne.NewPos(size.Width-theme.Space, y), 1)
		arrowX = size.Width - theme.Space - width - theme.Half - arrowSide
	} else {
		h.words.Place(fyne.NewPos(theme.Space, y), 0)
	}
	h.arrow.Move(fyne.NewPos(arrowX, (size.Height-arrowSide)/2))
	h.arrow.Resize(fyne.NewSquareSize(arrowSide))
	thick := float32(1)
	if h.table.focused && h.column == h.table.marked {
		thick = 2
	}
	h.under.Move(fyne.NewPos(0, size.Height-thick))
	h.under.Resize(fyne.NewSize(size.Width+theme.Half, thick))
}

// CreateRenderer returns the renderer.
func (h *headCell) CreateRenderer() fyne.WidgetRenderer {
	return &cellRenderer{h.layout, func() fyne.Size { return fyne.NewSize(arrowSide+theme.Wide, headHeight()) },
		[]fyne.CanvasObject{h.words.Text, h.arrow, h.under}}
}

// CreateRenderer returns the table's renderer with a focus ring.
func (t *Table) CreateRenderer() fyne.WidgetRenderer {
	t.ExtendBaseWidget(t)
	return &tableRenderer{WidgetRenderer: t.Table.CreateRenderer(), table: t, ring: draw.NewFocusRing()}
}

type tableRenderer struct {
	fyne.WidgetRenderer
	table *Table
	ring  *canvas.Rectangle
}

func (r *tableRenderer) Objects() []fyne.CanvasObject {
	return append(slices.Clone(r.WidgetRenderer.Objects()), r.ring)
}

func (r *tableRenderer) Layout(size fyne.Size) {
	r.WidgetRenderer.Layout(size)
	draw.ShowFocus(r.ring, r.table.focused, size)
}

func (r *tableRenderer) Refresh() {
	r.WidgetRenderer.Refresh()
	draw.ShowFocus(r.ring, r.table.focused, r.table.Size())
}

func (r *tableRenderer) MinSize() fyne.Size {
	const leastRows = 4
	return fyne.NewSize(120*theme.Scale(), headHeight()+leastRows*(rowHeight()+theme.Half))
}
