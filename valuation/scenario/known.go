package scenario

import (
	"math"

	"walkline/valuation/hidden"
	"walkline/valuation/memory"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
)

// known is what a line or risk takes on average where it is there, given the factor. Lead is that of a line's last critical part.
type known struct {
	money, hours, days prob.Given
	lead               float64
}

// knownSize is the size of a known in bytes, about.
const knownSize = 1024

// Stripped is what is known of each scenario at the strip-down: which work and damage is there, and the common factor. Shape: one
// value a scenario.
type Stripped struct {
	Money []float64 // still to pay and to work, own hours at their rates, at their means; holding left out
	Days  []float64 // from the purchase to the sale, at their means
}

// knowledge gathers what is known at the strip-down.
type knowledge struct {
	Stripped
	factor               []float64
	always               known     // of all that is there in every scenario
	hours, days, longest []float64 // days: those of hidden damage; longest: the mean lead time of the last critical part
}

// Strip returns what is known at the strip-down of the scenarios that Play draws of the same lot.
func (m *Memory) Strip(l Lot, o Outcome) Stripped {
	f := m.frame(&l)
	all := make([]float64, 5*l.N)
	col := func(k int) []float64 { return all[k*l.N : (k+1)*l.N : (k+1)*l.N] }
	k := knowledge{Stripped: Stripped{col(0), col(1)}, factor: f.factor, hours: col(2), days: col(3), longest: col(4)}
	for i, line := range l.Lines {
		k.add(m.knownLine(line, &l), o.Lines[i].at())
	}
	for i, r := range l.Risks {
		k.add(m.knownRisk(r, &l), o.Risks[i].at())
	}
	k.close(&l)
	return k.Stripped
}

// add books what one line or risk takes where it is there.
func (k *knowledge) add(one *known, at []int32) {
	if at == nil {
		k.always.money.Plus(&one.money)
		k.always.hours.Plus(&one.hours)
		k.always.days.Plus(&one.days)
		k.always.lead = max(k.always.lead, one.lead)
		return
	}
	for _, i := range at {
		z := k.factor[i]
		k.Money[i] += one.money.At(z)
		k.hours[i] += one.hours.At(z)
		k.days[i] += one.days.At(z)
		k.longest[i] = max(k.longest[i], one.lead)
	}
}

// close makes the columns of the sums.
func (k *knowledge) close(l *Lot) {
	slow := l.Spreads["days_to_sell"]
	after := l.Time.InspectionQueue.Mean() + l.Time.DaysToSell.Mean()*math.Exp(slow*slow/2)
	daysAnHour := 7 / l.Time.HoursPerWeek
	for i, z := range k.factor {
		k.Money[i] += k.always.money.At(z)
		work := (k.hours[i] + k.always.hours.At(z)) * daysAnHour
		k.Days[i] = max(k.longest[i], k.always.lead, work) + k.days[i] + k.always.days.At(z) + after
	}
}

// Score returns a column of normal scores of that name, which leans on nothing; nobody changes it.
func (m *Memory) Score(name string, l Lot) []float64 {
	s := m.strands.Recall(memory.Of("score", name, l.N, l.Seed), func() (*strand, int) {
		c := make([]float64, l.N)
		m.plainFrame(&l).draws.Column(name, c)
		return &strand{cost: c}, l.N * floatSize
	})
	return s.cost
}

// knownLine returns what a line takes on average where it is needed.
func (m *Memory) knownLine(l repair.Line, lot *Lot) *known {
	return m.knowns.Recall(memory.Of("line", unnamedLine(l), lot.Loading, lot.Rates, lot.Time.HoldingPerDay, lot.Spreads),
		func() (*known, int) {
			k := l.Foreknown(repair.Setting{Loading: lot.Loading, Rates: lot.Rates, HoldingPerDay: lot.Time.HoldingPerDay}, lot.Spreads)
			return &known{money: k.Money, hours: k.Hours, lead: k.Lead}, knownSize
		})
}

// knownRisk returns what a risk takes on average where it is there.
func (m *Memory) knownRisk(r hidden.Risk, lot *Lot) *known {
	return m.knowns.Recall(memory.Of("risk", unnamedRisk(r), lot.Loading, lot.Rates, lot.Spreads), func() (*known, int) {
		k := r.Foreknown(hidden.Setting{Loading: lot.Loading, Rates: lot.Rates}, lot.Spreads)
		return &known{money: k.Money, hours: k.Hours, days: k.Days}, knownSize
	})
}
