package valuation

import (
	"fmt"
	"slices"

	"walkline/valuation/build"
	"walkline/valuation/hidden"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
)

// Remaining returns the case of what a build still needs on a day, and what stays in doubt, in words. Work that is done is
// gone; of work under way the parts that were bought are gone, and hours, materials and bought-in work are less by what was
// worked and paid; hidden damage that was found is known work, and what was not there is gone; freight and the yard's
// charge end when the vehicle is home, the queue and the days to sell shrink by the days that have passed.
// The winner's allowance stays, for what is still in doubt: to have won tells nothing new of the vehicle.
// Bills and hours that name no line count as [FreeRule] says.
// Assumptions: what is left of a three-point judgement is the judgement less what was used, never below nothing; a single
// part of a line is the one that the line's bill is for.
func Remaining(c Case, k Knowledge, b build.Build, today lot.Date) (Case, []string) {
	w := work{c: c, k: k}
	r := rest{b: b, today: today, c: c.Clone(), k: k}
	r.currency, _ = money.Lookup(c.Currency)
	r.c.ValuedOn, r.c.Market.HammerGuess = today, nil
	r.c.Time.DaysToSell, r.c.Factors = c.Time.DaysToSell.Times(factorOf(c.learned().DaysToSell)), applied(c.learned())
	if err := w.expect(); err != nil {
		r.doubt("%v", err)
	}
	r.named(w.lines)
	r.c.Repair = Repair{Lines: r.lines(w.lines)}
	r.c.Hidden.UseCatalogue, r.c.Hidden.Risks = false, r.risks(w.risks)
	r.unlisted()
	r.around()
	r.unassigned()
	return r.c, r.doubts
}

// rest is what is left of a build in the making.
type rest struct {
	c        Case
	k        Knowledge
	b        build.Build
	today    lot.Date
	currency money.Currency
	doubts   []string
}

func (r *rest) doubt(format string, args ...any) {
	r.doubts = append(r.doubts, fmt.Sprintf(format, args...))
}

// lines returns what is left of the known work.
func (r *rest) lines(planned []repair.Line) []repair.Line {
	var out []repair.Line
	for _, l := range planned {
		if !r.b.IsDone(l.ID) {
			out = append(out, r.line(l))
		}
	}
	return out
}

// line returns what is left of one line; one that was begun is needed for certain.
func (r *rest) line(l repair.Line) repair.Line {
	worked, paid := r.b.WorkedFor(l.ID), r.paidFor(l.ID)
	if len(worked) > 0 || len(paid) > 0 {
		l.Chance = nil
	}
	l.Hours = r.hours(l.Job, l.Hours, worked)
	l.Materials, l.Outside = less(l.Materials, paid["materials"]), less(l.Outside, paid["outside"])
	l.Parts = r.parts(l, paid)
	return l
}

// paidFor returns the bills for a line by kind, in major units.
func (r *rest) paidFor(line string) map[string]float64 {
	paid := map[string]float64{}
	for _, x := range r.b.Receipts {
		if lot.SameWork(x.Line, line) {
			paid[x.Kind] += r.currency.Major(x.Amount)
		}
	}
	return paid
}

// hours returns the hours that are left, and doubts the line where more was worked than its highest judgement.
func (r *rest) hours(job string, judged map[string]prob.Three, worked map[string]float64) map[string]prob.Three {
	left := map[string]prob.Three{}
	for trade, t := range judged {
		if x := worked[trade]; x > t.High {
			r.doubt("%s has taken %.1f hours of %s, more than its highest judgment of %.1f, and is not done: nothing of them is left in the "+
				"forecast. Enter a new judgment on the worksheet.",
				job, x, trade, t.High)
		}
		if rest := less(t, worked[trade]); !rest.Zero() {
			left[trade] = rest
		}
	}
	return left
}

