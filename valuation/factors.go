package valuation

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"walkline/valuation/hidden"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
	"walkline/valuation/scenario"
)

// learned returns the factors that the case carries, none where it carries none.
func (c Case) learned() learn.Factors {
	if c.Factors == nil {
		return learn.Factors{}
	}
	return *c.Factors
}

// factored returns the planned lines with the learned ratios on their hours and money. A price that was quoted keeps its
// value, and so does what is paid when no source has the part.
func factored(lines []repair.Line, f learn.Factors) []repair.Line {
	if len(f.Hours)+len(f.Parts) == 0 && f.Materials == nil && f.Outside == nil {
		return lines
	}
	out := make([]repair.Line, len(lines))
	for i, l := range lines {
		chief := ratioOf(f.Hours, l.ChiefTrade())
		l.Hours = timesHours(l.Hours, f)
		l.Materials, l.Outside = l.Materials.Times(factorOf(f.Materials)), l.Outside.Times(factorOf(f.Outside))
		parts := slices.Clone(l.Parts)
		for k, p := range parts {
			parts[k].Options = slices.Clone(p.Options)
			for j := range parts[k].Options {
				o := &parts[k].Options[j]
				o.ExtraHours = o.ExtraHours.Times(chief)
				if !o.Given() {
					r := ratioOf(f.Parts, o.Source)
					o.Price, o.Freight = o.Price.Times(r), o.Freight.Times(r)
				}
			}
			if p.Fallback != nil {
				fallback := *p.Fallback
				fallback.Hours = fallback.Hours.Times(chief)
				parts[k].Fallback = &fallback
			}
		}
		l.Parts = parts
		out[i] = l
	}
	return out
}

// factoredRisks returns the raised risks with what was learned: the counts of those that come from the catalogue, the
// hours and the money of all. A risk that the case holds itself keeps its own chance.
func factoredRisks(risks []hidden.Risk, own []hidden.Risk, f learn.Factors) []hidden.Risk {
	if len(f.Risks)+len(f.Hours) == 0 && f.Hidden == nil {
		return risks
	}
	out := make([]hidden.Risk, len(risks))
	for i, r := range risks {
		theirs := slices.ContainsFunc(own, func(o hidden.Risk) bool { return o.ID == r.ID })
		if c, ok := f.Risks[r.ID]; ok && !theirs {
			r.Chance = hidden.Beta{A: c.A, B: c.B}
		}
		r.Hours, r.Cost = timesHours(r.Hours, f), r.Cost.Times(factorOf(f.Hidden))
		out[i] = r
	}
	return out
}

func timesHours(hours map[string]prob.Three, f learn.Factors) map[string]prob.Three {
	out := maps.Clone(hours)
	for trade, t := range out {
		out[trade] = t.Times(ratioOf(f.Hours, trade))
	}
	return out
}

func factorOf(r *learn.Ratio) float64 {
	if r == nil {
		return 1
	}
	return r.Factor
}

func ratioOf(m map[string]learn.Ratio, key string) float64 {
	if r, ok := m[key]; ok {
		return r.Factor
	}
	return 1
}

// spreads returns what the lot's figures scatter beyond their judgements, as learned.
func spreads(f learn.Factors) scenario.Spreads {
	s := scenario.Spreads{}
	put := func(kind string, r *learn.Ratio) {
		if r != nil && r.LogSD > 0 {
			s[kind] = r.LogSD
		}
	}
	for trade, r := range f.Hours {
		put("hours/"+trade, &r)
	}
	for source, r := range f.Parts {
		put("parts/"+source, &r)
	}
	put("materials", f.Materials)
	put("outside", f.Outside)
	put("hidden", f.Hidden)
	put("days_to_sell", f.DaysToSell)
	if len(s) == 0 {
		return nil
	}
	return s
}

// loading returns the shared loading in force.
func (c Case) loading() float64 {
	if l := c.learned().Loading; l != nil {
		return l.Value
	}
	return c.Hidden.SharedLoading
}

