package learn

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"walkline/valuation/belief"
	"walkline/valuation/lot"
)

// Propose returns one proposal for each factor that the builds speak of, worked out from the starter values and all
// builds at once, so that what was accepted before is not counted twice: hours by trade, money by source and kind, resale
// price, step from asking to selling, brand, days to sell, hidden risks, and the common factor's loading.
// Builds that are still open give only the risks that stripping has shown.
func Propose(builds []Build, today lot.Date, current Factors, start Starter) []Proposal {
	held := guessed(builds)
	p := proposer{builds: builds, today: today, now: current, start: start, half: current.halfLife()}
	rho := loadingCorrelation(current.loading(start))
	hours := hoursFamily.fit(keysOf(held, hourKeys), facts(held, today, p.half, Build.hours), rho)
	money := moneyFamily.fit(keysOf(held, moneyKeys), facts(held, today, p.half, Build.spent), rho)
	p.ratios(&hours, p.hoursSlot)
	p.ratios(&money, p.moneySlot)
	p.resale()
	asked := askedFamily.fit(nil, p.facts(func(b Build) []observed { return b.asked(start) }), 0)
	p.ratio(&asked, "", p.slot("asked_to_sold", "From asking to selling price", func(f *Factors) **Ratio { return &f.AskedToSold }))
	days := sellingFamily.fit(nil, facts(held, today, p.half, Build.selling), 0)
	p.ratio(&days, "", p.slot("days_to_sell", "Days to sell", func(f *Factors) **Ratio { return &f.DaysToSell }))
	p.chances()
	p.loading(together(hours.scores(), money.scores()))
	p.ownShare()
	for i, q := range p.out {
		p.out[i].Buys = max(q.Buys, len(q.Evidence))
	}
	return p.out
}

// proposer gathers proposals.
type proposer struct {
	builds []Build
	today  lot.Date
	now    Factors
	start  Starter
	half   float64
	out    []Proposal
}

func (p *proposer) facts(of func(Build) []observed) []fact {
	return facts(p.builds, p.today, p.half, of)
}

// loading returns the loading in force.
func (f Factors) loading(start Starter) float64 {
	if f.Loading != nil {
		return f.Loading.Value
	}
	return start.Loading
}

// hourKeys and moneyKeys name the factors that an item speaks of.
func hourKeys(i Item) (string, bool)  { return i.Key, i.Kind == HoursKind }
func moneyKeys(i Item) (string, bool) { return moneyKey(i.Kind, i.Key), i.Kind != HoursKind }

// keysOf returns the factors of a family that the forecasts name, in order.
func keysOf(builds []Build, of func(Item) (string, bool)) []string {
	seen := map[string]bool{}
	for _, b := range builds {
		if b.Foretold == nil || !b.ours() {
			continue
		}
		for _, i := range b.Foretold.Items {
			if key, ok := of(i); ok && !i.Quoted {
				seen[key] = true
			}
		}
	}
	return slices.Sorted(maps.Keys(seen))
}

// slot is the place of one ratio among the factors.
type slot struct {
	key, name string
	now       *Ratio
	put       func(*Factors, Ratio)
}

func (p *proposer) slot(key, name string, at func(*Factors) **Ratio) slot {
	return slot{key, name, *at(&p.now), func(f *Factors, r Ratio) { *at(f) = &r }}
}

func (p *proposer) hoursSlot(trade string) slot {
	return mapSlot("hours/"+trade, "Hours, "+trade, p.now.Hours, trade, func(f *Factors) *map[string]Ratio { return &f.Hours })
}

func (p *proposer) moneySlot(key string) slot {
	switch Kind(key) {
	case MaterialsKind:
		return p.slot(key, "Materials", func(f *Factors) **Ratio { return &f.Materials })
	case OutsideKind:
		return p.slot(key, "Sublet work", func(f *Factors) **Ratio { return &f.Outside })
	case HiddenKind:
		return p.slot(key, "Money for hidden damage", func(f *Factors) **Ratio { return &f.Hidden })
	}
	source := strings.TrimPrefix(key, "parts/")
	name := "Parts, " + strings.ReplaceAll(source, "_", " ")
	return mapSlot(key, name, p.now.Parts, source, func(f *Factors) *map[string]Ratio { return &f.Parts })
}

func mapSlot(key, name string, now map[string]Ratio, at string, in func(*Factors) *map[string]Ratio) slot {
	s := slot{key: key, name: name, put: func(f *Factors, r Ratio) {
		m := in(f)
		if *m == nil {
			*m = map[string]Ratio{}
		}
		(*m)[at] = r
	}}
	if r, ok := now[at]; ok {
		s.now = &r
	}
	return s
}

// ratios proposes every ratio of a family that has any evidence at all.
func (p *proposer) ratios(f *fitted, at func(string) slot) {
	for _, key := range f.keys {
		p.ratio(f, key, at(key))
	}
}

