package desk

import (
	"slices"

	"walkline/store/book"
	"walkline/valuation"
	"walkline/valuation/build"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// Question is what is still open of a build that is said to have ended.
type Question struct {
	About Unsettled
	Names []string // of the lines of work or risks that it is about; empty: it is about the whole build
	IDs   []string // theirs
}

// Unsettled is what a question is about.
type Unsettled string

// What can be open when a build is closed.
const (
	OpenLines  Unsettled = "lines"  // work that is not ticked as finished
	OpenBills  Unsettled = "bills"  // finished work with parts and no bill
	OpenCosts  Unsettled = "costs"  // freight, storage or selling that the forecast counts, and no bill
	OpenDamage Unsettled = "damage" // risks of which nothing was said
	OpenHours  Unsettled = "hours"  // none were entered, though some were planned
	OpenDay    Unsettled = "day"    // the day of the sale is still to come
	OpenPrice  Unsettled = "price"  // what it brought, what was paid, or the day of the sale
)

// Questions returns what is open of a build that has ended, in the order of the pages. A purchase that came to nothing has none; a vehicle
// that was not finished is asked nothing about its work.
func (o OpenBuild) Questions() []Question {
	b := o.Build
	if !b.Outcome.Ended() || b.Outcome == build.Cancelled {
		return nil
	}
	var out []Question
	ask := func(about Unsettled, ids, names []string) {
		if len(ids) > 0 {
			out = append(out, Question{about, names, ids})
		}
	}
	if b.Outcome == build.Sold {
		ids, names := o.works(func(id string, _ int) bool { return !b.IsDone(id) })
		ask(OpenLines, ids, names)
		ids, names = o.works(func(id string, parts int) bool { return parts > 0 && b.IsDone(id) && b.BillsFor(id) == 0 })
		if !b.NoMoreBills {
			ask(OpenBills, ids, names)
		}
	}
	ids, names := o.unbilled()
	ask(OpenCosts, ids, names)
	ids, names = o.unanswered()
	ask(OpenDamage, ids, names)
	if planned := slices.ContainsFunc(o.Plan, func(l valuation.PlannedLine) bool { return len(l.Hours) > 0 }); planned && len(b.Hours) == 0 {
		out = append(out, Question{About: OpenHours})
	}
	if o.ahead(b) {
		out = append(out, Question{OpenDay, []string{DayShown(b.Dates.Sold)}, []string{string(b.Dates.Sold)}})
	}
	if b.Hammer == nil || b.Sale.Price == nil || b.Dates.Sold == lot.Date("") {
		out = append(out, Question{About: OpenPrice})
	}
	return out
}

// ahead reports whether the day of the sale is still to come, and nobody said that it is right.
func (o OpenBuild) ahead(b build.Build) bool {
	return o.Today != "" && b.Dates.Sold > o.Today && b.SoldAhead != b.Dates.Sold
}

// works returns the lines of the plan that pass, by their id and the number of their parts.
func (o OpenBuild) works(pass func(id string, parts int) bool) (ids, names []string) {
	for _, l := range o.Plan {
		if pass(l.ID, len(l.Parts)) {
			ids, names = append(ids, l.ID), append(names, l.Job)
		}
	}
	for _, u := range o.Build.Unlisted {
		if pass(u.ID, 0) {
			ids, names = append(ids, u.ID), append(names, u.Name)
		}
	}
	return ids, names
}

// unbilled returns the kinds of cost that the forecast counts and of which nothing was said, with the forecast's value.
func (o OpenBuild) unbilled() (ids, names []string) {
	cur, _ := money.Lookup(o.Currency)
	for _, c := range PastOf(o.Bought).Account().Unsaid() {
		if o.Build.Meant(c.Name) == "" {
			ids, names = append(ids, c.Name), append(names, c.Name+" "+cur.Text(c.Amount))
		}
	}
	return ids, names
}

// unanswered returns the risks of which nobody said whether they were there.
func (o OpenBuild) unanswered() (ids, names []string) {
	add := func(id, name string) {
		if o.Build.Saw(id) == "" && !slices.Contains(ids, id) {
			ids, names = append(ids, id), append(names, name)
		}
	}
	if o.Foretold != nil {
		for _, r := range o.Foretold.Risks {
			add(r.ID, r.Name)
		}
	}
	for _, r := range o.Risks {
		add(r.ID, r.Name)
	}
	return ids, names
}

// closing returns the build with what its ending says about its teaching: one that ends with questions open asks, and teaches nothing
// until they are answered or it is closed all the same.
func (o OpenBuild) closing(before, after build.Build) build.Build {
	o.Build = after
	open := len(o.Questions()) > 0
	switch {
	case !after.Outcome.Ended() || !open:
		after.Closing = ""
	case !before.Outcome.Ended(), o.ahead(after) && !o.ahead(before):
		after.Closing = build.Asking
	}
	return after
}

// TakeForecast answers that what has no bill cost what was forecast.
func TakeForecast(q Question) Action {
	return EditBuild("as forecast", func(b *build.Build) { b.MeanAll(q.IDs, build.AsForecast) })
}

// AnswerAll answers one kind of question about a build's ending for all that it names: the work is finished, there are no more bills,
// what has no bill cost nothing, the damage was not there, or the day is right. Other questions need their own entry.
func AnswerAll(q Question) Action {
	words := map[Unsettled]string{OpenLines: "all work finished", OpenBills: "no more bills", OpenCosts: "it cost nothing",
		OpenDamage: "the rest was not there",
		OpenDay:    "the day is right"}[q.About]
	return EditBuild(words, func(b *build.Build) {
		switch q.About {
		case OpenCosts:
			b.MeanAll(q.IDs, build.Nothing)
		case OpenDay:
			b.SoldAhead = b.Dates.Sold
		}
		for _, id := range q.IDs {
			switch q.About {
			case OpenLines:
				b.Finish(id, true)
			case OpenDamage:
				b.See(id, build.NotThere)
			}
		}
		b.NoMoreBills = b.NoMoreBills || q.About == OpenBills
	})
}

// CloseAsItIs closes a build with its questions open: what was not entered is not known, and teaches nothing.
func CloseAsItIs() Action {
	return EditBuild("close as it is", func(b *build.Build) { b.Closing = build.Partly })
}

// waiting counts the builds that have ended and wait for answers.
func waiting(list []book.Bought) int {
	n := 0
	for _, b := range list {
		if b.Build.Closing == build.Asking {
			n++
		}
	}
	return n
}
