package store

import (
	"context"
	"path/filepath"
	"testing"

	"walkline/valuation"
)

// TestASaveSeesWhatAnotherStoreWrote lets two stores save the same lot in turn: what one remembers must not hide what
// the other wrote.
func TestASaveSeesWhatAnotherStoreWrote(t *testing.T) {
	ctx := context.Background()
	path := filepath.Join(t.TempDir(), "shop.db")
	var stores [2]*Store
	for i := range stores {
		s, err := Open(ctx, path)
		if err != nil {
			t.Fatal(err)
		}
		defer s.Close()
		stores[i] = s
	}
	c := valuation.Defaults()
	id, err := stores[0].Add(ctx, c)
	if err != nil {
		t.Fatal(err)
	}
	for round, make := range []string{"Kettrick", "Ostrane", "Kettrick", "Ostrane"} {
		c.Lot.Make = make
		if err := stores[round%2].Save(ctx, id, "make", c); err != nil {
			t.Fatal(err)
		}
		if got, _ := stores[1-round%2].Case(ctx, id); got.Lot.Make != make {
			t.Fatalf("round %d: the file has %q, want %q", round, got.Lot.Make, make)
		}
	}
	if _, err := stores[1].Undo(ctx, id); err != nil {
		t.Fatal(err)
	}
	if err := stores[1].Save(ctx, id, "make", c); err != nil { // as before the undo: stored again, not taken for unchanged
		t.Fatal(err)
	}
	if got, _ := stores[0].Case(ctx, id); got.Lot.Make != "Ostrane" {
		t.Errorf("after undo and save the file has %q", got.Lot.Make)
	}
}

// TestWhatIsRememberedIsACopy changes a case after it was saved.
func TestWhatIsRememberedIsACopy(t *testing.T) {
	ctx := context.Background()
	s, err := Open(ctx, filepath.Join(t.TempDir(), "shop.db"))
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	c := valuation.Defaults()
	id, err := s.Add(ctx, c)
	if err != nil {
		t.Fatal(err)
	}
	c.Findings = map[string]string{"a": "yes"}
	for _, answer := range []string{"yes", "no"} {
		c.Findings["a"] = answer
		if err := s.Save(ctx, id, answer, c); err != nil {
			t.Fatal(err)
		}
	}
	if got, _ := s.Case(ctx, id); got.Findings["a"] != "no" {
		t.Errorf("the file has %q", got.Findings["a"])
	}
}
