package store

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"walkline/store/book"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// filledBook returns the path of a closed store that has a row of each kind; each says something that nothing else says.
func filledBook(t *testing.T) string {
	t.Helper()
	s, price := opened(t), money.Amount(630000)
	first := sample(t)
	first.Lot.VIN, first.Run.Seed = "DOCUMENTVIN", 7
	id := added(t, s, first)
	l := read(t, s, id)
	won := l
	won.State = lot.Won
	said := answer(&price)
	said.Plan, said.BindingRule = "PLANOFLOT", "RULEOFLOT"
	frozen := first
	frozen.Lot.VIN = "FROZENVINNUMBER"
	do(t, s, book.Step{Subject: book.Sale, Label: "won", Lots: []book.Change{{Before: l, After: won,
		Freeze: &book.Prediction{Case: frozen, Answer: said, Figures: learn.Prediction{Engine: "ENGINEOFDAY", LossChance: 0.25}}}}})
	edit(t, s, book.Worksheet(id), "LABELOFSTEP", id, func(l *book.Lot) { l.Case.Lot.Make = "MAKEOFLOT" })
	if err := s.NoteAnswer(t.Context(), book.Answered{Lot: id, Revision: read(t, s, id).Revision}, said); err != nil {
		t.Fatal(err)
	}
	second := sample(t)
	second.Lot.Number = "OTHERLOT"
	added(t, s, second)
	do(t, s, book.Step{Subject: book.Bench("labour"), Label: "rate", Settings: []book.Setting{{Name: "shop", After: "VALUEOFSHOP"}}})
	do(t, s, book.Step{Subject: book.Record, Label: "factor", Decision: &book.Decision{What: book.Accepted, Factor: "outside",
		Words: "WORDSOFDECISION", After: learn.Factors{Outside: &learn.Ratio{Factor: 2}}}})
	laid(t, s, 777700)
	s.Close()
	return s.path
}

// flipped writes a copy of a file in which one bit of each place that says something is another.
func flipped(t *testing.T, path, where string) string {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil || !bytes.Contains(data, []byte(where)) {
		t.Fatalf("%s is not in the file, %v", where, err)
	}
	to, other := filepath.Join(t.TempDir(), "flipped.walk"), []byte(where)
	other[len(other)-1] ^= 1
	data = bytes.ReplaceAll(data, []byte(where), other)
	if err := os.WriteFile(to, data, 0o600); err != nil {
		t.Fatal(err)
	}
	return to
}

// kinds are the kinds of rows, with a change of one that SQLite finds nothing wrong with, who reads it, and what a salvage says of it.
func kinds() []struct {
	name, change string
	reads        func(t *testing.T, s *Store) error
	lost         string
} {
	entries := func(t *testing.T, s *Store) error { _, err := s.Entries(t.Context()); return err }
	builds := func(t *testing.T, s *Store) error { _, err := s.Builds(t.Context()); return err }
	return []struct {
		name, change string
		reads        func(t *testing.T, s *Store) error
		lost         string
	}{
		{"archived", `UPDATE lots SET archived = 1 WHERE id = 1`, entries, "Lot 14"},
		{"state", `UPDATE lots SET state = 'wom' WHERE id = 1`, func(t *testing.T, s *Store) error {
			_,
				err := s.Lot(t.Context(), 1)
			return err
		}, "Lot 14"},
		{"removed", `UPDATE lots SET removed_at = '' WHERE id = 1`, func(t *testing.T, s *Store) error { return s.Check(t.Context()) }, "Lot 14"},
		{"list of builds", `UPDATE lots SET number = '15' WHERE id = 1`, builds, "Lot 1"},
		{"list of lots", `UPDATE documents SET body = replace(body, 'DOCUMENTVIN', 'DOCUMENTVIM')`,
			func(t *testing.T, s *Store) error { _, err := s.Lots(t.Context()); return err }, "Lot 14"},
		{"what wrecked a build", `UPDATE documents SET body = replace(body, 'DOCUMENTVIN', 'DOCUMENTVIM')`, builds, "Lot 14"},
		{"answer", `UPDATE answers SET walk_away = walk_away + 1`, entries, "The last answer"},
		{"frozen case", `DROP TRIGGER predictions_never_change; UPDATE predictions SET case_file = replace(case_file, 'FROZENVIN', 'FROZENVIM')`,
			func(t *testing.T, s *Store) error { _, _, err := s.FrozenCases(t.Context()); return err }, "The forecast"},
		{"forecast", `DROP TRIGGER forecasts_never_change; UPDATE forecasts SET body = replace(body, '0.25', '0.35')`, builds, "The forecast"},
		{"step", `UPDATE steps SET change = replace(change, 'MAKEOFLOT', 'MAKEOFLOU')`,
			func(t *testing.T, s *Store) error { _, err := s.Undo(t.Context(), book.Worksheet(1)); return err }, "history of undo"},
		{"setting", `UPDATE settings SET value = replace(value, 'OFSHOP', 'OFSHOQ')`,
			func(t *testing.T, s *Store) error { _, err := s.Setting(t.Context(), "shop", new(string)); return err }, "settings"},
		{"decision", `DROP TRIGGER factors_never_change; UPDATE factors SET after = replace(after, '2', '3')`,
			func(t *testing.T, s *Store) error { _, err := s.Decisions(t.Context()); return err }, "decisions"},
		{"shelf", `UPDATE shelf SET body = replace(body, '777700', '777800')`,
			func(t *testing.T, s *Store) error { _, err := s.Shelf(t.Context()); return err }, "shelf"},
	}
}

