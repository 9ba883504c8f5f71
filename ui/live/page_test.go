package live

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"walkline/cmd/wire/trial"
	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/ui/theme"
	"walkline/ui/widgets/seen"
	"walkline/valuation"
	"walkline/valuation/bid"
	"walkline/valuation/invoice"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/prob"
)

// hall is the page in a window, its user, and what the user called out and recorded.
type hall struct {
	*trial.User
	page   *Page
	window fyne.Window
	called []money.Amount
	lots   []string // whose turn it was
}

// do does what the page asks for, and notes where the bidding then stands and whose turn it is.
func (h *hall) do(a desk.Action) {
	before := *h.State.Open
	h.Do(a)
	h.page.Render(h.State)
	switch now := h.State.Open; {
	case now.ID != before.ID:
		h.lots = append(h.lots, now.Case.Lot.Number)
	case a.Words() == "":
		h.called = append(h.called, now.Current)
	}
}

// at returns the page of a plain lot in a window of a size; every figure is made up.
func at(t *testing.T, size fyne.Size) *hall {
	t.Helper()
	c := valuation.Defaults()
	c.Currency, c.ValuedOn, c.Lot.Number, c.Lot.Make = "USD", "2026-11-20", "27", "Kettrick"
	c.Lot.Title.Document, c.Findings = "salvage", map[string]string{valuation.NothingSeen: "no"}
	c.Repair.UseCatalogue, c.Hidden.UseCatalogue, c.Run.Scenarios = false, false, 1024
	c.Resale.Guess = &prob.Three{Low: 11000, Likely: 13000, High: 15000}
	c.Buying.BidSteps = []invoice.Step{{Step: 2500}, {From: 100000, Step: 10000}}
	least := money.Amount(100000)
	c.Rules = bid.Rules{MinProfit: &least}
	next := c.Clone()
	next.Lot.Number = "28"
	h := &hall{User: trial.New(t)}
	h.Do(desk.OpenLot(trial.Add(t, h.Store, book.New{Case: c}, book.New{Case: next})[0]))
	h.Do(desk.Go(desk.Board)) // which reads the list of the sale
	h.Do(desk.OpenLot(1))
	h.Do(desk.Go(desk.Live))
	v, err := h.Desk.Value(t.Context(), c)
	if err != nil {
		t.Fatal(err)
	}
	h.State = h.State.Valued(1, h.State.Open.Revision, v, nil)
	h.window = seen.Open(t, size, widget.NewLabel("")) // the look first, then what it dresses
	h.page = New(h.do, Sights{})
	h.window.SetContent(h.page.Object())
	h.page.Render(h.State)
	h.window.Canvas().Focus(h.page.First())
	return h
}

func (h *hall) call(bid money.Amount)      { h.do(desk.Call(bid)) }
func (h *hall) press(keys ...fyne.KeyName) { seen.Press(h.page.First(), keys...) }
func (h *hall) types(words string)         { test.Type(h.page.First(), words) }

func (h *hall) wants(t *testing.T, words ...string) {
	t.Helper()
	all := strings.Join(seen.Texts(h.page.Object()), " ")
	for _, w := range words {
		if !strings.Contains(all, w) {
			t.Errorf("%q is missing from %q", w, all)
		}
	}
}

var small = fyne.NewSize(1280, 640)

func TestTheBiddingStepsByTheSalesOwnSteps(t *testing.T) {
	h := at(t, small)
	h.wants(t, "none yet", "Walk-away bid", "steps left", "At a bid of USD 25")
	h.press(fyne.KeyUp, fyne.KeyRight)
	h.types("+-")
	h.press(fyne.KeyDown, fyne.KeyDown, fyne.KeyDown, fyne.KeyPageUp, fyne.KeyPageDown)
	if want := []money.Amount{2500, 5000, 7500, 5000, 2500, 0, 25000, 0}; !slices.Equal(h.called, want) {
		t.Errorf("called %v, want %v", h.called, want)
	}
}

