package valuation

import (
	"fmt"
	"maps"
	"slices"

	"walkline/valuation/build"
	"walkline/valuation/lot"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
)

// FreeRule says how bills and hours that name no line of work count, for whoever reads what is left.
const FreeRule = "A bill that names a part of the plan counts for it. Other bills and hours that name no line of work take down what the " +
	"open lines still need of the same kind (parts, materials, sublet work, or hours of that trade), every line by the same share. No more " +
	"is taken off than was spent. Less is in doubt then: the winner's allowance shrinks, and the profit may rise a little. Where the open " +
	"lines need nothing of that kind, nothing is taken off: a forecast of hours may be for hidden damage. A bill below zero that names what " +
	"another bill names takes that one back. Any other is money back: it lowers what was paid, and no work comes back with it."

// named gives the line of work to each bill for a part without one whose words are an open line's part that has not been bought.
// What was returned does not count as bought.
func (r *rest) named(planned []repair.Line) {
	r.b = r.b.Clone()
	r.b.Receipts = r.b.Bought()
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

// need is one kind of what the open lines still need: own hours of a trade, or money where trade is empty.
type need struct {
	trade string
	alone func(*repair.Line)          // takes all other kinds off a line, but for hours
	less  func(*repair.Line, float64) // takes the kind down to a share
}

// needs are the kinds of money that bills can be for.
var needs = map[string]need{
	"materials": {"", func(l *repair.Line) { l.Outside, l.Parts = prob.Three{}, nil },
		func(l *repair.Line, share float64) { l.Materials = l.Materials.Times(share) }},
	"outside": {"", func(l *repair.Line) { l.Materials, l.Parts = prob.Three{}, nil },
		func(l *repair.Line, share float64) { l.Outside = l.Outside.Times(share) }},
	"part": {"", func(l *repair.Line) { l.Materials, l.Outside = prob.Three{}, prob.Three{} }, cheaper},
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
	return need{trade, func(l *repair.Line) { l.Materials, l.Outside, l.Parts = prob.Three{}, prob.Three{}, nil },
		func(l *repair.Line, share float64) {
			l.Hours = maps.Clone(l.Hours)
			if t, ok := l.Hours[trade]; ok {
				l.Hours[trade] = t.Times(share)
			}
		}}
}

// comes returns what the open lines come to of a kind on average, played out as the forecast plays them: chances, sources and what leans on
// the lot's common factor are in it, so that no more is ever taken off than was paid.
func (r *rest) comes(n need) float64 {
	c, sum := r.c, 0.0
	c.Repair.Lines = slices.Clone(c.Repair.Lines)
	for i := range c.Repair.Lines {
		n.alone(&c.Repair.Lines[i])
	}
	c.Labour.Rates = map[string]float64{n.trade: 1}
	w := work{c: c, k: r.k, currency: r.currency}
	if w.play(NewMemory()) != nil {
		return 0 // what is left can't be foreseen at all, and the forecast says why
	}
	for _, d := range w.due() {
		switch ours := slices.ContainsFunc(c.Repair.Lines, func(l repair.Line) bool { return d.Kind == DueWork && l.ID == d.Line }); {
		case ours && n.trade != "":
			sum += d.Labour
		case ours:
			sum += d.Cost - d.Labour
		}
	}
	return sum
}

// takeDown takes what was used without a line off what is left of a kind, and says so.
func (r *rest) takeDown(n need, used float64, words string) {
	if used <= 0 {
		return
	}
	left := r.comes(n)
	if left <= 0 {
		r.doubt("%s name no line of work, and the open lines need nothing more of that kind: nothing is taken off. What was spent on hidden "+
			"damage counts once it names that.", words)
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
