package store

import (
	"context"
	"database/sql"
	"embed"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"strings"
	"time"

	"walkline/store/plain"
)

// applicationID marks a file as ours: the letters WALK. Source: ours.
const applicationID = 0x57414C4B

//go:embed migrations/*.sql
var migrations embed.FS

// moveHere is the line of a migration in whose middle the program moves what SQL can't.
const moveHere = "-- here the program moves"

// moves are the ways in which the program does that, by the format that a migration leads to.
var moves = map[int]func(place) error{
	5: func(p place) error { return upgrade{p}.run() },
	7: func(p place) error { return shelving{place: p}.run() },
	8: func(p place) error { return sealing{p}.run() },
}

// schema returns the text of every migration in order. A migration that has landed is never edited.
func schema() []string {
	names, err := fs.Glob(migrations, "migrations/*.sql") // sorted
	if err != nil {
		panic(err)
	}
	var texts []string
	for _, name := range names {
		text, err := migrations.ReadFile(name)
		if err != nil {
			panic(err)
		}
		texts = append(texts, string(text))
	}
	return texts
}

// migrate brings the file from its version to the last of steps, each step in one transaction with its number.
func migrate(ctx context.Context, db *sql.DB, steps []string) error {
	for i, step := range steps {
		if err := migrateTo(ctx, db, i+1, step); err != nil {
			return fmt.Errorf("bringing the file to format %d: %w", i+1, err)
		}
	}
	return nil
}

// migrateTo runs one step unless the file is already past it. The version is read inside the transaction: another
// window may have got there first.
func migrateTo(ctx context.Context, db *sql.DB, version int, step string) error {
	tx, err := db.BeginTx(ctx, nil)
	if err != nil {
		return err
	}
	defer tx.Rollback()
	var have int
	if err := tx.QueryRowContext(ctx, "PRAGMA user_version").Scan(&have); err != nil || have >= version {
		return err
	}
	before, after, stops := strings.Cut(step, moveHere)
	if _, err := tx.ExecContext(ctx, before); err != nil {
		return err
	}
	if stops {
		if err := moves[version](place{ctx, tx}); err != nil {
			return err
		}
	}
	mark := fmt.Sprintf("PRAGMA user_version = %d; PRAGMA application_id = %d;", version, applicationID)
	if _, err := tx.ExecContext(ctx, "--"+after+"\n"+mark); err != nil {
		return err
	}
	return tx.Commit()
}

// copyBefore writes a whole copy of the file beside it and returns the copy's path. An older copy is never overwritten.
func (s *Store) copyBefore(ctx context.Context, version int) (string, error) {
	target := freeName(fmt.Sprintf("%s.format%d-%s", s.path, version, stampOf(s.now())))
	coming := target + plain.Ending
	if err := plain.Remove(coming); err != nil { // of a program that was killed in this second
		return "", err
	}
	if err := vacuum(ctx, s.writer, coming); err != nil {
		return "", errors.Join(err, plain.Remove(coming))
	}
	return target, plain.Rename(coming, target)
}

// vacuum writes a copy of the file to an absolute path where there is none, and waits until it is on the disk.
func vacuum(ctx context.Context, db *sql.DB, target string) error {
	if _, err := db.ExecContext(ctx, "VACUUM INTO ?", target); err != nil {
		return err
	}
	return plain.Sync(target)
}

// stampOf is a time as it stands in the name of a copy.
func stampOf(t time.Time) string { return t.UTC().Format("20060102T150405Z") }

func exists(path string) bool {
	_, err := os.Lstat(path)
	return err == nil
}
