package main

import (
	"bytes"
	"encoding/csv"
	"image"
	"image/color"
	"image/png"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"walkline/valuation/build"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// TestABuildToItsTotals wins a lot and follows it to its sale: bills with files, hours, damage, the questions before it closes; then
// reads the file for the inspection and the entries for the accountant.
func TestABuildToItsTotals(t *testing.T) {
	if os.Getenv("WALKLINE_E2E") == "" {
		t.Log("the window test runs under a virtual display: .ci/e2e")
		return
	}
	s := newScreen(t, "builds.db")
	s.start()
	s.enterLot()
	s.walkAway()
	s.keys("ctrl+l", "Up", "Up")
	s.typed("2000")
	s.keys("Return")
	s.settled("build-bid")
	s.keys("w")
	s.became(lot.Won, 200_000)
	s.keys("ctrl+u", "Down", "Return")
	s.picture("build-progress")
	s.enterBill()
	s.enterWork()
	s.inspection()
	s.sell()
	s.closeOut()
	s.entries()
	s.close()
	s.start()
	s.keys("ctrl+u", "Down", "Return")
	s.picture("build-reopened")
	s.close()
}

// built waits for what the store keeps of the one lot's build.
func (s *screen) built(what string, holds func(build.Build) bool) {
	s.t.Helper()
	s.until(what, func() bool {
		book := s.open()
		defer book.Close()
		l, err := book.Lot(s.t.Context(), 1)
		if err != nil {
			s.t.Fatal(err)
		}
		return holds(l.Build)
	})
}

// dropNew writes a file, drops it on the window and takes the first thing that it is offered as.
func (s *screen) dropNew(name string, data []byte) {
	path := filepath.Join(s.t.TempDir(), name)
	if err := os.WriteFile(path, data, 0o600); err != nil {
		s.t.Fatal(err)
	}
	before := s.settled("build-before-drop")
	s.drop(path)
	s.until("it is asked what "+name+" is", func() bool { return differing(before, s.shot("build-dropped")) > 10_000 })
	s.settled("build-dropped")
	s.keys("Return")
	s.settled("build-filed")
}

// enterBill enters a bill with a PDF on its form, and drops a photograph on it when it is kept.
func (s *screen) enterBill() {
	s.keys("ctrl+2")
	s.dropNew("invoice 17.pdf", []byte("%PDF-1.4\n%%EOF\n"))
	s.typed("Bumper cover\t180.50")
	s.keys("Return")
	s.built("the bill is kept with its file", func(b build.Build) bool {
		return len(b.Receipts) == 1 && b.Receipts[0].Amount == 18050 && len(b.Receipts[0].Files()) == 1
	})
	s.keys("shift+Tab", "shift+Tab", "Down") // from the form to the list: the bill is in hand
	s.dropNew("counter.png", darkPicture(s.t))
	s.built("the bill has both files", func(b build.Build) bool { return len(b.Receipts) == 1 && len(b.Receipts[0].Files()) == 2 })
}

// darkPicture returns a photograph that is black.
func darkPicture(t *testing.T) []byte {
	img := image.NewGray(image.Rect(0, 0, 320, 240))
	for y := range 240 {
		img.SetGray(y, y, color.Gray{Y: 255}) // a white line across it
	}
	var out bytes.Buffer
	if err := png.Encode(&out, img); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// enterWork enters hours, and that the first hidden damage was found.
func (s *screen) enterWork() {
	s.keys("ctrl+3")
	s.typed("2.5")
	s.keys("Return")
	s.built("the hours are kept", func(b build.Build) bool { return len(b.Hours) == 1 && b.Hours[0].Hours == 2.5 })
	s.keys("ctrl+4")
	s.settled("build-damage")
	s.keys("Tab", "Tab", "space")
	s.built("damage is found", func(b build.Build) bool { return len(b.Risks) == 1 && b.Risks[0].State == build.Found })
}

// writes answers the dialog that asks for a place, and waits until the file is there whole.
func (s *screen) writes(name string, end string) string {
	path := filepath.Join(s.t.TempDir(), name)
	s.settled("build-place")
	s.keys("ctrl+a")
	s.typed(path)
	s.keys("Return")
	s.until(name+" is written", func() bool {
		data, err := os.ReadFile(path)
		return err == nil && strings.HasSuffix(strings.TrimSpace(string(data)), end)
	})
	return path
}

// inspection has the file for the inspection written, and reads its pages back: their words, and what is drawn on them.
func (s *screen) inspection() {
	s.keys("ctrl+shift+p")
	path := s.writes("inspection.pdf", "%%EOF")
	text, err := exec.Command("pdftotext", "-raw", path, "-").Output()
	if err != nil {
		s.t.Fatalf("pdftotext: %v", err)
	}
	words := strings.Join(strings.Fields(string(text)), " ")
	for _, want := range []string{"2017 Ostrane Pell S", "USD 2,260", "Statement of work", "Bumper cover", "180.50", "invoice 17.pdf", "2.5"} {
		if !strings.Contains(words, want) {
			s.t.Errorf("the file for the inspection lacks %q: %s", want, words)
		}
	}
	pages := strings.Count(string(text), "\f")
	if pages < 3 {
		s.t.Fatalf("it has %d pages", pages)
	}
	blackest := 0.0
	for i := range pages {
		dark := darkShare(s.t, path, i+1)
		if dark == 0 {
			s.t.Errorf("page %d is blank", i+1)
		}
		blackest = max(blackest, dark)
	}
	if blackest < 0.05 {
		s.t.Errorf("the photograph of the bill is on no page: at most %.3f of one is black", blackest)
	}
}

// darkShare returns how much of a page of a PDF is black.
func darkShare(t *testing.T, path string, page int) float64 {
	t.Helper()
	drawn, err := exec.Command("pdftoppm", "-gray", "-png", "-r", "50", "-singlefile", "-f", strconv.Itoa(page), path).Output()
	if err != nil {
		t.Fatalf("pdftoppm: %v", err)
	}
	img, err := png.Decode(bytes.NewReader(drawn))
	if err != nil {
		t.Fatal(err)
	}
	dark, all := 0, img.Bounds().Dx()*img.Bounds().Dy()
	for y := range img.Bounds().Dy() {
		for x := range img.Bounds().Dx() {
			if g, _, _, _ := img.At(x, y).RGBA(); g < 0x4000 {
				dark++
			}
		}
	}
	return float64(dark) / float64(all)
}

// sell enters the day of the sale and what it brought, which ends the build.
func (s *screen) sell() {
	s.keys("ctrl+7")
	s.typed(strings.Repeat("\t", 6) + time.Now().Format(time.DateOnly) + "\t\t\t9,800")
	s.keys("Tab")
	s.built("it is sold and asks", func(b build.Build) bool {
		return b.Outcome == build.Sold && b.Sale.Price != nil && *b.Sale.Price == 980_000 && b.Closing == build.Asking && b.Dates.Sold.Known()
	})
}

// closeOut answers the questions one by one: each answer gives the keyboard to the next.
func (s *screen) closeOut() {
	s.keys("ctrl+7")
	s.picture("build-questions")
	s.keys("space")
	s.built("all work is finished", func(b build.Build) bool { return len(b.Done) > 0 })
	s.settled("build-questions-bills")
	s.keys("space")
	s.built("there are no more bills", func(b build.Build) bool { return b.NoMoreBills })
	s.settled("build-questions-costs")
	s.keys("space")
	s.built("freight, storage and selling were as forecast", func(b build.Build) bool { return b.Meant("freight") == build.AsForecast })
	s.settled("build-questions-damage")
	s.keys("space")
	s.built("the rest was not there", func(b build.Build) bool {
		return len(b.Risks) > 1 && b.Risks[1].State == build.NotThere &&
			b.Teaches()
	})
	s.picture("build-closed")
}

// entries goes to the totals of the years and has every entry written; what was paid and brought adds up.
func (s *screen) entries() {
	s.keys("Escape")
	s.settled("build-list")
	s.keys("shift+Tab", "shift+Tab", "shift+Tab", "space")
	s.picture("build-years")
	s.keys("Tab", "Tab", "space")
	path := s.writes("entries.csv", "USD,")
	data, err := os.ReadFile(path)
	if err != nil {
		s.t.Fatal(err)
	}
	rows, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	if err != nil {
		s.t.Fatal(err)
	}
	usd, _ := money.Lookup("USD")
	var out, in money.Amount
	for _, r := range rows[1:] {
		for i, sum := range map[int]*money.Amount{10: &out, 11: &in} {
			if a, err := usd.Parse(r[i]); err == nil {
				*sum += a
			}
		}
	}
	// By hand: 2,000 at the hammer, fees of 260 by the terms that a new lot begins with, a bill of 180.50.
	if out != 244_050 || in != 980_000 {
		s.t.Errorf("%d went out and %d came in: %s", out, in, data)
	}
}