// A figure of every kind of row becomes another one: whoever reads the row says so, and so do the check and the salvage. The other lot,
// which
// is sound, is saved as it was.
func TestAChangeInAnyKindOfRowIsSaid(t *testing.T) {
	path := filledBook(t)
	for _, k := range kinds() {
		t.Run(k.name, func(t *testing.T) {
			at := pulled(t, path)
			s := reopened(t, at)
			if err := s.Check(t.Context()); err != nil {
				t.Fatal(err)
			}
			if err := k.reads(t, s); err != nil {
				t.Fatal(err)
			}
			s.Close()
			at = pulled(t, path)
			s = reopened(t, at)
			if _, err := s.writer.Exec(k.change); err != nil {
				t.Fatal(err)
			}
			for _, err := range []error{k.reads(t, s), s.Check(t.Context())} {
				if !errors.Is(err, ErrAltered) || !errors.Is(err, ErrDamaged) || strings.Contains(err.Error(), "SQL") {
					t.Errorf("nothing is said: %v", err)
				}
			}
			s.Close()
			found, err := Salvage(t.Context(), at, at+".salvaged")
			if err != nil || !strings.Contains(strings.Join(append(found.Lost, found.Notes...), "\n"), k.lost) {
				t.Fatalf("%+v, %v", found, err)
			}
			saved := reopened(t, at+".salvaged")
			if err := saved.Check(t.Context()); err != nil {
				t.Error(err)
			}
			equal(t, read(t, saved, 2).Case.Lot.Number, "OTHERLOT")
		})
	}
}

// One bit of each kind of row flips in the file itself.
func TestAFlippedBitInAnyKindOfRowIsSaid(t *testing.T) {
	path := filledBook(t)
	for _, where := range []string{"DOCUMENTVIN", "FROZENVINNUMBER", "ENGINEOFDAY", "LABELOFSTEP", "MAKEOFLOT", "PLANOFLOT", "RULEOFLOT",
		"VALUEOFSHOP", "WORDSOFDECISION", "777700"} {
		s, err := Open(t.Context(), flipped(t, path, where))
		if err == nil {
			err = s.Check(t.Context())
			s.Close()
		}
		if !errors.Is(err, ErrDamaged) {
			t.Errorf("%s: %v", where, err)
		}
	}
}

// A document that is not what its own sum says stays so through the migration, and the others open.
func TestADamagedDocumentOfAnOlderFormatStaysDamaged(t *testing.T) {
	s := reopened(t, landedFile(t, 7, `UPDATE documents SET sum = 1 WHERE lot = 2 AND part = 'lot';`))
	if _, err := s.Lot(t.Context(), 2); !errors.Is(err, ErrAltered) {
		t.Error(err)
	}
	read(t, s, 1)
	if err := s.Check(t.Context()); !errors.Is(err, ErrAltered) || !strings.Contains(err.Error(), "lot 2") {
		t.Error(err)
	}
}
