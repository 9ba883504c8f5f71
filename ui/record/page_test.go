package record

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"
	"walkline/ui/widgets"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/ui/widgets/plot"
	"walkline/ui/widgets/seen"
	"walkline/ui/widgets/table"
	"walkline/valuation"
	"walkline/valuation/hindsight"
	"walkline/valuation/learn"
	"walkline/valuation/money"
	"walkline/valuation/score"
)

// asked notes what the page asks for: wishes, and the words of what is to be kept.
type asked struct{ did []string }

func (a *asked) do(x desk.Action) {
	if x.Wish.For != "" {
		a.did = append(a.did, strings.TrimSpace(string(x.Wish.For)+" "+x.Wish.Key))
		return
	}
	a.did = append(a.did, x.Words())
}

// some is a track record of ten made-up buys.
func some() desk.State {
	naive, alone := 900.0, 1.4
	r := desk.TrackRecord{Currency: "USD", Buys: 10, Effects: map[string][]desk.Effect{}}
	r.Judged = hindsight.Record{Buys: 10, LeftOut: []string{"2 buys without a forecast kept."},
		Figures: []hindsight.FigureRecord{{Key: "resale", Name: "Resale price", N: 10, CRPS: 600, Naive: &naive, Uneven: 0.4,
			PIT: []int{1, 1, 1, 1, 1, 1, 1, 1, 1, 1},
			Coverage: []score.Coverage{{Level: 0.5, Inside: 6, N: 10, Share: 0.6, Low: 0.26, High: 0.88},
				{Level: 0.9, Inside: 5, N: 10, Share: 0.5, Low: 0.19, High: 0.81}}},
			{Key: "days", Name: "Days", N: 10, CRPS: 12.5, Uneven: 0.01, PIT: []int{10, 0, 0, 0, 0, 0, 0, 0, 0, 0}}},
		Risks: score.Reliability{N: 20, Events: 4, Brier: 0.1, Uncertainty: 0.16,
			Bins: []score.Bin{{N: 20, Events: 4, Said: 0.15, Came: 0.2, Low: 0.06, High: 0.44}}},
		Ratios: &hindsight.Ratios{N: 10, Median: 0.98, COD: 8.5, PRD: 1.01},
		Money: hindsight.Money{Currency: "USD", Buys: make([]hindsight.BuyMoney, 10), Foretold: 1500000, Came: 1200000,
			Causes: []hindsight.Cause{{Name: "Resale", Difference: 100000}, {Name: "My hours", Difference: -400000}}}}
	r.Proposals = []learn.Proposal{
		{Key: "hours/body", Name: "Hours, body", Unit: learn.RatioUnit, Starter: learn.Value{At: 1}, Now: learn.Value{At: 1},
			Proposed: learn.Value{At: 1.25, Low: 1.1, High: 1.4},
			Alone:    &alone, Why: []string{"10 buys count as 8.2.",
				"They say 1.40."}, Evidence: []learn.Evidence{{Build: 1, Name: "Lot 3", On: "2026-01-02", Says: 1.5, Weight: 0.9}}},
		{Key: "risk/h", Name: "Mount torn", Unit: learn.ChanceUnit, Starter: learn.Value{At: 0.25}, Now: learn.Value{At: 0.25},
			Proposed: learn.Value{At: 0.3, Low: 0.2, High: 0.4},
			Evidence: []learn.Evidence{{Name: "Lot 3", Says: 1, Weight: 1}}}}
	r.History = []book.Decision{{ID: 7, At: time.Date(2026, 11, 1, 12, 0, 0, 0, time.Local), What: book.Accepted, Factor: "materials",
		Words: "Materials: 1.00 to 1.10."}}
	return desk.State{Record: &r}
}

func shown(t *testing.T, s desk.State, section string) (*Page, *asked) {
	t.Helper()
	a := &asked{}
	p := New(a.do)
	seen.Open(t, fyne.NewSize(1280, 660), p.Object())
	p.Render(s)
	if section != "" {
		p.Go(slices.Index(p.Sections(), section))
	}
	return p, a
}

