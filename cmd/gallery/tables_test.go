package main

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/desk"
	"walkline/ui/task"
	"walkline/ui/widgets"
	"walkline/ui/widgets/seen"
	"walkline/ui/widgets/table"
)

// someRows is a table of comparables with one bad row.
const someRows = "asking price,year,make,model,miles\n9500,2018,Kettrick,Dunlin,60000\nmany,2018,Kettrick,Dunlin,61000\n"

// onResale opens the Resale section of a lot of the demo.
func onResale(t *testing.T, r task.Runner) *stage {
	t.Helper()
	s := opened(t, r)
	s.window.LoadDemo()
	id, err := s.lot("27")
	if err != nil {
		t.Fatal(err)
	}
	s.window.Do(desk.OpenLot(id))
	s.press(fyne.Key4)
	return s
}

// says checks that what is on top says something.
func (s *stage) says(t *testing.T, all ...string) {
	t.Helper()
	shown := strings.Join(seen.Texts(s.top()), " ") // a text that wraps is many
	for _, words := range all {
		if !strings.Contains(shown, words) {
			t.Fatalf("no %q in %q", words, shown)
		}
	}
}

// A refused row is put right where it stands, tried again, and taken with the rest.
func TestARefusedRowIsPutRightInTheDialog(t *testing.T) {
	s := onResale(t, task.Inline{})
	s.window.Paste(strings.ReplaceAll(someRows, ",", "\t"))
	s.says(t, "Usable: 1 of 2 rows. Refused: 1.")
	s.tap(t, "Put rows right…")
	s.says(t, "Line 3:", "asking price")
	price := seen.All[*widgets.TextEntry](s.top())[0]
	if price.Text != "many" {
		t.Fatalf("the cell holds %q", price.Text)
	}
	price.SetText("more")
	s.tap(t, "Try again")
	s.says(t, "Line 3:", "more")
	price.SetText("$9,900")
	s.tap(t, "Try again")
	s.says(t, "No row is refused any more.")
	s.tap(t, "Back to the table")
	s.says(t, "Usable: 2 of 2 rows. Refused: 0.")
	s.tap(t, "Import")
	s.wants(t, "2 rows read: 2 new")
	shelf, err := s.book.Shelf(t.Context())
	if err != nil || len(shelf) != 2 || shelf[1].Row.Price != 990000 || shelf[1].From != "the clipboard" {
		t.Errorf("on the shelf: %+v, %v", shelf, err)
	}
}

// A cell that is too long for its field goes back whole where it was not touched.
func TestALongCellOfARowThatIsPutRightStaysWhole(t *testing.T) {
	s, long := onResale(t, task.Inline{}), strings.Repeat("fair ", 600)+"end"
	s.window.Paste("asking price\tyear\tmake\tmodel\tmiles\tnote\nmany\t2018\tKettrick\tDunlin\t61000\t" + long + "\n")
	s.tap(t, "Put rows right…")
	cells := seen.All[*widgets.TextEntry](s.top())
	if last := cells[len(cells)-1].Text; len(last) > 2_100 || !strings.HasSuffix(last, "…") {
		t.Fatalf("%d letters of the note are in its field", len(last))
	}
	cells[0].SetText("$9,900")
	s.tap(t, "Try again")
	s.tap(t, "Back to the table")
	s.tap(t, "Import")
	shelf, err := s.book.Shelf(t.Context())
	if err != nil || len(shelf) != 1 || shelf[0].Row.Note != long {
		t.Errorf("on the shelf: %+v, %v", shelf, err)
	}
}

