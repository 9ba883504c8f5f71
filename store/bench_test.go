package store

import (
	"encoding/json"
	"math/rand/v2"
	"path/filepath"
	"testing"
	"time"

	"walkline/store/book"
	"walkline/valuation/build"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/resale"
)

// BenchmarkTick leaves one comparable out and takes it in again, among few and among 5,000, the largest table that must stay at
// hand; the ratio is to the few of the same run.
func BenchmarkTick(b *testing.B) {
	var few float64
	for _, rows := range []int{2, 5000} {
		b.Run(map[int]string{2: "few", 5000: "5000"}[rows], func(b *testing.B) {
			s := opened(b)
			c := sample(b)
			r := rand.New(rand.NewPCG(5, 6))
			for len(c.Resale.Rows) < rows {
				c.Resale.Rows = append(c.Resale.Rows, filled[resale.Row](r))
			}
			id := added(b, s, c)
			before := read(b, s, id)
			for b.Loop() {
				after := before.Clone()
				after.Case.Resale.Rows[1].Excluded = !after.Case.Resale.Rows[1].Excluded
				done := do(b, s, book.Step{Subject: book.Worksheet(id), Label: "tick", Lots: []book.Change{{Before: before, After: after}}})
				after.Revision, before = done.Revisions[0], after
			}
			each := b.Elapsed().Seconds() / float64(b.N)
			if rows == 2 {
				few = each
			}
			b.ReportMetric(each/few, "x_few")
		})
	}
}

// BenchmarkBuilds lists 2,000 builds with what was foretold of them; the ratio is to reading one lot whole as often.
func BenchmarkBuilds(b *testing.B) {
	s := opened(b)
	var step book.Step
	for range 2000 {
		step.New = append(step.New, book.New{State: lot.Won, Case: sample(b), Build: build.Build{Receipts: landedBuild().Receipts}})
	}
	done := do(b, s, step)
	freeze := book.Step{}
	for _, id := range done.Lots {
		l := read(b, s, id)
		freeze.Lots = append(freeze.Lots, book.Change{Before: l, After: l, Freeze: &book.Prediction{Case: sample(b), Answer: answer(nil),
			Figures: learn.Prediction{Engine: "3"}}})
	}
	do(b, s, freeze)
	start := time.Now()
	for _, id := range done.Lots {
		read(b, s, id)
	}
	each := time.Since(start).Seconds()
	for b.Loop() {
		if list, err := s.Builds(b.Context()); err != nil || len(list) != 2000 || list[0].Foretold == nil {
			b.Fatalf("%d builds, %v", len(list), err)
		}
	}
	b.ReportMetric(b.Elapsed().Seconds()/float64(b.N)/each, "x_read_one_by_one")
}

// BenchmarkOpenBuilds opens a store with 2,000 builds and lists them; the ratio is to two seconds, in which it must be done.
func BenchmarkOpenBuilds(b *testing.B) {
	path := filepath.Join(b.TempDir(), "walkline.db")
	s, err := Open(b.Context(), path)
	if err != nil {
		b.Fatal(err)
	}
	var step book.Step
	for range 2000 {
		step.New = append(step.New, book.New{State: lot.Won, Case: sample(b), Build: build.Build{Receipts: landedBuild().Receipts}})
	}
	do(b, s, step)
	if err := s.Close(); err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		s, err := Open(b.Context(), path)
		if err != nil {
			b.Fatal(err)
		}
		if list, err := s.Builds(b.Context()); err != nil || len(list) != 2000 {
			b.Fatalf("%d builds, %v", len(list), err)
		}
		if err := s.Close(); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(b.Elapsed().Seconds()/float64(b.N)/2, "x_2s")
}

// BenchmarkEntries lists 1,000 lots as the first page does; the ratio is to reading one lot whole as often.
func BenchmarkEntries(b *testing.B) {
	s := opened(b)
	var step book.Step
	for range 1000 {
		step.New = append(step.New, book.New{Case: sample(b)})
	}
	ids := do(b, s, step).Lots
	start := time.Now()
	for _, id := range ids {
		read(b, s, id)
	}
	each := time.Since(start).Seconds()
	for b.Loop() {
		if list, err := s.Entries(b.Context()); err != nil || len(list) != len(ids) {
			b.Fatalf("%d lots, %v", len(list), err)
		}
	}
	b.ReportMetric(b.Elapsed().Seconds()/float64(b.N)/each, "x_read_one_by_one")
}

// BenchmarkShelf100000 lays 100,000 comparables on the shelf in one step, takes it back, does it again and reads them; the ratios are to
// encoding the rows once with encoding/json, in the same run.
func BenchmarkShelf100000(b *testing.B) {
	step := ofShelf("import")
	for i := range 100_000 {
		step.Shelf = append(step.Shelf, book.Shelved{After: &book.Comparable{Currency: "USD", From: "a.csv", On: "2026-11-20",
			Row: resale.Row{Price: money.Amount(100_000 + i), Make: "Ostrane", Model: "Pell", ModelYear: 2016, Trim: "LX", Title: "clear"}}})
	}
	took := map[string]time.Duration{}
	timed := func(what string, f func()) {
		start := time.Now()
		f()
		took[what] += time.Since(start)
	}
	for b.Loop() {
		s := opened(b)
		timed("encoded", func() {
			for _, x := range step.Shelf {
				if _, err := json.Marshal(x.After); err != nil {
					b.Fatal(err)
				}
			}
		})
		timed("laid", func() { do(b, s, step) })
		timed("reached", func() { _, _ = s.Reach(b.Context(), step.Subject) })
		timed("undone", func() { undone(b, s, step.Subject, "import") })
		timed("redone", func() { redone(b, s, step.Subject, "import") })
		timed("read", func() { shelf(b, s) })
	}
	for _, what := range []string{"laid", "reached", "undone", "redone", "read"} {
		b.ReportMetric(took[what].Seconds()/took["encoded"].Seconds(), "x_encoded_"+what)
		b.ReportMetric(took[what].Seconds()/float64(b.N), "s_"+what)
	}
}
