package sheet_test

import (
	"bytes"
	"image"
	"image/draw"
	"image/png"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"walkline/ui/sheet"
	"walkline/valuation"
	"walkline/valuation/bid"
	"walkline/valuation/checks"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/resale"
)

// poppler runs one of poppler's programs on a PDF; without poppler the test is skipped by name.
func poppler(t *testing.T, pdf []byte, program string, args ...string) []byte {
	t.Helper()
	if _, err := exec.LookPath(program); err != nil {
		t.Skip("no " + program + " here: install poppler-utils (.ci/setup test does)")
	}
	path := filepath.Join(t.TempDir(), "sheet.pdf")
	if err := os.WriteFile(path, pdf, 0o600); err != nil {
		t.Fatal(err)
	}
	var errs bytes.Buffer
	command := exec.Command(program, append(append([]string{}, args...), path, "-")...)
	if program == "pdftoppm" {
		command = exec.Command(program, append(append([]string{}, args...), path)...)
	}
	command.Stderr = &errs
	out, err := command.Output()
	if err != nil || errs.Len() > 0 {
		t.Fatalf("%s: %v %s", program, err, &errs)
	}
	return out
}

// read returns the text of each page, with its line breaks as spaces.
func read(t *testing.T, pdf []byte) []string {
	t.Helper()
	pages := strings.Split(string(poppler(t, pdf, "pdftotext", "-raw")), "\f")
	for i, p := range pages {
		pages[i] = strings.Join(strings.Fields(p), " ")
	}
	return pages[:len(pages)-1]
}

// dpi is the resolution of a picture of a page: two dots to a point of the page.
const dpi = 2 * 72

// picture returns a page, counted from 1, as a grey picture.
func picture(t *testing.T, pdf []byte, page int) *image.Gray {
	t.Helper()
	n := strconv.Itoa(page)
	img, err := png.Decode(bytes.NewReader(poppler(t, pdf, "pdftoppm", "-gray", "-png", "-r", strconv.Itoa(dpi), "-f", n, "-l", n)))
	if err != nil {
		t.Fatal(err)
	}
	gray := image.NewGray(img.Bounds())
	draw.Draw(gray, gray.Rect, img, img.Bounds().Min, draw.Src)
	return gray
}

// darkness returns the mean darkness of a box in mm, 0 white .. 1 black.
func darkness(img *image.Gray, x0, y0, x1, y1 float64) float64 {
	dots := func(mm float64) int { return int(mm / 25.4 * dpi) }
	var sum float64
	n := 0
	for y := dots(y0); y < dots(y1); y++ {
		for x := dots(x0); x < dots(x1); x++ {
			sum += 255 - float64(img.GrayAt(x, y).Y)
			n++
		}
	}
	return sum / 255 / float64(n)
}

func usd(x int64) *money.Amount { a := money.Amount(100 * x); return &a }

// example is an invented lot of the scene at Harrow Flats, with an answer written by hand; its bars add up.
func example() sheet.Lot {
	miles := 61200
	c := valuation.Defaults()
	c.Currency, c.ValuedOn = "USD", "2026-11-20"
	c.Lot = lot.Lot{Number: "14", Sale: "Harrow Flats yard", SaleDate: "2026-11-28", VIN: "0HFPL4TA0KH000114", ModelYear: 2019,
		Make: "Ostrane", Model: "Pell",
		Odometer: &miles, OdometerUnit: "mi", OdometerStatus: "actual", Title: lot.Title{Document: "salvage", Brands: []string{"Collision"}}}
	c.Damage = []lot.Damage{{Area: "12", Extent: "functional", Depth: "bolted", Note: "grille broken"},
		{Area: "engine_bay", Extent: "minor", Depth: "skin"}}
	c.Rules = bid.Rules{MinProfit: usd(1500)}
	c.Findings = map[string]string{"look 2": "yes"}
	a := valuation.Answer{Currency: "USD", Decision: "bid", WalkAway: usd(4600), BindingRule: bid.MinProfit,
		Reasons:  []string{"The rule binds."},
		Warnings: []string{"row 2 lies far below the others"}, Acquisition: valuation.Acquisition{Bid: 460000},
		Resale: resale.Price{RowsUsed: 34},
		Profit: valuation.Profit{Mean: 1500, P10: -438, P90: 4196, LossChance: .144}}
	a.Waterfall = []valuation.Bar{{Name: "Resale", Amount: *usd(11180)}, {Name: "Repair", Amount: *usd(-4610)},
		{Name: "Fees and tax", Amount: *usd(-470)},
		{Name: "Expected profit", Amount: *usd(-1500)}, {Name: "Walk-away bid", Amount: *usd(4600)}}
	a.Repair.Lines = []valuation.LineFigure{{ID: "a", Caution: "Restraints hold charges."}, {ID: "b", Caution: "Restraints hold charges."}}
	a.Checklist = looks(12)
	return sheet.Lot{Case: c, Answer: a, Printed: "2026-11-25"}
}

// looks returns n checks of about the usual length.
func looks(n int) []checks.Item {
	var items []checks.Item
	for i := range n {
		k := strconv.Itoa(i + 1)
		items = append(items, checks.Item{ID: "look " + k, Kind: "inspection",
			Text: "Is the gap of panel number " + k + " uneven? Sight along both sides of it; a coin is a good gauge.",
			Why:  "Points to: Bent rail end behind the bumper.", Minutes: 2})
	}
	return items
}

func print(t *testing.T, d sheet.Lot) []byte {
	t.Helper()
	pdf, err := sheet.Decision(d)
	if err != nil {
		t.Fatal(err)
	}
	return pdf
}
