package desk_test

import (
	"cmp"
	"context"
	"path/filepath"
	"slices"
	"testing"

	"walkline/cmd/wire/trial"
	"walkline/store"
	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/valuation/learn"
)

// done is a deed that was kept: on which page's history, and what was kept before and after it.
type done struct {
	name          string
	of            book.Subject
	before, after string
}

// last are the deeds after which others are not to be done any more: they come at the end, in this order.
var last = []string{"remove photo", "row off", "no donor", "money off", "mark passed", "mark lost", "mark two", "remove build", "remove"}

// undoable are the deeds that come to nothing after the others.
var undoable = []string{"accept whole", "take terms", "keep terms", "remove two"}

// inTurn returns the deeds by name, those of last at the end.
func inTurn() []deed {
	list := deeds()
	slices.SortFunc(list, func(a, b deed) int {
		return cmp.Or(cmp.Compare(slices.Index(last, a.name), slices.Index(last, b.name)), cmp.Compare(a.name, b.name))
	})
	return list
}

// doAll does every deed once, in the first place where it is kept, one after the other.
func (u *user) doAll(proposals []learn.Proposal) (all []done) {
	u.t.Helper()
	for n, d := range inTurn() {
		if slices.Contains(undoable, d.name) {
			continue
		}
		for _, scene := range scenes {
			if s := u.do(scene.way...); s.Subject() != scene.subject {
				continue // the lot is gone by now
			}
			u.s = u.s.Learned(desk.TrackRecord{Proposals: proposals, Now: u.s.Factors, History: []book.Decision{{ID: 1, What: book.Refused,
				Factor: proposals[0].Key, Before: learn.Toward(u.s.Factors, proposals[0], 1)}}}, nil)
			u.foreseen()
			before, reaches := u.all(), u.reaches()
			d.do(u, 1000+n)
			of := changed(reaches, u.reaches())
			if len(of) == 1 {
				all = append(all, done{d.name, of[0], before, u.all()})
				break
			}
		}
	}
	return all
}

// again closes the store and opens it again, as another start of the program does.
func (u *user) again(path string) {
	u.t.Helper()
	if err := u.kept.Close(); err != nil {
		u.t.Fatal(err)
	}
	file, err := store.Open(context.Background(), path)
	if err != nil {
		u.t.Fatal(err)
	}
	u.kept.Store = file
	know := u.Know
	u.Desk = trial.Desk(u.kept)
	u.Know = know
	u.start()
}

// on goes to the page of a history and does one thing there.
func (u *user) on(of book.Subject, a desk.Action) desk.State {
	for _, s := range scenes {
		if s.subject == of {
			u.do(s.way...)
		}
	}
	return u.do(a)
}

// All that a user can do, done once one after the other: after a restart undo takes each back, the last first, to what was kept before it,
// and after another restart redo does each again.
func TestEverythingIsTakenBackAfterARestart(t *testing.T) {
	path := filepath.Join(t.TempDir(), "walkline.db")
	file, err := store.Open(t.Context(), path)
	if err != nil {
		t.Fatal(err)
	}
	u, proposals := atMatrix(t, &failing{Store: file})
	defer func() {
		if err := u.kept.Close(); err != nil {
			t.Error(err)
		}
	}()
	all := u.doAll(proposals)
	for _, d := range deeds() {
		if !slices.ContainsFunc(all, func(x done) bool { return x.name == d.name }) && !slices.Contains(undoable, d.name) {
			t.Errorf("%s was not kept", d.name)
		}
	}
	u.again(path)
	for _, d := range slices.Backward(all) {
		if s := u.on(d.of, desk.Undo()); s.Trouble != "" || u.all() != d.before {
			t.Fatalf("%s taken back on %s, %q: %q\nkept %s\nwant %s", d.name, d.of, s.Notice, s.Trouble, u.all(), d.before)
		}
	}
	u.again(path)
	for _, d := range all {
		if s := u.on(d.of, desk.Redo()); s.Trouble != "" || u.all() != d.after {
			t.Fatalf("%s done again on %s, %q: %q\nkept %s\nwant %s", d.name, d.of, s.Notice, s.Trouble, u.all(), d.after)
		}
	}
}
