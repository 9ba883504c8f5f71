package desk

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"slices"

	"walkline/ui/damage"
	"walkline/ui/photo"
	"walkline/valuation/lot"
)

// Album keeps the photographs of lots, and the files behind them by their hash.
type Album interface {
	Photos(ctx context.Context, lot int64) ([]lot.Photo, error)
	// SavePhotos keeps the photographs of a lot as one step of its history, which label names.
	SavePhotos(ctx context.Context, lot int64, label string, photos []lot.Photo) error
	KeepFile(hash, kind string, data []byte) error
	KeptFile(hash, kind string) ([]byte, error)
}

// small is the kind under which the small picture of a photograph is kept, and smallSide its longest side in pixels: what the
// worksheet shows on a screen of twice the usual density.
const (
	small     = "small"
	smallSide = 240
)

// MostPhotos is how many photographs a lot can have. Ours: more than a walk round a vehicle brings.
const MostPhotos = 300

// errNoAlbum says that the desk was given none.
var errNoAlbum = errors.New("photos cannot be kept here")

// Kept is what came of files that were to be kept: the photographs, and why each other file is not one.
type Kept struct {
	Photos  []lot.Photo
	Refused []string
}

// KeepPhoto looks at the bytes of a file and keeps them with a small picture. The photograph is of no lot yet. It touches no
// state and may run on any goroutine. Errors: why the file cannot be kept.
func (d *Desk) KeepPhoto(name string, data []byte) (lot.Photo, error) {
	if d.Album == nil {
		return lot.Photo{}, errNoAlbum
	}
	info, thumbnail, err := photo.ReadSmall(data, smallSide)
	if err != nil {
		return lot.Photo{}, err
	}
	if err := d.Album.KeepFile(info.Hash, info.Kind, data); err != nil {
		return lot.Photo{}, err
	}
	p := lot.Photo{Hash: info.Hash, Kind: info.Kind, Name: name, Width: info.Width, Height: info.Height, Taken: info.Taken, Stage: lot.Before}
	return p, d.Album.KeepFile(info.Hash, small, thumbnail)
}

// KeepBill keeps the photo or PDF of a bill and returns its hash. It touches no state and may run on any goroutine.
// Errors: why the file cannot be kept.
func (d *Desk) KeepBill(data []byte) (hash string, err error) {
	if d.Album == nil {
		return "", errNoAlbum
	}
	if !bytes.HasPrefix(data, []byte("%PDF-")) {
		info, err := photo.Read(data)
		if err != nil {
			return "", fmt.Errorf("it is no PDF, and as a photo: %w", err)
		}
		return info.Hash, d.Album.KeepFile(info.Hash, info.Kind, data)
	}
	if len(data) > photo.MostBytes {
		return "", fmt.Errorf("the file has more than %d MB", photo.MostBytes>>20)
	}
	sum := sha256.Sum256(data)
	hash = hex.EncodeToString(sum[:])
	return hash, d.Album.KeepFile(hash, "pdf", data)
}

// billPicture returns the picture that is kept of a bill; none where it is a PDF, or no file is kept.
func (d *Desk) billPicture(hash string) []byte {
	for _, kind := range []string{"jpeg", "png", "webp"} {
		if data, err := d.Album.KeptFile(hash, kind); err == nil {
			return data
		}
	}
	return nil
}

// AddPhotos adds photographs to a lot, pinned to an area (empty: the whole vehicle), as one step. One that the lot has already
// is not added again. What was refused is named.
func (d *Desk) AddPhotos(ctx context.Context, s State, id int64, kept Kept, area string, stage lot.Stage) State {
	there, err := d.photos(ctx, id)
	if err != nil {
		return s.troubled("read the lot's photos", err)
	}
	list, again := slices.Clone(there), 0
	for _, p := range kept.Photos {
		if photoAt(list, p.Hash) >= 0 {
			again++
			continue
		}
		p.Area, p.Stage = area, stage
		list = append(list, p)
	}
	if len(list) > MostPhotos {
		return s.troubled("add the photos", fmt.Errorf("a lot can have %d", MostPhotos))
	}
	added := len(list) - len(there)
	if added > 0 {
		s = d.savePhotos(ctx, s, id, "add "+counted(added, "photo"), list)
	}
	if s.Trouble != "" && added > 0 {
		return s
	}
	return s.afterAdding(added, again, kept.Refused)
}

// afterAdding says what came of files that were to be added.
func (s State) afterAdding(added, again int, refused []string) State {
	said := counted(added, "photo") + " added."
	if again > 0 {
		said += " " + counted(again, "photo") + " the lot had already."
	}
	if len(refused) == 0 {
		return s.said(said)
	}
	s.Notice = ""
	s.Trouble = said + " Not added: " + refused[0]
	if n := len(refused) - 1; n > 0 {
		s.Trouble += fmt.Sprintf(" (and %d more)", n)
	}
	return s
}

