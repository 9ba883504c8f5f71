package builds

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/ui/widgets"
	"walkline/ui/widgets/seen"
	"walkline/ui/widgets/table"
	"walkline/valuation"
	"walkline/valuation/build"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/repair"
)

// shop keeps one state and does to it what the page asks for.
type shop struct {
	page   *Page
	state  desk.State
	labels []string
	asked  []string
}

func (s *shop) OpenBuild(id int64) {
	for _, b := range s.state.Bought {
		if b.ID == id {
			s.show(&desk.OpenBuild{Bought: b, Plan: s.plan(), Risks: []valuation.RiskFigure{{ID: "mount", Name: "Mount torn", Chance: 0.25}}})
		}
	}
}

func (s *shop) plan() []valuation.PlannedLine {
	return []valuation.PlannedLine{{Line: repair.Line{ID: "r1", Job: "Replace bumper cover", Parts: []repair.Part{{Name: "bumper cover"}, {Name: "clips"}}}},
		{Line: repair.Line{ID: "r2", Job: "Pull the rail"}}}
}

func (s *shop) show(o *desk.OpenBuild) {
	s.state.Build = o
	s.page.Render(s.state)
}

func (s *shop) CloseBuild() { s.show(nil) }

func (s *shop) EditBuild(label string, change func(*build.Build)) {
	o := *s.state.Build
	o.Build = o.Build.Clone()
	change(&o.Build)
	if len(o.Build.Check()) > 0 {
		return
	}
	s.labels = append(s.labels, label)
	s.show(&o)
}

func (s *shop) SetHammer(hammer *money.Amount) {
	s.EditBuild("hammer price", func(b *build.Build) { b.Hammer = hammer })
}

func (s *shop) ImportPast()   { s.asked = append(s.asked, "import") }
func (s *shop) PrintRebuilt() { s.asked = append(s.asked, "print") }
func (s *shop) PastTemplate() { s.asked = append(s.asked, "template") }
func (s *shop) ChooseFile(chosen func(name, hash string)) {
	chosen("hood.pdf", strings.Repeat("0", 64))
}

// now returns the open build.
func (s *shop) now() build.Build { return s.state.Build.Build }

func two() desk.State {
	hammer, lostAt := money.Amount(420000), money.Amount(510000)
	said := &learn.Prediction{At: 400000, Profit: learn.Figure{Mean: 1500}, Money: learn.Ledger{Fees: 40000, Repair: 150000},
		Items: []learn.Item{{Line: "r1", Job: "Replace bumper cover", Kind: learn.PartKind, Chance: 1, Mean: 180}, {Line: "r1", Kind: learn.HoursKind, Key: "body", Chance: 0.5, Mean: 4}},
		Risks: []learn.Risk{{ID: "mount", Name: "Mount torn", Chance: 0.3}}}
	return desk.State{Bought: []book.Bought{
		{ID: 1, State: lot.Won, Number: "27", ModelYear: 2018, Make: "Kettrick", Model: "Dunlin", Currency: "USD", Foretold: said,
			Build: build.Build{Outcome: build.Open, Hammer: &hammer, Dates: build.Dates{Bought: "2026-11-01"}}},
		{ID: 2, State: lot.Lost, Number: "31", ModelYear: 2020, Make: "Ostrane", Model: "Pell", Currency: "USD", Build: build.Build{Hammer: &lostAt}},
	}}
}

func shown(t *testing.T, s desk.State) *shop {
	t.Helper()
	w := &shop{state: s}
	w.page = New(w, func() lot.Date { return "2026-11-25" })
	seen.Open(t, fyne.NewSize(1280, 660), w.page.Object())
	w.page.Render(s)
	return w
}

// opened returns the first build open in a section.
func opened(t *testing.T, section string) *shop {
	t.Helper()
	s := shown(t, two())
	s.OpenBuild(1)
	s.page.Go(slices.Index(s.page.Sections(), section))
	return s
}

func (s *shop) says(t *testing.T, words ...string) {
	t.Helper()
	all := strings.Join(seen.Texts(s.page.Object()), " ")
	for _, w := range words {
		if !strings.Contains(all, w) {
			t.Errorf("%q is missing from %q", w, all)
		}
	}
}

func tap(t *testing.T, o fyne.CanvasObject, words string) {
	t.Helper()
	for _, b := range seen.All[*widget.Button](o) {
		if b.Text == words {
			test.Tap(b)
			return
		}
	}
	t.Fatalf("no button %q among %q", words, seen.Texts(o))
}

