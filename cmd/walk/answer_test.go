package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"reflect"
	"regexp"
	"strings"
	"testing"

	"walkline/assets"
	"walkline/store/casefile"
	"walkline/ui/desk"
	"walkline/ui/sheet"
	"walkline/ui/view"
	"walkline/valuation"
	"walkline/valuation/money"
	"walkline/valuation/prob"
)

// place is where an answer is shown, as lines of text; a line of a table has its headings before it.
type place struct {
	name  string
	lines []string
}

// shown says with which words a figure of the answer stands in each place: the terminal, the verdict, Why and the sheet. {Field} is a
// field beside the figure. Empty: that place does not show it.
var shown = map[string][4]string{
	"WalkAway":       {"Walk-away bid", "Walk-away bid", "down to", "Walk-away bid"},
	"Ceilings.Bid":   {"{Rule}", "", "Walk-away bid", "{Rule}"},
	"Resale.Mean":    {"Resale price", "", "Resale | On average", "Resale"},
	"Resale.P10":     {"Resale price", "Resale, 8 times in 10", "Resale | 8 times in 10", "Resale, 8 times in 10"},
	"Resale.P50":     {"Half sell below", "", "Resale | Middle", ""},
	"Resale.P90":     {"Resale price", "Resale, 8 times in 10", "Resale | 8 times in 10", "Resale, 8 times in 10"},
	"Repair.Mean":    {"Repair", "", "Repair", "Repair"},
	"Repair.P10":     {"Repair", "", "Repair | All of it, 8 times in 10", ""},
	"Repair.P90":     {"Repair", "", "Repair | All of it, 8 times in 10", ""},
	"Hidden.Mean":    {"Hidden damage", "", "Hidden damage", "Hidden damage"},
	"Hidden.P10":     {"Hidden damage", "", "Hidden damage | All of it, 8 times in 10", ""},
	"Hidden.P90":     {"Hidden damage", "", "Hidden damage | All of it, 8 times in 10", ""},
	"Days.Mean":      {"Days until sold", "", "", ""},
	"Days.P10":       {"Days until sold", "Days until sold", "Days until sold", "Days until sold"},
	"Days.P90":       {"Days until sold", "Days until sold", "Days until sold", "Days until sold"},
	"Hours.Mean":     {"Your hours", "My hours", "own work", "My hours"},
	"Hours.P10":      {"Your hours", "", "My hours, 8 times in 10", ""},
	"Hours.P90":      {"Your hours", "", "My hours, 8 times in 10", ""},
	"Labour.Mean":    {"Your labor", "", "own work", ""},
	"Labour.P10":     {"Your labor", "", "My hours, 8 times in 10", ""},
	"Labour.P90":     {"Your labor", "", "My hours, 8 times in 10", ""},
	"Profit.Mean":    {"expected profit", "Expected profit", "Expected profit | On average", "Expected profit"},
	"Profit.P05":     {"1 in 20 below", "", "1 time in 20 below", ""},
	"Profit.P10":     {"Profit", "Profit, 8 times in 10", "Expected profit | 8 times in 10", "Profit, 8 times in 10"},
	"Profit.P50":     {"half below", "", "Expected profit | Middle", ""},
	"Profit.P90":     {"Profit", "Profit, 8 times in 10", "Expected profit | 8 times in 10", "Profit, 8 times in 10"},
	"Profit.Margin":  {"margin", "", "Expected profit | Margin", "margin"},
	"Profit.PerHour": {"Per hour of mine", "Per hour of mine", "Per hour of mine", "Per hour of mine"},

	"Profit.LossChance":        {"chance of a loss", "Chance of a loss", "Chance of a loss", "Chance of a loss"},
	"Profit.WorstTenth":        {"worst tenth", "", "Worst tenth", "worst tenth"},
	"Repair.Lines.Mean":        {"{Job}", "", "Repair | {Job}", ""},
	"Repair.Lines.Hours":       {"{Job}", "", "Repair | {Job}", ""},
	"Hidden.Risks.Chance":      {"{Name}", "", "Hidden damage | {Name}", ""},
	"Acquisition.Bid":          {"Invoice at", "", "hammer price", "Invoice at"},
	"Acquisition.Total":        {"Total", "", "Invoice total", "Invoice total"},
	"Acquisition.Lines.Amount": {"{Name}", "", "{Name}", "{Name}"},
	"Ladder.Bid":               {"Bid", "", "", "Bid"},
	"Ladder.Acquisition":       {"invoice", "", "", "invoice"},
	"Ladder.MeanProfit":        {"profit", "", "", "profit"},
	"Ladder.LossChance":        {"loss", "", "", "loss"},
	"Ladder.WorstTenth":        {"worst tenth", "", "", "worst tenth"},
	"Ladder.Margin":            {"margin", "", "", "margin"},
	"Ladder.PerHour":           {"per hour", "", "", "per hour"},
	"Waterfall.Amount":         {"{Name}", "", "{Name}", "{Name}"},
	"Drivers.Share":            {"{Name}", "", "{Name}", ""},
	"Checklist.Worth":          {"{Text}", "", "", ""},
	"Checklist.Minutes":        {"{Text}", "", "", ""},
	"Looks.Perfect":            {"know of every risk", "", "", ""},
	"Looks.Best.Minutes":       {"best", "", "", ""},
	"Looks.Best.Spent":         {"best", "", "", ""},
	"Looks.Best.Worth":         {"together worth", "", "", ""},
	"TotalLoss.Repair":         {"Total loss: repair", "", "", ""},
	"TotalLoss.Value":          {"Total loss: repair", "", "", ""},
	"TotalLoss.Salvage":        {"Salvage value", "", "", ""},
	"Plans":                    {"{key}", "{key}", "", "Plan: {key}"},
	"StopLine":                 {"stop line", "Stop line", "Stop line", "Stop line"},
	"StopChance":               {"of 100 cases", "of 100 cases", "How often", "of 100 cases"},
	"WayOutWorth":              {"walk-away bid", "walk-away bid", "Worth of the walk-away bid", "walk-away bid"},
	"WinChance":                {"chance to win", "Chance to win", "", "Chance to win"},
	"ExpectedGain":             {"expected gain", "Expected gain", "", "Expected gain"},

	"Hidden.Risks.MeanIfPresent": {"{Name}", "", "Hidden damage | {Name}", ""},
}

