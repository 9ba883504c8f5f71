package view_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"walkline/ui/desk"
	"walkline/ui/view"
	"walkline/valuation"
	"walkline/valuation/bid"
	"walkline/valuation/hidden"
	"walkline/valuation/invoice"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
)

// weighed is a lot with something in every bar, valued. Every figure is made up.
func weighed(t *testing.T) desk.Open {
	t.Helper()
	c := valuation.Defaults()
	c.Currency, c.ValuedOn, c.Lot.Number, c.Lot.Make = "USD", "2026-11-20", "27", "Kettrick"
	c.Repair.UseCatalogue, c.Hidden.UseCatalogue, c.Run.Scenarios = false, false, 1024
	c.Resale.Guess = &prob.Three{Low: 11000, Likely: 13000, High: 15000}
	c.Buying.BidSteps, c.Buying.Fixed = []invoice.Step{{Step: 2500}}, []invoice.Fixed{{Name: "Gate", Amount: 7500}}
	c.Buying.Freight = prob.Three{Low: 150, Likely: 200, High: 300}
	c.Buying.Storage = valuation.Storage{PerDay: 20, FreeDays: 2, Days: prob.Certain(4)}
	c.Time.HoldingPerDay, c.Time.CapitalRate, c.Time.DaysToSell = 5, .1, prob.Three{Low: 10, Likely: 20, High: 40}
	c.Selling = valuation.Selling{Percent: .05, Flat: 100}
	others := 4
	c.Market.Rivals = &others
	c.Labour.Rates = map[string]float64{"body": 40}
	c.Repair.Lines = []repair.Line{{ID: "a", Job: "Hang a door", Area: "09", Outside: prob.Certain(300)},
		{ID: "b", Job: "Pull the rocker", Area: "09", Hours: map[string]prob.Three{"body": prob.Certain(20)}, Why: "it is folded",
			Caution: "the maker decides."}}
	c.Hidden.Risks = []hidden.Risk{{ID: "r", Name: "Rail bent", Chance: hidden.Beta{A: 1, B: 3},
		Cost: prob.Three{Low: 300, Likely: 900, High: 2000}}}
	c.Rules = bid.Rules{MinProfit: usd(1000), MaxLossChance: fraction(.3), MaxDays: fraction(400)}
	v, err := (&desk.Desk{}).Value(t.Context(), c)
	if err != nil {
		t.Fatal(err)
	}
	return desk.Open{ID: 27, Case: c, Valued: &v, Fresh: true, Revision: 1}
}

func fraction(x float64) *float64 { return &x }

func bar(t *testing.T, w view.Why, name string) view.WhyBar {
	t.Helper()
	for _, b := range w.Bars {
		if b.Name == name {
			return b
		}
	}
	t.Fatalf("no bar %q", name)
	return view.WhyBar{}
}

func TestEveryBarOpensItsLines(t *testing.T) {
	w := view.NewWhy(weighed(t))
	if !w.Settled || len(w.Bars) != 13 {
		t.Fatalf("%+v", w)
	}
	for name, want := range map[string][]string{
		"Resale": {"On average", "your own guess", "8 times in 10"}, "Selling": {"5.0 % of", "at any price", "100"},
		"Repair":        {"Pull the rocker", "20.0 h", "800", "Hang a door", "300", "At 09 left side. It is folded The maker decides."},
		"Hidden damage": {"Rail bent", "25 % × "},
		"Freight":       {"150, 200, 300"}, "Storage": {"after 2 free days", "4"}, "Holding": {"A day", "5", "Days until sold"},
		"Capital": {"10 %", "Of the invoice total"}, "Winner's allowance": {"4 others and you", "× 0.344"},
		"Growing older": {"not known", "Days until sold"}, "Fees and tax": {"Gate", "75", "Invoice total"},
		"Expected profit": {"Chance of a loss", "Per hour of mine", "Worst tenth"},
		"Walk-away bid":   {"Least expected profit", "any bid", "sets the bid"},
	} {
		b := bar(t, w, name)
		var said []string
		for _, l := range b.Lines {
			said = append(said, l.What, l.How, l.Money, l.Note)
		}
		all := strings.Join(said, " | ")
		for _, words := range want {
			if !strings.Contains(all, words) {
				t.Errorf("%s: %q is missing from %q", name, words, all)
			}
		}
		if b.Meaning == "" {
			t.Errorf("%s says nothing of itself", name)
		}
	}
}

