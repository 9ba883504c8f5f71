package why

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"walkline/cmd/wire/trial"
	"walkline/ui/desk"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/ui/widgets/plot"
	"walkline/ui/widgets/seen"
	"walkline/valuation"
	"walkline/valuation/bid"
	"walkline/valuation/invoice"
	"walkline/valuation/money"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
)

// valued is a plain lot; every figure is made up.
func valued(t *testing.T) desk.State {
	t.Helper()
	c := valuation.Defaults()
	c.Currency, c.ValuedOn, c.Lot.Number, c.Lot.ModelYear, c.Lot.Make = "USD", "2026-11-20", "27", 2018, "Kettrick"
	c.Repair.UseCatalogue, c.Hidden.UseCatalogue, c.Run.Scenarios = false, false, 1024
	c.Resale.Guess = &prob.Three{Low: 11000, Likely: 13000, High: 15000}
	c.Buying.BidSteps = []invoice.Step{{Step: 2500}, {From: 100000, Step: 10000}}
	c.Repair.Lines = []repair.Line{{ID: "a", Job: "Hang a door", Area: "09", Outside: prob.Certain(300), Caution: "the maker decides."}}
	least := money.Amount(100000)
	c.Rules = bid.Rules{MinProfit: &least}
	v, err := (&desk.Desk{}).Value(t.Context(), c)
	if err != nil {
		t.Fatal(err)
	}
	return desk.State{Place: desk.Why, Open: &desk.Open{ID: 27, Case: c, Valued: &v, Fresh: true, Revision: 1}}
}

// asker is the page's user, and the bids whose odds were asked for.
type asker struct {
	*trial.User
	page  *Page
	asked []money.Amount
}

func (a *asker) do(x desk.Action) {
	a.Do(x)
	a.asked = append(a.asked, a.State.Open.Asked)
	a.page.Render(a.State)
}

// shown returns the page over a state, in a window of the smallest size.
func shown(t *testing.T, s desk.State) (*Page, fyne.Window) {
	p, w, _ := asking(t, s)
	return p, w
}

func asking(t *testing.T, s desk.State) (*Page, fyne.Window, *asker) {
	t.Helper()
	w := seen.Open(t, fyne.NewSize(1280, 640), widget.NewLabel("")) // the look first, then what it dresses
	a := &asker{User: trial.New(t)}
	a.State = s
	p := New(a.do)
	a.page = p
	w.SetContent(p.Object())
	p.Render(s)
	return p, w, a
}

func wants(t *testing.T, p *Page, words ...string) {
	t.Helper()
	all := strings.Join(seen.Texts(p.Object()), " ")
	for _, w := range words {
		if !strings.Contains(all, w) {
			t.Errorf("%q is missing from %q", w, all)
		}
	}
}

func TestTheFallOpensByKeyboardAndMouse(t *testing.T) {
	p, w := shown(t, valued(t))
	wants(t, p, "Lot 27", "From the resale price down to USD", "The largest legal bid", "Least expected profit")
	first := p.First()
	w.Canvas().Focus(first)
	seen.Press(first, fyne.KeyHome)
	wants(t, p, "What it should sell for", "your own guess")
	seen.Press(first, fyne.KeyDown, fyne.KeyDown, fyne.KeyDown)
	wants(t, p, "The work that is known", "Hang a door")
	test.TapAt(first.(fyne.Tappable), fyne.NewPos(40, 4))
	wants(t, p, "your own guess")
}

func TestALineTellsItsCaution(t *testing.T) {
	p, w := shown(t, valued(t))
	first := p.First()
	seen.Press(first, fyne.KeyHome, fyne.KeyDown, fyne.KeyDown, fyne.KeyDown)
	w.Canvas().Focus(first)
	w.Canvas().FocusNext()
	seen.Press(w.Canvas().Focused(), fyne.KeyDown)
	wants(t, p, "At 09 left side. The maker decides.")
	seen.Press(first, fyne.KeyUp)
	if seen.Says(p.Object(), "The maker decides.") {
		t.Error("the note stays when another bar is opened")
	}
}

// atOdds returns the page at the section of the odds, with its chart.
func atOdds(t *testing.T) (*asker, *plot.Chances, fyne.Window) {
	t.Helper()
	p, w, a := asking(t, valued(t))
	p.Go(1)
	chart := p.First().(*plot.Chances)
	w.Canvas().Focus(chart)
	return a, chart, w
}

func TestTheBidWalksByTheSalesOwnSteps(t *testing.T) {
	a, chart, _ := atOdds(t)
	walk := *a.State.Open.Valued.Answer.WalkAway
	wants(t, a.page, "Every house rule holds at this bid.", "bid "+view.NewPurse("USD").Show(walk))
	seen.Press(chart, fyne.KeyRight)
	wants(t, a.page, "This bid breaks 1 house rule.", "fails", "walk-away bid")
	seen.Press(chart, fyne.KeyHome, fyne.KeyLeft, fyne.KeyRight, fyne.KeyEnd)
	if want := []money.Amount{walk + 10000, 2500, 5000, 0}; !slices.Equal(a.asked, want) {
		t.Errorf("asked for %v, want %v", a.asked, want)
	}
	seen.Press(chart, fyne.KeyPageDown)
	if got := a.asked[len(a.asked)-1]; got != walk-100000 {
		t.Errorf("ten steps down from %d is %d", walk, got)
	}
}

func TestATapGoesToALegalBid(t *testing.T) {
	a, chart, _ := atOdds(t)
	for _, x := range []float32{chart.Size().Width / 2, chart.Size().Width * 3 / 4, chart.Size().Width, 0} {
		test.TapAt(chart, fyne.NewPos(x, 60))
	}
	if len(a.asked) != 4 || a.asked[3] >= a.asked[0] {
		t.Fatalf("asked for %v", a.asked)
	}
	steps := a.State.Open.Case.Buying.BidSteps
	for i, bid := range a.asked {
		if !invoice.Legal(steps, bid) || i > 0 && i < 3 && bid <= a.asked[i-1] {
			t.Errorf("tapped to %v", a.asked)
		}
	}
}

func TestABidIsTypedAsPeopleType(t *testing.T) {
	a, _, w := atOdds(t)
	field := seen.All[*widgets.NumberEntry](a.page.Object())[0]
	w.Canvas().Focus(field.Focus())
	test.Type(field.Focus(), "1.45k")
	if a.State.Open.Asked != 145000 {
		t.Errorf("1.45k is read as %d", a.State.Open.Asked)
	}
	wants(t, a.page, "Not a bid of this sale: it takes 1,400 or 1,500.")
}

func TestTheDriversSayWhatTheyMean(t *testing.T) {
	p, _ := shown(t, valued(t))
	p.Go(len(p.sections) - 1)
	wants(t, p, "Resale price", "100 %", "More comparables like yours narrow it.")
}

func TestOldFiguresAreMarked(t *testing.T) {
	s := valued(t)
	s.Open.Fresh = false
	p, _ := shown(t, s)
	wants(t, p, "Before your last change.")
}

func TestAnUnfinishedLotSaysWhatIsMissing(t *testing.T) {
	p, _ := shown(t, desk.State{Open: &desk.Open{Faults: []valuation.Fault{{Key: "resale"}}}})
	wants(t, p, "There is nothing to explain before the lot can be valued.", "Resale: import comparables")
	if seen.Says(p.Object(), "No figures yet.") {
		t.Error("an empty chart is shown")
	}
}
