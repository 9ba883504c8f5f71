package form

import (
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"

	"walkline/ui/theme"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/ui/widgets/draw"
	"walkline/valuation/lot"
)

// dateCell is the cell of the day: it is typed as people write days, and handed on as days are kept.
const dateCell = "date"

// Comparable is a line in which a comparable is typed: a cell for each field, in the notations that tables are read in. Enter keeps it,
// Escape puts back what is kept.
type Comparable struct {
	Row     *fyne.Container // to be laid out
	OnLeave func()          // Escape, where nothing is typed that is not kept; nil: it does nothing more
	cells   map[string]*widgets.TextEntry
	kept    map[string]string
	id      string // of the row that the cells are of
	keep    *widgets.Button
	remove  *widgets.Button
}

// NewComparable returns an empty line. keep is called with what is typed, remove where the row is to go.
func NewComparable(keep func(cells map[string]string), remove func()) *Comparable {
	c := &Comparable{cells: map[string]*widgets.TextEntry{}}
	line := container.New(&cellRows{})
	take := func() { keep(c.typed()) }
	for _, field := range view.ComparableFields {
		e := widgets.NewTextEntry()
		e.SetMeaning(view.Help(field.Title))
		e.Complete(field.Title)
		e.OnSubmitted = func(string) { take() }
		e.OnEscape = c.escape
		c.cells[field.Name] = e
		line.Add(container.New(layout.NewCustomPaddedVBoxLayout(0), widgets.NewCaption(field.Title), e))
	}
	c.keep = widgets.NewButton("Add this row", take)
	c.remove = widgets.NewButton("Remove it", remove)
	c.Row = container.NewBorder(nil, nil, nil, container.NewVBox(c.keep, c.remove), line)
	c.Show("", nil)
	return c
}

// Show writes the fields of a row into the cells; an empty id is a row that is to be added. What is typed in the row on show stays where
// what is kept of it is the same.
func (c *Comparable) Show(id string, cells map[string]string) {
	same := id == c.id && c.kept != nil
	for _, field := range view.ComparableFields {
		same = same && c.kept[field.Name] == cells[field.Name]
	}
	if same {
		return
	}
	c.id, c.kept = id, map[string]string{}
	for name, says := range cells {
		c.kept[name] = says
	}
	c.put(c.kept)
	words := "Keep the change"
	if id == "" {
		words = "Add this row"
	}
	c.keep.SetText(words)
	c.remove.Hidden = id == ""
	c.Row.Refresh()
}

// Clear empties the cells for the next row.
func (c *Comparable) Clear() {
	c.kept = nil
	c.Show("", nil)
	if on := draw.CanvasOf(c.Row); on != nil {
		on.Focus(c.First())
	}
}

// escape puts back what is kept, and leaves where nothing else is typed.
func (c *Comparable) escape() {
	for name, e := range c.cells {
		if e.Text != c.kept[name] {
			c.put(c.kept)
			return
		}
	}
	if c.OnLeave != nil {
		c.OnLeave()
	}
}

func (c *Comparable) put(cells map[string]string) {
	for name, e := range c.cells {
		e.SetText(cells[name])
	}
}

func (c *Comparable) typed() map[string]string {
	says := map[string]string{}
	for name, e := range c.cells {
		says[name] = e.Text
	}
	if d, _, err := DayOrder().ReadPast(says[dateCell], lot.Date(time.Now().Format(time.DateOnly))); err == nil {
		says[dateCell] = string(d) // else the reader says what is wrong with it
	}
	return says
}

// First returns what takes the keyboard.
func (c *Comparable) First() fyne.Focusable { return c.cells[view.ComparableFields[0].Name] }

// cellRows lays cells out in rows of equal columns: as many as leave the widest cell its room, and no more than fill two rows. It is to be
// used for one container.
type cellRows struct{ width float32 } // as laid out last

// columns returns how many stand in a row, and the least size of a cell.
func (r *cellRows) columns(cells []fyne.CanvasObject) (columns int, least fyne.Size) {
	for _, c := range cells {
		least = least.Max(c.MinSize())
	}
	columns = (len(cells) + 1) / 2
	if r.width > 0 {
		columns = min(columns, max(1, int((r.width+theme.Half)/(least.Width+theme.Half))))
	}
	return columns, least
}

func (r *cellRows) MinSize(cells []fyne.CanvasObject) fyne.Size {
	columns, least := r.columns(cells)
	return fyne.NewSize(least.Width, least.Height*float32((len(cells)+columns-1)/columns))
}

func (r *cellRows) Layout(cells []fyne.CanvasObject, size fyne.Size) {
	r.width = size.Width
	columns, least := r.columns(cells)
	wide := (size.Width+theme.Half)/float32(columns) - theme.Half
	for i, c := range cells {
		c.Move(fyne.NewPos(float32(i%columns)*(wide+theme.Half), float32(i/columns)*least.Height))
		c.Resize(fyne.NewSize(wide, least.Height))
	}
}