// parts returns the parts that have not been bought.
func (r *rest) parts(l repair.Line, paid map[string]float64) []repair.Part {
	if _, bought := paid["part"]; !bought {
		return l.Parts
	}
	var left []repair.Part
	for _, p := range l.Parts {
		if !r.b.HasPart(l.ID, p.Name) {
			left = append(left, p)
		}
	}
	if len(left) == len(l.Parts) && len(left) == 1 {
		return nil
	}
	if len(left) == len(l.Parts) && len(left) > 1 {
		r.doubt("A bill for a part of %q names none of its parts: all of them are still counted.", l.Job)
	}
	return left
}

// risks returns the damage that may still be there; what was found joins the known work.
func (r *rest) risks(raised []hidden.Risk) []hidden.Risk {
	var out []hidden.Risk
	seen := r.explained(raised)
	for _, x := range raised {
		switch {
		case r.b.IsDone(x.ID) || r.b.Saw(x.ID) == build.NotThere:
		case r.b.Saw(x.ID) == build.Found:
			r.c.Repair.Lines = append(r.c.Repair.Lines, r.found(x))
		default:
			out = append(out, besides(x, seen))
		}
	}
	return out
}

// explained returns how likely damage that was found alone answers a finding with "yes", by finding: several causes as a noisy-or.
func (r *rest) explained(raised []hidden.Risk) map[string]float64 {
	seen := map[string]float64{}
	for _, x := range raised {
		for _, e := range x.Findings {
			if r.b.Saw(x.ID) == build.Found {
				seen[e.Finding] = 1 - (1-seen[e.Finding])*(1-e.IfPresent)
			}
		}
	}
	return seen
}

// besides returns a risk whose answers count for what they tell beside damage that was found: a "yes" that is explained tells less.
func besides(x hidden.Risk, seen map[string]float64) hidden.Risk {
	x.Findings = slices.Clone(x.Findings)
	for i, e := range x.Findings {
		if q := seen[e.Finding]; q > 0 {
			x.Findings[i].IfPresent, x.Findings[i].IfAbsent = 1-(1-q)*(1-e.IfPresent), max(q, e.IfAbsent)
		}
	}
	return x
}

// found returns damage that was found as a line of work.
func (r *rest) found(x hidden.Risk) repair.Line {
	var paid float64
	for _, amount := range r.paidFor(x.ID) {
		paid += amount
	}
	return repair.Line{ID: x.ID, Job: x.Name, Hours: r.hours(x.Name, x.Hours, r.b.WorkedFor(x.ID)), Materials: less(x.Cost, paid),
		Loading: x.Loading, Why: "Found on opening the vehicle up. " + x.Why, Caution: x.Caution}
}

// unlisted adds what was found and is on no list as known work.
func (r *rest) unlisted() {
	for _, u := range r.b.Unlisted {
		if !r.b.IsDone(u.ID) {
			x := hidden.Risk{ID: u.ID, Name: u.Name, Cost: u.Cost, Hours: map[string]prob.Three{u.Trade: u.Hours}}
			r.c.Repair.Lines = append(r.c.Repair.Lines, r.found(x))
		}
	}
}

// around takes off what is over of getting home, waiting and selling.
func (r *rest) around() {
	d := r.b.Dates
	if d.Home != "" || r.b.BillsOf("freight") != 0 {
		r.c.Buying.Freight = prob.Three{}
	}
	if d.Home != "" {
		r.c.Buying.Storage = Storage{}
	}
	t := &r.c.Time
	if waited, ok := d.Finished.Days(r.today); ok {
		t.InspectionQueueDays = less(t.InspectionQueueDays, float64(waited))
	}
	if d.Inspected != "" {
		t.InspectionQueueDays = prob.Three{}
	}
	if listed, ok := d.Listed.Days(r.today); ok {
		t.DaysToSell = less(t.DaysToSell, float64(listed))
	}
}

// less returns what is left of a judgement when x of it is used.
func less(t prob.Three, x float64) prob.Three {
	return prob.Three{Low: max(t.Low-x, 0), Likely: max(t.Likely-x, 0), High: max(t.High-x, 0)}
}