func TestAPriceIsTypedAndEntered(t *testing.T) {
	h := at(t, small)
	h.types("1,2")
	h.wants(t, "Enter sets it, Esc cancels", "! write 1.2 for decimals")
	h.types("00")
	h.wants(t, "1,200", "= USD 1,200")
	if len(h.called) != 0 {
		t.Errorf("typing called %v", h.called)
	}
	h.press(fyne.KeyReturn)
	h.types("1.2x3k")
	h.wants(t, "1.23k")
	h.press(fyne.KeyBackspace, fyne.KeyBackspace)
	h.types("5k")
	h.press(fyne.KeyEnter)
	if !slices.Equal(h.called, []money.Amount{120000, 125000}) {
		t.Errorf("called %v", h.called)
	}
	h.wants(t, "Not a bid of this sale: it takes 1,200 or 1,300.")
	h.press(fyne.KeyHome)
	h.wants(t, "none yet")
}

func TestWhatIsNoPriceIsRefusedWithAReason(t *testing.T) {
	h := at(t, small)
	h.types("1.234567")
	h.press(fyne.KeyReturn)
	h.wants(t, "! at most 2 decimals", "1.234567")
	h.types("w")
	h.wants(t, "Press Enter first")
	if len(h.called) != 0 || len(h.Steps) != 0 {
		t.Errorf("called %v, recorded %v", h.called, h.Steps)
	}
	h.press(fyne.KeyEscape)
	h.wants(t, "none yet")
	h.State.Open.Case.Buying.BidSteps = nil
	h.page.Render(h.State)
	h.press(fyne.KeyUp)
	h.wants(t, "The bid steps of this sale are not entered")
}

func TestPastTheLimitStandsStop(t *testing.T) {
	h := at(t, small)
	h.call(*h.State.Open.Valued.Answer.WalkAway)
	h.wants(t, "no step left")
	h.press(fyne.KeyUp)
	h.wants(t, "STOP", "Breaks: least profit.")
	h.types("20k")
	h.press(fyne.KeyReturn)
	h.wants(t, "STOP", "Expected LOSS", "100 %")
	if !slices.Contains(h.page.Facts(), "STOP") {
		t.Errorf("%q", h.page.Facts())
	}
}

func TestOneKeyRecordsAndTurns(t *testing.T) {
	h := at(t, small)
	h.press(fyne.KeyUp)
	h.types("wLxnP")
	if !slices.Equal(h.Steps, []string{"won", "lost", "passed"}) || !slices.Equal(h.lots, []string{"28", "27"}) ||
		h.State.Open.State != lot.Passed {
		t.Errorf("recorded %v as %s, turned to %v", h.Steps, h.State.Open.State, h.lots)
	}
	h.window.Canvas().Unfocus()
	for _, k := range seen.All[*keycap](h.page.Object()) {
		test.Tap(k)
	}
	if len(h.Steps) != 6 || len(h.lots) != 4 || !slices.Equal(h.called, []money.Amount{2500, 2500, 0}) || !h.page.pad.calls {
		t.Errorf("by mouse: recorded %v, turned %v, called %v", h.Steps, h.lots, h.called)
	}
	if h.window.Canvas().Focused() != h.page.First() {
		t.Error("a tapped key does not give the keyboard back")
	}
}

// After G what is typed is a lot's number, never a bid; Esc leaves it.
func TestGGoesToALotByItsNumber(t *testing.T) {
	h := at(t, small)
	h.types("g")
	h.wants(t, "Go to lot number: Enter goes there, Esc cancels", "Type the number of the lot.")
	h.types("2x")
	h.press(fyne.KeyBackspace)
	h.types("8")
	h.press(fyne.KeyReturn)
	if !slices.Equal(h.lots, []string{"28"}) || len(h.called) != 0 || len(h.Steps) != 0 {
		t.Errorf("turned to %v, called %v, recorded %v", h.lots, h.called, h.Steps)
	}
	h.types("g27")
	h.press(fyne.KeyEscape)
	h.types("27")
	h.wants(t, "= USD 27", "Enter sets it")
	if len(h.lots) != 1 {
		t.Errorf("turned to %v", h.lots)
	}
}