// unshown are the numbers of the answer that are no figures of the decision, or that other pages show: a table's rows, what a list of
// papers asks for.
var unshown = regexp.MustCompile(`^(Resale\.(RowsUsed|Adjusted|Warnings)|Checklist\.(Most|Fee))`)

// figure is one number of the answer, with the ways in which it may be written and the words beside it.
type figure struct {
	path    string
	written []string
	beside  map[string]string
}

// figuresOf walks a value and returns every number in it; what is nothing is no figure.
func figuresOf(v reflect.Value, path string, cur money.Currency, beside map[string]string) []figure {
	switch x := v.Interface().(type) {
	case money.Amount:
		return one(path, cur.Major(x), []string{cur.Text(x), cur.Group(x), cur.Show(x)}, cur, beside)
	case float64:
		return one(path, x, nil, cur, beside)
	case int:
		return one(path, float64(x), nil, cur, beside)
	}
	var out []figure
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			return figuresOf(v.Elem(), path, cur, beside)
		}
	case reflect.Slice:
		for i := range v.Len() {
			out = append(out, figuresOf(v.Index(i), path, cur, beside)...)
		}
	case reflect.Map:
		for _, key := range v.MapKeys() {
			out = append(out, figuresOf(v.MapIndex(key), path, cur, map[string]string{"key": key.String()})...)
		}
	case reflect.Struct:
		names := map[string]string{}
		for i := range v.NumField() {
			if k := v.Field(i).Kind(); k == reflect.String || k == reflect.Bool {
				names[v.Type().Field(i).Name] = fmt.Sprint(v.Field(i))
			}
		}
		for i := range v.NumField() {
			f := v.Type().Field(i)
			at := strings.TrimPrefix(path+"."+f.Name, ".")
			if f.Anonymous {
				at = path
			}
			out = append(out, figuresOf(v.Field(i), at, cur, names)...)
		}
	}
	return out
}

func one(path string, x float64, exact []string, cur money.Currency, beside map[string]string) []figure {
	if x == 0 {
		return nil
	}
	return []figure{{path, append(exact, cur.Whole(x), cur.Whole(-x), fmt.Sprintf("%.0f", x), fmt.Sprintf("%.1f", x),
		fmt.Sprintf("%.1f %%", 100*x),
		fmt.Sprintf("%.0f %%", 100*x), view.Percent(x), fmt.Sprintf("%.0f of 100", 100*x), "below "+cur.Code+" 1"), beside}}
}

// stands reports whether a line names the figure and has it.
func (f figure) stands(words string, lines []string) bool {
	for name, value := range f.beside {
		if said, known := valuation.RuleWords[value]; known {
			value = said
		}
		words = strings.ReplaceAll(words, "{"+name+"}", value)
	}
	for _, l := range lines {
		if !strings.Contains(strings.ToLower(l), strings.ToLower(words)) {
			continue
		}
		for _, w := range f.written {
			if strings.Contains(l, w) {
				return true
			}
		}
	}
	return false
}

// Every figure of an answer stands in the terminal, the verdict, Why and the sheet behind the words that say what it is of, or is said not
// to be shown there. A new figure of the answer fails until it is.
func TestEveryFigureOfTheAnswerNamesItsPart(t *testing.T) {
	seen := map[string]bool{}
	for _, wreck := range []string{"02b_heavy_front_no_bags", "14b_mech_enginebay_dis", "20_hybrid_front_heavy"} {
		c, a := stopping(t, wreck)
		cur, _ := money.Lookup(a.Currency)
		places := []place{{"the terminal", paragraphs(text(c, a))}, {"the verdict", verdictLines(c, a)}, {"Why", whyLines(c, a)},
			{"the sheet", sheetLines(t, c, a)}}
		for _, f := range figuresOf(reflect.ValueOf(a), "", cur, nil) {
			if !unshown.MatchString(f.path) && f.beside["Any"] != "true" { // a rule that holds at any bid has no ceiling to show
				seen[f.path] = true
				f.look(t, places)
			}
		}
	}
	for path := range shown {
		if !seen[path] {
			t.Errorf("the answer has no %s: the lots of this test show nothing of it", path)
		}
	}
}

