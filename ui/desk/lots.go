package desk

import (
	"context"
	"fmt"
	"slices"

	"walkline/store/book"
	"walkline/valuation"
	"walkline/valuation/build"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// NewLot adds a lot with the shop's terms and opens it.
func NewLot() Action {
	return keeps("new lot", func(ctx context.Context, d *Desk, s State, a Action) State {
		s, done := d.add(ctx, s, a, []valuation.Case{d.blank(s)})
		if s.Trouble != "" {
			return s
		}
		if s = d.open(ctx, s, done.Lots[0]); s.Trouble != "" {
			return s
		}
		s.Place = Listing
		return s.said("A new lot. Paste its listing, or type what it says.")
	}).ofSubject(book.Board)
}

// add keeps new lots as a step.
func (d *Desk) add(ctx context.Context, s State, a Action, cases []valuation.Case) (State, book.Done) {
	step := a.step(s)
	for _, c := range cases {
		step.New = append(step.New, book.New{Case: c})
	}
	s, done := d.keep(ctx, s, a.words, step)
	if s.Trouble != "" {
		return s, done
	}
	return d.refresh(ctx, s), done
}

// LoadDemo adds the demo sale.
func LoadDemo() Action {
	bar := always("Valuing the demo sale")
	return keepsAfter("add the demo sale", bar, func(ctx context.Context, d *Desk, s State, _ Action) (deed, error) {
		cases, far := d.Demo(), watch(ctx)
		answers := make([]*valuation.Answer, len(cases))
		for i, c := range cases {
			if far(float64(i) / float64(len(cases))) {
				return nil, ctx.Err()
			}
			if a, err := d.answer(0, c.With(s.Factors)); err == nil {
				answers[i] = &a
			}
		}
		return func(ctx context.Context, d *Desk, s State, a Action) State {
			return d.addValued(ctx, s, a, cases, answers)
		}, nil
	}).ofSubject(book.Board)
}

// addValued adds the demo's lots with their answers, nil where one can't be valued.
func (d *Desk) addValued(ctx context.Context, s State, a Action, cases []valuation.Case, answers []*valuation.Answer) State {
	s, done := d.add(ctx, s, a, cases)
	if s.Trouble != "" {
		return s
	}
	for i, answer := range answers {
		if answer == nil {
			continue
		}
		if err := d.Book.NoteAnswer(ctx, book.Answered{Lot: done.Lots[i], Revision: done.Revisions[i]}, *answer); err != nil {
			return s.troubled("keep the demo's answers", err)
		}
	}
	return d.refresh(ctx, s.said("The demo sale at Harrow Flats: three invented lots."))
}

// DuplicateLots copies the cases of lots as new ones, in one step.
func DuplicateLots(ids ...int64) Action {
	return keeps("duplicate", func(ctx context.Context, d *Desk, s State, a Action) State {
		var cases []valuation.Case
		for _, id := range ids {
			l, err := d.Book.Lot(ctx, id)
			if err != nil {
				return s.troubled("duplicate the lot", err)
			}
			cases = append(cases, l.Case)
		}
		said := "Copied. The copy has its own history."
		if a.words = namedStep(a.words, fmt.Sprintf("%d lots", len(ids))); len(cases) == 1 {
			a.words = namedStep("duplicate", named(cases[0]))
		} else {
			said = fmt.Sprintf("Copied %d lots. Each copy has its own history.", len(cases))
		}
		s, _ = d.add(ctx, s, a, cases)
		return ifKept(s, said)
	}).ofSubject(book.Board)
}

// MarkLots marks lots, in one step. One marked as bid or won has its prediction frozen, so that what came can be held against it; one
// that cannot be valued is marked all the same, and the notice says that nothing was forecast. A won lot's build begins.
func MarkLots(state lot.State, ids ...int64) Action {
	said := fmt.Sprintf("Marked: %s.", state)
	if len(ids) > 1 {
		said = fmt.Sprintf("Marked %d lots: %s.", len(ids), state)
	}
	if state == lot.Lost {
		said += " What it went for, you tell under Lot > Went for."
	}
	var bar func(State) string
	if len(ids) > 1 && (state == lot.Bid || state == lot.Won) {
		bar = always(fmt.Sprintf("Valuing %d lots", len(ids)))
	}
	a := onLotsWith(namedMany{"mark as " + string(state), said, ids, bar},
		func(ctx context.Context, d *Desk, s State, c *book.Change) (string, error) {
			return d.mark(ctx, s, c, state, nil)
		})
	a.of = func(s State) book.Subject {
		if bought := state == lot.Won || state == lot.Lost; !bought && s.Place == Builds && s.Build != nil && slices.Contains(ids, s.Build.ID) {
			return book.Buys // its page goes with it
		}
		return s.Subject()
	}
	return a
}

// mark gives a lot another state, and what it went for where that is known. It returns what is to be said of it.
func (d *Desk) mark(ctx context.Context, s State, c *book.Change, state lot.State, hammer *money.Amount) (said string, err error) {
	l := c.Before
	c.After.State = state
	if (state == lot.Bid || state == lot.Won) && l.State != lot.Won { // of a won lot what was forecast stands: work on it may have begun
		p, err := d.predict(ctx, l, s.Factors)
		if err != nil {
			said += noneFrozen(l.State) + err.Error()
		}
		c.Freeze = p
	}
	if state == lot.Lost && hammer != nil && l.State != lot.Won && l.State != lot.Bid { // what it went for teaches beside a forecast alone
		if c.Freeze, err = d.foretoldByList(ctx, l, s.Factors); err != nil {
			return "", err
		}
	}
	if c.After.Build = d.begun(l, state, hammer); state == lot.Won {
		said += " It is among the Builds now."
	}
	return said, nil
}

// noneFrozen says that a lot's mark froze no prediction; one of an earlier mark still stands.
func noneFrozen(was lot.State) string {
	if was == lot.Bid {
		return " No new prediction was frozen: "
	}
	return " No prediction was frozen: "
}

// predict values a lot as it stands, for good, with the comparables that it draws.
func (d *Desk) predict(ctx context.Context, l book.Lot, factors learn.Factors) (*book.Prediction, error) {
	c, _, err := d.withShelf(ctx, l, factors)
	if err != nil {
		return nil, err
	}
	answer, err := d.answer(l.ID, c)
	if err != nil {
		return nil, err
	}
	figures, err := d.memory().Foretell(c, d.Knowledge(), nil)
	if err != nil {
		return nil, err
	}
	return &book.Prediction{Case: c, Answer: answer, Figures: figures}, nil
}

// begun returns what came of a lot once it is won or lost: what it went for, and of a won one its day and invoice. Lines of an
// invoice that were changed by hand stay.
func (d *Desk) begun(l book.Lot, state lot.State, hammer *money.Amount) build.Build {
	b := l.Build.Clone()
	if state != lot.Won {
		if hammer != nil { // whoever pays it, no invoice comes
			b = priced(l.Case, b, nil)
			b.Hammer = hammer
		}
		return b
	}
	if hammer != nil {
		b = priced(l.Case, b, hammer)
	}
	if b.Outcome == "" {
		b.Outcome = build.Open
	}
	if b.Dates.Bought == "" {
		b.Dates.Bought = d.bought(l.Case)
	}
	if b.Hammer != nil && len(b.Charges) == 0 {
		b.Charges = charges(l.Case, *b.Hammer)
	}
	return b
}

// bought returns the day on which a lot was bought: that of the sale, today where it is not known. A lot may be marked before its sale's
// day: an offer was taken, or the day was typed wrong and is to be put right.
func (d *Desk) bought(c valuation.Case) lot.Date {
	if c.Lot.SaleDate.Known() {
		return c.Lot.SaleDate
	}
	return d.Today()
}

// namedStep puts what is meant behind the verb of what is done with it.
func namedStep(words, meant string) string {
	verb, rest := words, ""
	for _, v := range []string{"mark", "take"} {
		if len(words) > len(v) && words[:len(v)+1] == v+" " {
			verb, rest = v, words[len(v):]
		}
	}
	return verb + " " + meant + rest
}

// named names a lot in a sentence.
func named(c valuation.Case) string {
	if c.Lot.Number == "" {
		return "the lot"
	}
	return "lot " + c.Lot.Number
}

// ifKept is the state with what is said once it was kept.
func ifKept(s State, said string) State {
	if s.Trouble != "" {
		return s
	}
	return s.said(said)
}
