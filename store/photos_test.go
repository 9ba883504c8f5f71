package store

import (
	"errors"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"walkline/valuation"
	"walkline/valuation/lot"
)

// landedPhotos are those of a file of format 4.
func landedPhotos() []lot.Photo {
	return []lot.Photo{
		{Hash: strings.Repeat("0a", 32), Kind: "jpeg", Name: "IMG 1.JPG", Width: 4032, Height: 3024, Taken: "2026-01-02", Area: "12", Stage: lot.Before, Caption: "grille"},
		{Hash: strings.Repeat("0b", 32), Kind: "png", Name: "b.png", Width: 20, Height: 30, Area: "", Stage: lot.After}}
}

// checkLandedPhotos checks what format 4 added: two photographs of lot 2, and the step that added them.
func checkLandedPhotos(t *testing.T, s *Store) {
	t.Helper()
	wantPhotos(t, s, 2, landedPhotos())
	u, err := s.Undo(t.Context(), 2)
	if err != nil || u.Label != "add 2 photos" {
		t.Fatalf("undo: %+v, %v", u, err)
	}
	wantPhotos(t, s, 2, nil)
}

func wantPhotos(t *testing.T, s *Store, id int64, want []lot.Photo) {
	t.Helper()
	got, err := s.Photos(t.Context(), id)
	if err != nil || !slices.Equal(got, want) {
		t.Fatalf("photos %+v, %v, want %+v", got, err, want)
	}
}

func TestPhotosShareTheHistoryOfTheirLot(t *testing.T) {
	s := opened(t)
	ctx := t.Context()
	c := valuation.Defaults()
	id, err := s.Add(ctx, c)
	if err != nil {
		t.Fatal(err)
	}
	two := landedPhotos()
	renamed := slices.Clone(two)
	renamed[0].Caption, renamed[0].Area = "bent", "01"
	c.Lot.Make = "Tarn"
	for _, save := range []func() error{func() error { return s.SavePhotos(ctx, id, "add", two) }, func() error { return s.Save(ctx, id, "make", c) }, func() error { return s.SavePhotos(ctx, id, "caption", renamed) },
		func() error { return s.SavePhotos(ctx, id, "nothing new", renamed) }, func() error { return s.SavePhotos(ctx, id, "remove", renamed[1:]) }} {
		if err := save(); err != nil {
			t.Fatal(err)
		}
	}
	s.Close()
	s = reopened(t, s.path)
	wantPhotos(t, s, id, renamed[1:])
	for _, step := range []struct {
		label, brand string
		photos       []lot.Photo
	}{{"remove", "Tarn", renamed}, {"caption", "Tarn", two}, {"make", "", two}, {"add", "", nil}} {
		u, err := s.Undo(ctx, id)
		if err != nil || u.Label != step.label || u.Case.Lot.Make != step.brand {
			t.Fatalf("undo: %q, make %q, %v, want %+v", u.Label, u.Case.Lot.Make, err, step)
		}
		wantPhotos(t, s, id, step.photos)
	}
	for range 4 {
		if _, err := s.Redo(ctx, id); err != nil {
			t.Fatal(err)
		}
	}
	wantPhotos(t, s, id, renamed[1:])
}

func TestPhotosThatCannotBeKept(t *testing.T) {
	s := opened(t)
	id, err := s.Add(t.Context(), valuation.Defaults())
	if err != nil {
		t.Fatal(err)
	}
	for name, change := range map[string]func(*lot.Photo){"hash": func(p *lot.Photo) { p.Hash = "xyz" }, "kind": func(p *lot.Photo) { p.Kind = "heic" },
		"area": func(p *lot.Photo) { p.Area = "roof rack" }, "stage": func(p *lot.Photo) { p.Stage = "during" }, "width": func(p *lot.Photo) { p.Width = 0 }, "taken": func(p *lot.Photo) { p.Taken = "noon" }} {
		list := landedPhotos()
		change(&list[0])
		if err := s.SavePhotos(t.Context(), id, "add", list); !errors.Is(err, ErrRefused) {
			t.Errorf("%s: %v", name, err)
		}
	}
	if err := s.SavePhotos(t.Context(), id+1, "add", landedPhotos()); !errors.Is(err, ErrNotFound) {
		t.Errorf("of no lot: %v", err)
	}
	if r, err := s.Reach(t.Context(), id); err != nil || r.CanUndo {
		t.Errorf("what was refused left a step: %+v, %v", r, err)
	}
	wantPhotos(t, s, id, nil)
}

func TestEveryAreaCanHaveAPhoto(t *testing.T) {
	s := opened(t)
	id, err := s.Add(t.Context(), valuation.Defaults())
	if err != nil {
		t.Fatal(err)
	}
	var list []lot.Photo
	for _, area := range lot.Areas {
		p := landedPhotos()[0]
		p.Area = area
		list = append(list, p)
	}
	if err := s.SavePhotos(t.Context(), id, "add", list); err != nil {
		t.Fatal(err)
	}
	wantPhotos(t, s, id, list)
}

func TestFilesLieBesideTheStore(t *testing.T) {
	s := opened(t)
	const abc = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad" // FIPS 180-4, the example "abc"
	if err := s.KeepFile(abc, "jpeg", []byte("abc")); err != nil {
		t.Fatal(err)
	}
	if data, err := s.KeptFile(abc, "jpeg"); err != nil || string(data) != "abc" {
		t.Errorf("%q, %v", data, err)
	}
	if names, _ := filepath.Glob(s.path + ".photos/*"); len(names) != 1 {
		t.Errorf("beside the store: %q", names)
	}
}
