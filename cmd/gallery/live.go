package main

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"walkline/ui/desk"
)

// live draws the page of the running sale: before the bidding, at it, past the walk-away bid, and at a lot that must not be bid for.
func (s *stage) live() error {
	s.press(fyne.KeyL)
	if err := s.save("live-before"); err != nil {
		return err
	}
	for _, at := range []struct{ typed, picture string }{{"1,275\n", "live-near"}, {"2.1k", "live-typed"}, {"\n", "live-past"},
		{"60k\n", "live-loss"}} {
		s.types(at.typed)
		if err := s.save(at.picture); err != nil {
			return err
		}
	}
	s.types("n")
	return s.save("live-refused")
}

// types types on what has the keyboard; a new line is Enter.
func (s *stage) types(words string) {
	for _, r := range words {
		focused := s.screen.Canvas().Focused()
		if r == '\n' {
			focused.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
			continue
		}
		test.Type(focused, string(r))
	}
}

// salePlan draws the plan of the demo sale's day.
func (s *stage) salePlan() error {
	s.window.Do(desk.Go(desk.SalePlan))
	s.window.Do(desk.EditDay("what there is", func(d *desk.SaleDay) {
		d.Cash, d.Hours, d.Bays = 900000, 120, 2
		d.In = []desk.Coming{{Day: "2026-12-05", Amount: 350000}}
	}))
	if err := s.save("sale-plan"); err != nil {
		return err
	}
	s.window.Do(desk.EditDay("money that comes in", func(d *desk.SaleDay) {
		for i := range 8 {
			d.In = append(d.In, desk.Coming{Day: d.In[0].Day.Plus(7 * (i + 1)), Amount: 120000})
		}
	}))
	return s.save("sale-plan-many")
}
