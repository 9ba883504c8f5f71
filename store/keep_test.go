package store

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"walkline/store/casefile"
	"walkline/valuation"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// sample returns the case of testdata/case.json, which fills every table.
func sample(t *testing.T) valuation.Case {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("testdata", "case.json"))
	if err != nil {
		t.Fatal(err)
	}
	c, faults := casefile.Read(data)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	return c
}

func added(t *testing.T, s *Store, c valuation.Case) int64 {
	t.Helper()
	id, err := s.Add(t.Context(), c)
	if err != nil {
		t.Fatal(err)
	}
	return id
}

func entries(t *testing.T, s *Store) []Entry {
	t.Helper()
	list, err := s.Entries(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	return list
}

func answer(walkAway *money.Amount) valuation.Answer {
	hourly := 41.5
	return valuation.Answer{
		Format: valuation.AnswerFormat, Currency: "USD", Decision: "bid", WalkAway: walkAway, BindingRule: "max_loss_chance",
		Profit: valuation.Profit{Mean: 2100.25, LossChance: 0.14, PerHour: &hourly},
	}
}

func TestTheListShowsFactsAndTheLastAnswer(t *testing.T) {
	s := opened(t)
	s.now = func() time.Time { return time.Date(2026, 11, 20, 7, 30, 0, 5, time.FixedZone("", 3600)) }
	c := sample(t)
	id := added(t, s, c)
	e := entries(t, s)[0]
	want := Entry{ID: id, State: lot.ToLookAt, Number: "14", Sale: "Harrow Flats yard", SaleDate: "2026-11-28", ModelYear: 2019,
		Make: "Orlan", Model: "Tessel", Trim: "LX", Currency: "USD", SavedAt: time.Date(2026, 11, 20, 6, 30, 0, 5, time.UTC)}
	if !reflect.DeepEqual(e, want) {
		t.Fatalf("got  %+v\nwant %+v", e, want)
	}
	amount := money.Amount(630000)
	if err := s.NoteAnswer(t.Context(), id, answer(&amount)); err != nil {
		t.Fatal(err)
	}
	hourly := 41.5
	want.Answer = &Summary{Decision: "bid", WalkAway: &amount, Binding: "max_loss_chance", LossChance: 0.14, MeanProfit: 2100.25, PerHour: &hourly}
	if e = entries(t, s)[0]; !reflect.DeepEqual(e, want) {
		t.Fatalf("got  %+v %+v\nwant %+v", e, e.Answer, want)
	}
	c.Lot.Trim = "GT"
	if err := s.Save(t.Context(), id, "Trim", c); err != nil {
		t.Fatal(err)
	}
	if e = entries(t, s)[0]; !e.Answer.Stale || e.Trim != "GT" {
		t.Fatalf("an answer older than its case is not marked: %+v", e.Answer)
	}
	if err := s.NoteAnswer(t.Context(), id, answer(nil)); err != nil {
		t.Fatal(err)
	}
	if e = entries(t, s)[0]; e.Answer.Stale || e.Answer.WalkAway != nil {
		t.Fatalf("the newer answer: %+v", e.Answer)
	}
}

func TestTheListIsInOrderOfSaleDayThenNumber(t *testing.T) {
	s := opened(t)
	for _, v := range [][2]string{{"", "1"}, {"2026-12-01", "10"}, {"2026-12-01", "9"}, {"2026-11-28", "77"}} {
		c := valuation.Defaults()
		c.Lot.SaleDate, c.Lot.Number = lot.Date(v[0]), v[1]
		added(t, s, c)
	}
	var order []string
	for _, e := range entries(t, s) {
		order = append(order, e.Number)
	}
	if got := strings.Join(order, " "); got != "77 9 10 1" {
		t.Fatalf("order: %s", got)
	}
}

func TestStatesArchiveDuplicateRemoveAndRestore(t *testing.T) {
	s, ctx := opened(t), t.Context()
	id := added(t, s, sample(t))
	if err := errors.Join(s.SetState(ctx, id, lot.Won), s.Archive(ctx, id, true)); err != nil {
		t.Fatal(err)
	}
	copied, err := s.Duplicate(ctx, id)
	if err != nil {
		t.Fatal(err)
	}
	got, err := s.Case(ctx, copied)
	if err != nil {
		t.Fatal(err)
	}
	same(t, got, sample(t))
	list := entries(t, s)
	if len(list) != 2 || list[0].State != lot.Won || !list[0].Archived || list[1].State != lot.ToLookAt || list[1].Archived {
		t.Fatalf("%+v", list)
	}
	if err := s.Remove(ctx, id); err != nil {
		t.Fatal(err)
	}
	for doing, err := range map[string]error{
		"case": second(s.Case(ctx, id)), "save": s.Save(ctx, id, "x", got), "undo": second(s.Undo(ctx, id)), "state": s.SetState(ctx, id, lot.Won),
		"remove": s.Remove(ctx, id), "answer": s.NoteAnswer(ctx, id, answer(nil)), "duplicate": second(s.Duplicate(ctx, id)),
		"freeze": second(s.Freeze(ctx, id, Prediction{Case: got})), "none": second(s.Case(ctx, 999)), "restore": s.Restore(ctx, copied),
	} {
		if !errors.Is(err, ErrNotFound) {
			t.Errorf("%s of a removed lot: %v", doing, err)
		}
	}
	if list := entries(t, s); len(list) != 1 || list[0].ID != copied {
		t.Fatalf("a removed lot shows: %+v", list)
	}
	if err := s.Restore(ctx, id); err != nil {
		t.Fatal(err)
	}
	if list := entries(t, s); len(list) != 2 || list[0].State != lot.Won {
		t.Fatalf("a restored lot is not as it was: %+v", list)
	}
}

// second returns the error of a call that returns a value too.
func second[T any](_ T, err error) error { return err }

func TestHistoryIsBoundedAndASaveForgetsWhatWasUndone(t *testing.T) {
	s, ctx := opened(t), t.Context()
	c := valuation.Defaults()
	id := added(t, s, c)
	for i := range Steps + 30 {
		c.Run.Scenarios = i + 1
		if err := s.Save(ctx, id, strconv.Itoa(i), c); err != nil {
			t.Fatal(err)
		}
	}
	undone := 0
	for {
		u, err := s.Undo(ctx, id)
		if err != nil {
			t.Fatal(err)
		}
		if !u.Done {
			break
		}
		undone++
	}
	if undone != Steps {
		t.Fatalf("%d steps were kept", undone)
	}
	if r, _ := s.Reach(ctx, id); r.CanUndo || !r.CanRedo || r.Redo != "30" {
		t.Fatalf("at the start of history: %+v", r)
	}
	s.Redo(ctx, id)
	c.Lot.VIN = "another way"
	if err := s.Save(ctx, id, "branch", c); err != nil {
		t.Fatal(err)
	}
	if r, _ := s.Reach(ctx, id); r != (Reach{CanUndo: true, Undo: "branch"}) {
		t.Fatalf("after a save in the middle: %+v", r)
	}
}

func TestWordsAndNumbersThatCantBeKeptAreRefusedWhole(t *testing.T) {
	s, ctx := opened(t), t.Context()
	id := added(t, s, sample(t))
	for name, spoil := range map[string]func(c *valuation.Case){
		"unit": func(c *valuation.Case) { c.Lot.OdometerUnit = "furlongs" },
		"area": func(c *valuation.Case) { c.Damage[1].Area = "13" },
		"day":  func(c *valuation.Case) { c.Resale.Rows[0].Date = "yesterday" },
		"nan":  func(c *valuation.Case) { c.Time.CapitalRate = math.NaN() },
		"inf":  func(c *valuation.Case) { c.Hidden.Risks[0].Cost.High = math.Inf(1) },
	} {
		c := sample(t)
		c.Lot.Number = "must not be written"
		spoil(&c)
		if err := s.Save(ctx, id, name, c); !errors.Is(err, ErrRefused) {
			t.Errorf("%s: saved with %v", name, err)
		}
		if _, err := s.Add(ctx, c); !errors.Is(err, ErrRefused) {
			t.Errorf("%s: added with %v", name, err)
		}
	}
	got, err := s.Case(ctx, id)
	if err != nil || len(entries(t, s)) != 1 {
		t.Fatal(err)
	}
	same(t, got, sample(t))
	if r, _ := s.Reach(ctx, id); r.CanUndo {
		t.Fatal("a refused save made a step")
	}
}

func TestAPredictionIsKeptWholeAndNeverChanges(t *testing.T) {
	s, ctx := opened(t), t.Context()
	c := sample(t)
	id := added(t, s, c)
	amount := money.Amount(630000)
	p := Prediction{Case: c, Answer: answer(&amount), Factors: json.RawMessage(`{"body": 1.2}`), Seed: 1 << 60, Engine: "3"}
	frozen, err := s.Freeze(ctx, id, p)
	if err != nil {
		t.Fatal(err)
	}
	c.Lot.Trim = "changed later"
	if err := errors.Join(s.Save(ctx, id, "Trim", c), s.Remove(ctx, id)); err != nil {
		t.Fatal(err)
	}
	list, err := s.Predictions(ctx, id)
	if err != nil || len(list) != 1 {
		t.Fatal(len(list), err)
	}
	f := list[0]
	same(t, f.Case, sample(t))
	if f.ID != frozen || f.Seed != p.Seed || f.Engine != "3" || string(f.Factors) != `{"body": 1.2}` ||
		string(f.Answer) != string(casefile.WriteAnswer(p.Answer)) || string(f.Document) != string(casefile.Write(p.Case)) || f.FrozenAt.IsZero() {
		t.Fatalf("%+v", f)
	}
	for _, change := range []string{`UPDATE predictions SET seed = 1`, `DELETE FROM predictions`, `DELETE FROM lots`} {
		if _, err := s.writer.Exec(change); !errors.Is(wrapped("", err), ErrRefused) {
			t.Errorf("%s: %v", change, err)
		}
	}
}

func TestOnlyACaseThatCanBeReplayedIsFrozen(t *testing.T) {
	s := opened(t)
	id := added(t, s, valuation.Case{})
	if _, err := s.Freeze(t.Context(), id, Prediction{}); !errors.Is(err, ErrRefused) || !strings.Contains(err.Error(), "format") {
		t.Fatalf("an empty case was frozen: %v", err)
	}
	p := Prediction{Case: sample(t), Answer: answer(nil), Factors: json.RawMessage("{")}
	if _, err := s.Freeze(t.Context(), id, p); !errors.Is(err, ErrRefused) {
		t.Fatalf("factors that are no JSON were frozen: %v", err)
	}
}

func TestSettingsComeBackAndTellWhetherTheyAreThere(t *testing.T) {
	s, ctx := opened(t), t.Context()
	theme := "light"
	if found, err := s.Setting(ctx, "theme", &theme); found || err != nil || theme != "light" {
		t.Fatal(found, err, theme)
	}
	for _, want := range []string{"dark", "paper"} {
		if err := s.PutSetting(ctx, "theme", want); err != nil {
			t.Fatal(err)
		}
		if found, err := s.Setting(ctx, "theme", &theme); !found || err != nil || theme != want {
			t.Fatal(found, err, theme)
		}
	}
	if _, err := s.Setting(ctx, "theme", new(int)); err == nil {
		t.Fatal("a word was read as a number")
	}
	if err := s.PutSetting(ctx, "theme", math.NaN()); !errors.Is(err, ErrRefused) {
		t.Fatal(err)
	}
}

// A lot that is not ready has no profit: its answer is kept all the same, and the list shows no figure of it.
func TestAnAnswerThatNeedsMoreIsKept(t *testing.T) {
	s := opened(t)
	id := added(t, s, valuation.Defaults())
	a := answer(nil)
	a.BindingRule, a.Needs, a.Profit.LossChance, a.Profit.Mean = valuation.Unready, []valuation.Need{{Key: "damage"}}, math.NaN(), math.NaN()
	if err := s.NoteAnswer(t.Context(), id, a); err != nil {
		t.Error(err)
	}
}

func TestAnAnswerWithoutNumbersIsRefused(t *testing.T) {
	s := opened(t)
	id := added(t, s, valuation.Defaults())
	nan := math.NaN()
	for _, p := range []valuation.Profit{{Mean: math.Inf(1)}, {LossChance: nan}, {PerHour: &nan}} {
		a := answer(nil)
		a.Profit = p
		if err := s.NoteAnswer(t.Context(), id, a); !errors.Is(err, ErrRefused) {
			t.Errorf("%+v: %v", p, err)
		}
	}
	if err := s.NoteAnswer(t.Context(), id, valuation.Answer{}); !errors.Is(err, ErrRefused) {
		t.Errorf("an answer that decides nothing: %v", err)
	}
	if e := entries(t, s)[0]; e.Answer != nil {
		t.Errorf("%+v", e.Answer)
	}
}

func TestABackupIsAStoreOfItsOwnAndOverwritesNothing(t *testing.T) {
	s := opened(t)
	id := added(t, s, sample(t))
	path := filepath.Join(t.TempDir(), "copy #1?.walk")
	if err := s.Backup(t.Context(), path); err != nil {
		t.Fatal(err)
	}
	if err := s.Backup(t.Context(), path); !errors.Is(err, fs.ErrExist) {
		t.Fatalf("a backup over a backup: %v", err)
	}
	if err := s.Backup(t.Context(), filepath.Join(path, "below a file")); !errors.Is(err, ErrNotWritable) {
		t.Fatalf("a backup to nowhere: %v", err)
	}
	got, err := reopened(t, path).Case(t.Context(), id)
	if err != nil {
		t.Fatal(err)
	}
	same(t, got, sample(t))
}

// TestADamagedFileIsNamed spoils one page after another: reading everything either works, where the page held nothing
// that was read, or says that the file is damaged.
func TestADamagedFileIsNamed(t *testing.T) {
	s := opened(t)
	id := added(t, s, sample(t))
	s.Close()
	whole, err := os.ReadFile(s.path)
	if err != nil {
		t.Fatal(err)
	}
	const page = 4096
	damaged := 0
	for at := page; at < len(whole); at += page {
		spoiled := slices.Clone(whole)
		copy(spoiled[at:at+page], bytes.Repeat([]byte{0xA5}, page))
		path := filepath.Join(t.TempDir(), "spoiled.walk")
		os.WriteFile(path, spoiled, 0o644)
		err := readAll(t.Context(), path, id)
		if err != nil && !errors.Is(err, ErrDamaged) {
			t.Errorf("page %d: %v", at/page, err)
		}
		if err != nil {
			damaged++
		}
	}
	if damaged == 0 {
		t.Error("no page mattered")
	}
}

func readAll(ctx context.Context, path string, id int64) error {
	s, err := Open(ctx, path)
	if err != nil {
		return err
	}
	defer s.Close()
	_, err1 := s.Entries(ctx)
	_, err2 := s.Case(ctx, id)
	_, err3 := s.Reach(ctx, id)
	_, err4 := s.Predictions(ctx, id)
	return errors.Join(err1, err2, err3, err4)
}