// OwnShare returns the share of the bidders' shared doubt that differs between them, as it is in force: learned, or the case's own.
func (c Case) OwnShare() float64 {
	if k := c.learned().OwnShare; k != nil {
		return k.Value
	}
	return c.Market.OwnShare
}

// askedToSold and brandDiscount return the beliefs in force: moved by the learned ratio, and drawn in where past buys know
// it better than the case's own range.
func (c Case) askedToSold() prob.Three {
	r := c.learned().AskedToSold
	if r == nil {
		return c.Resale.AskedToSold
	}
	return believed(c.Resale.AskedToSold, *r)
}

func (c Case) brandDiscount() prob.Three { return c.learnedOff(c.Resale.BrandDiscount) }

// learnedOff returns a branded title's discount with what past sales taught of it.
func (c Case) learnedOff(d prob.Three) prob.Three {
	r := c.learned().BrandDiscount
	if r == nil {
		return d
	}
	left := believed(prob.Three{Low: 1 - d.High, Likely: 1 - d.Likely, High: 1 - d.Low}, *r)
	return prob.Three{Low: 1 - left.High, Likely: 1 - left.Likely, High: 1 - left.Low}
}

// believed returns a belief about a factor moved by a learned ratio, and drawn in by what the buys took away of the doubt, no more. Limits:
// what is left of a price stays above nothing.
func believed(t prob.Three, r learn.Ratio) prob.Three {
	return t.Times(r.Factor).Narrowed(math.Sqrt(1 - min(max(r.Known, 0), 1)))
}

// factored returns the fit of the comparables with the learned bias and spread on its price.
func (m market) factored(b *learn.Bias) market {
	if b == nil {
		return m
	}
	m.table = m.table.Rescaled(b.Factor, b.Spread)
	m.price.Mean, m.price.P10, m.price.P50, m.price.P90 = m.table.Mean(), m.table.Quantile(.1), m.table.Quantile(.5), m.table.Quantile(.9)
	m.level *= b.Factor
	return m
}

// dented returns the price with what dents that stay take off it, at its mean.
func (m market) dented(off prob.Three) market {
	if off.Zero() {
		return m
	}
	return m.factored(&learn.Bias{Factor: 1 - off.Mean(), Spread: 1})
}

// applied returns the factors for a case whose lines, risks and days to sell have the learned ratios on them already: the
// ratios are 1 there, and keep their spreads.
func applied(f learn.Factors) *learn.Factors {
	if f.Empty() {
		return nil
	}
	f = f.Clone()
	for _, m := range []map[string]learn.Ratio{f.Hours, f.Parts} {
		for key, r := range m {
			r.Factor = 1
			m[key] = r
		}
	}
	for _, r := range []*learn.Ratio{f.Materials, f.Outside, f.Hidden, f.DaysToSell} {
		if r != nil {
			r.Factor = 1
		}
	}
	f.Risks = nil
	return &f
}

// learnedWords names the factors in force that change a figure of this case, in one line; empty where there are none.
func (c Case) learnedWords() string {
	f := c.learned()
	if f.Empty() {
		return ""
	}
	var said []string
	say := func(name string, x float64) {
		if math.Abs(x-1) >= 0.005 {
			said = append(said, fmt.Sprintf("%s %+.0f %%", name, 100*(x-1)))
		}
	}
	for _, trade := range lot.Trades {
		say(trade+" hours", ratioOf(f.Hours, trade))
	}
	for _, source := range sortedKeys(f.Parts) {
		say(strings.ReplaceAll(source, "_", " ")+" parts", f.Parts[source].Factor)
	}
	say("materials", factorOf(f.Materials))
	say("sublet work", factorOf(f.Outside))
	say("money for hidden damage", factorOf(f.Hidden))
	if f.Resale != nil {
		say("resale price", f.Resale.Factor)
	}
	say("days to sell", factorOf(f.DaysToSell))
	if len(f.Risks) > 0 {
		said = append(said, fmt.Sprintf("%d chances of hidden damage", len(f.Risks)))
	}
	if len(said) == 0 {
		return "Factors learned from your own past buys are in force."
	}
	return "Learned from your own past buys and counted here: " + strings.Join(said, ", ") + "."
}