func TestEscapeWithNothingTypedIsTheWindows(t *testing.T) {
	h := at(t, small)
	left := 0
	h.window.Canvas().SetOnTypedKey(func(*fyne.KeyEvent) { left++ })
	h.types("12")
	h.press(fyne.KeyEscape, fyne.KeyEscape)
	if left != 1 {
		t.Errorf("the window had %d escapes", left)
	}
}

// A price must not go into the void: the page says when it does not hear the keys.
func TestThePageSaysWhenItDoesNotHearTheKeys(t *testing.T) {
	h := at(t, small)
	h.wants(t, "Current bid, USD")
	h.window.Canvas().Unfocus()
	h.wants(t, "The keys are elsewhere: click here, or press Tab")
	test.Tap(h.page.pad)
	h.wants(t, "Current bid, USD")
}

// What is typed for one lot does not run on into the next.
func TestAnotherLotBeginsEmpty(t *testing.T) {
	h := at(t, small)
	h.types("12")
	o := *h.State.Open
	o.ID, o.Case.Lot.Number = 28, "28"
	h.page.Render(desk.State{Place: desk.Live, Open: &o})
	h.wants(t, "Lot 28", "none yet")
}

// Every text lies inside its room, black on white or white on black, in every look.
func TestEveryTextFitsAndIsBlackOnWhite(t *testing.T) {
	for name, o := range seen.Looks {
		for _, size := range []fyne.Size{small, {Width: 1900, Height: 980}} {
			h := at(t, size)
			fyne.CurrentApp().Settings().SetTheme(theme.New(o))
			h.call(120000 * 10)
			h.page.Object().Refresh()
			seen.Walk(h.page.Object(), func(o fyne.CanvasObject) {
				b, ok := o.(*big)
				if !ok || b.words == "" {
					return
				}
				r := test.WidgetRenderer(b).(*bigRenderer)
				if drawn := r.text.MinSize(); drawn.Width > b.Size().Width+.5 || inkHeight*r.text.TextSize > b.Size().Height+.5 {
					t.Errorf("%s at %v: %q takes %v of %v", name, size, b.words, drawn, b.Size())
				}
			})
			for _, words := range seen.All[*canvas.Text](h.page.Object()) {
				r, g, bl, _ := words.Color.RGBA()
				if r != g || g != bl || r != 0 && r != 0xffff {
					t.Errorf("%s: %q is drawn in %v", name, words.Text, words.Color)
				}
			}
		}
	}
}

func TestLiveLooks(t *testing.T) {
	h := at(t, small)
	h.call(*h.State.Open.Valued.Answer.WalkAway + 10000)
	seen.Picture(t, "live", fyne.NewSize(1280, 640), func() fyne.CanvasObject {
		h.page = New(h.do, Sights{})
		h.page.Render(h.State)
		return h.page.Object()
	})
}

// What the chance to win goes by is said above the odds: it is no figure, and has no cell among them.
func TestWhatTheOddsGoByStandsAboveThem(t *testing.T) {
	h := at(t, fyne.NewSize(1280, 720))
	s := h.State
	open, valued := *s.Open, *s.Open.Valued
	valued.Answer.WinFrom, valued.Answer.WinChance, valued.Answer.ExpectedGain = "starter values", new(float64), new(float64)
	open.Valued, s.Open = &valued, &open
	h.page.Render(s)
	if got := h.page.plan.words; !strings.Contains(got, "Odds of winning go by starter values.") {
		t.Errorf("above the odds: %q", got)
	}
}
