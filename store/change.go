package store

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"reflect"
	"slices"

	"walkline/valuation"
	"walkline/valuation/hidden"
	"walkline/valuation/lot"
	"walkline/valuation/repair"
	"walkline/valuation/resale"
)

// change is all that differs between two cases, both ways: what one save writes and one step of history holds.
type change struct {
	Documents map[string]swap     `json:"documents"`
	Damage    splice[lot.Damage]  `json:"damage"`
	Findings  splice[finding]     `json:"findings"`
	Lines     splice[repair.Line] `json:"lines"`
	Risks     splice[hidden.Risk] `json:"risks"`
	Rows      splice[resale.Row]  `json:"rows"`
	Build     *buildChange        `json:"build,omitempty"`  // of what came of the lot; nil: nothing
	Photos    *splice[lot.Photo]  `json:"photos,omitempty"` // nil: nothing
}

// swap is one document before and after; Before is null when there was none.
type swap struct {
	Before json.RawMessage `json:"before"`
	After  json.RawMessage `json:"after"`
}

// finding is one answer to a thing looked at.
type finding struct {
	ID     string `json:"id"`
	Answer string `json:"answer"`
}

// factParts are the documents that are kept as columns of the lot.
var factParts = []string{"format", "currency", "valued_on", "lot"}

// documents returns where in c each document lies. The lists that are kept as rows are documents too, of no items: they
// tell an empty list from none.
func documents(c *valuation.Case) map[string]any {
	return map[string]any{
		"format": &c.Format, "currency": &c.Currency, "valued_on": &c.ValuedOn, "lot": &c.Lot,
		"damage": &c.Damage, "survey": &c.Survey, "findings": &c.Findings, "repair": &c.Repair, "hidden": &c.Hidden, "resale": &c.Resale,
		"buying": &c.Buying, "time": &c.Time, "selling": &c.Selling, "labour": &c.Labour, "market": &c.Market,
		"rules": &c.Rules, "run": &c.Run, "factors": &c.Factors,
	}
}

// bare returns c without the items that are kept as rows.
func bare(c valuation.Case) valuation.Case {
	c.Damage, c.Repair.Lines, c.Hidden.Risks, c.Resale.Rows = c.Damage[:0:0], c.Repair.Lines[:0:0], c.Hidden.Risks[:0:0], c.Resale.Rows[:0:0]
	if c.Findings != nil {
		c.Findings = map[string]string{}
	}
	return c
}

// encoded returns the documents of c. Errors: a number is not finite.
func encoded(c valuation.Case) (map[string]json.RawMessage, error) {
	c = bare(c)
	texts := map[string]json.RawMessage{}
	for part, at := range documents(&c) {
		text, err := json.Marshal(at)
		if err != nil {
			return nil, fmt.Errorf("%w: %s (%w)", ErrRefused, part, err)
		}
		texts[part] = text
	}
	return texts, nil
}

// answersOf returns the findings of c in order of their ids.
func answersOf(c valuation.Case) []finding {
	var list []finding
	for _, id := range slices.Sorted(maps.Keys(c.Findings)) {
		list = append(list, finding{id, c.Findings[id]})
	}
	return list
}

// difference returns what turns a into b. Errors: b holds a number that is not finite.
func difference(a, b valuation.Case) (change, error) {
	before, err := encoded(a)
	if err != nil {
		return change{}, err
	}
	return differenceFrom(before, a, b)
}

// whole returns what turns nothing into c.
func whole(c valuation.Case) (change, error) {
	return differenceFrom(nil, valuation.Case{}, c)
}

func differenceFrom(before map[string]json.RawMessage, a, b valuation.Case) (change, error) {
	after, err := encoded(b)
	if err != nil {
		return change{}, err
	}
	c := change{
		Documents: map[string]swap{},
		Damage:    spliceOf(a.Damage, b.Damage, alike),
		Findings:  spliceOf(answersOf(a), answersOf(b), alike),
		Lines:     spliceOf(a.Repair.Lines, b.Repair.Lines, alike),
		Risks:     spliceOf(a.Hidden.Risks, b.Hidden.Risks, alike),
		Rows:      spliceOf(a.Resale.Rows, b.Resale.Rows, sameRow),
	}
	for part, text := range after {
		if !bytes.Equal(before[part], text) {
			c.Documents[part] = swap{before[part], text}
		}
	}
	return c, nil
}

// empty reports whether c leaves the case as it is.
func (c change) empty() bool {
	return len(c.Documents) == 0 && c.Damage.empty() && c.Findings.empty() && c.Lines.empty() && c.Risks.empty() && c.Rows.empty()
}

// inverse returns the change that takes c back.
func (c change) inverse() change {
	back := change{
		Documents: map[string]swap{},
		Damage:    c.Damage.inverse(), Findings: c.Findings.inverse(),
		Lines: c.Lines.inverse(), Risks: c.Risks.inverse(), Rows: c.Rows.inverse(),
	}
	for part, s := range c.Documents {
		back.Documents[part] = swap{s.After, s.Before}
	}
	if c.Build != nil {
		build := c.Build.inverse()
		back.Build = &build
	}
	if c.Photos != nil {
		photos := c.Photos.inverse()
		back.Photos = &photos
	}
	return back
}

// text returns c as it is kept in the history. Errors: [ErrRefused] when a number is not finite.
func (c change) text() (string, error) {
	text, err := json.Marshal(c)
	if err != nil {
		return "", fmt.Errorf("%w (%w)", ErrRefused, err)
	}
	return string(text), nil
}

// apply returns a with c done to it; a is left alone. Errors: [ErrDamaged] when the history does not fit a.
func (c change) apply(a valuation.Case) (valuation.Case, error) {
	b := bare(a)
	places := documents(&b)
	for part, s := range c.Documents {
		if err := decode(part, s.After, places[part]); err != nil {
			return b, err
		}
	}
	return c.applyLists(a, b)
}

// applyLists returns b with the lists of a after c.
func (c change) applyLists(a, b valuation.Case) (valuation.Case, error) {
	var problems [5]error
	var answers []finding
	b.Damage, problems[0] = grown(b.Damage, c.Damage, a.Damage)
	answers, problems[1] = c.Findings.apply(answersOf(a))
	b.Repair.Lines, problems[2] = grown(b.Repair.Lines, c.Lines, a.Repair.Lines)
	b.Hidden.Risks, problems[3] = grown(b.Hidden.Risks, c.Risks, a.Hidden.Risks)
	b.Resale.Rows, problems[4] = grown(b.Resale.Rows, c.Rows, a.Resale.Rows)
	for _, f := range answers {
		if b.Findings == nil {
			b.Findings = map[string]string{}
		}
		b.Findings[f.ID] = f.Answer
	}
	for _, err := range problems {
		if err != nil {
			return b, err
		}
	}
	return b, nil
}

// grown returns the items of a after s, appended to the list of no items that says what an empty list is.
func grown[T any](none []T, s splice[T], a []T) ([]T, error) {
	items, err := s.apply(a)
	return append(none, items...), err
}

// decode reads a document into the place that it fills, which keeps nothing of what it held.
func decode(part string, text json.RawMessage, place any) error {
	if place == nil {
		return fmt.Errorf("%w: no part of a case is called %s", ErrDamaged, part)
	}
	reflect.ValueOf(place).Elem().SetZero()
	if err := json.Unmarshal(text, place); err != nil {
		return fmt.Errorf("%w: %s can't be read (%w)", ErrDamaged, part, err)
	}
	return nil
}
