package desk

import (
	"bytes"
	"cmp"
	"context"
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strings"

	"walkline/store/book"
	"walkline/valuation"
)

// The settings that keep which starter catalogues a shop works with: the edition, its entries as they were taken first, and what was
// decided about later ones.
const (
	editionSetting = "starter edition"
	entriesSetting = "starter catalogues"
	decidedSetting = "starter decisions"
)

// Decided is what a shop said of entries in which a later edition of the starter differs from the one that it works with.
type Decided struct {
	Format   string            `json:"format"` // that of the shop's own entries
	Currency string            `json:"currency"`
	Taken    valuation.Own     `json:"taken"` // as they were when they were taken
	Gone     []string          `json:"gone"`  // names of entries that were taken out with the starter
	Left     map[string]string `json:"left"`  // by name, what the starter had in the entry that was not taken
}

// StarterChange is an entry in which the starter differs from what the shop works with.
type StarterChange struct {
	Key     valuation.EntryKey
	Was, Is []byte // documents of the entry; empty: there is none
}

// edition is the starter as the shop works with it.
type edition struct {
	first   valuation.Own // its entries as first taken
	decided Decided
	text    string // of decided, as it is kept
	base    *valuation.Knowledge
}

func nameOf(k valuation.EntryKey) string { return k.Kind + " " + k.ID }

// document returns one entry as a document, nothing where it is not there.
func (d *Desk) document(o valuation.Own, k valuation.EntryKey) []byte {
	only := o.Only(k)
	if len(only.Keys()) == 0 {
		return nil
	}
	return d.Documents.Encode(only, only.Currency)
}

// loadStarter reads which starter the shop works with, and where the one that ships differs. Entries are never exchanged in silence: what
// was taken first stays until the user takes another. A desk without an edition works with what it has.
func (d *Desk) loadStarter(ctx context.Context, s State) State {
	before := s.edition
	s.edition = edition{base: &d.Know}
	if d.Edition == "" {
		return s
	}
	var kept string
	found, err := d.Book.Setting(ctx, editionSetting, &kept)
	switch {
	case err != nil:
		return s.troubled("read which starter catalogues you work with", err)
	case !found:
		return d.keepEdition(ctx, s)
	case kept == d.Edition:
		s.StarterChanges = nil
		return s
	}
	if s.edition, err = d.readEdition(ctx, before); err != nil {
		s.edition, s.StarterChanges = edition{base: &d.Know}, nil
		return s.troubled("read the starter catalogues that you work with, so those of this version are used", err)
	}
	if s.edition.base == nil {
		base := s.edition.entries()
		know := d.Know.On(base)
		s.edition.base = &know
		s.StarterChanges = d.changes(base, s.edition.decided.Left)
	}
	return s
}

// settled is the state of a new session: where nothing of the starter that ships is left open or left out, that is the one the shop works
// with from now on. Within a session the old one stays, so that a decision can be undone.
func (d *Desk) settled(ctx context.Context, s State) State {
	if s.Trouble != "" || s.edition.base == &d.Know || len(s.StarterChanges)+len(s.edition.decided.Left) > 0 {
		return s
	}
	return d.loadSettings(ctx, d.keepEdition(ctx, s))
}

// entries returns the starter's entries that the shop works with.
func (e edition) entries() valuation.Own {
	all := e.first.Laid(e.decided.Taken)
	return all.Without(slices.DeleteFunc(all.Keys(), func(k valuation.EntryKey) bool {
		return !slices.Contains(e.decided.Gone, nameOf(k))
	})...)
}

// keepEdition notes that the shop works with the starter that ships.
func (d *Desk) keepEdition(ctx context.Context, s State) State {
	all := d.Know.Entries()
	for _, x := range []book.Setting{{Name: entriesSetting, After: json.RawMessage(d.Documents.Encode(all, all.Currency))},
		{Name: decidedSetting, After: json.RawMessage("null")}, {Name: editionSetting, After: d.Edition}} {
		if err := d.Book.PutSetting(ctx, x.Name, x.After); err != nil {
			return s.troubled("keep which starter catalogues you work with", err)
		}
	}
	s.edition = edition{base: &d.Know}
	return s
}

