package valuation

import (
	"walkline/valuation/bid"
	"walkline/valuation/build"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/prob"
	"walkline/valuation/resale"
)

// Foresight is what a build still costs on a day, and where it leads. Units: money in major units.
type Foresight struct {
	Currency string
	ToFinish Spread // every cost from here to the sale but selling and capital, own labour at its rates included
	Cash     Spread // money of it that is still to be paid out
	Hours    Spread // own hours
	Days     Spread // until it is sold
	InBay    Spread // of Days, those until its work ends and its bay is free
	Due      []Due  // what ToFinish and Cash are made of, at their means
	Risks    []RiskFigure
	Resale   resale.Price
	Sunk     Sunk
	Whole    *Spread  // profit of the whole build, sunk cost included; nil: the hammer price is not known
	Loss     float64  // chance that the whole build loses money
	Ways     []Way    // finish, sell as it stands, part out
	Best     int      // the way with the highest mean; -1: fewer than two are known
	StopLine *float64 // money still to spend at which stopping is as good as finishing; nil: no way out is judged
	StopWay  string   // that stopping leads to, as [Exits] has it
	Doubts   []string
}

// Due is one part of what a build still costs, at its mean. Cost includes own labour at its rates; Cost less Labour is paid out.
type Due struct {
	Kind         DueKind
	Line         string // of work: its id; empty for the other kinds
	Cost, Labour float64
}

// DueKind is what a part of the cost to come is for.
type DueKind string

// The kinds. Selling and the capital cost are not among them.
const (
	DueWork    DueKind = "work"
	DueHidden  DueKind = "hidden" // damage that may still be there
	DueFreight DueKind = "freight"
	DueStorage DueKind = "storage"
	DueHolding DueKind = "holding"
)

// Sunk is what has been spent and is gone whatever comes.
type Sunk struct {
	Invoice *money.Amount // nil: not known
	Bills   money.Amount
	Labour  float64 // own hours at their rates
	Days    int     // since it was bought; 0 where that day is not known
}

// The ways out of a build.
const (
	Finish  = "Finish and sell"
	AsIs    = "Sell as it stands"
	PartOut = "Part out"
)

// Way is one way out, counted from here on: what it brings less what it still costs, own labour included. Sunk cost is the same
// in every way and left out.
type Way struct {
	Name   string
	Known  bool // false: not judged yet
	Spread Spread
	// Beats is the chance that finishing brings less than this way's mean; 0 for finishing itself.
	Beats float64
}

// Foresee returns what is left of a build on a day, from the same engine as the bid: [Remaining] played out. While as it
// stands the vehicle would bring a known price, finishing pays the capital cost of not having it.
// Limits: c.Check() has found no fault. Errors: as [Value].
func Foresee(c Case, k Knowledge, b build.Build, today lot.Date) (Foresight, error) {
	left, doubts := Remaining(c, k, b, today)
	left.WaysOut = waysLeft(left, b.Otherwise)
	w, m := work{c: left, k: k}, NewMemory()
	if err := w.run(m); err != nil {
		return Foresight{}, err
	}
	f := Foresight{Currency: c.Currency, ToFinish: spread(w.played.Cost), Cash: spread(w.played.Cash), Hours: spread(w.played.Hours),
		Days: spread(w.played.Days), InBay: spread(w.played.InBay), Due: w.due(), Risks: w.hiddenFigures().Risks, Resale: w.market.answer(),
		Doubts: doubts}
	f.Sunk = sunk(c, b, w.currency, today)
	f.whole(&w)
	f.ways(&w, b.Otherwise)
	f.unsaid(b.Otherwise)
	if out := w.wayColumns(m, w.scene()); len(out) > 0 {
		lot := w.stripped(m, w.scene(), out)
		line := lot.Choose().Line
		f.StopLine, f.StopWay = &line, lot.Way.Name
	}
	return f, nil
}

// due returns the parts of the cost to come.
func (w *work) due() []Due {
	o := w.played
	var out []Due
	for i, l := range w.lines {
		out = append(out, Due{DueWork, l.ID, o.Lines[i].Cost, o.Lines[i].Labour})
	}
	return append(out, Due{DueHidden, "", prob.Mean(o.Hidden), prob.Mean(o.HiddenLabour)}, Due{DueFreight, "", prob.Mean(o.Freight), 0},
		Due{DueStorage, "", prob.Mean(o.Storage), 0}, Due{DueHolding, "", prob.Mean(o.Holding), 0})
}

// waysLeft returns the ways out of a build in the making: as the build judges them, or else as the lot did. The strip-down is part of
// what is left to do, and no choice is planned: it is the user's, now.
func waysLeft(c Case, o build.Otherwise) WaysOut {
	w := c.WaysOut
	w.Stop, w.Plans, w.Strip = false, []string{Rebuild}, Strip{}
	if o.AsIs != nil {
		net := func(x float64) float64 { return max(0, x*(1-c.Selling.Percent)-c.Selling.Flat) }
		w.AsItStands = Standing{Money: &prob.Three{Low: net(o.AsIs.Low), Likely: net(o.AsIs.Likely), High: net(o.AsIs.High)},
			Days: orNone(o.AsIsDays)}
	}
	if o.PartOut != nil {
		money := *o.PartOut
		w.ForParts = Parting{Money: &money, Hours: orNone(o.PartOutHours), Days: orNone(o.PartOutDays)}
	}
	return w
}

