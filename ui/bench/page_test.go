package bench

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/desk"
	"walkline/ui/task"
	"walkline/ui/widgets"
	"walkline/ui/widgets/seen"
	"walkline/valuation"
	"walkline/valuation/invoice"
	"walkline/valuation/money"
)

// shop answers the page's wishes as the window does: the shop changes, then it is shown.
type shop struct {
	t      *testing.T
	page   *Page
	window fyne.Window
	state  desk.State
	labels []string
}

func (s *shop) EditShop(label string, change func(*desk.Shop)) {
	s.labels = append(s.labels, label)
	s.state.Shop = valuation.Copy(s.state.Shop)
	change(&s.state.Shop)
	s.page.Render(s.state)
}

func (s *shop) EditOwn(label string, change func(*valuation.Own)) {
	s.labels = append(s.labels, label)
	s.state.Own = valuation.Copy(s.state.Own)
	change(&s.state.Own)
	know := s.state.Starter.With(s.state.Own)
	s.state.Know, s.state.OwnFaults = &know, nil
	for _, f := range s.state.Starter.CheckOwn(s.state.Own) {
		s.state.OwnFaults = append(s.state.OwnFaults, f.Fault)
	}
	s.page.Render(s.state)
}

func (s *shop) AddPack()             { s.labels = append(s.labels, "add a jurisdiction") }
func (s *shop) RemovePack(id string) { s.labels = append(s.labels, "remove "+id) }
func (s *shop) Backup()              { s.labels = append(s.labels, "backup") }
func (s *shop) RestoreBackup()       { s.labels = append(s.labels, "restore") }
func (s *shop) Unstage()             { s.labels = append(s.labels, "unstage") }

func (s *shop) SetCurrency(code string) {
	s.EditShop("currency", func(shop *desk.Shop) { shop.Currency = code })
}

// starter is a shop with one rule and one fee; every figure is made up.
func starter() desk.Shop {
	c := valuation.Defaults()
	c.Currency = "USD"
	least := money.Amount(100000)
	c.Rules.MinProfit = &least
	c.Buying.BidSteps = []invoice.Step{{Step: 2500}}
	c.Buying.Fixed = []invoice.Fixed{{Name: "Gate", Amount: 7500}}
	return desk.ShopOf(c)
}

// at returns the page over the starter's shop, in a section.
func at(t *testing.T, section string) *shop {
	t.Helper()
	know := catalogues()
	s := &shop{t: t, state: desk.State{Place: desk.Bench, Shop: starter(), StarterShop: starter(), Starter: &know, Know: &know,
		Own: valuation.Own{Format: valuation.OwnFormat, Currency: "USD"}}}
	s.window = seen.Open(t, fyne.NewSize(1280, 680), widget.NewLabel("")) // the look first, then what it dresses
	s.page = New(s)
	s.window.SetContent(widgets.NewLayer(s.page.Object(), task.Inline{}))
	s.page.Render(s.state)
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
	for _, b := range seen.All[*widget.Button](s.page.Object()) {
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
	if got := s.state.Shop.Rules.MinProfit; got == nil || *got != 250000 {
		t.Fatalf("the least profit is %v", got)
	}
	s.wants("Yours.")
	s.tap("Put the starter values back")
	if got := s.state.Shop.Rules.MinProfit; *got != 100000 || slices.Contains(seen.Texts(s.page.Object()), "Yours.") {
		t.Errorf("put back, the least profit is %v", *got)
	}
	s.retype(s.page.First(), " ")
	if s.state.Shop.Rules.MinProfit != nil {
		t.Errorf("an empty field leaves %v", *s.state.Shop.Rules.MinProfit)
	}
	s.wants("turn on at least one house rule")
}

func TestShowingThePageEditsNothing(t *testing.T) {
	s := at(t, "House rules")
	for i := range s.page.Sections() {
		s.page.Go(i)
		s.page.Render(s.state)
	}
	if len(s.labels) > 0 {
		t.Errorf("showing the page made the edits %q", s.labels)
	}
}

func TestAYardHasTermsOfItsOwn(t *testing.T) {
	s := at(t, "Sales and yards")
	s.tap("Add a yard")
	if y := s.state.Shop.Yards; len(y) != 1 || y[0].Sale != "New yard" || len(y[0].Buying.Fixed) != 1 {
		t.Fatalf("yards %+v", y)
	}
	name, gate := s.named("New yard"), s.named("Gate")
	s.retype(name, "Harrow Flats yard")
	s.retype(gate, "Entry")
	shop := s.state.Shop
	if shop.Yards[0].Sale != "Harrow Flats yard" || shop.Yards[0].Buying.Fixed[0].Name != "Entry" || shop.Buying.Fixed[0].Name != "Gate" {
		t.Errorf("%+v, any other sale %+v", shop.Yards[0], shop.Buying.Fixed)
	}
	choose := seen.All[*widget.Select](s.page.Object())[0]
	choose.SetSelectedIndex(0)
	s.named("Gate")
	choose.SetSelectedIndex(1)
	s.named("Entry")
	s.wants("Harrow Flats yard")
	s.tap("Remove this yard")
	if len(s.state.Shop.Yards) != 0 {
		t.Errorf("removed, %+v", s.state.Shop.Yards)
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
	if s.state.Shop.Currency != "EUR" {
		t.Errorf("the currency is %s", s.state.Shop.Currency)
	}
	s.wants("EUR")
	seen.All[*widget.Select](s.page.Object())[0].SetSelected("km")
	if s.state.Shop.OdometerUnit != "km" {
		t.Errorf("odometers in %s", s.state.Shop.OdometerUnit)
	}
}

func TestWhoRebuildsIsKept(t *testing.T) {
	s := at(t, "Who rebuilds")
	s.window.Canvas().Focus(s.page.First())
	test.Type(s.page.First(), "Harrow Flats Works")
	if got := s.state.Shop.Builder.Name; got != "Harrow Flats Works" {
		t.Errorf("the builder is %q", got)
	}
}
