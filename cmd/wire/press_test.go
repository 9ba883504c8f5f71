package wire

import (
	"slices"
	"testing"

	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/build"
	"walkline/valuation/checks"
	"walkline/valuation/lot"
)

// paper is an invented build.
func paper() desk.BuildPaper {
	c := valuation.Defaults()
	c.Currency, c.Lot.Title.RegisterIn, c.Lot.Sale = "USD", "US-XX", "Harrow Flats yard"
	c.Findings = map[string]string{"keep_us_xx_1": "no"}
	return desk.BuildPaper{Case: c, Jobs: map[string]string{"r1": "Replace the hood"}, Printed: "2027-01-20", Build: build.Build{
		Receipts: []build.Receipt{{What: "Hood", Kind: "part", Line: "r1", Source: "used", Donor: "1M8GDM9AXKP042788", Amount: 18000},
			{What: "core", Kind: "part", Line: "r1", Amount: -4000},
			{What: "Alignment", Kind: "outside", Amount: 9000}, {What: "Gas", Kind: "freight", Amount: 100}},
		Hours: []build.Work{{Line: "r1", Trade: "body", Hours: 2}, {Line: "r1", Trade: "paint", Hours: 3, What: "Hood painted"}}}}
}

func TestTheStatementOfWorkNamesJobsAndParts(t *testing.T) {
	w := work(paper())
	if len(w) != 3 || w[0].What != "Replace the hood" || w[0].Parts != "Hood (used)" || w[1].What != "Hood painted" ||
		w[1].Parts != "" || w[2].What != "Alignment" || w[2].By != "sublet" {
		t.Errorf("%+v", w)
	}
	if r := inspected(paper().Build); len(r) != 3 || r[1].Amount != -4000 {
		t.Errorf("%+v", r)
	}
	if r := receipts(paper().Build); len(r) != 3 || r[0].DonorVIN != "1M8GDM9AXKP042788" || r[2].What != "Alignment" {
		t.Errorf("%+v", r)
	}
}

func TestTheFormsAreThoseOfThePackAndTicked(t *testing.T) {
	p := paper()
	p.Packs = []checks.Pack{{ID: "US-XX", Name: "Nowhere", Documents: []checks.Row{{Text: "Form 12"}, {Text: "Form 13"}}}}
	ticked := map[string]bool{}
	for _, f := range forms(p) {
		ticked[f.Name] = f.InHand
	}
	if in, there := ticked["Form 12"]; !in || !there {
		t.Errorf("%v", ticked)
	}
	if in, there := ticked["Form 13"]; in || !there {
		t.Errorf("%v", ticked)
	}
	if pdf, err := (Press{}).Rebuilt(p); err != nil || string(pdf[:5]) != "%PDF-" {
		t.Errorf("%v", err)
	}
	broken := paper()
	broken.Printed = lot.Date("x")
	if _, err := (Press{}).Rebuilt(broken); err == nil {
		t.Error("printed on no day")
	}
}

func TestTheFileIsByDayAndHoldsFinishedLinesWithoutHours(t *testing.T) {
	p := paper()
	p.Jobs["r2"] = "Replace the lamp"
	p.Build.Done, p.Build.Dates.Finished = []string{"r1", "r2"}, "2027-01-18"
	p.Build.Hours[0].Date, p.Build.Hours[1].Date = "2027-01-09", "2027-01-07"
	p.Build.Receipts[0].Date, p.Build.Receipts[2].Date = "2027-01-12", "2027-01-05"
	p.Build.Receipts[2].Seller = "Straight Line"
	var days []lot.Date
	for _, w := range work(p) {
		days = append(days, w.Date)
	}
	if w := work(p); !slices.Equal(days, []lot.Date{"2027-01-05", "2027-01-07", "2027-01-09", "2027-01-18"}) ||
		w[0].By != "Straight Line" || w[3].What != "Replace the lamp" || w[3].Hours != 0 {
		t.Errorf("%+v", w)
	}
	if r := receipts(p.Build); r[0].What != "Alignment" || r[1].What != "Hood" || r[2].What != "core" {
		t.Errorf("%+v", r)
	}
	got := asks([]checks.Pack{{}, {Inspections: []checks.Row{{Text: "Emissions"}}}, {Inspections: []checks.Row{{Text: "Brakes"}}}})
	if len(got) != 1 || got[0].What != "Emissions" || got[0].Source == "" {
		t.Errorf("%+v", got)
	}
}
