package store

import (
	"encoding/json"
	"errors"
	"math"
	"math/rand/v2"
	"reflect"
	"testing"

	"walkline/store/casefile"
	"walkline/valuation"
	"walkline/valuation/build"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

func init() {
	words["Trade"] = lot.Trades
	words["State"], words["Hash"] = []string{build.Found, build.NotThere}, []string{""}
}

// filled returns a build with random values in every field that a build can have.
func filled(r *rand.Rand) build.Build {
	var b build.Build
	fill(r, reflect.ValueOf(&b).Elem(), "")
	b.Outcome = build.Outcomes[r.IntN(len(build.Outcomes))]
	b.Imported = build.Imported{As: string(rune('a' + r.IntN(26))), Row: "row"}
	for _, at := range []**money.Amount{&b.Hammer, &b.Sale.Price, &b.Sale.FirstAsked} {
		if *at != nil {
			**at &= 1<<53 - 1
		}
	}
	if b.Sale.Days != nil {
		*b.Sale.Days &= 0xfff
	}
	for i := range b.Hours {
		b.Hours[i].Hours = float64(r.IntN(400)) / 8
	}
	for i := range b.Receipts {
		b.Receipts[i].Kind = build.Kinds[r.IntN(len(build.Kinds))]
	}
	return b
}

// sameBuild compares two builds; an empty list and none are the same.
func sameBuild(t *testing.T, got, want build.Build) {
	t.Helper()
	bare := func(b build.Build) build.Build {
		b.Charges, b.Receipts, b.Hours = append([]build.Charge{}, b.Charges...), append([]build.Receipt{}, b.Receipts...), append([]build.Work{}, b.Hours...)
		b.Risks, b.Done = append([]build.Seen{}, b.Risks...), append([]string{}, b.Done...)
		return b
	}
	if !reflect.DeepEqual(bare(got), bare(want)) {
		t.Fatalf("\ngot  %s\nwant %s", text(got), text(want))
	}
}

func kept1(t *testing.T, s *Store, id int64) build.Build {
	t.Helper()
	b, err := s.Build(t.Context(), id)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func TestEveryFieldOfABuildIsKeptAndUndone(t *testing.T) {
	s, r := opened(t), rand.New(rand.NewPCG(7, 1))
	id := added(t, s, sample(t))
	var before []build.Build
	for range 60 {
		before = append(before, kept1(t, s, id))
		b := filled(r)
		if err := s.SaveBuild(t.Context(), id, "step", b); err != nil {
			t.Fatal(err)
		}
		sameBuild(t, kept1(t, s, id), b)
	}
	last := kept1(t, s, id)
	for i := len(before) - 1; i >= 0; i-- {
		u, err := s.Undo(t.Context(), id)
		if err != nil || !u.Done {
			t.Fatal(u, err)
		}
		sameBuild(t, u.Build, before[i])
		sameBuild(t, kept1(t, s, id), before[i])
	}
	for range before {
		if _, err := s.Redo(t.Context(), id); err != nil {
			t.Fatal(err)
		}
	}
	sameBuild(t, kept1(t, s, id), last)
}

func TestALotHasOneHistoryOfCaseAndBuild(t *testing.T) {
	s, ctx := opened(t), t.Context()
	c := sample(t)
	id := added(t, s, c)
	amount := money.Amount(420000)
	if err := errors.Join(s.NoteAnswer(ctx, id, answer(&amount)), s.SaveBuild(ctx, id, "hammer price", build.Build{Hammer: &amount})); err != nil {
		t.Fatal(err)
	}
	if e := entries(t, s)[0]; e.Answer.Stale {
		t.Error("a bill made the answer to the case old")
	}
	c.Lot.Trim = "GT"
	if err := s.Save(ctx, id, "trim", c); err != nil {
		t.Fatal(err)
	}
	u, err := s.Undo(ctx, id)
	if err != nil || u.Label != "trim" || *u.Build.Hammer != amount {
		t.Fatalf("%+v %v", u, err)
	}
	u, err = s.Undo(ctx, id)
	if err != nil || u.Label != "hammer price" || u.Build.Hammer != nil {
		t.Fatalf("%+v %v", u, err)
	}
	same(t, u.Case, sample(t))
	if r, _ := s.Reach(ctx, id); r != (Reach{CanRedo: true, Redo: "hammer price"}) {
		t.Errorf("%+v", r)
	}
}

func TestABuildThatCannotBeKeptIsRefusedWhole(t *testing.T) {
	s, ctx := opened(t), t.Context()
	id := added(t, s, sample(t))
	for name, spoil := range map[string]func(b *build.Build){
		"outcome": func(b *build.Build) { b.Outcome = "exploded" },
		"day":     func(b *build.Build) { b.Dates.Home = "yesterday" },
		"kind":    func(b *build.Build) { b.Receipts = []build.Receipt{{Kind: "gift"}} },
		"trade":   func(b *build.Build) { b.Hours = []build.Work{{Trade: "magic"}} },
		"nan":     func(b *build.Build) { b.Hours = []build.Work{{Trade: "body", Hours: math.NaN()}} },
		"risk":    func(b *build.Build) { b.Risks = []build.Seen{{Risk: "r", State: "perhaps"}} },
		"hash":    func(b *build.Build) { b.Receipts = []build.Receipt{{Kind: "part", Hash: "short"}} },
	} {
		b := build.Build{Note: "must not be written"}
		spoil(&b)
		if err := s.SaveBuild(ctx, id, name, b); !errors.Is(err, ErrRefused) {
			t.Errorf("%s: %v", name, err)
		}
	}
	sameBuild(t, kept1(t, s, id), build.Build{})
	if r, _ := s.Reach(ctx, id); r.CanUndo {
		t.Error("a refused save made a step")
	}
	if err := errors.Join(s.Remove(ctx, id)); err != nil {
		t.Fatal(err)
	}
	if _, err := s.Build(ctx, id); !errors.Is(err, ErrNotFound) {
		t.Errorf("a removed lot has a build: %v", err)
	}
	if err := s.SaveBuild(ctx, id, "x", build.Build{}); !errors.Is(err, ErrNotFound) {
		t.Errorf("a removed lot takes a build: %v", err)
	}
}

func TestBuildsListsWonAndLostLotsWithWhatWasForetoldLast(t *testing.T) {
	s, ctx := opened(t), t.Context()
	won, lost, open := added(t, s, sample(t)), added(t, s, sample(t)), added(t, s, sample(t))
	amount, price := money.Amount(630000), money.Amount(510000)
	for i, seed := range []int64{1, 2} {
		p := Prediction{Case: sample(t), Answer: answer(&amount), Seed: seed, Engine: "e", Forecast: json.RawMessage([]string{``, `{"x":1}`}[i])}
		if _, err := s.Freeze(ctx, won, p); err != nil {
			t.Fatal(err)
		}
	}
	b := build.Build{Outcome: build.Open, Receipts: []build.Receipt{{Kind: "part", What: "Hood", Amount: 100}, {Kind: "other", Amount: 5}}}
	if err := errors.Join(s.SetState(ctx, won, lot.Won), s.SetState(ctx, lost, lot.Lost), s.SaveBuild(ctx, won, "bills", b),
		s.SaveBuild(ctx, lost, "hammer", build.Build{Hammer: &price})); err != nil {
		t.Fatal(err)
	}
	list, err := s.Builds(ctx)
	if err != nil || len(list) != 2 {
		t.Fatalf("%d builds, %v; lot %d is none", len(list), err, open)
	}
	sameBuild(t, list[0].Build, b)
	if f := list[0].Foretold; f == nil || f.Seed != 2 || string(f.Forecast) != `{"x":1}` || list[1].Foretold != nil || *list[1].Build.Hammer != price {
		t.Errorf("%+v", list)
	}
	if err := s.SetState(ctx, lost, lot.Passed); err != nil {
		t.Fatal(err)
	}
	if list, err = s.Builds(ctx); err != nil || len(list) != 1 {
		t.Errorf("a lot that is no longer marked as lost is listed: %d, %v", len(list), err)
	}
	if files, err := s.FrozenCases(ctx); err != nil || len(files) != 1 || string(files[won]) != string(casefile.Write(sample(t))) {
		t.Errorf("%d frozen cases, %v", len(files), err)
	}
	for _, change := range []string{`UPDATE forecasts SET body = '1'`, `DELETE FROM forecasts`} {
		if _, err := s.writer.Exec(change); !errors.Is(wrapped("", err), ErrRefused) {
			t.Errorf("%s: %v", change, err)
		}
	}
}

func TestPastBuysAreTakenOnce(t *testing.T) {
	s, ctx := opened(t), t.Context()
	past := func(as, row, note string) Past {
		c := valuation.Defaults()
		c.Currency = "USD"
		return Past{c, build.Build{Outcome: build.Sold, Note: note, Imported: build.Imported{As: as, Row: row}}}
	}
	take := func(want Took, list ...Past) {
		t.Helper()
		if got, err := s.AddPast(ctx, list); err != nil || got != want {
			t.Fatalf("took %+v, want %+v, %v", got, want, err)
		}
	}
	take(Took{New: 2}, past("1", "a", "one"), past("2", "b", "two"))
	take(Took{Same: 2}, past("1", "a", "one"), past("2", "b", "two"))
	first := entries(t, s)[0].ID
	b := kept1(t, s, first)
	b.Note = "by hand"
	if err := s.SaveBuild(ctx, first, "note", b); err != nil {
		t.Fatal(err)
	}
	take(Took{Same: 1, Changed: 1, New: 1}, past("1", "a", "one"), past("2", "B", "changed"), past("3", "c", "three"))
	if got := kept1(t, s, first).Note; got != "by hand" {
		t.Errorf("an import of the same row wrote over %q", got)
	}
	second := entries(t, s)[1].ID
	if got := kept1(t, s, second).Note; got != "changed" {
		t.Errorf("the changed row left %q", got)
	}
	if u, err := s.Undo(ctx, second); err != nil || u.Build.Note != "two" {
		t.Errorf("undone: %+v %v", u.Build, err)
	}
	if err := s.Remove(ctx, first); err != nil {
		t.Fatal(err)
	}
	take(Took{Same: 1}, past("1", "other", "one"))
	bad := past("9", "z", "")
	bad.Build.Outcome = "exploded"
	if _, err := s.AddPast(ctx, []Past{past("8", "y", ""), bad}); !errors.Is(err, ErrRefused) || len(entries(t, s)) != 2 {
		t.Errorf("half of a table was kept: %v", err)
	}
}

func TestDecisionsOnFactorsStayInTheirOrder(t *testing.T) {
	s, ctx := opened(t), t.Context()
	first := Decision{What: Accepted, Factor: "hours/body", Words: "1 to 1.2", Before: json.RawMessage(`{}`), After: json.RawMessage(`{"a":1}`)}
	second := Decision{What: Restored, Factor: "hours/body", Before: first.After, After: first.Before}
	if err := errors.Join(s.Decide(ctx, first), s.Decide(ctx, second)); err != nil {
		t.Fatal(err)
	}
	list, err := s.Decisions(ctx)
	if err != nil || len(list) != 2 || list[0].Words != first.Words || string(list[1].After) != `{}` || list[0].At.IsZero() {
		t.Fatalf("%+v %v", list, err)
	}
	for _, bad := range []Decision{{What: "perhaps", Before: first.Before, After: first.After}, {What: Accepted, Before: json.RawMessage(`{`), After: first.After}} {
		if err := s.Decide(ctx, bad); !errors.Is(err, ErrRefused) {
			t.Errorf("%+v: %v", bad, err)
		}
	}
	for _, change := range []string{`UPDATE factors SET words = ''`, `DELETE FROM factors`} {
		if _, err := s.writer.Exec(change); !errors.Is(wrapped("", err), ErrRefused) {
			t.Errorf("%s: %v", change, err)
		}
	}
}
