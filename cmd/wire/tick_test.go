package wire

import (
	"context"
	"path/filepath"
	"testing"

	"walkline/store"
	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/resale"
)

// manyRows is the largest table of comparables that must stay at hand.
const manyRows = 5000

// BenchmarkWindowTickSaved leaves one comparable of 5,000 out and takes it in again, on a store in a file. The whole is what stands
// between the key and the redrawn window, the valuation aside; the baseline is the same on the demo's own few rows.
func BenchmarkWindowTickSaved(b *testing.B) {
	few := ticking(b, 0)
	many := ticking(b, manyRows)
	b.Run("demo", few.run)
	b.Run("5000", many.run)
	b.Run("5000/clone", func(b *testing.B) {
		for b.Loop() {
			many.state.Open.Case.Clone()
		}
	})
	b.Run("5000/check", func(b *testing.B) {
		for b.Loop() {
			many.state.Open.Case.Check()
		}
	})
}

// ticked is a desk with a lot open.
type ticked struct {
	desk  *desk.Desk
	state desk.State
}

func ticking(b *testing.B, rows int) *ticked {
	b.Helper()
	s, err := store.Open(context.Background(), filepath.Join(b.TempDir(), "shop.db"))
	if err != nil {
		b.Fatal(err)
	}
	b.Cleanup(func() { s.Close() })
	d, err := NewDesk(s)
	if err != nil {
		b.Fatal(err)
	}
	c := d.Demo()[0]
	few := c.Resale.Rows
	for len(c.Resale.Rows) < rows {
		r := few[len(c.Resale.Rows)%len(few)]
		r.ID = ""
		c.Resale.Rows = append(c.Resale.Rows[:len(c.Resale.Rows):len(c.Resale.Rows)], []resale.Row{r}...)
	}
	done, err := s.Do(b.Context(), book.Step{Subject: book.Board, New: []book.New{{Case: c}}})
	if err != nil {
		b.Fatal(err)
	}
	return &ticked{d, d.Do(b.Context(), d.Load(b.Context()), desk.OpenLot(done.Lots[0]))}
}

func (t *ticked) run(b *testing.B) {
	for b.Loop() {
		t.state = t.desk.Do(b.Context(), t.state, desk.EditLot("tick", func(c *valuation.Case) {
			c.Resale.Rows[1].Excluded = !c.Resale.Rows[1].Excluded
		}))
		if t.state.Trouble != "" {
			b.Fatal(t.state.Trouble)
		}
	}
}
