package desk

import (
	"context"
	"encoding/json"
	"fmt"
	"hash/fnv"
	"slices"
	"strings"

	"walkline/valuation"
	"walkline/valuation/money"
)

// Moved is the last change of the open lot's bid.
type Moved struct {
	Was, Is *money.Amount // nil: there was, or is, no bid
	By      string        // the step that did it, as undo names it
	Since   bool          // not a step did it: the bid is another than when the lot was last seen
}

// Seen is a bid as it was seen, with marks of what it came from.
type Seen struct {
	Bid       *money.Amount `json:"bid"` // nil: do not bid
	Plan      string        `json:"plan"`
	Revision  int64         `json:"revision"` // of the lot
	Catalogue string        `json:"catalogue"`
	Factors   string        `json:"factors"`
	Prices    string        `json:"prices"`            // the comparables that the lot draws
	Learned   string        `json:"learned,omitempty"` // of a first guess: results and surveys; empty: not said
}

// seenSetting is the beginning of the settings that keep the bids as they were last seen, by lot: no step of any history.
const seenSetting = "bid last seen of lot "

func seenOf(id int64) string { return fmt.Sprint(seenSetting, id) }

// noted is the state with what an action has changed of the open lot set down as what moves its bid next.
func noted(before, after State, words string) State {
	a, b := before.Open, after.Open
	if a == nil || b == nil || a.ID != b.ID || a.Revision == b.Revision {
		return after
	}
	if words == "" {
		words = strings.TrimSuffix(after.Notice, ".") // undo and redo have no words of their own
	}
	o := *b
	if o.by = slices.Clone(b.by); words != "" && !slices.Contains(o.by, words) {
		o.by = append(o.by, words)
	}
	return after.with(o)
}

// by says which steps moved a bid: the last, and how many others came with it.
func by(steps []string) string {
	switch n := len(steps); n {
	case 0:
		return ""
	case 1:
		return steps[0]
	default:
		return fmt.Sprintf("%s, and %d more", steps[n-1], n-1)
	}
}

// mark returns a few letters that differ where things do.
func mark(things ...any) string {
	h := fnv.New64a()
	for _, x := range things {
		b, err := json.Marshal(x)
		if err != nil {
			panic(err) // none of these has no JSON form
		}
		h.Write(b)
	}
	return fmt.Sprintf("%016x", h.Sum64())
}

// look reads how the bid of a lot was last seen. What can't be read was never seen: nothing hangs on it.
func (d *Desk) look(ctx context.Context, id int64) *Seen {
	var seen *Seen
	if found, err := d.Book.Setting(ctx, seenOf(id), &seen); err != nil || !found {
		return nil
	}
	return seen
}

// moved is the state with an answer that has come back held against the one before it, and kept as what was seen last.
func (d *Desk) moved(ctx context.Context, s State, a valuation.Answer) State {
	o := *s.Open
	now := &Seen{Plan: a.Plan, Bid: a.WalkAway, Revision: o.kept.Revision, Catalogue: mark(d.Edition, s.Own, s.edition.text),
		Factors: mark(o.Case.Factors), Prices: mark(o.Case.Resale.Rows)}
	if len(a.Needs) > 0 {
		now.Plan = ""
	}
	if know := d.Knowledge(); a.FirstGuess != nil {
		now.Learned = mark(fmt.Sprint(know.Hammer), fmt.Sprint(know.Seen))
	}
	before, since := o.bid, o.bid == nil
	if since {
		before = o.seen
	}
	if before != nil && !sameBid(before.Bid, now.Bid) {
		o.Moved = &Moved{Was: before.Bid, Is: now.Bid, By: by(o.by), Since: since}
		if since {
			o.Moved.By = before.since(*now)
		}
	}
	o.bid, o.by = now, nil
	s = s.with(o)
	if o.seen != nil && mark(o.seen) == mark(now) {
		return s
	}
	if err := d.Book.PutSetting(ctx, seenOf(o.ID), now); err != nil {
		return s.troubled("keep the bid as it was seen", err)
	}
	return s
}

func sameBid(a, b *money.Amount) bool {
	return a == nil && b == nil || a != nil && b != nil && *a == *b
}

// since says what differs from how the bid was seen before.
func (x Seen) since(now Seen) string {
	var why []string
	for _, part := range []struct {
		changed bool
		words   string
	}{{x.Revision != now.Revision, "the lot"}, {x.Catalogue != now.Catalogue, "catalogues"}, {x.Factors != now.Factors, "learned factors"},
		{x.Prices != now.Prices, "comparables"},
		{x.Learned != "" && now.Learned != "" && x.Learned != now.Learned, "results and surveys"}} {
		if part.changed {
			why = append(why, part.words)
		}
	}
	if len(why) == 0 {
		return "another version of the program"
	}
	return strings.Join(why, ", ")
}
