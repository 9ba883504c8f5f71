package wire

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"walkline/store/csvfile"
	"walkline/ui/desk"
	"walkline/ui/sheet"
	"walkline/valuation"
	"walkline/valuation/build"
	"walkline/valuation/checks"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// Press makes files to print with package sheet.
type Press struct{}

var _ desk.Press = Press{}

// Decision returns a lot's decision sheet as PDF; a paper without a known name is the one that is usual for its currency.
func (Press) Decision(c valuation.Case, a valuation.Answer, printed lot.Date, paper string) ([]byte, error) {
	named, _ := sheet.PaperNamed(paper)
	return sheet.Decision(sheet.Lot{Case: c, Answer: a, Printed: printed, Paper: named})
}

// Shopping returns a shopping list as PDF.
func (Press) Shopping(list []valuation.Wanted, printed lot.Date) ([]byte, error) {
	return sheet.Shopping(sheet.List{Parts: list, Printed: printed})
}

// Plan returns the plan of a sale day as PDF; a paper without a known name is the one that is usual for its currency.
func (Press) Plan(p desk.DayPlan, printed lot.Date, paper string) ([]byte, error) {
	named, _ := sheet.PaperNamed(paper)
	return sheet.Plan(sheet.Day{Plan: p, Printed: printed, Paper: named})
}

// Table returns a shopping list as CSV.
func (Press) Table(list []valuation.Wanted) []byte { return csvfile.WriteParts(list) }

// Rebuilt returns the file for the rebuilt inspection as PDF.
func (Press) Rebuilt(b desk.BuildPaper) ([]byte, error) {
	l := b.Case.Lot
	l.Survey = b.Case.Survey
	r := sheet.Rebuilt{Lot: l, Damage: b.Case.Damage, Currency: b.Case.Currency, Printed: b.Printed, Bought: bought(b),
		Builder: sheet.Builder(b.Builder), Forms: forms(b), Work: work(b), Receipts: receipts(b.Build)}
	packs := checks.Choose(b.Packs, l.Title.RegisterIn)
	if len(packs) > 0 && strings.EqualFold(packs[0].ID, l.Title.RegisterIn) {
		r.Agency = "title agency of " + packs[0].Name
	}
	for i, bill := range inspected(b.Build) {
		for _, f := range bill.Files() {
			if read := b.Bills[f.Hash]; read != nil {
				r.Bills = append(r.Bills, sheet.Picture{Caption: fmt.Sprintf("Bill %d: %s", i+1, bill.What), Read: read})
			} else {
				r.Papers = append(r.Papers, fmt.Sprintf("Bill %d: %s", i+1, f.Name))
			}
		}
	}
	for _, x := range b.Photos {
		pic := sheet.Picture{Caption: x.Caption, Area: x.Area, Taken: x.Taken, Read: x.Read}
		if x.Stage == lot.After {
			r.After = append(r.After, pic)
		} else {
			r.Before = append(r.Before, pic)
		}
	}
	r.Asks = asks(packs)
	byDay(r.Before, func(p sheet.Picture) lot.Date { return p.Taken })
	byDay(r.After, func(p sheet.Picture) lot.Date { return p.Taken })
	return sheet.RebuiltFile(r)
}

// byDay sorts by day in place; what has none comes last.
func byDay[T any](list []T, day func(T) lot.Date) {
	slices.SortStableFunc(list, func(a, b T) int {
		x, y := day(a), day(b)
		if (x == "") != (y == "") {
			return cmp.Compare(len(y), len(x))
		}
		return cmp.Compare(x, y)
	})
}

// asks are the inspections beside the rebuilt one that the nearest jurisdiction names.
func asks(packs []checks.Pack) []sheet.Ask {
	for _, p := range packs {
		if len(p.Inspections) == 0 {
			continue
		}
		var out []sheet.Ask
		for _, i := range p.Inspections {
			out = append(out, sheet.Ask{What: i.Text, Source: i.Source.Words()})
		}
		return out
	}
	return nil
}

