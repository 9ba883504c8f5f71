package view_test

import (
	"slices"
	"strings"
	"testing"

	"walkline/ui/desk"
	"walkline/ui/view"
	"walkline/valuation"
	"walkline/valuation/checks"
	"walkline/valuation/hidden"
	"walkline/valuation/prob"
)

func worth(x float64) *float64 { return &x }

// valuedChecks is a lot whose answer holds some checks.
func valuedChecks(items ...checks.Item) desk.Open {
	c := valuation.Case{Currency: "USD", Findings: map[string]string{"done": "yes"}}
	c.Market.HammerGuess = &prob.Three{Low: 1000, Likely: 2000, High: 3000}
	a := valuation.Answer{Currency: "USD", Checklist: items, Looks: checks.Looks{Basis: checks.Guess, Perfect: worth(.2),
		Best: []checks.Round{{Minutes: 10, Spent: 7, Worth: 31.4, Looks: []string{"a", "b"}}, {Minutes: 20}}}}
	a.Hidden.Risks = []valuation.RiskFigure{{ID: "r", Name: "Rail"}}
	return desk.Open{Case: c, Valued: &desk.Valued{Of: c, Answer: a}}
}

func TestFirstChecksAreThoseThatMayChangeTheBid(t *testing.T) {
	o := valuedChecks(checks.Item{ID: "vin", Kind: "title", Fixed: true}, checks.Item{ID: "lien", Kind: "title"},
		checks.Item{ID: "list", Kind: "paper", Tick: true},
		checks.Item{ID: "worth", Kind: "inspection", Worth: worth(12.3), Minutes: 2},
		checks.Item{ID: "idle", Kind: "inspection", Worth: worth(0)},
		checks.Item{ID: "done", Kind: "inspection", Risks: []string{"r"}})
	var ids []string
	for _, c := range view.FirstChecks(o) {
		ids = append(ids, c.ID)
	}
	if !slices.Equal(ids, []string{"worth", "lien", "idle"}) {
		t.Errorf("%v", ids)
	}
	_, items := view.Checks(o)
	if items[3].Worth != "worth USD 12" || items[3].Minutes != "2 min" || items[4].Worth != "can't change the bid" ||
		!slices.Equal(items[5].Seen, []view.Seen{{Risk: "r", Name: "Rail"}}) {
		t.Errorf("%+v", items[3:])
	}
}

func TestChecksPageSaysWhatTheWorthRestsOn(t *testing.T) {
	o := valuedChecks()
	p := view.NewChecksPage(o)
	if !strings.Contains(p.Basis, "from 1,000 to 3,000, most likely at 2,000 (your guess)") ||
		!strings.Contains(p.Basis, "would hardly change this bid") {
		t.Error(p.Basis)
	}
	if !slices.Equal(p.Rounds, []string{"Best 10 minutes: 2 looks, 7 min, together worth USD 31"}) {
		t.Error(p.Rounds)
	}
	if view.NewChecksPage(desk.Open{}).Known {
		t.Error("known without a valuation")
	}
}

func TestTotalLossInWords(t *testing.T) {
	o := valuedChecks()
	source := checks.Source{Citation: "Code of Ala. 32-8-87", Status: "read", Read: "2026-11-25"}
	o.Valued.Answer.TotalLoss = &valuation.TotalLoss{Repair: 750000, Value: 1000000, Callings: []checks.Calling{
		{Where: "Alabama", Name: "total loss", Applies: true, Test: "repair at 75 % of the value or more", Note: "N.", Source: source},
		{Where: "Elsewhere", Name: "salvage", Unknown: true}, {Where: "Iowa", Name: "salvage"}}}
	loss := view.NewChecksPage(o).Loss
	for i, want := range []string{"Repair USD 7,500 at your own rates, hidden damage counted in, is 75 % of about USD 10,000, the price " +
		"with a clear title",
		"Alabama, total loss: reached. The rule is: repair at 75 % of the value or more. N. Code of Ala. 32-8-87, read 2026-11-25: check with " +
			"the agency.",
		"Elsewhere, salvage: not known without the salvage value", "Iowa, salvage: not reached"} {
		if !strings.HasPrefix(loss[i], want) {
			t.Errorf("%q, want %q", loss[i], want)
		}
	}
}

func TestWalkFollowsTheCatalogue(t *testing.T) {
	looks := []view.Check{{ID: "c", Where: "rear", Answer: view.NotLooked}, {ID: "own", Answer: view.NotLooked},
		{ID: "a", Where: "front", Answer: view.Yes}, {ID: "b", Where: "front", Answer: view.NotLooked}}
	var got []string
	for _, g := range view.Walk(looks, []hidden.Finding{{ID: "a", Minutes: 5}, {ID: "b", Minutes: 2}, {ID: "c", Minutes: 3}}) {
		got = append(got, g.Where+" "+g.Minutes)
		for _, c := range g.Looks {
			got = append(got, c.ID)
		}
	}
	if !slices.Equal(got, []string{"front 2 min", "a", "b", "rear 3 min", "c", "elsewhere 0 min", "own"}) {
		t.Errorf("%q", got)
	}
}

// TestALotOnItsWayIsBeingValued tells a lot that lacks an entry from one whose first valuation has not come back yet.
func TestALotOnItsWayIsBeingValued(t *testing.T) {
	o := desk.Open{}
	if got := view.NewVerdict(o).Figure; got != view.Working {
		t.Errorf("with nothing missing the verdict reads %q", got)
	}
	if got := view.NewChecksPage(o).Waits; got != "The lot is being valued." {
		t.Errorf("with nothing missing the checks say %q", got)
	}
	o.Faults = []valuation.Fault{{Key: "resale"}}
	if got := view.NewVerdict(o).Figure; got != view.NotYet {
		t.Errorf("with a fault the verdict reads %q", got)
	}
	if got := view.NewChecksPage(o).Waits; !strings.Contains(got, "enter the facts") {
		t.Errorf("with a fault the checks say %q", got)
	}
}
