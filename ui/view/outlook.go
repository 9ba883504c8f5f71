package view

import (
	"fmt"

	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/build"
	"walkline/valuation/hindsight"
	"walkline/valuation/learn"
)

// BuildSide is what the right side of a build says: where it leads.
type BuildSide struct {
	Headline string
	Figure   string
	Loses    bool
	Settled  bool        // false: the figures are of an older state of the build
	Lines    [][2]string // label and figure
	Stop     string      // the stop line as something to do; empty: no way out is judged
	Ways     []WayRow
	WaysNote string
	Notes    []string
}

// WayRow is one way out with what it brings from here on.
type WayRow struct {
	Name, Figure, Note string
	Best               bool
}

// sunkNote is said wherever the ways out are compared.
const sunkNote = "From here on: what each brings less what it still costs, your hours included. What has been spent is gone either way " +
	"and left out."

// NewBuildSide returns where a build leads: what it came to, once it has ended.
func NewBuildSide(o desk.OpenBuild) BuildSide {
	if o.Build.Outcome.Ended() {
		return ended(o)
	}
	v := BuildSide{Headline: "Profit it leads to", Figure: "—", Settled: o.Fresh}
	if o.Problem != "" {
		v.Notes = append(v.Notes, "No forecast: "+o.Problem)
	}
	f := o.Forecast
	if f == nil {
		return v
	}
	p := NewPurse(f.Currency)
	if f.Whole != nil {
		v.Figure, v.Loses = p.Code+" "+p.Whole(f.Whole.Mean), f.Whole.Mean < 0
		v.Lines = append(v.Lines, [2]string{"8 times in 10", p.Range(f.Whole.P10, f.Whole.P90)}, [2]string{"Chance of a loss", Percent(f.Loss)})
	} else {
		v.Notes = append(v.Notes, "Enter the hammer price: without it there is no profit to forecast.")
	}
	if o.Foretold != nil {
		v.Lines = append(v.Lines, [2]string{"Forecast at the price paid", p.Whole(atPaid(o.Bought).Profit.Mean)})
		v.Notes = append(v.Notes, oneKind)
	}
	v.Lines = append(v.Lines, spent(p, o)...)
	v.Lines = append(v.Lines, toFinish(p, *f)...)
	v.Ways, v.WaysNote = ways(p, *f), sunkNote
	if f.StopLine != nil {
		v.Stop = valuation.StopSentence("a bill or what you find", *f.StopLine, f.StopWay, p.Currency)
		if f.ToFinish.Mean > *f.StopLine {
			v.Stop += " The cost to finish is above it now."
		}
	}
	v.Notes = append(v.Notes, f.Doubts...)
	return v
}

// atPaid returns what was foretold of a lot at the hammer price that was paid; nil: nothing was.
func atPaid(b book.Bought) *learn.Prediction {
	if b.Foretold == nil {
		return nil
	}
	return hindsight.Restated(b.Foretold, b.Build.Hammer, b.Currency)
}

// spent says what the build has taken beside the invoice.
func spent(p Purse, o desk.OpenBuild) [][2]string {
	bills := "none entered"
	if len(o.Build.Receipts) > 0 {
		bills = p.Group(o.Build.Spent())
	}
	lines := [][2]string{{"Bills so far", bills}}
	if worked := build.Labour(o.Build.Worked(), ratesFor(o)); worked > 0 {
		lines = append(lines, [2]string{"My hours so far, at their rates", p.Whole(worked)})
	}
	return lines
}

// toFinish says what is still to come.
func toFinish(p Purse, f valuation.Foresight) [][2]string {
	cost := [][2]string{{"Cost to finish, with my hours", p.Whole(f.ToFinish.Mean)},
		{"  8 times in 10", p.Range(f.ToFinish.P10, f.ToFinish.P90)},
		{"  of it to pay out", p.Whole(f.Cash.Mean)}}
	if f.StopLine != nil {
		cost = append(cost, [2]string{"Stop line, still to spend", p.Whole(max(0, *f.StopLine))})
	}
	return append(cost, [][2]string{
		{"My hours left", fmt.Sprintf("%.0f", f.Hours.Mean)},
		{"Days until sold", fmt.Sprintf("%.0f to %.0f", f.Days.P10, f.Days.P90)},
		{"Resale", p.Range(f.Resale.P10, f.Resale.P90)},
	}...)
}

