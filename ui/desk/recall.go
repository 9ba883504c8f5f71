package desk

import (
	"context"
	"encoding/json"
	"slices"
)

// The kinds of tables whose columns are remembered, each the beginning of the names of its settings.
const (
	ofComparables = "import of "
	ofRunLists    = "run list of "
	ofPastBuys    = "past buys of "
)

// setting names what is remembered of a table by its own columns, so that no two sets of columns share a name. Rows that were refused
// come back under the columns of the table that they are from.
func (s Sheet) setting(kind string) string {
	names, _ := json.Marshal(s.Header[:len(s.Header)-s.Added]) // of texts: never an error
	return kind + string(names)
}

// recall states what was stated for the last table of a kind with the same columns, and reports whether there was one. What does not fit
// the table is not taken, and the currency is always this table's.
func (d *Desk) recall(ctx context.Context, kind string, s *Sheet) (bool, error) {
	var before Stated
	found, err := d.Book.Setting(ctx, s.setting(kind), &before)
	if !found || err != nil || s.Nameless {
		return false, err
	}
	own := len(s.Header) - s.Added
	if matched := len(s.Stated.Match) > 0; matched && (len(before.Match) < own || slices.ContainsFunc(before.Match,
		func(field string) bool { return !slices.Contains(s.Fields, field) })) {
		return false, nil
	}
	if s.Added > 0 {
		before.Match = slices.Concat(before.Match[:own], s.Stated.Match[own:])
	}
	if len(s.Stated.Match) > 0 && len(before.Match) != len(s.Header) {
		return false, nil
	}
	before.Currency = s.Stated.Currency
	s.Stated, s.Doubts = before, nil
	return true, nil
}

// remember keeps what is stated for a table of a kind.
func (d *Desk) remember(ctx context.Context, kind string, s Sheet) error {
	if s.Nameless {
		return nil
	}
	stated := s.Stated
	if own := len(s.Header) - s.Added; s.Added > 0 {
		stated.Match = stated.Match[:own]
	}
	return d.Book.PutSetting(ctx, s.setting(kind), stated)
}
