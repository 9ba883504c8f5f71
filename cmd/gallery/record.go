package main

import (
	"context"
	"fmt"

	"fyne.io/fyne/v2"

	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/ui/widgets"
	"walkline/ui/widgets/seen"
	"walkline/valuation"
	"walkline/valuation/build"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// pastBuys is how many invented buys the track record of the pictures holds.
const pastBuys = 14

// record draws every section of the track record over invented past buys.
func (s *stage) record() error {
	s.press(fyne.KeyT)
	if err := s.save("record-empty"); err != nil {
		return err
	}
	if err := s.past(side); err != nil {
		return err
	}
	s.press(fyne.KeyB)
	s.press(fyne.KeyT)
	for i, section := range []string{"forecasts", "chances", "money", "factors", "history", "replay"} {
		s.press(fyne.KeyName(rune('1' + i)))
		switch section {
		case "factors":
			if focused := s.screen.Canvas().Focused(); focused != nil {
				for range 4 {
					focused.TypedKey(&fyne.KeyEvent{Name: fyne.KeyDown})
				}
			}
		case "replay":
			s.window.Do(desk.Want(desk.ReplayPast))
		}
		if err := s.save("record-" + section); err != nil {
			return err
		}
		if section == "forecasts" {
			seen.All[*widgets.Select](s.screen.Content())[0].SetSelected("Hammer price")
			if err := s.save("record-hammer"); err != nil {
				return err
			}
		}
	}
	return nil
}

// past adds finished builds of a demo lot, whose invented outcomes lie about what was foretold.
func (s *stage) past(number string) error {
	ctx := context.Background()
	id, err := s.lot(number)
	if err != nil {
		return err
	}
	l, err := s.book.Lot(ctx, id)
	if err != nil {
		return err
	}
	c := l.Case
	said, err := valuation.Foretell(c, s.know, nil)
	if err != nil {
		return err
	}
	hammer := said.At
	for i := range pastBuys {
		kept := c.Clone()
		kept.Lot.Number = fmt.Sprintf("P%d", i+1)
		added, err := s.book.Do(ctx, book.Step{Subject: book.Board, Label: "past", New: []book.New{{Case: kept}}})
		if err != nil {
			return err
		}
		if err := s.came(added.Lots[0], said, outcome(i, hammer, said)); err != nil {
			return err
		}
	}
	return nil
}

// came marks a lot as won, with what was forecast and what came.
func (s *stage) came(id int64, said learn.Prediction, came build.Build) error {
	l, err := s.book.Lot(context.Background(), id)
	if err != nil {
		return err
	}
	after := l.Clone()
	after.State, after.Build = lot.Won, came
	frozen := book.Prediction{Case: l.Case, Figures: said}
	_, err = s.book.Do(context.Background(), book.Step{Subject: book.Board, Label: "won",
		Lots: []book.Change{{Before: l, After: after, Freeze: &frozen}}})
	return err
}

// outcome is an invented end of a build: sold at one of the forecast's quantiles, hours and money a fifth over.
func outcome(i int, hammer money.Amount, said learn.Prediction) build.Build {
	cur, _ := money.Lookup("USD")
	price := cur.FromMajor(said.Resale.Q[(3+i*5)%len(said.Resale.Q)])
	asked := price + 60000
	b := build.Build{Outcome: build.Sold, Hammer: &hammer, Charges: []build.Charge{{Name: "Fees", Amount: said.Money.Fees}},
		Sale: build.Sale{Price: &price, FirstAsked: &asked, Brand: "rebuilt"},
		Dates: build.Dates{Bought: day(i, 1), Home: day(i, 3), Started: day(i, 4), Finished: day(i+1, 20), Inspected: day(i+2, 2),
			Listed: day(i+2, 3), Sold: day(i+2, 3+i)},
		Receipts: []build.Receipt{{Kind: "freight", Amount: said.Money.Freight}, {Kind: "storage", Amount: 0},
			{Kind: "selling", Amount: said.Money.Selling}}}
	over := 1.05 + 0.03*float64(i%10)
	for k, x := range said.Items {
		if x.Risk != "" || (k*7+i*3)%10 >= int(10*x.Chance) {
			continue
		}
		switch x.Kind {
		case learn.HoursKind:
			b.Hours = append(b.Hours, build.Work{Trade: x.Key, Line: x.Line, Hours: x.Mean * over})
		case learn.PartKind:
			b.Receipts = append(b.Receipts, build.Receipt{Kind: "part", Line: x.Line, What: x.Part, Source: x.Key,
				Amount: cur.FromMajor(x.Mean * (over - 0.1))})
		default:
			b.Receipts = append(b.Receipts, build.Receipt{Kind: string(x.Kind), Line: x.Line, Amount: cur.FromMajor(x.Mean)})
		}
	}
	for k, r := range said.Risks {
		state := build.NotThere
		if (k*7+i*3)%10 < int(10*r.Chance) {
			state = build.Found
		}
		b.See(r.ID, state)
	}
	return b
}

// day is a day of the invented past: month months after January 2025.
func day(months, d int) lot.Date {
	return lot.Date(fmt.Sprintf("%04d-%02d-%02d", 2025+months/12, 1+months%12, min(d, 28)))
}
