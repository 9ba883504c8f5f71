package wire

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"walkline/ui/desk"
	"walkline/valuation/checks"
	"walkline/valuation/lot"
)

// pagesOf prints a build's file and returns the text of each page as poppler reads it, line breaks as spaces.
func pagesOf(t *testing.T, p desk.BuildPaper) []string {
	t.Helper()
	if _, err := exec.LookPath("pdftotext"); err != nil {
		t.Skip("no pdftotext here: install poppler-utils (.ci/setup test does)")
	}
	pdf, err := (Press{}).Rebuilt(p)
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "file.pdf")
	if err := os.WriteFile(path, pdf, 0o600); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command("pdftotext", "-raw", path, "-").Output()
	if err != nil {
		t.Fatal(err)
	}
	pages := strings.Split(string(out), "\f")
	for i, page := range pages {
		pages[i] = strings.Join(strings.Fields(page), " ")
	}
	return pages[:len(pages)-1]
}

// For every place that the program knows: what its own document asks for stands on the front page with its citation, and so does the
// table of contents; the work begins on the second page.
func TestTheInspectionFileAsksWhatThePlaceAsks(t *testing.T) {
	know, err := Shipped()
	if err != nil {
		t.Fatal(err)
	}
	for _, pack := range know.Packs {
		p := paper()
		p.Packs, p.Case.Lot.Title.RegisterIn = know.Packs, pack.ID
		pages := pagesOf(t, p)
		wants := []string{"In this file Statement of work (3 lines) page 2", "Forms (0 of ", "is the agency's to say"}
		for _, row := range pack.Documents {
			wants = append(wants, row.Text, row.Words())
		}
		if pack.ID != checks.Anywhere {
			wants = append(wants, "Agency title agency of "+pack.Name)
		}
		for _, want := range wants {
			if !strings.Contains(pages[0], want) {
				t.Errorf("%s: the front page lacks %q: %s", pack.ID, want, pages[0])
			}
		}
		if !strings.HasPrefix(pages[1], "Statement of work ") {
			t.Errorf("%s: the second page begins %.60q", pack.ID, pages[1])
		}
	}
}

// Days are entered out of order; the paper has them in order, the undated ones last.
func TestTheInspectionFileReadsBackByDay(t *testing.T) {
	p := paper()
	p.Jobs["r2"], p.Build.Done, p.Build.Dates.Finished = "Replace the lamp", []string{"r1", "r2"}, "2027-01-18"
	p.Build.Hours[0].Date, p.Build.Hours[1].Date = "2027-01-09", "2027-01-07"
	p.Build.Receipts[0].Date, p.Build.Receipts[2].Date = "2027-01-12", "2027-01-05"
	for i, day := range []lot.Date{"", "2026-12-09", "2026-12-02"} {
		p.Photos = append(p.Photos, desk.PhotoFile{Photo: lot.Photo{Caption: fmt.Sprintf("view %d", i), Taken: day},
			Read: func() ([]byte, error) { return nil, nil }})
	}
	pages := pagesOf(t, p)
	for page, order := range map[int][]string{1: {"Statement of work", "2027-01-05 Alignment", "2027-01-07 Hood painted Hood (used)",
		"2027-01-09 Replace the hood", "2027-01-18 Replace the lamp", "Hours in all 5", "Bills, USD", "2027-01-05 Alignment",
		"2027-01-12 Hood", "core", "All bills"}, 2: {"Photos before the work", "Taken 2026-12-02. view 2", "Taken 2026-12-09. view 1",
		"view 0"}} {
		rest := pages[page]
		for _, want := range order {
			_, after, found := strings.Cut(rest, want)
			if !found {
				t.Fatalf("page %d lacks %q after what comes before it: %s", page+1, want, pages[page])
			}
			rest = after
		}
	}
}
