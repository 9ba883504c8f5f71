package desk_test

import (
	"strings"
	"testing"

	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/lot"
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

func (p *press) Ledger([]book.Bought) []byte                         { return nil }
func (*press) Shopping([]valuation.Wanted, lot.Date) ([]byte, error) { return []byte("%PDF"), nil }
func (*press) Table([]valuation.Wanted) []byte                       { return []byte("part") }
func (*press) Plan(desk.DayPlan, lot.Date, string) ([]byte, error)   { return []byte("%PDF"), nil }

func (p *press) Decision(_ valuation.Case, a valuation.Answer, printed lot.Date, _ string) ([]byte, error) {
	p.answers, p.printed = append(p.answers, a), printed
	return []byte("%PDF"), nil
}

// A fresh answer is printed as it is; after an edit the lot is valued anew, so that no old verdict reaches the paper.
func TestTheDecisionSheetIsOfTheCaseAsItStands(t *testing.T) {
	p := &press{}
	d := &desk.Desk{Press: p, Today: func() lot.Date { return "2026-11-20" }}
	c := sound("14")
	o := desk.Open{Case: c, Fresh: true, Valued: &desk.Valued{Answer: valuation.Answer{Decision: "as shown"}}}
	if data, err := d.DecisionSheet(t.Context(), o, "a4"); err != nil || string(data) != "%PDF" || p.answers[0].Decision != "as shown" ||
		p.printed != "2026-11-20" {
		t.Errorf("%q, %v, %+v", data, err, p)
	}
	o.Fresh = false
	if _, err := d.DecisionSheet(t.Context(), o, "a4"); err != nil || p.answers[1].Decision != "bid" {
		t.Errorf("%v, %+v", err, p)
	}
	o.Case.Currency = "ZZZ"
	if _, err := d.DecisionSheet(t.Context(), o, "a4"); err == nil || !strings.Contains(err.Error(), "currency") {
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
	u := newUser(t)
	p := &press{}
	u.Press = p
	id := u.newLot()
	s := u.well(desk.AddPhotos(id, kept(t, u.Desk, 1, 2), "12", lot.After))
	u.lose(s.Open.Photos[1].Hash, s.Open.Photos[1].Kind)
	o := desk.OpenBuild{Case: s.Open.Case, Plan: []valuation.PlannedLine{{Line: repair.Line{ID: "r1", Job: "Replace the hood"}}}}
	o.ID = id
	if data, err := u.RebuiltFile(t.Context(), o, desk.Builder{Name: "Harrow Flats Works"}); err != nil || string(data) != "%PDF" {
		t.Fatalf("%q, %v", data, err)
	}
	photos := p.papers[0].Photos
	if len(photos) != 2 || photos[0].Stage != lot.After {
		t.Fatalf("%d photos", len(photos))
	}
	if data, err := photos[0].Read(); err != nil || len(data) == 0 {
		t.Error(err)
	}
	if _, err := photos[1].Read(); err == nil || !strings.Contains(err.Error(), "gone") {
		t.Error(err)
	}
	if p.papers[0].Builder.Name != "Harrow Flats Works" || p.papers[0].Jobs["r1"] != "Replace the hood" ||
		p.papers[0].Printed != "2026-11-20" {
		t.Errorf("%+v", p.papers[0])
	}
}