// counted returns "1 photo", "2 photos".
func counted(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// RemovePhoto takes a photograph off the open lot; undo puts it back, for its file is left alone.
func (d *Desk) RemovePhoto(ctx context.Context, s State, hash string) State {
	s = d.withPhoto(ctx, s, hash, "remove photo", func(list []lot.Photo, at int) []lot.Photo { return slices.Delete(list, at, at+1) })
	if s.Trouble != "" {
		return s
	}
	return s.said("The photo is removed. Undo puts it back.")
}

// Caption gives a photograph of the open lot its words.
func (d *Desk) Caption(ctx context.Context, s State, hash, words string) State {
	return d.changePhoto(ctx, s, hash, "caption of a photo", func(p *lot.Photo) { p.Caption = words })
}

// Pin pins a photograph of the open lot to an area; an empty one means the whole vehicle.
func (d *Desk) Pin(ctx context.Context, s State, hash, area string) State {
	label := "photo of the whole vehicle"
	if area != "" {
		label = "photo of " + damage.Area(area)
	}
	return d.changePhoto(ctx, s, hash, label, func(p *lot.Photo) { p.Area = area })
}

// SetStage says whether a photograph of the open lot was taken before the work or after it.
func (d *Desk) SetStage(ctx context.Context, s State, hash string, stage lot.Stage) State {
	return d.changePhoto(ctx, s, hash, "photo taken "+string(stage)+" the work", func(p *lot.Photo) { p.Stage = stage })
}

func (d *Desk) changePhoto(ctx context.Context, s State, hash, label string, change func(*lot.Photo)) State {
	return d.withPhoto(ctx, s, hash, label, func(list []lot.Photo, at int) []lot.Photo {
		change(&list[at])
		return list
	})
}

// withPhoto makes a step of what is done with one photograph of the open lot.
func (d *Desk) withPhoto(ctx context.Context, s State, hash, label string, do func(list []lot.Photo, at int) []lot.Photo) State {
	if s.Open == nil {
		return s
	}
	list := slices.Clone(s.Open.Photos)
	at := photoAt(list, hash)
	if at < 0 {
		return s.troubled(label, errors.New("the lot has no such photo any more"))
	}
	return d.savePhotos(ctx, s, s.Open.ID, label, do(list, at))
}

func photoAt(list []lot.Photo, hash string) int {
	return slices.IndexFunc(list, func(p lot.Photo) bool { return p.Hash == hash })
}

// savePhotos keeps the photographs of a lot, and shows them when it is the open one.
func (d *Desk) savePhotos(ctx context.Context, s State, id int64, label string, list []lot.Photo) State {
	if d.Album == nil {
		return s.troubled("keep the photos", errNoAlbum)
	}
	if err := d.Album.SavePhotos(ctx, id, label, list); err != nil {
		return s.troubled("keep the photos", err)
	}
	s.Notice, s.Trouble = "", ""
	if s.Open == nil || s.Open.ID != id {
		return s
	}
	o := *s.Open
	o.Photos = list
	return d.reach(ctx, s.with(o))
}

// photos returns the photographs of a lot; none where no album is.
func (d *Desk) photos(ctx context.Context, id int64) ([]lot.Photo, error) {
	if d.Album == nil {
		return nil, nil
	}
	return d.Album.Photos(ctx, id)
}

// withPhotos returns an open lot with its photographs as they are kept.
func (d *Desk) withPhotos(ctx context.Context, s State, o Open) (Open, State) {
	list, err := d.photos(ctx, o.ID)
	if err != nil {
		return o, s.troubled("read the lot's photos", err)
	}
	o.Photos = list
	return o, s
}

// SmallPhoto returns the small picture of a photograph as JPEG, made anew where it is gone. It touches no state and may run on
// any goroutine. Errors: the photograph's file is gone or has changed.
func (d *Desk) SmallPhoto(p lot.Photo) ([]byte, error) {
	if d.Album == nil {
		return nil, errNoAlbum
	}
	if data, err := d.Album.KeptFile(p.Hash, small); err == nil {
		return data, nil
	}
	data, err := d.LargePhoto(p, smallSide)
	if err != nil {
		return nil, err
	}
	return data, d.Album.KeepFile(p.Hash, small, data)
}

// LargePhoto returns a photograph upright, no side longer than side pixels, as JPEG. It touches no state and may run on any
// goroutine. Errors: as [Desk.SmallPhoto].
func (d *Desk) LargePhoto(p lot.Photo, side int) ([]byte, error) {
	data, err := d.PhotoFile(p)
	if err != nil {
		return nil, err
	}
	return photo.Small(data, side)
}

// PhotoFile returns the file of a photograph as it came. Errors: as [Desk.SmallPhoto].
func (d *Desk) PhotoFile(p lot.Photo) ([]byte, error) {
	if d.Album == nil {
		return nil, errNoAlbum
	}
	return d.Album.KeptFile(p.Hash, p.Kind)
}
