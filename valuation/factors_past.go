package valuation

import (
	"slices"
	"strings"

	"walkline/valuation/build"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// Past is one lot that was won or lost, with what was foretold and what came, as it is kept.
type Past struct {
	ID       int64
	Name     string // in the buyer's words
	Currency string
	State    lot.State
	SaleDate lot.Date
	Vehicle  learn.Vehicle
	Build    build.Build
	Foretold *learn.Prediction // nil: nothing was
}

// Learned returns what there is to learn from: the bills and hours summed by line, what is not known left unknown. A
// diary with any bill in it counts as whole once the build has ended, so that work without a bill is nothing; freight, storage and selling
// that were foretold are nothing only where that was said. A past buy that came from a table counts only for what the table says.
func (p Past) Learned() learn.Build {
	d := diary{p: p, b: p.Build}
	out := learn.Build{ID: p.ID, Name: p.Name, Currency: p.Currency, Vehicle: p.Vehicle, Ending: p.ending(), Bought: p.Build.Dates.Bought,
		Closed: p.closed(), Hammer: p.Build.Hammer, Foretold: p.Foretold}
	if out.Bought == "" {
		out.Bought = p.SaleDate
	}
	d.receipts(&out.Came)
	d.hours(&out.Came)
	d.sums(&out.Came)
	d.seen(&out.Came)
	d.days(&out.Came, out.Bought)
	if s := p.Build.Sale; s.Price != nil {
		out.Came.Sale = &learn.Sale{Price: *s.Price, Asked: s.FirstAsked, Brand: s.Brand}
	}
	return out
}

func (p Past) ending() learn.Ending {
	switch {
	case p.State == lot.Lost:
		return learn.LostTo
	case !p.Build.Teaches():
		return learn.Open
	}
	return learn.Ending(p.Build.Outcome)
}

// closed returns the day on which an ended build closed: that of the sale, else the last that is known.
func (p Past) closed() lot.Date {
	if !p.Build.Teaches() {
		return ""
	}
	if d := p.Build.Dates.Sold; d.Known() {
		return d
	}
	last := p.SaleDate
	for _, s := range p.Build.Dates.Steps() {
		last = max(last, *s.Day)
	}
	return last
}

// diary reads one build's entries.
type diary struct {
	p Past
	b build.Build
}

// whole reports whether what has no bill is nothing.
func (d diary) whole() bool {
	return d.b.Imported.As == "" && d.b.Teaches() && d.b.Closing != build.Partly && (len(d.b.Receipts) > 0 || d.b.NoMoreBills)
}

// silent reports whether what a kind of cost came to is not known.
func (d diary) silent(kind string) bool {
	if !d.b.Lacks(kind) {
		return false
	}
	foretold := slices.ContainsFunc(d.p.Account().Unsaid(), func(c build.Charge) bool { return c.Name == kind })
	return foretold || !d.whole()
}

// Account returns the lot as the books see it, its own hours at the rates of its forecast, its kind of wreck left out.
func (p Past) Account() build.Account {
	a := build.Account{Build: p.Build, Currency: p.Currency, SaleDay: p.SaleDate}
	if p.Foretold == nil {
		return a
	}
	t, m := p.Foretold.Terms, p.Foretold.Money
	a.Rates = t.Rates
	a.Said = &build.Said{Holding: t.HoldingPerDay, Capital: t.CapitalRate, Fees: p.Foretold.Invoice,
		Costs: map[string]money.Amount{"freight": m.Freight, "storage": m.Storage}}
	if price := p.Build.Sale.Price; price != nil {
		a.Said.Costs["selling"] = p.Foretold.Selling(*price)
	}
	return a
}

// risk returns the line as a hidden risk that was foretold or seen, empty where it is a line of work.
func (d diary) risk(line string) string {
	seen := slices.ContainsFunc(d.b.Risks, func(s build.Seen) bool { return s.Risk == line })
	foretold := d.p.Foretold != nil && slices.ContainsFunc(d.p.Foretold.Risks, func(r learn.Risk) bool { return r.ID == line })
	if line != "" && (seen || foretold || d.b.IsUnlisted(line)) {
		return line
	}
	return ""
}

// receipts sums the bills for parts, materials and outside work by line, part and source.
func (d diary) receipts(c *learn.Came) {
	at := map[learn.Receipt]int{}
	for _, r := range d.b.Receipts {
		if !slices.Contains([]string{"part", "materials", "outside"}, r.Kind) {
			continue
		}
		key := learn.Receipt{Line: r.Line, Kind: learn.Kind(r.Kind)}
		if risk := d.risk(r.Line); risk != "" {
			key = learn.Receipt{Risk: risk, Kind: learn.HiddenKind}
		} else if r.Kind == "part" {
			key.Source, key.Part = r.Source, d.part(r)
		}
		i, known := at[key]
		if !known {
			i = len(c.Receipts)
			at[key] = i
			c.Receipts = append(c.Receipts, key)
		}
		c.Receipts[i].Paid += r.Amount
	}
}

// part returns the foretold part that a bill is for, empty where it names none.
func (d diary) part(r build.Receipt) string {
	if d.p.Foretold == nil {
		return ""
	}
	for _, i := range d.p.Foretold.Items {
		if i.Line == r.Line && i.Kind == learn.PartKind && strings.EqualFold(strings.TrimSpace(i.Part), strings.TrimSpace(r.What)) {
			return i.Part
		}
	}
	return ""
}

// hours sums the own hours by line and trade.
func (d diary) hours(c *learn.Came) {
	at := map[learn.Worked]int{}
	for _, w := range d.b.Hours {
		key := learn.Worked{Line: w.Line, Trade: w.Trade}
		if risk := d.risk(w.Line); risk != "" {
			key.Line, key.Risk = "", risk
		}
		i, known := at[key]
		if !known {
			i = len(c.Worked)
			at[key] = i
			c.Worked = append(c.Worked, key)
		}
		c.Worked[i].Hours += w.Hours
	}
	if len(d.b.Hours) > 0 {
		sum := 0.0
		for _, w := range d.b.Hours {
			sum += w.Hours
		}
		c.Hours = &sum
	}
}

// sums adds the bills up by what they are for, and the invoice's charges.
func (d diary) sums(c *learn.Came) {
	of := func(pass func(build.Receipt) bool) *money.Amount {
		if !d.whole() && !slices.ContainsFunc(d.b.Receipts, pass) {
			return nil
		}
		sum := d.b.Bills(pass)
		return &sum
	}
	kind := func(k string) *money.Amount {
		if d.silent(k) {
			return nil
		}
		sum := d.b.BillsOf(k)
		return &sum
	}
	work := func(r build.Receipt) bool {
		return slices.Contains([]string{"part", "materials", "outside", "other"}, r.Kind)
	}
	c.Freight, c.Storage, c.Selling = kind("freight"), kind("storage"), kind("selling")
	c.Repair = of(func(r build.Receipt) bool { return work(r) && d.risk(r.Line) == "" })
	c.Hidden = of(func(r build.Receipt) bool { return work(r) && d.risk(r.Line) != "" })
	d.unnamed(c, d.b.Bills(func(r build.Receipt) bool { return work(r) && r.Line == "" }))
	if !d.b.Lacks("holding") {
		c.Holding = kind("holding")
	}
	d.fees(c)
}

// fees returns what was paid beside the hammer price: the invoice's charges, else what the sale's terms charge.
func (d diary) fees(c *learn.Came) {
	cur, known := money.Lookup(d.p.Currency)
	switch {
	case len(d.b.Charges) > 0:
		var sum money.Amount
		for _, x := range d.b.Charges {
			sum += x.Amount
		}
		c.Fees = &sum
	case known && d.b.Hammer != nil && d.p.Foretold != nil && d.p.Foretold.Invoice != nil:
		sum := d.p.Foretold.Invoice.Total(*d.b.Hammer, cur).Total - *d.b.Hammer
		c.Fees = &sum
	}
}

func (d diary) seen(c *learn.Came) {
	if len(d.b.Risks) == 0 {
		return
	}
	c.Risks = map[string]learn.Seen{}
	for _, s := range d.b.Risks {
		c.Risks[s.Risk] = learn.Seen(s.State)
	}
}

// days returns how long each stage took, where both its days are known.
func (d diary) days(c *learn.Came, bought lot.Date) {
	at := d.b.Dates
	between := func(from, to lot.Date) *float64 {
		n, known := from.Days(to)
		if !known || n < 0 {
			return nil
		}
		x := float64(n)
		return &x
	}
	start := at.Started
	if start == "" {
		start = at.Home
	}
	c.Days = learn.Days{Fetch: between(bought, at.Home), Repair: between(start, at.Finished), Inspect: between(at.Finished, at.Inspected),
		All: between(bought, at.Sold)}
	if n, known := d.b.DaysToSell(); known {
		x := float64(n)
		c.Days.Sell = &x
	}
}
