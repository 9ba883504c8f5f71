package table

import (
	"image"
	"image/color"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/theme"
	"walkline/ui/widgets/draw"
)

// pictureHeight is the height of a row with pictures, at text scale 1.
const pictureHeight = 48

// rowHeight is the height of the table's rows without the gap under them.
func (t *Table) rowHeight() float32 {
	if slices.ContainsFunc(t.columns, func(c Column) bool { return c.Pictured }) {
		return max(rowHeight(), pictureHeight*theme.Scale())
	}
	return rowHeight()
}

// rowHeight is the height of a row of words without the gap under it.
func rowHeight() float32 { return draw.LineHeight(theme.SizeBody) + theme.Half/2 }

func headHeight() float32 { return draw.LineHeight(theme.SizeSmall) + theme.Space }

func boxSide() float32 { return 14 * theme.Scale() }

// cell is one cell of a table: a ground that closes the gap to its neighbors, a bar on the selected row, and a text or a box.
type cell struct {
	widget.BaseWidget
	table *Table
	row   int

	ground *canvas.Rectangle
	bar    *canvas.Rectangle
	box    *canvas.Rectangle
	tick   [2]*canvas.Line
	words  *draw.Text
	shown  *canvas.Image
	whole  string // the words that are cut; empty: none are
	right  bool
	boxed  bool
}

func newCell(t *Table) *cell {
	c := &cell{table: t, ground: canvas.NewRectangle(color.Transparent), bar: canvas.NewRectangle(color.Transparent),
		box: canvas.NewRectangle(color.Transparent), words: draw.NewText("", theme.SizeBody, draw.Foreground)}
	c.shown = &canvas.Image{FillMode: canvas.ImageFillContain}
	c.shown.Hide()
	c.box.StrokeWidth, c.box.CornerRadius = 1.5, 2
	for i := range c.tick {
		c.tick[i] = canvas.NewLine(color.Transparent)
		c.tick[i].StrokeWidth = 2
	}
	c.ExtendBaseWidget(c)
	return c
}

// MouseIn lights the row, and tells words that are cut.
func (c *cell) MouseIn(*desktop.MouseEvent) {
	c.table.hover(c.row)
	draw.Explain(c, c.whole)
}

// MouseMoved lights the row.
func (c *cell) MouseMoved(*desktop.MouseEvent) { c.table.hover(c.row) }

// MouseOut lights no row.
func (c *cell) MouseOut() {
	c.table.hover(-1)
	draw.Explain(c, "")
}

// updateCell shows a place of the table in a cell.
func (t *Table) updateCell(id widget.TableCellID, o fyne.CanvasObject) {
	c := o.(*cell)
	c.row = id.Row
	t.sees(id.Row)
	column := id.Col - t.lead()
	c.boxed = column < 0 && id.Row < t.count && t.row(id.Row).boxed()
	c.right, c.whole = false, ""
	c.shown.Hidden = true
	c.words.Text.Text, c.words.Tone, c.words.TextStyle.Bold = "", draw.Foreground, false
	switch {
	case t.count == 0:
		if column == 0 {
			c.words.Text.Text, c.words.Tone = t.Empty, theme.ColorMuted
		}
	case column >= 0:
		t.fill(c, id.Row, column)
	}
	c.dress(id.Row < t.count && id.Row == t.selected, id.Row < t.count && id.Row == t.hovered, id.Col == 0)
	c.layout(c.Size())
	canvas.Refresh(c)
}

// fill puts the words of a row and column into the cell, shortened to its width.
func (t *Table) fill(c *cell, row, column int) {
	r := t.row(row)
	c.right = t.columns[column].Right
	c.words.TextStyle.Bold = r.Strong
	if r.Muted {
		c.words.Tone = theme.ColorMuted
	}
	if t.columns[column].Pictured && r.Picture != nil {
		if img := r.Picture(column); img != nil {
			c.picture(img)
			return
		}
	}
	if column < len(r.Cells) {
		c.words.Dress()
		c.words.Text.Text = draw.Shortened(r.Cells[column], c.Size().Width-2*theme.Space, c.words.Role, c.words.TextStyle)
		if c.words.Text.Text != r.Cells[column] {
			c.whole = r.Cells[column]
		}
	}
}

// picture shows a picture in place of words.
func (c *cell) picture(img image.Image) {
	c.shown.Hidden = false
	if c.shown.Image != img {
		c.shown.Image = img
		c.shown.Refresh()
	}
}

// dress takes the colours for the cell's state.
func (c *cell) dress(selected, hovered, first bool) {
	c.words.Dress()
	c.ground.FillColor, c.bar.FillColor = color.Transparent, color.Transparent
	switch {
	case selected:
		c.ground.FillColor = theme.Color(theme.ColorRowSelected)
		if first {
			c.bar.FillColor = theme.Color(theme.ColorAccent)
		}
	case hovered:
		c.ground.FillColor = theme.Color(theme.ColorRowHover)
	}
	ticked := c.boxed && c.table.row(c.row).Ticked
	c.box.Hidden = !c.boxed
	c.box.StrokeColor = theme.Color(theme.ColorPoint)
	c.box.FillColor = theme.Color(draw.Background)
	for _, l := range c.tick {
		l.Hidden = !ticked
		l.StrokeColor = theme.Color(draw.Foreground)
	}
}

func (c *cell) layout(size fyne.Size) {
	c.ground.Resize(size.AddWidthHeight(theme.Half, theme.Half))
	c.ground.Move(fyne.NewPos(0, -theme.Half/2))
	c.bar.Resize(fyne.NewSize(3, size.Height+theme.Half))
	c.bar.Move(fyne.NewPos(0, -theme.Half/2))
	y := (size.Height - c.words.MinSize().Height) / 2
	if c.right {
		c.words.Place(fyne.NewPos(size.Width-theme.Space, y), 1)
	} else {
		c.words.Place(fyne.NewPos(theme.Space, y), 0)
	}
	c.shown.Move(fyne.NewPos(theme.Space, 0))
	c.shown.Resize(size.SubtractWidthHeight(2*theme.Space, 0))
	side := boxSide()
	left, top := (size.Width-side)/2+1, (size.Height-side)/2
	c.box.Move(fyne.NewPos(left, top))
	c.box.Resize(fyne.NewSquareSize(side))
	low := fyne.NewPos(left+side*0.42, top+side*0.75)
	c.tick[0].Position1, c.tick[0].Position2 = fyne.NewPos(left+side*0.2, top+side*0.5), low
	c.tick[1].Position1, c.tick[1].Position2 = low, fyne.NewPos(left+side*0.82, top+side*0.22)
}

// CreateRenderer returns the renderer.
func (c *cell) CreateRenderer() fyne.WidgetRenderer {
	return &cellRenderer{c.layout, func() fyne.Size { return fyne.NewSize(boxSide()+theme.Wide, c.table.rowHeight()) },
		[]fyne.CanvasObject{c.ground, c.bar, c.words.Text, c.shown, c.box, c.tick[0], c.tick[1]}}
}

// cellRenderer renders what its table updates.
type cellRenderer struct {
	layout  func(fyne.Size)
	least   func() fyne.Size
	objects []fyne.CanvasObject
}

func (r *cellRenderer) Layout(size fyne.Size)        { r.layout(size) }
func (r *cellRenderer) MinSize() fyne.Size           { return r.least() }
func (r *cellRenderer) Refresh()                     {}
func (r *cellRenderer) Objects() []fyne.CanvasObject { return r.objects }
func (r *cellRenderer) Destroy()                     {}