// readEdition reads the entries that were taken first, unless they are known, and what was decided since; where that is as before all is.
// Errors: either cannot be read.
func (d *Desk) readEdition(ctx context.Context, before edition) (edition, error) {
	var first, decided json.RawMessage
	if _, err := d.Book.Setting(ctx, decidedSetting, &decided); err != nil {
		return before, err
	}
	e := edition{first: before.first, text: string(decided)}
	if len(e.first.Keys()) == 0 {
		found, err := d.Book.Setting(ctx, entriesSetting, &first)
		if err != nil || !found {
			return e, cmp.Or(err, fmt.Errorf("the book lacks %q", entriesSetting))
		}
		if faults := d.Documents.Decode(first, &e.first); len(faults) > 0 {
			return e, faults[0]
		}
		if len(e.first.Assemblies) == 0 { // kept before the Bench reached them: those that ship were in force
			e.first.Assemblies = d.Know.Parts.Assemblies
		}
		if e.first.Parting == nil {
			e.first.Parting = &d.Know.Parts.Terms
		}
	} else if e.text == before.text {
		return before, nil
	}
	if len(decided) > 0 {
		if faults := d.Documents.Decode(decided, &e.decided); len(faults) > 0 {
			return e, faults[0]
		}
	}
	return e, nil
}

// changes returns the entries in which the starter differs from those in force and that were not left on purpose.
func (d *Desk) changes(base valuation.Own, left map[string]string) []StarterChange {
	ships := d.Know.Entries()
	keys := ships.Keys()
	for _, k := range base.Keys() {
		if !slices.Contains(keys, k) {
			keys = append(keys, k)
		}
	}
	var all []StarterChange
	for _, k := range keys {
		was, is := d.document(base, k), d.document(ships, k)
		if said, known := left[nameOf(k)]; bytes.Equal(was, is) || known && said == string(is) {
			continue
		}
		all = append(all, StarterChange{Key: k, Was: was, Is: is})
	}
	return all
}

// TakeStarter takes entries of the starter that ships in the place of those that the shop works with, its own too.
func TakeStarter(keys ...valuation.EntryKey) Action {
	return keeps(starterWords("take", keys), func(ctx context.Context, d *Desk, s State, a Action) State {
		now, ships := copyOf(s.edition.decided), d.Know.Entries()
		now.Taken = now.Taken.Without(keys...).Laid(ships.Only(keys...))
		for _, k := range keys {
			delete(now.Left, nameOf(k))
			now.Gone = slices.DeleteFunc(now.Gone, func(name string) bool { return name == nameOf(k) })
			if len(ships.Only(k).Keys()) == 0 {
				now.Gone = append(now.Gone, nameOf(k))
			}
		}
		return d.keepDecided(ctx, s, a, now, s.Own.Without(keys...))
	})
}

// LeaveStarter keeps what the shop works with in the place of entries of the starter that ships, until the starter changes them again.
func LeaveStarter(keys ...valuation.EntryKey) Action {
	return keeps(starterWords("keep", keys), func(ctx context.Context, d *Desk, s State, a Action) State {
		now, ships := copyOf(s.edition.decided), d.Know.Entries()
		for _, k := range keys {
			now.Left[nameOf(k)] = string(d.document(ships, k))
		}
		return d.keepDecided(ctx, s, a, now, s.Own)
	})
}

func starterWords(verb string, keys []valuation.EntryKey) string {
	if len(keys) == 1 {
		return strings.Join([]string{verb, "the starter's", nameOf(keys[0])}, " ")
	}
	return fmt.Sprintf("%s %d entries of the starter", verb, len(keys))
}

func copyOf(x Decided) Decided {
	x.Left, x.Gone = maps.Clone(x.Left), slices.Clone(x.Gone)
	if x.Left == nil {
		x.Left = map[string]string{}
	}
	return x
}

// keepDecided keeps a decision, and the shop's own entries where it touches them, as one step.
func (d *Desk) keepDecided(ctx context.Context, s State, a Action, now Decided, own valuation.Own) State {
	encoded := func(x Decided) json.RawMessage {
		x.Format, x.Currency = valuation.OwnFormat, d.Know.Jobs.Currency
		return d.Documents.Encode(x, x.Currency)
	}
	step := a.step(s)
	step.Settings = []book.Setting{{Name: decidedSetting, Before: encoded(s.edition.decided), After: encoded(now)}}
	if len(own.Keys()) != len(s.Own.Keys()) {
		step.Settings = append(step.Settings, book.Setting{Name: ownSetting, Before: json.RawMessage(d.Documents.Encode(s.Own, s.Own.Currency)),
			After: json.RawMessage(d.Documents.Encode(own, own.Currency))})
	}
	s, _ = d.keep(ctx, s, a.words, step)
	return s
}
