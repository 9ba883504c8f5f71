package desk

import (
	"cmp"
	"context"
	"fmt"
	"reflect"
	"slices"
	"strings"

	"walkline/store/book"
	"walkline/valuation"
	"walkline/valuation/hindsight"
	"walkline/valuation/learn"
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

// recordIs reports whether the track record still is another one: no factor was decided on since, and nothing of a past lot was entered.
func (s State) recordIs(of TrackRecord) bool {
	return s.Record != nil && !s.Record.Stale && reflect.DeepEqual(s.Record.Now, of.Now) && reflect.DeepEqual(s.Record.Proposals, of.Proposals)
}

// Replayed returns the state with a replay that has come back; one of a record before the present one is dropped.
func (s State) Replayed(of TrackRecord, r Replay, err error) State {
	if !s.recordIs(of) {
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
