package desk_test

import (
	"strings"
	"testing"

	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/invoice"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
)

// press notes what it is given to print.
type press struct {
	answers []valuation.Answer
	printed lot.Date
	papers  []desk.BuildPaper
}

func (p *press) Rebuilt(paper desk.BuildPaper) ([]byte, error) {
	p.papers = append(p.papers, paper)
	return []byte("%PDF"), nil
}

func (p *press) Decision(_ valuation.Case, a valuation.Answer, printed lot.Date) ([]byte, error) {
	p.answers, p.printed = append(p.answers, a), printed
	return []byte("%PDF"), nil
}

// A fresh answer is printed as it is; after an edit the lot is valued anew, so that no old verdict reaches the paper.
func TestTheDecisionSheetIsOfTheCaseAsItStands(t *testing.T) {
	d, _ := newDesk()
	p := &press{}
	d.Press = p
	c := d.Starter
	c.Lot.Make, c.Lot.Title.Document, c.Findings = "Kettrick", "salvage", map[string]string{valuation.NothingSeen: "no"}
	c.ValuedOn, c.Run.Scenarios = "2026-11-20", 256
	c.Repair.UseCatalogue, c.Hidden.UseCatalogue = false, false
	c.Resale.Guess = &prob.Three{Low: 8000, Likely: 9000, High: 10000}
	c.Buying.BidSteps = []invoice.Step{{Step: 2500}}
	least := money.Amount(100000)
	c.Rules.MinProfit = &least
	o := desk.Open{Case: c, Fresh: true, Valued: &desk.Valued{Answer: valuation.Answer{Decision: "as shown"}}}
	if data, err := d.DecisionSheet(o); err != nil || string(data) != "%PDF" || p.answers[0].Decision != "as shown" || p.printed != "2026-11-20" {
		t.Errorf("%q, %v, %+v", data, err, p)
	}
	o.Fresh = false
	if _, err := d.DecisionSheet(o); err != nil || p.answers[1].Decision != "bid" {
		t.Errorf("%v, %+v", err, p)
	}
	o.Case.Currency = "ZZZ"
	if _, err := d.DecisionSheet(o); err == nil || !strings.Contains(err.Error(), "currency") {
		t.Errorf("a case with a fault: %v", err)
	}
}

func TestFileName(t *testing.T) {
	for want, l := range map[string]lot.Lot{
		"lot 14 Ostrane Pell decision.pdf": {Number: "14", Make: "Ostrane", Model: "Pell"},
		"lot decision.pdf":                 {},
		"lot 1 2 a b decision.pdf":         {Number: "1/2", Make: "a:\x00b"},
	} {
		if got := desk.FileName(l, "decision", ".pdf"); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
	if got := desk.FileName(lot.Lot{Make: strings.Repeat("東", 300)}, "decision", ".pdf"); len([]rune(got)) > 130 {
		t.Errorf("a name of %d characters", len([]rune(got)))
	}
}

// Every photograph of the lot goes along; one whose file is gone says so in its place.
func TestTheRebuiltFileTakesThePhotosAlong(t *testing.T) {
	d, a, s := withAlbum(t)
	p := &press{}
	d.Press = p
	s = d.AddPhotos(t.Context(), s, s.Open.ID, kept(t, d, 1, 2), "12", lot.After)
	gone := s.Open.Photos[1]
	delete(a.files, gone.Hash+gone.Kind)
	o := desk.OpenBuild{Case: s.Open.Case, Plan: []valuation.PlannedLine{{Line: repair.Line{ID: "r1", Job: "Replace the hood"}}}}
	o.ID = s.Open.ID
	if data, err := d.RebuiltFile(t.Context(), o, desk.Builder{Name: "Harrow Flats Works"}); err != nil || string(data) != "%PDF" {
		t.Fatalf("%q, %v", data, err)
	}
	photos := p.papers[0].Photos
	if len(photos) != 2 || len(photos[0].Data) == 0 || photos[0].Problem != "" || photos[1].Problem != "gone" || photos[0].Stage != lot.After {
		t.Errorf("%d photos, %+v", len(photos), photos[1].Problem)
	}
	if p.papers[0].Builder.Name != "Harrow Flats Works" || p.papers[0].Jobs["r1"] != "Replace the hood" || p.papers[0].Printed != "2026-11-20" {
		t.Errorf("%+v", p.papers[0])
	}
}
