package sheet

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"walkline/ui/desk"
	"walkline/ui/view"
)

// kindRank is the order of the kinds on paper: what is looked at beside the vehicle first, then the papers.
func kindRank(c view.Check) int {
	if c.Kind == "inspection" {
		return 0
	}
	return 1
}

// density is how closely the checks are set.
type density struct {
	text, why style
	gap       float64
}

// densities from the roomiest on: the first of those that take the fewest pages is taken.
var densities = []density{
	{bodyType, smallType, 2.2},
	{style{size: 8, gray: ink}, style{size: 7, gray: muted}, 1.6},
	{style{size: 7, gray: ink}, style{size: 6, gray: muted}, 1},
}

// checks prints every check with boxes to tick, from a page on, then the parts for which the first page had no room: in the room
// that is left beside the checks, else on pages of their own.
func (p *press) checks(o desk.Open, first int, rest []part) {
	stops, items := view.Checks(o)
	slices.SortStableFunc(items, func(a, b view.Check) int { return cmp.Compare(kindRank(a), kindRank(b)) })
	all := append(stops, items...)
	chosen, fewest := densities[0], math.MaxInt
	for _, d := range densities {
		trial := &press{pdf: p.pdf, paper: p.paper}
		trial.checksThen(all, d, 0, rest)
		if len(trial.pages) < fewest {
			chosen, fewest = d, len(trial.pages)
		}
	}
	p.checksThen(all, chosen, first, rest)
}

func (p *press) checksThen(all []view.Check, d density, first int, rest []part) {
	if len(all) > 0 {
		rest = pour(p.listChecks(all, d, first), rest)
	}
	if len(rest) == 0 {
		return
	}
	wide := &column{press: p, page: max(first, len(p.pages)), x: margin, w: p.paper.Width - 2*margin, y: margin, top: margin}
	for _, r := range rest {
		r.write(wide)
	}
}

// listChecks sets the checks in two columns, as many pages as it takes.
func (p *press) listChecks(all []view.Check, d density, first int) []*column {
	head := &column{press: p, page: first, x: margin, w: p.paper.Width - 2*margin, y: margin, top: margin}
	head.text("Checks", titleType, 0)
	head.text("Yes means trouble. Tick what you find and enter it before you bid: an answer moves the walk-away bid.", bodyType, 0)
	head.gap(gapInner)
	left, right := p.columns(first, head.y)
	c := left
	kind := ""
	for _, i := range all {
		h := c.checkHeight(i, d)
		if i.Kind != kind {
			h += strongType.line() + gapPart
		}
		if c == left && !c.fits(h) {
			c = right
		} else if !c.fits(h) && c.begun {
			left, right = p.columns(c.page+1, margin)
			c = left
		}
		if i.Kind != kind {
			kind = i.Kind
			c.heading(kindWords(kind, all))
		}
		c.check(i, d)
	}
	if c == left {
		return []*column{left, right}
	}
	return []*column{right}
}

// kindWords returns the heading of a kind of checks.
func kindWords(kind string, all []view.Check) string {
	n := 0
	for _, i := range all {
		if i.Kind == kind {
			n++
		}
	}
	words := map[string]string{"stop": "Stops", "title": "Title", "paper": "Paper", "inspection": "Walk-around"}[kind]
	return fmt.Sprintf("%s (%d)", or(words, view.Words(kind)), n)
}

// tickRoom is the room of the two boxes beside a check, in mm.
const tickRoom = 20.0

func (c *column) checkHeight(i view.Check, d density) float64 {
	return max(c.height(i.Text, d.text, tickRoom)+c.height(whyWords(i), d.why, tickRoom), d.text.line()) + d.gap
}

// whyWords says why a look is worth its minutes.
func whyWords(i view.Check) string {
	why := strings.TrimSpace(i.Why + " " + i.Source)
	figures := strings.Trim(i.Minutes+", "+i.Worth, ", ")
	if figures == "" {
		return why
	}
	return why + " " + strings.ReplaceAll(figures, " ", "\u00a0") + "."
}

// check writes one check behind its boxes; an answer that is known is ticked.
func (c *column) check(i view.Check, d density) {
	c.need(c.checkHeight(i, d))
	if i.Tick {
		c.tick(0, "settled", i.Answer == view.No, d)
	} else if i.Fixed {
		c.press.write(c.page, c.x, c.y, 0, map[bool]string{true: "STOP", false: "look"}[i.Kind == "stop"], strongType)
	} else {
		c.tick(0, view.Yes, i.Answer == view.Yes, d)
		c.tick(tickRoom/2, view.No, i.Answer == view.No, d)
	}
	c.text(i.Text, d.text, tickRoom)
	c.text(whyWords(i), d.why, tickRoom)
	c.gap(d.gap)
}

// tick draws a box with its word; a ticked one is crossed.
func (c *column) tick(dx float64, word string, ticked bool, d density) {
	const side = 2.7
	x, y := c.x+dx, c.y+(d.text.line()-side)/2
	c.press.box(c.page, x, y, side, side, 255, ink, 0.25)
	if ticked {
		cross := style{size: 9, bold: true, gray: ink}
		c.press.write(c.page, x+side/2, y+side/2-cross.line()/2-0.1, 0.5, "×", cross)
	}
	c.press.write(c.page, x+side+0.9, c.y, 0, word, d.text)
}
