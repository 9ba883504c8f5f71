package main

import (
	"testing"

	"fyne.io/fyne/v2"

	"walkline/cmd/wire"
	"walkline/ui/task"
	"walkline/ui/theme"
	"walkline/valuation"
)

// BenchmarkTickShown leaves one of 5,000 comparables out and takes it in again with the Resale section in view: the edit,
// and both renderings (at once, and with the new valuation). The engine's time is a part of its own.
func BenchmarkTickShown(b *testing.B) {
	s, err := openWith(look{"test", fyne.NewSize(1280, 720), theme.Light, 1}, task.Inline{})
	if err != nil {
		b.Fatal(err)
	}
	defer s.screen.Close()
	s.window.LoadDemo()
	id, _ := s.lot(side)
	c, err := s.book.Case(b.Context(), id)
	if err != nil {
		b.Fatal(err)
	}
	few := c.Resale.Rows
	for len(c.Resale.Rows) < 5000 {
		r := few[len(c.Resale.Rows)%len(few)]
		c.Resale.Rows = append(c.Resale.Rows, r)
	}
	if err := s.book.Save(b.Context(), id, "many", c); err != nil {
		b.Fatal(err)
	}
	s.window.Open(id)
	s.press(fyne.Key4)
	b.Run("all", func(b *testing.B) {
		for b.Loop() {
			s.window.Edit("tick", func(c *valuation.Case) { c.Resale.Rows[1].Excluded = !c.Resale.Rows[1].Excluded })
		}
	})
	d, err := wire.NewDesk(s.book)
	if err != nil {
		b.Fatal(err)
	}
	b.Run("value", func(b *testing.B) {
		for b.Loop() {
			if _, err := d.Value(c); err != nil {
				b.Fatal(err)
			}
		}
	})
}