// What each word of a title was taken for is seen, changed, and what was said of it is forgotten. A row without a year is counted and can
// be put right like a refused one, and what serves for the price is counted too.
func TestTitlesAreSeenAndWhatRowsServeForIsCounted(t *testing.T) {
	s := onResale(t, task.Inline{})
	s.window.Paste("asking price\tyear\tmake\tmodel\tmiles\ttitle\n9500\t2018\tKettrick\tDunlin\t60000\tClean title\n" +
		"9100\t2018\tKettrick\tDunlin\t61000\tgreen slip\n9000\t\tKettrick\tDunlin\t62000\t\n8000\t2018\tOstrane\tPell\t62000\t\n")
	answer := func(asked, means string) {
		t.Helper()
		for _, c := range seen.All[*widgets.Select](s.top()) {
			if slices.Contains(c.Options, "flood damage") && c.Selected == asked {
				c.SetSelected(means)
				return
			}
		}
		t.Fatalf("no title is shown as %q", asked)
	}
	s.says(t, `Title "green slip", rows with it: 1.`, "Clean title (1)", "Title not stated: 2. Taken as clear.",
		"Of another model: 1.", "No model year: 1.", "Used for the price: 1.")
	answer("", "junk")
	s.says(t, "green slip (1)", "Usable: 4 of 4 rows.")
	answer("junk", "salvage")
	answer("salvage", "(forget what I said)")
	s.says(t, `Title "green slip", rows with it: 1.`)
	answer("clear", "rebuilt")
	s.tap(t, "Put rows right…")
	seen.All[*widgets.TextEntry](s.top())[1].SetText("2018")
	s.tap(t, "Try again")
	s.says(t, "green slip")
}

// Refused rows of run lists and of past buys are put right in the same dialog.
func TestRowsOfEveryKindArePutRight(t *testing.T) {
	for place, table := range map[fyne.KeyName]string{
		fyne.KeyB: "Lot\tYear\tMake\n14\t20x7\tOstrane\n",
		fyne.KeyU: "id\tmodel year\tmake\tprice paid\tbought\n14\t20x7\tOstrane\t900\t2026-01-05\n",
	} {
		s := opened(t, task.Inline{})
		s.press(place)
		s.window.Paste(table)
		s.says(t, "Usable: 0 of 1 rows. Refused: 1.")
		s.tap(t, "Put rows right…")
		s.says(t, "Line 2:", "a model year is")
		seen.All[*widgets.TextEntry](s.top())[1].SetText("2017")
		s.tap(t, "Try again")
		s.says(t, "No row is refused any more.")
		s.tap(t, "Back to the table")
		s.says(t, "Usable: 1 of 1 rows. Refused: 0.")
		s.screen.Canvas().OnTypedKey()(&fyne.KeyEvent{Name: fyne.KeyEscape})
	}
}

// What is dropped in the wrong place is asked about, and several tables come in turn.
func TestDroppedTablesAreAskedAboutInTurn(t *testing.T) {
	s := onResale(t, task.Inline{})
	var files []fyne.URI
	for name, text := range map[string]string{"a.csv": aRunList} {
		path := filepath.Join(t.TempDir(), name)
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		files = append(files, storage.NewFileURI(path))
	}
	rows := filepath.Join(t.TempDir(), "b.csv")
	if err := os.WriteFile(rows, []byte(someRows), 0o600); err != nil {
		t.Fatal(err)
	}
	s.window.Drop(append(files, storage.NewFileURI(rows)))
	s.says(t, "What is this table?", "looks like a table of run list")
	if b, ok := s.screen.Canvas().Focused().(*widgets.Button); !ok || !strings.HasPrefix(b.Text, "Run list") {
		t.Errorf("Enter goes to %v", s.screen.Canvas().Focused())
	}
	s.tap(t, "Run list: the lots of a sale")
	s.says(t, "Import a.csv", "Sale day")
	s.tap(t, "Cancel")
	s.says(t, "Import b.csv", "Prices")
	s.tap(t, "Cancel")
	if s.screen.Canvas().Overlays().Top() != nil {
		t.Errorf("still open: %q", seen.Texts(s.top()))
	}
}

