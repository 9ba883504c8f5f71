package store

import (
	"context"
	"database/sql"
	"fmt"
	"slices"

	"walkline/valuation"
	"walkline/valuation/lot"
)

// Case returns the case of a lot as it was last saved. The fields of its subject that the engine fills from the lot
// are not kept and come back empty. Errors: [ErrNotFound] when there is no such lot or it is removed.
func (s *Store) Case(ctx context.Context, id int64) (c valuation.Case, err error) {
	err = s.read(ctx, fmt.Sprintf("reading lot %d", id), func(tx *sql.Tx) error {
		c, err = load(place{ctx, tx, id})
		return err
	})
	return c, err
}

// Add keeps a new lot, to look at, and returns its id. Errors: as [Store.AddAll].
func (s *Store) Add(ctx context.Context, c valuation.Case) (int64, error) {
	ids, err := s.AddAll(ctx, "new lot", []valuation.Case{c})
	if err != nil {
		return 0, err
	}
	return ids[0], nil
}

// AddAll keeps new lots, to look at, as one step of the Board that label names, and returns their ids in order. All are
// kept or none. Errors: [ErrRefused] when a case holds a word or number that can't be kept.
func (s *Store) AddAll(ctx context.Context, label string, cases []valuation.Case) (ids []int64, err error) {
	err = s.write(ctx, "adding lots", func(tx *sql.Tx) error {
		ids, err = s.addAll(ctx, tx, label, cases)
		return err
	})
	return ids, err
}

func (s *Store) addAll(ctx context.Context, tx *sql.Tx, label string, cases []valuation.Case) ([]int64, error) {
	var ids []int64
	var step shopChange
	for _, c := range cases {
		id, err := s.add(place{ctx: ctx, tx: tx}, c)
		if err != nil {
			return nil, err
		}
		ids = append(ids, id)
		step.Lots = append(step.Lots, s.appeared(id))
	}
	return ids, s.rememberShop(ctx, tx, Board, label, step)
}

// appeared is the mark of a lot that was not there before: taking it back removes it.
func (s *Store) appeared(id int64) mark {
	return mark{id, status{State: lot.ToLookAt, Removed: s.stamp()}, status{State: lot.ToLookAt}}
}

// Duplicate keeps a copy of the case of a lot as a new lot, to look at, without its history and predictions, as a step of
// the Board, and returns the new id. Errors: [ErrNotFound].
func (s *Store) Duplicate(ctx context.Context, id int64) (copied int64, err error) {
	err = s.write(ctx, fmt.Sprintf("duplicating lot %d", id), func(tx *sql.Tx) error {
		c, err := load(place{ctx, tx, id})
		if err != nil {
			return err
		}
		ids, err := s.addAll(ctx, tx, "duplicate"+called(c.Lot.Number), []valuation.Case{c})
		if err != nil {
			return err
		}
		copied = ids[0]
		return nil
	})
	return copied, err
}

// add keeps a new lot and returns its id; p names none yet.
func (s *Store) add(p place, c valuation.Case) (int64, error) {
	ch, err := whole(c)
	if err != nil {
		return 0, err
	}
	if _, err := ch.text(); err != nil {
		return 0, err
	}
	if p.lot, err = insertLot(p, c, s.stamp()); err != nil {
		return 0, err
	}
	return p.lot, writeParts(p, ch)
}

// load reads the whole case of a lot.
func load(p place) (valuation.Case, error) {
	c := valuation.Defaults()
	for _, scan := range []func(place, *valuation.Case) error{
		scanFacts, scanTerms, scanDamage, scanFindings, scanLines, scanRisks, scanComparables, // terms first: they say what an empty list is
	} {
		if err := scan(p, &c); err != nil {
			return valuation.Case{}, err
		}
	}
	c.Update()
	return c, nil
}

// writeChange writes what ch alters in the stored case of a lot; c is the case after it.
func (s *Store) writeChange(p place, ch change, c valuation.Case) error {
	if slices.ContainsFunc(factParts, func(part string) bool { return ch.Documents[part].After != nil }) {
		if err := updateFacts(p, c); err != nil {
			return err
		}
	}
	if err := writeParts(p, ch); err != nil {
		return err
	}
	return p.exec(`UPDATE lots SET revision = revision + 1, saved_at = ? WHERE id = ?`, s.stamp(), p.lot)
}

// writeParts writes the documents and rows of ch.
func writeParts(p place, ch change) error {
	if err := writeTerms(p, ch); err != nil {
		return err
	}
	if err := ch.Damage.write(p, "surveys", insertDamage); err != nil {
		return err
	}
	if err := ch.Findings.write(p, "findings", insertFinding); err != nil {
		return err
	}
	if err := ch.Lines.write(p, "repair_lines", insertLine); err != nil {
		return err
	}
	if err := ch.Risks.write(p, "risks", insertRisk); err != nil {
		return err
	}
	return ch.Rows.write(p, "comparables", insertRow)
}

func isFact(part string) bool { return slices.Contains(factParts, part) }
