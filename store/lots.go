package store

import (
	"context"
	"database/sql"
	"fmt"
	"math"

	"walkline/store/book"
	"walkline/valuation"
)

// Lot returns all that is kept of a lot. The fields of its subject that the engine fills from the lot are not kept and come back
// empty. Errors: [ErrNotFound] when there is no such lot or it is removed.
func (s *Store) Lot(ctx context.Context, id int64) (l book.Lot, err error) {
	err = s.read(ctx, fmt.Sprintf("reading lot %d", id), func(tx *sql.Tx) error {
		l, err = s.load(place{ctx, tx}, id)
		if err == nil && l.Removed {
			err = ErrNotFound
		}
		return err
	})
	if err != nil {
		return book.Lot{}, err
	}
	return l.Clone(), nil
}

// load reads a lot, a removed one too. What it returns may be remembered and must not be changed.
func (s *Store) load(p place, id int64) (book.Lot, error) {
	l := book.Lot{ID: id, Case: valuation.Defaults()}
	err := p.row(`SELECT revision, state, archived, removed_at IS NOT NULL FROM lots l WHERE id = ? AND `+intact("lots", "l"), id).
		Scan(&l.Revision, &l.State, &l.Archived, &l.Removed)
	if err != nil {
		return l, err
	}
	only := ""
	if c, ok := s.recent.at(id, l.Revision); ok {
		l.Case, only = c, ` AND part IN ('build', 'photos')`
	}
	bodies, err := p.bodies(id, only)
	if err != nil {
		return l, err
	}
	all := held(&l)
	for _, of := range lists { // after the objects, which are kept without them
		all = append(all, object{of.name, of.of(&l)})
	}
	for _, d := range all {
		if body, ok := bodies[d.name]; ok {
			if err := decodeOver(d.name, body, d.at); err != nil {
				return l, err
			}
		}
		delete(bodies, d.name)
	}
	l.Case.Update()
	for part := range bodies {
		return l, fmt.Errorf("%w: no part of a lot is called %s", ErrDamaged, part)
	}
	return l, nil
}

// held returns where in l the objects lie that are documents, without their lists but for those of the build, which are kept
// within it.
func held(l *book.Lot) (all []object) {
	for _, o := range objects(l) {
		if partOf(o.name) != "status" {
			all = append(all, o)
		}
	}
	return all
}

// stored returns l as its objects are kept.
func stored(l book.Lot) book.Lot {
	plain := bare(l)
	plain.Build = l.Build
	return plain
}

// listed are the columns of a lot that lists show, sort or filter by.
const listed = `state, archived, currency, number, sale, sale_date, vin, model_year, make, model, trim, imported_as, imported_row`

// shown returns the values of the columns listed.
func shown(l book.Lot) []any {
	x, from := l.Case.Lot, l.Build.Imported
	return []any{string(l.State), l.Archived, l.Case.Currency, x.Number, x.Sale, string(x.SaleDate), x.VIN, x.ModelYear, x.Make, x.Model,
		x.Trim, from.As, from.Row}
}

// insert keeps a lot that is not there yet and returns it with its id.
func (s *Store) insert(p place, l book.Lot) (book.Lot, error) {
	id, err := p.insert(`INSERT INTO lots (`+listed+`, saved_at) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
		append(shown(l), s.stamp())...)
	if err != nil {
		return l, err
	}
	l.ID = id
	if err := p.seal("lots", `id = ?`, id); err != nil {
		return l, err
	}
	plain := stored(l)
	for _, o := range held(&plain) {
		if err := p.putDocument(id, o.name, 0, o.at); err != nil {
			return l, err
		}
	}
	for _, of := range lists {
		if partOf(of.name) == "build" {
			continue
		}
		if err := p.putPages(l, of, 0, math.MaxInt); err != nil {
			return l, err
		}
	}
	return l, nil
}

// update writes the parts of a lot that a change touched and returns the lot with its revision, which rises with its case.
func (s *Store) update(p place, l book.Lot, made lotChange) (book.Lot, error) {
	touched := made.parts()
	for part := range touched {
		if ofCase(part) {
			l.Revision++
			break
		}
	}
	plain := stored(l)
	for _, o := range held(&plain) {
		if touched[o.name] {
			if err := p.putDocument(l.ID, o.name, 0, o.at); err != nil {
				return l, err
			}
		}
	}
	for _, of := range lists {
		s, ok := made.Lists[of.name]
		if !ok || partOf(of.name) == "build" {
			continue
		}
		if err := p.putPages(l, of, s.At, s.end()); err != nil {
			return l, err
		}
	}
	now := s.stamp()
	err := p.exec(`UPDATE lots SET (`+listed+`) = (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?), revision = ?, saved_at = ?,
		removed_at = CASE WHEN ? THEN coalesce(removed_at, ?) END WHERE id = ?`, append(shown(l), l.Revision, now, l.Removed, now, l.ID)...)
	if err != nil {
		return l, err
	}
	return l, p.seal("lots", `id = ?`, l.ID)
}
