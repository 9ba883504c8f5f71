package desk

import (
	"cmp"
	"context"
	"fmt"
	"slices"
	"strings"

	"walkline/store/book"
	"walkline/valuation"
	"walkline/valuation/hindsight"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
)

// TrackRecord is the track record: how the forecasts did, and what past buys would change.
type TrackRecord struct {
	Currency  string
	Buys      int                    // lots that were won
	Usual     map[string]learn.Usual // what each factor is on, on an average lot
	Waiting   int                    // builds that have ended and teach nothing until what is open of them is answered
	Judged    hindsight.Record
	Now       learn.Factors
	Proposals []learn.Proposal
	History   []book.Decision
	Effects   map[string][]Effect // by proposal, worked out when it is looked at
	Replay    *Replay             // nil: not worked out
	Problem   string
	Stale     bool // something was decided or entered since: to be worked out anew
}

// Effect is what a proposal would do to the walk-away bid of a lot that is still to be bid for.
type Effect struct {
	Lot      int64
	Name     string
	Currency string
	valuation.Effect
	Share   float64           // of the proposal that After stands for: all of it is 1
	Whole   *valuation.Effect // what all of it would do, where Share is less
	Problem string            // why it can't be told; empty: it can
}

// Replay is every past lot valued with today's factors.
type Replay struct {
	Lots   []valuation.Replayed
	Sum    valuation.ReplaySum
	Doubts []string
}

// Learn works the track record of the builds out. It changes nothing and may run on any goroutine.
func (d *Desk) Learn(ctx context.Context, list []book.Bought) (TrackRecord, error) {
	r := TrackRecord{Effects: map[string][]Effect{}}
	history, err := d.Book.Decisions(ctx)
	if err != nil {
		return r, err
	}
	r.History, r.Now = history, inForce(history)
	if list, err = d.foretoldAnew(ctx, list); err != nil {
		return r, err
	}
	past := Learnt(list)
	if err := d.guess(ctx, list, past); err != nil {
		return r, err
	}
	r.Waiting = waiting(list)
	for _, b := range list {
		if b.Ours() {
			r.Buys++
		}
	}
	r.Currency = d.mostly(past)
	r.Usual = learn.Usuals(past, r.Currency)
	r.Judged = hindsight.Judge(past, r.Currency)
	if f := hindsight.Hammered(ResultsOf(list)); f.N > 0 {
		r.Judged.Figures = append(r.Judged.Figures, f)
	}
	r.Proposals = learn.Propose(past, d.Today(), r.Now, d.Knowledge().Starter())
	return r, nil
}

// foretoldAnew returns the list with what was foretold of lots that were frozen before figures were kept with them: their
// frozen cases are played again with what was in force then, at the price that was paid. Cases that can't be read or valued stay without.
func (d *Desk) foretoldAnew(ctx context.Context, list []book.Bought) ([]book.Bought, error) {
	old := func(b book.Bought) bool { return b.Foretold == nil && b.Build.Imported.As == "" }
	if !slices.ContainsFunc(list, old) {
		return list, nil
	}
	cases, _, err := d.Book.FrozenCases(ctx)
	if err != nil {
		return nil, err
	}
	list = slices.Clone(list)
	for i, b := range list {
		c, frozen := cases[b.ID]
		if !frozen || !old(b) || ctx.Err() != nil {
			continue
		}
		if p, err := d.memory().Foretell(c.InForce(valuation.FirstEngine), d.Knowledge(), b.Build.Hammer); err == nil {
			list[i].Foretold = &p
		}
	}
	return list, ctx.Err()
}

// Learnt returns what there is to learn from.
func Learnt(list []book.Bought) []learn.Build {
	past := make([]learn.Build, len(list))
	for i, b := range list {
		past[i] = PastOf(b).Learned()
	}
	return past
}

// PastOf returns a lot that was won or lost as the track record and the books see it.
func PastOf(b book.Bought) valuation.Past {
	return valuation.Past{ID: b.ID, Name: LotName(b.Number, b.Sale, b.ModelYear, b.Make, b.Model), Currency: b.Currency, State: b.State,
		SaleDate: b.SaleDate, Vehicle: learn.Vehicle{ModelYear: b.ModelYear, Make: b.Make, Model: b.Model, Trim: b.Trim},
		Build: b.Build, Foretold: b.Foretold}
}

// LotName names a lot in a list of evidence: "Lot 14 Harrow Flats yard 2019 Ostrane Pell".
func LotName(number, sale string, year int, maker, model string) string {
	words := []string{"Lot " + cmp.Or(number, "-"), sale}
	if year != 0 {
		words = append(words, fmt.Sprint(year))
	}
	return strings.Join(slices.DeleteFunc(append(words, maker, model), func(s string) bool { return s == "" }), " ")
}

// mostly returns the currency that most past buys have, else the starter's.
func (d *Desk) mostly(past []learn.Build) string {
	count, best := map[string]int{}, d.Starter.Currency
	for _, b := range past {
		if count[b.Currency]++; count[b.Currency] > count[best] {
			best = b.Currency
		}
	}
	return best
}

// outdated returns the state with its track record to be worked out anew; it stays in sight until then.
func (s State) outdated() State {
	if s.Record != nil {
		r := *s.Record
		r.Stale = true
		s.Record = &r
	}
	return s
}

