package builds

import (
	"slices"
	"testing"

	"fyne.io/fyne/v2/test"

	"walkline/ui/widgets"
	"walkline/ui/widgets/seen"
	"walkline/ui/widgets/table"
	"walkline/valuation/build"
	"walkline/valuation/lot"
)

func TestAPartOfThePlanIsChosenAndNamesItsLine(t *testing.T) {
	s := opened(t, "Bills")
	pick := seen.All[*widgets.Select](s.page.Object())[0]
	pick.SetSelected("clips, Replace bumper cover")
	amount := seen.All[*widgets.NumberEntry](s.page.Object())[0]
	test.Type(amount.Focus(), "12")
	tap(t, s.page.Object(), "Add this bill")
	got := s.now().Receipts
	if len(got) != 1 || got[0].What != "clips" || got[0].Line != "r1" || got[0].Kind != "part" || !s.now().HasPart("r1", "clips") {
		t.Fatalf("%+v", got)
	}
	if !slices.Contains(pick.Options, "clips, Replace bumper cover (bought)") {
		t.Errorf("%q", pick.Options)
	}
}

func TestABillTakesNothingOverUnlessItIsAskedTo(t *testing.T) {
	s := opened(t, "Bills")
	last := build.Receipt{Date: "2026-11-02", What: "Door", Kind: "part", Amount: 9000, Line: "r1", Source: "used", Donor: "11111111111111111",
		Seller: "Quay breakers", Number: "A 17", File: "door.pdf", Hash: "x"}
	s.edit("x", func(b *build.Build) { b.Receipts = []build.Receipt{last} })
	add := func() build.Receipt {
		tap(t, s.page.Object(), "Add this bill")
		all := s.now().Receipts
		return all[len(all)-1]
	}
	if got := add(); got.Donor+got.Source+got.Seller+got.Number+got.Line+got.Hash != "" || got.Date != "2026-11-25" {
		t.Errorf("unasked: %+v", got)
	}
	s.edit("x", func(b *build.Build) { b.Receipts = []build.Receipt{last} })
	tap(t, s.page.Object(), "As the last bill")
	got := add()
	if got.Donor != last.Donor || got.Seller != last.Seller || got.Number != "A 17" || got.Line != "r1" || got.Source != "used" {
		t.Errorf("asked: %+v", got)
	}
	if got.What != "" || got.Amount != 0 || got.Hash != "" {
		t.Errorf("what differs from bill to bill was taken over: %+v", got)
	}
}

// The VINs are that of the sample table of 49 CFR 565.15(c) (testdata/reference), and the same with its check digit wrong and with one
// character less.
func TestADonorsVINIsCheckedAsTheLotsOwn(t *testing.T) {
	s := opened(t, "Bills")
	for _, c := range []struct{ vin, says string }{{"1G4AH59H45G118341", ""}, {"1G4AH59H55G118341", "ninth character should be 4"},
		{"1G4AH59H45G11834", "a VIN has 17 characters"}} {
		if v := lot.ReadVIN(c.vin); (v.Problem == "" && v.Digit) != (c.says == "") {
			t.Fatalf("%s: %+v", c.vin, v)
		}
		s.edit("x", func(b *build.Build) {
			b.Receipts = []build.Receipt{{Kind: "part", What: "Door", Source: "used", Donor: c.vin}}
		})
		marked := seen.Says(s.page.Object(), "! donor VIN")
		if marked != (c.says != "") {
			t.Errorf("%s: marked %v", c.vin, marked)
		}
		seen.All[*table.Table](s.page.Object())[0].OnOpen(0)
		if c.says != "" {
			s.says(t, c.says)
		}
	}
}

// A file that comes once another build is open, or its bill is gone, is taken by none.
func TestAFileThatComesLateIsPutToNoOtherBill(t *testing.T) {
	s := opened(t, "Bills")
	one := build.Receipt{Kind: "part", What: "Door"}
	s.edit("x", func(b *build.Build) { b.Receipts = []build.Receipt{one, one} })
	id, f := s.State.Build.ID, build.File{Name: "late.pdf", Hash: "a"}
	if s.page.FileOfBill(id+1, 0, f) || s.page.FileOfBill(id, 2, f) || !s.page.FileOfBill(id, 1, f) {
		t.Error("a file is put to a bill that is not its own, or not to that")
	}
	if got := s.now().Receipts; len(got[0].Files()) != 0 || len(got[1].Files()) != 1 {
		t.Errorf("%+v", got)
	}
}

func TestABillKeepsSeveralFilesAndOpensThem(t *testing.T) {
	s := opened(t, "Bills")
	s.edit("x", func(b *build.Build) {
		b.Receipts = []build.Receipt{{Kind: "part", What: "Door", File: "front.jpg", Hash: "a",
			More: []build.File{{Name: "back.jpg", Hash: "b"}}}}
	})
	seen.All[*table.Table](s.page.Object())[0].OnOpen(0)
	tap(t, s.page.Object(), "Add a file…")
	tap(t, s.page.Object(), "Add a file…") // the same again
	if got := s.now().Receipts[0].Files(); len(got) != 3 || got[2].Name != "hood.pdf" {
		t.Fatalf("%+v", got)
	}
	tap(t, s.page.Object(), "back.jpg")
	if s.Wished[len(s.Wished)-1] != "open a file b" {
		t.Errorf("asked for %q", s.Wished)
	}
	tap(t, s.page.Object(), "Take off")
	if got := s.now().Receipts[0].Files(); len(got) != 2 || got[0].Name != "back.jpg" {
		t.Errorf("%+v", got)
	}
}
