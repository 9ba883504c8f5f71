package view_test

import (
	"slices"
	"strings"
	"testing"

	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/ui/view"
	"walkline/valuation"
	"walkline/valuation/money"
	"walkline/valuation/prob"
)

// ways is a lot whose rebuild may stop, with both other plans priced.
func ways() valuation.Answer {
	line := 4300.0
	return valuation.Answer{Currency: "USD", WalkAway: usd(1200), BindingRule: "min_profit", Acquisition: valuation.Acquisition{Bid: 120000},
		Reasons: []string{"The rule binds."},
		Exits: valuation.Exits{Plan: valuation.ForParts, StopLine: &line, StopChance: .18, StopWay: valuation.AsItStands, WayOutWorth: 15000,
			Plans: map[string]*money.Amount{valuation.Rebuild: nil, valuation.AsItStands: usd(900), valuation.ForParts: usd(1200)}},
		Winning: valuation.Winning{WinChance: fraction(.31), ExpectedGain: fraction(240)}}
}

func TestEveryPlanStandsWithItsBid(t *testing.T) {
	a := ways()
	want := []view.PlanRow{{Name: "Rebuild", Bid: "do not bid"}, {Name: "As it stands", Bid: "USD 900"},
		{Name: "For parts", Bid: "USD 1,200", Chosen: true}}
	v := view.NewVerdict(desk.Open{Fresh: true, Valued: &desk.Valued{Answer: a}})
	if !slices.Equal(v.Plans, want) {
		t.Errorf("plans %+v", v.Plans)
	}
	for _, line := range [][2]string{{"Chance to win at this bid", "31 %"}, {"Expected gain of bidding", "240"}} {
		if !slices.Contains(v.Lines, line) {
			t.Errorf("no line %q in %q", line, v.Lines)
		}
	}
	a.Plans = map[string]*money.Amount{valuation.Rebuild: usd(1)}
	if rows := view.Plans(a); rows != nil {
		t.Errorf("the rebuild alone is a list: %+v", rows)
	}
	a.Winning = valuation.Winning{}
	if v := view.NewVerdict(desk.Open{Valued: &desk.Valued{Answer: a}}); !slices.Contains(v.Lines,
		[2]string{"Chance to win at this bid", "no hammer guess"}) {
		t.Errorf("a missing guess is silent: %q", v.Lines)
	}
}

// A bid that knows nothing of a way out says so beside itself, on Live as well; with a value for each it does not.
func TestAWayOutWithoutAValueIsSaidBesideTheBid(t *testing.T) {
	o := weighed(t)
	if got := view.NewVerdict(o).Unpriced; !strings.HasPrefix(got, "Only a rebuild is priced.") {
		t.Errorf("neither: %q", got)
	}
	if got := view.NewLive(called(o, 0)).Plan; got != "Only a rebuild is priced." {
		t.Errorf("on Live: %q", got)
	}
	v := *o.Valued
	o.Valued = &v
	v.Of.WaysOut.ForParts.Money = &prob.Three{Low: 1, Likely: 2, High: 3}
	if got := view.NewVerdict(o).Unpriced; got != "Not priced: selling it as it stands, with its dents, say." {
		t.Errorf("for parts alone: %q", got)
	}
	v.Of.WaysOut.AsItStands.Money = &prob.Three{Low: 1, Likely: 2, High: 3}
	if got := view.NewVerdict(o).Unpriced; got != "" {
		t.Errorf("both: %q", got)
	}
}

// The stop line is said once, as something to do, with the engine's own sentence.
func TestTheStopLineIsSomethingToDo(t *testing.T) {
	a := ways()
	usd, _ := money.Lookup("USD")
	a.Reasons = append(a.Reasons, a.StopWords(usd))
	v := view.NewVerdict(desk.Open{Fresh: true, Valued: &desk.Valued{Answer: a}})
	if want := "Should you rebuild it: stop line: if the strip-down shows more than USD 4,300 still to spend, stop and sell it on as it " +
		"stands. That is so in 18 of 100 cases and adds USD 150 to the bid on a rebuild."; v.Stop != want {
		t.Errorf("it says %q", v.Stop)
	}
	if !slices.Equal(v.Reasons, []string{"The rule binds."}) {
		t.Errorf("it is said twice: %q", v.Reasons)
	}
	a.Plan, a.StopChance = valuation.Rebuild, .003
	if said := a.StopWords(usd); !strings.HasPrefix(said, "Stop line: if") || !strings.HasSuffix(said,
		"That is so in fewer than 1 of 100 cases and adds USD 150 to the walk-away bid.") {
		t.Errorf("of a rebuild that seldom stops: %q", said)
	}
	a.StopChance = 0
	if said := a.StopWords(usd); said != "" {
		t.Errorf("of a line that no scenario comes to: %q", said)
	}
}

func TestABuildShowsTheStopLineBesideItsCost(t *testing.T) {
	line := 4300.0
	f := valuation.Foresight{Currency: "USD", ToFinish: valuation.Spread{Mean: 5000}, StopLine: &line, StopWay: valuation.ForParts}
	v := view.NewBuildSide(desk.OpenBuild{Bought: book.Bought{Currency: "USD"}, Forecast: &f})
	cost := slices.Index(v.Lines, [2]string{"Cost to finish, with my hours", "5,000"})
	stop := slices.Index(v.Lines, [2]string{"Stop line, still to spend", "4,300"})
	if cost < 0 || stop != cost+3 {
		t.Errorf("lines %q", v.Lines)
	}
	if want := "Stop line: if a bill or what you find shows more than USD 4,300 still to spend, stop and sell it for parts. The cost to " +
		"finish is above it now."; v.Stop != want {
		t.Errorf("it says %q", v.Stop)
	}
}

// What a bid still needs is named on the worksheet and on Live; the Board has its test beside its cells, the sheet its own.
func TestWhatABidNeedsIsNamed(t *testing.T) {
	c := valuation.Defaults()
	c.Currency, c.ValuedOn = "USD", "2026-11-20"
	c.Resale.Guess = &prob.Three{Low: 1, Likely: 2, High: 3}
	a := valuation.Answer{Currency: "USD", BindingRule: valuation.Unready, Needs: c.Needs()}
	for _, n := range a.Needs {
		a.Reasons = append(a.Reasons, n.Text)
	}
	o := desk.Open{Case: c, Fresh: true, Valued: &desk.Valued{Of: c, Answer: a}}
	v := view.NewVerdict(o)
	if len(v.Next) != 3 || v.Figure != view.NotYet || len(v.Lines) > 0 {
		t.Errorf("the verdict says %+v", v)
	}
	live := view.NewLive(desk.State{Open: &o})
	if live.Binds != "No bid yet: it needs vehicle, title document, damage." {
		t.Errorf("Live says %q", live.Binds)
	}
	for _, odd := range live.Odds {
		if odd.Figure != view.Dash {
			t.Errorf("Live shows %+v of a lot that nobody described", odd)
		}
	}
	if all := strings.Join(live.Facts(), " "); strings.Contains(all, "%") {
		t.Errorf("Live shows a chance: %s", all)
	}
}
