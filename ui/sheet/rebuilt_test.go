package sheet_test

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/jpeg"
	"strings"
	"testing"

	"walkline/ui/sheet"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// plain returns a JPEG of one grey.
func plain(t *testing.T, w, h int, gray uint8) []byte {
	t.Helper()
	img := image.NewGray(image.Rect(0, 0, w, h))
	for i := range img.Pix {
		img.Pix[i] = color.Gray{Y: gray}.Y
	}
	var out bytes.Buffer
	if err := jpeg.Encode(&out, img, nil); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func bytesOf(data []byte) func() ([]byte, error) { return func() ([]byte, error) { return data, nil } }

// rebuilt is an invented build of the scene at Harrow Flats.
func rebuilt(t *testing.T) sheet.Rebuilt {
	total := money.Amount(507000)
	d := example()
	return sheet.Rebuilt{Lot: d.Case.Lot, Damage: d.Case.Damage, Currency: "USD", Printed: "2027-01-20", Agency: "the county's title office",
		Builder: sheet.Builder{Name: "Harrow Flats Rebuilds"}, Bought: sheet.Bought{Date: "2026-11-28", From: "Harrow Flats yard", Total: &total},
		Forms: []sheet.Form{{Name: "Application for a rebuilt title", Why: "asked for in most places (from memory: ask the agency)",
			InHand: true}, {Name: "Photographs of four corners"}},
		Work: []sheet.Work{{Date: "2026-12-10", What: "Hood and bumper replaced", Parts: "hood from a donor, bumper new", Hours: 6.5,
			By: "body"}, {What: "Painted", Hours: 8, By: "paint"}},
		Receipts: []sheet.Receipt{{Date: "2026-12-02", What: "Hood", Source: "used", DonorVIN: "1M8GDM9AXKP042788", Amount: 18050,
			Seller: "Quay breakers", Number: "A 17", Files: []string{"hood.jpg", "hood.pdf"}},
			{What: "Grille", Source: "used", Amount: 4000}, {What: "Lamp", Source: "used", DonorVIN: "1M8GDM9AIKP042788", Amount: 2000},
			{Date: "2026-12-05", What: "Bumper cover", Source: "new_maker", Amount: 21999},
			{What: "Core back", Amount: -1500}},
		Asks:   []sheet.Ask{{What: "An emissions test", Source: "in a test"}},
		Papers: []string{"Bill 1: hood.pdf"},
		Before: []sheet.Picture{{Caption: "front left corner", Area: "11", Taken: "2026-11-28", Read: bytesOf(plain(t, 400, 300, 90))},
			{Caption: "broken file", Read: bytesOf([]byte("no picture"))}},
		After: []sheet.Picture{{Caption: "front, finished", Read: bytesOf(plain(t, 300, 400, 90))}}}
}

func printRebuilt(t *testing.T, r sheet.Rebuilt) []byte {
	t.Helper()
	pdf, err := sheet.RebuiltFile(r)
	if err != nil {
		t.Fatal(err)
	}
	return pdf
}

// The VIN with check digit X is the one of 49 CFR 565.15's own worked example; a VIN has no letter I (565.13).
func TestTheRebuiltFileReadsBack(t *testing.T) {
	pages := read(t, printRebuilt(t, rebuilt(t)))
	if len(pages) != 4 {
		t.Fatalf("%d pages: %q", len(pages), pages)
	}
	for page, wants := range [][]string{
		{"File for the rebuilt inspection", "2019 Ostrane Pell", "Bought on 2026-11-28", "USD 5,070", "Forms (1 of 2 in hand)",
			"× Application for a rebuilt title", "from memory: ask the agency",
			"Damage as bought", "12 front: functional, bolted", "License not entered", "An emissions test",
			"Statement of work (2 lines) page 2", "Bills (5 bills, 1 as PDF) page 2", "Bills as photos (0) none",
			"Photos before the work (2) page 3",
			"Photos after the work (1) page 4", "Bills of used parts without a donor VIN that reads 2",
			"is the agency's to say"},
		{"Statement of work", "2026-12-10", "Hood and bumper replaced", "hood from a donor, bumper new", "6.5", "Hours in all 14.5",
			"Signed by who did the work", "Bills, USD",
			"1M8GDM9AXKP042788 180.50", "hood.jpg,", "hood.pdf)", "Quay breakers, A 17",
			"Bills kept as PDF files", "Bill 1: hood.pdf", "new, maker's", "not entered", "1M8GDM9AIKP042788: a", "40.00", "-15.00",
			"All bills 445.49"},
		{"Photos before the work", "1. 11 front left. Taken 2026-11-28. front left corner",
			"This photo cannot be shown: this is no JPEG, PNG or WebP photo.", "2. broken file"},
		{"Photos after the work", "1. front, finished", "page 4 of 4"},
	} {
		for _, want := range wants {
			if !strings.Contains(pages[page], want) {
				t.Errorf("page %d lacks %q: %q", page+1, want, pages[page])
			}
		}
	}
}

func TestPhotographsAreOnTheirPage(t *testing.T) {
	pdf := printRebuilt(t, rebuilt(t))
	for page, box := range map[int][4]float64{3: {20, 35, 80, 75}, 4: {20, 35, 50, 75}} {
		if dark := darkness(picture(t, pdf, page), box[0], box[1], box[2], box[3]); dark < .6 || dark > .7 {
			t.Errorf("page %d: the photograph is %.2f dark, want the gray of 90, 0.65", page, dark)
		}
	}
	inMargins(t, pdf)
}

// Three photographs are two in the first row and one in the second; the boxes are mm on the paper for letters, 216 by 279.
func TestPhotographsStandTwoInARow(t *testing.T) {
	r := rebuilt(t)
	r.After = nil
	for range 3 {
		r.After = append(r.After, sheet.Picture{Read: bytesOf(plain(t, 400, 300, 90))})
	}
	page := picture(t, printRebuilt(t, r), 4)
	for name, c := range map[string]struct {
		box  [4]float64
		dark float64
	}{"first": {[4]float64{20, 35, 90, 75}, .65}, "second": {[4]float64{120, 35, 190, 75}, .65}, "third": {[4]float64{20, 120, 90, 150}, .65},
		"none": {[4]float64{120, 120, 190, 150}, 0}} {
		if dark := darkness(page, c.box[0], c.box[1], c.box[2], c.box[3]); dark < c.dark-.05 || dark > c.dark+.05 {
			t.Errorf("%s: %.2f dark, want %.2f", name, dark, c.dark)
		}
	}
}

func TestALongBuildLosesNothing(t *testing.T) {
	r := rebuilt(t)
	r.Bills = []sheet.Picture{{Caption: "bill number one as it is", Read: bytesOf(plain(t, 40, 60, 50))}}
	small := plain(t, 40, 30, 128)
	for i := range 60 {
		r.Receipts = append(r.Receipts, sheet.Receipt{What: fmt.Sprintf("bill number %d for a part with a rather long name that has to be "+
			"wrapped", i), Amount: 100})
		r.Work = append(r.Work, sheet.Work{What: fmt.Sprintf("work number %d", i), Hours: 1})
		r.After = append(r.After, sheet.Picture{Caption: fmt.Sprintf("view number %d", i), Read: bytesOf(small)})
		r.Forms = append(r.Forms, sheet.Form{Name: fmt.Sprintf("form number %d", i), Why: "asked for"})
	}
	all := strings.Join(read(t, printRebuilt(t, r)), " ")
	for i := range 60 {
		for _, want := range []string{"bill number %d for", "work number %d ", "view number %d", "form number %d"} {
			if want = fmt.Sprintf(want, i); !strings.Contains(all, want) {
				t.Errorf("the file lacks %q", want)
			}
		}
	}
	if !strings.Contains(all, "Bills as photos 1. bill number one as it is") {
		t.Error("the picture of a bill is not there")
	}
	if n := strings.Count(all, "Donor VIN Amount"); n < 2 {
		t.Errorf("the headings of the bills stand on %d pages", n)
	}
}

func TestAnEmptyBuildSaysSo(t *testing.T) {
	all := strings.Join(read(t, printRebuilt(t, sheet.Rebuilt{Currency: "EUR", Printed: "2027-01-20"})), " ")
	for _, want := range []string{"(vehicle not entered)", "No damage marked.", "No work is entered.", "No bill is entered.",
		"No list of forms is known for this place: ask the agency.", "Invoice total not entered"} {
		if !strings.Contains(all, want) {
			t.Errorf("the file lacks %q: %q", want, all)
		}
	}
	if _, err := sheet.RebuiltFile(sheet.Rebuilt{Printed: lot.Date("x")}); err == nil {
		t.Error("a date that is none is printed")
	}
	first, again := printRebuilt(t, rebuilt(t)), printRebuilt(t, rebuilt(t))
	if !bytes.Equal(first, again) {
		t.Error("the same build gives two files")
	}
}
