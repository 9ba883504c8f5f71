package valuation

import (
	"fmt"
	"maps"

	"walkline/valuation/build"
	"walkline/valuation/lot"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
)

// FreeRule says how bills and hours that name no line of work count, for whoever reads what is left.
const FreeRule = "A bill that names a part of the plan counts for it. Other bills and hours that name no line of work take down what the " +
	"open lines still need of the same kind (parts, materials, sublet work, or hours of that trade), every line by the same share."

// named gives the line of work to each bill for a part without one whose words are an open line's part that has not been bought.
func (r *rest) named(planned []repair.Line) {
	r.b = r.b.Clone()
	for i, x := range r.b.Receipts {
		if x.Kind == "part" && x.Line == "" {
			r.b.Receipts[i].Line = r.lineOf(planned, x.What)
		}
	}
}

// lineOf returns the first open line that still needs a part of that name, empty where none does.
func (r *rest) lineOf(planned []repair.Line, part string) string {
	for _, l := range planned {
		for _, p := range l.Parts {
			if !r.b.IsDone(l.ID) && build.SamePart(p.Name, part) && !r.b.HasPart(l.ID, p.Name) {
				return l.ID
			}
		}
	}
	return ""
}

// need is what the open lines still need of one kind, and how that is taken down to a share.
type need struct {
	of   func(repair.Line) float64
	less func(*repair.Line, float64)
}

// needs are the kinds of money that bills can be for.
var needs = map[string]need{
	"materials": {func(l repair.Line) float64 { return l.Materials.Mean() },
		func(l *repair.Line, share float64) { l.Materials = l.Materials.Times(share) }},
	"outside": {func(l repair.Line) float64 { return l.Outside.Mean() },
		func(l *repair.Line, share float64) { l.Outside = l.Outside.Times(share) }},
	"part": {partsMean, cheaper},
}

// unassigned takes bills and hours that name no line off what the open lines still need, as [FreeRule] says.
func (r *rest) unassigned() {
	if len(r.c.Repair.Lines) == 0 {
		return
	}
	for _, kind := range []string{"part", "materials", "outside"} {
		paid := r.currency.Major(r.b.Bills(func(x build.Receipt) bool { return x.Line == "" && x.Kind == kind }))
		words := r.currency.Show(r.currency.FromMajor(paid)) + " of bills for " + map[string]string{"part": "parts", "materials": "materials",
			"outside": "sublet work"}[kind]
		r.takeDown(needs[kind], paid, words)
	}
	worked := r.b.WorkedFor("")
	for _, trade := range lot.Trades {
		r.takeDown(hoursNeed(trade), worked[trade], fmt.Sprintf("%.1f hours of %s", worked[trade], trade))
	}
}

func hoursNeed(trade string) need {
	return need{func(l repair.Line) float64 { return l.Hours[trade].Mean() }, func(l *repair.Line, share float64) {
		l.Hours = maps.Clone(l.Hours)
		if t, ok := l.Hours[trade]; ok {
			l.Hours[trade] = t.Times(share)
		}
	}}
}

// takeDown takes what was used without a line off what is left of a kind, and says so.
func (r *rest) takeDown(n need, used float64, words string) {
	if used <= 0 {
		return
	}
	left := 0.0
	for _, l := range r.c.Repair.Lines {
		left += repair.Or(l.Chance, 1) * n.of(l)
	}
	if left <= 0 {
		r.doubt("%s name no line of work, and the open lines need nothing more of that kind: nothing is taken off.", words)
		return
	}
	share := max(0, 1-used/left)
	for i := range r.c.Repair.Lines {
		n.less(&r.c.Repair.Lines[i], share)
	}
	if used > left {
		r.doubt("%s name no line of work, more than the open lines still need of that kind: nothing of it is left in the forecast.", words)
		return
	}
	r.doubt("%s name no line of work: what the open lines still need of that kind is taken down by %.0f %%.", words, 100*(1-share))
}

// partsMean returns what the parts of a line cost from the first of their sources, the fallback where there is none.
func partsMean(l repair.Line) float64 {
	var sum float64
	for _, p := range l.Parts {
		switch {
		case len(p.Options) > 0:
			o := p.Options[0]
			sum += o.Asked().Mean() + o.Freight.Mean() - o.CoreBack.Mean()
		case p.Fallback != nil:
			sum += p.Fallback.Price.Mean()
		}
	}
	return sum
}

// cheaper takes the money of a line's parts down to a share, from whatever source.
func cheaper(l *repair.Line, share float64) {
	parts := make([]repair.Part, len(l.Parts))
	for i, p := range l.Parts {
		parts[i] = p
		parts[i].Options = make([]repair.Option, len(p.Options))
		for k, o := range p.Options {
			for _, t := range []*prob.Three{&o.Price, &o.Freight, &o.CoreBack} {
				*t = t.Times(share)
			}
			if o.Quote != nil {
				q := *o.Quote
				q.Price *= share
				o.Quote = &q
			}
			parts[i].Options[k] = o
		}
		if p.Fallback != nil {
			f := *p.Fallback
			f.Price = f.Price.Times(share)
			parts[i].Fallback = &f
		}
	}
	l.Parts = parts
}
