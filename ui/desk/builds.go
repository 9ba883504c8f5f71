package desk

import (
	"context"
	"fmt"
	"slices"

	"walkline/store/book"
	"walkline/valuation"
	"walkline/valuation/build"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// Past is one buy from before the program: its facts, and what came.
type Past struct {
	Case  valuation.Case
	Build build.Build
}

// OpenBuild is the build that is shown.
type OpenBuild struct {
	book.Bought
	Case     valuation.Case       // as the worksheet has it now
	Forecast *valuation.Foresight // what is left; nil: not worked out yet
	Problem  string               // why it can't be
	Plan     []valuation.PlannedLine
	Risks    []valuation.RiskFigure // that the survey brings up
	Photos   []lot.Photo
	Today    lot.Date // as it was opened or changed last
	Revision int      // grows with every change
	Fresh    bool     // Forecast is of this revision
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

// readBuilds reads the list of won and lost lots again; a build that is open stays so, unless it is there no more.
func (d *Desk) readBuilds(ctx context.Context, s State) State {
	list, err := d.Book.Builds(ctx)
	if err != nil {
		return s.troubled("read the builds", err)
	}
	d.learnsHammer(list)
	s.Bought, s.Outlooks = list, nil
	if s.Build != nil {
		return d.openBuild(ctx, s, s.Build.ID)
	}
	return s
}

// ShowBuild shows one won lot.
func ShowBuild(id int64) Action {
	return shows(func(ctx context.Context, d *Desk, s State) State { return d.openBuild(ctx, s, id) })
}

// GoToBuild shows the build of a lot that was won or lost, from wherever the user is.
func GoToBuild(id int64) Action {
	return shows(func(ctx context.Context, d *Desk, s State) State {
		s.Place = Builds
		if s = d.readBuilds(ctx, s); s.Trouble != "" {
			return s
		}
		return d.openBuild(ctx, s, id)
	})
}

func (d *Desk) openBuild(ctx context.Context, s State, id int64) State {
	i := slices.IndexFunc(s.Bought, func(b book.Bought) bool { return b.ID == id })
	if i < 0 {
		s.Build = nil
		return s
	}
	l, err := d.Book.Lot(ctx, id)
	if err != nil {
		return s.troubled("open the build", err)
	}
	c, _, err := d.withShelf(ctx, l, s.Factors)
	if err != nil {
		return s.troubled("open the build", err)
	}
	o := OpenBuild{Bought: s.Bought[i], Case: c, Revision: 1, Today: d.Today()}
	o.Plan, o.Risks = valuation.Plan(o.Case, d.Knowledge()), valuation.Risks(o.Case, d.Knowledge())
	if s.Build != nil {
		o.Revision = s.Build.Revision + 1
	}
	o.Build, o.Photos = l.Build, l.Photos
	return s.withBuild(o)
}

// rebuilt reads the open build again; one whose lot is gone is closed.
func (d *Desk) rebuilt(ctx context.Context, s State) State {
	l, err := d.Book.Lot(ctx, s.Build.ID)
	if err != nil {
		s.Build = nil
		return s
	}
	o := *s.Build
	if o.Case, _, err = d.withShelf(ctx, l, s.Factors); err != nil {
		return s.troubled("read the build", err)
	}
	o.Plan, o.Risks = valuation.Plan(o.Case, d.Knowledge()), valuation.Risks(o.Case, d.Knowledge())
	o.Build, o.Photos, o.State, o.Revision, o.Fresh = l.Build, l.Photos, l.State, o.Revision+1, false
	o.Today = d.Today()
	return s.withBuild(o)
}

// CloseBuild goes back to the list of builds.
func CloseBuild() Action {
	return shows(func(ctx context.Context, d *Desk, s State) State {
		s.Build = nil
		return d.readBuilds(ctx, s)
	})
}

// EditBuild changes the open build. What can't be is not saved, and said.
func EditBuild(words string, change func(*build.Build)) Action {
	return editBuild(words, func(_ valuation.Case, b build.Build) build.Build {
		change(&b)
		return b
	})
}

// SetHammer enters what the open build's lot was sold for, and the invoice that the sale's terms make of it, unless the lines
// of the invoice were changed by hand.
func SetHammer(hammer *money.Amount) Action {
	return editBuild("hammer price", func(c valuation.Case, b build.Build) build.Build { return priced(c, b, hammer) })
}

func editBuild(words string, change func(valuation.Case, build.Build) build.Build) Action {
	return keeps(words, func(ctx context.Context, d *Desk, s State, a Action) State {
		if s.Build == nil {
			return s
		}
		before := s.Build.Build
		after := s.Build.closing(before, change(s.Build.Case, before.Clone()))
		if faults := after.Check(); len(faults) > 0 {
			return s.troubled("keep that", fmt.Errorf("%s", faults[0]))
		}
		step := a.step(s)
		step.Lots = []book.Change{{Before: book.Lot{ID: s.Build.ID, Build: before}, After: book.Lot{ID: s.Build.ID, Build: after}}}
		s, _ = d.keep(ctx, s, "save the change", step)
		return s
	})
}

// priced returns a build with what its lot went for, and the invoice of its terms unless that was changed by hand.
func priced(c valuation.Case, b build.Build, hammer *money.Amount) build.Build {
	untouched := len(b.Charges) == 0 || b.Hammer != nil && slices.Equal(b.Charges, charges(c, *b.Hammer))
	if b.Hammer = hammer; !untouched {
		return b
	}
	if b.Charges = nil; hammer != nil {
		b.Charges = charges(c, *hammer)
	}
	return b
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