func TestWithNoWonLotThePageSaysTheFirstStep(t *testing.T) {
	s := shown(t, desk.State{})
	s.says(t, "No lot has been won yet", "from before this program")
	tap(t, s.page.Object(), "Import past buys…")
	tap(t, s.page.Object(), "Write an empty table for past buys…")
	if !slices.Equal(s.asked, []string{"import", "template"}) || s.page.First() != nil {
		t.Errorf("asked for %q", s.asked)
	}
}

func TestTheListShowsSpentAgainstForetoldAndOpensByKeyboard(t *testing.T) {
	s := shown(t, two())
	s.says(t, "1 build", "2018 Kettrick Dunlin", "to be fetched", "24", "4,200", "5,900", "1,500")
	if seen.Says(s.page.Object(), "Ostrane") {
		t.Error("a lost lot is among the builds")
	}
	test.Tap(seen.All[*widget.Check](s.page.Object())[0])
	s.says(t, "2 builds", "Ostrane", "lost at 5,100")
	seen.Press(s.page.First(), fyne.KeyDown, fyne.KeyReturn)
	if s.state.Build == nil {
		t.Fatal("Enter opened nothing")
	}
}

func TestALostLotHasItsHammerPriceOnly(t *testing.T) {
	s := shown(t, two())
	s.OpenBuild(2)
	s.says(t, "Another bidder took this lot", "who won is not kept", "Hammer price")
	for _, hidden := range []string{"Bills", "Days and selling", "Profit it leads to", "New charge"} {
		if seen.Says(s.page.Object(), hidden) {
			t.Errorf("a lost lot shows %q", hidden)
		}
	}
}

func TestABillIsTypedAndAddedByKeyboard(t *testing.T) {
	s := opened(t, "Bills")
	what := s.page.First()
	test.Type(what, "Bumper cover")
	amount := seen.All[*widgets.NumberEntry](s.page.Object())[0]
	test.Type(amount.Focus(), "1.2k")
	pick := seen.All[*widgets.Select](s.page.Object())[1]
	pick.SetSelected("Replace bumper cover")
	s.says(t, "Parts of this line: bumper cover, clips")
	seen.Press(amount.Focus(), fyne.KeyReturn)
	bills := s.now().Receipts
	if len(bills) != 1 || bills[0].Amount != 120000 || bills[0].What != "Bumper cover" || bills[0].Line != "r1" || bills[0].Date != "2026-11-25" || bills[0].Kind != "part" {
		t.Fatalf("%+v", bills)
	}
	s.says(t, "1 bill over USD 1,200 in all.", "bumper cover (bought)")
	if amount.Value().Known {
		t.Error("the next bill begins with the last one's amount")
	}
	test.Type(amount.Focus(), "1,200")
	tap(t, s.page.Object(), "Add this bill")
	if got := s.now().Receipts; len(got) != 2 || got[1].Amount != 120000 || got[1].Line != "r1" {
		t.Fatalf("%+v", got)
	}
}

func TestABillIsChangedAndRemoved(t *testing.T) {
	s := opened(t, "Bills")
	s.EditBuild("x", func(b *build.Build) {
		b.Receipts = []build.Receipt{{Kind: "part", What: "Hood", Amount: 100, Date: "2026-11-02"}, {Kind: "freight", What: "Trailer", Amount: 21000}}
	})
	list := seen.All[*table.Table](s.page.Object())[0]
	seen.Press(list, fyne.KeyDown, fyne.KeyReturn)
	s.says(t, "Bill that is selected")
	tap(t, s.page.Object(), "Choose…")
	if r := s.now().Receipts[0]; r.File != "hood.pdf" || len(r.Hash) != 64 || s.labels[len(s.labels)-1] != "bill: file" {
		t.Errorf("%+v %q", r, s.labels)
	}
	tap(t, s.page.Object(), "Remove this bill")
	if got := s.now().Receipts; len(got) != 1 || got[0].What != "Trailer" {
		t.Errorf("%+v", got)
	}
	s.says(t, "New bill", "Trailer, freight")
}

