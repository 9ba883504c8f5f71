package board

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/ui/widgets/seen"
	"walkline/valuation/money"
)

// asked notes what the page asks for.
type asked struct {
	did    []string
	opened int64
}

func (a *asked) NewLot()       { a.did = append(a.did, "new") }
func (a *asked) ImportList()   { a.did = append(a.did, "list") }
func (a *asked) LoadDemo()     { a.did = append(a.did, "demo") }
func (a *asked) Open(id int64) { a.opened = id }

// two lots: one that may be bid on, one that may not.
func two() desk.State {
	bid := money.Amount(360000)
	return desk.State{Entries: []book.Entry{
		{ID: 7, Number: "14", SaleDate: "2026-11-28", ModelYear: 2019, Make: "Ostrane", Model: "Pell", Currency: "USD", State: "to look at",
			Answer: &book.Summary{Decision: "bid", WalkAway: &bid, Binding: "max_loss_chance", LossChance: 0.09, MeanProfit: 2717}},
		{ID: 9, Number: "33", SaleDate: "2026-11-28", ModelYear: 2021, Make: "Morrowby", Model: "Siskin", Currency: "USD", State: "passed",
			Answer: &book.Summary{Decision: "do_not_bid", Binding: "min_profit"}},
	}}
}

func shown(t *testing.T, s desk.State) (*Page, *asked) {
	a := &asked{}
	p := New(a)
	seen.Open(t, fyne.NewSize(1280, 680), p.Object())
	p.Render(s)
	return p, a
}

func button(t *testing.T, o fyne.CanvasObject, words string) *widget.Button {
	t.Helper()
	for _, b := range seen.All[*widget.Button](o) {
		if strings.Contains(b.Text, words) {
			return b
		}
	}
	t.Fatalf("no button %q among %q", words, seen.Texts(o))
	return nil
}

func TestAnEmptyBoardSaysTheFirstSteps(t *testing.T) {
	p, a := shown(t, desk.State{})
	if !seen.Says(p.Object(), "What is the most you may bid?") || seen.Says(p.Object(), "show archived") {
		t.Errorf("an empty board shows %q", seen.Texts(p.Object()))
	}
	test.Tap(button(t, p.Object(), "Enter my first lot"))
	test.Tap(button(t, p.Object(), "run list"))
	test.Tap(button(t, p.Object(), "demo sale"))
	if !slices.Equal(a.did, []string{"new", "list", "demo"}) {
		t.Errorf("the page asked for %q", a.did)
	}
}

func TestTheListTakesThePlaceOfTheFirstSteps(t *testing.T) {
	p, _ := shown(t, two())
	for _, words := range []string{"2 lots", "USD 3,600", "2019 Ostrane Pell", "do not bid"} {
		if !seen.Says(p.Object(), words) {
			t.Errorf("%q is missing from %q", words, seen.Texts(p.Object()))
		}
	}
	if seen.Says(p.Object(), "Enter my first lot") {
		t.Error("the first steps stay over the list")
	}
}

func TestEnterOpensTheSelectedLot(t *testing.T) {
	p, a := shown(t, two())
	seen.Press(p.First(), fyne.KeyReturn)
	if a.opened != 0 {
		t.Errorf("Enter opened lot %d with none selected", a.opened)
	}
	seen.Press(p.First(), fyne.KeyDown, fyne.KeyDown, fyne.KeyReturn)
	if id, ok := p.Selected(); a.opened != 9 || id != 9 || !ok {
		t.Errorf("opened %d, selected %d", a.opened, id)
	}
}

func TestSearchLeavesWhatFits(t *testing.T) {
	p, a := shown(t, two())
	test.Type(p.Search(), "siskin 33")
	if !seen.Says(p.Object(), "1 lot") || seen.Says(p.Object(), "Ostrane") {
		t.Errorf("the search shows %q", seen.Texts(p.Object()))
	}
	seen.Press(p.Search(), fyne.KeyReturn)
	seen.Press(p.First(), fyne.KeyReturn)
	if a.opened != 9 {
		t.Errorf("the one lot left opens as %d", a.opened)
	}
	test.Type(p.Search(), " nothing")
	if _, ok := p.Selected(); ok || !seen.Says(p.Object(), "No lot fits the search.") {
		t.Errorf("no lot fits, yet %q", seen.Texts(p.Object()))
	}
}

func TestArchivedLotsShowOnDemand(t *testing.T) {
	s := two()
	s.Entries[0].Archived = true
	p, _ := shown(t, s)
	if seen.Says(p.Object(), "Ostrane") {
		t.Error("an archived lot is listed")
	}
	test.Tap(seen.All[*widget.Check](p.Object())[0])
	if !seen.Says(p.Object(), "Ostrane") || !seen.Says(p.Object(), "archived") {
		t.Errorf("archived lots stay hidden: %q", seen.Texts(p.Object()))
	}
}

func TestColumnsSort(t *testing.T) {
	lots := two()
	more := *lots.Entries[0].Answer.WalkAway + 100
	lots.Entries = append(lots.Entries, book.Entry{ID: 11, Number: "40", Currency: "USD", Answer: &book.Summary{Decision: "bid", WalkAway: &more}})
	p, a := shown(t, lots)
	for range 3 { // to the column of the walk-away bid
		seen.Press(p.First(), fyne.KeyRight)
	}
	for way, want := range []int64{7, 11} { // rising, then falling
		p.First().TypedRune('s')
		seen.Press(p.First(), fyne.KeyHome, fyne.KeyReturn)
		if a.opened != want {
			t.Errorf("way %d: the first lot is %d, want %d", way, a.opened, want)
		}
		seen.Press(p.First(), fyne.KeyEnd, fyne.KeyReturn)
		if a.opened != 9 {
			t.Errorf("way %d: the lot without a bid is not last, but %d", way, a.opened)
		}
	}
}

func TestTheSelectionStaysOnItsLot(t *testing.T) {
	lots := two()
	p, _ := shown(t, lots)
	seen.Press(p.First(), fyne.KeyEnd)
	p.First().TypedRune('s') // falling by sale day and number: the selected lot comes first
	if id, _ := p.Selected(); id != 9 {
		t.Errorf("after sorting, lot %d is selected", id)
	}
	lots.Entries = lots.Entries[:1]
	p.Render(lots)
	if id, ok := p.Selected(); !ok || id != 7 {
		t.Errorf("with its lot gone, the selection is on %d, %v", id, ok)
	}
	test.Type(p.Search(), "nothing like it")
	if id, ok := p.Selected(); ok {
		t.Errorf("hidden, lot %d is selected", id)
	}
}

func TestTheDemoButtonFitsLargeText(t *testing.T) {
	seen.Picture(t, "board-first", fyne.NewSize(1280, 680), func() fyne.CanvasObject {
		p := New(&asked{})
		p.Render(desk.State{})
		steps := p.first.Objects[0]
		if b := button(t, p.Object(), "demo sale"); b.MinSize().Width > steps.MinSize().Width {
			t.Errorf("the button wants %v, the first steps have %v", b.MinSize().Width, steps.MinSize().Width)
		}
		return p.Object()
	})
}
