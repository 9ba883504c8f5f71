package desk

import (
	"context"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"walkline/valuation"
	"walkline/valuation/build"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// Recorded is what became of a lot at its sale, as it was recorded last, so that it can be taken back.
type Recorded struct {
	ID     int64
	Number string
	State  lot.State
	Hammer money.Amount
	Words  string // "lot 27 lost at USD 1,400"
	before lot.State
	build  build.Build
	undone bool
}

// Ask shows the odds at a bid. Nothing is bid by that.
func (d *Desk) Ask(_ context.Context, s State, bid money.Amount) State {
	if s.Open == nil {
		return s
	}
	o := *s.Open
	o.Asked = max(bid, 0)
	s.Notice, s.Trouble = "", ""
	return s.with(o)
}

// Call shows where the bidding for the open lot stands. Nothing is bid by that.
func (d *Desk) Call(_ context.Context, s State, bid money.Amount) State {
	if s.Open == nil {
		return s
	}
	o := *s.Open
	o.Current = max(bid, 0)
	s.Notice, s.Trouble = "", ""
	return s.with(o)
}

// Record keeps that the open lot was won or lost at the current bid. A won lot's prediction is frozen, its build begins, and the
// price is kept; see [Desk.SoldAt]. Undo on the Live page takes it back.
func (d *Desk) Record(ctx context.Context, s State, state lot.State) State {
	switch {
	case s.Open == nil:
		return s
	case s.Open.Current == 0:
		return s.said("At what price? Type it and press Enter, or step up to it. Then record it.")
	}
	o := *s.Open
	before, err := d.Book.Build(ctx, o.ID)
	if err != nil {
		return s.troubled("record what became of the lot", err)
	}
	next := d.SoldAt(ctx, s, o.ID, state, o.Current)
	if next.Trouble != "" {
		return next
	}
	r := Recorded{ID: o.ID, Number: o.Case.Lot.Number, State: state, Hammer: o.Current, before: o.State, build: before}
	r.Words = fmt.Sprintf("%s %s at %s", named(o.Case), state, shown(o.Case.Currency, o.Current))
	said := "Recorded: " + r.Words + ". Ctrl+Z takes it back."
	if frozen := strings.TrimPrefix(next.Notice, fmt.Sprintf("Marked: %s.", state)); frozen != "" {
		said += frozen
	}
	next.Recorded = &r
	next.Place = Live
	return d.wentFor(ctx, d.reach(ctx, next.said(said)))
}

// named names a lot in a sentence.
func named(c valuation.Case) string {
	if c.Lot.Number == "" {
		return "the lot"
	}
	return "lot " + c.Lot.Number
}

// shown writes an amount with its currency.
func shown(currency string, a money.Amount) string {
	cur, known := money.Lookup(currency)
	if !known {
		return strconv.FormatInt(int64(a), 10)
	}
	return cur.Show(a)
}

// unrecord takes back what was recorded last, and shows that lot.
func (d *Desk) unrecord(ctx context.Context, s State) State {
	if s.Recorded == nil || s.Recorded.undone {
		return s.said("Nothing that was recorded here is left to take back.")
	}
	r := *s.Recorded
	err := d.Book.SaveBuild(ctx, r.ID, "take back: "+string(r.State), r.build)
	if err == nil && r.before != r.State {
		err = d.Book.SetState(ctx, r.ID, r.before)
	}
	if err != nil {
		return s.troubled("take it back", err)
	}
	r.undone = true
	s.Recorded = &r
	return d.showLive(ctx, d.refresh(ctx, s), r.ID, r.Hammer).said("Taken back: " + r.Words + ".")
}

// rerecord records again what was taken back last.
func (d *Desk) rerecord(ctx context.Context, s State) State {
	if s.Recorded == nil || !s.Recorded.undone {
		return s.said("Nothing that was taken back here is left to record again.")
	}
	r := *s.Recorded
	return d.Record(ctx, d.showLive(ctx, s, r.ID, r.Hammer), r.State)
}

// showLive opens a lot on the Live page with a current bid; the lot that is open already keeps its valuation.
func (d *Desk) showLive(ctx context.Context, s State, id int64, current money.Amount) State {
	if s.Open == nil || s.Open.ID != id {
		if s = d.OpenLot(ctx, s, id); s.Trouble != "" {
			return s
		}
	}
	o := *s.Open
	o.Current = current
	for _, e := range s.Entries {
		if e.ID == id {
			o.State = e.State
		}
	}
	s.Place = Live
	return d.wentFor(ctx, d.reach(ctx, s.with(o)))
}

// wentFor reads what the open lot went for.
func (d *Desk) wentFor(ctx context.Context, s State) State {
	b, err := d.Book.Build(ctx, s.Open.ID)
	if err != nil {
		return s.troubled("read what the lot went for", err)
	}
	o := *s.Open
	o.Went = b.Hammer
	return s.with(o)
}

// reachLive returns what undo and redo would do on the Live page.
func (s State) reachLive() Reach {
	switch {
	case s.Recorded == nil:
		return Reach{}
	case s.Recorded.undone:
		return Reach{Redo: s.Recorded.Words}
	}
	return Reach{Undo: s.Recorded.Words}
}

// NextLot opens the lot of the same sale so many places on, in the order of their numbers, on the Live page.
func (d *Desk) NextLot(ctx context.Context, s State, by int) State {
	if s.Open == nil {
		return s
	}
	lots := s.ofTheSale(s.Open.Case.Lot)
	at := slices.IndexFunc(lots, func(e Entry) bool { return e.ID == s.Open.ID }) + by
	switch {
	case at < 0:
		return s.said("That was the first lot of this sale.")
	case at >= len(lots):
		return s.said("That was the last lot of this sale.")
	}
	return d.showLive(ctx, s, lots[at].ID, 0)
}

// ofTheSale returns the lots of a lot's sale that are not archived, by number.
func (s State) ofTheSale(l lot.Lot) []Entry {
	var out []Entry
	for _, e := range s.Entries {
		if e.Sale == l.Sale && e.SaleDate == l.SaleDate && (!e.Archived || s.Open != nil && e.ID == s.Open.ID) {
			out = append(out, e)
		}
	}
	slices.SortStableFunc(out, func(a, b Entry) int { return byNumber(a.Number, b.Number) })
	return out
}

// byNumber orders lot numbers as they are called: by the figure they begin with, then as words.
func byNumber(a, b string) int {
	x, y := figure(a), figure(b)
	if x != y {
		return x - y
	}
	return strings.Compare(a, b)
}

// figure returns the number that words begin with, a large one where they begin with none.
func figure(words string) int {
	const none = 1 << 30
	digits := strings.IndexFunc(words+" ", func(r rune) bool { return r < '0' || r > '9' })
	n, err := strconv.Atoi(words[:digits])
	if err != nil {
		return none
	}
	return n
}