func ways(p Purse, f valuation.Foresight) []WayRow {
	rows := make([]WayRow, len(f.Ways))
	for i, w := range f.Ways {
		r := WayRow{Name: w.Name, Best: i == f.Best}
		switch {
		case !w.Known:
			r.Figure, r.Note = "not judged", "enter what it would bring under Days and selling"
		case w.Spread.P10 == w.Spread.P90:
			r.Figure = p.Whole(w.Spread.Mean)
		default:
			r.Figure, r.Note = p.Whole(w.Spread.Mean), p.Range(w.Spread.P10, w.Spread.P90)
		}
		if w.Known && i > 0 {
			r.Note = joined("; ", r.Note, "beats finishing "+Percent(w.Beats)+" of the time")
		}
		if r.Best {
			r.Note = joined("; ", "brings most", r.Note)
		}
		rows[i] = r
	}
	return rows
}

// ended says what a build came to.
func ended(o desk.OpenBuild) BuildSide {
	p := NewPurse(o.Currency)
	v := BuildSide{Headline: "Profit it came to", Figure: "not known", Settled: true}
	if o.Build.Closing == build.Asking {
		v.Notes = append(v.Notes, "Questions are open, under Days and selling: until they are answered this build teaches nothing.")
	}
	r, ok := account(o.Bought).Result()
	if !ok {
		v.Notes = append(v.Notes, missing(o.Build))
		return v
	}
	v.Figure, v.Loses = p.Code+" "+p.Whole(r.Profit), r.Profit < 0
	v.Lines = append([][2]string{{"Brought", p.Whole(r.Brought)}}, paidLines(p, r)...)
	v.Lines = append(v.Lines, [2]string{"My hours at their rates", p.Whole(r.Labour)})
	if r.Tied != nil {
		v.Lines = append(v.Lines, [2]string{"Cost of the money tied up", p.Whole(*r.Tied)})
	}
	if said := atPaid(o.Bought); said != nil {
		v.Lines = append(v.Lines, [2]string{"Forecast at the price paid", p.Whole(said.Profit.Mean)},
			[2]string{"  8 times in 10", p.Range(quantile(said.Profit, 0.1), quantile(said.Profit, 0.9))})
	}
	if len(r.Taken) > 0 {
		v.Notes = append(v.Notes, "What has no bill counts as it was forecast. Enter the bill, and that counts.")
	}
	return v.counted(o, r)
}

// counted says what an ended build's profit counts, and what it leaves out.
func (v BuildSide) counted(o desk.OpenBuild, r build.Result) BuildSide {
	switch {
	case o.Foretold == nil:
		v.Notes = append(v.Notes, "Without a kept forecast your hours and the money tied up are not counted.")
	case len(o.Build.Hours) == 0:
		v.Notes = append(v.Notes, "No hours are entered: none are counted.")
	}
	if r.Tied != nil {
		v.Notes = append(v.Notes, oneKind)
	} else if o.Foretold != nil {
		v.Notes = append(v.Notes, "What the days cost is not counted, neither keeping it nor the money tied up: enter the day bought and "+
			"the day sold.")
	}
	return v
}

// oneKind is said where a profit stands beside its forecast.
const oneKind = "Both profits count your hours at their rates and the cost of the money tied up."

// account returns a bought lot as the books see it, own hours and what no bill says as its forecast counts them.
func account(b book.Bought) build.Account {
	a := desk.PastOf(b).Account()
	a.Kind = wreckWords(b.Loss)
	return a
}

// costWords names a kind of cost.
func costWords(kind string) string {
	if kind == "fees" {
		return "fees and tax"
	}
	return KindWords(kind)
}

// paidLines says what was paid out for a build, and beside it what counts as forecast, for nothing was entered of it.
func paidLines(p Purse, r build.Result) [][2]string {
	paid, rest := r.Outlay, [][2]string(nil)
	for _, c := range r.Taken {
		paid -= p.Major(c.Amount)
		rest = append(rest, [2]string{"  " + sentence(costWords(c.Name)) + ", as forecast", p.Group(c.Amount)})
	}
	return append([][2]string{{"Paid out", p.Whole(paid)}}, rest...)
}

// missing says what an ended build's profit still needs.
func missing(b build.Build) string {
	if b.Hammer == nil {
		return "Enter the hammer price to see what it came to."
	}
	return "Enter what it brought, under Days and selling, to see what it came to."
}
