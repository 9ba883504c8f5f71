package builds

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
	"walkline/ui/widgets/table"
	"walkline/valuation"
	"walkline/valuation/build"
	lurking "walkline/valuation/hidden"
	"walkline/valuation/invoice"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
)

// shop is the page and its user.
type shop struct {
	*trial.User
	page *Page
}

func (s *shop) open(id int64) { s.Do(desk.ShowBuild(id)) }

func (s *shop) edit(label string, change func(*build.Build)) { s.Do(desk.EditBuild(label, change)) }

// now returns the open build.
func (s *shop) now() build.Build { return s.State.Build.Build }

// two are a lot that was won, with two jobs and a risk on its worksheet, and one that another bidder took.
func two() []book.New {
	hammer, lostAt := money.Amount(420000), money.Amount(510000)
	won, lost := valuation.Defaults(), valuation.Defaults()
	won.Currency, won.Lot.Number, won.Lot.ModelYear, won.Lot.Make, won.Lot.Model = "USD", "27", 2018, "Kettrick", "Dunlin"
	won.Repair.UseCatalogue, won.Hidden.UseCatalogue = false, false
	none := &repair.Fallback{Price: prob.Certain(100), LeadDays: prob.Certain(1)}
	won.Repair.Lines = []repair.Line{{ID: "r1", Job: "Replace bumper cover",
		Parts: []repair.Part{{Name: "bumper cover", Fallback: none}, {Name: "clips", Fallback: none}}}, {ID: "r2", Job: "Pull the rail"}}
	won.ValuedOn, won.Buying.BidSteps, won.Rules.MinProfit = "2026-11-20", []invoice.Step{{Step: 2500}}, &lostAt
	won.Resale.Guess = &prob.Three{Low: 8000, Likely: 9000, High: 10000}
	won.Hidden.Risks = []lurking.Risk{{ID: "mount", Name: "Mount torn", Chance: lurking.Beta{A: 1, B: 3}, Cost: prob.Certain(300)}}
	lost.Currency, lost.Lot.Number, lost.Lot.ModelYear, lost.Lot.Make, lost.Lot.Model = "USD", "31", 2020, "Ostrane", "Pell"
	return []book.New{{State: lot.Won, Case: won, Build: build.Build{Outcome: build.Open, Hammer: &hammer,
		Dates: build.Dates{Bought: "2026-11-01"}}},
		{State: lot.Lost, Case: lost, Build: build.Build{Hammer: &lostAt}}}
}

// said is what was foretold of the lot that was won.
var said = learn.Prediction{At: 400000, Profit: learn.Figure{Mean: 1500}, Money: learn.Ledger{Fees: 40000, Repair: 150000},
	Items: []learn.Item{{Line: "r1", Job: "Replace bumper cover", Kind: learn.PartKind, Chance: 1, Mean: 180},
		{Line: "r1", Kind: learn.HoursKind, Key: "body", Chance: 0.5, Mean: 4}},
	Risks: []learn.Risk{{ID: "mount", Name: "Mount torn", Chance: 0.3}}}

// keeping returns the page, in no window, over a store with lots; of the first a prediction is frozen.
func keeping(t *testing.T, lots ...book.New) *shop {
	t.Helper()
	s := &shop{User: trial.New(t)}
	if len(lots) > 0 {
		of := book.Lot{ID: trial.Add(t, s.Store, lots...)[0]}
		if _, err := s.Store.Do(t.Context(), book.Step{Subject: book.Buys,
			Lots: []book.Change{{Before: of, After: of, Freeze: &book.Prediction{Case: lots[0].Case, Figures: said}}}}); err != nil {
			t.Fatal(err)
		}
	}
	s.page = New(s.Do, func() lot.Date { return "2026-11-25" })
	s.Do(desk.Go(desk.Builds))
	s.Show = s.page.Render
	return s
}

func shown(t *testing.T, lots ...book.New) *shop {
	t.Helper()
	s := keeping(t, lots...)
	seen.Open(t, fyne.NewSize(1280, 660), s.page.Object())
	s.page.Render(s.State)
	return s
}

