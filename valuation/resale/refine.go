package resale

import (
	"math"
	"strings"

	"walkline/valuation/money"
	"walkline/valuation/prob"
)

// Sample is a table of one model's prices around one subject, from which a prior is refined.
type Sample struct {
	Rows    []Row
	Subject Subject
}

// Refine returns m after one step of empirical Bayes over samples (expectation: each sample is fitted under m;
// maximisation: m's means and spreads become those of the fitted effects, their own uncertainty counted in), and the
// samples' summed leave-one-out log score under m.
func Refine(samples []Sample, m Market, cur money.Currency) (Market, float64) {
	next := m
	next.Effects, next.Spreads = map[string]Effect{}, map[string]prob.Scale{}
	for name, e := range m.Effects {
		next.Effects[name] = e
	}
	for name, s := range m.Spreads {
		next.Spreads[name] = s
	}
	score, sigma, count := 0.0, 0.0, 0.0
	sums := moments{effects: map[string]*moment{}, spreads: map[string]*moment{}}
	for _, form := range mileageForms {
		for _, s := range samples {
			mb, ok := fitSample(s, m, form, cur)
			if !ok {
				continue
			}
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

func fitSample(s Sample, m Market, form mileageForm, cur money.Currency) (member, bool) {
	cal := newCalendar(s.Rows, s.Subject, "")
	rows, used := usedFirst(screen(s.Rows, cal, cur))
	if used < leastSample {
		return member{}, false
	}
	sure := outlook{} // the sets hold asking prices of one moment
	mb := newMember(rows[:used], cal.subject(s.Subject), sure, m, form)
	mb.fit = mb.table.Solve(mb.table.Start(), mostSteps)
	return mb, true
}

// leastSample is the number of rows below which a sample says too little of slopes.
const leastSample = 8

// moment collects an effect over samples.
type moment struct{ n, sum, square, doubt float64 }

func (m *moment) mean() float64 { return m.sum / m.n }

// variance is that of the effect among samples, each sample's own doubt counted in.
func (m *moment) variance() float64 {
	return math.Max(0, m.square/m.n-m.mean()*m.mean()) + m.doubt/m.n
}

type moments struct{ effects, spreads map[string]*moment }

func (s moments) take(mb member) {
	p := len(mb.design.terms)
	for j, t := range mb.design.terms {
		name := effectName(t, mb)
		if name == "" {
			continue
		}
		add(s.effects, name, mb.fit.Coef[j], mb.fit.Cov[j*p+j])
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
	case t.name == "level" || t.name == "asked" || t.name == "drift" || t.cause == causeTrim || t.cause == causeBrand || strings.HasPrefix(t.name, "year "):
		return ""
	case t.name == "mileage":
		return mb.design.form.effect()
	case t.Group < 0:
		return t.name
	}
	column := mb.design.groups[t.Group].name
	if level, ok := strings.CutPrefix(t.name, column+" "); ok && t.cause == causeOther {
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

// Slopes returns the plain least-squares slopes of the log price over age (per year) and mileage (per 10,000 miles) of
// rows, as a check on the fitted prior. Errors: too few rows, or rows that don't vary.
func Slopes(rows []Row, cur money.Currency) (age, mileage float64, err error) {
	cal := newCalendar(rows, Subject{}, "")
	var x [][]float64
	var y []float64
	for _, r := range screen(rows, cal, cur) {
		if r.reason == "" && r.traits.milesKnown {
			x = append(x, []float64{1, r.traits.age, r.traits.miles / perUnit})
			y = append(y, math.Log(r.price))
		}
	}
	fit, err := prob.LeastSquares(x, y)
	if err != nil {
		return 0, 0, err
	}
	return fit.Coef[1], fit.Coef[2], nil
}
