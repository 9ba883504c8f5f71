package live

import (
	"context"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

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

// hall answers the page as the window does.
type hall struct {
	page     *Page
	window   fyne.Window
	state    desk.State
	called   []money.Amount
	recorded []lot.State
	turned   []int
}

func (h *hall) Call(b money.Amount) {
	h.called = append(h.called, b)
	h.state = (&desk.Desk{}).Call(context.Background(), h.state, b)
	h.page.Render(h.state)
}
func (h *hall) Record(s lot.State) { h.recorded = append(h.recorded, s) }
func (h *hall) NextLot(by int)     { h.turned = append(h.turned, by) }

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
	v, err := (&desk.Desk{}).Value(c)
	if err != nil {
		t.Fatal(err)
	}
	h := &hall{state: desk.State{Place: desk.Live, Open: &desk.Open{ID: 27, Case: c, Valued: &v, Fresh: true, Revision: 1}}}
	h.window = seen.Open(t, size, widget.NewLabel("")) // the look first, then what it dresses
	h.page = New(h)
	h.window.SetContent(h.page.Object())
	h.page.Render(h.state)
	h.window.Canvas().Focus(h.page.First())
	return h
}

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
	h.wants(t, "Typed: Enter takes it, Esc drops it", "! write 1.2 for decimals")
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
	if len(h.called) != 0 || len(h.recorded) != 0 {
		t.Errorf("called %v, recorded %v", h.called, h.recorded)
	}
	h.press(fyne.KeyEscape)
	h.wants(t, "none yet")
	h.state.Open.Case.Buying.BidSteps = nil
	h.page.Render(h.state)
	h.press(fyne.KeyUp)
	h.wants(t, "The bid steps of this sale are not entered")
}

func TestPastTheLimitStandsStop(t *testing.T) {
	h := at(t, small)
	h.Call(*h.state.Open.Valued.Answer.WalkAway)
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
	h.types("wLnP")
	if !slices.Equal(h.recorded, []lot.State{lot.Won, lot.Lost}) || !slices.Equal(h.turned, []int{1, -1}) {
		t.Errorf("recorded %v, turned %v", h.recorded, h.turned)
	}
	h.window.Canvas().Unfocus()
	for _, k := range seen.All[*keycap](h.page.Object()) {
		test.Tap(k)
	}
	if len(h.recorded) != 4 || len(h.turned) != 4 || !slices.Equal(h.called, []money.Amount{2500, 0}) {
		t.Errorf("by mouse: recorded %v, turned %v, called %v", h.recorded, h.turned, h.called)
	}
	if h.window.Canvas().Focused() != h.page.First() {
		t.Error("a tapped key does not give the keyboard back")
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
	o := *h.state.Open
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
			h.Call(120000 * 10)
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
	h.Call(*h.state.Open.Valued.Answer.WalkAway + 10000)
	seen.Picture(t, "live", fyne.NewSize(1280, 640), func() fyne.CanvasObject {
		h.page = New(h)
		h.page.Render(h.state)
		return h.page.Object()
	})
}
