package valuation_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"walkline/valuation"
	"walkline/valuation/checks"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/prob"
	"walkline/valuation/resale"
)

// compared is the demo's front lot with forty sales of clear titles, invented.
func compared(t *testing.T) (valuation.Case, valuation.Knowledge) {
	t.Helper()
	c := demoLot(t)
	c.Resale.Guess = nil
	rng := rand.New(rand.NewPCG(5, 6))
	for i := range 40 {
		miles, year := 20_000+120_000*rng.Float64(), 2016+i%7
		price := 26_000 * math.Exp(-.09*float64(2026-year)-.05*miles/10_000+.06*rng.NormFloat64())
		c.Resale.Rows = append(c.Resale.Rows, resale.Row{ID: fmt.Sprint(i), Price: money.Amount(100 * price), Kind: "sold",
			Date: "2026-10-01", ModelYear: year, Make: c.Lot.Make, Model: c.Lot.Model,
			Mileage: &miles, Title: "clear"})
	}
	return c, shipped(t)
}

// bidOf is the walk-away bid, -1 where there is none.
func bidOf(t *testing.T, c valuation.Case, k valuation.Knowledge) float64 {
	t.Helper()
	if a := value(t, c, k); a.WalkAway != nil {
		return float64(*a.WalkAway) / 100
	}
	return -1
}

// An odometer that can't be trusted never raises a bid against "actual" at the same reading, however many miles it shows, and
// lowers the price: by more where the title says that it is not actual.
func TestAnOdometerThatIsNotActualNeverRaisesTheBid(t *testing.T) {
	c, k := compared(t)
	for _, miles := range []int{5_000, 61_200, 140_000, 260_000} {
		c.Lot.Odometer, c.Lot.OdometerStatus = &miles, "actual"
		bid, price := bidOf(t, c, k), value(t, c, k).Resale.Mean
		for _, status := range []string{"unknown", "exempt", "not_actual", "exceeds_limits"} {
			c.Lot.OdometerStatus = status
			if got := bidOf(t, c, k); got > bid {
				t.Errorf("%d miles, %s: bid %.0f, actual %.0f", miles, status, got, bid)
			}
			if got := value(t, c, k).Resale.Mean; got >= price {
				t.Errorf("%d miles, %s: price %.0f, actual %.0f", miles, status, got, price)
			}
		}
	}
	c.Lot.OdometerStatus, c.Lot.Title.Brands = "actual", []string{"Not Actual"}
	branded := value(t, c, k).Resale.Mean
	c.Lot.OdometerStatus, c.Lot.Title.Brands = "not_actual", nil
	if got := value(t, c, k).Resale.Mean; math.Abs(got-branded) > 1e-6 {
		t.Errorf("the brand says not actual: %.2f, the statement: %.2f", branded, got)
	}
}

// The mixture by hand: the mean price over a mileage that is as likely one as another, and the discount beside, each from plain
// valuations at those miles. The reading is the farthest from the rows' mean: no quantile may lie above that of the reading, which bites
// where the prices of more miles are less sure than those of the reading.
func TestUncertainMileageIsTheMixtureOfItsMiles(t *testing.T) {
	c, k := compared(t)
	read := 20_000
	c.Lot.Odometer, c.Lot.OdometerStatus = &read, "not_actual"
	c.Resale.TrueMileage = &prob.Three{Low: 20_000, Likely: 60_000, High: 90_000}
	c.Resale.Discounts = map[string]prob.Three{valuation.CauseOdometer: prob.Certain(.1)}
	got := value(t, c, k).Resale.Mean
	plain, want := c, 0.0
	plain.Lot.OdometerStatus = "actual"
	const n = 12
	for i := range n {
		miles := int(c.Resale.TrueMileage.Quantile((float64(i) + .5) / n))
		plain.Lot.Odometer = &miles
		want += value(t, plain, k).Resale.Mean / n
	}
	if want *= .9; math.Abs(got-want) > .004*want {
		t.Errorf("mean price %.0f, want %.0f", got, want)
	}
}

