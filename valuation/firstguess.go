package valuation

import (
	"cmp"
	"errors"
	"math"
	"slices"

	"walkline/valuation/bid"
	"walkline/valuation/checks"
	"walkline/valuation/hidden"
	"walkline/valuation/money"
	"walkline/valuation/patterns"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
	"walkline/valuation/scenario"
)

// FirstGuess is what the answer rests on where nobody has looked at the lot: the surveys that it may turn out to have. JSON keys are those
// of the answer.
type FirstGuess struct {
	Patterns []PatternFigure `json:"patterns"` // from the lightest to the heaviest; their chances sum to 1
	// lots of such causes that the shop looked at and whose surveys moved the chances; 0: starter values
	Surveyed int `json:"surveyed"`
	// mean profit that knowing the survey before the bid brings; nil: no hammer price to hold it against
	LookGain *float64 `json:"look_gain"`
	LookTime float64  `json:"look_time"`  // minutes that a look at such a lot takes
	LookRate *float64 `json:"look_worth"` // LookGain a minute
}

// PatternFigure is one survey that a lot may turn out to have, and what would be bid then.
type PatternFigure struct {
	Pattern  string        `json:"pattern"`
	Chance   float64       `json:"chance"`
	WalkAway *money.Amount `json:"walk_away"` // nil: do not bid
	Repair   float64       `json:"repair"`    // mean, known work and hidden damage
}

// lookMinutes is how long a walk round a lot takes. Starter value, from memory.
const lookMinutes = 15

// guessUnits is of how many surveys of one weight a first guess is made; fewestScenarios of how many scenarios each.
const guessUnits, fewestScenarios = 16, 32

// ListScenarios is of how many scenarios each lot of a list is valued.
const ListScenarios = 2048

// part is the lot as one survey has it.
type part struct {
	*work
	says  patterns.Pattern
	times int       // units of it
	kept  *bid.Kept // what is left where the hammer falls; nil: nobody can say where
}

// Unlooked reports whether the lot has a first guess alone: nobody has looked at it, and the catalogues can say what it may come to.
func (c Case) Unlooked() bool {
	return !c.lookedAt() && c.Repair.UseCatalogue && c.Hidden.UseCatalogue
}

// listed returns what is known of the lot before a look.
func (c Case) listed() patterns.Row {
	r := patterns.Row{Loss: c.feared().Loss, Condition: c.Lot.Condition, Keys: c.Lot.Keys, Airbags: c.Lot.Airbags, Age: -1}
	if year := c.saleDay().Year(); year > 0 && c.Lot.ModelYear > 0 {
		r.Age = max(0, float64(year-c.Lot.ModelYear))
	}
	if l := c.Lot.Listed; l != nil {
		r.Areas = l.Areas
		if l.ValueBefore != nil && l.RepairEstimate != nil {
			r.Ratio = *l.RepairEstimate / *l.ValueBefore
		}
	}
	return r
}

// What a list's value before the damage may be of the price on the shop's own market. Starter values, from memory: it is somebody's figure
// for an undamaged vehicle, asked and not sold.
var listedValue = prob.Three{Low: .75, Likely: .9, High: 1.05}

// ByList returns the case with a price guessed from the list's value before the damage, where nobody has looked at the lot and nothing else
// carries a price; what the title's brand takes off is off it.
func (c Case) ByList() Case {
	l := c.Lot.Listed
	if !c.Unlooked() || l == nil || l.ValueBefore == nil || l.Currency != "" && l.Currency != c.Currency ||
		len(c.Resale.Rows) > 0 || c.Resale.Comparables != "" || c.Resale.Guess != nil {
		return c
	}
	_, off := c.leading()
	if !brandWords(c) {
		off = prob.Three{}
	}
	v := *l.ValueBefore
	c.Resale.Guess = &prob.Three{Low: v * listedValue.Low * (1 - off.High), Likely: v * listedValue.Likely * (1 - off.Likely),
		High: v * listedValue.High * (1 - off.Low)}
	return c
}

