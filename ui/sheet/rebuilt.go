package sheet

import (
	"fmt"
	"strings"

	"walkline/ui/view"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// Rebuilt is what the file for the rebuilt inspection is printed from. What is unknown is left empty and printed as "not entered".
type Rebuilt struct {
	Lot      lot.Lot      // with its survey
	Damage   []lot.Damage // as bought
	Currency string
	Printed  lot.Date
	Paper    Paper // none: the one that is usual for the currency
	Agency   string
	Builder  Builder
	Bought   Bought
	Forms    []Form
	Asks     []Ask // inspections beside the rebuilt one
	Work     []Work
	Receipts []Receipt
	Bills    []Picture // photographs of bills
	Papers   []string  // bills that are kept as PDF files, to be put behind this file
	Before   []Picture
	After    []Picture
}

// Builder is who rebuilt the vehicle.
type Builder struct {
	Name, Address, Licence string
}

// Bought is the purchase.
type Bought struct {
	Date  lot.Date
	From  string
	Total *money.Amount // of the invoice; nil: not known
}

// Form is a paper that the agency asks for.
type Form struct {
	Name   string
	Why    string // the rule that asks for it, with its citation and how sure it is
	InHand bool
}

// Ask is something else that the agency, or the law of the place, asks for.
type Ask struct {
	What   string
	Source string // the rule, with its citation and how sure it is
}

// Work is one line of the statement of work.
type Work struct {
	Date  lot.Date
	What  string
	Parts string // what was put in, and from where
	Hours float64
	By    string // trade, or the shop that the work was bought from
}

// Receipt is one bill. Money that comes back has a negative amount.
type Receipt struct {
	Date     lot.Date
	What     string
	Source   string // as in the case file: used, new_maker ...; free words else
	DonorVIN string // of the vehicle that a used part came from
	Amount   money.Amount
	Seller   string
	Number   string   // of the receipt, as the seller has it
	Files    []string // names of the photos and PDFs kept of it
}

// Picture is one photograph: a JPEG, PNG or WebP file, which is read when its turn comes and not kept, for all of them together may
// be larger than the memory.
type Picture struct {
	Caption string
	Area    string // a damage area; empty: none
	Taken   lot.Date
	Read    func() ([]byte, error)
}

const rebuiltNote = "What is asked for, which parts need proof and what may be registered is the agency's to say: ask it before the " +
	"inspection. This file puts together what was kept."

// RebuiltFile returns the file for the rebuilt inspection as PDF: vehicle and damage as bought, forms, statement of work,
// bills with donor VINs, photographs before and after; its first page says on which page each begins. A photograph that cannot be read
// is named in its place.
// Errors: the date printed is no date.
func RebuiltFile(r Rebuilt) ([]byte, error) {
	name := view.Vehicle(r.Lot.ModelYear, r.Lot.Make, r.Lot.Model, r.Lot.Trim)
	p, err := newPress(r.Paper.or(r.Currency), "File for the rebuilt inspection, "+name, r.Printed)
	if err != nil {
		return nil, err
	}
	left, right := p.head("File for the rebuilt inspection", r.Lot, r.Printed)
	left.text("Damage as bought", strongType, 0)
	left.gap(gapLine)
	left.survey(r.Damage, r.Lot.Survey)
	entries := left.contents(r)
	right.papersAsked(r)
	c := &column{press: p, page: len(p.pages), x: margin, w: p.paper.Width - 2*margin, y: margin, top: margin}
	entries.begins("Statement of work", len(p.pages)+1)
	c.statement(r)
	entries.begins("Bills", c.bills(r)+1)
	c.papers(r.Papers)
	for _, part := range []struct {
		name string
		all  []Picture
	}{{"Bills as photos", r.Bills}, {"Photos before the work", r.Before}, {"Photos after the work", r.After}} {
		if len(part.all) > 0 {
			entries.begins(part.name, len(p.pages)+1)
			p.photographs(part.name, part.all)
		}
	}
	return p.print(fmt.Sprintf("%s · VIN %s · printed %s", name, or(r.Lot.VIN, "not entered"), view.Day(r.Printed)))
}

// entries are the places of the table of contents at which a page number is to stand, by the name of the part.
type entries map[string]func(page int)

func (e entries) begins(part string, page int) {
	if write, ok := e[part]; ok {
		write(page)
	}
}

// entry writes one line of the table of contents and keeps where its page belongs.
func (c *column) entry(e entries, part, holds string) {
	c.text(part+" ("+holds+")", bodyType, 0)
	p, y, words := c.press, c.y-bodyType.line()+bodyType.size*pointMM*1.02, "none"
	p.at(c.page, func() { p.pdf.Text(c.x+c.w-p.width(words, bodyType), y, words) })
	e[part] = func(page int) { words = fmt.Sprintf("page %d", page) }
}

// contents writes the table of contents.
func (c *column) contents(r Rebuilt) entries {
	e := entries{}
	c.heading("In this file")
	c.entry(e, "Statement of work", view.Count(len(r.Work), "line"))
	c.entry(e, "Bills", view.Count(len(r.Receipts), "bill")+", "+fmt.Sprintf("%d as PDF", len(r.Papers)))
	for _, part := range []struct {
		name string
		all  []Picture
	}{{"Bills as photos", r.Bills}, {"Photos before the work", r.Before}, {"Photos after the work", r.After}} {
		c.entry(e, part.name, fmt.Sprint(len(part.all)))
	}
	c.pair("Bills of used parts without a donor VIN that reads", fmt.Sprint(unproven(r.Receipts)), bodyType)
	c.gap(gapInner)
	c.text(rebuiltNote, smallType, 0)
	return e
}

// papersAsked writes who built, what was bought, the forms as a list to tick, and what else the place asks for.
func (c *column) papersAsked(r Rebuilt) {
	purse := view.NewPurse(r.Currency)
	total := "not entered"
	if r.Bought.Total != nil {
		total = purse.Show(*r.Bought.Total)
	}
	c.text("Purchase and builder", strongType, 0)
	c.gap(gapLine)
	for _, l := range [][2]string{{"Bought on", view.Day(r.Bought.Date)}, {"Bought from", r.Bought.From}, {"Invoice total", total},
		{"Rebuilt by", r.Builder.Name},
		{"Address", r.Builder.Address}, {"License", r.Builder.Licence}, {"Agency", r.Agency}} {
		c.pair(l[0], or(l[1], "not entered"), bodyType)
	}
	c.heading(fmt.Sprintf("Forms (%d of %d in hand)", inHand(r.Forms), len(r.Forms)))
	if len(r.Forms) == 0 {
		c.text("No list of forms is known for this place: ask the agency.", bodyType, 0)
	}
	for _, f := range r.Forms {
		c.form(f)
	}
	c.asks(r.Asks)
}

// asks writes what else the place asks for.
func (c *column) asks(all []Ask) {
	if len(all) == 0 {
		return
	}
	c.heading("Other inspections")
	for _, a := range all {
		c.need(c.height(a.What, bodyType, 0) + c.height(a.Source, smallType, 0))
		c.text(a.What, bodyType, 0)
		c.text(a.Source, smallType, 0)
		c.gap(gapLine)
	}
}

func inHand(forms []Form) int {
	n := 0
	for _, f := range forms {
		if f.InHand {
			n++
		}
	}
	return n
}

// form writes one form behind a box, crossed when it is in hand.
func (c *column) form(f Form) {
	const box = 5.0
	c.need(c.height(f.Name, bodyType, box) + c.height(f.Why, smallType, box))
	c.tick(0, "", f.InHand, densities[0])
	c.text(f.Name, bodyType, box)
	c.text(f.Why, smallType, box)
	c.gap(gapLine)
}

// statement writes the work line by line, with room to sign.
func (c *column) statement(r Rebuilt) {
	c.text("Statement of work", titleType, 0)
	c.gap(gapLine)
	t := table{{"Date", 20, false}, {"Work", 72, false}, {"Parts put in", 0, false}, {"By", 26, false}, {"Hours", 14, true}}
	var rows [][]string
	var hours float64
	for _, w := range r.Work {
		hours += w.Hours
		rows = append(rows, []string{or(view.Day(w.Date), "–"), w.What, w.Parts, w.By, number(w.Hours)})
	}
	c.table(t, rows, "No work is entered.")
	c.pair("Hours in all", or(number(hours), "0"), strongType)
	c.need(24)
	c.gap(14)
	for i, label := range []string{"Signed by who did the work", "Date"} {
		x := c.x + float64(i)*c.w*0.65
		c.press.rule(c.page, x, c.y, c.w*(0.6-0.25*float64(i)))
		c.press.write(c.page, x, c.y+0.8, 0, label, smallType)
	}
	c.gap(10)
}

// number writes hours; nought is empty.
func number(hours float64) string {
	if hours == 0 {
		return ""
	}
	return strings.TrimSuffix(fmt.Sprintf("%.1f", hours), ".0")
}

// papers names the bills that are kept as PDF files: the library that prints cannot put their pages in.
func (c *column) papers(names []string) {
	if len(names) == 0 {
		return
	}
	c.heading("Bills kept as PDF files: print them and put them behind this file")
	for _, n := range names {
		c.text(n, bodyType, 0)
	}
}

// bills writes the receipts with donor VINs, and what they come to, and returns the page on which they begin.
func (c *column) bills(r Rebuilt) (page int) {
	purse := view.NewPurse(r.Currency)
	c.heading("Bills, " + purse.Code)
	page = c.page
	t := table{{"No.", 9, true}, {"Date", 19, false}, {"For", 0, false}, {"Seller, number", 31, false}, {"Source", 22, false},
		{"Donor VIN", 40, false}, {"Amount", 19, true}}
	var rows [][]string
	var total money.Amount
	for i, b := range r.Receipts {
		total += b.Amount
		what := b.What
		if len(b.Files) > 0 {
			what += " (kept as " + strings.Join(b.Files, ", ") + ")"
		}
		seller := strings.Trim(b.Seller+", "+b.Number, ", ")
		rows = append(rows, []string{fmt.Sprint(i + 1), or(view.Day(b.Date), "–"), what, seller, view.SourceWords(b.Source), donor(b),
			cents(purse, b.Amount)})
	}
	c.table(t, rows, "No bill is entered.")
	c.pair("All bills", cents(purse, total), strongType)
	return page
}

// cents writes an amount with all its decimals, so that a column of them lines up.
func cents(p view.Purse, a money.Amount) string {
	words := p.Exact(a)
	if p.Digits == 0 || strings.Contains(words, ".") {
		return words
	}
	return words + "." + strings.Repeat("0", int(p.Digits))
}

// donor says the donor's VIN, and what is wrong with it.
func donor(b Receipt) string {
	vin := strings.TrimSpace(b.DonorVIN)
	switch {
	case vin == "" && b.Source == "used":
		return "not entered"
	case vin == "":
		return ""
	}
	switch v := lot.ReadVIN(vin); {
	case v.Problem != "":
		return vin + ": " + v.Problem
	case !v.Digit:
		return fmt.Sprintf("%s: its ninth character should be %c", vin, v.Check)
	}
	return vin
}

// unproven counts the bills of used parts that have no donor VIN that reads.
func unproven(bills []Receipt) int {
	n := 0
	for _, b := range bills {
		if b.Source == "used" && (strings.TrimSpace(b.DonorVIN) == "" || lot.ReadVIN(b.DonorVIN).Problem != "") {
			n++
		}
	}
	return n
}