// opened returns the first build open in a section.
func opened(t *testing.T, section string) *shop {
	t.Helper()
	s := shown(t, two()...)
	s.open(1)
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
	for _, b := range seen.All[*widgets.Button](o) {
		if b.Text == words {
			test.Tap(b)
			return
		}
	}
	t.Fatalf("no button %q among %q", words, seen.Texts(o))
}

func TestWithNoWonLotThePageSaysTheFirstStep(t *testing.T) {
	s := shown(t)
	s.says(t, "No lot has been won yet", "from before this program")
	tap(t, s.page.Object(), "Import past buys…")
	tap(t, s.page.Object(), "Table to fill in…")
	if !slices.Equal(s.Wished, []string{"past buys", "template of past buys"}) || s.page.First() != nil {
		t.Errorf("asked for %q", s.Wished)
	}
}

func TestTheListShowsSpentAgainstForetoldAndOpensByKeyboard(t *testing.T) {
	s := shown(t, two()...)
	s.says(t, "1 build", "2018 Kettrick Dunlin", "to be fetched", "24", "4,200", "5,900", "1,500")
	if seen.Says(s.page.Object(), "Ostrane") {
		t.Error("a lost lot is among the builds")
	}
	test.Tap(seen.All[*widget.Check](s.page.Object())[0])
	s.says(t, "2 builds", "Ostrane", "lost at 5,100")
	seen.Press(s.page.First(), fyne.KeyDown, fyne.KeyReturn)
	if s.State.Build == nil {
		t.Fatal("Enter opened nothing")
	}
}

func TestABuildIsRemovedByKeyAndPutBack(t *testing.T) {
	s := shown(t, two()...)
	list := s.page.First().(*table.Table)
	seen.Press(list, fyne.KeyHome, fyne.KeyDelete)
	if s.says(t, "0 builds", "Undo: remove lot 27"); s.State.Reach.Undo == "" {
		t.Errorf("%q; undo %q", s.State.Trouble, s.State.Reach.Undo)
	}
	s.Do(desk.Undo())
	s.says(t, "1 build", "2018 Kettrick Dunlin")
	labels := []string{"Open", "Worksheet", "Remove"}
	for i, item := range list.Menu(0) {
		if item.Label != labels[i] {
			t.Errorf("menu has %q, not %q", item.Label, labels[i])
		}
	}
}

func TestALostLotHasItsHammerPriceOnly(t *testing.T) {
	s := shown(t, two()...)
	s.open(2)
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
	pick := seen.All[*widgets.Select](s.page.Object())[2]
	pick.SetSelected("Replace bumper cover")
	s.says(t, "Parts of this line: bumper cover, clips")
	seen.Press(amount.Focus(), fyne.KeyReturn)
	bills := s.now().Receipts
	if len(bills) != 1 || bills[0].Amount != 120000 || bills[0].What != "Bumper cover" || bills[0].Line != "r1" ||
		bills[0].Date != "2026-11-25" || bills[0].Kind != "part" {
		t.Fatalf("%+v", bills)
	}
	s.says(t, "1 bill, USD 1,200 in all.")
	if amount.Value().Known {
		t.Error("the next bill begins with the last one's amount")
	}
	test.Type(amount.Focus(), "1,200")
	tap(t, s.page.Object(), "Add this bill")
	if got := s.now().Receipts; len(got) != 2 || got[1].Amount != 120000 || got[1].Line != "" {
		t.Fatalf("%+v", got)
	}
}