func says(t *testing.T, p *Page, words ...string) {
	t.Helper()
	all := strings.Join(seen.Texts(p.Object()), " ")
	for _, w := range words {
		if !strings.Contains(all, w) {
			t.Errorf("%q is missing from %q", w, all)
		}
	}
}

func tap(t *testing.T, p *Page, words string) {
	t.Helper()
	for _, b := range seen.All[*widgets.Button](p.Object()) {
		if b.Text == words {
			test.Tap(b)
			return
		}
	}
	t.Fatalf("no button %q among %q", words, seen.Texts(p.Object()))
}

func TestWhileThereIsNothingThePageSaysTheFirstStep(t *testing.T) {
	p, a := shown(t, desk.State{}, "")
	says(t, p, "Working out the track record")
	p.Render(desk.State{Record: &desk.TrackRecord{}})
	says(t, p, "No buy to learn from yet", "frozen")
	tap(t, p, "Import past buys…")
	if !slices.Equal(a.did, []string{"past buys"}) || p.First() != nil {
		t.Errorf("asked for %q", a.did)
	}
	p.Render(desk.State{Record: &desk.TrackRecord{Problem: "the disk"}})
	says(t, p, "could not be worked out: the disk")
}

func TestForecastsShowCoverageWithItsOwnUncertainty(t *testing.T) {
	p, _ := shown(t, some(), "Forecasts")
	says(t, p, "6 of 10", "26 % to 88 %", "as stated", "too seldom", "33 % better", "98 % of it, over 10 sales", "8.5 %", "1.01",
		"2 buys without a forecast", "Only lots that you won are seen")
	h := seen.All[*plot.Histogram](p.Object())[0]
	if len(h.Facts()) != 10 || !strings.Contains(h.Facts()[9], "1 outcome in the highest tenth") {
		t.Errorf("facts %q", h.Facts())
	}
	seen.All[*widgets.Select](p.Object())[0].SetSelected("Days")
	says(t, p, "12.5 days", "something is off")
}

// What lots went for stands among the forecasts, without the study of resale prices.
func TestHammerPricesAreHeldAgainstTheirForecasts(t *testing.T) {
	s := some()
	s.Record.Judged.Figures = append(s.Record.Judged.Figures, hindsight.FigureRecord{Key: hindsight.HammerKey, Name: "Hammer price", N: 20,
		PIT: []int{9, 1, 1, 1, 1, 1, 1, 1, 1, 3}, Uneven: .0001, Unscored: 20, Coverage: []score.Coverage{{Level: .8, N: 20, Inside: 9}}})
	p, _ := shown(t, s, "Forecasts")
	seen.All[*widgets.Select](p.Object())[0].SetSelected("Hammer price")
	says(t, p, "lots that others won", "9 of 20", "fewer than 1 %", "something is off")
	if words := strings.Join(seen.Texts(p.Object()), "\n"); strings.Contains(words, "COD") || strings.Contains(words, "another currency") {
		t.Errorf("the page says %s", words)
	}
}

func TestChancesAndMoneyAreSaidInWords(t *testing.T) {
	p, _ := shown(t, some(), "Chances")
	says(t, p, "4 of 20 came. For the statistician: Brier score 0.100", "Said 15 %: came 4 times in 20, 20 %",
		"No outcome of a forecast chance is known yet.")
	p.Go(slices.Index(p.Sections(), "Money"))
	says(t, p, "15,000", "+1,000", "-4,000", "12,000", "10 buys")
}

