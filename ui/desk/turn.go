package desk

import (
	"cmp"
	"context"
	"fmt"
	"slices"
	"strings"

	"walkline/store/book"
	"walkline/valuation/lot"
)

// NextLot opens the lot of the same sale so many places on, in the order of their numbers, on the Live page; beyond the first and the
// last, that of the nearest other sale which was marked as bid, won or lost.
func NextLot(by int) Action {
	return shows(func(ctx context.Context, d *Desk, s State) State {
		if s.Open == nil {
			return s
		}
		lots := s.ofTheSale(s.Open.Case.Lot)
		at := slices.IndexFunc(lots, func(e book.Entry) bool { return e.ID == s.Open.ID }) + by
		if at >= 0 && at < len(lots) {
			return d.showLive(ctx, s, lots[at].ID)
		}
		words := map[bool]string{true: "That was the first lot of this sale.", false: "That was the last lot of this sale."}[at < 0]
		if e, found := s.otherSale(by); found {
			words += " " + soldWords(e) + s.passedOver(e, by)
			s = d.showLive(ctx, s, e.ID)
		} else if later := ByDay(s.unmarked(s.Open.Case.Lot.SaleDate)); later != "" && by > 0 {
			words += " No lot of a later day is marked bid. There are: " + later + "."
		}
		return s.said(words)
	})
}

// soldWords says where and when a lot is sold, as far as that is known.
func soldWords(e book.Entry) string {
	if e.Sale == "" {
		return "This one is sold on " + DayShown(e.SaleDate) + "."
	}
	return fmt.Sprintf("This one is sold at %s on %s.", e.Sale, DayShown(e.SaleDate))
}

// passedOver names the lots of other sales that lie between the open one and a marked one, and why they are not turned to.
func (s State) passedOver(to book.Entry, by int) (words string) {
	open := s.Open.Case.Lot
	from := book.Entry{Number: open.Number, Sale: open.Sale, SaleDate: open.SaleDate}
	over := map[string][]string{}
	for _, e := range s.Entries {
		other := e.Sale != open.Sale || e.SaleDate != open.SaleDate
		if !other || e.ID == to.ID || e.Archived || !e.SaleDate.Known() || inTurn(from, e)*by > 0 || inTurn(e, to)*by > 0 {
			continue
		}
		why := "not marked bid"
		if e.State == lot.Passed {
			why = "marked passed"
		}
		over[why] = append(over[why], e.Number)
	}
	for _, why := range []string{"not marked bid", "marked passed"} {
		if numbers := over[why]; len(numbers) > 0 {
			slices.SortFunc(numbers, byNumber)
			words += fmt.Sprintf(" Passed over, %s: %s.", why, strings.Join(numbers, ", "))
		}
	}
	return words
}

// CallLot opens the lot of a number on the Live page: of the open lot's sale, else the only one of that number on the Board. What there
// is none of, or more than one, is said.
func CallLot(number string) Action {
	return shows(func(ctx context.Context, d *Desk, s State) State {
		number = strings.TrimSpace(number)
		if s.Open == nil || number == "" {
			return s
		}
		has := func(e book.Entry) bool { return strings.EqualFold(e.Number, number) }
		here := s.ofTheSale(s.Open.Case.Lot)
		if at := slices.IndexFunc(here, has); at >= 0 {
			return d.showLive(ctx, s, here[at].ID)
		}
		all := slices.DeleteFunc(slices.Clone(s.Entries), func(e book.Entry) bool { return e.Archived || !has(e) })
		switch {
		case len(all) == 0:
			return s.said("There is no lot " + number + " on the Board.")
		case len(all) > 1:
			return s.said(fmt.Sprintf("Lot %s is not in this sale, and %d other sales have one. Open it from the Board.", number, len(all)))
		}
		words := "Lot " + all[0].Number + " is of no sale day yet."
		if all[0].SaleDate.Known() {
			words = soldWords(all[0])
		}
		if s = d.showLive(ctx, s, all[0].ID); s.Trouble != "" {
			return s
		}
		return s.said(words)
	})
}

// otherSale returns the nearest lot before or after the open one's sale that was marked as bid, won or lost.
func (s State) otherSale(by int) (nearest book.Entry, found bool) {
	open := s.Open.Case.Lot
	for _, e := range s.Entries {
		way := cmp.Or(cmp.Compare(e.SaleDate, open.SaleDate), cmp.Compare(e.Sale, open.Sale)) * by
		marked := e.SaleDate.Known() && !e.Archived && (e.State == lot.Bid || e.State == lot.Won || e.State == lot.Lost)
		if marked && way > 0 && (!found || inTurn(e, nearest)*by < 0) {
			nearest, found = e, true
		}
	}
	return nearest, found
}

// ofTheSale returns the lots of a lot's sale that are not archived, by number.
func (s State) ofTheSale(l lot.Lot) []book.Entry {
	var out []book.Entry
	for _, e := range s.Entries {
		if e.Sale == l.Sale && e.SaleDate == l.SaleDate && (!e.Archived || s.Open != nil && e.ID == s.Open.ID) {
			out = append(out, e)
		}
	}
	slices.SortStableFunc(out, func(a, b book.Entry) int { return byNumber(a.Number, b.Number) })
	return out
}