// as returns the case with one survey in the place of the one that is not known. What was said stands.
func (c Case) as(p patterns.Pattern) Case {
	c.Damage, c.Lot.Loss, c.Lot.Airbags = p.Damage, p.Loss, p.Airbags
	c.Lot.Condition, c.Lot.Keys = p.Condition, &p.Keys
	if p.Survey != nil {
		s := *p.Survey
		if said := c.Survey; said != nil {
			s = *said
			s.Water, s.Hail, s.Fire = cmp.Or(said.Water, p.Survey.Water), cmp.Or(said.Hail, p.Survey.Hail), cmp.Or(said.Fire, p.Survey.Fire)
			s.Causes, s.Missing = all(said.Causes, p.Survey.Causes), all(said.Missing, p.Survey.Missing)
		}
		c.Survey = &s
	}
	return c
}

// all returns the words of both lists, each once.
func all(said, more []string) []string {
	out := slices.Clone(said)
	for _, w := range more {
		if !slices.Contains(out, w) {
			out = append(out, w)
		}
	}
	return out
}

// guess values the lot over the surveys that it may turn out to have: their scenarios are one problem.
func (w *work) guess(m *Memory, all []patterns.Pattern) error {
	units := patterns.Units(all, guessUnits)
	whole := w.c.Run.Scenarios
	for i, at := range units {
		if i > 0 && at == units[i-1] {
			w.parts[len(w.parts)-1].times++
			continue
		}
		p := part{work: &work{c: w.c.as(all[at]), k: w.k, currency: w.currency}, says: all[at], times: 1}
		p.c.Run.Scenarios = max(fewestScenarios, whole/guessUnits)
		w.parts = append(w.parts, p)
	}
	if len(w.parts) == 1 { // no doubt about the survey: a valuation like any other
		w.c, w.sure, w.parts = w.parts[0].c, w.parts[0].says.Words, nil
		w.c.Run.Scenarios = whole
		return w.see(m)
	}
	w.items = w.list() // a stop is one whatever the damage
	same := terms(w.parts[0].c)
	for _, p := range w.parts {
		if err := errors.Join(p.playedBy(m, same), p.priced(m)); err != nil {
			return err
		}
		p.items = w.items
		p.decide(m)
	}
	w.join()
	w.decide(m)
	w.capped()
	w.wary()
	w.items, w.looks.Basis = w.list(), checks.NoBasis
	return nil
}

// join makes one problem of the surveys.
func (w *work) join() {
	var all []scenario.Outcome
	lines, risks := map[string]bool{}, map[string]bool{}
	for _, p := range w.parts {
		for range p.times {
			all = append(all, p.played)
		}
		for i, l := range p.lines {
			if !lines[l.ID] {
				lines[l.ID], w.lines = true, append(w.lines, p.lines[i])
			}
		}
		for i, r := range p.risks {
			if !risks[r.ID] {
				risks[r.ID], w.risks = true, append(w.risks, p.risks[i])
			}
		}
	}
	w.played = scenario.Join(all)
	w.c.Run.Scenarios = len(w.played.Cost)
	w.market = w.parts[0].market
	w.chances = make([]float64, len(w.risks))
	for i, r := range w.risks {
		w.chances[i] = w.mean(func(p part) float64 { return p.chanceOf(r) })
	}
	w.items = w.list()
}

// chanceOf returns the chance of a risk in a survey.
func (p part) chanceOf(r hidden.Risk) float64 {
	for i, x := range p.risks {
		if x.ID == r.ID {
			return p.chances[i]
		}
	}
	return 0
}

// mean returns the mean of a figure over the surveys.
func (w *work) mean(figure func(part) float64) float64 {
	sum := 0.0
	for _, p := range w.parts {
		sum += figure(p) * float64(p.times) / guessUnits
	}
	return sum
}

// spans calls do for every unit of every survey, with where its scenarios begin.
func (w *work) spans(do func(p part, from, n int)) {
	at := 0
	for _, p := range w.parts {
		for range p.times {
			n := len(p.played.Cost)
			do(p, at, n)
			at += n
		}
	}
}

// related puts to how the price moves what each survey's price is against that of the first: its brand, its dents.
func (w *work) related(grown []float64) []float64 {
	if w.parts == nil {
		return grown
	}
	out := make([]float64, len(w.played.Cost))
	base := w.market.table.Mean()
	w.spans(func(p part, from, n int) {
		ratio := p.market.table.Mean() / base
		for i := range n {
			out[from+i] = ratio
			if grown != nil {
				out[from+i] *= grown[from+i]
			}
		}
	})
	return out
}

