package valuation

import (
	"walkline/valuation/bid"
	"walkline/valuation/checks"
	"walkline/valuation/donor"
	"walkline/valuation/hammer"
	"walkline/valuation/hidden"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/patterns"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
	"walkline/valuation/resale"
	"walkline/valuation/scenario"
)

// Engine names this version of the arithmetic; a frozen prediction carries it.
const Engine = "walkline-engine/2"

// Knowledge is what the engine knows beside the case: the catalogues and the market's prior. It is data, given from outside.
type Knowledge struct {
	Jobs  repair.Catalogue
	Risks hidden.Catalogue
	Prior resale.Prior
	Packs []checks.Pack   // by jurisdiction; a later one stands in the place of an earlier one of its id
	Parts donor.Catalogue // what a lot is parted out into, for proposals alone

	Hammer *hammer.Model // what lots go for, as past results tell; nil: only the buyer's own guess says

	Seen patterns.Counts // what the shop's own surveys found, for lots that nobody has looked at
}

// Value returns the walk-away bid with its odds and reasons. The same case and knowledge give the same answer, to the
// cent. Limits: c.Check() has found no fault, and comparables that lie in a file have been read into the rows.
// Errors: resale.ErrUnknown when neither the rows nor a guess can carry a price; hidden.ErrTied when too many findings hang together.
// Source: the order of the steps is that of the package comment.
func Value(c Case, k Knowledge) (Answer, error) { return NewMemory().Value(c, k) }

// run fills the fields of the work, each from those before it.
func (w *work) run(m *Memory) error {
	w.currency, _ = money.Lookup(w.c.Currency)
	if w.c.Unlooked() {
		w.guessed = true
		if w.over == nil {
			w.over = patterns.Likely(w.c.listed(), w.k.Seen)
		}
		return w.guess(m, w.over)
	}
	return w.see(m)
}

// see fills the fields of a lot whose survey is known.
func (w *work) see(m *Memory) error {
	if err := w.draw(m); err != nil {
		return err
	}
	w.decide(m)
	w.look()
	return nil
}

// draw fills the fields up to the price.
func (w *work) draw(m *Memory) error {
	if err := w.play(m); err != nil {
		return err
	}
	w.items = w.list()
	return w.priced(m)
}

// play works out the work and the risks, and draws the scenarios.
func (w *work) play(m *Memory) error {
	if err := w.expect(); err != nil {
		return err
	}
	w.played = m.scenes.Play(w.scene())
	return nil
}

// priced fits the price.
func (w *work) priced(m *Memory) error {
	w.market = m.doubtful(w.c, w.c.beliefs(w.currency), w.k.Prior)
	if err := w.market.model.Err(); err != nil {
		return err
	}
	w.market = w.market.factored(w.c.learned().Resale).dented(w.c.Survey.HailOff())
	return nil
}

// expect works out the risks with their chances, and then the work: some of it comes with a risk. Errors: the answers contradict
// each other outright.
func (w *work) expect() error {
	w.risks = w.hurt()
	w.belief = hidden.After(w.risks, w.c.Findings, w.c.loading())
	w.chances = w.belief.Chances
	w.lines = factored(w.plan(), w.c.learned())
	return w.belief.Err()
}

// work is one valuation under way, each field made from those before it.
type work struct {
	c        Case
	k        Knowledge
	currency money.Currency
	lines    []repair.Line
	risks    []hidden.Risk
	struck   []string // what was said of risks that known work puts right
	belief   hidden.Posterior
	chances  []float64 // of the risks, after the findings
	items    []checks.Item
	market   market
	played   scenario.Outcome
	grows    growing
	finish   bid.Problem // the rebuild, finished whatever is found
	stops    stopping
	rebuilt  option      // the rebuild, with the option to stop where it is taken
	options  []option    // the plans, in their order
	best     int         // of the options
	problem  bid.Problem // of the best plan
	found    bid.Answer  // of the best plan
	looks    checks.Looks
	law      bid.Law            // where the hammer falls, for the odds; nil: nobody can say
	brief    bool               // no ladder is wanted
	failed   error              // in drawing the scenarios
	over     []patterns.Pattern // what a lot that nobody has looked at may be; nil: as the list leaves it
	guessed  bool               // nobody has looked at the lot
	guarded  bool               // its bid is lower, or none, since those who looked leave the worst
	strip    scenario.Stripped
	parts    []part // the surveys that it may turn out to have; nil: one alone
	sure     string // that one, where nobody has looked
	jobs     *repair.Index
	planners []*repair.Planner // of the lot, and of what it may be where a fact is not known
}

