package main

import (
	"context"
	"encoding/json"
	"fmt"
	"path/filepath"
	"strings"
	"testing"

	"walkline/assets"
	"walkline/store"
	"walkline/store/book"
	"walkline/store/casefile"
	"walkline/valuation"
	"walkline/valuation/build"
	"walkline/valuation/invoice"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/resale"
)

// shopStore is a store with one open lot, six finished buys that took half again as many hours and lost money, and one
// lot that another took cheaply.
func shopStore(t *testing.T) string {
	t.Helper()
	ctx := context.Background()
	path := filepath.Join(t.TempDir(), "shop.db")
	s, err := store.Open(ctx, path)
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	data, err := assets.Demo("front.json")
	if err != nil {
		t.Fatal(err)
	}
	c, faults := casefile.Read(data)
	know, more := casefile.Knowledge(assets.Jobs(), assets.Risks(), assets.ResalePrior())
	if len(faults)+len(more) > 0 {
		t.Fatal(faults, more)
	}
	c.Resale.Comparables, c.Run.Scenarios = "", 1024
	c.Buying.BidSteps = []invoice.Step{{Step: 1000}} // a step of 10: at the demo's 100 the hours may move the bid by less than one
	must := func(err error) {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
	}
	_, err = s.Do(ctx, book.Step{Subject: book.Board, New: []book.New{{Case: c}}})
	must(err)
	a, err := valuation.Value(c, know)
	must(err)
	p, err := valuation.Foretell(c, know, nil)
	must(err)
	for i := range 7 {
		c.Lot.Number = fmt.Sprint(100 + i)
		state, b := lot.Won, came(p)
		if i == 6 {
			cheap := *a.WalkAway - 50_000
			state, b = lot.Lost, build.Build{Hammer: &cheap}
		}
		added, err := s.Do(ctx, book.Step{Subject: book.Buys, New: []book.New{{State: state, Case: c, Build: b}}})
		must(err)
		same := book.Lot{ID: added.Lots[0]}
		_, err = s.Do(ctx, book.Step{Subject: book.Buys, Lots: []book.Change{{Before: same, After: same,
			Freeze: &book.Prediction{Case: c, Answer: a, Figures: p}}}})
		must(err)
	}
	return path
}

// came is a build whose every hour took half again as long, bought at the walk-away bid and sold for too little.
func came(p learn.Prediction) build.Build {
	hammer, price := p.At, money.Amount(700_000)
	b := build.Build{Outcome: build.Sold, Hammer: &hammer, Dates: build.Dates{Bought: "2026-03-01", Home: "2026-03-03",
		Finished: "2026-04-20", Listed: "2026-05-01", Sold: "2026-05-20"},
		Sale: build.Sale{Price: &price, Brand: "rebuilt"}, Receipts: []build.Receipt{{Kind: "freight", Amount: 18_000},
			{Kind: "materials", Amount: 30_000}}}
	for _, i := range p.Items {
		if i.Kind == learn.HoursKind && i.Risk == "" {
			b.Hours = append(b.Hours, build.Work{Trade: i.Key, Line: i.Line, Hours: 1.5 * i.Mean})
		}
	}
	b.Risks = []build.Seen{{Risk: p.Risks[0].ID, State: build.Found}}
	return b
}

func TestTuneShowsAndChangesNothing(t *testing.T) {
	path := shopStore(t)
	code, out, errs := ran("tune", path, "--dry-run", "--json")
	var got tuning
	if err := json.Unmarshal([]byte(out), &got); code != done || err != nil || errs != "" {
		t.Fatalf("exit %d, %v, %s", code, err, errs)
	}
	found := map[string]proposed{}
	for _, p := range got.Proposals {
		found[p.Key] = p
	}
	body := found["hours/body"]
	if body.Proposed.At < 1.15 || body.Proposed.At > 1.5 || len(body.Evidence) != 6 || len(body.Effects) != 1 {
		t.Errorf("body hours: %+v", body)
	}
	if e := body.Effects[0]; e.Before == nil || e.After == nil || *e.After >= *e.Before {
		t.Errorf("longer hours move the open lot from %s to %s", *e.Before, *e.After)
	}
	if got.Record.Buys != 6 || got.Record.Money.Came >= 0 || got.Currency != "USD" || got.Record.Selected != learn.Selection {
		t.Errorf("record of %d buys, %+v", got.Record.Buys, got.Record.Money)
	}
	code, text, _ := ran("tune", path, "--dry-run")
	for _, says := range []string{"Hours, body: 1.00 -> 1.", "walk away above", "not as stated", "Only lots that you won are seen",
		"Profit made"} {
		if code != done || !strings.Contains(text, says) {
			t.Errorf("the text does not say %q:\n%s", says, text)
		}
	}
	if _, again, _ := ran("tune", path, "--dry-run", "--json"); again != out {
		t.Error("looking changed what there is to see")
	}
}

