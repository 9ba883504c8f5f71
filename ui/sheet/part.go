package sheet

import "strings"

// continued stands behind the heading of a part that began elsewhere.
const continued = ", continued"

// block is what stays together of a part: how high it stands in a column, and how it is written.
type block struct {
	height func(c *column) float64
	write  func(c *column)
}

// part is a heading with blocks under it, that can be shared out between columns.
type part struct {
	title  string
	blocks []block
}

// pour writes parts into the first column whose page still has room for the next block, and returns what found none. A part
// that goes on in another column says so.
func pour(columns []*column, parts []part) []part {
	var rest []part
	for _, p := range parts {
		left := p
		for _, c := range columns {
			left = left.into(c)
		}
		if len(left.blocks) > 0 {
			rest = append(rest, left)
		}
	}
	return rest
}

// into writes as many blocks as fit on the column's page and returns the others.
func (p part) into(c *column) part {
	if len(p.blocks) == 0 || !c.fits(headingRoom+p.blocks[0].height(c)) {
		return p
	}
	c.heading(p.title)
	n := 0
	for n < len(p.blocks) && c.fits(p.blocks[n].height(c)) {
		p.blocks[n].write(c)
		n++
	}
	p.blocks = p.blocks[n:]
	if n > 0 && len(p.blocks) > 0 {
		p.title = strings.TrimSuffix(p.title, continued) + continued
	}
	return p
}

// write writes the whole part, over as many pages as it takes.
func (p part) write(c *column) {
	c.heading(p.title)
	for _, b := range p.blocks {
		b.write(c)
	}
}
