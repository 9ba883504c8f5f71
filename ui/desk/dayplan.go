package desk

import (
	"cmp"
	"context"
	"fmt"
	"slices"

	"walkline/store/book"
	"walkline/valuation"
	"walkline/valuation/invoice"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/sale"
)

// DayPlan is the plan from a sale day on, after the results so far.
type DayPlan struct {
	Sale   sale.Sale // what is left, and the lots to come
	Answer sale.Answer
	Lots   []DayLot // the lots of Answer, in its order
	Out    []string // what is left out, and why
	Hand   Hand
	Year   PastYear // what the bays brought before
	Likely []Coming // what builds in hand are likely to bring
	Frees  []Freeing

	Unlooked []string     // numbers of the lots that are left out because nobody has looked at them
	Unmarked []book.Entry // lots of later days that are left out because they are not marked as bid
	Undated  []string     // numbers of builds that were sold, without the day
}

// DayLot is one lot of a plan.
type DayLot struct {
	ID         int64
	Entry      book.Entry
	FirstGuess bool
}

// Hand is what the builds in hand still take, at their means.
type Hand struct {
	Builds int
	Bays   int // of the builds whose work has not ended
	Cash   money.Amount
	Hours  float64
}

// planner gathers the lots of a plan.
type planner struct {
	desk    *Desk
	know    valuation.Knowledge
	factors learn.Factors
	guesses bool // first guesses are in
	day     lot.Date
	in      []Coming
	plan    DayPlan
}

// PlanDay works the plan of the state's sale day out: over the day's lots, and those of later days that are marked as bid, by day and
// number. Won lots of these days take their cash, hours and bay; what builds in hand still take is taken first. A bay is taken until the
// work ends. A build that was sold takes nothing. It may run on any goroutine. Errors: the book can't be read, the work was cancelled, or
// the sale has a fault.
func (d *Desk) PlanDay(ctx context.Context, s State) (DayPlan, error) {
	cur, known := money.Lookup(s.Day.Has.Currency)
	if !known {
		return DayPlan{}, fmt.Errorf("%q is no currency", s.Day.Has.Currency)
	}
	p := &planner{desk: d, know: d.Knowledge(), factors: s.Factors, guesses: s.Day.Has.Guesses, day: s.Day.Date,
		in: s.Day.Has.In}
	p.plan.Sale = sale.Sale{Currency: cur, Purse: sale.Purse{Cash: s.Day.Has.Cash, Hours: s.Day.Has.Hours, Bays: s.Day.Has.Bays}}
	p.plan.Sale.Later, p.plan.Unmarked = s.Day.Has.Later.rates(), s.unmarked(s.Day.Date)
	horizon := s.horizon()
	if err := p.inHand(ctx, *s.Day.Has, horizon); err != nil {
		return DayPlan{}, err
	}
	for _, e := range horizon {
		if err := p.add(ctx, e); err != nil {
			return DayPlan{}, err
		}
	}
	p.free()
	if faults := p.faults(); len(faults) > 0 {
		return DayPlan{}, fmt.Errorf("%s is %s: want %s", faults[0].Path, faults[0].Value, faults[0].Want)
	}
	if err := ctx.Err(); err != nil {
		return DayPlan{}, err
	}
	p.plan.Answer = sale.New(p.plan.Sale).Answer()
	return p.plan, ctx.Err()
}

// faults checks the sale; what is left may lie below zero once the results are in.
func (p *planner) faults() []sale.Fault {
	s := p.plan.Sale
	s.Purse = sale.Purse{} // never refused
	return s.Check()
}

// horizon returns the lots that share what there is, in the order in which they run.
func (s State) horizon() []book.Entry {
	var out []book.Entry
	for _, e := range s.Entries {
		today := e.SaleDate == s.Day.Date
		later := e.SaleDate.Known() && e.SaleDate > s.Day.Date && (e.State == lot.Bid || e.State == lot.Won)
		if !e.Archived && (today || later) && e.State != lot.Lost && e.State != lot.Passed {
			out = append(out, e)
		}
	}
	slices.SortStableFunc(out, inTurn)
	return out
}

// unmarked returns the lots of the days after one that are still to come and not marked as bid, in the order in which they run.
func (s State) unmarked(day lot.Date) []book.Entry {
	var out []book.Entry
	for _, e := range s.Entries {
		open := e.State != lot.Bid && e.State != lot.Won && e.State != lot.Lost && e.State != lot.Passed
		if open && !e.Archived && e.SaleDate.Known() && e.SaleDate > day {
			out = append(out, e)
		}
	}
	slices.SortStableFunc(out, inTurn)
	return out
}

// inTurn orders lots as they run, by day, sale and place.
func inTurn(a, b book.Entry) int {
	return cmp.Or(cmp.Compare(a.SaleDate, b.SaleDate), cmp.Compare(a.Sale, b.Sale), cmp.Compare(turn(a), turn(b)),
		byNumber(a.Number, b.Number))
}

// turn is the place of a lot on its list; 0: the list doesn't say, and the numbers do.
func turn(e book.Entry) int {
	if e.Listed == nil {
		return 0
	}
	return e.Listed.RunOrder
}

