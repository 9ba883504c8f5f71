package valuation

import (
	"fmt"

	"walkline/valuation/bid"
	"walkline/valuation/hidden"
	"walkline/valuation/invoice"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/repair"
	"walkline/valuation/resale"
)

// maxLoading is the greatest loading on the common factor: at 1 nothing of a line would be its own.
const maxLoading = 0.9

// Check returns every fault of the case, with the keys of the case file; none means that [Value] is safe.
func (c Case) Check() []Fault {
	f := new(faults)
	cur, known := money.Lookup(c.Currency)
	if !known {
		cur = money.Unsaid
	}
	f.unless(c.Format == Format, "format", c.Format, Format)
	f.unless(known, "currency", c.Currency, "an ISO 4217 code such as USD")
	f.unless(c.ValuedOn.Known(), "valued_on", fmt.Sprintf("%q", c.ValuedOn), "the day of valuation, YYYY-MM-DD")
	f.lot(c)
	f.survey(c)
	for i, l := range c.Repair.Lines {
		f.line(fmt.Sprintf("repair.lines[%d]", i), l)
	}
	seen := map[string]bool{}
	for i, l := range c.Repair.Lines {
		f.id(fmt.Sprintf("repair.lines[%d].id", i), l.ID, seen)
	}
	f.donor(c.Repair.Donor)
	f.risks(c.Hidden)
	f.resale(c)
	f.buying(c.Buying, cur)
	f.terms(c)
	f.rules(c.Rules, cur)
	f.waysOut(c)
	f.growing(c.Resale)
	f.factors(c.Factors)
	return f.all
}

func (f *faults) lot(c Case) {
	l := c.Lot
	if l.ModelYear != 0 {
		f.between("lot.model_year", float64(l.ModelYear), lot.FirstModelYear, float64(lot.LatestModelYear(c.ValuedOn)))
	}
	f.word("lot.odometer_unit", l.OdometerUnit, lot.OdometerUnits)
	f.word("lot.odometer_status", l.OdometerStatus, lot.OdometerStatuses)
	f.word("lot.condition", l.Condition, lot.Conditions)
	if l.Odometer != nil {
		f.between("lot.odometer", float64(*l.Odometer), 0, lot.MostMileage)
	}
	for i, w := range l.Loss {
		f.word(fmt.Sprintf("lot.loss[%d]", i), w, lot.Losses)
	}
	f.listed(l.Listed)
	for i, w := range l.Airbags {
		f.word(fmt.Sprintf("lot.airbags_deployed[%d]", i), w, lot.AirbagPositions)
	}
	for i, d := range c.Damage {
		at := fmt.Sprintf("damage[%d]", i)
		f.word(at+".area", d.Area, lot.Areas)
		f.word(at+".extent", d.Extent, lot.Extents)
		f.word(at+".depth", d.Depth, lot.Depths)
	}
	for _, id := range sortedKeys(c.Findings) {
		f.word("findings."+id, c.Findings[id], []string{"yes", "no"})
	}
}

// listed adds the faults of what a run list says beside the facts.
func (f *faults) listed(l *lot.Listed) {
	if l == nil {
		return
	}
	f.words("lot.listed.areas", l.Areas, lot.Areas)
	f.optional("lot.listed.currency", l.Currency, money.Codes())
	f.between("lot.listed.run_order", float64(l.RunOrder), 0, mostTime)
	for key, x := range map[string]*float64{"value_before": l.ValueBefore, "repair_estimate": l.RepairEstimate} {
		if x != nil {
			f.unless(*x > 0 && *x <= mostMoney, "lot.listed."+key, *x, "more than 0; leave the key out where nothing is said")
		}
	}
}

func (f *faults) line(at string, l repair.Line) {
	f.unless(l.Job != "", at+".job", `""`, "the work in words")
	f.chance(at+".chance", l.Chance)
	f.hours(at+".hours", l.Hours)
	f.three(at+".materials", l.Materials)
	f.three(at+".outside", l.Outside)
	if l.Loading != nil {
		f.between(at+".loading", *l.Loading, 0, maxLoading)
	}
	for i, p := range l.Parts {
		f.part(fmt.Sprintf("%s.parts[%d]", at, i), p)
	}
}

