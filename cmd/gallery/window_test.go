package main

import (
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/ui/task"
	"walkline/ui/theme"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/ui/widgets/plan"
	"walkline/ui/widgets/seen"
	"walkline/ui/widgets/table"
	"walkline/valuation"
)

// opened returns the window at its smallest, over an empty book.
func opened(t *testing.T, r task.Runner) *stage {
	t.Helper()
	s := openedIn(t, look{"test", fyne.NewSize(1280, 720), theme.Light, 1}, r)
	s.light()
	return s
}

// light has the demo's lots valued with few scenarios: what is tested is the window, not its figures.
func (s *stage) light() {
	demo := slices.Clone(s.desk.Demo())
	for i := range demo {
		demo[i].Run.Scenarios = 1024
	}
	s.desk.Demo = func() []valuation.Case { return demo }
}

// openedIn returns the window in a look. A test that works in line has one goroutine, but for what [TestEveryPageIsReached] does too: it
// runs without the race detector, where it takes a fifth of the time.
func openedIn(t *testing.T, l look, r task.Runner) *stage {
	t.Helper()
	if _, inline := r.(task.Inline); inline && racing {
		t.Skip("works in line: runs without the race detector, as make unit does")
	}
	s, err := openWith(l, r)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := s.close(); err != nil {
			t.Error(err)
		}
	})
	return s
}

// Every page that the gallery draws is reached, with the demo's lots valued, guessed, learned from and planned.
func TestEveryPageIsReached(t *testing.T) {
	drawn := *only
	*only = "no picture"
	defer func() { *only = drawn }()
	s, err := open(looks()[0])
	if err != nil {
		t.Fatal(err)
	}
	s.light()
	if err := errors.Join(s.pages(), s.close()); err != nil {
		t.Error(err)
	}
}

// worksheet returns the window with a demo lot open in a section, 1 to 6.
func worksheet(t *testing.T, number string, section rune) (*stage, int64) {
	t.Helper()
	s := opened(t, task.Inline{})
	s.window.LoadDemo()
	id, err := s.lot(number)
	if err != nil {
		t.Fatal(err)
	}
	s.window.Do(desk.OpenLot(id))
	s.press(fyne.KeyName(section))
	return s, id
}

