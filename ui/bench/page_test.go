package bench

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"walkline/cmd/wire/trial"
	"walkline/ui/desk"
	"walkline/ui/task"
	"walkline/ui/theme"
	"walkline/ui/widgets"
	"walkline/ui/widgets/seen"
	"walkline/valuation"
	"walkline/valuation/checks"
	"walkline/valuation/invoice"
	"walkline/valuation/money"
)

// shop is the page in a window, and its user.
type shop struct {
	*trial.User
	t      *testing.T
	page   *Page
	window fyne.Window
}

// starter is a case with one rule and one fee; every figure is made up.
func starter() valuation.Case {
	c := valuation.Defaults()
	c.Currency = "USD"
	least := money.Amount(100000)
	c.Rules.MinProfit = &least
	c.Buying.BidSteps = []invoice.Step{{Step: 2500}}
	c.Buying.Fixed = []invoice.Fixed{{Name: "Gate", Amount: 7500}}
	return c
}

// at returns the page over the starter's shop, in a section.
func at(t *testing.T, section string, packs ...checks.Pack) *shop {
	t.Helper()
	s := &shop{t: t, User: trial.New(t)}
	s.Desk.Know, s.Desk.Starter = catalogues(), starter()
	s.Desk.Know.Packs = packs
	s.State = s.Desk.Load(t.Context())
	s.window = seen.Open(t, fyne.NewSize(1280, 680), widget.NewLabel("")) // the look first, then what it dresses
	s.page = New(s.Do)
	s.Show = s.page.Render
	s.window.SetContent(widgets.NewLayer(s.page.Object(), task.Inline{}))
	s.Do(desk.Go(desk.Bench))
	s.page.Go(slices.Index(s.page.Sections(), section))
	return s
}

func (s *shop) wants(words ...string) {
	s.t.Helper()
	all := strings.Join(seen.Texts(s.page.Object()), " ")
	for _, w := range words {
		if !strings.Contains(all, w) {
			s.t.Errorf("%q is missing from %q", w, all)
		}
	}
}

// retype puts words in the place of what a field says.
func (s *shop) retype(field fyne.Focusable, words string) {
	s.window.Canvas().Focus(field)
	field.(fyne.Shortcutable).TypedShortcut(&fyne.ShortcutSelectAll{})
	test.Type(field, words)
}

func (s *shop) tap(words string) {
	s.t.Helper()
	for _, b := range seen.All[*widgets.Button](s.page.Object()) {
		if b.Text == words {
			test.Tap(b)
			return
		}
	}
	s.t.Fatalf("no button %q among %q", words, seen.Texts(s.page.Object()))
}

func TestARuleBecomesYoursAndGoesBack(t *testing.T) {
	s := at(t, "House rules")
	s.wants("Starter values, from memory")
	s.retype(s.page.First(), "2,500")
	if got := s.State.Shop.Rules.MinProfit; got == nil || *got != 250000 {
		t.Fatalf("the least profit is %v", got)
	}
	s.wants("Yours.")
	s.tap("Put the starter values back")
	if got := s.State.Shop.Rules.MinProfit; *got != 100000 || slices.Contains(seen.Texts(s.page.Object()), "Yours.") {
		t.Errorf("put back, the least profit is %v", *got)
	}
	s.retype(s.page.First(), " ")
	if s.State.Shop.Rules.MinProfit != nil {
		t.Errorf("an empty field leaves %v", *s.State.Shop.Rules.MinProfit)
	}
	s.wants("turn on at least one house rule")
}

func TestShowingThePageEditsNothing(t *testing.T) {
	s := at(t, "House rules")
	for i := range s.page.Sections() {
		s.page.Go(i)
		s.page.Render(s.State)
	}
	if len(s.Steps) > 0 {
		t.Errorf("showing the page made the edits %q", s.Steps)
	}
}

func TestAYardHasTermsOfItsOwn(t *testing.T) {
	s := at(t, "Sales and yards")
	s.tap("Add a yard")
	if y := s.State.Shop.Yards; len(y) != 1 || y[0].Sale != "New yard" || len(y[0].Buying.Fixed) != 1 {
		t.Fatalf("yards %+v", y)
	}
	name, gate := s.named("New yard"), s.named("Gate")
	s.retype(name, "Harrow Flats yard")
	s.retype(gate, "Entry")
	shop := s.State.Shop
	if shop.Yards[0].Sale != "Harrow Flats yard" || shop.Yards[0].Buying.Fixed[0].Name != "Entry" || shop.Buying.Fixed[0].Name != "Gate" {
		t.Errorf("%+v, any other sale %+v", shop.Yards[0], shop.Buying.Fixed)
	}
	choose := seen.All[*widgets.Select](s.page.Object())[0]
	choose.SetSelectedIndex(0)
	s.named("Gate")
	choose.SetSelectedIndex(1)
	s.named("Entry")
	s.wants("Harrow Flats yard")
	s.tap("Remove this yard")
	if len(s.State.Shop.Yards) != 0 {
		t.Errorf("removed, %+v", s.State.Shop.Yards)
	}
	s.named("Gate")
}

// named returns the field for words that says so.
func (s *shop) named(words string) *widgets.TextEntry {
	s.t.Helper()
	for _, e := range seen.All[*widgets.TextEntry](s.page.Object()) {
		if e.Text == words {
			return e
		}
	}
	s.t.Fatalf("no field says %q", words)
	return nil
}

func TestTheCurrencyIsTypedAndTaken(t *testing.T) {
	s := at(t, "Currency and units")
	s.window.Canvas().Focus(s.page.First())
	test.Type(s.page.First(), "eur")
	seen.Press(s.page.First(), fyne.KeyReturn)
	if s.State.Shop.Currency != "EUR" {
		t.Errorf("the currency is %s", s.State.Shop.Currency)
	}
	s.wants("EUR")
	seen.All[*widgets.Select](s.page.Object())[0].SetSelected("km")
	if s.State.Shop.OdometerUnit != "km" {
		t.Errorf("odometers in %s", s.State.Shop.OdometerUnit)
	}
}

func TestWhoRebuildsIsKept(t *testing.T) {
	s := at(t, "Who rebuilds")
	s.window.Canvas().Focus(s.page.First())
	test.Type(s.page.First(), "Harrow Flats Works")
	if got := s.State.Shop.Builder.Name; got != "Harrow Flats Works" {
		t.Errorf("the builder is %q", got)
	}
}

// At text 1.5 no section asks for more height than a screen of 720 points leaves the page: the window would outgrow it.
func TestNoSectionOutgrowsTheScreen(t *testing.T) {
	s := at(t, "Comparables")
	fyne.CurrentApp().Settings().SetTheme(theme.New(theme.Options{Scale: 1.5}))
	for i, name := range s.page.Sections() {
		s.page.Go(i)
		s.window.Resize(fyne.NewSize(1280, 681))
		s.window.Resize(fyne.NewSize(1280, 680))
		if asks := s.page.Object().MinSize(); asks.Height > 560 || asks.Width > 1280 {
			t.Errorf("%s asks for %v", name, asks)
		}
	}
}
