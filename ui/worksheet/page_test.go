package worksheet

import (
	"context"
	"errors"
	"image"
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
	"walkline/ui/widgets/plan"
	"walkline/ui/widgets/seen"
	"walkline/ui/widgets/table"
	"walkline/valuation"
	"walkline/valuation/hidden"
	"walkline/valuation/invoice"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/prob"
	"walkline/valuation/resale"
)

// bench is the page in a window, and its user, to whom the lot is valued after every action as the window does.
type bench struct {
	*trial.User
	page   *Page
	window fyne.Window
}

func thumbnail(p lot.Photo, show func(image.Image, error)) {
	if p.Kind == "" {
		show(nil, errors.New("gone"))
		return
	}
	show(image.NewRGBA(image.Rect(0, 0, 8, 6)), nil)
}

// show values the lot and shows it.
func (b *bench) show(s desk.State) {
	if len(s.Open.Faults) > 0 {
		v, err := b.Desk.Outline(context.Background(), s.Open.Case)
		b.State = s.Outlined(s.Open.ID, s.Open.Revision, v, err)
	} else {
		v, err := b.Desk.Value(context.Background(), s.Open.Case)
		b.State = s.Valued(s.Open.ID, s.Open.Revision, v, err)
	}
	b.page.Render(*b.State.Open)
}

func (b *bench) edit(words string, change func(*valuation.Case)) { b.Do(desk.EditLot(words, change)) }

// plainCase is a lot with a guess, a hidden risk and one rule; every figure is made up.
func plainCase() valuation.Case {
	c := valuation.Defaults()
	c.Currency, c.ValuedOn = "USD", "2026-11-20"
	c.Lot.ModelYear, c.Lot.Make, c.Lot.Model, c.Lot.Title.Document = 2018, "Kettrick", "Dunlin", "salvage"
	c.Resale.Guess = &prob.Three{Low: 11000, Likely: 13000, High: 15000}
	c.Buying.BidSteps = []invoice.Step{{From: 0, Step: 25}}
	c.Hidden.Risks = []hidden.Risk{{ID: "rail_bent", Name: "Rail bent", Chance: hidden.Beta{A: 1, B: 3}, Cost: prob.Certain(500),
		Findings: []hidden.Evidence{{Finding: "hood_gap", IfPresent: 0.8, IfAbsent: 0.1}}}}
	least := money.Amount(100000)
	c.Rules.MinProfit = &least
	c.Run.Scenarios = 1024
	return c
}

// at returns the page over a case, in a section.
func at(t *testing.T, section string, c valuation.Case) *bench {
	t.Helper()
	return atKnowing(t, section, c, valuation.Knowledge{})
}

// atKnowing is at with catalogues.
func atKnowing(t *testing.T, section string, c valuation.Case, k valuation.Knowledge) *bench {
	t.Helper()
	b := &bench{User: trial.New(t)}
	b.Desk.Know = k
	b.State = b.Desk.Load(t.Context())
	b.window = seen.Open(t, fyne.NewSize(1280, 680), widget.NewLabel("")) // the look first, then what it dresses
	b.page = New(b.Do, thumbnail, k)
	b.Show = b.show
	b.window.SetContent(b.page.Object())
	b.Do(desk.OpenLot(trial.Add(t, b.Store, book.New{Case: c})[0]))
	b.page.Go(slices.Index(Sections, section))
	return b
}

func (b *bench) wants(t *testing.T, words ...string) {
	t.Helper()
	all := strings.Join(seen.Texts(b.page.Object()), " ")
	for _, w := range words {
		if !strings.Contains(all, w) {
			t.Errorf("%q is missing from %q", w, all)
		}
	}
}

// retype puts words in the place of what a field says.
func retype(w fyne.Window, field fyne.Focusable, words string) {
	w.Canvas().Focus(field)
	field.(fyne.Shortcutable).TypedShortcut(&fyne.ShortcutSelectAll{})
	test.Type(field, words)
}

