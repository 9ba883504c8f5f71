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
func (d *Desk) recall(ctx context.Context, kind string, s *Sheet, by Tables) (bool, error) {
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
	if err := s.settle(before.Match, by); err != nil {
		return false, err
	}
	before.Currency, before.Headings = s.Stated.Currency, s.Stated.Headings
	s.Doubts = slices.DeleteFunc(slices.Clone(s.Doubts), func(d Doubt) bool {
		at := before.Notation(d.Option)
		return at != nil && *at != ""
	})
	for _, option := range notations {
		if at := before.Notation(option); *at == "" { // nobody ever said it
			*at = *s.Stated.Notation(option)
		}
	}
	s.Stated = before
	return true, nil
}

// settle answers which column is what with those that were matched before, and reads the table anew by the answer: the heading of a price
// may say its currency. Errors: as of opening the table.
func (s *Sheet) settle(match []string, by Tables) error {
	if len(s.Rivals) == 0 {
		return nil
	}
	o := s.Opened
	o.Own = map[int]string{}
	for _, r := range s.Rivals {
		if at := slices.Index(match, r.Field); at >= 0 {
			o.Own[at] = r.Field
		}
	}
	again, err := by.Reopen(*s, o)
	if err == nil {
		*s, s.Rivals = again, nil // as it was read before, even where no column was it
	}
	return err
}

// notations are the options of a table that may be left in doubt.
var notations = []string{"decimal", "dates", "unit", "kind"}

// Notation returns where a statement holds an option that may be left in doubt; nil for any other.
func (s *Stated) Notation(option string) *string {
	return map[string]*string{"decimal": &s.Marks, "dates": &s.Dates, "unit": &s.Unit, "kind": &s.Kind}[option]
}

// remember keeps what is stated for a table of a kind.
func (d *Desk) remember(ctx context.Context, kind string, s Sheet) error {
	if s.Nameless {
		return nil
	}
	stated := s.Stated
	for _, d := range s.Doubts {
		if at := stated.Notation(d.Option); at != nil && *at == d.Took {
			*at = "" // taken, for nobody said otherwise: the next table asks again
		}
	}
	if own := len(s.Header) - s.Added; s.Added > 0 {
		stated.Match = stated.Match[:own]
	}
	return d.Book.PutSetting(ctx, s.setting(kind), stated)
}

// Remembered is what is remembered of tables of one shape: how they were read last.
type Remembered struct {
	What    string   // comparables, run list or past buys
	Columns []string // that such a table has
	Stated  Stated
	name    string
}

// Remembered returns what is remembered of tables. Errors: it can't be read.
func (d *Desk) Remembered(ctx context.Context) ([]Remembered, error) {
	var all []Remembered
	for _, kind := range []struct{ prefix, what string }{{ofComparables, "comparables"}, {ofRunLists, "run list"}, {ofPastBuys, "past buys"}} {
		names, err := d.Book.SettingNames(ctx, kind.prefix)
		if err != nil {
			return nil, err
		}
		for _, name := range names {
			r := Remembered{What: kind.what, name: name}
			if json.Unmarshal([]byte(name[len(kind.prefix):]), &r.Columns) != nil {
				continue // another setting, whose name begins so
			}
			if _, err := d.Book.Setting(ctx, name, &r.Stated); err != nil {
				return nil, err
			}
			all = append(all, r)
		}
	}
	return all, nil
}

// Forget forgets how tables of a shape are read: the next one is looked at as the first was. Errors: it can't be kept.
func (d *Desk) Forget(ctx context.Context, r Remembered) error {
	return d.Book.PutSetting(ctx, r.name, nil)
}