func TestAFactorIsLookedAtAcceptedAndRefused(t *testing.T) {
	s := some()
	p, a := shown(t, s, "Factors")
	tap(t, p, asTable)
	says(t, p, "Hours, body", "1.25", "1.10 to 1.40", "Mount torn", "25 %", "30 %", "forecasts that were kept stay as they were")
	seen.Press(p.First(), fyne.KeyDown)
	says(t, p, "10 buys count as 8.2. They say 1.40.", "2026-01-02", "1.50", "0.90", "Valuing the open lots…")
	before, after := money.Amount(360000), money.Amount(330000)
	s.Record.Effects["hours/body"] = []desk.Effect{{Name: "Lot 14", Currency: "USD",
		Effect: valuation.Effect{Before: &before, After: &after}}, {Name: "Lot 15", Problem: "cannot be valued yet"}}
	p.Render(s)
	says(t, p, "Lot 14", "3,600", "3,300", "-300", "cannot be valued yet")
	tap(t, p, "Accept this factor")
	seen.Press(p.First(), fyne.KeyDown)
	says(t, p, "found")
	tap(t, p, "Refuse it")
	if want := []string{"effect of a factor hours/body", "accepted", "effect of a factor risk/h", "refused"}; !slices.Equal(a.did, want) {
		t.Errorf("asked for %q", a.did)
	}
}

// Every factor is drawn on one axis, and said in words; the picture and the table go together.
func TestFactorsAreDrawnBeforeTheyAreTabled(t *testing.T) {
	p, _ := shown(t, some(), "Factors")
	drawn := seen.All[*plot.Ranges](p.Object())[0]
	want := []string{"Hours, body: starter 1.00, today 1.00, proposed 1.25, 8 times in 10 from 1.10 to 1.40, from 0 buys.",
		"Mount torn: starter 25 %, today 25 %, proposed 30 %, 8 times in 10 from 20 % to 40 %, from 0 buys."}
	if got := drawn.Facts(); !slices.Equal(got, want) || p.First() != drawn {
		t.Errorf("%q", got)
	}
	seen.Press(drawn, fyne.KeyDown, fyne.KeyDown)
	tap(t, p, asTable)
	listed := seen.All[*table.Table](p.Object())[0]
	if listed.Selected() != 1 {
		t.Errorf("the table is at %d", listed.Selected())
	}
	seen.Press(listed, fyne.KeyUp)
	if tap(t, p, asPicture); drawn.Selected() != 0 {
		t.Errorf("the picture is at %d", drawn.Selected())
	}
}

func TestHistoryRestoresAndReplayRuns(t *testing.T) {
	s := some()
	p, a := shown(t, s, "History")
	says(t, p, "2026-11-01", "accepted", "Materials: 1.00 to 1.10.")
	seen.Press(p.First(), fyne.KeyDown)
	tap(t, p, "Restore the factors from before this decision")
	p.Go(slices.Index(p.Sections(), "Replay"))
	says(t, p, "Not replayed yet.")
	tap(t, p, "Replay past lots with today's factors")
	if !slices.Equal(a.did, []string{"restore the factors", "replay"}) {
		t.Errorf("asked for %q", a.did)
	}
	then, hammer, lost := money.Amount(400000), money.Amount(390000), money.Amount(-50000)
	s.Record.Replay = &desk.Replay{Lots: []valuation.Replayed{{Name: "Lot 3", Then: &then, Hammer: &hammer, Profit: &lost,
		Verdict: valuation.Refused}},
		Sum: valuation.ReplaySum{Refused: 1, LossesRefused: 1, LossAvoided: 50000, WouldBuy: 2}}
	p.Render(s)
	says(t, p, "4,000", "do not bid", "3,900", "-500", "refused", "1 had lost USD 500 together", "2 would be bought at their hammer price")
}

func TestPicturesOfTheRecord(t *testing.T) {
	for i := range 6 {
		seen.Picture(t, fmt.Sprint("record-", i), fyne.NewSize(1280, 660), func() fyne.CanvasObject {
			p := New(func(desk.Action) {})
			p.Render(some())
			p.Go(i)
			return p.Object()
		})
	}
}
