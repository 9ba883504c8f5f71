package board

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"walkline/cmd/wire/trial"
	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/ui/widgets"
	"walkline/ui/widgets/seen"
	"walkline/valuation"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// two lots: one that may be bid on, one that may not.
func two() desk.State {
	bid := money.Amount(360000)
	return desk.State{Entries: []book.Entry{
		{ID: 1, Number: "14", SaleDate: "2026-11-28", ModelYear: 2019, Make: "Ostrane", Model: "Pell", Currency: "USD", State: "to look at",
			Answer: &book.Summary{Decision: "bid", WalkAway: &bid, Binding: "max_loss_chance", LossChance: 0.09, MeanProfit: 2717}},
		{ID: 2, Number: "33", SaleDate: "2026-11-28", ModelYear: 2021, Make: "Morrowby", Model: "Siskin", Currency: "USD", State: "passed",
			Answer: &book.Summary{Decision: "do_not_bid", Binding: "min_profit"}},
	}}
}

// shown returns the page over a state, and who uses it; the store has a lot for each entry.
func shown(t *testing.T, s desk.State) (*Page, *trial.User) {
	u := trial.New(t)
	trial.Add(t, u.Store, make([]book.New, len(s.Entries))...)
	p := New(u.Do)
	seen.Open(t, fyne.NewSize(1280, 680), p.Object())
	p.Render(s)
	return p, u
}

// opened returns the id of the lot that was opened; 0: none.
func opened(u *trial.User) int64 {
	if u.State.Open == nil {
		return 0
	}
	return u.State.Open.ID
}

func button(t *testing.T, o fyne.CanvasObject, words string) *widgets.Button {
	t.Helper()
	for _, b := range seen.All[*widgets.Button](o) {
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
	if !slices.Equal(a.Wished, []string{"new lot", "run list", "demo sale"}) {
		t.Errorf("the page asked for %q", a.Wished)
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
	if opened(a) != 0 {
		t.Errorf("Enter opened lot %d with none selected", opened(a))
	}
	seen.Press(p.First(), fyne.KeyDown, fyne.KeyDown, fyne.KeyReturn)
	if id, ok := p.Selected(); opened(a) != 2 || id != 2 || !ok {
		t.Errorf("opened %d, selected %d", opened(a), id)
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
	if opened(a) != 2 {
		t.Errorf("the one lot left opens as %d", opened(a))
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
	lots.Entries = append(lots.Entries, book.Entry{ID: 3, Number: "40", Currency: "USD",
		Answer: &book.Summary{Decision: "bid", WalkAway: &more}})
	p, a := shown(t, lots)
	for range 3 { // to the column of the walk-away bid
		seen.Press(p.First(), fyne.KeyRight)
	}
	for way, want := range []int64{1, 3} { // rising, then falling
		p.First().TypedRune('s')
		seen.Press(p.First(), fyne.KeyHome, fyne.KeyReturn)
		if opened(a) != want {
			t.Errorf("way %d: the first lot is %d, want %d", way, opened(a), want)
		}
		seen.Press(p.First(), fyne.KeyEnd, fyne.KeyReturn)
		if opened(a) != 2 {
			t.Errorf("way %d: the lot without a bid is not last, but %d", way, opened(a))
		}
	}
}

func TestTheSelectionStaysOnItsLot(t *testing.T) {
	lots := two()
	p, _ := shown(t, lots)
	seen.Press(p.First(), fyne.KeyEnd)
	p.First().TypedRune('s') // falling by sale day and number: the selected lot comes first
	if id, _ := p.Selected(); id != 2 {
		t.Errorf("after sorting, lot %d is selected", id)
	}
	lots.Entries = lots.Entries[:1]
	p.Render(lots)
	if id, ok := p.Selected(); !ok || id != 1 {
		t.Errorf("with its lot gone, the selection is on %d, %v", id, ok)
	}
	test.Type(p.Search(), "nothing like it")
	if id, ok := p.Selected(); ok {
		t.Errorf("hidden, lot %d is selected", id)
	}
}

func TestTheDemoButtonFitsLargeText(t *testing.T) {
	seen.Picture(t, "board-first", fyne.NewSize(1280, 680), func() fyne.CanvasObject {
		p := New(func(desk.Action) {})
		p.Render(desk.State{})
		steps := p.first.Objects[0]
		if b := button(t, p.Object(), "demo sale"); b.MinSize().Width > steps.MinSize().Width {
			t.Errorf("the button wants %v, the first steps have %v", b.MinSize().Width, steps.MinSize().Width)
		}
		return p.Object()
	})
}

// What the run list says of the selected lot stands under the table and is found by a search.
func TestTheBoardSaysWhatTheListSays(t *testing.T) {
	s, estimate := two(), 4200.0
	s.Entries[1].Listed = &lot.Listed{Areas: []string{"11"}, RepairEstimate: &estimate, Note: "keys in office"}
	p, _ := shown(t, s)
	const says = "The list says: damage at 11 front left · repair estimate USD 4,200 · keys in office"
	if seen.Press(p.First(), fyne.KeyDown); seen.Says(p.Object(), "The list says") {
		t.Error("a lot of no list is said to be listed")
	}
	if seen.Press(p.First(), fyne.KeyDown); !seen.Says(p.Object(), says) {
		t.Errorf("%q", seen.Texts(p.Object()))
	}
	if test.Type(p.Search(), "office"); !seen.Says(p.Object(), "1 lot") || !seen.Says(p.Object(), "Siskin") {
		t.Errorf("the search shows %q", seen.Texts(p.Object()))
	}
}

// At the usual size of the window what sets a bid and how a lot stands are read whole.
func TestWhatSetsABidAndItsStateAreNotCut(t *testing.T) {
	binds := valuation.Stopped
	entry := book.Entry{ID: 1, Number: "14", State: lot.ToLookAt, Answer: &book.Summary{Binding: binds}}
	p := New(func(desk.Action) {})
	seen.Open(t, fyne.NewSize(1280, 640), p.Object())
	p.Render(desk.State{Entries: []book.Entry{entry}})
	for _, words := range []string{valuation.RuleWords[binds], string(lot.ToLookAt)} {
		if !slices.Contains(seen.Texts(p.Object()), words) {
			t.Errorf("%q is cut: %q", words, seen.Texts(p.Object()))
		}
	}
}