// inHand enters what comes in, and takes what the builds still take that were bought before.
func (p *planner) inHand(ctx context.Context, has SaleDay, horizon []book.Entry) error {
	all, err := p.desk.Book.Builds(ctx)
	if err != nil {
		return err
	}
	p.comes(has.In, all)
	p.plan.Year = pastYear(all, p.plan.Sale.Currency, has.Bays, p.desk.Today())
	for _, b := range all {
		if b.Ours() && !b.Archived && b.Build.Sale.Price != nil && b.Build.Dates.Sold == "" {
			p.plan.Undated = append(p.plan.Undated, b.Number)
		}
	}
	all = slices.DeleteFunc(slices.Clone(all), func(b book.Bought) bool { return !b.Ours() || b.Build.Gone() || b.Archived })
	left, err := p.desk.ForeseeAll(ctx, p.factors, all)
	if err != nil {
		return err
	}
	s := &p.plan.Sale
	for _, b := range all {
		var foreseen *valuation.Foresight
		if f, known := left[b.ID]; known {
			foreseen = &f
		}
		if slices.ContainsFunc(horizon, func(e book.Entry) bool { return e.ID == b.ID }) {
			p.frees(b, foreseen) // its win is counted in its turn
			continue
		}
		p.holds(b, foreseen)
	}
	s.Bays, s.Cash, s.Hours = s.Bays-p.plan.Hand.Bays, s.Cash-p.plan.Hand.Cash, s.Hours-p.plan.Hand.Hours
	return nil
}

// holds counts what a build in hand still takes, and what it is likely to bring; nil: it can't be foreseen.
func (p *planner) holds(b book.Bought, f *valuation.Foresight) {
	cur := p.plan.Sale.Currency
	p.plan.Hand.Builds++
	p.takesBay(b, f)
	if f == nil || f.Currency != cur.Code {
		p.plan.Out = append(p.plan.Out, "Build "+b.Number+": what it still takes can't be foreseen. Its bay alone is counted.")
		return
	}
	p.plan.Hand.Cash += cur.FromMajor(f.Cash.Mean)
	p.plan.Hand.Hours += f.Hours.Mean
	if c, ok := comingFrom(b, *f, p.desk.Today()); ok {
		p.plan.Likely = append(p.plan.Likely, c)
	}
}

// add takes one lot of the horizon in: one to come into the plan, a won one out of what there is.
func (p *planner) add(ctx context.Context, e book.Entry) error {
	if err := ctx.Err(); err != nil {
		return err
	}
	l, err := p.desk.Book.Lot(ctx, e.ID)
	if err != nil {
		return err
	}
	if e.State == lot.Won && l.Build.Gone() {
		return nil
	}
	one, first, why, err := p.lotOf(ctx, l)
	s := &p.plan.Sale
	switch won := e.State == lot.Won; {
	case err != nil:
		return err
	case won && (why != "" || l.Build.Hammer == nil):
		return fmt.Errorf("lot %s is won, and what it takes is not known: enter its hammer price under Builds. %s", e.Number, why)
	case won:
		s.Purse = s.Won(one, *l.Build.Hammer, s.Currency)
	case why == "" && first && !p.guesses:
		p.plan.Unlooked = append(p.plan.Unlooked, e.Number)
	case why != "":
		p.plan.Out = append(p.plan.Out, "Lot "+e.Number+": "+why)
	default:
		one.Day = e.SaleDate
		s.Lots = append(s.Lots, one)
		p.plan.Lots = append(p.plan.Lots, DayLot{e.ID, e, first})
	}
	return nil
}

// lotOf returns a lot as the plan sees it; why says what keeps it out.
func (p *planner) lotOf(ctx context.Context, l book.Lot) (one sale.Lot, first bool, why string, err error) {
	c, _, err := p.desk.withShelf(ctx, l, p.factors)
	if err != nil {
		return one, false, "", err
	}
	c = asListed(c)
	if c.Currency != p.plan.Sale.Currency.Code {
		return one, false, "its money is " + c.Currency + "; nothing converts it.", nil
	}
	if faults := c.Check(); len(faults) > 0 {
		if faults[0].Key == "resale" {
			return one, false, "it has no resale price yet. Import comparables or enter your guess on its worksheet.", nil
		}
		return one, false, faults[0].Error(), nil
	}
	a, odds, err := p.desk.memory().Weigh(ctx, c, p.know)
	if err != nil {
		return one, false, err.Error(), nil
	}
	if !odds.Known() || odds.Law() == nil {
		return one, false, "a bid still needs something, or nothing says what it goes for. See its worksheet.", nil
	}
	at := invoice.After(c.Buying.BidSteps, 0)
	if a.WalkAway != nil {
		at = *a.WalkAway
	}
	out, cur := odds.At(at), p.plan.Sale.Currency
	beside := max(0, cur.FromMajor(out.Cash90)-out.Total)
	one = sale.Lot{ID: fmt.Sprint(l.ID), Worth: out.Total + cur.FromMajor(out.Profit.Mean), WalkAway: a.WalkAway, Beside: beside,
		Hours: a.Hours.Mean, Days: a.Days.Mean, Hammer: odds.Law(), Steps: c.Buying.BidSteps, Terms: c.Buying.Terms}
	// Up to the walk-away bid it brings what the Board says: that counts the capital of each price, and of a first guess that those who have
	// looked leave the worse of such lots at a low price.
	if a.ExpectedGain != nil {
		one.Worth = one.WorthOf(*a.ExpectedGain, cur)
	}
	return one, a.FirstGuess != nil, "", nil
}