func TestABillIsChangedAndRemoved(t *testing.T) {
	s := opened(t, "Bills")
	s.edit("x", func(b *build.Build) {
		b.Receipts = []build.Receipt{{Kind: "part", What: "Hood", Amount: 100, Date: "2026-11-02"},
			{Kind: "freight", What: "Trailer", Amount: 21000}}
	})
	list := seen.All[*table.Table](s.page.Object())[0]
	seen.Press(list, fyne.KeyDown, fyne.KeyReturn)
	s.says(t, "Bill that is selected")
	tap(t, s.page.Object(), "Add a file…")
	if r := s.now().Receipts[0]; r.File != "hood.pdf" || len(r.Hash) != 64 || s.Steps[len(s.Steps)-1] != "bill: file" {
		t.Errorf("%+v %q", r, s.Steps)
	}
	for _, remove := range []func(){func() { tap(t, s.page.Object(), "Remove this bill") },
		func() { seen.Press(list, fyne.KeyDelete) }, list.Menu(0)[1].Action} {
		list.OnOpen(0)
		if remove(); len(s.now().Receipts) != 1 || s.now().Receipts[0].What != "Trailer" {
			t.Errorf("%+v", s.now().Receipts)
		}
		if s.Steps[len(s.Steps)-1] != "remove bill" {
			t.Errorf("%q", s.Steps)
		}
		s.Do(desk.Undo())
	}
	seen.Press(list, fyne.KeyHome, fyne.KeyDelete)
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
	s.says(t, "Mount torn", "forecast with a chance of 30 %")
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
	s.edit("x", func(b *build.Build) {
		b.Receipts = []build.Receipt{{Kind: "part", Line: "r1", Amount: 21050}}
		b.Hours = []build.Work{{Trade: "body", Line: "r1", Hours: 3}}
	})
	s.says(t, "Replace bumper cover", "180", "210.50", "2.0", "3.0", "Body", "by the same share")
	list := seen.All[*table.Table](s.page.Object())[0]
	seen.Press(list, fyne.KeyDown, fyne.KeySpace)
	if !slices.Equal(s.now().Done, []string{"r1"}) || s.Steps[len(s.Steps)-1] != "work finished" {
		t.Errorf("%+v %q", s.now().Done, s.Steps)
	}
	seen.Press(list, fyne.KeyEnd, fyne.KeySpace)
	if len(s.now().Done) != 1 {
		t.Errorf("the sum was ticked: %q", s.now().Done)
	}
}

func TestTheSideSaysWhereItLeadsAndLeavesSunkCostOut(t *testing.T) {
	s := opened(t, "Progress")
	s.says(t, "Profit it leads to", "—")
	o := *s.State.Build
	o.Fresh, o.Forecast = true, &valuation.Foresight{Currency: "USD", Whole: &valuation.Spread{Mean: -300, P10: -1200, P90: 900}, Loss: 0.6,
		Ways: []valuation.Way{{Name: valuation.Finish, Known: true, Spread: valuation.Spread{Mean: 5000, P10: 4000, P90: 6000}},
			{Name: valuation.PartOut}},
		Doubts: []string{"A doubt."}, Best: -1}
	s.State.Build = &o
	s.page.Render(s.State)
	s.says(t, "Profit it leads to: a loss", "USD -300", "60 %", "Forecast at the price paid", "left out", "Finish and sell", "4,000 to 6,000",
		"not judged", "Note: A doubt.")
}

func TestTheFileForTheInspectionIsAskedFor(t *testing.T) {
	s := opened(t, "Progress")
	tap(t, s.page.Object(), "Inspection file…")
	if !slices.Equal(s.Wished, []string{"file for the rebuilt inspection"}) {
		t.Errorf("asked for %q", s.Wished)
	}
}

func TestDaysAndSaleAreEnteredAndTheProfitShows(t *testing.T) {
	s := opened(t, "Days and selling")
	test.Type(s.page.First(), "") // the first day has the keyboard
	s.edit("x", func(b *build.Build) { b.Dates.Sold = "2026-11-20" })
	seen.All[*widgets.Select](s.page.Object())[0].SetSelected("sold")
	price := seen.All[*widgets.NumberEntry](s.page.Object())[1]
	test.Type(price.Focus(), "9,000")
	b := s.now()
	if b.Outcome != build.Sold || b.Sale.Price == nil || *b.Sale.Price != 900000 {
		t.Fatalf("%+v", b)
	}
	s.says(t, "Profit it came to", "USD 4,800")
	judged := seen.All[*widgets.ThreeEntry](s.page.Object())
	if len(judged) != 5 {
		t.Fatalf("%d judgements", len(judged))
	}
	if got := s.now().Otherwise.AsIs; got != nil {
		t.Errorf("a judgement that nobody made: %v", *got)
	}
}

func TestPicturesOfABuild(t *testing.T) {
	for i, section := range []string{"progress", "bills", "hours", "hidden", "photos", "invoice", "sale"} {
		seen.Picture(t, "builds-"+section, fyne.NewSize(1280, 660), func() fyne.CanvasObject {
			s := keeping(t, two()...)
			s.open(1)
			s.page.Go(i)
			return s.page.Object()
		})
	}
}