func TestAModelYearIsTaken(t *testing.T) {
	b := at(t, "Facts", plainCase())
	year := seen.All[*widgets.NumberEntry](b.page.Object())[0].Focus()
	retype(b.window, year, "2016")
	if got := b.State.Open.Case.Lot.ModelYear; got != 2016 {
		t.Errorf("the model year is %d", got)
	}
	b.wants(t, "2016 Kettrick Dunlin")
	retype(b.window, year, "201666")
	if got := b.State.Open.Case.Lot.ModelYear; got != 2016 {
		t.Errorf("201666 made the model year %d", got)
	}
	b.wants(t, "! at most 2200")
}

func TestWritingAPageEditsNothing(t *testing.T) {
	b := at(t, "Facts", plainCase())
	for i := range Sections {
		b.page.Go(i)
		b.show(b.State)
	}
	if len(b.Steps) > 0 {
		t.Errorf("showing the page made the edits %q", b.Steps)
	}
}

// field is what words can be typed into.
type field interface {
	fyne.CanvasObject
	fyne.Focusable
	SelectedText() string
}

func TestDamageFollowsThePlan(t *testing.T) {
	b := at(t, "Damage", plainCase())
	b.wants(t, "No area is marked.")
	p := seen.All[*plan.Plan](b.page.Object())[0]
	p.Select("06")
	test.Type(p, "2b")
	if got := b.State.Open.Case.Damage; len(got) != 1 || got[0] != (lot.Damage{Area: "06", Extent: "functional", Depth: "bolted"}) {
		t.Errorf("the survey is %+v", got)
	}
	b.wants(t, "06 rear")
	note := seen.All[field](b.page.Object())[0]
	test.Type(note, "bent")
	if got := b.State.Open.Case.Damage[0].Note; got != "bent" {
		t.Errorf("the note is %q", got)
	}
	test.Type(p, "0")
	if len(b.State.Open.Case.Damage) != 0 {
		t.Errorf("cleared, the survey is %+v", b.State.Open.Case.Damage)
	}
	b.wants(t, "No area is marked.")
}

func TestAComparableIsUnticked(t *testing.T) {
	c := plainCase()
	c.Resale.Rows = []resale.Row{
		{Price: 1300000, Kind: "sold", Date: "2026-10-02", ModelYear: 2018, Make: "Kettrick", Model: "Dunlin"},
		{Price: 1350000, Kind: "sold", Date: "2026-10-09", ModelYear: 2018, Make: "Kettrick", Model: "Dunlin"},
	}
	b := at(t, "Resale", c)
	list := seen.All[*table.Table](b.page.Object())[0]
	seen.Press(list, fyne.KeyDown, fyne.KeyDown, fyne.KeySpace)
	if rows := b.State.Open.Case.Resale.Rows; rows[0].Excluded || !rows[1].Excluded {
		t.Errorf("left out: %v, %v", rows[0].Excluded, rows[1].Excluded)
	}
	seen.Press(list, fyne.KeySpace)
	if b.State.Open.Case.Resale.Rows[1].Excluded {
		t.Error("ticked again, it is still left out")
	}
	if items := list.Menu(1); len(items) != 3 || items[1].Label != "Remove this row" {
		t.Errorf("menu %v", items)
	}
	seen.Press(list, fyne.KeyDelete)
	if rows := b.State.Open.Case.Resale.Rows; len(rows) != 1 || rows[0].Price != 1300000 {
		t.Errorf("Delete left %v", rows)
	}
}

func TestImportIsAskedFor(t *testing.T) {
	b := at(t, "Resale", plainCase())
	for _, button := range seen.All[*widgets.Button](b.page.Object()) {
		if strings.HasPrefix(button.Text, "Import") {
			test.Tap(button)
		}
	}
	if !slices.Equal(b.Wished, []string{"comparables"}) {
		t.Errorf("asked for %q", b.Wished)
	}
}

