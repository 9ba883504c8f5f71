package sheet

import (
	"slices"

	"walkline/ui/view"
	"walkline/valuation"
)

// amounts are the invoice at the bid, and what becomes of profit and loss at the bids around it.
func amounts(a valuation.Answer) []part {
	if len(a.Needs) > 0 {
		return nil
	}
	p := view.NewPurse(a.Currency)
	rungs := around(a)
	if a.WalkAway == nil { // nothing is to be paid: only what each bid would bring
		return under("Bids, "+a.Currency, rungs, p)
	}
	var invoice [][2]string
	for _, l := range a.Acquisition.Lines {
		invoice = append(invoice, [2]string{l.Name, p.Exact(l.Amount)})
	}
	invoice = append(invoice, [2]string{"Invoice total", p.Exact(a.Acquisition.Total)})
	all := []part{{title: "Invoice at " + p.Show(a.Acquisition.Bid), blocks: []block{pairs(invoice)}}}
	return append(all, under("Bids around it, "+a.Currency, rungs, p)...)
}

// under is the ladder under a heading, nothing where it has no rung.
func under(title string, rungs []valuation.Rung, p view.Purse) []part {
	if len(rungs) == 0 {
		return nil
	}
	return []part{{title: title, blocks: []block{ladder(rungs, p)}}}
}

// mostRungs is how many bids of the ladder are printed. Ours: half of them on either side of the bid.
const mostRungs = 8

// around returns the rows of the ladder next to the walk-away bid.
func around(a valuation.Answer) []valuation.Rung {
	at := slices.IndexFunc(a.Ladder, func(r valuation.Rung) bool { return r.Bid > a.Acquisition.Bid })
	if at < 0 {
		at = len(a.Ladder)
	}
	from := max(min(at-mostRungs/2, len(a.Ladder)-mostRungs), 0)
	return a.Ladder[from:min(from+mostRungs, len(a.Ladder))]
}

// pairs are labels with their figures that stay together; the last one is the sum.
func pairs(lines [][2]string) block {
	return block{
		height: func(*column) float64 { return float64(len(lines)) * bodyType.line() },
		write: func(c *column) {
			for i, l := range lines {
				style := bodyType
				if i == len(lines)-1 {
					style = strongType
				}
				c.pair(l[0], l[1], style)
			}
		}}
}

// Where the figures of the ladder end, as shares of the column's width.
var rungEnds = [...]float64{0.2, 0.45, 0.7, 0.88}

// ladder is a row of headings and one for each bid; a bid that breaks a limit says so.
func ladder(rows []valuation.Rung, p view.Purse) block {
	write := func(c *column, s style, cells [len(rungEnds)]string, mark string) {
		c.need(s.line())
		for i, words := range cells {
			c.press.write(c.page, c.x+rungEnds[i]*c.w, c.y, 1, words, s)
		}
		c.press.write(c.page, c.x+c.w, c.y, 1, mark, smallType)
		c.y, c.begun = c.y+s.line(), true
	}
	return block{
		height: func(*column) float64 { return smallType.line() + float64(len(rows))*bodyType.line() },
		write: func(c *column) {
			write(c, smallType, [...]string{"Bid", "Invoice", "Profit", "Loss"}, "")
			for _, r := range rows {
				mark := ""
				if !r.Holds {
					mark = "over"
				}
				write(c, bodyType, [...]string{p.Group(r.Bid), p.Group(r.Acquisition), p.Whole(r.MeanProfit), view.Percent(r.LossChance)}, mark)
			}
		}}
}

// Lines to write on: how many, and how far apart, in mm.
const (
	noteLines = 6
	noteGap   = 7.5
)

// notes are lines to write on.
func notes() part {
	n := part{title: "Notes"}
	for range noteLines {
		n.blocks = append(n.blocks, block{height: func(*column) float64 { return noteGap },
			write: func(c *column) {
				c.need(noteGap)
				c.y, c.begun = c.y+noteGap, true
				c.press.rule(c.page, c.x, c.y, c.w)
			}})
	}
	return n
}