// plan returns the lines of the case and, where it asks for them, those of the catalogue.
func (w *work) plan() []repair.Line {
	hurt := w.causes()
	return w.c.Repair.Donor.Feed(w.planned(func(p *repair.Planner) []repair.Line { return p.Lines(hurt...) }))
}

// planned returns the lines that a plan of the lot has, and of what it may be where a fact is not known. What the survey calls for is
// looked up once.
func (w *work) planned(lines func(*repair.Planner) []repair.Line) []repair.Line {
	at := 0
	plan := func(l lot.Lot) []repair.Line {
		if at == len(w.planners) {
			w.planners = append(w.planners, repair.NewPlanner(w.c.Repair.Donor.Beside(w.c.Repair.Lines), w.index(), l, w.c.Damage))
		}
		at++
		return lines(w.planners[at-1])
	}
	return w.exchanged(unsure(plan(w.c.seen()), w.c.seen(), plan))
}

// index returns the catalogue of jobs in use.
func (w *work) index() *repair.Index {
	switch {
	case !w.c.Repair.UseCatalogue:
		return repair.NewIndex(repair.Catalogue{})
	case w.jobs == nil:
		w.jobs = repair.NewIndex(w.k.Jobs)
	}
	return w.jobs
}

// raise returns the risks of the case and of the catalogue.
func (w *work) raise() []hidden.Risk {
	known := w.k.Risks
	if !w.c.Hidden.UseCatalogue {
		known = hidden.Catalogue{}
	}
	raise := func(l lot.Lot) []hidden.Risk { return hidden.Raise(w.c.Hidden.Risks, known, l, w.c.Damage) }
	return w.c.unknownMiles(w.exchangedRisks(unsureRisks(raise(w.c.feared()), w.c.feared(), raise)))
}

func (w *work) list() []checks.Item { return checks.List(w.inQuestion()) }

// inQuestion returns what the checklist is made for.
func (w *work) inQuestion() checks.Subject {
	return checks.Subject{Lot: w.c.seen(), Damage: w.c.Damage, On: w.c.saleDay(), Risks: w.risks, Findings: w.findings(),
		Answers: w.c.Findings,
		Packs:   checks.Choose(w.k.Packs, w.c.Lot.Title.RegisterIn)}
}

// saleDay is the day of the sale, or that of the valuation where it is not known.
func (c Case) saleDay() lot.Date {
	if c.Lot.SaleDate.Known() {
		return c.Lot.SaleDate
	}
	return c.ValuedOn
}

// subject returns the vehicle as it will be sold: the case's subject with the facts of the lot.
func (c Case) subject() resale.Subject {
	s := c.Resale.Subject
	s.Make, s.Model, s.ModelYear, s.Unit = c.Lot.Make, c.Lot.Model, c.Lot.ModelYear, c.Lot.OdometerUnit
	if s.Trim == "" {
		s.Trim = c.Lot.Trim
	}
	if s.Brand == "" {
		s.Brand = "rebuilt"
	}
	if c.Lot.Odometer != nil {
		miles := float64(*c.Lot.Odometer)
		s.Mileage = &miles
	}
	return s
}

func (c Case) beliefs(cur money.Currency) resale.Beliefs {
	return resale.Beliefs{BrandDiscount: c.brandDiscount(), AskedToSold: c.askedToSold(), Guess: c.Resale.Guess,
		Today: c.ValuedOn, Currency: cur}
}

// queue returns the days for which the finished vehicle waits for the rebuilt inspection: none under a title that waits for none.
func (c Case) queue() prob.Three {
	if c.Lot.Title.Inspection() == lot.Inspected {
		return prob.Three{}
	}
	return c.Time.InspectionQueueDays
}

// scene returns what the scenarios play out.
func (w *work) scene() scenario.Lot {
	c := w.c
	return scenario.Lot{
		Lines: w.lines, Risks: w.risks, Chances: w.chances, Belief: &w.belief, Loading: c.loading(), Rates: c.Labour.Rates,
		Spreads: spreads(c.learned()),
		Freight: c.Buying.Freight,
		Storage: scenario.Storage{PerDay: c.Buying.Storage.PerDay, FreeDays: c.Buying.Storage.FreeDays, Days: c.Buying.Storage.Days},
		Time: scenario.Time{HoursPerWeek: c.Time.HoursPerWeek, HoldingPerDay: c.Time.HoldingPerDay,
			InspectionQueue: c.queue(), DaysToSell: c.Time.DaysToSell.Times(factorOf(c.learned().DaysToSell))},
		N: c.Run.Scenarios, Seed: c.Run.Seed,
	}
}