func bought(b desk.BuildPaper) sheet.Bought {
	out := sheet.Bought{Date: b.Build.Dates.Bought, From: b.Case.Lot.Sale}
	if c, known := money.Lookup(b.Case.Currency); known {
		if total, ok := b.Build.Invoice(b.Case.Buying.Terms, c); ok {
			out.Total = &total
		}
	}
	return out
}

// forms are the papers to keep for the inspection, ticked when the buyer has ticked them.
func forms(b desk.BuildPaper) []sheet.Form {
	c := b.Case
	items := checks.List(checks.Subject{Lot: c.Lot, Damage: c.Damage, On: c.ValuedOn, Answers: c.Findings,
		Packs: checks.Choose(b.Packs, c.Lot.Title.RegisterIn)})
	var out []sheet.Form
	for _, i := range items {
		if i.Where == checks.Keep {
			out = append(out, sheet.Form{Name: i.Text, Why: strings.TrimSpace(i.Why + " " + i.Source), InHand: i.State == "ok"})
		}
	}
	return out
}

// work is the statement of work by day: own hours line by line, the parts of a line beside its first, what was bought in, and the finished
// lines of which no hours were kept.
func work(b desk.BuildPaper) []sheet.Work {
	var out []sheet.Work
	told := map[string]bool{"": true}
	hours := slices.Clone(b.Build.Hours)
	byDay(hours, func(h build.Work) lot.Date { return h.Date })
	for _, h := range hours {
		w := sheet.Work{Date: h.Date, What: either(h.What, b.Jobs[h.Line]), Hours: h.Hours, By: h.Trade}
		if !told[h.Line] {
			told[h.Line] = true
			w.Parts = partsOf(b.Build, h.Line)
		}
		out = append(out, w)
	}
	for _, r := range b.Build.Receipts {
		if r.Kind == "outside" {
			told[r.Line] = true
			out = append(out, sheet.Work{Date: r.Date, What: either(r.What, b.Jobs[r.Line]), By: either(either(r.Seller, r.Source), "sublet")})
		}
	}
	for _, id := range b.Build.Done {
		if !told[id] {
			out = append(out, sheet.Work{Date: lastDay(b.Build, id), What: either(b.Jobs[id], id), Parts: partsOf(b.Build, id)})
		}
	}
	byDay(out, func(w sheet.Work) lot.Date { return w.Date })
	return out
}

// lastDay returns the day of the last bill for a line, else that on which the work was finished.
func lastDay(b build.Build, line string) lot.Date {
	var last lot.Date
	for _, r := range b.Receipts {
		if lot.SameWork(r.Line, line) {
			last = max(last, r.Date)
		}
	}
	if last == "" {
		return b.Dates.Finished
	}
	return last
}

func either(words, instead string) string {
	if strings.TrimSpace(words) == "" {
		return instead
	}
	return words
}

// partsOf names the parts that were bought for a line, each with its source.
func partsOf(b build.Build, line string) string {
	var parts []string
	for _, r := range b.Receipts {
		if r.Line != line || r.Kind != "part" || r.Amount < 0 {
			continue
		}
		name := r.What
		if r.Source != "" {
			name += " (" + strings.ReplaceAll(r.Source, "_", " ") + ")"
		}
		parts = append(parts, name)
	}
	return strings.Join(parts, ", ")
}

// inspected are the bills that the inspection asks about, by day: parts, materials and work bought in.
func inspected(b build.Build) []build.Receipt {
	all := slices.Clone(b.Receipts)
	byDay(all, func(r build.Receipt) lot.Date { return r.Date })
	return slices.DeleteFunc(all, func(r build.Receipt) bool {
		return r.Kind != "part" && r.Kind != "materials" && r.Kind != "outside"
	})
}

func receipts(b build.Build) []sheet.Receipt {
	var out []sheet.Receipt
	for _, r := range inspected(b) {
		bill := sheet.Receipt{Date: r.Date, What: r.What, Source: r.Source, DonorVIN: r.Donor, Amount: r.Amount, Seller: r.Seller,
			Number: r.Number}
		for _, f := range r.Files() {
			bill.Files = append(bill.Files, f.Name)
		}
		out = append(out, bill)
	}
	return out
}
