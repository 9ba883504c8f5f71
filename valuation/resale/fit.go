package resale

import (
	"errors"
	"math"

	"walkline/valuation/prob"
)

// ErrUnknown says that there is nothing to go by: no usable comparable and no guess.
var ErrUnknown = errors.New("the resale price is not known: there is no usable comparable and no guess of low, likely and high")

// ErrNoPrior says that the fit was asked for without a prior.
var ErrNoPrior = errors.New("the resale price is not known: no starter prior was given for the comparables")

// outlook is the buyer's beliefs on the log scale.
type outlook struct {
	asked Effect // log of sold over asked
	brand Effect // log of branded over clear
	walk  float64
}

// Model is a fitted table of comparables. It is a value: its methods change nothing.
type Model struct {
	err     error
	beliefs Beliefs
	rows    []screened // every row, in the order of the fit; the used ones first
	used    int
	cal     calendar
	subject traits
	year    int // model year of the subject
	outlook outlook
	members []member
	tail    tail
}

// member is one way to fit the table: a market's prior and a form of mileage, with its share in the answer.
type member struct {
	design *design
	market Market
	table  *prob.Mixed
	fit    prob.MixedFit
	share  float64
}

// Fit returns the model of the price that rows, beliefs and prior give for s. The answer doesn't depend on the order of
// the rows. Limits: prices are positive minor units; rows that can't be used are left out and named by Warnings.
func Fit(rows []Row, s Subject, b Beliefs, p Prior) Model {
	m := Model{beliefs: b, cal: newCalendar(rows, s, b.Today), year: s.ModelYear}
	m.subject = m.cal.subject(s)
	m.rows = screen(rows, m.cal, b.Currency)
	m.rows, m.used = usedFirst(m.rows)
	m.outlook = outlook{asked: logFactor(b.AskedToSold, false), brand: logFactor(b.BrandDiscount, true), walk: p.Walk.SD}
	if m.used == 0 {
		if b.Guess == nil {
			m.err = ErrUnknown
		}
		return m
	}
	if len(p.Markets) == 0 {
		m.err = ErrNoPrior
		return m
	}
	m.members = fitMembers(m.rows[:m.used], m.subject, m.outlook, p, b.Currency.Code)
	m.tail = newTail(m.leftOut())
	return m
}

// Err returns nil, or ErrUnknown when there is nothing to go by; then no other method has an answer.
func (m Model) Err() error { return m.err }

func usedFirst(rows []screened) ([]screened, int) {
	out := make([]screened, 0, len(rows))
	for _, r := range rows {
		if r.reason == "" {
			out = append(out, r)
		}
	}
	used := len(out)
	for _, r := range rows {
		if r.reason != "" {
			out = append(out, r)
		}
	}
	return out, used
}

// logFactor returns the mean and standard deviation of the log of a factor, or of one less a fraction.
func logFactor(t prob.Three, off bool) Effect {
	value := func(u float64) float64 {
		x := t.Quantile(u)
		if off {
			x = 1 - x
		}
		return math.Log(math.Max(x, leastFactor))
	}
	if t.Sure() {
		return Effect{Mean: value(0.5)}
	}
	const n = 200
	var e Effect
	square := 0.0
	for i := range n {
		x := value((float64(i) + 0.5) / n)
		e.Mean += x / n
		square += x * x / n
	}
	e.SD = math.Sqrt(math.Max(0, square-e.Mean*e.Mean))
	return e
}

// leastFactor keeps the logarithm of a believed factor finite.
const leastFactor = 0.01

// subsample is the number of rows from which the form of mileage and the market prior are chosen when there are more.
const subsample = 80

// candidates returns the market priors to try, the likeliest before the prices are seen first: those of the table's own
// currency and those of no currency; the others too when none is of its own.
func candidates(p Prior, currency string) []Market {
	var home, open, far []Market
	for _, m := range p.Markets {
		switch m.Currency {
		case "":
			open = append(open, m)
		case currency:
			home = append(home, m)
		default:
			far = append(far, m)
		}
	}
	if len(home) > 0 {
		return append(home, open...)
	}
	return append(open, far...)
}