func (f *faults) part(at string, p repair.Part) {
	sure := false
	for i, o := range p.Options {
		option := fmt.Sprintf("%s.options[%d]", at, i)
		f.chance(option+".chance", o.Chance)
		f.three(option+".price", o.Price)
		f.three(option+".freight", o.Freight)
		f.spell(option+".lead_days", o.LeadDays)
		f.spell(option+".extra_hours", o.ExtraHours)
		f.three(option+".core_back", o.CoreBack)
		f.unless(o.CoreBack.Likely <= o.Asked().Likely && o.CoreBack.High <= o.Asked().High, option+".core_back", o.CoreBack.Likely,
			"no more than the price, of which the deposit is a part")
		f.unless(o.Quoted == "" || lot.Date(o.Quoted).Known(), option+".quoted", fmt.Sprintf("%q", o.Quoted), "the day of the quote, YYYY-MM-DD")
		f.quote(option+".quote", o.Quote)
	}
	for _, i := range p.Order(0, 0) {
		sure = sure || repair.Or(p.Options[i].Chance, 1) == 1
	}
	if p.Fallback == nil {
		f.unless(sure, at+".fallback", "nothing", "what happens when no source has it: price, lead_days")
		return
	}
	f.three(at+".fallback.price", p.Fallback.Price)
	f.spell(at+".fallback.lead_days", p.Fallback.LeadDays)
	f.spell(at+".fallback.hours", p.Fallback.Hours)
}

// quote adds the faults of what a yard said.
func (f *faults) quote(at string, q *repair.Quote) {
	if q == nil {
		return
	}
	f.unless(q.Day.Known(), at+".day", fmt.Sprintf("%q", q.Day), "the day on which it was said, YYYY-MM-DD")
	f.between(at+".price", q.Price, 0, mostMoney)
	f.unless(q.Yard != "" || q.Phone != "", at+".yard", `""`, "who said it: a yard or a phone number")
}

func (f *faults) risks(h Hidden) {
	f.between("hidden.shared_loading", h.SharedLoading, 0, maxLoading)
	seen := map[string]bool{}
	for i, r := range h.Risks {
		at := fmt.Sprintf("hidden.risks[%d]", i)
		f.id(at+".id", r.ID, seen)
		f.risk(at, r)
	}
}

func (f *faults) risk(at string, r hidden.Risk) {
	f.unless(r.Name != "", at+".name", `""`, "the damage in words")
	f.unless(r.Chance.A >= 0 && r.Chance.B >= 0 && r.Chance.A+r.Chance.B > 0, at+".chance",
		fmt.Sprintf("a %g, b %g", r.Chance.A, r.Chance.B), "counts a and b, not below 0 and not both 0")
	f.three(at+".cost", r.Cost)
	f.hours(at+".hours", r.Hours)
	f.spell(at+".days", r.Days)
	if r.Loading != nil {
		f.between(at+".loading", *r.Loading, 0, maxLoading)
	}
	for i, e := range r.Findings {
		finding := fmt.Sprintf("%s.findings[%d]", at, i)
		f.between(finding+".if_present", e.IfPresent, 0, 1)
		f.between(finding+".if_absent", e.IfAbsent, 0, 1)
	}
}

func (f *faults) resale(c Case) {
	r := c.Resale
	f.three("resale.brand_discount", r.BrandDiscount)
	f.unless(r.BrandDiscount.High < 1, "resale.brand_discount.high", r.BrandDiscount.High, "a fraction below 1 (28 % is 0.28)")
	f.discounts(c)
	f.three("resale.asked_to_sold", r.AskedToSold)
	f.unless(r.AskedToSold.Low > 0 && r.AskedToSold.High <= 2, "resale.asked_to_sold", r.AskedToSold.Likely,
		"a factor above 0 and at most 2 (5 % less is 0.95)")
	if r.Guess != nil {
		f.three("resale.guess", *r.Guess)
		f.unless(r.Guess.Low > 0, "resale.guess.low", r.Guess.Low, "more than 0")
	}
	hasRows := len(r.Rows) > 0 || r.Comparables != ""
	f.unless(len(r.Rows) == 0 || r.Comparables == "", "resale.comparables", r.Comparables, "a file or rows inline, not both")
	f.unless(hasRows || r.Guess != nil, "resale", "no comparables and no guess",
		"rows, a comparables file, or guess with low, likely and high")
	f.unless(!hasRows || c.Lot.ModelYear != 0, "lot.model_year", 0, "the model year, since there are comparables to bring to it")
	f.optional("resale.subject.upkeep", r.Subject.Upkeep, resale.Upkeeps)
	if s := r.Subject.Condition; s != nil {
		f.between("resale.subject.condition", *s, 1, 5)
	}
	for i, row := range r.Rows {
		var own faults
		own.row(row)
		for _, x := range own.all {
			f.all = append(f.all, Fault{fmt.Sprintf("resale.rows[%d].%s", i, x.Key), x.Value, x.Want})
		}
	}
}

