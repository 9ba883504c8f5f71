// Package trial answers one question: what stands behind a page or a desk while it is tested?
//
// It gives tests a store in a file of its own, a desk over it without catalogues, and a user who does what a page asks for as the window
// does: each action on the desk, then the page is shown. Only tests use it.
package trial

import (
	"context"
	"path/filepath"
	"testing"

	"walkline/cmd/wire"
	"walkline/store"
	"walkline/store/book"
	"walkline/store/plain"
	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/lot"
)

// Today is the day of every trial.
const Today lot.Date = "2026-11-20"

// Store opens a store in a new file, for as long as the test lasts.
func Store(t testing.TB) *store.Store {
	t.Helper()
	file, err := store.Open(context.Background(), filepath.Join(t.TempDir(), "walkline.db"))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := file.Close(); err != nil {
			t.Error(err)
		}
	})
	return file
}

// Desk returns a desk over a store, with empty catalogues; the starter's terms are nobody's but for the currency, USD.
func Desk(kept wire.Store) *desk.Desk {
	starter := valuation.Defaults()
	starter.Currency = "USD"
	return &desk.Desk{Book: kept, Read: plain.Read, Files: kept, Vault: kept, Importer: wire.Importer{}, Lister: wire.Lister{},
		Past: wire.PastTables{}, Look: wire.Kinds, Listing: wire.Listing,
		Documents: wire.Documents{}, Starter: starter,
		Today: func() lot.Date { return Today }, Demo: func() []valuation.Case { return []valuation.Case{starter, starter} }}
}

// Add keeps lots as a step of the Board and returns their ids in order.
func Add(t testing.TB, kept desk.History, lots ...book.New) []int64 {
	t.Helper()
	done, err := kept.Do(context.Background(), book.Step{Subject: book.Board, Label: "lots", New: lots})
	if err != nil {
		t.Fatal(err)
	}
	return done.Lots
}

// User does what a page asks for.
type User struct {
	Desk   *desk.Desk
	Store  *store.Store
	State  desk.State
	Show   func(desk.State) // after every action; nil: nothing is shown
	Wished []string         // what was to be asked for first, with what it is about
	Steps  []string         // the words of what was to be kept
}

// New returns a user before an empty Board.
func New(t testing.TB) *User {
	t.Helper()
	kept := Store(t)
	u := &User{Desk: Desk(kept), Store: kept}
	u.State = u.Desk.Load(context.Background())
	return u
}

// Do does an action; a wish is noted, and handed a file where it wants one.
func (u *User) Do(a desk.Action) {
	if w := a.Wish; w.For != "" {
		words := string(w.For)
		if w.Key != "" {
			words += " " + w.Key
		}
		u.Wished = append(u.Wished, words)
		if w.Chosen != nil {
			w.Chosen("hood.pdf", FileHash)
		}
		return
	}
	if a.Words() != "" {
		u.Steps = append(u.Steps, a.Words())
	}
	u.State = u.Desk.Do(context.Background(), u.State, a)
	if u.Show != nil {
		u.Show(u.State)
	}
}

// FileHash is what a file that is wanted has.
const FileHash = "0000000000000000000000000000000000000000000000000000000000000000"
