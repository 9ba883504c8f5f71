package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"slices"
	"strings"

	"walkline/store/album"
	"walkline/store/plain"
	"walkline/valuation/lot"
)

// Salvaged is what was saved from a damaged file.
type Salvaged struct {
	Lots  int      // read whole, with all that is kept of them
	Lost  []string // sentence by sentence what could not be read
	Notes []string // what else there is to know
}

// Salvage writes what can be read of the store at path, which may be damaged, to a new store at to: lot by lot, and the settings,
// shelf and decisions row by row. A lot comes with all that was entered, or is named as lost; the history of undo comes whole or not at
// all. The damaged file is only read, as a copy; the photographs are copied too. A write-ahead file that does not go with it is left out.
// One of an older format is brought up to date first, as a copy. Errors: [fs.ErrExist]; [ErrNotDatabase], [ErrForeign], [ErrNewer] when it
// is no store that can be read; the new file can't be written: nothing is left of it then.
func Salvage(ctx context.Context, path, to string) (Salvaged, error) {
	return salvaged(ctx, path, to, photosOf(path))
}

// salvaged is [Salvage] of a file whose photographs may lie elsewhere. The new file bears its name when all of it and they are there.
func salvaged(ctx context.Context, path, to string, photos album.Folder) (Salvaged, error) {
	doing := "salvaging " + path
	if exists(to) {
		return Salvaged{}, fmt.Errorf("%s: %s: %w: choose another name", doing, to, fs.ErrExist)
	}
	dir, err := plain.TempFolder(to)
	if err != nil {
		return Salvaged{}, wrapped(doing, err)
	}
	defer plain.RemoveAll(dir)
	var s salvage
	coming := filepath.Join(dir, "whole")
	if err := s.run(ctx, path, filepath.Join(dir, "damaged"), coming); err != nil {
		return Salvaged{}, wrapped(doing, err)
	}
	if err := photos.CopyTo(ctx, photosOf(to)); err != nil {
		s.found.Lost = append(s.found.Lost, fmt.Sprintf("Not all photos could be copied: %v.", err))
	}
	return s.found, wrapped(doing, plain.Rename(coming, to))
}

// Salvage is [Salvage] of a store that is open, and stays so: nobody writes while its files are copied.
// Errors: as there; [ErrBusy].
func (s *Store) Salvage(ctx context.Context, to string) (found Salvaged, err error) {
	doing := "salvaging " + s.path
	dir, err := plain.TempFolder(to)
	if err != nil {
		return Salvaged{}, wrapped(doing, err)
	}
	defer plain.RemoveAll(dir)
	copied := filepath.Join(dir, "open")
	if err := s.write(ctx, doing, func(*sql.Tx) error { return copyWithLog(ctx, s.path, copied) }); err != nil {
		return Salvaged{}, err
	}
	return salvaged(ctx, copied, to, s.Album())
}

// salvage moves what can be read from one database to another.
type salvage struct {
	from  *sql.DB
	to    *Store
	found Salvaged
}

// run copies a damaged file, reads the copy and leaves a closed store.
func (s *salvage) run(ctx context.Context, path, copied, coming string) (err error) {
	if err := s.take(ctx, path, copied); err != nil {
		return err
	}
	if err := update(ctx, copied); err != nil { // then known says so
		s.found.Notes = append(s.found.Notes, fmt.Sprintf("Not brought up to date: %v.", err))
	}
	if s.from, err = salvaging.open(ctx, copied); err != nil {
		return err
	}
	defer s.from.Close()
	if err := s.known(ctx); err != nil {
		return err
	}
	if s.to, err = Open(ctx, coming); err != nil {
		return err
	}
	defer func() { err = errors.Join(err, s.to.Close()) }()
	if err := s.lots(ctx); err != nil {
		return err
	}
	return s.rest(ctx)
}

// take copies the damaged file, and its log where that goes with it.
func (s *salvage) take(ctx context.Context, path, copied string) error {
	if err := startsAsDatabase(path); err != nil {
		return err
	}
	_, err := pair(ctx, path)
	if errors.Is(err, errCut) {
		s.found.Lost = append(s.found.Lost, "The edits in the write-ahead file from the one on that is damaged.")
		return copyWithLog(ctx, path, copied)
	}
	if err != nil {
		s.found.Lost = append(s.found.Lost, fmt.Sprintf("The edits in the write-ahead file are left out: %v.", err))
		return plain.Copy(ctx, path, copied, mostBytes)
	}
	return copyWithLog(ctx, path, copied)
}

// update brings the copy of a file of an older format up to date. Errors: its damage lies where that is done.
func update(ctx context.Context, copied string) error {
	db, err := writing.open(ctx, copied)
	if err != nil {
		return err
	}
	defer db.Close()
	var application, version int
	err = db.QueryRowContext(ctx, `SELECT (SELECT application_id FROM pragma_application_id), (SELECT user_version FROM pragma_user_version)`).
		Scan(&application, &version)
	if err != nil || application != applicationID || version >= len(schema()) {
		return err
	}
	return migrate(ctx, db, schema())
}