// A text whose bytes don't say which letters they are shows what each way makes of it.
func TestLettersAreChosenBySight(t *testing.T) {
	s := onResale(t, task.Inline{})
	path := filepath.Join(t.TempDir(), "latin.csv")
	if err := os.WriteFile(path, []byte("price,year,note\n9500,2018,\xb1\xb6 a\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	s.window.Drop([]fyne.URI{storage.NewFileURI(path)})
	s.says(t, "The bytes don't say which letters they are", "windows-1252")
	for _, c := range seen.All[*widgets.Select](s.top()) {
		for _, way := range c.Options {
			if strings.HasPrefix(way, "iso-8859-2: ") {
				c.SetSelected(way)
			}
		}
	}
	s.says(t, "ąś a")
	if c, ok := s.screen.Canvas().Focused().(*widgets.Select); !ok || !slices.Contains(seen.All[*widgets.Select](s.top()), c) {
		t.Errorf("the keyboard is on %v, which is not shown", s.screen.Canvas().Focused())
	}
}

// The line of the headings is chosen, and what can't be is said.
func TestTheLineOfTheHeadingsIsChosen(t *testing.T) {
	s := onResale(t, task.Inline{})
	s.window.Paste("price\tyear\nprice\tyear\n9500\t2018\n")
	for _, c := range seen.All[*widgets.Select](s.top()) {
		if len(c.Options) == 32 && strings.HasPrefix(c.Selected, "found") {
			c.SetSelectedIndex(3)
			s.says(t, "Usable: 1 of 1 rows. Refused: 0. Passed over: 1.")
		}
	}
}

// A row is typed below the table, changed in place, and both are taken back.
func TestARowIsTypedAndChangedOnResale(t *testing.T) {
	s := onResale(t, task.Inline{})
	s.tap(t, "Type a row")
	s.screen.Canvas().Focused().(*widgets.TextEntry).SetText("12,800 OBO")
	s.tap(t, "Add this row")
	shelf, err := s.book.Shelf(t.Context())
	if err != nil || len(shelf) != 1 || shelf[0].Row.Price != 1280000 || shelf[0].Row.Model != "Dunlin" || shelf[0].From != "" {
		t.Fatalf("on the shelf: %+v, %v", shelf, err)
	}
	first := s.screen.Canvas().Focused().(*widgets.TextEntry)
	if first.Text != "" {
		t.Errorf("the cell of the next row holds %q", first.Text)
	}
	test.Type(first, "call")
	s.tap(t, "Add this row")
	s.wants(t, "Could not keep the row")
	if first.Text != "call" {
		t.Errorf("what was typed is lost: %q", first.Text)
	}
	s.undo()
	if shelf, _ := s.book.Shelf(t.Context()); len(shelf) != 0 {
		t.Errorf("undone: %+v", shelf)
	}
}

// What is remembered of a table is seen, and forgotten.
func TestWhatIsRememberedIsSeenAndForgotten(t *testing.T) {
	s := onResale(t, task.Inline{})
	s.window.Paste(strings.ReplaceAll(someRows, ",", "\t"))
	s.tap(t, "Import")
	s.tap(t, "Leave them")
	s.window.Do(desk.Want(desk.RememberedTables))
	s.says(t, "comparables: asking price, year, make, model, miles")
	list := seen.All[*widgets.List](s.top())[0]
	s.screen.Canvas().Focus(list)
	list.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	s.says(t, "asking price: price")
	list.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if s.screen.Canvas().Overlays().Top() != nil {
		t.Fatalf("Escape in the list leaves open %q", seen.Texts(s.top()))
	}
	all, err := s.desk.Remembered(t.Context())
	if err != nil || len(all) != 1 || all[0].Stated.Match[0] != "price" {
		t.Fatalf("remembered: %+v, %v", all, err)
	}
	if err := s.desk.Forget(t.Context(), all[0]); err != nil {
		t.Fatal(err)
	}
	if all, err = s.desk.Remembered(t.Context()); err != nil || len(all) != 0 {
		t.Errorf("after it was forgotten: %+v, %v", all, err)
	}
}

// stuck is a runner whose second order of a table never ends.
type stuck struct {
	task.Held
	tables    int
	cancelled bool
}

func (r *stuck) Run(j task.Job) {
	if j.Key == "table" {
		if r.tables++; r.tables == 2 {
			return
		}
	}
	r.Held.Run(j)
}

func (r *stuck) Cancel(key string) {
	r.cancelled = r.cancelled || key == "table"
	r.Held.Cancel(key)
}

// A long reading shows its bar, and Escape ends it: nothing is taken and no dialog is left.
func TestALongReadingIsCancelled(t *testing.T) {
	r := &stuck{}
	s := opened(t, r)
	r.Release()
	s.window.Paste("Lot\tMake\n1\tKettrick\n")
	r.Release()
	s.says(t, "Reading the clipboard", "Cancel")
	s.screen.Canvas().OnTypedKey()(&fyne.KeyEvent{Name: fyne.KeyEscape})
	r.Release()
	if s.screen.Canvas().Overlays().Top() != nil || !r.cancelled {
		t.Errorf("cancelled: %v; on top %q", r.cancelled, seen.Texts(s.top()))
	}
	s.wants(t, "cancelled. Nothing was taken.")
}

// slow is a runner that keeps the order that takes a table in, which has no key, back.
type slow struct {
	task.Held
	taking task.Job
}

func (r *slow) Run(j task.Job) {
	if j.Key == "" && j.Report != nil {
		r.taking = j
		return
	}
	r.Held.Run(j)
}

// While the rows are read to be taken in, a bar shows how far that is, and Escape ends it: no lot is taken.
func TestTakingInIsCancelled(t *testing.T) {
	r := &slow{}
	s := opened(t, r)
	r.Release()
	s.window.Paste("Lot\tMake\n1\tKettrick\n")
	r.Release()
	s.tap(t, "Import")
	r.Release()
	s.says(t, "Taking the run list in", "Cancel")
	s.screen.Canvas().OnTypedKey()(&fyne.KeyEvent{Name: fyne.KeyEscape})
	task.Inline{}.Run(r.taking)
	r.Release()
	if all, err := s.book.Entries(t.Context()); err != nil || len(all) != 0 || s.screen.Canvas().Overlays().Top() != nil {
		t.Errorf("%d lots after it was cancelled, %v", len(all), err)
	}
	s.wants(t, "Taking the run list in: cancelled. Nothing was taken.")
}

// What is asked of a table leaves no hole behind once it is answered: what is stated moves up to where it stood.
func TestAnAnsweredQuestionLeavesNoHole(t *testing.T) {
	s := onResale(t, task.Inline{})
	s.window.Paste(someComparables)
	top := func() float32 {
		for _, l := range seen.All[*widget.Label](s.top()) {
			if l.Text == "Headings" {
				return fyne.CurrentApp().Driver().AbsolutePositionForObject(l).Y
			}
		}
		t.Fatal("no line of headings to choose")
		return 0
	}
	before := top()
	for _, c := range seen.All[*widgets.Select](s.top()) {
		if c.Selected == "" && slices.Contains(c.Options, "junk") {
			c.SetSelected("salvage")
		}
	}
	if after := top(); after > before-40 {
		t.Errorf("the headings stand at %.0f, before the answer at %.0f", after, before)
	}
}

// In the dialog the choice of what a column is read as stands on the line of its name, though the reason beside it takes several.
func TestAColumnAndItsChoiceStandOnOneLine(t *testing.T) {
	s := onResale(t, task.Inline{})
	const wide = "asking price (as told by the seller),year,make,model,miles\n9500,2018,Kettrick,Dunlin,60000\n"
	s.window.Paste(strings.ReplaceAll(wide, ",", "\t"))
	d := fyne.CurrentApp().Driver()
	choices := seen.All[*widgets.Select](s.top())
	for i, name := range []string{"asking price (as told by the seller)", "year", "make", "model", "miles"} {
		for _, l := range seen.All[*widget.Label](s.top()) {
			if l.Text != name {
				continue
			}
			at, of := d.AbsolutePositionForObject(l), d.AbsolutePositionForObject(choices[i])
			if at.Y != of.Y || choices[i].Size().Height > 1.5*l.MinSize().Height {
				t.Errorf("%s is at %v, its choice at %v, %v high", name, at, of, choices[i].Size().Height)
			}
			break
		}
	}
}

// Ctrl+G on the Board begins with the ticked lots.
func TestTheShoppingListBeginsWithTheTickedLots(t *testing.T) {
	s := opened(t, task.Inline{})
	s.window.LoadDemo()
	board := seen.All[*table.Table](s.screen.Content())[0]
	board.OnTickMany(0, 1)
	s.press(fyne.KeyG)
	if of := seen.All[*widgets.Select](s.top())[0]; of.Selected != "ticked on the Board (2)" {
		t.Errorf("begins with %q", of.Selected)
	}
}
