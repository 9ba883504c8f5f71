package checks

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
)

// published returns the numbers of one row of testdata/reference/voi_examples.csv.
func published(t *testing.T, example, quantity string) []float64 {
	t.Helper()
	f, err := os.Open("../../testdata/reference/voi_examples.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range rows {
		if r[0] == example && r[1] == quantity {
			var out []float64
			for _, s := range strings.Split(r[2], "/") {
				x, err := strconv.ParseFloat(s, 64)
				if err != nil {
					t.Fatal(err)
				}
				out = append(out, x)
			}
			return out
		}
	}
	t.Fatalf("no %s, %s", example, quantity)
	return nil
}

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s = %.9g, want %.9g", what, got, want)
	}
}

// Source: the oil-drilling example, Raiffa 1968 and Shenoy 1992, as listed in voi_examples.csv. Drilling for nothing is
// a lot that costs nothing: the surplus is that of a hammer price certain to be 0, as a case file may guess it.
func TestOilDrilling(t *testing.T) {
	row := func(q string) []float64 { return published(t, "oil_wildcatter", q) }
	e := experiment{prior: row("prior dry/wet/soak"), payoff: [][]float64{row("payoffs dry/wet/soak (k$)")},
		says: [][]float64{row("P(diff|dry wet soak)"), row("P(open|dry wet soak)"), row("P(closed|dry wet soak)")}}
	s := Stakes{Surplus: certainHammer(0)}
	chances, drill := row("P(diff open closed)"), row("E[drill|diff open closed]")
	for k, a := range e.answers() {
		near(t, "chance of the answer", a.chance, chances[k], 1e-12)
		near(t, "drilling after it", a.payoff[0], drill[k], 1e-9)
	}
	near(t, "perfect information", gain(s.value, e.perfect().answers()), row("EVPI")[0], 1e-9)
	near(t, "the test", gain(s.value, e.answers()), row("EVSI")[0], 1e-9)
	near(t, "drilling now", s.value([]float64{row("EMV(drill)")[0]}), row("EMV(drill)")[0], 1e-9)
}

// Source: the stock problem, Clemen, Making Hard Decisions (from memory, recomputed), as listed in voi_examples.csv:
// three actions, of which one brings the same in every state.
func TestStockProblem(t *testing.T) {
	row := func(q string) []float64 { return published(t, "stock_problem", q) }
	saved := row("savings")[0]
	e := experiment{prior: row("prior up/same/down"),
		payoff: [][]float64{row("payoffs high-risk up/same/down"), row("payoffs low-risk up/same/down"), {saved, saved, saved}},
		says:   [][]float64{row("P(says up|up,same,down)"), row("P(says same|up,same,down)"), row("P(says down|up,same,down)")}}
	best := func(payoff []float64) float64 { return max(payoff[0], payoff[1], payoff[2]) }
	for k, a := range e.answers() {
		near(t, "chance of the answer", a.chance, row("P(says up/same/down)")[k], 1e-12)
	}
	near(t, "perfect information", gain(best, e.perfect().answers()), row("EVPI")[0], 1e-9)
	near(t, "the forecast", gain(best, e.answers()), row("EVSI")[0], 1e-9)
}