func TestHoursAndHiddenDamageAreEntered(t *testing.T) {
	s := opened(t, "Hours")
	test.Type(s.page.First(), "2.5")
	tap(t, s.page.Object(), "Add this entry")
	if h := s.now().Hours; len(h) != 1 || h[0].Hours != 2.5 || h[0].Trade != "body" {
		t.Fatalf("%+v", h)
	}
	s.says(t, "2.5 hours in all")
	s.page.Go(slices.Index(s.page.Sections(), "Hidden damage"))
	s.says(t, "Mount torn", "foretold with a chance of 30 %")
	answer := seen.All[*widget.RadioGroup](s.page.Object())[0]
	for _, c := range []struct{ answer, state string }{{"found", build.Found}, {"not there", build.NotThere}, {"not known", ""}} {
		answer.SetSelected(c.answer)
		if got := s.now().Saw("mount"); got != c.state {
			t.Errorf("%s: %q", c.answer, got)
		}
	}
}

func TestProgressShowsForetoldAgainstSpentAndTicksLines(t *testing.T) {
	s := opened(t, "Progress")
	s.EditBuild("x", func(b *build.Build) {
		b.Receipts = []build.Receipt{{Kind: "part", Line: "r1", Amount: 21050}}
		b.Hours = []build.Work{{Trade: "body", Line: "r1", Hours: 3}}
	})
	s.says(t, "Replace bumper cover", "180", "210.50", "2.0", "3.0", "Body")
	list := seen.All[*table.Table](s.page.Object())[0]
	seen.Press(list, fyne.KeyDown, fyne.KeySpace)
	if !slices.Equal(s.now().Done, []string{"r1"}) || s.labels[len(s.labels)-1] != "work finished" {
		t.Errorf("%+v %q", s.now().Done, s.labels)
	}
	seen.Press(list, fyne.KeyEnd, fyne.KeySpace)
	if len(s.now().Done) != 1 {
		t.Errorf("the sum was ticked: %q", s.now().Done)
	}
}

func TestTheSideSaysWhereItLeadsAndLeavesSunkCostOut(t *testing.T) {
	s := opened(t, "Progress")
	s.says(t, "Profit it leads to", "—")
	o := *s.state.Build
	o.Fresh, o.Forecast = true, &valuation.Foresight{Currency: "USD", Whole: &valuation.Spread{Mean: -300, P10: -1200, P90: 900}, Loss: 0.6,
		Ways:   []valuation.Way{{Name: valuation.Finish, Known: true, Spread: valuation.Spread{Mean: 5000, P10: 4000, P90: 6000}}, {Name: valuation.PartOut}},
		Doubts: []string{"A doubt."}, Best: -1}
	s.show(&o)
	s.says(t, "Profit it leads to: a loss", "USD -300", "60 %", "Foretold at the bid", "left out", "Finish and sell", "4,000 to 6,000", "not judged", "Note: A doubt.")
}

func TestTheFileForTheInspectionIsAskedFor(t *testing.T) {
	s := opened(t, "Progress")
	tap(t, s.page.Object(), "File for the rebuilt inspection…")
	if !slices.Equal(s.asked, []string{"print"}) {
		t.Errorf("asked for %q", s.asked)
	}
}

func TestDaysAndSaleAreEnteredAndTheProfitShows(t *testing.T) {
	s := opened(t, "Days and selling")
	test.Type(s.page.First(), "") // the first day has the keyboard
	s.EditBuild("x", func(b *build.Build) { b.Dates.Sold = "2026-11-20" })
	seen.All[*widgets.Select](s.page.Object())[0].SetSelected("sold")
	price := seen.All[*widgets.NumberEntry](s.page.Object())[1]
	test.Type(price.Focus(), "9,000")
	b := s.now()
	if b.Outcome != build.Sold || b.Sale.Price == nil || *b.Sale.Price != 900000 {
		t.Fatalf("%+v", b)
	}
	s.says(t, "Profit it came to", "USD 4,800")
	judged := seen.All[*widgets.ThreeEntry](s.page.Object())
	if len(judged) != 3 {
		t.Fatalf("%d judgements", len(judged))
	}
	if got := s.now().Otherwise.AsIs; got != nil {
		t.Errorf("a judgement that nobody made: %v", *got)
	}
}

func TestPicturesOfABuild(t *testing.T) {
	for i, section := range []string{"progress", "bills", "hours", "hidden", "invoice", "sale"} {
		seen.Picture(t, "builds-"+section, fyne.NewSize(1280, 660), func() fyne.CanvasObject {
			s := &shop{state: two()}
			s.page = New(s, func() lot.Date { return "2026-11-25" })
			s.page.Render(s.state)
			s.OpenBuild(1)
			s.page.Go(i)
			return s.page.Object()
		})
	}
}