// Learned returns the state with a track record that has come back.
func (s State) Learned(r TrackRecord, err error) State {
	if err != nil {
		r.Problem = err.Error()
	}
	s.Record = &r
	return s
}

// Effects values every lot that is still to be bid for with the factors in force and with those of a proposal. One that rests on few buys
// goes only so far that no open bid moves by two steps. It changes nothing and may run on any goroutine. Errors: the work was cancelled,
// or the book can't be read.
func (d *Desk) Effects(ctx context.Context, r TrackRecord, p learn.Proposal) ([]Effect, error) {
	lots, err := d.openLots(ctx)
	if err != nil {
		return nil, err
	}
	whole, err := d.effects(ctx, lots, r, p, 1)
	if err != nil || p.Buys >= learn.EnoughBuys || steady(whole) {
		return whole, err
	}
	for _, share := range []float64{0.5, 0.25, 0.125, 0} {
		out, err := d.effects(ctx, lots, r, p, share)
		if err != nil {
			return nil, err
		}
		if share > 0 && !steady(out) {
			continue
		}
		for i := range out {
			out[i].Whole = &whole[i].Effect
		}
		return out, nil
	}
	return whole, nil
}

// fewSteps is how many bid steps a factor from few buys must stay below. Ours.
const fewSteps = 2

func steady(all []Effect) bool {
	return !slices.ContainsFunc(all, func(x Effect) bool { return x.Steps >= fewSteps })
}

// openLots returns the lots that are still to be bid for.
func (d *Desk) openLots(ctx context.Context) ([]book.Lot, error) {
	entries, err := d.Book.Entries(ctx)
	if err != nil {
		return nil, err
	}
	var out []book.Lot
	for _, e := range entries {
		if !tobid(e) {
			continue
		}
		l, err := d.Book.Lot(ctx, e.ID)
		if err != nil {
			return nil, err
		}
		out = append(out, l)
	}
	return out, nil
}

// effects values lots with the factors in force and with a share of a proposal.
func (d *Desk) effects(ctx context.Context, lots []book.Lot, r TrackRecord, p learn.Proposal, share float64) ([]Effect, error) {
	var out []Effect
	for _, l := range lots {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		c := l.Case
		x := Effect{Lot: l.ID, Name: LotName(c.Lot.Number, c.Lot.Sale, c.Lot.ModelYear, c.Lot.Make, c.Lot.Model), Currency: c.Currency,
			Share: share}
		var err error
		if faults := c.Check(); len(faults) > 0 {
			x.Problem = "cannot be valued yet"
		} else if x.Effect, err = d.memory().Compare(c, d.Knowledge(), r.Now, learn.Toward(r.Now, p, share)); err != nil {
			x.Problem = err.Error()
		}
		out = append(out, x)
	}
	return out, nil
}

// tobid reports whether the lot is still to be bid for.
func tobid(e book.Entry) bool {
	return !e.Archived && (e.State == lot.ToLookAt || e.State == lot.LookedAt || e.State == lot.Bid)
}

// Shown returns the state with the effects of a proposal that have come back.
func (s State) Shown(key string, effects []Effect, err error) State {
	if s.Record == nil {
		return s
	}
	if err != nil {
		return s.troubled("work out what a factor would change", err)
	}
	r := *s.Record
	r.Effects = map[string][]Effect{key: effects}
	for k, e := range s.Record.Effects {
		if k != key {
			r.Effects[k] = e
		}
	}
	s.Record = &r
	return s
}

// Again values every past lot's frozen case with today's factors. report hears how far it is. It changes nothing and may
// run on any goroutine. Errors: the work was cancelled, or the book can't be read.
func (d *Desk) Again(ctx context.Context, list []book.Bought, now learn.Factors, currency string,
	report func(done float64, words string)) (Replay, error) {
	cases, doubts, err := d.Book.FrozenCases(ctx)
	if err != nil {
		return Replay{}, err
	}
	shelf, err := d.shelfByMake(ctx)
	if err != nil {
		return Replay{}, err
	}
	r := Replay{Doubts: doubts}
	summed := []valuation.Replayed{}
	for i, b := range Learnt(list) {
		if err := ctx.Err(); err != nil {
			return Replay{}, err
		}
		report(float64(i)/float64(len(list)), fmt.Sprintf("Replaying past lots: %d of %d", i+1, len(list)))
		frozen, err := d.caseOf(ctx, cases, shelf, list[i])
		if err != nil {
			return Replay{}, err
		}
		x, err := d.memory().Replay(b, frozen, d.Knowledge(), now)
		if err != nil {
			r.Doubts = append(r.Doubts, b.Name+": "+err.Error())
		}
		r.Lots = append(r.Lots, x)
		if b.Currency != currency {
			x.Profit = nil // the sum is of one currency
		}
		summed = append(summed, x)
	}
	r.Sum = valuation.Sum(summed)
	return r, nil
}

// Replayed returns the state with a replay that has come back.
func (s State) Replayed(r Replay, err error) State {
	if s.Record == nil {
		return s
	}
	if err != nil {
		return s.troubled("replay the past lots", err)
	}
	kept := *s.Record
	kept.Replay = &r
	s.Record = &kept
	return s
}