// ratio proposes one ratio.
func (p *proposer) ratio(f *fitted, key string, s slot) {
	if len(f.facts) == 0 {
		return
	}
	evidence, left := f.evidence(key)
	x := f.row(key)
	says, before := f.post.Of(x), f.prior.Of(x)
	spread := f.beyond(key)
	r := Ratio{Factor: math.Exp(says.Mean), LogSD: spread, Known: f.pull(key), When: p.today, From: len(evidence)}
	q := Proposal{Key: s.key, Name: s.name, Unit: RatioUnit, Evidence: evidence, Pull: f.pull(key),
		Starter: ratioValue(before), Now: s.now.value(), Proposed: ratioValue(says), put: func(f *Factors) { s.put(f, r) }}
	q.Starter.Spread, q.Proposed.Spread = new(float64), &spread
	if s.now == nil {
		q.Now = q.Starter
	}
	mean, count := f.own(key)
	q.Weight = count
	if count > 0 {
		alone := math.Exp(mean)
		q.Alone = &alone
	}
	q.Why = append(f.why(key, q), left...)
	p.out = append(p.out, q)
}

// ratioValue returns a belief about a log ratio as a ratio with its 80 % range.
func ratioValue(t belief.T) Value {
	return Value{At: math.Exp(t.Mean), Low: math.Exp(t.Quantile(0.1)), High: math.Exp(t.Quantile(0.9))}
}

// chanceValue returns a belief about a chance with its 80 % range.
func chanceValue(c belief.Chance) Value {
	low, high := c.Range()
	return Value{At: c.Mean(), Low: low, High: high}
}

// value returns a ratio in force; its range is not kept.
func (r *Ratio) value() Value {
	if r == nil {
		return Value{At: 1, Low: 1, High: 1}
	}
	sd := r.LogSD
	return Value{At: r.Factor, Low: r.Factor, High: r.Factor, Spread: &sd}
}

// chances proposes the chance of each risk that has been looked for.
func (p *proposer) chances() {
	looks := risks(p.builds, p.today, p.half, p.start)
	for _, r := range p.start.Risks {
		if len(looks[r.ID]) > 0 {
			p.chance(r, looks[r.ID], similar(r, p.start, looks))
		}
	}
}

func (p *proposer) chance(r StarterRisk, looks []look, ratio float64) {
	before := belief.Chance{A: r.A, B: r.B}
	pooled := before.Tilted(ratio)
	learned := pooled.Update(said(looks))
	after := Chance{learned.A, learned.B, p.today, len(looks)}
	q := Proposal{Key: "risk/" + r.ID, Counts: [2]float64{r.A, r.B}, Name: r.Name, Unit: ChanceUnit, Starter: chanceValue(before),
		Proposed: chanceValue(learned)}
	q.Now = q.Starter
	if now, ok := p.now.Risks[r.ID]; ok {
		q.Now = chanceValue(belief.Chance{A: now.A, B: now.B})
	}
	found := 0.0
	for _, l := range looks {
		says := 0.0
		if l.There {
			says = 1
		}
		found += says * l.Weight
		q.Weight += l.Weight
		q.Evidence = append(q.Evidence, Evidence{l.build.ID, l.build.Name, l.build.day(), says, l.Weight})
	}
	slices.SortStableFunc(q.Evidence, func(x, y Evidence) int { return compareDates(x.On, y.On) })
	alone := found / q.Weight
	q.Alone, q.Pull = &alone, q.Weight/(q.Weight+before.A+before.B)
	q.Why = whyChance(q, before, pooled, looks, ratio)
	q.put = func(f *Factors) {
		if f.Risks == nil {
			f.Risks = map[string]Chance{}
		}
		f.Risks[r.ID] = after
	}
	p.out = append(p.out, q)
}

// loading proposes the loading where two or more ratios of a build can be held against each other.
func (p *proposer) loading(all []belief.Scores) {
	if len(all) == 0 {
		return
	}
	before, after := belief.NewLoading(p.start.Loading, nil), belief.NewLoading(p.start.Loading, all)
	q := Proposal{Key: "shared_loading", Name: "Worse than it looks: how far costs go together", Unit: LoadUnit,
		Buys: len(all), Starter: loadingValue(before), Proposed: loadingValue(after), Pull: after.Sharpness(before)}
	q.Starter.At = p.start.Loading
	q.Now = q.Starter
	if p.now.Loading != nil {
		q.Now = Value{At: p.now.Loading.Value, Low: p.now.Loading.Value, High: p.now.Loading.Value}
	}
	for _, s := range all {
		q.Weight += s.Weight
	}
	q.Why = []string{fmt.Sprintf("%s with hours or costs of more than one kind count as %.1f: how often do they run over together?",
		buys(len(all)), q.Weight)}
	q.Why = append(q.Why, moves(q)...)
	l := Loading{Value: q.Proposed.At, When: p.today, From: len(all)}
	q.put = func(f *Factors) { f.Loading = &l }
	p.out = append(p.out, q)
}
