package desk

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"slices"

	"walkline/store/book"
	"walkline/ui/damage"
	"walkline/ui/photo"
	"walkline/valuation/lot"
)

// small is the kind under which the small picture of a photograph is kept, and smallSide its longest side in pixels: what the
// worksheet shows on a screen of twice the usual density.
const (
	small     = "small"
	smallSide = 240
)

// MostPhotos is how many photographs a lot can have. Ours: more than a walk round a vehicle brings.
const MostPhotos = 300

// Kept is what came of files that were to be kept: the photographs, and why each other file is not one.
type Kept struct {
	Photos  []lot.Photo
	Refused []string
	Of      book.Subject // whose step it is to add them, as it was when the work began; empty: that of their lot where it is done
}

// KeepPhoto looks at the bytes of a file and keeps them with a small picture. The photograph is of no lot yet. It touches no
// state and may run on any goroutine. Errors: why the file cannot be kept.
func (d *Desk) KeepPhoto(name string, data []byte) (lot.Photo, error) {
	info, thumbnail, err := photo.ReadSmall(data, smallSide)
	if err != nil {
		return lot.Photo{}, err
	}
	if err := d.Files.KeepFile(info.Hash, info.Kind, data); err != nil {
		return lot.Photo{}, err
	}
	p := lot.Photo{Hash: info.Hash, Kind: info.Kind, Name: name, Width: info.Width, Height: info.Height, Taken: info.Taken, Stage: lot.Before}
	return p, d.Files.KeepFile(info.Hash, small, thumbnail)
}

// KeepBill keeps the photo or PDF of a bill and returns its hash. It touches no state and may run on any goroutine.
// Errors: why the file cannot be kept.
func (d *Desk) KeepBill(data []byte) (hash string, err error) {
	if !bytes.HasPrefix(data, []byte("%PDF-")) {
		info, err := photo.Read(data)
		if err != nil {
			return "", fmt.Errorf("it is no PDF, and as a photo: %w", err)
		}
		return info.Hash, d.Files.KeepFile(info.Hash, info.Kind, data)
	}
	if len(data) > photo.MostBytes {
		return "", fmt.Errorf("the file has more than %d MB", photo.MostBytes>>20)
	}
	sum := sha256.Sum256(data)
	hash = hex.EncodeToString(sum[:])
	return hash, d.Files.KeepFile(hash, "pdf", data)
}

// billKinds are the kinds of file that are kept of bills.
var billKinds = []string{"jpeg", "png", "webp", "pdf"}

// BillFile returns a kept file of a bill and its kind: jpeg, png, webp or pdf. It touches no state and may run on any goroutine.
// Errors: no such file is kept, or what is kept is not what was put there.
func (d *Desk) BillFile(hash string) (data []byte, kind string, err error) {
	for _, kind := range billKinds {
		if data, err = d.Files.KeptFile(hash, kind); err == nil {
			return data, kind, nil
		}
	}
	return nil, "", err
}

