package hedonic

import (
	"math"

	"walkline/valuation/prob"
)

// member is one way to fit the table: a market's prior and a form of mileage, with its share in the answer.
type member struct {
	design *design
	market Market
	table  *prob.Mixed
	fit    prob.MixedFit
	share  float64
	along  []float64 // covariance of each effect with the subject's log price
}

// subsample is the number of rows from which the form of mileage and the market prior are chosen when there are more.
const subsample = 60

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

// Fit fits the table in every form of mileage under the likeliest market prior, and in the best of them under the
// other priors. Each has a share by how well it foretells rows that it hasn't seen; of a large table the best alone is
// fitted to all rows.
//
// Limits: at least one sale, at least one market.
func Fit(rows []Sale, subject Traits, o Outlook, p Prior, currency string) Blend {
	t := read(rows, subject)
	few := table{t.names, thin(t.rows, subsample), t.subject}
	markets := candidates(p, currency)
	steps := mostSteps
	if len(few.rows) < len(rows) {
		steps = choiceStep
	}
	var all []member
	best := 0
	for i, form := range Forms {
		mb := newMember(few, o, markets[0], form)
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
		mb := newMember(few, o, market, form)
		mb.solve(all, market.Currency == currency, steps)
		all = append(all, mb)
	}
	if len(rows) == len(few.rows) {
		return Blend{keep(all)}
	}
	return Blend{[]member{fitWhole(all, t, o)}}
}

// fitWhole returns the best member, fitted to all rows.
func fitWhole(all []member, t table, o Outlook) member {
	chosen := all[0]
	for _, mb := range all {
		if mb.share > chosen.share {
			chosen = mb
		}
	}
	big := newMember(t, o, chosen.market, chosen.design.form)
	big.fit = big.table.Solve(big.table.Start(), mostSteps)
	return keep([]member{big})[0]
}

// One price in fifty is taken for one that may lie anywhere from a tenth to ten times what it should: a slip of the pen, another kind of
// vehicle, a deposit. Starter value, from memory: replace it with yours.
const (
	wildChance = 0.02
	wildRange  = 2 * math.Ln10
)

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
	if steps == choiceStep {
		mb.fit = mb.table.Try(from, steps)
	} else {
		mb.fit = mb.table.Solve(from, steps)
	}
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
		out[i].along = out[i].fit.Cov.With(out[i].table.Target)
	}
	return out
}

func newMember(of table, o Outlook, market Market, form Form) member {
	d := newDesign(of, o, market, form)
	t := &prob.Mixed{Residual: market.Residual, Least: leastSigma, DF: market.DF, Wild: wildChance / wildRange}
	for _, e := range d.terms {
		t.Terms = append(t.Terms, e.Term)
	}
	t.Links = d.links
	for _, g := range d.groups {
		t.Groups = append(t.Groups, g.prior)
	}
	t.Target, _ = d.features(of.subject)
	t.Rows, t.Unknown = d.all(of.rows)
	t.Y, t.Like = make([]float64, len(of.rows)), make([]float64, len(of.rows))
	for i, r := range of.rows {
		t.Y[i], t.Like[i] = math.Log(r.Price), likeness(r.Traits, of.subject)
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
func likeness(r, s Traits) float64 {
	sq := func(x float64) float64 { return x * x }
	off := sq((r.Age-s.Age)/halfAge) + sq(r.Distance/halfDistance)
	if r.MilesKnown && s.MilesKnown {
		off += sq((r.Miles - s.Miles) / halfMiles)
	}
	if !r.MilesKnown {
		off++
	}
	return 1 / (1 + off)
}

// thin returns at most about n rows, evenly spread over the order.
func thin(rows []Sale, n int) []Sale {
	if len(rows) <= n {
		return rows
	}
	out := make([]Sale, n)
	for i := range out {
		out[i] = rows[i*len(rows)/n]
	}
	return out
}

// slopeOn returns by how much the subject's log price moves per unit of the log price of sale i.
func (mb member) slopeOn(i int) float64 {
	return prob.Dot(mb.table.Rows[i], mb.along) * mb.fit.Weight[i]
}
