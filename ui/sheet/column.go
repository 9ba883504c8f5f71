package sheet

// column is where text flows: from the top of a page to its foot, then on at the top of the next page.
type column struct {
	press *press
	page  int
	x, w  float64
	y     float64 // where the next line begins
	top   float64 // where it goes on, on the next page
	begun bool    // something stands in it on this page
}

// gaps between parts, in mm.
const (
	gapPart  = 4.0
	gapLine  = 1.2
	gapInner = 2.0
)

// bottom is the lowest place for text.
func (p *press) bottom() float64 { return p.paper.Height - margin - footRoom }

// need makes room for a height: what does not fit goes to the next page.
func (c *column) need(height float64) {
	if c.begun && !c.fits(height) {
		c.page++
		c.y, c.begun = c.top, false
	}
}

// fits reports whether a height fits on the column's page.
func (c *column) fits(height float64) bool { return c.y+height <= c.press.bottom() }

// gap leaves room.
func (c *column) gap(height float64) { c.y += height }

// text writes wrapped words, indented by a width on the left.
func (c *column) text(words string, s style, indent float64) {
	for _, line := range c.press.wrap(words, c.w-indent, s) {
		c.need(s.line())
		c.press.write(c.page, c.x+indent, c.y, 0, line, s)
		c.y, c.begun = c.y+s.line(), true
	}
}

// height returns how high wrapped words stand.
func (c *column) height(words string, s style, indent float64) float64 {
	return float64(len(c.press.wrap(words, c.w-indent, s))) * s.line()
}

// headingRoom is the room that a heading takes with its first line of text.
const headingRoom = gapPart + gapLine*1.5 + 9*pointMM*leading*2

// heading writes a heading under a thin rule, and keeps it with at least a line of what follows.
func (c *column) heading(words string) {
	if c.begun {
		c.gap(gapPart)
	}
	c.need(strongType.line() + gapInner + 2*bodyType.line())
	c.press.rule(c.page, c.x, c.y, c.w)
	c.gap(gapLine)
	c.text(words, strongType, 0)
	c.gap(gapLine / 2)
}

// splits reports whether a figure is too wide to stand beside its label.
func (c *column) splits(label, figure string, s style) bool {
	return c.press.width(c.press.words(label), s)+c.press.width(c.press.words(figure), s)+gapInner > c.w
}

// pair writes a label with its figure at the right edge; a figure that is too wide goes below.
func (c *column) pair(label, figure string, s style) {
	figureStyle := s
	figureStyle.gray = ink
	if c.splits(label, figure, s) {
		c.need(c.height(label, s, 0) + s.line())
		c.text(label, s, 0)
		c.text(figure, figureStyle, gapInner)
		return
	}
	c.text(label, s, 0)
	c.press.write(c.page, c.x+c.w, c.y-s.line(), 1, figure, figureStyle)
}

func (c *column) bulletHeight(words string, s style) float64 {
	return c.height(words, s, gapInner+1) + gapLine/2
}

// bullet writes wrapped words behind a dash.
func (c *column) bullet(words string, s style) {
	c.need(min(c.bulletHeight(words, s), 3*s.line()))
	c.press.write(c.page, c.x, c.y, 0, "–", s)
	c.text(words, s, gapInner+1)
	c.gap(gapLine / 2)
}
