package main

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"walkline/ui/task"
	"walkline/ui/view"
	"walkline/ui/widgets/plot"
	"walkline/ui/widgets/seen"
	"walkline/ui/widgets/table"
	"walkline/valuation/invoice"
	"walkline/valuation/lot"
)

// limit returns the walk-away bid of a lot as it is read, and that of the steps below and above it.
func (s *stage) limit(t *testing.T, id int64) (walk, below, above string) {
	c := s.kept(t, id)
	purse, steps, at := view.NewPurse(c.Currency), c.Buying.BidSteps, *s.answer(t, id).WalkAway
	return purse.Exact(at), purse.Exact(invoice.Before(steps, at)), purse.Exact(invoice.After(steps, at))
}

// The whole of a lot's turn, by keyboard alone: to the walk-away bid, past it, lost, taken back, and the next lot.
func TestLiveToPastTheLimitAndBack(t *testing.T) {
	s, id := worksheet(t, side, '1')
	s.press(fyne.KeyL)
	walk, below, above := s.limit(t, id)
	s.wants(t, "Lot 27", "none yet", "Walk-away bid, USD", walk, "steps left", "At a bid of USD 20")
	s.types(below + "\n")
	s.wants(t, below, "1 step left", "At a bid of USD "+below)
	live := s.screen.Canvas().Focused()
	seen.Press(live, fyne.KeyUp)
	s.wants(t, "no step left")
	seen.Press(live, fyne.KeyUp)
	s.wants(t, above, "STOP", "Breaks: ")
	s.types("60,000\n")
	s.wants(t, "60,000", "STOP", "Expected LOSS", "100 %")
	if hammer := s.lotOf(t, id).Build.Hammer; hammer != nil {
		t.Fatalf("a bid that was only shown is kept: %d", *hammer)
	}
	s.types("1.4k\nL")
	s.wants(t, "marked: lost at USD 1,400", "Recorded: lot 27 lost at USD 1,400. Ctrl+Z takes it back.")
	if l := s.lotOf(t, id); l.State != lot.Lost || l.Build.Hammer == nil || *l.Build.Hammer != 140000 {
		t.Errorf("the book has %s, %+v", l.State, l.Build)
	}
	s.types("n")
	s.wants(t, "Lot 33", "do not bid", "STOP")
	s.undo()
	s.wants(t, "Lot 27", "Undone: lot 27 lost at USD 1,400.")
	if l := s.lotOf(t, id); l.State == lot.Lost || l.Build.Hammer != nil {
		t.Errorf("taken back, the book has %s, %+v", l.State, l.Build)
	}
	seen.Press(s.screen.Canvas().Focused(), fyne.KeyEscape)
	s.wants(t, "Vehicle") // the worksheet
}

// A lot that is won at a price is foretold once, before, and its build begins with that price.
func TestALotWonOnLiveIsForetold(t *testing.T) {
	s, id := worksheet(t, side, '1')
	s.press(fyne.KeyL)
	s.types("w")
	s.wants(t, "At what price?")
	s.types("1250\nw")
	s.wants(t, "marked: won at USD 1,250")
	frozen, _, err := s.book.FrozenCases(t.Context())
	if l := s.lotOf(t, id); err != nil || l.State != lot.Won || *l.Build.Hammer != 125000 || len(frozen) != 1 ||
		frozen[id].Lot.Number != side {
		t.Errorf("the book has %s, %+v, forecast %d, %v", l.State, l.Build, len(frozen), err)
	}
	s.press(fyne.KeyB)
	s.wants(t, "won")
}

// The bid of the odds is walked and tapped in the window; the bid that is asked for is nobody's bid.
func TestTheOddsFollowTheLine(t *testing.T) {
	s, id := worksheet(t, side, '1')
	s.press(fyne.KeyE)
	s.tap(t, "Odds at any bid")
	walk, _, above := s.limit(t, id)
	chart := seen.All[*plot.Chances](s.screen.Content())[0]
	s.wants(t, "bid USD "+walk, "Every house rule holds at this bid.")
	test.TapAt(chart, fyne.NewPos(chart.Size().Width*0.9, chart.Size().Height/2))
	s.wants(t, "This bid breaks", "fails")
	seen.Press(chart, fyne.KeyEnd, fyne.KeyRight)
	s.wants(t, "bid USD "+above, "walk-away bid")
	if l := s.lotOf(t, id); l.Build.Hammer != nil || l.State == lot.Bid {
		t.Error("asking for odds was kept as a bid")
	}
}

// Escape leads back whatever has the keyboard: from a chart to the worksheet, from its table to the Board.
func TestEscapeLeadsBackFromChartsAndTables(t *testing.T) {
	s, _ := worksheet(t, side, '1')
	s.press(fyne.KeyE)
	chart := s.screen.Canvas().Focused()
	if _, ok := chart.(*plot.Waterfall); !ok {
		t.Fatalf("the keyboard is with %T", chart)
	}
	seen.Press(chart, fyne.KeyEscape)
	s.press(fyne.Key3)
	list := seen.All[*table.Table](s.screen.Content())[0]
	s.screen.Canvas().Focus(list)
	seen.Press(list, fyne.KeyEscape)
	s.wants(t, "3 lots")
}

// In a running sale the way from the Board to a lot is one key.
func TestLiveOpensTheLotSelectedOnTheBoard(t *testing.T) {
	s := opened(t, task.Inline{})
	s.window.LoadDemo()
	s.press(fyne.KeyL)
	s.wants(t, "Open a lot first")
	list := s.screen.Canvas().Focused()
	seen.Press(list, fyne.KeyDown, fyne.KeyDown)
	s.press(fyne.KeyL)
	s.wants(t, "Lot 27", "Current bid, USD", "steps left")
	s.types("nn")
	s.wants(t, "Lot 33", "That was the last lot of this sale.")
}

// A section's key on the Board opens the selected lot, as the key of a page of one lot does.
func TestASectionOpensTheLotSelectedOnTheBoard(t *testing.T) {
	s := opened(t, task.Inline{})
	s.window.LoadDemo()
	s.press(fyne.Key3)
	s.wants(t, "3 lots", "Open a lot first")
	seen.Press(s.screen.Canvas().Focused(), fyne.KeyDown, fyne.KeyDown)
	s.press(fyne.Key3)
	s.wants(t, "Lot 27", "Add my own line")
}
