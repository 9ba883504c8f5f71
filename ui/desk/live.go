package desk

import (
	"context"
	"fmt"
	"strconv"
	"strings"

	"walkline/store/book"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// AskOdds shows the odds at a bid; 0 is the bid of the answer. Nothing is bid by that.
func AskOdds(bid money.Amount) Action {
	return onOpen(func(o *Open) { o.Asked = max(bid, 0) })
}

// Call shows where the bidding for the open lot stands. Nothing is bid by that.
func Call(bid money.Amount) Action {
	return onOpen(func(o *Open) { o.Current = max(bid, 0) })
}

// onOpen returns an action that changes only what is shown of the open lot.
func onOpen(change func(*Open)) Action {
	return shows(func(_ context.Context, _ *Desk, s State) State {
		if s.Open == nil {
			return s
		}
		o := *s.Open
		change(&o)
		return s.with(o)
	})
}

// RecordResult keeps that the open lot was won or lost at the current bid; a lost one may have none, and one that is passed or withdrawn
// needs none. A won lot's prediction is frozen and its build begins, all in one step of the sale, which undo on the Live page takes back.
func RecordResult(state lot.State) Action {
	return keeps(string(state), func(ctx context.Context, d *Desk, s State, a Action) State {
		switch {
		case s.Open == nil:
			return s
		case s.Open.Current == 0 && state == lot.Won:
			return s.said("At what price? Type it and press Enter, or step up to it. Then record it.")
		}
		if s.Open.Current == 0 || state == lot.Passed {
			return d.record(ctx, s, a, result{s.Open.ID, state, nil})
		}
		return d.record(ctx, s, a, result{s.Open.ID, state, &s.Open.Current})
	}).ofSubject(book.Sale)
}

// TellResult keeps that a lot was won or lost at a hammer price, from the list of lots. What it went for teaches what others may go for.
func TellResult(id int64, state lot.State, hammer money.Amount) Action {
	return keeps(string(state), func(ctx context.Context, d *Desk, s State, a Action) State {
		return d.record(ctx, s, a, result{id, state, &hammer})
	})
}

// result is what became of a lot, and at what price.
type result struct {
	lot    int64
	state  lot.State
	hammer *money.Amount // nil: not known
}

// record marks a lot with what it went for, in one step.
func (d *Desk) record(ctx context.Context, s State, a Action, r result) State {
	l, err := d.Book.Lot(ctx, r.lot)
	if err != nil {
		return s.troubled("record what became of the lot", err)
	}
	a.words = fmt.Sprintf("%s %s", named(l.Case), r.state)
	if r.hammer != nil {
		a.words += " at " + shown(l.Case.Currency, *r.hammer)
	}
	c := book.Change{Before: l, After: l.Clone()}
	said, err := d.mark(ctx, s, &c, r.state, r.hammer)
	if err != nil {
		return s.troubled("read the shelf", err)
	}
	if r.state == lot.Lost && r.hammer == nil {
		said += " If you hear its price, enter it under Lot > Went for: prices teach the odds."
	}
	step := a.step(s)
	step.Lots = []book.Change{c}
	return d.changed(ctx, s, step, "Recorded: "+a.words+". Ctrl+Z takes it back."+said)
}

// shown writes an amount with its currency.
func shown(currency string, a money.Amount) string {
	cur, known := money.Lookup(currency)
	if !known {
		return strconv.FormatInt(int64(a), 10)
	}
	return cur.Show(a)
}

// showLive opens a lot on the Live page.
func (d *Desk) showLive(ctx context.Context, s State, id int64) State {
	if s = d.open(ctx, s, id); s.Trouble == "" {
		s.Place = Live
		return d.dayOfOpen(ctx, s)
	}
	return s
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