// The words that a comparable may use.
var (
	rowKinds = []string{"", "asked", "sold"}
	rowUnits = []string{"", "mi", "km"}
)

// row adds the faults of one comparable, with keys from the row on: of thousands, few have any.
func (f *faults) row(r resale.Row) {
	f.unless(r.Price > 0, "price", r.Price, "more than 0")
	f.word("kind", r.Kind, rowKinds)
	f.word("mileage_unit", r.Unit, rowUnits)
	if r.Mileage != nil {
		f.between("mileage", *r.Mileage, 0, lot.MostMileage)
	}
	if r.DistanceMi != nil {
		f.between("distance", *r.DistanceMi, 0, lot.MostDistance)
	}
	if r.Condition != nil {
		f.between("condition", *r.Condition, 1, 5)
	}
}

func (f *faults) buying(b Buying, cur money.Currency) {
	for _, x := range append(invoice.CheckSteps(b.BidSteps, cur), b.Check(cur)...) {
		f.all = append(f.all, Fault{"buying." + x.Path, x.Value, x.Want})
	}
	f.three("buying.freight", b.Freight)
	f.between("buying.storage.per_day", b.Storage.PerDay, 0, 1e6)
	f.between("buying.storage.free_days", b.Storage.FreeDays, 0, 3650)
	f.spell("buying.storage.days", b.Storage.Days)
}

// leastWeek is the fewest hours a week of which a build ever ends.
const leastWeek = 0.1

func (f *faults) terms(c Case) {
	f.unless(c.Time.HoursPerWeek >= leastWeek && c.Time.HoursPerWeek <= 168, "time.hours_per_week", c.Time.HoursPerWeek,
		"hours of work a week, from 0.1 to 168")
	f.spell("time.inspection_queue_days", c.Time.InspectionQueueDays)
	f.spell("time.days_to_sell", c.Time.DaysToSell)
	f.between("time.holding_per_day", c.Time.HoldingPerDay, 0, 1e6)
	f.between("time.capital_rate", c.Time.CapitalRate, 0, 5)
	f.unless(c.Selling.Percent >= 0 && c.Selling.Percent < 1, "selling.percent", c.Selling.Percent, "a fraction from 0 to below 1")
	f.between("selling.flat", c.Selling.Flat, 0, 1e9)
	for _, trade := range sortedKeys(c.Labour.Rates) {
		f.word("labour.rates", trade, lot.Trades)
		f.between("labour.rates."+trade, c.Labour.Rates[trade], 0, 1e6)
	}
	f.exchange(c.Market)
	f.between("market.rivals", float64(c.Market.rivals()), 0, 1000)
	if usual := c.Market.UsualRivals; usual != nil {
		f.between("market.usual_rivals", float64(*usual), 0, 1000)
	}
	f.between("market.own_share", c.Market.OwnShare, 0, 1)
	if c.Market.HammerGuess != nil {
		f.three("market.hammer_guess", *c.Market.HammerGuess)
	}
	f.between("run.scenarios", float64(c.Run.Scenarios), 256, 1<<20)
	if parts := len(c.Repair.Lines) + len(c.Hidden.Risks); parts > mostDrawn/max(1, c.Run.Scenarios) {
		f.add("run.scenarios", c.Run.Scenarios, fmt.Sprintf("at most %d with %d lines and risks of your own: more would take many minutes",
			mostDrawn/parts, parts))
	}
}

// mostDrawn is how many lines and risks times scenarios are drawn. Ours: 10,000 lines at the scenarios that a new case has, and some.
const mostDrawn = 1 << 28

func (f *faults) rules(r bid.Rules, cur money.Currency) {
	f.unless(r.Bounding(), "rules", "none that a high bid breaks",
		"at least one of min_profit, min_margin, max_loss_chance (below 1), max_worst_tenth_loss, min_per_hour, max_cash")
	limits := map[string]*money.Amount{bid.MinProfit: r.MinProfit, bid.MaxWorstTenthLoss: r.MaxWorstTenthLoss, bid.MinPerHour: r.MinPerHour,
		bid.MaxCash: r.MaxCash}
	for _, key := range sortedKeys(limits) {
		if a := limits[key]; a != nil && *a < 0 {
			f.add("rules."+key, cur.Text(*a), "no less than 0; leave the key out to turn the rule off")
		}
	}
	if r.MinMargin != nil {
		f.between("rules.min_margin", *r.MinMargin, 0, 100)
	}
	f.chance("rules.max_loss_chance", r.MaxLossChance)
	if r.MaxDays != nil {
		f.between("rules.max_days", *r.MaxDays, 0, 1e5)
	}
}