func TestAFindingIsNotedAndTakenBack(t *testing.T) {
	b := at(t, "Checks", plainCase())
	if len(b.State.Open.Faults) > 0 {
		t.Fatal(b.State.Open.Faults)
	}
	answers := seen.All[*widgets.Reply](b.page.Object())
	if len(answers) == 0 {
		_, err := b.Desk.Value(context.Background(), b.State.Open.Case)
		t.Fatal(err, seen.Texts(b.page.Object()))
	}
	answer := answers[0]
	answer.Choose("yes")
	if len(b.State.Open.Case.Findings) != 1 {
		t.Fatalf("the findings are %v", b.State.Open.Case.Findings)
	}
	answer.Choose("not checked")
	if len(b.State.Open.Case.Findings) != 0 {
		t.Errorf("taken back, the findings are %v", b.State.Open.Case.Findings)
	}
}

func TestTheVerdictKeepsItsWord(t *testing.T) {
	b := at(t, "Facts", plainCase())
	b.wants(t, "Walk-away bid", "USD ", "Set by: least expected profit")
	b.edit("the rule", func(c *valuation.Case) { tooMuch := money.Amount(1e8); c.Rules.MinProfit = &tooMuch })
	b.wants(t, "Do not bid")
	b.edit("the guess", func(c *valuation.Case) { c.Resale.Guess = nil })
	b.wants(t, "before your last change", "Still to enter", "Resale: import comparables")
}

// A lot without a mark on it says nothing until somebody says that it was looked at.
func TestNoneSeenIsSaidAndTakenBack(t *testing.T) {
	c := plainCase()
	c.Damage, c.Hidden.Risks = nil, nil
	b := at(t, "Damage", c)
	said := func() string { return b.State.Open.Case.Findings[valuation.NothingSeen] }
	tick := func() *widgets.Check {
		for _, k := range seen.All[*widgets.Check](b.page.Object()) {
			if k.Text == "I looked, and saw no damage" {
				return k
			}
		}
		t.Fatal("there is no way to say that no damage was seen")
		return nil
	}
	if len(b.State.Open.Case.Needs()) == 0 {
		t.Fatal("a lot that nobody has looked at needs nothing")
	}
	test.Tap(tick())
	if said() != "no" || len(b.State.Open.Case.Needs()) != 0 || !tick().Checked {
		t.Errorf("said %q, needs %v", said(), b.State.Open.Case.Needs())
	}
	if b.Do(desk.Undo()); said() != "" || tick().Checked {
		t.Errorf("after undo %q", said())
	}
}

// Fees that are a lot's own can be kept as its yard's, by a button that names the yard.
func TestFeesAreKeptAsTheYards(t *testing.T) {
	c := valuation.Defaults()
	b := at(t, "Costs", c)
	if seen.Says(b.page.Object(), "Keep as the fees of") {
		t.Error("offered without a sale")
	}
	c.Lot.Sale = "Weir Street"
	b = at(t, "Costs", c)
	b.wants(t, "Keep as the fees of Weir Street")
}

// Undo shows where its change is seen, and stays where that is in sight.
func TestUndoShowsTheSectionOfItsChange(t *testing.T) {
	for _, c := range []struct{ part, from, shows string }{
		{"survey", "Damage", "Damage"}, {"survey", "Repair", "Damage"}, {"damage", "Costs", "Damage"}, {"risks", "Repair", "Repair"},
		{"risks", "Checks", "Checks"}, {"risks", "Costs", "Repair"}, {"status", "Facts", "Facts"}, {"buying", "Facts", "Costs"},
	} {
		b := at(t, c.from, plainCase())
		b.page.Reveal(1, []string{c.part})
		if got := Sections[b.page.rail.Current()]; got != c.shows {
			t.Errorf("%s, from %s: shows %s, want %s", c.part, c.from, got, c.shows)
		}
	}
}

// Water and missing parts are words of the survey, asked beside the plan.
func TestUndoOfWaterStaysOnDamage(t *testing.T) {
	b := at(t, "Damage", plainCase())
	b.edit("water stood", func(c *valuation.Case) { c.Survey = &lot.Survey{Missing: []string{"none"}} })
	b.Do(desk.Undo())
	if b.page.Reveal(b.State.Travels, b.State.Taken.Parts); Sections[b.page.rail.Current()] != "Damage" {
		t.Errorf("undo of %q shows %s", b.State.Taken.Parts, Sections[b.page.rail.Current()])
	}
}