// AddPhotos adds photographs to a lot, pinned to an area (empty: the whole vehicle), as one step. One that the lot has already
// is not added again. What was refused is named.
func AddPhotos(id int64, kept Kept, area string, stage lot.Stage) Action {
	return keeps("add photos", func(ctx context.Context, d *Desk, s State, a Action) State {
		l, err := d.Book.Lot(ctx, id)
		if err != nil {
			return s.troubled("read the lot's photos", err)
		}
		list, again := slices.Clone(l.Photos), 0
		for _, p := range kept.Photos {
			if photoAt(list, p.Hash) >= 0 {
				again++
				continue
			}
			p.Area, p.Stage = area, stage
			list = append(list, p)
		}
		if len(list) > MostPhotos {
			return s.troubled(a.words, fmt.Errorf("a lot can have %d", MostPhotos))
		}
		added := len(list) - len(l.Photos)
		a.words = "add " + counted(added, "photo")
		if kept.Of != "" {
			a = a.ofSubject(kept.Of)
		}
		if s = d.savePhotos(ctx, s, a, l, list); s.Trouble != "" {
			return s
		}
		return s.afterAdding(added, again, kept.Refused)
	})
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

// RemovePhoto takes one of the photographs in hand off its lot; undo puts it back, for its file is left alone.
func RemovePhoto(hash string) Action {
	return onPhoto("remove photo", hash, func(list []lot.Photo, at int) []lot.Photo { return slices.Delete(list, at, at+1) },
		"The photo is removed. Undo puts it back.")
}

// Caption gives one of the photographs in hand its words.
func Caption(hash, words string) Action {
	return changePhoto("caption of a photo", hash, func(p *lot.Photo) { p.Caption = words })
}

// Pin pins one of the photographs in hand to an area; an empty one means the whole vehicle.
func Pin(hash, area string) Action {
	words := "photo of the whole vehicle"
	if area != "" {
		words = "photo of " + damage.Area(area)
	}
	return changePhoto(words, hash, func(p *lot.Photo) { p.Area = area })
}

// SetStage says whether one of the photographs in hand was taken before the work or after it.
func SetStage(hash string, stage lot.Stage) Action {
	return changePhoto("photo taken "+string(stage)+" the work", hash, func(p *lot.Photo) { p.Stage = stage })
}

func changePhoto(words, hash string, change func(*lot.Photo)) Action {
	return onPhoto(words, hash, func(list []lot.Photo, at int) []lot.Photo {
		change(&list[at])
		return list
	}, "")
}

// Pictured returns the lot whose photographs are in hand, with them: of the open build on its page, of the open lot elsewhere; 0: none is.
func (s State) Pictured() (id int64, list []lot.Photo) {
	switch {
	case s.Place == Builds && s.Build != nil:
		return s.Build.ID, s.Build.Photos
	case s.Place != Builds && s.Open != nil:
		return s.Open.ID, s.Open.Photos
	}
	return 0, nil
}

// onPhoto makes a step of what is done with one of the photographs in hand.
func onPhoto(words, hash string, change func(list []lot.Photo, at int) []lot.Photo, said string) Action {
	return keeps(words, func(ctx context.Context, d *Desk, s State, a Action) State {
		id, list := s.Pictured()
		if id == 0 {
			return s
		}
		at := photoAt(list, hash)
		if at < 0 {
			return s.troubled(words, errors.New("the lot has no such photo any more"))
		}
		return ifKept(d.savePhotos(ctx, s, a, book.Lot{ID: id, Photos: list}, change(slices.Clone(list), at)), said)
	})
}

func photoAt(list []lot.Photo, hash string) int {
	return slices.IndexFunc(list, func(p lot.Photo) bool { return p.Hash == hash })
}

// savePhotos keeps the photographs of a lot.
func (d *Desk) savePhotos(ctx context.Context, s State, a Action, before book.Lot, list []lot.Photo) State {
	if a.of == nil {
		a = a.ofSubject(s.photosOf(before.ID))
	}
	step := a.step(s)
	step.Lots = []book.Change{{Before: book.Lot{ID: before.ID, Photos: before.Photos}, After: book.Lot{ID: before.ID, Photos: list}}}
	s, _ = d.keep(ctx, s, "keep the photos", step)
	return s
}

// Photographing returns whose step it is to add photographs to the lot whose are in hand; empty: none are.
func (s State) Photographing() book.Subject {
	if id, _ := s.Pictured(); id != 0 {
		return s.photosOf(id)
	}
	return ""
}

// photosOf returns whose step a change of a lot's photographs is: on the page of builds its build's, where it has one, else its
// worksheet's.
func (s State) photosOf(id int64) book.Subject {
	if s.Place == Builds && slices.ContainsFunc(s.Bought, func(b book.Bought) bool { return b.ID == id }) {
		return book.Build(id)
	}
	return book.Worksheet(id)
}

// SmallPhoto returns the small picture of a photograph as JPEG, made anew where it is gone. It touches no state and may run on
// any goroutine. Errors: the photograph's file is gone or has changed.
func (d *Desk) SmallPhoto(p lot.Photo) ([]byte, error) {
	if data, err := d.Files.KeptFile(p.Hash, small); err == nil {
		return data, nil
	}
	data, err := d.LargePhoto(p, smallSide)
	if err != nil {
		return nil, err
	}
	return data, d.Files.KeepFile(p.Hash, small, data)
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
	return d.Files.KeptFile(p.Hash, p.Kind)
}
