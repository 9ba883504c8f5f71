package main

import (
	"os"
	"path/filepath"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/storage"

	"walkline/ui/widgets"
	"walkline/ui/widgets/seen"
)

// aRunList is a list of an invented sale, whose third lot has no model year that is one.
const aRunList = "Lot,Year,Make,Model,VIN,Odometer (mi),Keys\n" +
	"14,2019,Ostrane,Pell,,\"61,200\",yes\n" +
	"15,2017,Kettrick,Dunlin,,98000,no\n" +
	"16,20x7,Kettrick,Dunlin,,98000,no\n"

// list draws the matching of a run list that is dropped on the Board, and leaves it.
func (s *stage) list() error {
	folder, err := os.MkdirTemp("", "walkline-gallery")
	if err != nil {
		return err
	}
	defer os.RemoveAll(folder)
	path := filepath.Join(folder, "harrow-flats.csv")
	if err := os.WriteFile(path, []byte(aRunList), 0o600); err != nil {
		return err
	}
	s.window.Drop([]fyne.URI{storage.NewFileURI(path)})
	if err := s.save("run-list"); err != nil {
		return err
	}
	s.click("Put rows right…")
	if err := s.save("run-list-mend"); err != nil {
		return err
	}
	s.escape()
	s.escape()
	return nil
}

// someComparables are prices with a word of a title that is not known, another model, a row without a year, and one that is refused.
const someComparables = "Asking price\tYear\tMake\tModel\tTrim\tMiles\tTitle\tSeen\n" +
	"$9,500\t2018\tKettrick\tDunlin\tLX\t60,000\tClean title\t2026-10-02\n" +
	"$8,900\t2017\tKettrick\tDunlin\t\t71,200\tgreen slip\t2026-10-09\n" +
	"$9,100\t\tKettrick\tDunlin\t\t66,000\t\t2026-10-11\n" +
	"$7,700\t2018\tOstrane\tPell\t\t80,100\trebuilt\t2026-10-12\n" +
	"call\t2018\tKettrick\tDunlin\t\t58,000\t\t2026-10-12\n"

// comparables draws the matching of a table of comparables, once as it opens and once when its word of a title is answered, and leaves it.
func (s *stage) comparables() error {
	s.window.Paste(someComparables)
	if err := s.save("comparables"); err != nil {
		return err
	}
	for _, c := range seen.All[*widgets.Select](s.top()) {
		if c.Selected == "" && slices.Contains(c.Options, "junk") {
			c.SetSelected("salvage")
		}
	}
	if err := s.save("comparables-answered"); err != nil {
		return err
	}
	s.escape()
	return nil
}

func (s *stage) escape() { s.screen.Canvas().OnTypedKey()(&fyne.KeyEvent{Name: fyne.KeyEscape}) }

// click presses the button on top that says so.
func (s *stage) click(words string) {
	for _, b := range seen.All[*widgets.Button](s.top()) {
		if b.Text == words && b.Visible() {
			b.OnTapped()
			return
		}
	}
}
