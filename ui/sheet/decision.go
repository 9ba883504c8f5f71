package sheet

import (
	"fmt"
	"slices"
	"strings"

	"walkline/ui/damage"
	"walkline/ui/desk"
	"walkline/ui/view"
	"walkline/valuation"
	"walkline/valuation/lot"
)

// Lot is what a decision sheet is printed from: a lot's case and the answer to it.
type Lot struct {
	Case    valuation.Case
	Answer  valuation.Answer
	Printed lot.Date // the date on the sheet
	Paper   Paper    // none: the one that is usual for the case's currency
}

// Decision returns the decision sheet of a lot as PDF: a page with the verdict, the invoice and the bids round it, then the checks, the
// walk-around first, and lines for notes.
// Errors: the date printed is no date.
func Decision(d Lot) ([]byte, error) {
	name := vehicle(d.Case.Lot)
	p, err := newPress(d.Paper.or(d.Case.Currency), "Decision sheet, "+name, d.Printed)
	if err != nil {
		return nil, err
	}
	o := desk.Open{Case: d.Case, Fresh: true, Valued: &desk.Valued{Answer: d.Answer}}
	l := d.Case.Lot
	l.Survey = d.Case.Survey
	left, right := p.head("Decision sheet", l, d.Printed)
	left.survey(d.Case.Damage, d.Case.Survey)
	left.listed(d.Case)
	right.verdict(o)
	right.stops(o)
	if len(d.Answer.Needs) == 0 {
		right.waterfall(d.Answer)
	}
	used := factors(d)
	late := pour([]*column{left}, amounts(d.Answer))
	right.firstChecks(o, 0)
	late = append(pour([]*column{right}, late), pour([]*column{left, right}, append([]part{cautions(o), used}, aroundTheBid(d.Answer)...))...)
	p.checks(o, len(p.pages), append(late, notes()))
	return p.print(fmt.Sprintf("%s · printed %s · arithmetic on what was entered, not advice", name, view.Day(d.Printed)))
}

// vehicle names a lot on one line.
func vehicle(l lot.Lot) string {
	name := view.Vehicle(l.ModelYear, l.Make, l.Model, l.Trim)
	if l.Number != "" {
		name = "Lot " + l.Number + " · " + name
	}
	return name
}

// gutter lies between the two columns, in mm.
const gutter = 8.0

// columns returns the two columns of a page from a height on.
func (p *press) columns(page int, y float64) (left, right *column) {
	w := (p.paper.Width - 2*margin - gutter) / 2
	left = &column{press: p, page: page, x: margin, w: w, y: y, top: margin}
	right = &column{press: p, page: page, x: margin + w + gutter, w: w, y: y, top: margin}
	return left, right
}

// head writes what the sheet is of across the first page, and returns the columns below it.
func (p *press) head(kind string, l lot.Lot, printed lot.Date) (left, right *column) {
	c := &column{press: p, x: margin, w: p.paper.Width - 2*margin, y: margin, top: margin}
	p.write(0, margin+c.w, c.y, 1, "printed "+view.Day(printed), smallType)
	c.text(kind, smallType, 0)
	c.text(vehicle(l), titleType, 0)
	c.gap(gapLine / 2)
	for _, line := range facts(l) {
		c.text(line, bodyType, 0)
	}
	c.gap(gapInner)
	p.rule(c.page, margin, c.y, c.w)
	left, right = p.columns(c.page, c.y+gapPart)
	return left, right
}

// facts says what is known of the lot in two lines: where and what; title and state.
func facts(l lot.Lot) []string {
	first := []string{or(l.Sale, "sale not entered")}
	if l.SaleDate != "" {
		first = append(first, "sale day "+view.Day(l.SaleDate))
	}
	first = append(first, "VIN "+or(l.VIN, "not entered"), "odometer "+odometer(l))
	second := []string{"title: " + or(l.Title.Document, "not entered")}
	if len(l.Title.Brands) > 0 {
		second = append(second, "brands: "+strings.Join(l.Title.Brands, ", "))
	}
	if l.Title.IssuedIn != "" {
		second = append(second, "issued in "+l.Title.IssuedIn)
	}
	if l.Title.RegisterIn != "" {
		second = append(second, "to be registered in "+l.Title.RegisterIn)
	}
	if len(l.Loss) > 0 {
		second = append(second, "loss: "+strings.Join(view.AllWords(l.Loss), ", "))
	}
	second = append(second, "condition: "+view.Words(or(l.Condition, "unknown")), "keys: "+yesNo(l.Keys))
	if len(l.Airbags) > 0 {
		second = append(second, "airbags deployed: "+strings.Join(view.AllWords(l.Airbags), ", "))
	}
	return []string{strings.Join(first, " · "), strings.Join(append(second, damage.Described(l.Survey)...), " · ")}
}

func or(s, instead string) string {
	if strings.TrimSpace(s) == "" {
		return instead
	}
	return s
}