// Causes by hand: the worst of what the title and the survey say leads; water and salt are dearer than a collision, hail is cheaper.
func TestTheDiscountIsByTheCauseOfTheBrand(t *testing.T) {
	c, k := compared(t)
	c.Resale.BrandDiscount, c.Damage = valuation.Defaults().Resale.BrandDiscount, []lot.Damage{{Area: "12", Extent: "minor", Depth: "skin"}}
	price := func(loss string, brands ...string) float64 {
		c.Lot.Title.Brands, c.Lot.Loss = brands, nil
		if loss != "" {
			c.Lot.Loss = []string{loss}
		}
		return value(t, c, k).Resale.Mean
	}
	collision := price("collision")
	if none := price(""); none != collision {
		t.Errorf("no cause %.0f, collision %.0f", none, collision)
	}
	for _, w := range []struct {
		loss   string
		brands []string
		want   prob.Three
	}{
		{"hail", nil, prob.Three{Low: .05, Likely: .14, High: .25}}, {"theft", nil, prob.Three{Low: .08, Likely: .18, High: .32}}, {"flood",
			nil, prob.Three{Low: .3, Likely: .42, High: .6}},
		{"collision", []string{"Flood damage"}, prob.Three{Low: .3, Likely: .42, High: .6}}, {"flood", []string{"Salt damage"},
			prob.Three{Low: .4, Likely: .55, High: .75}},
		{"hail", []string{"Collision"}, c.Resale.BrandDiscount}, {"collision", []string{"lemon law buyback"}, c.Resale.BrandDiscount},
	} {
		factor := 0.0
		const n = 1000
		for i := range n {
			u := (float64(i) + .5) / n
			factor += (1 - w.want.Quantile(u)) / (1 - c.Resale.BrandDiscount.Quantile(u)) / n
		}
		if got := price(w.loss, w.brands...); math.Abs(got-factor*collision) > .004*collision {
			t.Errorf("%s %v: price %.0f, want %.0f", w.loss, w.brands, got, factor*collision)
		}
	}
	c.Resale.Discounts = map[string]prob.Three{valuation.CauseFlood: prob.Certain(.2)}
	if own := price("flood"); own <= collision {
		t.Errorf("the case's own 20 %% for a flood: price %.0f, collision %.0f", own, collision)
	}
}

// Words that agencies and sales write for a cause and that are no standard brand (common practice, no source) count as it does; a brand
// that is no word at all is named.
func TestABrandInFreeWordsIsNotSilent(t *testing.T) {
	c, k := compared(t)
	c.Damage, c.Lot.Loss = []lot.Damage{{Area: "12", Extent: "minor", Depth: "skin"}}, nil
	told := func(brand string) (float64, bool) {
		c.Lot.Title.Brands = []string{brand}
		a := value(t, c, k)
		return a.Resale.Mean, strings.Contains(strings.Join(a.Warnings, " "), "no word of the list")
	}
	for brand, same := range map[string]string{"frame damage": "structural damage", "manufacturer buy-back": "lemon law buyback",
		"TMU": "Not Actual", "true mileage unknown": "Not Actual", "odometer rollback": "Not Actual", "Odometer not actual": "Not Actual"} {
		want, _ := told(same)
		if got, unheard := told(brand); math.Abs(got-want) > 1e-9 || unheard {
			t.Errorf("%s: price %.0f, %s %.0f; unheard %v", brand, got, same, want, unheard)
		}
	}
	for brand, want := range map[string]bool{"moonbeam": true, "salvage": false, "Rebuilt": false, "clear": false, "71": false,
		"hail": false} {
		if _, unheard := told(brand); unheard != want {
			t.Errorf("%s: unheard %v", brand, unheard)
		}
	}
}

// A figure of the case's own for branded titles is never gone below by a lighter cause.
func TestACasesOwnDiscountIsAFloor(t *testing.T) {
	c, k := compared(t)
	c.Resale.BrandDiscount, c.Damage = prob.Certain(.4), []lot.Damage{{Area: "12", Extent: "minor", Depth: "skin"}}
	c.Lot.Loss = []string{"collision"}
	want := value(t, c, k).Resale.Mean
	c.Lot.Loss = []string{"hail"}
	if got := value(t, c, k).Resale.Mean; got != want {
		t.Errorf("hail at the case's own 40 %%: %.0f, want %.0f", got, want)
	}
}

// Water and fire on the title raise their risks whatever the cause of loss says.
func TestBrandsOfWaterAndFireRaiseTheirRisks(t *testing.T) {
	k := shipped(t)
	for brand, risk := range map[string]string{"Flood damage": "flood", "Salt Damage": "flood", "water": "flood", "Fire damage": "fire"} {
		c := demoLot(t)
		c.Lot.Loss = []string{"collision"}
		before := len(valuation.Risks(c, k))
		c.Lot.Title.Brands = []string{brand}
		by := len(valuation.Risks(c, k))
		c.Lot.Title.Brands, c.Lot.Loss = nil, []string{"collision", risk}
		if entered := len(valuation.Risks(c, k)); by != entered || by <= before {
			t.Errorf("%s: %d risks, with the loss entered %d, without %d", brand, by, entered, before)
		}
	}
}