func TestReplayShowsWhatWouldBeRefused(t *testing.T) {
	path := shopStore(t)
	_, out, _ := ran("replay", path, "--json")
	var before replayed
	if err := json.Unmarshal([]byte(out), &before); err != nil || before.Sum.StillBought != 6 || before.Sum.WouldBuy != 1 {
		t.Fatalf("with the factors of then: %+v, %v", before.Sum, err)
	}
	accept(t, path)
	code, out, errs := ran("replay", path, "--json")
	var after replayed
	if err := json.Unmarshal([]byte(out), &after); code != done || err != nil || errs != "" {
		t.Fatalf("exit %d, %v, %s", code, err, errs)
	}
	if s := after.Sum; s.Refused != 6 || s.LossesRefused != 6 || s.LossAvoided == "0.00" || s.StillBought != 0 {
		t.Errorf("with what was learned: %+v", s)
	}
	if _, text, _ := ran("replay", path); !strings.Contains(text, "6 had lost USD") ||
		!strings.Contains(text, "Only lots that you won are seen") {
		t.Errorf("the text says\n%s", text)
	}
}

// accept accepts every proposal.
func accept(t *testing.T, path string) {
	t.Helper()
	s, code := readShop(path, &strings.Builder{})
	if code != done {
		t.Fatal("the store can't be read")
	}
	f := s.now
	for _, p := range learn.Propose(s.past, s.today, f, s.know.Starter()) {
		f = learn.Apply(f, p)
	}
	file, err := store.Open(context.Background(), path)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	decision := book.Decision{What: book.Accepted, Factor: "all", Before: s.now, After: f}
	if _, err := file.Do(t.Context(), book.Step{Subject: book.Record, Decision: &decision}); err != nil {
		t.Fatal(err)
	}
}

func TestStoresThatAreNone(t *testing.T) {
	for _, c := range []struct {
		args []string
		code int
		says string
	}{
		{[]string{"tune"}, faulty, "which store?"},
		{[]string{"tune", "a.db"}, faulty, "say --dry-run"},
		{[]string{"tune", "a.db", "b.db", "--dry-run"}, faulty, "one store at a time"},
		{[]string{"replay", "a.db", "--dry-run"}, faulty, "no option --dry-run"},
		{[]string{"replay", filepath.Join(t.TempDir(), "none.db")}, failed, "there is no such file"},
		{[]string{"replay", demo("front.json")}, failed, "front.json"},
	} {
		code, out, errs := ran(c.args...)
		if code != c.code || !strings.Contains(errs, c.says) || out != "" {
			t.Errorf("walk %v: exit %d, want %d; %q and %q, want %q", c.args, code, c.code, out, errs, c.says)
		}
	}
}

// TestALotIsValuedByTheShelfAsInTheWindow tunes a shop whose open lot has no guess and no rows of its own: what the shelf holds of its
// model values it.
func TestALotIsValuedByTheShelfAsInTheWindow(t *testing.T) {
	ctx := context.Background()
	path := shopStore(t)
	s, err := store.Open(ctx, path)
	if err != nil {
		t.Fatal(err)
	}
	entries, err := s.Entries(ctx)
	if err != nil {
		t.Fatal(err)
	}
	var open book.Lot
	for _, e := range entries {
		if e.State == lot.ToLookAt {
			if open, err = s.Lot(ctx, e.ID); err != nil {
				t.Fatal(err)
			}
		}
	}
	bare := open
	bare.Case.Resale.Guess = nil
	step := book.Step{Subject: book.Worksheet(open.ID), Lots: []book.Change{{Before: open, After: bare}}}
	miles := 60000.0
	for i := range 12 {
		c := book.Comparable{Currency: "USD", On: "2026-11-20", Row: resale.Row{ID: fmt.Sprint(i), Make: open.Case.Lot.Make,
			Model:     open.Case.Lot.Model,
			ModelYear: open.Case.Lot.ModelYear, Price: money.Amount(1_000_000 + 10_000*i), Kind: "asked", Date: "2026-11-10", Mileage: &miles,
			Unit: "mi"}}
		step.Shelf = append(step.Shelf, book.Shelved{After: &c})
	}
	if _, err := s.Do(ctx, step); err != nil {
		t.Fatal(err)
	}
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	if code, out, errs := ran("tune", path, "--dry-run"); code != done || strings.Contains(out+errs, "cannot be valued") {
		t.Errorf("exit %d:\n%s%s", code, out, errs)
	}
}
