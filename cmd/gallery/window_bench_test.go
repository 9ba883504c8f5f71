package main

import (
	"context"
	"fmt"
	"slices"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"walkline/cmd/wire/trial"
	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/ui/task"
	"walkline/ui/theme"
	"walkline/ui/widgets/seen"
	"walkline/ui/widgets/table"
	"walkline/valuation"
	"walkline/valuation/money"
)

// The window's work on the toolkit's software driver. Each benchmark times its baseline in the same run and reports the
// ratio; none fails for being slow.

// split works in line, as task.Inline does, and adds up what the work took: the engine's part.
type split struct {
	task.Inline
	engine time.Duration
}

// Run works and shows.
func (r *split) Run(j task.Job) {
	at := time.Now()
	show := j.Work(context.Background())
	r.engine += time.Since(at)
	if show != nil {
		show()
	}
}

// benched is the window over an empty book.
func benched(b *testing.B, r task.Runner) *stage {
	b.Helper()
	s, err := openWith(look{"bench", fyne.NewSize(1280, 720), theme.Light, 1}, r)
	if err != nil {
		b.Fatal(err)
	}
	b.Cleanup(func() {
		if err := s.close(); err != nil {
			b.Error(err)
		}
	})
	return s
}

// median times f and returns how long it took in the middle of some rounds.
func median(f func()) time.Duration {
	const odd = 9
	var took []time.Duration
	for range odd {
		at := time.Now()
		f()
		took = append(took, time.Since(at))
	}
	return middleOf(took)
}

func middleOf(took []time.Duration) time.Duration {
	slices.Sort(took)
	return took[len(took)/2]
}

// BenchmarkWindowEdit changes a figure of the demo lot until the new verdict stands in the window: the window's own work
// (saving, both renderings), and what it is of the engine's time.
func BenchmarkWindowEdit(b *testing.B) {
	r := &split{}
	s := benched(b, r)
	s.window.LoadDemo()
	id, err := s.lot(side)
	if err != nil {
		b.Fatal(err)
	}
	s.window.Do(desk.OpenLot(id))
	for i, name := range []string{"Facts", "Damage", "Repair", "Resale", "Costs", "Checks"} {
		s.press(fyne.KeyName(rune('1' + i)))
		b.Run(name, func(b *testing.B) {
			n := 0
			r.engine = 0
			for b.Loop() {
				n++
				s.window.Do(desk.EditLot("holding", func(c *valuation.Case) { c.Time.HoldingPerDay = 6 + float64(n%7) }))
			}
			window := b.Elapsed() - r.engine
			b.ReportMetric(float64(window)/float64(b.N)/1e6, "window-ms")
			b.ReportMetric(float64(window)/float64(r.engine), "x-engine")
		})
	}
}

// BenchmarkWindowBoard scrolls and sorts a Board of 10,000 lots, against one of 20.
func BenchmarkWindowBoard(b *testing.B) {
	few, many := benchBoard(b, 20), benchBoard(b, 10_000)
	for _, job := range []struct {
		name string
		do   func(*boarded)
	}{{"scroll", (*boarded).scroll}, {"sort", (*boarded).sort}} {
		b.Run(job.name, func(b *testing.B) {
			base := median(func() { job.do(few) })
			for b.Loop() {
				job.do(many)
			}
			b.ReportMetric(float64(b.Elapsed())/float64(b.N)/float64(base), "x-20-lots")
		})
	}
}

// boarded is a Board with lots on it.
type boarded struct {
	*stage
	table *table.Table
	page  bool
}

func benchBoard(b *testing.B, lots int) *boarded {
	b.Helper()
	s := benched(b, task.Inline{})
	base := s.desk.Demo()[0]
	base.Resale.Rows = nil // the Board shows none
	var added []book.New
	for i := range lots {
		c := base.Clone()
		c.Lot.Number = fmt.Sprint(i + 1)
		added = append(added, book.New{Case: c})
	}
	for i, id := range trial.Add(b, s.book, added...) {
		walkAway := money.Amount((i * 7919) % 1_000_000)
		a := valuation.Answer{Decision: "bid", WalkAway: &walkAway}
		a.Profit.LossChance = float64(i%100) / 100
		if err := s.book.NoteAnswer(b.Context(), book.Answered{Lot: id, Revision: 1}, a); err != nil {
			b.Fatal(err)
		}
	}
	s.press(fyne.KeyB)
	return &boarded{stage: s, table: seen.All[*table.Table](s.screen.Content())[0]}
}

// scroll goes a page down, or to the top again, and draws.
func (s *boarded) scroll() {
	s.page = !s.page
	seen.Press(s.table, map[bool]fyne.KeyName{true: fyne.KeyEnd, false: fyne.KeyHome}[s.page])
	s.screen.Canvas().Capture()
}

// sort sorts by the marked column, the other way round each time, and draws.
func (s *boarded) sort() {
	test.Type(s.table, "s")
	s.screen.Canvas().Capture()
}

// BenchmarkWindowTick leaves one of 5,000 comparables out and takes it in again with the Resale section in view, against
// the same with the demo's few.
func BenchmarkWindowTick(b *testing.B) {
	few := benchTicks(b, 0)
	base := median(few)
	many := benchTicks(b, 5000)
	for b.Loop() {
		many()
	}
	b.ReportMetric(float64(b.Elapsed())/float64(b.N)/float64(base), "x-29-rows")
}

// benchTicks returns what ticks a comparable of the demo lot, which has at least so many rows: until the
// window shows it, before it is valued.
func benchTicks(b *testing.B, rows int) func() {
	b.Helper()
	s := benched(b, new(task.Held))
	c := s.desk.Demo()[1].Clone()
	few := c.Resale.Rows
	for len(c.Resale.Rows) < rows {
		c.Resale.Rows = append(c.Resale.Rows, few[len(c.Resale.Rows)%len(few)])
	}
	s.window.Do(desk.OpenLot(trial.Add(b, s.book, book.New{Case: c})[0]))
	s.press(fyne.Key4)
	return func() {
		s.window.Do(desk.EditLot("tick", func(c *valuation.Case) { c.Resale.Rows[1].Excluded = !c.Resale.Rows[1].Excluded }))
	}
}
