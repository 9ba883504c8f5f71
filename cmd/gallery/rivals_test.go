package main

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"walkline/store/book"
	"walkline/ui/task"
	"walkline/ui/widgets"
	"walkline/ui/widgets/seen"
	"walkline/valuation/money"
)

// twoPrices is a table in which two headings name the price.
const twoPrices = "asking price\tsold price\tyear\tmake\tmodel\tmiles\n9500\t9100\t2018\tKettrick\tDunlin\t60000\n" +
	"9900\t9300\t2018\tKettrick\tDunlin\t61000\n"

// asks returns the choice in the dialog that has an answer among its options, and none chosen.
func (s *stage) asks(t *testing.T, answer string) *widgets.Select {
	t.Helper()
	for _, c := range seen.All[*widgets.Select](s.top()) {
		if c.Selected == "" && slices.Contains(c.Options, answer) {
			return c
		}
	}
	t.Fatalf("nothing asks for %q", answer)
	return nil
}

// priced finds a row of the shelf by its price.
func priced(price money.Amount) func(book.Comparable) bool {
	return func(c book.Comparable) bool { return c.Row.Price == price }
}

// closed reports whether the rows can't be taken in.
func (s *stage) closed() bool {
	for _, b := range seen.All[*widgets.Button](s.top()) {
		if b.Text == "Import" {
			return b.Disabled()
		}
	}
	return false
}

// Where two headings name the price the dialog asks, the keyboard is on the question, and nothing is taken before it is said. The answer
// says too whether the prices were asked or paid, and is remembered.
func TestTwoColumnsForOneFieldAreAskedAbout(t *testing.T) {
	s := onResale(t, task.Inline{})
	s.window.Paste(twoPrices)
	s.says(t, "Which column is the price? Several headings name it.")
	question := s.asks(t, "sold price")
	if s.screen.Canvas().Focused() != question || !s.closed() {
		t.Errorf("the keyboard is on %v; closed: %v", s.screen.Canvas().Focused(), s.closed())
	}
	s.screen.Canvas().Unfocus()
	s.screen.Canvas().OnTypedKey()(&fyne.KeyEvent{Name: fyne.KeyReturn})
	if shelf, err := s.book.Shelf(t.Context()); err != nil || len(shelf) > 0 || s.screen.Canvas().Overlays().Top() == nil {
		t.Fatalf("Enter took %d rows, %v", len(shelf), err)
	}
	question.SetSelected("sold price")
	if shown := strings.Join(seen.Texts(s.top()), " "); strings.Contains(shown, "Which column") || s.closed() {
		t.Errorf("after the answer: closed %v, %q", s.closed(), shown)
	}
	if b, ok := s.screen.Canvas().Focused().(*widgets.Button); !ok || b.Text != "Import" {
		t.Errorf("the keyboard is on %v", s.screen.Canvas().Focused())
	}
	s.tap(t, "Import")
	shelf, err := s.book.Shelf(t.Context())
	if err != nil || len(shelf) != 2 || shelf[0].Row.Price != 910000 || shelf[0].Row.Kind != "sold" {
		t.Fatalf("on the shelf: %+v, %v", shelf, err)
	}
	s.window.Paste(strings.ReplaceAll(twoPrices, "9100", "9000"))
	if shown := strings.Join(seen.Texts(s.top()), " "); strings.Contains(shown, "Which column") || s.closed() {
		t.Errorf("a remembered table is asked about: %q", shown)
	}
	s.tap(t, "Import")
	if shelf, err = s.book.Shelf(t.Context()); err != nil || !slices.ContainsFunc(shelf, priced(900000)) {
		t.Errorf("on the shelf: %+v, %v", shelf, err)
	}
}

// A column that is chosen by hand answers the question.
func TestAColumnChosenByHandAnswersTheQuestion(t *testing.T) {
	s := onResale(t, task.Inline{})
	s.window.Paste(twoPrices)
	seen.All[*widgets.Select](s.top())[1].SetSelected("price")
	if shown := strings.Join(seen.Texts(s.top()), " "); strings.Contains(shown, "Which column") || s.closed() {
		t.Fatalf("closed %v: %q", s.closed(), shown)
	}
	s.tap(t, "Import")
	if shelf, err := s.book.Shelf(t.Context()); err != nil || !slices.ContainsFunc(shelf, priced(910000)) {
		t.Errorf("on the shelf: %+v, %v", shelf, err)
	}
}

// Of a price in each of two currencies the one that is chosen says the currency; one that is not the lot's is refused by name.
func TestAPriceInEachOfTwoCurrenciesIsAskedAbout(t *testing.T) {
	s := onResale(t, task.Inline{})
	s.window.Paste("price EUR\tprice USD\tyear\tmake\tmodel\tmiles\n8500\t9500\t2018\tKettrick\tDunlin\t60000\n")
	s.asks(t, "price EUR").SetSelected("price EUR")
	s.says(t, "the table's prices are in EUR, and they are wanted in USD")
	if !s.closed() {
		t.Error("prices in euros can be taken")
	}
	for _, c := range seen.All[*widgets.Select](s.top()) {
		if slices.Contains(c.Options, "price USD") {
			c.SetSelected("price USD")
			break
		}
	}
	s.tap(t, "Import")
	if shelf, err := s.book.Shelf(t.Context()); err != nil || len(shelf) != 1 || shelf[0].Row.Price != 950000 {
		t.Errorf("on the shelf: %+v, %v", shelf, err)
	}
}

// The same heading twice is told by its count.
func TestTheSameHeadingTwiceIsToldByItsCount(t *testing.T) {
	s := onResale(t, task.Inline{})
	s.window.Paste("price\tyear\tmake\tmodel\tprice\n8500\t2018\tKettrick\tDunlin\t9500\n")
	s.asks(t, "price (2)").SetSelected("price (2)")
	s.tap(t, "Import")
	if shelf, err := s.book.Shelf(t.Context()); err != nil || len(shelf) != 1 || shelf[0].Row.Price != 950000 {
		t.Errorf("on the shelf: %+v, %v", shelf, err)
	}
}
