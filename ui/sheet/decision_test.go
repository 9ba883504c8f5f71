package sheet_test

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"testing"

	"walkline/ui/damage"
	"walkline/ui/sheet"
	"walkline/valuation"
	"walkline/valuation/checks"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

func TestTheTextReadsBack(t *testing.T) {
	pages := read(t, print(t, example()))
	if len(pages) != 2 {
		t.Fatalf("%d pages", len(pages))
	}
	for _, want := range []string{"Lot 14 · 2019 Ostrane Pell", "VIN 0HFPL4TA0KH000114", "odometer 61,200 mi (actual)", "printed 2026-11-25",
		"brands: Collision",
		"12 front: functional, bolted – grille broken", "engine bay: minor, skin", "Walk-away bid USD 4,600", "Set by: least expected profit",
		"14 %",
		"From the resale price to the bid, USD", "11,180", "-4,610", "row 2 lies far below the others", "First to look at",
		"and 6 more on the next page",
		"Cautions", "– Restraints hold charges.", "Factors used", "Rule: least profit: USD 1,500", "page 1 of 2"} {
		if !strings.Contains(pages[0], want) {
			t.Errorf("the first page lacks %q", want)
		}
	}
	if n := strings.Count(pages[0], "Restraints hold charges."); n != 1 {
		t.Errorf("a caution stands %d times", n)
	}
	for i := range 12 {
		if want := fmt.Sprintf("Is the gap of panel number %d uneven? Sight along both sides of it; a coin is a good gauge.",
			i+1); !strings.Contains(pages[1], want) {
			t.Errorf("the second page lacks %q", want)
		}
	}
	if n := strings.Count(pages[1], "×"); n != 1 || !strings.Contains(pages[1], "page 2 of 2") {
		t.Errorf("%d boxes are ticked, want the one answer; the page reads %q", n, pages[1])
	}
}

func TestARefusedLotSaysSo(t *testing.T) {
	d := example()
	d.Answer.WalkAway, d.Answer.Decision = nil, "do_not_bid"
	d.Answer.Checklist = append([]checks.Item{{ID: "stop_title", Kind: "stop", Text: "The title reads \"junk\".",
		Why: "Ask the agency before any bid."}}, d.Answer.Checklist...)
	d.Answer.Waterfall[3].Amount = *usd(900)
	first := read(t, print(t, d))[0]
	for _, want := range []string{"Do not bid", "STOP. The title reads \"junk\".", "Ask the agency before any bid.", "Expected loss"} {
		if !strings.Contains(first, want) {
			t.Errorf("the first page lacks %q", want)
		}
	}
	if strings.Contains(first, "Expected loss") && strings.Contains(first, "USD 4,600") {
		t.Error("a refused lot shows a bid")
	}
}

// Nothing is cut, however many checks there are: every one is read back, and the pages are numbered through.
func TestManyChecksGoOn(t *testing.T) {
	for _, n := range []int{40, 80, 300} {
		d := example()
		d.Answer.Checklist = looks(n)
		pages := read(t, print(t, d))
		all := strings.Join(pages[1:], " ")
		for i := range n {
			if want := fmt.Sprintf("panel number %d uneven", i+1); !strings.Contains(all, want) {
				t.Errorf("of %d checks the sheet lacks number %d", n, i+1)
			}
		}
		for i, p := range pages {
			if want := fmt.Sprintf("page %d of %d", i+1, len(pages)); !strings.Contains(p, want) {
				t.Errorf("%d checks: no %q", n, want)
			}
		}
		if n == 40 && len(pages) != 2 || len(pages) > 2+n/30 {
			t.Errorf("%d checks take %d pages", n, len(pages))
		}
	}
}

// A lot with everything marked, noted and warned of still loses no word.
func TestACrowdedLotLosesNothing(t *testing.T) {
	d := example()
	d.Case.Damage = nil
	note := strings.Repeat("seen from below and from the side, ", 8)
	for i, area := range lot.Areas {
		d.Case.Damage = append(d.Case.Damage, lot.Damage{Area: area, Extent: lot.Extents[i%3], Depth: lot.Depths[i/3%3],
			Note: note + fmt.Sprint("note ", i)})
		d.Answer.Warnings = append(d.Answer.Warnings, fmt.Sprintf("warning number %d is about what the sale left out of its list", i))
	}
	d.Answer.Hidden.Risks = nil
	for i := range 40 {
		d.Answer.Repair.Lines[0].Caution = "first"
		d.Answer.Repair.Lines = append(d.Answer.Repair.Lines, d.Answer.Repair.Lines[0])
		d.Answer.Repair.Lines[i+2].Caution = fmt.Sprintf("caution number %d asks for gloves, goggles, air and a licensed hand", i)
	}
	all := strings.Join(read(t, print(t, d)), " ")
	for i, area := range lot.Areas {
		for _, want := range []string{damage.Words(d.Case.Damage[i]), fmt.Sprint("note ", i), fmt.Sprintf("warning number %d is", i)} {
			if !strings.Contains(all, want) {
				t.Errorf("area %s: the sheet lacks %q", area, want)
			}
		}
	}
	for i := range 40 {
		if !strings.Contains(all, fmt.Sprintf("caution number %d asks", i)) {
			t.Errorf("the sheet lacks caution %d", i)
		}
	}
	if strings.Contains(all, "continued, continued") {
		t.Error("a heading is continued twice over")
	}
}

