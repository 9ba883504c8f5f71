package hedonic

import (
	"maps"
	"math"
	"strings"

	"walkline/valuation/prob"
)

// Sample is a table of one model's prices around one subject, from which a prior is refined.
type Sample struct {
	Sales   []Sale
	Subject Traits
}

// Refine returns m after one step of empirical Bayes over samples (expectation: each sample is fitted under m;
// maximisation: m's means and spreads become those of the fitted effects, their own uncertainty counted in), and the
// samples' summed leave-one-out log score under m. The samples hold asking prices of one moment.
func Refine(samples []Sample, m Market) (Market, float64) {
	next := m
	next.Effects, next.Spreads = maps.Clone(m.Effects), maps.Clone(m.Spreads)
	score, sigma, count := 0.0, 0.0, 0.0
	sums := moments{effects: map[string]*moment{}, spreads: map[string]*moment{}}
	for _, form := range Forms {
		for _, s := range samples {
			if len(s.Sales) < leastSample {
				continue
			}
			mb := newMember(read(s.Sales, s.Subject), Outlook{}, m, form)
			mb.fit = mb.table.Solve(mb.table.Start(), mostSteps)
			sums.take(mb)
			score += mb.fit.Score
			sigma += math.Log(mb.fit.Sigma)
			count++
		}
	}
	sums.give(&next)
	if count > 0 {
		next.Residual.SD = math.Exp(sigma / count)
	}
	return next, score
}

// leastSample is the number of sales below which a sample says too little of slopes.
const leastSample = 8

// Slopes returns the plain least-squares slopes of the log price over age (per year) and mileage (per 10,000 miles) of
// sales, as a check on the fitted prior. Errors: too few sales, or sales that don't vary.
func Slopes(sales []Sale) (age, mileage float64, err error) {
	var x [][]float64
	var y []float64
	for _, s := range sales {
		if s.MilesKnown {
			x = append(x, []float64{1, s.Age, s.Miles / perUnit})
			y = append(y, math.Log(s.Price))
		}
	}
	fit, err := prob.LeastSquares(x, y)
	if err != nil {
		return 0, 0, err
	}
	return fit.Coef[1], fit.Coef[2], nil
}

// moment collects an effect over samples.
type moment struct{ n, sum, square, doubt float64 }

func (m *moment) mean() float64 { return m.sum / m.n }

// variance is that of the effect among samples, each sample's own doubt counted in.
func (m *moment) variance() float64 {
	return math.Max(0, m.square/m.n-m.mean()*m.mean()) + m.doubt/m.n
}

type moments struct{ effects, spreads map[string]*moment }

func (s moments) take(mb member) {
	for j, t := range mb.design.terms {
		name := effectName(t, mb)
		if name == "" {
			continue
		}
		add(s.effects, name, mb.fit.Coef[j], mb.fit.Cov.Variance([]prob.Entry{{Term: j, X: 1}}))
	}
	for g, t := range mb.design.groups {
		name := t.name
		if name != spreadTrim && name != spreadYear && name != spreadModel {
			name = spreadLevel + " " + name
		}
		add(s.spreads, name, mb.fit.Tau[g]*mb.fit.Tau[g], 0)
	}
}

func add(m map[string]*moment, name string, x, doubt float64) {
	if m[name] == nil {
		m[name] = &moment{}
	}
	at := m[name]
	at.n++
	at.sum += x
	at.square += x * x
	at.doubt += doubt
}

// effectName returns the name under which a prior keeps the effect of t, empty for those it doesn't keep.
func effectName(t term, mb member) string {
	switch {
	case t.name == "level" || t.name == "asked" || t.name == "drift" || t.cause == CauseTrim || t.cause == CauseBrand ||
		strings.HasPrefix(t.name, "year "):
		return ""
	case t.name == "mileage":
		return mb.design.form.effect()
	case t.Group < 0:
		return t.name
	}
	column := mb.design.groups[t.Group].name
	if level, ok := strings.CutPrefix(t.name, column+" "); ok && t.cause >= CauseOther {
		return column + "=" + level
	}
	return ""
}

// Worth of a learned spread, in observations: fixed, since the data tell a spread's own spread badly.
const learnedWorth = 4

// leastEffectSD keeps a learned belief from becoming a certainty: a share of the effect itself.
const leastEffectSD = 0.1

func (s moments) give(m *Market) {
	for _, name := range sorted(s.effects) {
		at := s.effects[name]
		if strings.Contains(name, "=") {
			m.Effects[name] = Effect{Mean: at.mean(), SD: math.Sqrt(at.variance())}
			continue
		}
		m.Effects[name] = Effect{Mean: at.mean(), SD: math.Max(leastEffectSD*math.Abs(at.mean()), math.Sqrt(at.variance()))}
	}
	for _, name := range sorted(s.spreads) {
		m.Spreads[name] = prob.Scale{SD: math.Sqrt(s.spreads[name].mean()), Worth: learnedWorth}
	}
}
