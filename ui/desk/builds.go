package desk

import (
	"context"
	"fmt"
	"slices"

	"walkline/valuation"
	"walkline/valuation/build"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// Bought is one lot that was won or lost, with what was foretold of it and what came.
type Bought struct {
	ID        int64
	State     lot.State
	Archived  bool
	Number    string
	Sale      string
	SaleDate  lot.Date
	VIN       string
	ModelYear int
	Make      string
	Model     string
	Trim      string
	Currency  string
	Build     build.Build
	Foretold  *learn.Prediction // what was foretold last; nil: nothing was
}

// Ours reports whether the lot was bought.
func (b Bought) Ours() bool { return b.State != lot.Lost }

// Diary keeps what came of the lots. Undo and redo of a build are those of its lot.
type Diary interface {
	Builds(ctx context.Context) ([]Bought, error)
	Build(ctx context.Context, id int64) (build.Build, error)
	SaveBuild(ctx context.Context, id int64, label string, b build.Build) error
	// AddPast takes past buys that are not there yet; see [Counts].
	AddPast(ctx context.Context, list []Past) (Counts, error)
}

// Past is one buy from before the program: its facts, and what came.
type Past struct {
	Case  valuation.Case
	Build build.Build
}

// OpenBuild is the build that is shown.
type OpenBuild struct {
	Bought
	Case     valuation.Case       // as the worksheet has it now
	Forecast *valuation.Foresight // what is left; nil: not worked out yet
	Problem  string               // why it can't be
	Plan     []valuation.PlannedLine
	Risks    []valuation.RiskFigure // that the survey brings up
	Revision int                    // grows with every change
	Fresh    bool                   // Forecast is of this revision
	Reach    Reach
}

// withBuild returns the state with its open build replaced.
func (s State) withBuild(o OpenBuild) State {
	s.Build = &o
	for i, b := range s.Bought {
		if b.ID == o.ID {
			s.Bought = slices.Clone(s.Bought)
			s.Bought[i] = o.Bought
		}
	}
	return s
}

// readBuilds reads the list of won and lost lots again; a build that is open stays so.
func (d *Desk) readBuilds(ctx context.Context, s State) State {
	list, err := d.Book.Builds(ctx)
	if err != nil {
		return s.troubled("read the builds", err)
	}
	s.Bought, s.Outlooks = list, nil
	if s.Build != nil {
		return d.OpenBuild(ctx, s, s.Build.ID)
	}
	return s
}

// OpenBuild shows one won lot.
func (d *Desk) OpenBuild(ctx context.Context, s State, id int64) State {
	i := slices.IndexFunc(s.Bought, func(b Bought) bool { return b.ID == id })
	if i < 0 {
		s.Build = nil
		return s
	}
	c, err := d.caseOf(ctx, id)
	if err != nil {
		return s.troubled("open the build", err)
	}
	o := OpenBuild{Bought: s.Bought[i], Case: c, Plan: valuation.Plan(c, d.Knowledge()), Risks: valuation.Risks(c, d.Knowledge()), Revision: 1}
	if s.Build != nil {
		o.Revision = s.Build.Revision + 1
	}
	if o.Build, err = d.Book.Build(ctx, id); err != nil {
		return s.troubled("open the build", err)
	}
	s.Notice, s.Trouble = "", ""
	return d.reachBuild(ctx, s.withBuild(o))
}

// CloseBuild goes back to the list of builds.
func (d *Desk) CloseBuild(ctx context.Context, s State) State {
	s.Build = nil
	return d.readBuilds(ctx, s)
}

// reachBuild looks up what undo and redo would do to the open build.
func (d *Desk) reachBuild(ctx context.Context, s State) State {
	r, err := d.Book.Reach(ctx, s.Build.ID)
	if err != nil {
		return s.troubled("read the history", err)
	}
	o := *s.Build
	o.Reach = r
	s = s.withBuild(o)
	if s.Open != nil && s.Open.ID == o.ID { // one history a lot, wherever it is shown
		open := *s.Open
		open.Reach = r
		s = s.with(open)
	}
	return s
}

// EditBuild changes a copy of the open build and saves it; label names the step for undo. What can't be is not saved, and said.
func (d *Desk) EditBuild(ctx context.Context, s State, label string, change func(*build.Build)) State {
	if s.Build == nil {
		return s
	}
	o := *s.Build
	o.Build = o.Build.Clone()
	change(&o.Build)
	if faults := o.Build.Check(); len(faults) > 0 {
		return s.troubled("keep that", fmt.Errorf("%s", faults[0]))
	}
	if err := d.Book.SaveBuild(ctx, o.ID, label, o.Build); err != nil {
		return s.troubled("save the change", err)
	}
	o.Revision, o.Fresh = o.Revision+1, false
	s.Notice, s.Trouble = "", ""
	return d.reachBuild(ctx, s.withBuild(o))
}

// SetHammer enters what the open build's lot was sold for, and the invoice that the sale's terms make of it, unless the lines
// of the invoice were changed by hand.
func (d *Desk) SetHammer(ctx context.Context, s State, hammer *money.Amount) State {
	if s.Build == nil {
		return s
	}
	c := s.Build.Case
	return d.EditBuild(ctx, s, "hammer price", func(b *build.Build) {
		untouched := len(b.Charges) == 0 || b.Hammer != nil && slices.Equal(b.Charges, charges(c, *b.Hammer))
		b.Hammer = hammer
		if untouched {
			b.Charges = nil
			if hammer != nil {
				b.Charges = charges(c, *hammer)
			}
		}
	})
}

// charges returns the lines of the invoice beside the hammer price that a case's terms make.
func charges(c valuation.Case, hammer money.Amount) []build.Charge {
	cur, known := money.Lookup(c.Currency)
	if !known || len(c.Buying.Check(cur)) > 0 {
		return nil
	}
	var out []build.Charge
	for _, l := range c.Buying.Total(hammer, cur).Lines[1:] {
		out = append(out, build.Charge(l))
	}
	return out
}

// SoldAt marks a lot as won or lost at a hammer price. A won lot's prediction is frozen before; its build begins with the
// day of the sale and the invoice of its terms.
func (d *Desk) SoldAt(ctx context.Context, s State, id int64, state lot.State, hammer money.Amount) State {
	s = d.SetState(ctx, s, id, state)
	if s.Trouble != "" {
		return s
	}
	said := s.Notice
	if s = d.note(ctx, s, id, state, &hammer); s.Trouble == "" {
		s = s.said(said)
	}
	return s
}

// note begins the build of a lot that was won, and keeps what a lot went for.
func (d *Desk) note(ctx context.Context, s State, id int64, state lot.State, hammer *money.Amount) State {
	c, err := d.caseOf(ctx, id)
	if err != nil {
		return s.troubled("begin the build", err)
	}
	b, err := d.Book.Build(ctx, id)
	if err != nil {
		return s.troubled("begin the build", err)
	}
	if hammer != nil {
		b.Hammer, b.Charges = hammer, nil
	}
	if state == lot.Won {
		if b.Outcome == "" {
			b.Outcome = build.Open
		}
		if b.Dates.Bought == "" {
			b.Dates.Bought = d.bought(c)
		}
		if b.Hammer != nil && len(b.Charges) == 0 {
			b.Charges = charges(c, *b.Hammer)
		}
	}
	if err := d.Book.SaveBuild(ctx, id, string(state), b); err != nil {
		return s.troubled("begin the build", err)
	}
	return d.refresh(ctx, s)
}

// bought returns the day on which a lot was bought: that of the sale, unless it is still to come or not known.
func (d *Desk) bought(c valuation.Case) lot.Date {
	today := d.Today()
	if days, ok := c.Lot.SaleDate.Days(today); ok && days >= 0 {
		return c.Lot.SaleDate
	}
	return today
}

// steppedBuild is the state after a step through the history of the open build's lot.
func (d *Desk) steppedBuild(ctx context.Context, s State, verb string, step func(context.Context, int64) (valuation.Case, string, bool, error)) State {
	id := s.Build.ID
	c, label, done, err := step(ctx, id)
	switch {
	case err != nil:
		return s.troubled("step through the history", err)
	case !done:
		return s.said("There is no such step in this lot's history.")
	}
	if c, err = d.tuned(ctx, c); err != nil {
		return s.troubled("read the learned factors", err)
	}
	if s.Open != nil && s.Open.ID == id {
		o := *s.Open
		o.Case, o.Faults, o.Revision, o.Fresh = c, c.Check(), o.Revision+1, false
		s = s.with(o)
	}
	if s = d.OpenBuild(ctx, s, id); s.Trouble != "" {
		return s
	}
	return s.said(verb + label + ".")
}
