package view_test

import (
	"strings"
	"testing"

	"walkline/ui/view"
	"walkline/valuation"
)

// Every bar of a valued lot's waterfall says what it is and opens to lines that name their figures, every line of the verdict and every
// cause of the doubt has its words, and Why holds each house rule with its ceiling.
func TestEveryFigureOfTheWindowIsNamed(t *testing.T) {
	o := weighed(t)
	w := view.NewWhy(o)
	for _, b := range w.Bars {
		if b.Name == "" || b.Meaning == "" || b.Figure == "" {
			t.Errorf("a bar without words: %+v", b)
		}
		for _, l := range b.Lines {
			if l.What == "" || l.How+l.Money == "" {
				t.Errorf("%s: a line that names nothing: %+v", b.Name, l)
			}
		}
	}
	if len(w.Bars) != len(o.Valued.Answer.Waterfall) {
		t.Errorf("%d bars of %d", len(w.Bars), len(o.Valued.Answer.Waterfall))
	}
	for _, d := range w.Drivers {
		if d.Name == "" {
			t.Errorf("a cause without a name: %+v", d)
		}
	}
	for _, l := range view.NewVerdict(o).Lines {
		if l[1] == "" || view.Help(l[0]) == "" && !strings.HasPrefix(l[0], "Chance of a loss") {
			t.Errorf("a line of the verdict without words: %q", l)
		}
	}
	ceilings := bar(t, w, "Walk-away bid").Lines
	for _, c := range o.Valued.Answer.Ceilings {
		named := false
		for _, l := range ceilings {
			named = named || strings.EqualFold(l.What, valuation.RuleWords[c.Rule])
		}
		if !named {
			t.Errorf("Why holds no ceiling of %s", c.Rule)
		}
	}
}
