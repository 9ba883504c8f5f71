package desk

import (
	"context"
	"encoding/json"
	"fmt"
	"slices"

	"walkline/store/book"
	"walkline/valuation"
	"walkline/valuation/hammer"
	"walkline/valuation/learn"
	"walkline/valuation/patterns"
)

// ownSetting is the setting that keeps a shop's own entries of the catalogues.
const ownSetting = "catalogue"

// Knowledge returns what lots are valued with: the starter's catalogues with the shop's own entries over them, and
// what its lots went for and turned out to be, once the book was read for that. It may be called on any goroutine.
func (d *Desk) Knowledge() valuation.Knowledge {
	know := d.Know
	if k := d.current.Load(); k != nil {
		know = *k
	}
	if went := d.went.Load(); went != nil {
		know.Hammer = &went.model
	}
	if seen := d.seen.Load(); seen != nil {
		know.Seen = *seen
	}
	return know
}

// learnsHammer takes what the shop's own lots went for into what lots are valued with.
func (d *Desk) learnsHammer(list []book.Bought) {
	r := results{from: list}
	r.model, _ = hammer.Starter().Learn(ResultsOf(list))
	d.went.Store(&r)
}

// results are what the shop's own lots went for, and what was learned of them.
type results struct {
	from  []book.Bought
	model hammer.Model
}

// beside returns what is known beside one lot: what that lot went for teaches nothing of its own odds.
func (d *Desk) beside(id int64) valuation.Knowledge {
	know, went := d.Knowledge(), d.went.Load()
	if went == nil || !slices.ContainsFunc(went.from, func(b book.Bought) bool { return b.ID == id && teachesHammer(b) }) {
		return know
	}
	others := slices.DeleteFunc(slices.Clone(went.from), func(b book.Bought) bool { return b.ID == id })
	model, _ := hammer.Starter().Learn(ResultsOf(others))
	know.Hammer = &model
	return know
}

// restsOn returns a mark of what a bid rests on beside its lot: catalogues, factors, results, surveys and comparables, as they were
// last read. Errors: the shelf can't be read.
func (d *Desk) restsOn(ctx context.Context, f learn.Factors) (string, error) {
	shelf, err := d.Book.Shelf(ctx)
	catalogue := d.Edition
	if laid := d.laid.Load(); laid != nil {
		catalogue = *laid
	}
	know := d.Knowledge()
	return mark(valuation.Engine, catalogue, f, fmt.Sprint(know.Hammer), fmt.Sprint(know.Seen), shelf), err
}

// learnsPatterns takes what the shop's own surveys found into what lots are valued with that nobody has looked at. Errors: the book can't
// be read.
func (d *Desk) learnsPatterns(ctx context.Context) error {
	all, err := d.Book.Surveys(ctx)
	if err != nil {
		return err
	}
	seen := patterns.Count(all)
	d.seen.Store(&seen)
	return nil
}

// noOwn returns the entries of a shop that changed none.
func (d *Desk) noOwn() valuation.Own {
	return valuation.Own{Format: valuation.OwnFormat, Currency: d.Know.Jobs.Currency}
}

// loadOwn reads the shop's own entries. What can't be read is said, and the starter's catalogues are used.
func (d *Desk) loadOwn(ctx context.Context, s State) State {
	var text json.RawMessage
	found, err := d.Book.Setting(ctx, ownSetting, &text)
	if err != nil {
		return d.uses(s, d.noOwn()).troubled("read your catalogue entries", err)
	}
	if !found {
		return d.uses(s, d.noOwn())
	}
	var own valuation.Own
	if faults := d.Documents.Decode(text, &own); len(faults) > 0 {
		return d.uses(s, d.noOwn()).troubled("read your catalogue entries, so the starter's are used", faults[0])
	}
	if own.Format != valuation.OwnFormat {
		return d.uses(s, d.noOwn()).troubled("read your catalogue entries, so the starter's are used",
			fmt.Errorf("they have the format %q, this version reads %s", own.Format, valuation.OwnFormat))
	}
	return d.uses(s, own)
}

// uses is the state with a shop's own entries in force, and the jurisdictions that the user added. An open lot is to be valued again.
func (d *Desk) uses(s State, own valuation.Own) State {
	base := &d.Know
	if s.edition.base != nil {
		base = s.edition.base
	}
	know := base.With(own)
	know.Prior.Markets = append(slices.Clip(know.Prior.Markets), s.Market.Markets...)
	know.Packs = append(slices.Clip(know.Packs), s.Packs...)
	d.current.Store(&know)
	laid := mark(d.Edition, own, s.edition.text, s.Market.Markets, s.Packs)
	d.laid.Store(&laid)
	s.Own, s.Starter, s.Know = own, base, &know
	s.OwnFaults = nil
	for _, f := range base.CheckOwn(own) {
		s.OwnFaults = append(s.OwnFaults, f.Fault)
	}
	if s.Open != nil {
		o := *s.Open
		o.Revision, o.Fresh = o.Revision+1, false
		s = s.with(o)
	}
	return s
}

// EditOwn changes the shop's own entries of the catalogues. An entry with a fault is kept, named and not used.
func EditOwn(words string, change func(*valuation.Own)) Action {
	return keeps(words, func(ctx context.Context, d *Desk, s State, a Action) State {
		own := valuation.Copy(s.Own)
		change(&own)
		encoded := func(x valuation.Own) json.RawMessage { return d.Documents.Encode(x, x.Currency) }
		return d.keepSetting(ctx, s, a, ownSetting, encoded(s.Own), encoded(own))
	})
}
