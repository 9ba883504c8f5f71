package main

import (
	"os"
	"path/filepath"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/storage"
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
	s.screen.Canvas().OnTypedKey()(&fyne.KeyEvent{Name: fyne.KeyEscape})
	return nil
}
