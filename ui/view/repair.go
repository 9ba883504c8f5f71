package view

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"walkline/ui/damage"
	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/lot"
	"walkline/valuation/repair"
)

// RepairColumns are the columns of the table of repair lines.
var RepairColumns = []Column{
	{"Area", false, 62}, {"Work", false, 220}, {"Needed", true, 62}, {"Hours", true, 50}, {"Cost", true, 62}, {"Whose", false, 62},
}

// narrowAreas are words for areas in the narrow column of the table.
var narrowAreas = map[string]string{"undercarriage": "under", "interior": "inside", "engine_bay": "engine", "electrical": "wiring",
	"battery_pack": "battery"}

// RepairRow is one repair line with what it is expected to take.
type RepairRow struct {
	Line      repair.Line
	Catalogue bool // as the catalogue has it
	Cells     []string
}

// Repair returns the repair lines of the last valuation, or the user's own where there is none.
func Repair(o desk.Open) []RepairRow {
	o = o.Worked()
	p := NewPurse(o.Case.Currency)
	figures := map[string]valuation.LineFigure{}
	var plan []valuation.PlannedLine
	if o.Valued != nil {
		plan = o.Valued.Plan
		for _, f := range o.Valued.Answer.Repair.Lines {
			figures[f.ID] = f
		}
	} else {
		for _, l := range o.Case.Repair.Lines {
			plan = append(plan, valuation.PlannedLine{Line: l})
		}
	}
	plan = slices.Clone(plan)
	slices.SortStableFunc(plan, func(a, b valuation.PlannedLine) int { return cmp.Compare(areaRank(a.Area), areaRank(b.Area)) })
	rows := make([]RepairRow, len(plan))
	for i, l := range plan {
		from := "yours"
		if l.Catalogue {
			from = "starter"
		}
		area := cmp.Or(narrowAreas[l.Area], damage.Short(l.Area))
		rows[i] = RepairRow{l.Line, l.Catalogue, []string{area, l.Job, Percent(repair.Or(l.Chance, 1)), "", "", from}}
		if f, ok := figures[l.ID]; ok {
			rows[i].Cells[3], rows[i].Cells[4] = fmt.Sprintf("%.1f", f.Hours), p.Whole(f.Mean)
		}
	}
	return rows
}

// areaRank is the place of an area in the order of the survey; what has none comes last.
func areaRank(area string) int {
	if at := slices.Index(lot.Areas, area); at >= 0 {
		return at
	}
	return len(lot.Areas)
}

// RepairHours says how many hours of each trade the known work is expected to take.
func RepairHours(o desk.Open) string {
	o = o.Worked()
	if o.Valued == nil {
		return ""
	}
	hours := map[string]float64{}
	for _, l := range o.Valued.Plan {
		for trade, h := range l.Hours {
			hours[trade] += repair.Or(l.Chance, 1) * h.Mean()
		}
	}
	var parts []string
	for _, trade := range lot.Trades {
		if hours[trade] >= 0.05 {
			parts = append(parts, fmt.Sprintf("%s %.1f", trade, hours[trade]))
		}
	}
	if len(parts) == 0 {
		return ""
	}
	return "Hours expected by trade: " + strings.Join(parts, ", ") + "."
}

// RepairTotals says what the known work and the hidden damage take, in words.
func RepairTotals(o desk.Open) string {
	o = o.Worked()
	if o.Valued == nil {
		return ""
	}
	a, p := o.Valued.Answer, NewPurse(o.Case.Currency)
	return fmt.Sprintf("Known work %s expected, 8 times in 10 from %s. Hidden damage %s expected, 9 times in 10 below %s. Your labor %s of "+
		"it.",
		p.Code+" "+p.Whole(a.Repair.Mean), p.Range(a.Repair.P10, a.Repair.P90), p.Whole(a.Hidden.Mean), p.Whole(a.Hidden.P90),
		p.Whole(a.Labour.Mean))
}

// RiskColumns are the columns of the table of hidden risks.
var RiskColumns = []Column{{"Hidden damage", false, 260}, {"Chance", true, 70}, {"If there", true, 80}, {"Expected", true, 80}}

// Risks returns the hidden risks of the last valuation.
func Risks(o desk.Open) [][]string {
	o = o.Worked()
	if o.Valued == nil {
		return nil
	}
	p := NewPurse(o.Case.Currency)
	var rows [][]string
	for _, r := range o.Valued.Answer.Hidden.Risks {
		rows = append(rows, []string{r.Name, Percent(r.Chance), p.Whole(r.MeanIfPresent), p.Whole(r.Chance * r.MeanIfPresent)})
	}
	return rows
}

// SourceWords says the source of a part in words.
func SourceWords(source string) string {
	switch source {
	case "new_maker":
		return "new, maker's"
	case "new_aftermarket":
		return "new, aftermarket"
	case "donor":
		return "donor vehicle"
	case "made":
		return "made in the shop"
	case repair.HandSource:
		return "in hand"
	}
	return Words(source)
}

// Cautions returns the cautions of the last valuation, each sentence once.
func Cautions(o desk.Open) []string {
	if o = o.Worked(); o.Valued == nil {
		return nil
	}
	return o.Valued.Answer.Cautions()
}