// lotOf returns all that is kept of a lot.
func (s *stage) lotOf(t *testing.T, id int64) book.Lot {
	t.Helper()
	l, err := s.book.Lot(t.Context(), id)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// answer returns the answer that the Board shows of a lot.
func (s *stage) answer(t *testing.T, id int64) book.Summary {
	t.Helper()
	entries, err := s.book.Entries(t.Context())
	i := slices.IndexFunc(entries, func(e book.Entry) bool { return e.ID == id })
	if err != nil || i < 0 || entries[i].Answer == nil {
		t.Fatalf("no answer of lot %d: %v", id, err)
	}
	return *entries[i].Answer
}

func (s *stage) kept(t *testing.T, id int64) valuation.Case {
	t.Helper()
	return s.lotOf(t, id).Case
}

func (s *stage) wants(t *testing.T, words ...string) {
	t.Helper()
	all := strings.Join(seen.Texts(s.screen.Content()), " ") // a text that wraps is many
	for _, w := range words {
		if !strings.Contains(all, w) {
			t.Errorf("%q is missing from %q", w, all)
		}
	}
}

// tap taps the visible button with these words, of a dialog when one is open.
func (s *stage) tap(t *testing.T, words string) {
	t.Helper()
	for _, b := range seen.All[*widgets.Button](s.top()) {
		if b.Text == words {
			test.Tap(b)
			return
		}
	}
	t.Fatalf("no button %q among %q", words, seen.Texts(s.top()))
}

func TestTheFirstStartLeadsToTheDemo(t *testing.T) {
	s := opened(t, task.Inline{})
	s.wants(t, "What is the most you may bid?")
	s.tap(t, "Show me the demo sale: three invented lots at Harrow Flats")
	s.wants(t, "3 lots", "Kettrick", "Ostrane", "Morrowby", "do not bid")
}

func TestEnterOpensALotAndEscapeClosesIt(t *testing.T) {
	s := opened(t, task.Inline{})
	s.window.LoadDemo()
	var focused fyne.Focusable = seen.All[*table.Table](s.screen.Content())[0]
	s.screen.Canvas().Focus(focused)
	seen.Press(focused, fyne.KeyDown, fyne.KeyDown, fyne.KeyReturn)
	s.wants(t, "Lot 27", "Vehicle", "Walk-away bid")
	s.screen.Canvas().OnTypedKey()(&fyne.KeyEvent{Name: fyne.KeyEscape})
	s.wants(t, "3 lots")
	if s.screen.Canvas().Focused() != focused {
		t.Error("the list has not got the keyboard back")
	}
}

func TestAModelYearThatIsTypedIsKeptAndUndone(t *testing.T) {
	s, id := worksheet(t, "27", '1')
	year := seen.All[*widgets.NumberEntry](s.screen.Content())[0].Focus()
	before := seen.Texts(s.screen.Content())
	s.screen.Canvas().Focus(year)
	year.(fyne.Shortcutable).TypedShortcut(&fyne.ShortcutSelectAll{})
	test.Type(year, "2016")
	if got := s.kept(t, id).Lot.ModelYear; got != 2016 {
		t.Errorf("the book has the model year %d", got)
	}
	s.wants(t, "2016 Kettrick Dunlin Plus")
	s.undo()
	s.wants(t, "2018 Kettrick Dunlin Plus", "Undone: Model year.")
	if got := s.kept(t, id).Lot.ModelYear; got != 2018 {
		t.Errorf("after undo the book has the model year %d", got)
	}
	for _, words := range before { // the same case, the same verdict
		if !strings.Contains(words, "demo sale") {
			s.wants(t, words)
		}
	}
}

func TestDamageIsEnteredByKeyboard(t *testing.T) {
	s, id := worksheet(t, "27", '2')
	p := seen.All[*plan.Plan](s.screen.Content())[0]
	p.Select("03")
	test.Type(p, "3t")
	damage := s.kept(t, id).Damage
	if last := damage[len(damage)-1]; last.Area != "03" || last.Extent != "disabling" || last.Depth != "structure" {
		t.Errorf("the book has %+v", damage)
	}
	s.wants(t, "03 right side")
	test.Type(p, "0")
	if got := s.kept(t, id).Damage; len(got) != len(damage)-1 {
		t.Errorf("cleared, the book has %+v", got)
	}
}

func TestAComparableIsLeftOutByKeyboard(t *testing.T) {
	s, id := worksheet(t, "27", '4')
	list := seen.All[*table.Table](s.screen.Content())[0]
	s.wants(t, "from 29 comparables")
	seen.Press(list, fyne.KeyDown, fyne.KeyDown, fyne.KeySpace)
	rows := s.kept(t, id).Resale.Rows
	if !rows[1].Excluded || rows[0].Excluded || rows[2].Excluded {
		t.Error("the second row is not the one left out")
	}
	s.wants(t, "from 28 comparables")
	seen.Press(list, fyne.KeySpace)
	s.wants(t, "from 29 comparables")
}

// The looks stand first on the page, the one that is worth most on top.
func TestAnAnswerMovesTheChanceOfItsDamage(t *testing.T) {
	s, id := worksheet(t, "27", '3')
	chances := func() []string {
		s.press(fyne.Key3)
		return seen.All[*table.Table](s.screen.Content())[1].Facts()
	}
	before := chances()
	s.press(fyne.Key6)
	answers := seen.All[*widgets.Reply](s.screen.Content())
	if len(answers) == 0 || answers[0].Selected() != view.NotLooked {
		t.Fatalf("%d questions", len(answers))
	}
	answers[0].Choose(view.Yes)
	if len(s.kept(t, id).Findings) != 3 {
		t.Fatalf("the book has the findings %v", s.kept(t, id).Findings)
	}
	after := chances()
	if slices.Equal(before, after) {
		t.Errorf("no chance moved: %q", after)
	}
	s.undo()
	if !slices.Equal(before, chances()) {
		t.Error("the answer is taken back, the chances are not")
	}
}

func TestTheFloodLotIsRefused(t *testing.T) {
	s, _ := worksheet(t, "33", '1')
	s.wants(t, "Do not bid", "Chance of a loss at")
}

func TestALateAnswerIsDropped(t *testing.T) {
	held := &task.Held{}
	s := opened(t, held)
	s.window.LoadDemo()
	held.Release()
	side, err := s.lot(side)
	if err != nil {
		t.Fatal(err)
	}
	flood, _ := s.lot("33")
	s.window.Do(desk.OpenLot(flood))
	s.window.Do(desk.OpenLot(side)) // the flood lot's answer is not wanted any more
	if held.Waiting() != 1 {
		t.Fatalf("%d orders wait", held.Waiting())
	}
	held.Release()
	s.wants(t, view.NewPurse("USD").Show(*s.answer(t, side).WalkAway))
	s.window.Do(desk.OpenLot(side))
	s.screen.Canvas().OnTypedKey()(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if held.Waiting() != 0 {
		t.Error("a lot that was closed is still to be valued")
	}
}

// aBadRow is a table whose third line has no price.
const aBadRow = "price,kind,date,model_year,make,model,mileage,mileage_unit,title\n" +
	"13500,sold,2026-10-02,2018,Kettrick,Dunlin,81000,mi,clear\n" +
	"call,sold,2026-10-03,2018,Kettrick,Dunlin,82000,mi,clear\n" +
	"13900,sold,2026-10-04,2018,Kettrick,Dunlin,83000,mi,clear\n"

func TestImportListsTheRefusedRow(t *testing.T) {
	s, id := worksheet(t, "27", '4')
	path := filepath.Join(t.TempDir(), "sold.csv")
	if err := os.WriteFile(path, []byte(aBadRow), 0o600); err != nil {
		t.Fatal(err)
	}
	s.press(fyne.KeyI)
	entry := s.screen.Canvas().Focused()
	test.Type(entry, path)
	s.tap(t, "Read")
	if !seen.Says(s.top(), "Usable: 2 of 3 rows. Refused: 1.") || !seen.Says(s.top(), "line 3: ") || !seen.Says(s.top(), "call") {
		t.Fatalf("the dialog says %q", seen.Texts(s.top()))
	}
	own := len(s.kept(t, id).Resale.Rows)
	onShelf := func(want int) {
		t.Helper()
		shelf, err := s.book.Shelf(t.Context())
		if got := len(s.kept(t, id).Resale.Rows); err != nil || len(shelf) != want || got != own {
			t.Errorf("%d rows lie on the shelf, want %d; %d are the lot's own, were %d; %v", len(shelf), want, got, own, err)
		}
	}
	s.tap(t, "Import")
	onShelf(2)
	if !seen.Says(s.top(), "Refused rows: 1") || !seen.Says(s.top(), "line 3: ") {
		t.Errorf("the refused row is not offered: %q", seen.Texts(s.top()))
	}
	s.tap(t, "Leave them")
	s.wants(t, "3 rows read: 2 new, 0 the same, 0 changed, 1 refused.")
	s.press(fyne.KeyI)
	test.Type(s.screen.Canvas().Focused(), path)
	s.tap(t, "Read")
	s.tap(t, "Import")
	onShelf(2)
}

// undo presses the toolkit's own undo, which it makes of Ctrl+Z.
func (s *stage) undo() {
	type typer interface{ TypedShortcut(fyne.Shortcut) }
	s.screen.Canvas().(typer).TypedShortcut(&fyne.ShortcutUndo{})
}