func TestLongWordsAreBrokenNotCut(t *testing.T) {
	d := example()
	long := strings.Repeat("Wreckfield", 30)
	d.Case.Lot.Sale, d.Case.Lot.Make, d.Answer.Checklist[0].Text, d.Case.Damage[0].Note = long, long, long, long
	pdf := print(t, d)
	joined := strings.ReplaceAll(strings.Join(read(t, pdf), ""), " ", "")
	if n := strings.Count(joined, long); n < 4 {
		t.Errorf("the long word stands whole %d times, want it in the title, the facts, the damage and the check", n)
	}
	inMargins(t, pdf)
}

// inMargins fails when anything is printed at the very edge of a page, where it would be cut.
func inMargins(t *testing.T, pdf []byte) {
	t.Helper()
	for i := range read(t, pdf) {
		img := picture(t, pdf, i+1)
		w, h := float64(img.Rect.Dx())/dpi*25.4, float64(img.Rect.Dy())/dpi*25.4
		for edge, dark := range map[string]float64{"left": darkness(img, 0, 0, 10, h), "right": darkness(img, w-10, 0, w, h),
			"top": darkness(img, 0, 0, w, 10), "foot": darkness(img, 0, h-8, w, h)} {
			if dark > 0 {
				t.Errorf("page %d: something is printed at the %s edge", i+1, edge)
			}
		}
	}
}

// What the font has is read back as it was; what it lacks leaves a square and a word at the foot.
func TestOtherScripts(t *testing.T) {
	d := example()
	d.Case.Lot.Sale = "Łódź, Østre Ærø, Ёлка, Αθήνα, naïve Straße"
	pages := read(t, print(t, d))
	if !strings.Contains(pages[0], d.Case.Lot.Sale) || strings.Contains(pages[0], "font lacks") {
		t.Errorf("the first page reads %q", pages[0][:200])
	}
	d.Case.Lot.Sale = "Cafe\u0301 東 yard\u200b"
	pages = read(t, print(t, d))
	if !strings.Contains(pages[0], "Café □ yard") || !strings.Contains(pages[0], "□ stands for a character that the font lacks") {
		t.Errorf("the first page reads %q", pages[0])
	}
}

func TestTheSameInputGivesTheSameBytes(t *testing.T) {
	first, again := print(t, example()), print(t, example())
	if !bytes.Equal(first, again) {
		t.Error("two sheets of one lot differ")
	}
	later := example()
	later.Printed = "2026-11-26"
	if bytes.Equal(first, print(t, later)) {
		t.Error("the date printed changes nothing")
	}
	later.Printed = "tomorrow"
	if _, err := sheet.Decision(later); err == nil || !strings.Contains(err.Error(), "tomorrow") {
		t.Errorf("a date that is none: %v", err)
	}
}

// ISO 216: A4 is 210 x 297 mm, 595 x 842 points; Letter is 8.5 x 11 inches, 612 x 792 points.
func TestPaperFollowsTheCurrency(t *testing.T) {
	for _, c := range []struct {
		currency string
		paper    sheet.Paper
		w, h     int
	}{{"USD", sheet.Paper{}, 612, 792}, {"EUR", sheet.Paper{}, 595, 842}, {"CAD", sheet.Paper{}, 612, 792}, {"USD", sheet.A4, 595, 842}} {
		d := example()
		d.Case.Currency, d.Answer.Currency, d.Paper = c.currency, c.currency, c.paper
		size := picture(t, print(t, d), 1).Rect.Size().Div(dpi / 72)
		if abs(size.X-c.w) > 1 || abs(size.Y-c.h) > 1 {
			t.Errorf("%s on %q: %v points, want %d x %d", c.currency, c.paper.Name, size, c.w, c.h)
		}
	}
	if p, ok := sheet.PaperNamed("letter"); !ok || p != sheet.Letter {
		t.Error("no paper called letter")
	}
	if _, ok := sheet.PaperNamed("foolscap"); ok {
		t.Error("a paper called foolscap")
	}
}

func abs(x int) int { return max(x, -x) }

