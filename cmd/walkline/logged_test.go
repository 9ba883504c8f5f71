package main

import (
	"log"
	"log/slog"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"walkline/cmd/wire"
	"walkline/store/grid"
	"walkline/ui/desk"
)

// TestTheLogKeepsNoWordOfATable reads, refuses and half reads tables whose words are told from all others: the log counts rows, says why a
// table was refused, and has no cell, no heading and no name of a sheet.
func TestTheLogKeepsNoWordOfATable(t *testing.T) {
	kept, writer, flags := slog.Default(), log.Writer(), log.Flags()
	defer func() { slog.SetDefault(kept); log.SetOutput(writer); log.SetFlags(flags) }()
	folder := t.TempDir()
	end := keepLog(folder, os.Stderr)
	lister, prices := loggedList{wire.Lister{}}, logged{wire.Importer{}}
	list := "Lot,Year,Make,Model\nQ77,2016,Quagga,Zorilla\n,not a Quagga,Quagga,Zorilla\n"
	for _, data := range []string{list, "", "\x00\x01Quagga", "Lot,\"Quagga\n1,2"} {
		_, _, _ = lister.ReadList(desk.Sheet{Data: []byte(data)})
		_, _, _ = prices.Read(desk.Sheet{Data: []byte(strings.ReplaceAll(data, "Lot", "Quagga price"))})
	}
	_, _, err := lister.ReadList(desk.Sheet{Data: []byte(list), Stated: desk.Stated{Currency: "Zorilla"}})
	if err == nil || !strings.Contains(err.Error(), "Zorilla") {
		t.Fatalf("%v: the user is told what can't be so", err)
	}
	end()
	text, err := os.ReadFile(filepath.Join(folder, logName))
	if err != nil {
		t.Fatal(err)
	}
	for _, word := range []string{"Quagga", "Zorilla", "Q77", "2016", "quagga"} {
		if strings.Contains(string(text), word) {
			t.Errorf("the log has %q:\n%s", word, text)
		}
	}
	for _, want := range []string{grid.ErrEmpty.Error(), "usable=1 refused=1"} {
		if !strings.Contains(string(text), want) {
			t.Errorf("the log lacks %q:\n%s", want, text)
		}
	}
}
