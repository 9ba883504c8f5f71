package sheet

import (
	"slices"
	"strings"

	"walkline/ui/damage"
	"walkline/ui/view"
	"walkline/valuation"
	"walkline/valuation/lot"
)

// The room of the plan in a column, in mm.
const (
	planRing   = 60.0
	tileSide   = 5.0
	tileStep   = 8.4
	legendStep = 4.6
	legendSide = 3.4
)

// survey draws the damage plan into a column: the ring, the tiles with their words, the legend, then every damaged area in words, and what
// else is known.
func (c *column) survey(hurt []lot.Damage, s *lot.Survey) {
	cells := map[string]lot.Damage{}
	for _, d := range hurt {
		if slices.Contains(lot.Extents, d.Extent) {
			cells[d.Area] = d
		}
	}
	c.need(planRing + 3*legendStep)
	p := plot{press: c.press, page: c.page, x: c.x, y: c.y, scale: planRing / (2 * ringOuter)}
	p.ring(cells)
	for i, area := range lot.Areas[damage.ClockPoints:] {
		c.tile(p, i, area, cells[area])
	}
	c.y += planRing + gapInner
	c.legend(p)
	c.list(hurt, damage.Survey(s))
}

// listed writes what the run list says beside the facts, as the list's word.
func (c *column) listed(of valuation.Case) {
	if says := view.ListSays(of.Lot.Listed, of.Currency); len(says) > 0 {
		c.bullet("The list says: "+strings.Join(says, " · "), bodyType)
	}
}

// tile draws an area beside the ring with its words.
func (c *column) tile(p plot, i int, area string, d lot.Damage) {
	x, y := c.x+planRing+gapInner, c.y+float64(i)*tileStep
	p.swatch(x, y, tileSide, d)
	words := strings.ToUpper(damage.Area(area)[:1]) + damage.Area(area)[1:]
	left := x + tileSide + 1.5
	if d.Extent == "" {
		c.press.write(c.page, left, y+tileSide/2-smallType.line()/2, 0, words, smallType)
		return
	}
	strong := style{size: smallType.size, bold: true, gray: ink}
	c.press.write(c.page, left, y-0.4, 0, words, strong)
	c.press.write(c.page, left, y-0.4+smallType.line(), 0, damage.State(d), smallType)
}

// legend says what hatches and borders mean.
func (c *column) legend(p plot) {
	row := func(name string, codes []string, cell func(string) lot.Damage) {
		c.press.write(c.page, c.x, c.y, 0, name, smallType)
		x := c.x + 13
		for _, code := range codes {
			p.swatch(x, c.y-0.2, legendSide, cell(code))
			c.press.write(c.page, x+legendSide+1.2, c.y, 0, code, smallType)
			x += 24
		}
		c.y += legendStep
	}
	row("Extent", lot.Extents, func(e string) lot.Damage { return lot.Damage{Extent: e} })
	row("Depth", lot.Depths, func(d string) lot.Damage { return lot.Damage{Depth: d} })
}

// list says every damaged area in words, with the buyer's note, and then the rest.
func (c *column) list(hurt []lot.Damage, rest []string) {
	c.gap(gapLine)
	if len(hurt) == 0 {
		c.text("No damage marked.", bodyType, 0)
	}
	for _, d := range hurt {
		words := damage.Words(d)
		if d.Note != "" {
			words += " – " + d.Note
		}
		c.bullet(words, bodyType)
	}
	for _, words := range rest {
		c.bullet(words, bodyType)
	}
}
