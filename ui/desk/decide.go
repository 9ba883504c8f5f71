package desk

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"walkline/valuation/learn"
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

// Accept puts one proposed factor in force for every lot that is still to be valued; frozen predictions keep theirs.
func (d *Desk) Accept(ctx context.Context, s State, key string) State {
	p, ok := s.proposal(key)
	if !ok {
		return s
	}
	step := Decision{What: Accepted, Factor: key, Words: words(p), Before: s.Record.Now, After: learn.Apply(s.Record.Now, p)}
	return d.decide(ctx, s, step, p.Name+" is in force.")
}

// Refuse leaves a factor as it is and remembers that its proposal was seen.
func (d *Desk) Refuse(ctx context.Context, s State, key string) State {
	p, ok := s.proposal(key)
	if !ok {
		return s
	}
	step := Decision{What: Refused, Factor: key, Words: words(p), Before: s.Record.Now, After: s.Record.Now}
	return d.decide(ctx, s, step, p.Name+" stays as it is.")
}

// Restore brings all factors back to what they were before a decision.
func (d *Desk) Restore(ctx context.Context, s State, id int64) State {
	if s.Record == nil || s.Record.Stale {
		return s
	}
	i := slices.IndexFunc(s.Record.History, func(x Decision) bool { return x.ID == id })
	if i < 0 {
		return s
	}
	back := s.Record.History[i]
	step := Decision{What: Restored, Factor: back.Factor, Words: fmt.Sprintf("All factors as they were before %s was %s on %s.", s.factorName(back.Factor), back.What, back.On),
		Before: s.Record.Now, After: back.Before}
	return d.decide(ctx, s, step, "The factors are as they were before that.")
}

// factorName returns a factor in words, or its key where no proposal names it any more.
func (s State) factorName(key string) string {
	if p, ok := s.proposal(key); ok {
		return p.Name
	}
	return key
}

// decide keeps a decision, and gives the open lot the factors that are in force then. The track record is worked out anew.
func (d *Desk) decide(ctx context.Context, s State, step Decision, said string) State {
	if err := d.Book.Decide(ctx, step); err != nil {
		return s.troubled("keep the decision", err)
	}
	if s.Open != nil {
		o := *s.Open
		o.Case, o.Revision, o.Fresh = o.Case.With(step.After), o.Revision+1, false
		s = s.with(o)
	}
	return s.stale().said(said)
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
			if x.What == Refused && x.Words == words(p) {
				return fmt.Sprintf("refused on %s", x.On)
			}
			return ""
		}
	}
	return ""
}

// Revalue values every lot that is still to be bid for with the factors in force, and keeps the answers for the Board. It
// touches no state and may run on any goroutine. Errors: the work was cancelled, or the book can't be read or written.
func (d *Desk) Revalue(ctx context.Context) error {
	entries, err := d.Book.Entries(ctx)
	if err != nil {
		return err
	}
	for _, e := range entries {
		if err := ctx.Err(); err != nil {
			return err
		}
		if !e.tobid() || e.Answer == nil {
			continue
		}
		c, err := d.caseOf(ctx, e.ID)
		if err != nil {
			return err
		}
		v, err := d.Value(c)
		if err != nil {
			continue // as it stands it has no answer to keep
		}
		if err := d.Book.NoteAnswer(ctx, e.ID, v.Answer); err != nil {
			return err
		}
	}
	return nil
}
