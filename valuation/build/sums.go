package build

import (
	"fmt"
	"slices"
	"strings"

	"walkline/valuation/invoice"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// Bills returns the sum of the bills that pass.
func (b Build) Bills(pass func(Receipt) bool) money.Amount {
	var sum money.Amount
	for _, r := range b.Receipts {
		if pass(r) {
			sum += r.Amount
		}
	}
	return sum
}

// Spent returns the sum of all bills; the sale's invoice is not among them.
func (b Build) Spent() money.Amount { return b.Bills(func(Receipt) bool { return true }) }

// BillsFor returns the sum of the bills for one line of work or hidden risk.
func (b Build) BillsFor(line string) money.Amount {
	return b.Bills(func(r Receipt) bool { return lot.SameWork(r.Line, line) })
}

// BillsOf returns the sum of the bills of one kind.
func (b Build) BillsOf(kind string) money.Amount {
	return b.Bills(func(r Receipt) bool { return r.Kind == kind })
}

// WorkedFor returns the own hours by trade on one line of work or hidden risk.
func (b Build) WorkedFor(line string) map[string]float64 {
	return b.worked(func(w Work) bool { return lot.SameWork(w.Line, line) })
}

// Worked returns all own hours by trade.
func (b Build) Worked() map[string]float64 { return b.worked(func(Work) bool { return true }) }

func (b Build) worked(pass func(Work) bool) map[string]float64 {
	sum := map[string]float64{}
	for _, w := range b.Hours {
		if pass(w) {
			sum[w.Trade] += w.Hours
		}
	}
	return sum
}

// Labour returns own hours at their rates. Units: money in major units.
func Labour(hours, rates map[string]float64) float64 {
	var sum float64
	for _, trade := range lot.Trades {
		sum += hours[trade] * rates[trade]
	}
	return sum
}

// Invoice returns what the sale's invoice came to, and whether it is known: the hammer price with the charges entered, or
// without any those that the terms make of it.
func (b Build) Invoice(t invoice.Terms, c money.Currency) (money.Amount, bool) {
	if b.Hammer == nil {
		return 0, false
	}
	if len(b.Charges) == 0 {
		return t.Total(*b.Hammer, c).Total, true
	}
	sum := *b.Hammer
	for _, x := range b.Charges {
		sum += x.Amount
	}
	return sum, true
}

// Saw returns what has been seen of a hidden risk; empty: not known yet.
func (b Build) Saw(risk string) string {
	for _, s := range b.Risks {
		if s.Risk == risk {
			return s.State
		}
	}
	return ""
}

// IsDone reports whether the work on a line or risk is finished: ticked, or with the whole build.
func (b Build) IsDone(line string) bool {
	return b.Dates.Finished != "" || slices.ContainsFunc(b.Done, func(id string) bool { return lot.SameWork(id, line) })
}

// HasPart reports whether a part of a line of work has been bought. Names are compared without regard to case.
func (b Build) HasPart(line, part string) bool {
	return slices.ContainsFunc(b.Receipts, func(r Receipt) bool {
		return r.Kind == "part" && lot.SameWork(r.Line, line) && SamePart(r.What, part)
	})
}

// SamePart reports whether two names mean the same part: case and the spaces around them do not count.
func SamePart(a, b string) bool { return strings.EqualFold(strings.TrimSpace(a), strings.TrimSpace(b)) }

// DaysToSell returns the days on the market, and whether they are known.
func (b Build) DaysToSell() (int, bool) {
	if days, ok := b.Dates.Listed.Days(b.Dates.Sold); ok {
		return days, true
	}
	if b.Sale.Days != nil {
		return *b.Sale.Days, true
	}
	return 0, false
}

// Clone returns a copy that shares nothing that can be changed.
func (b Build) Clone() Build {
	b.Hammer, b.Sale.Price, b.Sale.FirstAsked, b.Sale.Days = copied(b.Hammer), copied(b.Sale.Price), copied(b.Sale.FirstAsked),
		copied(b.Sale.Days)
	o := &b.Otherwise
	o.AsIs, o.PartOut, o.PartOutHours = copied(o.AsIs), copied(o.PartOut), copied(o.PartOutHours)
	o.AsIsDays, o.PartOutDays, b.Unlisted = copied(o.AsIsDays), copied(o.PartOutDays), slices.Clone(b.Unlisted)
	b.Charges, b.Receipts, b.Hours = slices.Clone(b.Charges), slices.Clone(b.Receipts), slices.Clone(b.Hours)
	for i := range b.Receipts {
		b.Receipts[i].More = slices.Clone(b.Receipts[i].More)
	}
	b.Risks, b.Done = slices.Clone(b.Risks), slices.Clone(b.Done)
	b.Unbilled = slices.Clone(b.Unbilled)
	return b
}

func copied[T any](p *T) *T {
	if p == nil {
		return nil
	}
	v := *p
	return &v
}

// See sets what has been seen of a hidden risk; empty: not known.
func (b *Build) See(risk, state string) {
	b.Risks = slices.DeleteFunc(b.Risks, func(s Seen) bool { return s.Risk == risk })
	if state != "" {
		b.Risks = append(b.Risks, Seen{risk, state})
	}
}

// FreeID returns an id for unlisted damage that no other find, bill or hour has.
func (b Build) FreeID() string {
	for n := 1; ; n++ {
		id := fmt.Sprintf("unlisted-%d", n)
		if !b.IsUnlisted(id) && !slices.ContainsFunc(b.Receipts, func(r Receipt) bool { return r.Line == id }) &&
			!slices.ContainsFunc(b.Hours, func(w Work) bool { return w.Line == id }) {
			return id
		}
	}
}

// IsUnlisted reports whether a line is damage that was found and is on no list.
func (b Build) IsUnlisted(line string) bool {
	return slices.ContainsFunc(b.Unlisted, func(u Unlisted) bool { return u.ID == line })
}

// Finish marks the work on a line or risk as done, or takes that back.
func (b *Build) Finish(line string, done bool) {
	b.Done = slices.DeleteFunc(b.Done, func(id string) bool { return id == line })
	if done {
		b.Done = append(b.Done, line)
	}
}
