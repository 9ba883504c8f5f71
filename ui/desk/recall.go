package desk

import (
	"context"
	"slices"
	"strings"
)

// The kinds of tables whose columns are remembered, each the beginning of the names of its settings.
const (
	ofComparables = "import of "
	ofRunLists    = "run list of "
	ofPastBuys    = "past buys of "
)

// setting names what is remembered of a table. Rows that were refused come back under the columns of the table that they
// are from.
func (s Sheet) setting(kind string) string {
	return kind + strings.Join(s.Header[:len(s.Header)-s.Added], ", ")
}

// recall states what was stated for the last table of a kind with the same columns, and reports whether there was one.
func (d *Desk) recall(ctx context.Context, kind string, s *Sheet) (bool, error) {
	var before Stated
	found, err := d.Book.Setting(ctx, s.setting(kind), &before)
	if !found || err != nil {
		return false, err
	}
	if own := len(s.Header) - s.Added; s.Added > 0 {
		before.Match = slices.Concat(before.Match[:min(own, len(before.Match))], s.Stated.Match[own:])
	}
	s.Stated, s.Doubts = before, nil
	return true, nil
}

// remember keeps what is stated for a table of a kind.
func (d *Desk) remember(ctx context.Context, kind string, s Sheet) error {
	stated := s.Stated
	if own := len(s.Header) - s.Added; s.Added > 0 {
		stated.Match = stated.Match[:own]
	}
	return d.Book.PutSetting(ctx, s.setting(kind), stated)
}
