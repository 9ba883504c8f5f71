package store

import (
	"context"
	"database/sql"
	"fmt"

	"walkline/store/album"
	"walkline/valuation/lot"
)

// Photos returns the photographs of a lot in their order; none for a lot that there is not.
func (s *Store) Photos(ctx context.Context, id int64) (list []lot.Photo, err error) {
	err = s.read(ctx, fmt.Sprintf("reading the photos of lot %d", id), func(tx *sql.Tx) error {
		list, err = loadPhotos(place{ctx, tx, id})
		return err
	})
	return list, err
}

// SavePhotos writes the photographs of a lot, and only what differs, with a step of the lot's history that label names. The
// files are not touched: undo brings a photograph back whose file was never thrown away.
// Errors: as [Store.Save].
func (s *Store) SavePhotos(ctx context.Context, id int64, label string, photos []lot.Photo) error {
	return s.write(ctx, fmt.Sprintf("saving the photos of lot %d", id), func(tx *sql.Tx) error {
		p := place{ctx, tx, id}
		if err := present(p); err != nil {
			return err
		}
		stored, err := loadPhotos(p)
		if err != nil {
			return err
		}
		ch := spliceOf(stored, photos, alike)
		if ch.empty() {
			return nil
		}
		if err := s.remember(p, label, change{Photos: &ch}); err != nil {
			return err
		}
		return ch.write(p, "photos", insertPhoto)
	})
}

// Album returns where the files of photographs are kept: a folder beside the store, named after it.
func (s *Store) Album() album.Folder { return photosOf(s.path) }

// KeepFile keeps a file by its hash. Errors: as [album.Folder.Keep].
func (s *Store) KeepFile(hash, kind string, data []byte) error {
	return wrapped("keeping a file", s.Album().Keep(hash, kind, data))
}

// KeptFile returns a file by its hash. Errors: as [album.Folder.File].
func (s *Store) KeptFile(hash, kind string) ([]byte, error) {
	data, err := s.Album().File(hash, kind)
	return data, wrapped("reading a kept file", err)
}

// present fails when there is no such lot, or it is removed.
func present(p place) error {
	var one int
	return p.row(`SELECT 1 FROM lots WHERE id = ? AND removed_at IS NULL`).Scan(&one)
}

func loadPhotos(p place) ([]lot.Photo, error) {
	var list []lot.Photo
	err := p.each(`SELECT hash, kind, name, width, height, taken, area, stage, caption FROM photos WHERE lot = ? ORDER BY position`,
		func(rows *sql.Rows) error {
			var x lot.Photo
			err := rows.Scan(&x.Hash, &x.Kind, &x.Name, &x.Width, &x.Height, &x.Taken, &x.Area, &x.Stage, &x.Caption)
			list = append(list, x)
			return err
		})
	return list, err
}

func insertPhoto(p place, position int, x lot.Photo) error {
	return p.exec(`INSERT INTO photos (lot, position, hash, kind, name, width, height, taken, area, stage, caption)
		VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
		p.lot, position, x.Hash, x.Kind, x.Name, x.Width, x.Height, x.Taken, x.Area, x.Stage, x.Caption)
}

// stepPhotos does a change of history to the photographs of a lot.
func stepPhotos(p place, ch *splice[lot.Photo]) error {
	if ch == nil {
		return nil
	}
	stored, err := loadPhotos(p)
	if err != nil {
		return err
	}
	if _, err := ch.apply(stored); err != nil {
		return err
	}
	return ch.write(p, "photos", insertPhoto)
}
