package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"
	"time"
)

// looking is how long the check at opening may take. Ours: a start must not be felt. What it leaves, [Store.Check] looks at.
const looking = time.Second

// quickCheck looks at every page of a database. Errors: [ErrDamaged].
func quickCheck(ctx context.Context, db *sql.DB) error { return verdict(ctx, db, "quick_check") }

// verdict runs a check of SQLite's and returns the first thing that it finds.
func verdict(ctx context.Context, db *sql.DB, check string) error {
	var found string
	if err := db.QueryRowContext(ctx, "PRAGMA "+check+"(1)").Scan(&found); err != nil {
		return err
	}
	if found != "ok" {
		return worded{ErrDamaged, errors.New(found)}
	}
	return nil
}

// glance is the quick check as far as it comes in a short time.
func glance(ctx context.Context, db *sql.DB) error {
	short, cancel := context.WithTimeout(ctx, looking)
	defer cancel()
	err := quickCheck(short, db)
	if short.Err() != nil && ctx.Err() == nil && !errors.Is(err, ErrDamaged) {
		return nil
	}
	return err
}

// LookAtPages looks at every page of a file that was opened by [OpenAtOnce], as [Open] does first. Errors: [ErrDamaged]; the context's.
func (s *Store) LookAtPages(ctx context.Context) error {
	return wrapped("looking at "+s.path, quickCheck(ctx, s.reader))
}

// Check looks at all that the file holds: every page, every index, every rule of a row, every sum of one, and whether lists show of a lot
// what is kept of it. It may take as long as reading the file
// does, and others go on meanwhile. Errors: [ErrDamaged] with the first thing found; the context's.
func (s *Store) Check(ctx context.Context) error {
	doing := "checking " + s.path
	if err := verdict(ctx, s.reader, "integrity_check"); err != nil {
		return wrapped(doing, err)
	}
	for _, table := range slices.Sorted(maps.Keys(summed)) {
		if _, err := column(ctx, s.reader, `SELECT count(*) FROM `+table+` x WHERE `+intact(table, "x")); err != nil {
			return wrapped(doing, err)
		}
	}
	ids, err := column(ctx, s.reader, `SELECT id FROM lots ORDER BY id`)
	for _, id := range ids {
		if err != nil {
			break
		}
		err = s.read(ctx, doing, func(tx *sql.Tx) error { return checkLot(place{ctx, tx}, id) })
	}
	return wrapped(doing, err)
}

// checkLot reads a lot anew, and compares what lists show of it.
func checkLot(p place, id int64) error {
	l, err := new(Store).load(p, id)
	if err != nil {
		return fmt.Errorf("lot %d: %w", id, err)
	}
	var same bool
	columns := strings.ReplaceAll(listed, ",", " IS ? AND")
	if err := p.row(`SELECT `+columns+` IS ? FROM lots WHERE id = ?`, append(shown(l), id)...).Scan(&same); err != nil || same {
		return err
	}
	return fmt.Errorf("lot %d: %w: %w (the list)", id, ErrDamaged, ErrAltered)
}