// The dearest line stands first, and costs stand as they are, not as they are taken off.
func TestTheFallReadsAsCosts(t *testing.T) {
	w := view.NewWhy(weighed(t))
	r := bar(t, w, "Repair")
	if r.Lines[0].What != "Pull the rocker" || r.Text != "-1,100" || r.Figure != "USD 1,100" || r.Amount != -1100 {
		t.Errorf("%+v", r)
	}
	if p := bar(t, w, "Expected profit"); strings.Contains(p.Figure, "-") || !strings.HasPrefix(p.Text, "-") {
		t.Errorf("%+v", p)
	}
	sum := 0.0
	for _, d := range w.Drivers {
		if d.Meaning == "" {
			t.Errorf("%s means nothing", d.Name)
		}
		sum += d.Part
	}
	if math.Abs(sum-1) > .01 {
		t.Errorf("the drivers come to %g", sum)
	}
}

// The lines tell of what was valued, not of what was typed since.
func TestAnEditDoesNotMixIntoTheOldFigures(t *testing.T) {
	o := weighed(t)
	before := view.NewWhy(o)
	o.Case = o.Case.Clone()
	o.Case.Selling.Percent, o.Fresh = .2, false
	after := view.NewWhy(o)
	if after.Settled || !slices.Equal(bar(t, before, "Selling").Lines, bar(t, after, "Selling").Lines) {
		t.Errorf("settled %v, %+v", after.Settled, bar(t, after, "Selling").Lines)
	}
}

func TestWhyOfAnUnfinishedLot(t *testing.T) {
	w := view.NewWhy(desk.Open{Faults: []valuation.Fault{{Key: "resale"}}})
	if len(w.Bars) != 0 || len(w.Next) == 0 || !strings.HasPrefix(w.Next[len(w.Next)-1], "Resale: ") || w.Headline != "" {
		t.Errorf("%+v", w)
	}
}

// A line that the user calls "Storage" is a line: it doesn't get the yard's explanation, nor does one called "Everything else".
func TestDriversAreToldApartByTheirKind(t *testing.T) {
	for _, name := range []string{"Storage", "Freight", "Everything else", "Resale price"} {
		o := weighed(t)
		o.Case.Repair.Lines[0].Job, o.Case.Repair.Lines[0].Outside = name, prob.Three{Low: 100, Likely: 900, High: 4000}
		v, err := (&desk.Desk{}).Value(t.Context(), o.Case)
		if err != nil {
			t.Fatal(err)
		}
		o.Valued = &v
		said := map[string]bool{}
		for _, d := range view.NewWhy(o).Drivers {
			if d.Name == name {
				said[d.Meaning] = true
			}
		}
		if !said["How far this one job or risk may stray by itself."] {
			t.Errorf("%q is said to be %v", name, said)
		}
	}
}

// An answer that an older version wrote has no kinds: its bars are told by the names that they had.
func TestBarsOfAnOlderAnswerAreKnown(t *testing.T) {
	o := weighed(t)
	want := view.NewWhy(o)
	for i := range o.Valued.Answer.Waterfall {
		if o.Valued.Answer.Waterfall[i].Kind == "" {
			t.Errorf("%s has no kind", o.Valued.Answer.Waterfall[i].Name)
		}
		o.Valued.Answer.Waterfall[i].Kind = ""
	}
	for i, b := range view.NewWhy(o).Bars {
		if b.Meaning == "" || b.Meaning != want.Bars[i].Meaning || len(b.Lines) != len(want.Bars[i].Lines) {
			t.Errorf("%s: %+v", b.Name, b)
		}
	}
}
