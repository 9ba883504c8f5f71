package resale_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"walkline/valuation/resale"
)

// A few rows of the subject's model beside many of other models: pooling must beat those few alone, and must not take the
// other models for the subject's. Open data: testdata/prices/uk2020_slice.csv, with priors that never saw the set.
func TestOtherModelsHelpButAreNotTheSame(t *testing.T) {
	all, cur := prices(t, "uk2020_slice.csv")
	p := starter(t, "uk2020")
	rng := rand.New(rand.NewPCG(8, 8))
	byModel := map[string][]resale.Row{}
	for _, r := range all {
		byModel[r.Model] = append(byModel[r.Model], r)
	}
	var few, pooled, lumped, inside, n float64
	for n < 120 {
		sub := all[rng.IntN(len(all))]
		own := byModel[sub.Model]
		var rows []resale.Row
		for _, i := range rng.Perm(len(own)) {
			if own[i].ID != sub.ID && len(rows) < 4 {
				rows = append(rows, own[i])
			}
		}
		if len(rows) < 4 {
			continue
		}
		n++
		truth := cur.Major(sub.Price)
		off := func(m resale.Model) float64 { return math.Abs(math.Log(m.Distribution().Quantile(0.5) / truth)) }
		few += off(resale.Fit(rows, asSubject(sub), asking(cur), p))
		for len(rows) < 120 {
			if r := all[rng.IntN(len(all))]; r.Model != sub.Model {
				rows = append(rows, r)
			}
		}
		m := resale.Fit(rows, asSubject(sub), asking(cur), p)
		pooled += off(m)
		if d := m.Distribution(); d.Quantile(0.1) <= truth && truth <= d.Quantile(0.9) {
			inside++
		}
		for i := range rows {
			rows[i].Make, rows[i].Model = "", ""
		}
		s := asSubject(sub)
		s.Make, s.Model = "", ""
		lumped += off(resale.Fit(rows, s, asking(cur), p))
	}
	t.Logf("log error: 4 rows %.3f, with 116 of other models %.3f, models not told apart %.3f; inside %.0f %%", few/n, pooled/n, lumped/n,
		100*inside/n)
	if pooled >= few || pooled >= 0.7*lumped {
		t.Errorf("log error: 4 rows %.3f, with other models %.3f, models not told apart %.3f", few/n, pooled/n, lumped/n)
	}
	if inside/n < 0.7 || inside/n > 0.95 {
		t.Errorf("the 80 %% interval holds %.0f %%", 100*inside/n)
	}
}

// A model that no row is of is priced with the doubt that models differ by.
func TestUnseenModelIsDoubted(t *testing.T) {
	all, cur := prices(t, "uk2020_slice.csv")
	p := starter(t)
	s := asSubject(all[0])
	known := resale.Fit(all[1:200], s, asking(cur), p)
	s.Make, s.Model = "made", "up"
	strange := resale.Fit(all[1:200], s, asking(cur), p)
	if a, b := known.LevelSD()/known.Distribution().Mean(), strange.LevelSD()/strange.Distribution().Mean(); b < 3*a || b < 0.15 {
		t.Errorf("level sd %.3f of the mean for a known model, %.3f for an unseen one", a, b)
	}
	if !mentions(strange.Warnings(), "own make and model") {
		t.Errorf("%v", strange.Warnings())
	}
}

// Columns that tell nothing shrink away; a column that tells much is used.
func TestColumnsAreChosenByTheData(t *testing.T) {
	p := starter(t)
	rng := rand.New(rand.NewPCG(9, 9))
	var rows []resale.Row
	towns := []string{"Harrow Flats", "Lower Mead", "Pine Cross", "Dunby"}
	for range 120 {
		miles := 20_000 + 60_000*rng.Float64()
		body := []string{"van", "estate"}[rng.IntN(2)]
		price := 12_000 * math.Exp(0.05*rng.NormFloat64()-0.04*(miles-50_000)/10_000)
		if body == "van" {
			price *= 1.3
		}
		rows = append(rows, resale.Row{Price: usd.FromMajor(price), ModelYear: 2019, Mileage: &miles,
			More: map[string]string{"body": body, "town": towns[rng.IntN(4)], "stock": string(rune('a' + rng.IntN(26)))}})
	}
	at := func(body, town string) float64 {
		s := resale.Subject{ModelYear: 2019, Mileage: ptr(50_000), Brand: "clear", More: map[string]string{"body": body, "town": town}}
		return resale.Fit(rows, s, asking(usd), p).Distribution().Quantile(0.5)
	}
	if ratio := at("van", "Dunby") / at("estate", "Dunby"); math.Abs(ratio-1.3) > 0.05 {
		t.Errorf("a body worth 30 %% more comes out at a factor of %.3f", ratio)
	}
	for _, town := range towns {
		if ratio := at("van", town) / at("van", "Dunby"); math.Abs(ratio-1) > 0.02 {
			t.Errorf("a town that tells nothing moves the price by a factor of %.3f", ratio)
		}
	}
}

// Half of the rows are two years old and 20 % cheaper: the market moved, and the answer is today's.
func TestStaleRowsFadeWithTheMarket(t *testing.T) {
	_, b := rebuilt()
	rng := rand.New(rand.NewPCG(10, 10))
	var rows []resale.Row
	for i := range 24 {
		r := resale.Row{Price: usd.FromMajor(15_000 * math.Exp(0.05*rng.NormFloat64())), Kind: "sold", Date: "2024-04-20", ModelYear: 2019,
			Mileage: ptr(50_000 + float64(i)), Title: "rebuilt"}
		if i%2 == 0 {
			r.Date, r.ModelYear, r.Price = "2022-04-20", 2017, r.Price*8/10
		}
		rows = append(rows, r)
	}
	s := resale.Subject{ModelYear: 2019, Mileage: ptr(50_000), Brand: "rebuilt"}
	m := resale.Fit(rows, s, b, starter(t))
	if got := m.Distribution().Quantile(0.5); math.Abs(got/15_000-1) > 0.03 {
		t.Errorf("today's rows are at 15,000, the answer is %.0f", got)
	}
	s.SaleMonth = "2025-11-01"
	if later := resale.Fit(rows, s, b, starter(t)); later.LevelSD()/later.Distribution().Mean() < 1.2*m.LevelSD()/m.Distribution().Mean() {
		t.Error("a sale a year and a half ahead is forecast as closely as one now")
	}
}