// known refuses what is no store of this format.
func (s *salvage) known(ctx context.Context) error {
	var application, version int
	err := s.from.QueryRowContext(ctx, `SELECT (SELECT application_id FROM pragma_application_id), (SELECT user_version FROM `+
		`pragma_user_version)`).
		Scan(&application, &version)
	switch {
	case err != nil:
		return err
	case application != applicationID:
		return ErrForeign
	case version > len(schema()):
		return newer(version, len(schema()))
	case version < len(schema()):
		return fmt.Errorf("%w: it has the older format %d, and its damage keeps it from being brought up to date: restore a backup", ErrRefused,
			version)
	}
	return nil
}

// ofLot are the tables that hold rows of one lot, in the order in which they may be filled, and which rows.
var ofLot = [][2]string{
	{"lots", "x.id = ?"}, {"documents", "x.lot = ?"}, {"answers", "x.lot = ?"}, {"predictions", "x.lot = ?"},
	{"forecasts", "x.prediction IN (SELECT id FROM predictions WHERE lot = ?)"},
}

// lots moves lot by lot, by their ids, which are looked up one by one where their list can't be read.
func (s *salvage) lots(ctx context.Context) error {
	for _, id := range s.ids(ctx) {
		if err := ctx.Err(); err != nil {
			return err
		}
		err := s.lot(ctx, id)
		switch {
		case err == nil:
			s.found.Lots++
		case errors.Is(err, ErrFull), errors.Is(err, ErrNotWritable):
			return err
		case !errors.Is(err, ErrNotFound):
			s.found.Lost = append(s.found.Lost, fmt.Sprintf("Lot %s: %v.", s.name(ctx, id), err))
		}
	}
	return nil
}

// ids returns the ids of all lots that may be there.
func (s *salvage) ids(ctx context.Context) []int64 {
	all, err := column(ctx, s.from, `SELECT id FROM lots ORDER BY id`)
	if err == nil {
		return all
	}
	s.found.Notes = append(s.found.Notes, "The list of lots is damaged: lots were looked for one by one.")
	highest := slices.Max(append(all, 10_000))
	for _, query := range []string{`SELECT seq FROM sqlite_sequence WHERE name = 'lots'`, `SELECT max(lot) FROM documents`} {
		if found, err := column(ctx, s.from, query); err == nil && len(found) == 1 {
			highest = min(max(found[0], 1), 1_000_000)
			break
		}
	}
	all = nil
	for id := int64(1); id <= highest; id++ {
		all = append(all, id)
	}
	return all
}

// column returns the whole numbers that a query finds before it fails.
func column(ctx context.Context, db *sql.DB, query string, args ...any) (all []int64, err error) {
	rows, err := db.QueryContext(ctx, query, args...)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	for rows.Next() {
		var n int64
		if err := rows.Scan(&n); err != nil {
			return all, err
		}
		all = append(all, n)
	}
	return all, rows.Err()
}

// lot moves what is whole of one lot in one transaction, and reads it back. A lot comes with all of its documents or not at all.
// Errors: [ErrNotFound] when there is none of that id.
func (s *salvage) lot(ctx context.Context, id int64) error {
	bad := s.bad(ctx, id)
	if bad["documents"] != nil {
		return wrapped("it can't be read whole", bad["documents"])
	}
	return s.to.write(ctx, "it can't be read whole", func(tx *sql.Tx) error {
		p := place{ctx, tx}
		for _, of := range ofLot {
			if of[0] != "lots" && bad[of[0]] != nil {
				continue
			}
			n, err := s.move(p, of[0], of[1], id)
			if err == nil && n == 0 && of[0] == "lots" {
				err = ErrNotFound
			}
			if err != nil {
				return err
			}
		}
		return s.marked(p, id, bad["lots"])
	})
}

// bad finds which tables have rows of a lot that are not whole, and says what is lost by that.
func (s *salvage) bad(ctx context.Context, id int64) map[string]error {
	bad := map[string]error{}
	for _, of := range ofLot {
		if _, err := column(ctx, s.from, "SELECT count(*) FROM "+of[0]+" x WHERE "+of[1]+" AND "+intact(of[0], "x"), id); err != nil {
			bad[of[0]] = wrapped("it can't be read whole", err)
		}
	}
	lost := func(what string, err error) {
		s.found.Lost = append(s.found.Lost, fmt.Sprintf("%s lot %s: %v.", what, s.name(ctx, id), err))
	}
	if err := errors.Join(bad["predictions"], bad["forecasts"]); err != nil && bad["documents"] == nil {
		bad["predictions"], bad["forecasts"] = err, err // a forecast belongs to its prediction
		lost("The forecast of", err)
	}
	if bad["answers"] != nil {
		s.found.Notes = append(s.found.Notes, fmt.Sprintf("The last answer for lot %s is left out: open the lot to have it anew.",
			s.name(ctx, id)))
	}
	return bad
}

