package main

import (
	"context"

	"fyne.io/fyne/v2"

	"walkline/ui/desk"
	"walkline/ui/widgets"
	"walkline/ui/widgets/seen"
	"walkline/valuation"
	"walkline/valuation/build"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/prob"
)

// wonAt is the hammer price of the build in the pictures, in minor units.
const wonAt = 345000

// builds draws the list of builds and every section of one that is under way.
func (s *stage) builds() error {
	s.press(fyne.KeyU)
	if err := s.save("builds-empty"); err != nil {
		return err
	}
	id, err := s.won(side)
	if err != nil {
		return err
	}
	s.press(fyne.KeyB)
	s.press(fyne.KeyU)
	if err := s.save("builds"); err != nil {
		return err
	}
	s.window.Do(desk.ShowBuild(id))
	for i, section := range []string{"progress", "bills", "hours", "hidden", "photos", "invoice", "sale"} {
		s.press(fyne.KeyName(rune('1' + i)))
		if err := s.save("build-" + section); err != nil {
			return err
		}
	}
	return s.ended(id)
}

// ended draws what is asked when a build has ended, and the totals of the years.
func (s *stage) ended(id int64) error {
	price := money.Amount(1430000)
	s.window.Do(desk.EditBuild("sold", func(b *build.Build) {
		b.Outcome, b.Sale.Price, b.Dates.Sold = build.Sold, &price, "2026-11-27"
	}))
	s.press(fyne.Key7)
	if err := s.save("build-questions"); err != nil {
		return err
	}
	s.window.Do(desk.CloseBuild())
	for _, b := range seen.All[*widgets.Button](s.screen.Content()) {
		if b.Text == "Year totals" {
			b.OnTapped()
		}
	}
	if err := s.save("builds-years"); err != nil {
		return err
	}
	s.window.Do(desk.ShowBuild(id))
	s.window.Do(desk.Undo())
	s.window.Do(desk.CloseBuild())
	return nil
}

// won marks a demo lot as won and enters what an invented first fortnight on it took.
func (s *stage) won(number string) (int64, error) {
	ctx := context.Background()
	id, err := s.lot(number)
	if err != nil {
		return 0, err
	}
	l, err := s.book.Lot(ctx, id)
	if err != nil {
		return 0, err
	}
	c := l.Case
	hammer := money.Amount(wonAt)
	said, err := valuation.Foretell(c, s.know, &hammer)
	if err != nil {
		return 0, err
	}
	cur, _ := money.Lookup(c.Currency)
	charges := []build.Charge{}
	for _, l := range c.Buying.Total(hammer, cur).Lines[1:] {
		charges = append(charges, build.Charge(l))
	}
	b := build.Build{Outcome: build.Open, Hammer: &hammer, Charges: charges,
		Dates: build.Dates{Bought: "2026-10-30", Home: "2026-11-02", Started: "2026-11-05"}}
	fortnight(&b, valuation.Plan(c, s.know), valuation.Risks(c, s.know))
	return id, s.came(id, said, b)
}

// fortnight enters invented bills, hours and findings.
func fortnight(b *build.Build, plan []valuation.PlannedLine, risks []valuation.RiskFigure) {
	b.Receipts = []build.Receipt{{Date: "2026-11-02", What: "Trailer", Kind: "freight", Amount: 21000}}
	for i, l := range plan {
		if i == 0 {
			b.Done = []string{l.ID}
		}
		for _, p := range l.Parts {
			if len(b.Receipts) < 5 {
				b.Receipts = append(b.Receipts, build.Receipt{Date: "2026-11-09", What: p.Name, Kind: "part", Line: l.ID, Source: "used",
					Amount: 14550})
			}
		}
		for _, trade := range lot.Trades {
			if t, ok := l.Hours[trade]; ok && i < 3 {
				b.Hours = append(b.Hours, build.Work{Date: "2026-11-10", Trade: trade, Line: l.ID, Hours: t.Likely})
			}
		}
	}
	for i, r := range risks {
		if i < 2 {
			b.See(r.ID, []string{build.Found, build.NotThere}[i])
		}
	}
	b.Otherwise = build.Otherwise{AsIs: &prob.Three{Low: 3200, Likely: 3900, High: 4600},
		PartOut:      &prob.Three{Low: 3500, Likely: 4600, High: 6200},
		PartOutHours: &prob.Three{Low: 25, Likely: 35, High: 60}}
}
