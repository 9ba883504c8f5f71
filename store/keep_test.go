package store

import (
	"errors"
	"math"
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"

	"walkline/store/book"
	"walkline/store/casefile"
	"walkline/valuation"
	"walkline/valuation/build"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// random returns a lot with random values in all that a lot can have.
func random(r *rand.Rand, id int64) book.Lot {
	l := book.Lot{ID: id, State: lot.States[r.IntN(len(lot.States))], Archived: r.IntN(2) == 0}
	l.Case, l.Build, l.Photos = filled[valuation.Case](r), filled[build.Build](r), filled[[]lot.Photo](r)
	l.Build.Imported.As = ""
	return l
}

func TestALotComesBackAsItWasKept(t *testing.T) {
	s, r := opened(t), rand.New(rand.NewPCG(1, 2))
	for i := range 100 {
		want := random(r, 0)
		want.Photos = nil
		if i == 0 {
			want.Case = valuation.Case{}
		}
		given := book.New{State: want.State, Archived: want.Archived, Case: want.Case, Build: want.Build}
		done := do(t, s, book.Step{Subject: book.Board, Label: "new", New: []book.New{given}})
		want.ID = done.Lots[0]
		equal(t, read(t, s, want.ID), want)
	}
}

// TestADifferenceTurnsOneLotIntoAnother checks the law that all else rests on, on random lots.
func TestADifferenceTurnsOneLotIntoAnother(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 300 {
		a := random(r, 1)
		b := mutated(r, a)
		c, err := difference(a, b)
		if err != nil {
			t.Fatal(err)
		}
		for _, way := range []struct {
			from, to book.Lot
			c        lotChange
		}{{a, b, c}, {b, a, c.inverse()}} {
			got, made, left, err := way.c.apply(way.from, nil)
			if err != nil || len(left) > 0 || made.empty() != c.empty() {
				t.Fatalf("left %v, %v", left, err)
			}
			equal(t, got, way.to)
		}
	}
}

// mutated returns a lot that differs from a: some parts random, some lists with items moved out and in.
func mutated(r *rand.Rand, a book.Lot) book.Lot {
	other, b := random(r, a.ID), a.Clone()
	from, to := objects(&other), objects(&b)
	for i := range to {
		if r.IntN(4) == 0 {
			reflect.ValueOf(to[i].at).Elem().Set(reflect.ValueOf(from[i].at).Elem())
		}
	}
	b.Removed = false
	if len(b.Case.Resale.Rows) > 1 {
		b.Case.Resale.Rows = append(b.Case.Resale.Rows[:1], b.Case.Resale.Rows[2:]...)
	}
	b.Case.Resale.Rows = append(b.Case.Resale.Rows, other.Case.Resale.Rows...)
	b.Case.Lot.Number += "x"
	return b
}

func TestTheListShowsFactsAndTheLastAnswer(t *testing.T) {
	s := opened(t)
	c := sample(t)
	l := c.Lot
	id := added(t, s, c)
	want := book.Entry{ID: id, State: lot.ToLookAt, Number: "14", Sale: "Harrow Flats yard", SaleDate: "2026-11-28", ModelYear: 2019,
		Make: "Orlan", Model: "Tessel", Trim: "LX", Currency: "USD", Look: book.Look{Odometer: l.Odometer, Unit: l.OdometerUnit,
			Document: l.Title.Document, Brands: l.Title.Brands, Damage: c.Damage}}
	equal(t, entries(t, s)[0], want)
	amount, hourly := money.Amount(630000), 41.5
	if err := s.NoteAnswer(t.Context(), book.Answered{Lot: id}, answer(&amount)); err != nil {
		t.Fatal(err)
	}
	want.Answer = &book.Summary{Decision: "bid", WalkAway: &amount, Binding: "max_loss_chance", LossChance: 0.14, MeanProfit: 2100.25,
		PerHour: &hourly}
	equal(t, entries(t, s)[0], want)
	edit(t, s, book.Worksheet(id), "photos", id, func(l *book.Lot) { l.Photos = landedPhotos() })
	if first := entries(t, s)[0].Photo; first == nil || *first != landedPhotos()[0] {
		t.Errorf("the first photo is %+v", first)
	}
	list, err := s.Lots(t.Context())
	if err != nil || len(list) != 1 || list[0].State != lot.ToLookAt || !reflect.DeepEqual(list[0].Lot, sample(t).Lot) {
		t.Errorf("%+v, %v", list, err)
	}
}

// TestAnAnswerIsOneToItsRevision: an answer that comes late is to the case that it was worked out from.
func TestAnAnswerIsOneToItsRevision(t *testing.T) {
	s := opened(t)
	id := added(t, s, sample(t))
	old := read(t, s, id).Revision
	done := edit(t, s, book.Worksheet(id), "a fault", id, func(l *book.Lot) { l.Case.Lot.Condition = "dead" })
	note := func(revision int64, stale bool) {
		t.Helper()
		if err := s.NoteAnswer(t.Context(), book.Answered{Lot: id, Revision: revision}, answer(nil)); err != nil {
			t.Fatal(err)
		}
		if e := entries(t, s)[0]; e.Answer == nil || e.Answer.Stale != stale {
			t.Errorf("the answer to revision %d: %+v", revision, e.Answer)
		}
	}
	note(old, true)
	note(done.Revisions[0], false)
	note(old, false) // an older one does not take its place
	edit(t, s, book.Build(id), "bill", id, func(l *book.Lot) { l.Build.Note, l.State, l.Photos = "n", lot.Won, landedPhotos() })
	if e := entries(t, s)[0]; e.Answer.Stale {
		t.Error("a bill, a photograph or a mark made the answer to the case old")
	}
	undone(t, s, book.Worksheet(id), "a fault")
	if e := entries(t, s)[0]; !e.Answer.Stale {
		t.Error("the fault was taken back, the answer is still fresh")
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

func TestNumbersThatCannotBeKeptAreRefusedWhole(t *testing.T) {
	s := opened(t)
	id := added(t, s, sample(t))
	before := read(t, s, id)
	for name, spoil := range map[string]func(l *book.Lot){
		"a term":       func(l *book.Lot) { l.Case.Time.CapitalRate = math.NaN() },
		"an item":      func(l *book.Lot) { l.Case.Hidden.Risks[0].Cost.High = math.Inf(1) },
		"of the build": func(l *book.Lot) { l.Build.Hours = []build.Work{{Trade: "body", Hours: math.NaN()}} },
		"a judgement":  func(l *book.Lot) { l.Case.Market.HammerGuess.Low = math.NaN() },
	} {
		after := before.Clone()
		after.Case.Lot.Number = "must not be written"
		spoil(&after)
		changed, added := book.Change{Before: before, After: after}, book.New{Case: after.Case, Build: after.Build}
		for _, step := range []book.Step{{Lots: []book.Change{changed}}, {New: []book.New{added}}} {
			if _, err := s.Do(t.Context(), step); !errors.Is(err, ErrRefused) {
				t.Errorf("%s: %v", name, err)
			}
		}
	}
	if equal(t, read(t, s, id), before); len(entries(t, s)) != 1 {
		t.Error("a refused lot is on the list")
	}
	nan := math.NaN()
	for _, p := range []valuation.Profit{{Mean: math.Inf(1)}, {LossChance: nan}, {PerHour: &nan}} {
		a := answer(nil)
		a.Profit = p
		if err := s.NoteAnswer(t.Context(), book.Answered{Lot: id}, a); !errors.Is(err, ErrRefused) {
			t.Errorf("%+v: %v", p, err)
		}
	}
	if err := s.NoteAnswer(t.Context(), book.Answered{Lot: id}, valuation.Answer{}); !errors.Is(err, ErrRefused) {
		t.Errorf("an answer that decides nothing: %v", err)
	}
}

func TestARemovedLotIsNotThere(t *testing.T) {
	s, ctx := opened(t), t.Context()
	id := added(t, s, sample(t))
	late := edited(t, s, book.Worksheet(id), "late", id, func(l *book.Lot) { l.Case.Lot.Trim = "GT" })
	late.Lots[0].Freeze = &book.Prediction{Case: sample(t), Answer: answer(nil)}
	edit(t, s, book.Board, "remove", id, func(l *book.Lot) { l.Removed = true })
	_, err1 := s.Lot(ctx, id)
	_, err2 := s.Do(ctx, late)
	_, err3 := s.Lot(ctx, 999)
	err4 := s.NoteAnswer(ctx, book.Answered{Lot: id}, answer(nil))
	for doing, err := range map[string]error{"reading": err1, "a step": err2, "none": err3, "an answer": err4} {
		if !errors.Is(err, ErrNotFound) {
			t.Errorf("%s: %v", doing, err)
		}
	}
	if len(entries(t, s)) != 0 {
		t.Error("it is on the list")
	}
	undone(t, s, book.Board, "remove")
	equal(t, read(t, s, id).Case, sample(t))
}

func TestAPredictionIsKeptWholeAndNeverChanges(t *testing.T) {
	s := opened(t)
	id := added(t, s, sample(t))
	price := money.Amount(510000)
	won := edited(t, s, book.Sale, "won", id, func(l *book.Lot) { l.State, l.Build.Hammer = lot.Won, &price })
	won.Lots[0].Freeze = &book.Prediction{Case: sample(t), Answer: answer(&price), Figures: learn.Prediction{Engine: "3", LossChance: 0.25}}
	do(t, s, won)
	same := book.Step{Subject: book.Sale, Lots: []book.Change{{Before: read(t, s, id), After: read(t, s, id), Freeze: won.Lots[0].Freeze}}}
	if done := do(t, s, same); !done.Did || len(done.Parts) > 0 {
		t.Errorf("a step that only freezes: %+v", done)
	}
	list, err := s.Builds(t.Context())
	if err != nil || len(list) != 1 || !list[0].Frozen || list[0].Foretold.LossChance != 0.25 || *list[0].Build.Hammer != price {
		t.Fatalf("%+v, %v", list, err)
	}
	var file, said string
	if err := s.reader.QueryRow(`SELECT case_file, answer FROM predictions ORDER BY id`).Scan(&file, &said); err != nil ||
		file != string(casefile.Write(sample(t))) || said != string(casefile.WriteAnswer(answer(&price))) {
		t.Errorf("%v: %s %s", err, file, said)
	}
	for _, change := range []string{`UPDATE predictions SET seed = 1`, `DELETE FROM predictions`, `DELETE FROM lots`,
		`UPDATE forecasts SET body = '1'`, `DELETE FROM forecasts`} {
		if _, err := s.writer.Exec(change); !errors.Is(wrapped("", err), ErrRefused) {
			t.Errorf("%s: %v", change, err)
		}
	}
	undone(t, s, book.Sale, "won")
	if cases, _, err := s.FrozenCases(t.Context()); err != nil || len(cases) != 1 {
		t.Errorf("what is frozen stays: %d, %v", len(cases), err)
	}
	if list, err := s.Builds(t.Context()); err != nil || len(list) != 0 {
		t.Errorf("a lot that is no longer won is listed: %+v, %v", list, err)
	}
	bad := same
	bad.Lots = []book.Change{{Before: read(t, s, id), After: read(t, s, id), Freeze: &book.Prediction{}}}
	if _, err := s.Do(t.Context(), bad); !errors.Is(err, ErrRefused) || !strings.Contains(err.Error(), "format") {
		t.Errorf("an empty case was frozen: %v", err)
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
	if err := s.NoteAnswer(t.Context(), book.Answered{Lot: id}, a); err != nil {
		t.Error(err)
	}
}

func TestPastBuysAreKnownByWhatTheirTableCallsThem(t *testing.T) {
	s := opened(t)
	past := func(as string) book.New {
		b := build.Build{Outcome: build.Sold, Imported: build.Imported{As: as, Row: "row " + as}}
		return book.New{State: lot.Won, Archived: true, Case: sample(t), Build: b}
	}
	step := book.Step{Subject: book.Record, Label: "past buys", New: []book.New{past("1"), past("2")}}
	do(t, s, step)
	if _, err := s.Do(t.Context(), step); !errors.Is(err, ErrRefused) || len(entries(t, s)) != 2 {
		t.Errorf("a table was taken in twice: %v", err)
	}
	for _, removed := range []bool{false, true} {
		list, err := s.Imports(t.Context())
		if err != nil || len(list) != 2 || list[1] != (book.Import{Lot: 2, As: "2", Row: "row 2", Removed: removed}) {
			t.Errorf("%+v, %v", list, err)
		}
		if _, err := s.Undo(t.Context(), book.Record); err != nil {
			t.Fatal(err)
		}
	}
}