// between returns the variance that the survey alone puts to the mean of a column. Rivals who have looked know the survey: all of it is
// one's own error.
func (w *work) between(worth []float64) float64 {
	if w.parts == nil {
		return 0
	}
	all, sum := prob.Mean(worth), 0.0
	w.spans(func(_ part, from, n int) {
		off := prob.Mean(worth[from:from+n]) - all
		sum += off * off / guessUnits
	})
	return sum
}

// capped takes a bid that goes beyond that of every survey down to the best of theirs: not to know is never worth more than the best
// that there may be. Rules that different surveys break could let it go further.
func (w *work) capped() {
	for i := range w.options {
		o := &w.options[i]
		var best *money.Amount
		for _, p := range w.parts {
			if b := p.options[i].walk(); b != nil && (best == nil || *b > *best) {
				best = b
			}
		}
		if b := o.walk(); b != nil && (best == nil || *b > *best) {
			o.found.Bid = best
		}
	}
	w.best = best(w.options)
	w.problem, w.found = w.options[w.best].problem, w.options[w.best].found
}

// firstGuess returns what the guess rests on; nil where the lot has been looked at.
func (w *work) firstGuess() *FirstGuess {
	if !w.guessed {
		return nil
	}
	g := &FirstGuess{LookTime: lookMinutes, Surveyed: w.k.Seen.Lots(w.c.listed())}
	for _, p := range w.parts {
		g.Patterns = append(g.Patterns, PatternFigure{Pattern: p.says.Words, Chance: float64(p.times) / guessUnits,
			WalkAway: p.options[p.best].walk(), Repair: prob.Mean(p.played.Repair) + prob.Mean(p.played.Hidden)})
	}
	if w.parts == nil {
		g.Patterns = []PatternFigure{{Pattern: w.sure, Chance: 1, WalkAway: w.options[w.best].walk(),
			Repair: prob.Mean(w.played.Repair) + prob.Mean(w.played.Hidden)}}
	}
	if gain, known := w.lookGain(); known {
		rate := gain / lookMinutes
		g.LookGain, g.LookRate = &gain, &rate
	}
	return g
}

// guessedRepair returns the mean cost of the known work over the surveys.
func (w *work) guessedRepair() []LineFigure {
	var out []LineFigure
	for _, l := range w.lines {
		f := LineFigure{ID: l.ID, Job: l.Job, Area: l.Area, Why: l.Why, Caution: l.Caution}
		f.Mean = w.mean(func(p part) float64 { return p.lineOf(l, func(x scenario.Part) float64 { return x.Cost }) })
		f.Hours = w.mean(func(p part) float64 { return p.lineOf(l, func(x scenario.Part) float64 { return x.Hours }) })
		out = append(out, f)
	}
	return out
}

func (p part) lineOf(l repair.Line, figure func(scenario.Part) float64) float64 {
	for i, x := range p.lines {
		if x.ID == l.ID {
			return figure(p.played.Lines[i])
		}
	}
	return 0
}

// guessedRisks returns the hidden damage over the surveys.
func (w *work) guessedRisks() []RiskFigure {
	var out []RiskFigure
	for i, r := range w.risks {
		f := RiskFigure{ID: r.ID, Name: r.Name, Chance: w.chances[i], Why: r.Why, Caution: r.Caution}
		cost, there := 0.0, 0.0
		for _, p := range w.parts {
			for k, x := range p.risks {
				if x.ID == r.ID {
					cost += float64(p.times) * p.played.Risks[k].Cost
					there += float64(p.times) * p.played.Risks[k].Present
				}
			}
		}
		if there > 0 {
			f.MeanIfPresent = cost / there
		}
		out = append(out, f)
	}
	return out
}

// guessedShares are the causes of a first guess's uncertainty: the survey, what lies within each, the price.
func (w *work) guessedShares() []scenario.Share {
	p := &w.problem
	worth := make([]float64, len(p.Cost))
	for i, cost := range p.Cost {
		worth[i] = p.Resale.Mean()*p.Multiple(i) - cost
	}
	survey := w.between(worth)
	price := square(p.Resale.SD() * (1 - p.SellPercent) * p.MeanMultiple())
	return scenario.Parts([]scenario.Share{{Name: "What the damage turns out to be", Part: survey, Kind: scenario.OfFactor},
		{Name: "Resale price", Part: price, Kind: scenario.OfResale},
		{Name: "Cost of the damage", Part: math.Max(0, prob.Variance(worth)-survey), Kind: scenario.OfRisk}})
}
