package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
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
		return fmt.Errorf("%w (%s)", ErrDamaged, found)
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

// Check looks at all that the file holds: every page, every index, every rule of a row. It may take as long as reading the file
// does, and others go on meanwhile. Errors: [ErrDamaged] with the first thing found; the context's.
func (s *Store) Check(ctx context.Context) error {
	return wrapped("checking "+s.path, verdict(ctx, s.reader, "integrity_check"))
}