// marked reads a lot that was moved. Where the row with its marks was not whole, what lists show is written anew from its documents; that
// it was removed is not believed.
func (s *salvage) marked(p place, id int64, altered error) error {
	if altered == nil {
		_, err := s.to.load(p, id)
		return err
	}
	if err := p.seal("lots", "id = ?", id); err != nil {
		return err
	}
	l, err := s.to.load(p, id)
	if err != nil {
		return err
	}
	if l.Removed = false; !slices.Contains(lot.States, l.State) {
		l.State = lot.ToLookAt
	}
	if _, err = s.to.update(p, l, lotChange{}); err == nil {
		s.found.Lost = append(s.found.Lost, fmt.Sprintf("Lot %s is saved, but check how it is marked (state, archived, removed): %v.",
			s.name(p.ctx, id), altered))
	}
	return err
}

// name returns what a lot is called as far as that can be read.
func (s *salvage) name(ctx context.Context, id int64) string {
	var number, maker, model string
	var year int
	err := s.from.QueryRowContext(ctx, `SELECT number, model_year, make, model FROM lots WHERE id = ?`, id).Scan(&number, &year, &maker,
		&model)
	if err != nil {
		return fmt.Sprintf("with the id %d", id)
	}
	return strings.TrimSpace(fmt.Sprintf("%s (%d %s %s)", number, year, maker, model))
}

// rest moves what is the shop's, row by row, and the history where all of it and all lots can be read.
func (s *salvage) rest(ctx context.Context) error {
	for _, t := range []struct{ name, words string }{{"settings", "settings"}, {"shelf", "shelf of comparables"},
		{"factors", "decisions on learned factors"}} {
		err := s.moved(ctx, t.name, "TRUE")
		if err != nil {
			err = s.rows(ctx, t.name)
		}
		if err := s.lacks(ctx, t.words, err); err != nil {
			return err
		}
	}
	if len(s.found.Lost) > 0 {
		s.found.Notes = append(s.found.Notes, "The history of undo and redo is left out, since it speaks of what is lost.")
		return nil
	}
	return s.lacks(ctx, "history of undo and redo", s.moved(ctx, "steps", "TRUE"))
}

// lacks says what was not moved, unless nothing can be written.
func (s *salvage) lacks(ctx context.Context, words string, err error) error {
	if errors.Is(err, ErrFull) || errors.Is(err, ErrNotWritable) || ctx.Err() != nil {
		return errors.Join(err, ctx.Err())
	}
	if err != nil {
		s.found.Lost = append(s.found.Lost, fmt.Sprintf("The %s: %v.", words, err))
	}
	return nil
}

// rows moves the rows of a table one by one, and returns what it found wrong.
func (s *salvage) rows(ctx context.Context, table string) (all error) {
	key := summed[table].key
	rows, err := s.from.QueryContext(ctx, "SELECT "+key+" FROM "+table)
	if err != nil {
		return wrapped("it can't be read", err)
	}
	defer rows.Close()
	for rows.Next() {
		var at any
		if err := rows.Scan(&at); err != nil {
			return errors.Join(all, err)
		}
		if err := s.moved(ctx, table, key+" = ?", at); err != nil {
			all = errors.Join(all, err)
		}
	}
	return errors.Join(all, wrapped("not all can be read", rows.Err()))
}

// moved is move in a transaction, of rows that are intact.
func (s *salvage) moved(ctx context.Context, table, where string, args ...any) error {
	return s.to.write(ctx, "it can't be read whole", func(tx *sql.Tx) error {
		_, err := s.move(place{ctx, tx}, table, where+" AND "+intact(table, "x"), args...)
		return err
	})
}

// move copies the rows of a table that a condition names, all of them or, by an error, none, and returns their number.
func (s *salvage) move(p place, table, where string, args ...any) (n int, err error) {
	rows, err := s.from.QueryContext(p.ctx, "SELECT * FROM "+table+" x WHERE "+where, args...)
	if err != nil {
		return 0, err
	}
	defer rows.Close()
	names, err := rows.Columns()
	if err != nil {
		return 0, err
	}
	values, into := make([]any, len(names)), make([]any, len(names))
	for i := range values {
		into[i] = &values[i]
	}
	insert := "INSERT INTO " + table + " (" + strings.Join(names, ", ") + ") VALUES (?" + strings.Repeat(", ?", len(names)-1) + ")"
	for rows.Next() {
		if err := rows.Scan(into...); err != nil {
			return n, err
		}
		if err := p.exec(insert, values...); err != nil {
			return n, err
		}
		n++
	}
	return n, rows.Err()
}