// look reports where a figure is not shown with its words.
func (f figure) look(t *testing.T, places []place) {
	t.Helper()
	words, known := shown[f.path]
	if !known {
		t.Errorf("%s is a figure of the answer that no place names", f.path)
	}
	for i, p := range places {
		if words[i] != "" && len(p.lines) > 0 && !f.stands(spoken(f, words[i]), p.lines) {
			t.Errorf("%s does not show %s (%q, %v) as %q", p.name, f.path, f.written[:3], f.beside, words[i])
		}
	}
}

// spoken puts the words of a plan for its key.
func spoken(f figure, words string) string {
	name := map[string]string{valuation.Rebuild: "rebuild", valuation.AsItStands: "as it stands",
		valuation.ForParts: "for parts"}[f.beside["key"]]
	return strings.ReplaceAll(words, "{key}", name)
}

// stopping is a wreck with every plan, whose strip-down may stop it, whose hammer price is guessed.
func stopping(t *testing.T, wreck string) (valuation.Case, valuation.Answer) {
	t.Helper()
	data, err := os.ReadFile("../../testdata/wrecks/" + wreck + ".json")
	if err != nil {
		t.Fatal(err)
	}
	c, faults := casefile.Read(data)
	k, more := casefile.Knowledge(assets.Jobs(), assets.Risks(), assets.ResalePrior(), assets.Jurisdictions()...)
	if len(faults)+len(more) > 0 {
		t.Fatal(faults, more)
	}
	c.WaysOut.AsItStands.Money = &prob.Three{Low: 1500, Likely: 2500, High: 3500}
	c.WaysOut.ForParts.Money = &prob.Three{Low: 2500, Likely: 3500, High: 4500}
	c.Resale.YearlyChange = &prob.Three{Low: -.12, Likely: -.1, High: -.07}
	a, err := valuation.Value(c, k)
	if err != nil || a.WalkAway == nil {
		t.Fatal(a.Reasons, err)
	}
	return c, a
}

// paragraphs are the lines of a text, each with the first line of its paragraph before it.
func paragraphs(text string) []string {
	var out []string
	for _, p := range strings.Split(text, "\n\n") {
		lines := strings.Split(p, "\n")
		for _, l := range lines {
			out = append(out, lines[0]+" | "+l)
		}
	}
	return out
}

func verdictLines(c valuation.Case, a valuation.Answer) []string {
	v := view.NewVerdict(opened(c, a))
	out := []string{v.Headline + " | " + v.Figure, v.Stop}
	for _, l := range v.Lines {
		out = append(out, l[0]+" | "+l[1])
	}
	for _, p := range v.Plans {
		out = append(out, p.Name+" | "+p.Bid)
	}
	return out
}

func opened(c valuation.Case, a valuation.Answer) desk.Open {
	return desk.Open{Case: c, Fresh: true, Valued: &desk.Valued{Answer: a, Of: c}}
}

func whyLines(c valuation.Case, a valuation.Answer) []string {
	w := view.NewWhy(opened(c, a))
	out := []string{w.Headline}
	for _, b := range w.Bars {
		out = append(out, b.Name+" | "+b.Figure+" | "+b.Text)
		for _, l := range b.Lines {
			out = append(out, strings.Join([]string{b.Name, l.What, l.How, l.Money}, " | "))
		}
	}
	for _, d := range w.Drivers {
		out = append(out, fmt.Sprintf("%s | %s", d.Name, view.Percent(d.Part)))
	}
	return out
}

// sheetLines are the lines of the decision sheet, each with the one before it, for a label may stand above its figure; none without
// poppler.
func sheetLines(t *testing.T, c valuation.Case, a valuation.Answer) []string {
	t.Helper()
	if _, err := exec.LookPath("pdftotext"); err != nil {
		t.Log("no pdftotext here: the sheet is not looked at (.ci/setup test brings it)")
		return nil
	}
	pdf, err := sheet.Decision(sheet.Lot{Case: c, Answer: a, Printed: "2026-11-27"})
	path := filepath.Join(t.TempDir(), "sheet.pdf")
	if err == nil {
		err = os.WriteFile(path, pdf, 0o600)
	}
	if err != nil {
		t.Fatal(err)
	}
	text, err := exec.Command("pdftotext", "-raw", path, "-").Output()
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(strings.ReplaceAll(string(text), "\u00a0", " "), "\n")
	out := []string{}
	for i := range lines {
		out = append(out, strings.Join(lines[max(0, i-2):i+1], " "))
	}
	return out
}