func odometer(l lot.Lot) string {
	if l.Odometer == nil {
		return "not known"
	}
	p := view.NewPurse("")
	return fmt.Sprintf("%s %s (%s)", p.Whole(float64(*l.Odometer)), l.OdometerUnit, view.Words(or(l.OdometerStatus, "unknown")))
}

func yesNo(b *bool) string {
	switch {
	case b == nil:
		return "not known"
	case *b:
		return "yes"
	}
	return "no"
}

// verdict writes the walk-away bid, what binds it, and its figures.
func (c *column) verdict(o desk.Open) {
	v := view.NewVerdict(o)
	c.text(v.Headline, smallType, 0)
	figure := figureType
	for figure.size > titleType.size && c.press.width(v.Figure, figure) > c.w {
		figure.size--
	}
	c.text(v.Figure, figure, 0)
	c.gap(gapLine)
	if v.Binds != "" {
		c.text(v.Binds, strongType, 0)
		c.gap(gapLine)
	}
	for _, r := range v.Plans {
		style := bodyType
		if r.Chosen {
			style = strongType
		}
		c.pair("Plan: "+strings.ToLower(r.Name), r.Bid, style)
	}
	for _, l := range v.Lines {
		c.pair(l[0], l[1], bodyType)
	}
	if v.Stop != "" {
		c.gap(gapLine)
		c.text(v.Stop, strongType, 0)
	}
	c.gap(gapLine)
	for _, reason := range slices.Concat(v.Next, v.Reasons) {
		c.text(reason, smallType, 0)
	}
	if len(v.Warnings) > 0 {
		c.heading("Warnings")
		for _, w := range v.Warnings {
			c.bullet(w, smallType)
		}
	}
}

// stops writes what forbids the lot, in a heavy frame.
func (c *column) stops(o desk.Open) {
	stops, _ := view.Checks(o)
	if len(stops) == 0 {
		return
	}
	c.heading("Stops")
	c.gap(gapLine)
	for _, s := range stops {
		const inner = 2.0
		words := "STOP. " + s.Text
		h := c.height(words, strongType, 2*inner) + c.height(s.Why, smallType, 2*inner) + 2*inner
		c.need(h)
		c.press.box(c.page, c.x, c.y, c.w, h, -1, ink, 0.7)
		in := &column{press: c.press, page: c.page, x: c.x + inner, w: c.w - 2*inner, y: c.y + inner, top: c.top}
		in.text(words, strongType, 0)
		in.text(s.Why, smallType, 0)
		c.gap(h + gapInner)
	}
}

// The first page names at most so many checks, and no fewer where there are as many, whatever has to stand below them.
const (
	mostFirst  = 5
	leastFirst = 3
)

// firstChecks writes the first looks that nobody has taken yet, and leaves room below them.
func (c *column) firstChecks(o desk.Open, room float64) {
	open := view.FirstChecks(o)
	if len(open) == 0 {
		return
	}
	c.heading("First to look at")
	for i, item := range open {
		if i == mostFirst || i >= leastFirst && !c.fits(c.bulletHeight(item.Text+figures(item), smallType)+smallType.line()+room) {
			c.text(fmt.Sprintf("and %d more on the next page", len(open)-i), smallType, gapInner+1)
			break
		}
		c.bullet(item.Text+figures(item), smallType)
	}
}

// figures says how long a look takes and what it is worth.
func figures(i view.Check) string {
	if words := strings.Trim(i.Minutes+", "+i.Worth, ", "); words != "" {
		return " (" + unbroken(words) + ")"
	}
	return ""
}

// cautions are the cautions of the lot's work, each once.
func cautions(o desk.Open) part {
	p := part{title: "Cautions"}
	for i, words := range append([]string{"The maker's procedures, local codes and licensed practice decide what may be done."},
		view.Cautions(o)...) {
		b := block{height: func(c *column) float64 { return c.bulletHeight(words, smallType) },
			write: func(c *column) { c.bullet(words, smallType) }}
		if i == 0 {
			b = block{height: func(c *column) float64 { return c.height(words, smallType, 0) + gapLine/2 },
				write: func(c *column) { c.text(words, smallType, 0); c.gap(gapLine / 2) }}
		}
		p.blocks = append(p.blocks, b)
	}
	return p
}

// factors are what the figures were reckoned with, as one paragraph.
func factors(d Lot) part {
	var words []string
	for _, f := range view.Factors(d.Case, d.Answer) {
		words = append(words, f[0]+": "+unbroken(f[1]))
	}
	all := strings.Join(words, " · ")
	return part{title: "Factors used", blocks: []block{{
		height: func(c *column) float64 { return c.height(all, smallType, 0) },
		write:  func(c *column) { c.text(all, smallType, 0) }}}}
}

// unbroken keeps a short value on one line.
func unbroken(value string) string {
	const short = 24
	if len(value) > short {
		return value
	}
	return strings.ReplaceAll(value, " ", "\u00a0")
}
