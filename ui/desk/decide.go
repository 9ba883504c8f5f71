package desk

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"time"

	"walkline/store/book"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
)

// proposal returns the proposal of a key; none while the record is being worked out anew.
func (s State) proposal(key string) (learn.Proposal, bool) {
	if s.Record == nil || s.Record.Stale {
		return learn.Proposal{}, false
	}
	i := slices.IndexFunc(s.Record.Proposals, func(p learn.Proposal) bool { return p.Key == key })
	if i < 0 {
		return learn.Proposal{}, false
	}
	return s.Record.Proposals[i], true
}

// Accept puts one proposed factor in force for every lot that is still to be valued; frozen predictions keep theirs. One from few buys
// goes as far as its effects on the open lots were worked out for.
func Accept(key string) Action {
	return keeps(book.Accepted, func(ctx context.Context, d *Desk, s State, a Action) State {
		p, ok := s.proposal(key)
		if !ok {
			return s
		}
		share, known := s.share(p)
		if !known {
			return s.said("Select the factor first: what it would do to the open lots is worked out then.")
		}
		if share == 0 {
			return s.said(fmt.Sprintf("%s rests on %s and would move an open bid by two steps or more: take all of it knowingly, or wait.", p.Name,
				counted(p.Buys, "buy")))
		}
		return accept(key, share).do(ctx, d, s, a)
	})
}

// AcceptWhole puts all of a factor in force, however few buys it rests on: the user takes it knowingly.
func AcceptWhole(key string) Action { return accept(key, 1) }

func accept(key string, share float64) Action {
	return onProposal(book.Accepted, key, func(now learn.Factors, p learn.Proposal) (learn.Factors, string) {
		said := p.Name + " is in force."
		if share < 1 {
			said = fmt.Sprintf("%s is in force, %.0f %% of the way: it rests on %s.", p.Name, 100*share, counted(p.Buys, "buy"))
		}
		return learn.Toward(now, p, share), said
	})
}

// share returns how much of a proposal is taken, and whether that is known: of one from few buys it is once its effects are.
func (s State) share(p learn.Proposal) (float64, bool) {
	if p.Buys >= learn.EnoughBuys {
		return 1, true
	}
	effects, known := s.Record.Effects[p.Key]
	if len(effects) == 0 {
		return 1, known
	}
	return effects[0].Share, known
}

// Refuse leaves a factor as it is and remembers that its proposal was seen.
func Refuse(key string) Action {
	return onProposal(book.Refused, key, func(now learn.Factors, p learn.Proposal) (learn.Factors, string) {
		return now, p.Name + " stays as it is."
	})
}

// onProposal returns an action that decides on a proposal.
func onProposal(what, key string, decided func(learn.Factors, learn.Proposal) (after learn.Factors, said string)) Action {
	return keeps(what, func(ctx context.Context, d *Desk, s State, a Action) State {
		p, ok := s.proposal(key)
		if !ok {
			return s
		}
		after, said := decided(s.Record.Now, p)
		a.words = p.Name + " " + what
		return d.decide(ctx, s, a, book.Decision{What: what, Factor: key, Words: words(p), Before: s.Record.Now, After: after}, said)
	})
}

// Restore brings all factors back to what they were before a decision.
func Restore(id int64) Action {
	return keeps("restore the factors", func(ctx context.Context, d *Desk, s State, a Action) State {
		if s.Record == nil || s.Record.Stale {
			return s
		}
		i := slices.IndexFunc(s.Record.History, func(x book.Decision) bool { return x.ID == id })
		if i < 0 {
			return s
		}
		back := s.Record.History[i]
		said := fmt.Sprintf("All factors as they were before %s was %s on %s.", s.factorName(back.Factor), back.What, DayShown(Day(back.At)))
		return d.decide(ctx, s, a, book.Decision{What: book.Restored, Factor: back.Factor, Words: said, Before: s.Record.Now, After: back.Before},
			"The factors are as they were before that.")
	})
}

// Day returns the day of a time as the user's calendar has it.
func Day(at time.Time) lot.Date { return lot.Date(at.Local().Format(time.DateOnly)) }

// factorName returns a factor in words, or its key where no proposal names it any more.
func (s State) factorName(key string) string {
	if p, ok := s.proposal(key); ok {
		return p.Name
	}
	return key
}

// decide keeps a decision, and gives the open lot the factors that are in force then. The track record is worked out anew.
func (d *Desk) decide(ctx context.Context, s State, a Action, decision book.Decision, said string) State {
	step := a.step(s)
	step.Decision = &decision
	s, _ = d.keep(ctx, s, "keep the decision", step)
	if s.Trouble != "" {
		return s
	}
	return ifKept(d.stale(ctx, s), said)
}

// words says what was decided on: old, new and the buys behind it.
func words(p learn.Proposal) string {
	say := func(x float64) string {
		if p.Unit == learn.ChanceUnit {
			return fmt.Sprintf("%.0f %%", 100*x)
		}
		return fmt.Sprintf("%.2f", x)
	}
	buys := []string{}
	for _, e := range p.Evidence {
		buys = append(buys, e.Name)
	}
	text := fmt.Sprintf("%s: %s to %s", p.Name, say(p.Now.At), say(p.Proposed.At))
	if len(buys) > 0 {
		text += ", from " + strings.Join(buys, "; ")
	}
	return text + "."
}

// Seen returns what was decided last on a proposal as it stands now; empty: nothing.
func (r TrackRecord) Seen(p learn.Proposal) string {
	for i := len(r.History) - 1; i >= 0; i-- {
		if x := r.History[i]; x.Factor == p.Key {
			if x.What == book.Refused && x.Words == words(p) {
				return "refused on " + DayShown(Day(x.At))
			}
			return ""
		}
	}
	return ""
}

// Revalue values every lot that is still to be bid for with the factors in force, and keeps the answers for the Board. It
// touches no state and may run on any goroutine. Errors: the work was cancelled, or the book can't be read or written.
func (d *Desk) Revalue(ctx context.Context, factors learn.Factors) error {
	entries, err := d.Book.Entries(ctx)
	if err != nil {
		return err
	}
	for _, e := range entries {
		if err := ctx.Err(); err != nil {
			return err
		}
		if !tobid(e) || e.Answer == nil {
			continue
		}
		if err := d.revalue(ctx, factors, e.ID); err != nil {
			return err
		}
	}
	return nil
}

// revalue values one lot as it stands and keeps the answer for the Board; one that can't be valued has no answer to keep.
func (d *Desk) revalue(ctx context.Context, factors learn.Factors, id int64) error {
	l, err := d.Book.Lot(ctx, id)
	if err != nil {
		return err
	}
	c, _, err := d.withShelf(ctx, l, factors)
	if err != nil {
		return err
	}
	v, err := d.ValueLot(id, c)
	if err != nil {
		return nil
	}
	return d.Book.NoteAnswer(ctx, id, l.Revision, v.Answer)
}