// orNone returns a judgement, nothing where there is none.
func orNone(t *prob.Three) prob.Three {
	if t == nil {
		return prob.Three{}
	}
	return *t
}

// unsaid names the ways out that are judged without the days that they take.
func (f *Foresight) unsaid(o build.Otherwise) {
	for _, way := range []struct {
		name        string
		money, days *prob.Three
	}{{AsIs, o.AsIs, o.AsIsDays}, {PartOut, o.PartOut, o.PartOutDays}} {
		if way.money != nil && way.days == nil {
			f.Doubts = append(f.Doubts, way.name+": its days are not entered, so nothing is counted for keeping the vehicle so long.")
		}
	}
}

func sunk(c Case, b build.Build, cur money.Currency, today lot.Date) Sunk {
	s := Sunk{Bills: b.Spent(), Labour: build.Labour(b.Worked(), c.Labour.Rates)}
	if total, ok := b.Invoice(c.Buying.Terms, cur); ok {
		s.Invoice = &total
	}
	if days, ok := b.Dates.Bought.Days(today); ok && days > 0 {
		s.Days = days
	}
	return s
}

// whole works out the profit of the build from its purchase on: the same question as that of the bid, with what is sunk put
// to the costs and the days that have passed to the days.
func (f *Foresight) whole(w *work) {
	if f.Sunk.Invoice == nil {
		return
	}
	p := w.finish
	gone := w.currency.Major(f.Sunk.Bills) + f.Sunk.Labour
	p.Cost, p.Days = raised(p.Cost, gone), raised(p.Days, float64(f.Sunk.Days))
	bid.Find(&p) // makes it ready to be read
	total := w.currency.Major(*f.Sunk.Invoice)
	f.Whole = &Spread{p.Mean(total), p.Quantile(.1, total), p.Quantile(.9, total)}
	f.Loss = p.LossChance(total)
}

// raised returns xs with x put to each.
func raised(xs []float64, x float64) []float64 {
	out := make([]float64, len(xs))
	for i := range xs {
		out[i] = xs[i] + x
	}
	return out
}

// ways works out what each way out brings from here on.
func (f *Foresight) ways(w *work, o build.Otherwise) {
	p := &w.finish
	tied := 0.0 // what could be had today instead
	asIs := Way{Name: AsIs}
	if o.AsIs != nil {
		net := func(x float64) float64 { return x*(1-p.SellPercent) - p.SellFlat }
		tied = max(net(o.AsIs.Mean()), 0)
		kept := w.keeping(tied) * orNone(o.AsIsDays).Mean()
		asIs = Way{AsIs, true, Spread{net(o.AsIs.Mean()) - kept, net(o.AsIs.Quantile(.1)) - kept, net(o.AsIs.Quantile(.9)) - kept}, 0}
	}
	mean := p.Mean(0) - tied*p.CapitalRate*f.Days.Mean/365
	finish := Way{Name: Finish, Known: true, Spread: Spread{mean, p.Quantile(.1, tied) + tied, p.Quantile(.9, tied) + tied}}
	f.Ways = []Way{finish, asIs, w.partOut(o, tied)}
	f.Best = -1
	for i := range f.Ways {
		way := &f.Ways[i]
		if !way.Known || i == 0 {
			continue
		}
		way.Beats = p.LossChance(max(way.Spread.Mean, 0))
		if f.Best < 0 {
			f.Best = 0
		}
		if way.Spread.Mean > f.Ways[f.Best].Spread.Mean {
			f.Best = i
		}
	}
}

// keeping returns what a day costs until the vehicle is gone, in whatever way: holding, and capital on what it would bring today.
func (w *work) keeping(tied float64) float64 {
	return w.c.Time.HoldingPerDay + tied*w.finish.CapitalRate/365
}

// partOut returns what the parts bring less the own hours that it takes, at the rate of body work, and less what its days cost.
// Random: streams "part out/..." of the case's seed.
func (w *work) partOut(o build.Otherwise, tied float64) Way {
	way := Way{Name: PartOut}
	if o.PartOut == nil {
		return way
	}
	way.Known = true
	d := prob.NewDraws(w.c.Run.Scenarios, w.c.Run.Seed)
	brought, work, days := make([]float64, d.Len()), make([]float64, d.Len()), make([]float64, d.Len())
	draw := func(name string, t prob.Three, out []float64) {
		d.Column("part out/"+name, out)
		table := t.Score()
		for i, z := range out {
			out[i] = table.At(z)
		}
	}
	draw("brought", *o.PartOut, brought)
	draw("hours", orNone(o.PartOutHours), work)
	draw("days", orNone(o.PartOutDays), days)
	for i := range brought {
		brought[i] -= work[i]*w.c.Labour.Rates["body"] + days[i]*w.keeping(tied)
	}
	way.Spread = spread(brought)
	return way
}
