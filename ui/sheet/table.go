package sheet

// field is one column of a table: its heading, its width in mm (0: what is left), and whether figures stand in it.
type field struct {
	title   string
	width   float64
	figures bool
}

// table are the columns of a printed table.
type table []field

const fieldGap = 2.5 // mm between two columns

// widths returns the width of every column of a table that is w wide.
func (t table) widths(w float64) []float64 {
	out := make([]float64, len(t))
	left, open := w-fieldGap*float64(len(t)-1), 0
	for i, f := range t {
		out[i] = f.width
		left -= f.width
		if f.width == 0 {
			open++
		}
	}
	for i := range out {
		if out[i] == 0 {
			out[i] = left / float64(open)
		}
	}
	return out
}

// table writes rows under their headings, which stand again on top of each page; without rows it says so.
func (c *column) table(t table, rows [][]string, none string) {
	if len(rows) == 0 {
		c.text(none, bodyType, 0)
		return
	}
	c.need(2 * (bodyType.line() + gapLine))
	c.titles(t)
	for _, row := range rows {
		if h := c.rowHeight(t, row); !c.fits(h) && c.begun {
			c.page, c.y = c.page+1, c.top
			c.titles(t)
		}
		c.row(t, row, bodyType)
	}
	c.gap(gapLine)
}

// titles writes the headings over a rule.
func (c *column) titles(t table) {
	row := make([]string, len(t))
	for i, f := range t {
		row[i] = f.title
	}
	c.row(t, row, smallType)
	c.press.rule(c.page, c.x, c.y-gapLine/2, c.w)
}

func (c *column) rowHeight(t table, row []string) float64 {
	lines := 1
	for i, w := range t.widths(c.w) {
		lines = max(lines, len(c.press.wrap(row[i], w, bodyType)))
	}
	return float64(lines)*bodyType.line() + gapLine
}

// row writes one row. A row that is higher than a page goes on at the top of the next.
func (c *column) row(t table, row []string, s style) {
	widths := t.widths(c.w)
	cells := make([][]string, len(row))
	most := 0
	for i, words := range row {
		cells[i] = c.press.wrap(words, widths[i], s)
		most = max(most, len(cells[i]))
	}
	for n := range most {
		c.need(s.line())
		x := c.x
		for i, lines := range cells {
			if n < len(lines) && t[i].figures {
				c.press.write(c.page, x+widths[i], c.y, 1, lines[n], s)
			} else if n < len(lines) {
				c.press.write(c.page, x, c.y, 0, lines[n], s)
			}
			x += widths[i] + fieldGap
		}
		c.y, c.begun = c.y+s.line(), true
	}
	c.gap(gapLine)
}
