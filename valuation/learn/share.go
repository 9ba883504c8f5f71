package learn

import (
	"math"
	"slices"

	"walkline/valuation/prob"
)

// How sure the starter share is, as a standard deviation: a starter value, from memory. shareGrid is how many nodes its belief has.
const (
	shareSD   = 0.2
	shareGrid = 400
)

// shortfall is what one win says of the own share: it fell short of its forecast before the allowance by short, of which the share
// of unit is expected, give or take stray. All in major units.
type shortfall struct{ short, unit, stray float64 }

// short returns by how much a sold win fell short: of its price after selling, and of its cost where all of that is known. A forecast that
// does not say with which share it was made tells nothing.
func (b Build) short() (shortfall, bool) {
	p, s := b.Foretold, b.Came.Sale
	if b.Ending != Sold || p == nil || s == nil || s.Price <= 0 || !p.Resale.Known() || p.Terms.OwnShare <= 0 ||
		s.Brand != "" && s.Brand != p.Terms.Brand {
		return shortfall{}, false
	}
	kept := 1 - p.Terms.SellPercent
	f := shortfall{short: kept * (p.Resale.Mean - b.Major(s.Price)), unit: p.Terms.ResaleAllow / p.Terms.OwnShare,
		stray: kept * p.Resale.stray()}
	c := b.Came
	if c.Repair != nil && c.Hidden != nil && c.Hours != nil && p.Cost.Known() {
		f.short += b.Major(*c.Repair+*c.Hidden) + *c.Hours*p.Terms.Rate - p.Cost.Mean
		f.unit += p.Terms.CostAllow / p.Terms.OwnShare
		f.stray = math.Hypot(f.stray, p.Cost.stray())
	}
	return f, f.unit > 0 && f.stray > 0
}

// stray returns the standard deviation of a normal figure with the same 80 % range.
func (f Figure) stray() float64 {
	return (f.quantile(0.9) - f.quantile(0.1)) / (2 * prob.NormQuantile(0.9))
}

// ownShare proposes the share of the bidders' doubt that differs between them: the belief is a normal one about the starter value, the
// shortfall of a win is normal about that share of its unit, and what lies outside 0..1 is cut off. Source: the normal mean with known
// variance, Gelman et al., Bayesian Data Analysis, 3rd edition, section 2.5.
func (p *proposer) ownShare() {
	if p.start.OwnShare == 0 {
		return
	}
	before := share{p.start.OwnShare, 1 / (shareSD * shareSD)}
	q := Proposal{Key: "own_share", Name: "Own share of the doubt", Unit: LoadUnit, Starter: before.value()}
	var seen share // what the wins say by themselves
	for _, b := range p.builds {
		f, ok := b.short()
		weight := faded(b.day(), p.today, p.half)
		if !ok || weight <= 0 {
			continue
		}
		seen = seen.with(share{f.short / f.unit, weight * f.unit * f.unit / (f.stray * f.stray)})
		q.Evidence = append(q.Evidence, Evidence{b.ID, b.Name, b.day(), f.short / f.unit, weight})
		q.Weight += weight
	}
	if len(q.Evidence) == 0 {
		return
	}
	slices.SortStableFunc(q.Evidence, func(x, y Evidence) int { return compareDates(x.On, y.On) })
	after := before.with(seen)
	q.Alone, q.Now, q.Proposed, q.Pull = &seen.mean, q.Starter, after.value(), seen.precision/after.precision
	if k := p.now.OwnShare; k != nil {
		q.Now = Value{At: k.Value, Low: k.Value, High: k.Value}
	}
	k := Loading{Value: q.Proposed.At, When: p.today, From: len(q.Evidence)}
	q.put = func(f *Factors) { f.OwnShare = &k }
	q.Why = append(append([]string{counted(q)}, moves(q)...), "What your wins fell short of their forecasts by, before the allowance, "+
		"against the whole doubt that bidders share. Forecasts that are off for other reasons move it too: look at the other factors first.")
	p.out = append(p.out, q)
}

// share is a belief about a share: normal with that mean and precision, cut to 0..1.
type share struct{ mean, precision float64 }

// with returns the belief with another, independent one.
func (s share) with(o share) share {
	sum := s.precision + o.precision
	return share{(s.precision*s.mean + o.precision*o.mean) / sum, sum}
}

// value returns the mean and the 80 % range of the cut belief, by quadrature.
func (s share) value() Value {
	var mass, mean float64
	weights := make([]float64, shareGrid)
	at := func(i int) float64 { return (float64(i) + 0.5) / shareGrid }
	nearest := min(max(s.mean, 0), 1) // keeps the weights from vanishing together
	for i := range weights {
		d, n := at(i)-s.mean, nearest-s.mean
		weights[i] = math.Exp(-s.precision * (d*d - n*n) / 2)
		mass, mean = mass+weights[i], mean+weights[i]*at(i)
	}
	quantile := func(u float64) float64 {
		sum := 0.0
		for i, w := range weights {
			if sum += w; sum >= u*mass {
				return at(i)
			}
		}
		return 1
	}
	return Value{At: mean / mass, Low: quantile(0.1), High: quantile(0.9)}
}
