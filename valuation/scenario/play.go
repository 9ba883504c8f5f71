package scenario

import (
	"walkline/valuation/hidden"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
)

// Lot is what is played out.
type Lot struct {
	Lines   []repair.Line
	Risks   []hidden.Risk
	Chances []float64 // of the risks, after the findings
	Loading float64   // on the common factor, of lines and risks that name none
	Rates   map[string]float64
	Freight prob.Three
	Storage Storage
	Time    Time
	N       int
	Seed    int64
}

// Storage is the yard's charge: money a day beyond the free days, over the days until the lot is fetched.
type Storage struct {
	PerDay, FreeDays float64
	Days             prob.Three
}

// Time is how the weeks go.
type Time struct {
	HoursPerWeek, HoldingPerDay float64
	InspectionQueue, DaysToSell prob.Three
}

// Part is one line or risk of the outcome: its cost (own labour included), own hours, and how often it is there.
type Part struct {
	Name    string
	Cost    []float64
	Hours   []float64
	Present float64 // share of the scenarios, hidden risks only
}

// Outcome is every scenario. Shape: each column has one value a scenario.
type Outcome struct {
	Factor           []float64
	Lines, Risks     []Part
	Repair, Hidden   []float64 // own labour included
	Labour, Hours    []float64
	Freight, Storage []float64
	Days, Holding    []float64
	Cash             []float64 // money out before the sale beside the invoice: no own labour, no capital cost
	Cost             []float64 // Repair + Hidden + Freight + Storage + Holding
}

// Play draws the scenarios. Random: see the package comment. Limits: l has passed the case's checks.
func Play(l Lot) Outcome {
	d := prob.NewDraws(l.N, l.Seed)
	o := newOutcome(l.N)
	d.Column("lot/factor", o.Factor)
	lead := make([]float64, l.N)
	o.lines(l, d, lead)
	repairHours := append([]float64(nil), o.Hours...)
	hiddenDays := o.risks(l, d)
	o.around(l, d)
	queue, selling := column(d, "lot/inspection", l.Time.InspectionQueue), column(d, "lot/selling", l.Time.DaysToSell)
	for i := range o.Days {
		work := repairHours[i] / l.Time.HoursPerWeek * 7
		o.Days[i] = max(lead[i], work) + hiddenDays[i] + queue[i] + selling[i]
		o.Holding[i] = o.Days[i] * l.Time.HoldingPerDay
		o.Cash[i] += o.Freight[i] + o.Storage[i] + o.Holding[i]
		o.Cost[i] = o.Repair[i] + o.Hidden[i] + o.Freight[i] + o.Storage[i] + o.Holding[i]
	}
	return o
}

func newOutcome(n int) Outcome {
	col := func() []float64 { return make([]float64, n) }
	return Outcome{Factor: col(), Repair: col(), Hidden: col(), Labour: col(), Hours: col(), Freight: col(), Storage: col(),
		Days: col(), Holding: col(), Cash: col(), Cost: col()}
}

// column draws one quantity that leans on nothing.
func column(d *prob.Draws, name string, t prob.Three) []float64 {
	c := make([]float64, d.Len())
	if t.Sure() {
		for i := range c {
			c[i] = t.Low
		}
		return c
	}
	d.Column(name, c)
	table := t.Score()
	for i, z := range c {
		c[i] = table.At(z)
	}
	return c
}

// lines plays the repair lines and keeps the longest lead time of each scenario in lead.
func (o *Outcome) lines(l Lot, d *prob.Draws, lead []float64) {
	set := repair.Setting{Draws: d, Factor: o.Factor, Loading: l.Loading, Rates: l.Rates, HoldingPerDay: l.Time.HoldingPerDay}
	for _, line := range l.Lines {
		out := line.Draw(set)
		o.add(out.Cash, out.Labour, out.Hours, o.Repair)
		for i, x := range out.Lead {
			lead[i] = max(lead[i], x)
		}
		o.Lines = append(o.Lines, Part{Name: line.Job, Cost: sum(out.Cash, out.Labour), Hours: out.Hours})
	}
}

// risks plays the hidden risks and returns the days that they add.
func (o *Outcome) risks(l Lot, d *prob.Draws) []float64 {
	days := make([]float64, l.N)
	set := hidden.Setting{Draws: d, Factor: o.Factor, Loading: l.Loading, Rates: l.Rates}
	for k, r := range l.Risks {
		out := r.Draw(l.Chances[k], set)
		o.add(out.Cash, out.Labour, out.Hours, o.Hidden)
		for i, x := range out.Days {
			days[i] += x
		}
		o.Risks = append(o.Risks, Part{r.Name, sum(out.Cash, out.Labour), out.Hours, float64(out.Present) / float64(l.N)})
	}
	return days
}

// around draws the cost of getting the lot home.
func (o *Outcome) around(l Lot, d *prob.Draws) {
	o.Freight = column(d, "lot/freight", l.Freight)
	for i, days := range column(d, "lot/storage", l.Storage.Days) {
		o.Storage[i] = max(0, days-l.Storage.FreeDays) * l.Storage.PerDay
	}
}

// add books one line's money and hours, its cost with labour into total.
func (o *Outcome) add(cash, labour, hours, total []float64) {
	for i := range cash {
		o.Cash[i] += cash[i]
		o.Labour[i] += labour[i]
		o.Hours[i] += hours[i]
		total[i] += cash[i] + labour[i]
	}
}

// sum adds b to a in place.
func sum(a, b []float64) []float64 {
	for i := range a {
		a[i] += b[i]
	}
	return a
}