// The band over mileage and model year knows what the price knows: at the reading it is the answer's own price, for each odometer statement
// and each cause, dents that stay counted in.
func TestTheBandKnowsOdometerAndCause(t *testing.T) {
	c, k := compared(t)
	read := 10_000 // below all rows: the band begins at the reading
	c.Lot.Odometer, c.Damage = &read, nil
	ends := map[string]float64{}
	for _, w := range []struct{ status, loss string }{{"actual", "collision"}, {"not_actual", "collision"}, {"exceeds_limits", "collision"},
		{"unknown", "flood"}, {"actual", "flood"}, {"not_actual", "hail"}} {
		c.Lot.OdometerStatus, c.Lot.Loss = w.status, []string{w.loss}
		a := value(t, c, k)
		miles, years := valuation.NewMemory().Bands(c, k)
		at := []valuation.BandPoint{miles[0]}
		for _, y := range years {
			if y.X == float64(c.Lot.ModelYear) {
				at = append(at, y)
			}
		}
		if len(at) != 2 || miles[0].X != float64(read) {
			t.Fatalf("%v: %d points at the subject, the band begins at %g", w, len(at), miles[0].X)
		}
		for _, p := range at {
			for i, pair := range [][2]float64{{p.P10, a.Resale.P10}, {p.P50, a.Resale.P50}, {p.P90, a.Resale.P90}} {
				if math.Abs(pair[0]-pair[1]) > 1e-6*pair[1] {
					t.Errorf("%v: figure %d of the band is %.2f, the price's %.2f", w, i, pair[0], pair[1])
				}
			}
		}
		ends[w.status+" "+w.loss] = miles[len(miles)-1].P50
	}
	if plain := ends["actual collision"]; ends["not_actual collision"] >= plain || ends["actual flood"] >= plain {
		t.Errorf("where the band ends: %v", ends)
	}
}

// A price that is a guess alone holds nothing but the guess: what the case says of the title's cause and of the odometer is named as
// left out.
func TestAGuessNamesWhatItIgnores(t *testing.T) {
	c, k := demoLot(t), shipped(t)
	c.Resale.Rows, c.Resale.Guess = nil, &prob.Three{Low: 11000, Likely: 13000, High: 15000}
	for _, w := range []struct {
		status, loss string
		want         []string
		never        string
	}{{"not_actual", "flood", []string{"flood", "not actual"}, ""}, {"actual", "fire", []string{"fire"}, "odometer"},
		{"exceeds_limits", "collision", []string{"exceeds limits"}, "title"}, {"actual", "collision", nil, "guess"}} {
		c.Lot.OdometerStatus, c.Lot.Loss, c.Damage = w.status, []string{w.loss}, nil
		said := ""
		for _, warning := range value(t, c, k).Warnings {
			if strings.Contains(warning, "ignores") || strings.Contains(warning, "taken as one for a vehicle with this odometer") {
				said += warning
			}
		}
		for _, word := range w.want {
			if !strings.Contains(said, word) {
				t.Errorf("%s, %s: it says %q, not %q", w.status, w.loss, said, word)
			}
		}
		if w.never != "" && strings.Contains(said, w.never) {
			t.Errorf("%s, %s: it says %q", w.status, w.loss, said)
		}
	}
}

// A statement that says not actual is a known fact: it is no risk beside the price, and the checks do not ask what the paper says. With the
// buyer's own guess nothing more comes off for it.
func TestAStatementThatSaysNotActualIsNoRisk(t *testing.T) {
	c, k := demoLot(t), shipped(t)
	c.Resale.Rows, c.Resale.Guess = nil, &prob.Three{Low: 11000, Likely: 13000, High: 15000}
	price := 0.0
	for _, status := range []string{"actual", "not_actual"} {
		c.Lot.OdometerStatus = status
		a := value(t, c, k)
		feared := slices.ContainsFunc(valuation.Risks(c, k), func(r valuation.RiskFigure) bool { return r.ID == "odometer_doubt" })
		asked := slices.ContainsFunc(a.Checklist, func(i checks.Item) bool { return strings.Contains(i.Text, "marked \"actual\"") })
		if known := status == "not_actual"; feared == known || asked == known {
			t.Errorf("%s: it is a risk %v, it is asked %v", status, feared, asked)
		}
		if price != 0 && a.Resale.Mean != price {
			t.Errorf("%s: the guess of %.2f becomes %.2f", status, price, a.Resale.Mean)
		}
		price = a.Resale.Mean
	}
}