// In grey print the front's cell (12, above the vehicle) darkens with each extent, and no two depths look alike.
func TestExtentsAndDepthsAreToldApartInGrey(t *testing.T) {
	front := func(extent, depth string) float64 {
		d := example()
		d.Case.Damage = []lot.Damage{{Area: "12", Extent: extent, Depth: depth}}
		return darkness(picture(t, print(t, d), 1), 36, 37, 48, 46)
	}
	var extents, depths []float64
	extents = append(extents, front("", ""))
	for _, e := range lot.Extents {
		extents = append(extents, front(e, "skin"))
	}
	for i := 1; i < len(extents); i++ {
		if extents[i] < 1.2*extents[i-1] {
			t.Errorf("extent %d is hardly darker than the one before: %.3f after %.3f", i, extents[i], extents[i-1])
		}
	}
	for _, depth := range lot.Depths {
		depths = append(depths, front("minor", depth))
	}
	slices.Sort(depths)
	if depths[1] < 1.05*depths[0] || depths[2] < 1.05*depths[1] {
		t.Errorf("two depths look alike: %.3f", depths)
	}
}

// The sheet names what a bid still needs, every plan with its bid, and where to stop.
func TestTheSheetSaysPlansAndWhatIsMissing(t *testing.T) {
	d := example()
	line := 4300.0
	d.Answer.Plan, d.Answer.StopLine, d.Answer.StopWay, d.Answer.StopChance = valuation.Rebuild, &line, valuation.ForParts, .2
	d.Answer.Plans = map[string]*money.Amount{valuation.Rebuild: d.Answer.WalkAway, valuation.ForParts: usd(900)}
	first := read(t, print(t, d))[0]
	for _, want := range []string{"Plan: rebuild USD 4,600", "Plan: for parts USD 900", "more than USD 4,300 still to spend"} {
		if !strings.Contains(first, want) {
			t.Errorf("the first page lacks %q", want)
		}
	}
	for _, n := range valuation.Defaults().Needs() {
		d.Answer.Needs, d.Answer.Reasons = append(d.Answer.Needs, n), append(d.Answer.Reasons, n.Text)
	}
	first = strings.Join(strings.Fields(read(t, print(t, d))[0]), " ")
	for _, n := range d.Answer.Needs {
		if !strings.Contains(first, n.Text) {
			t.Errorf("the first page lacks %q", n.Text)
		}
	}
	if strings.Contains(first, "Chance of a loss") {
		t.Error("a lot that nobody described has a chance of a loss")
	}
}

// What the survey says stands on paper in words, for the decision and for the inspection; what nobody entered is not said.
func TestTheSurveyIsPrinted(t *testing.T) {
	hours := 12.0
	d := example()
	d.Case.Survey = &lot.Survey{Kind: "pickup", Powertrain: "hybrid", Doors: 4, Missing: []string{"wheels", "catalytic_converter"},
		Water: &lot.Water{Height: "dash", Kind: "salt", Hours: &hours},
		Hail:  &lot.Hail{Count: "many", Size: "medium", Each: map[string]lot.Dents{"roof": {Count: "beaten"}}, Left: true},
		Fire:  &lot.Fire{Reach: "smoke", Where: []string{"interior"}}, Causes: []string{"oil_starved"}}
	r := rebuilt(t)
	r.Lot.Survey = d.Case.Survey
	for _, first := range []string{read(t, print(t, d))[0], read(t, printRebuilt(t, r))[0]} {
		for _, want := range []string{"kind: pickup", "powertrain: hybrid", "doors: 4", "Missing parts: wheels, catalytic converter",
			"Water: to the dash, salt, under water 12 h",
			"Hail: many, to about 75 a panel, medium, to 35 mm; roof beaten, more a panel; the dents stay",
			"Fire and smoke: smoke only: interior", "Mechanical: ran low on oil"} {
			if !strings.Contains(first, want) {
				t.Errorf("the first page lacks %q in %q", want, first)
			}
		}
		if strings.Contains(first, "paint:") || strings.Contains(first, damage.NotKnown) && strings.Contains(first, "roads it was driven on") {
			t.Error("what is not known is printed")
		}
	}
}

// What a run list says is printed as the list's word, in the list's money; where it says nothing, nothing is.
func TestTheListsWordIsPrinted(t *testing.T) {
	d, before := example(), 12500.0
	if first := read(t, print(t, d))[0]; strings.Contains(first, "The list says") {
		t.Error("a lot of no list is said to be listed")
	}
	d.Case.Lot.Listed = &lot.Listed{Areas: []string{"12"}, ValueBefore: &before, Currency: "EUR", Note: "no battery"}
	const says = "The list says: damage at 12 front · value before EUR 12,500 · no battery"
	if first := strings.Join(strings.Fields(read(t, print(t, d))[0]), " "); !strings.Contains(first, says) {
		t.Errorf("%q is missing from %q", says, first)
	}
}