// fitMembers fits the table in every form of mileage under the likeliest market prior, and in the best of them under the
// other priors. Each has a share by how well it foretells rows that it hasn't seen; of a large table the best alone is
// fitted to all rows.
func fitMembers(rows []screened, subject traits, o outlook, p Prior, currency string) []member {
	few := thin(rows, subsample)
	markets := candidates(p, currency)
	steps := mostSteps
	if len(few) < len(rows) {
		steps = choiceStep
	}
	var all []member
	best := 0
	for i, form := range mileageForms {
		mb := newMember(few, subject, o, markets[0], form)
		mb.solve(all, markets[0].Currency == currency, steps)
		all = append(all, mb)
		if mb.share > all[best].share {
			best = i
		}
		if mb.design.mileage < 0 {
			break
		}
	}
	form := all[best].design.form
	for _, market := range markets[1:] {
		mb := newMember(few, subject, o, market, form)
		mb.solve(all, market.Currency == currency, steps)
		all = append(all, mb)
	}
	if len(rows) == len(few) {
		return keep(all)
	}
	return []member{fitWhole(all, rows, subject, o)}
}

// fitWhole returns the best member, fitted to all rows.
func fitWhole(all []member, rows []screened, subject traits, o outlook) member {
	chosen := all[0]
	for _, mb := range all {
		if mb.share > chosen.share {
			chosen = mb
		}
	}
	big := newMember(rows, subject, o, chosen.market, chosen.design.form)
	big.fit = big.table.Solve(big.table.Start(), mostSteps)
	big.share = 1
	return big
}

// Limits of a fit.
const (
	mostSteps  = 40
	choiceStep = 4    // enough to choose among members by
	leastSigma = 0.01 // one price is never foretold closer than 1 %; starter value, from memory: replace it with yours
)

// solve fits the member, starting where an earlier one ended, and sets its share to its score.
func (mb *member) solve(earlier []member, home bool, steps int) {
	from := mb.table.Start()
	if len(earlier) > 0 {
		from = mb.table.Resume(earlier[0].fit)
	}
	mb.fit = mb.table.Solve(from, steps)
	mb.share = mb.fit.Score
	if home {
		mb.share += homeBonus
	}
}

// homeBonus is by how much (log odds) a market prior of the table's own currency is preferred before the prices are seen:
// about 50 to 1. Errors on open data hardly change between 3 and 6.
const homeBonus = 4.0

// leastShare is the share against the best below which a member isn't worth keeping.
const leastShare = 0.02

// keep turns scores into shares and drops members that hardly count.
func keep(all []member) []member {
	best := math.Inf(-1)
	for _, mb := range all {
		best = math.Max(best, mb.share)
	}
	var out []member
	sum := 0.0
	for _, mb := range all {
		if mb.share = math.Exp(mb.share - best); mb.share >= leastShare {
			out = append(out, mb)
			sum += mb.share
		}
	}
	for i := range out {
		out[i].share /= sum
	}
	return out
}

func newMember(rows []screened, subject traits, o outlook, market Market, form mileageForm) member {
	d := newDesign(rows, subject, o, market, form)
	t := &prob.Mixed{Residual: market.Residual, Least: leastSigma, DF: market.DF}
	for _, e := range d.terms {
		t.Terms = append(t.Terms, e.Term)
	}
	t.Links = d.links
	for _, g := range d.groups {
		t.Groups = append(t.Groups, g.prior)
	}
	t.Target, _ = d.features(subject)
	for _, r := range rows {
		x, unknown := d.features(r.traits)
		t.Rows, t.Unknown = append(t.Rows, x), append(t.Unknown, unknown)
		t.Y, t.Like = append(t.Y, math.Log(r.price)), append(t.Like, likeness(r.traits, subject))
	}
	t.Prepare()
	return member{design: d, table: t, market: market}
}

// Distances at which a comparable counts half as much as one that is just like the subject.
const (
	halfAge      = 6.0      // years
	halfMiles    = 60_000.0 // on the odometer
	halfDistance = 500.0    // miles from the buyer; starter value, from memory: replace it with yours
)

// likeness returns how much a row counts against one that is just like the subject, in 0..1.
func likeness(r, s traits) float64 {
	sq := func(x float64) float64 { return x * x }
	off := sq((r.age-s.age)/halfAge) + sq(r.distance/halfDistance)
	if r.milesKnown && s.milesKnown {
		off += sq((r.miles - s.miles) / halfMiles)
	}
	if !r.milesKnown {
		off++
	}
	return 1 / (1 + off)
}

// thin returns at most about n rows, evenly spread over the order.
func thin(rows []screened, n int) []screened {
	if len(rows) <= n {
		return rows
	}
	out := make([]screened, n)
	for i := range out {
		out[i] = rows[i*len(rows)/n]
	}
	return out
}
