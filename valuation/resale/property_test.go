package resale_test

import (
	"math"
	"testing"

	"walkline/valuation/money"
	"walkline/valuation/resale"
)

// tables calls f with tables of several sizes from the open sets, each with a vehicle that is not among its rows.
func tables(t *testing.T, sizes []int, f func(rows []resale.Row, s resale.Subject, b resale.Beliefs)) {
	t.Helper()
	for _, set := range []string{"hatch2004_public.csv", "midsize2009_public.csv"} {
		all, cur := prices(t, set)
		for _, n := range sizes {
			for k := range 6 {
				at := k * len(all) / 7
				rows := make([]resale.Row, n)
				for i := range rows {
					rows[i] = all[(at+1+i*3)%len(all)]
				}
				f(rows, asSubject(all[at]), asking(cur))
			}
		}
	}
}

// Prices in another unit of money give the answer in that unit.
func TestScalingPricesScalesTheAnswer(t *testing.T) {
	p := starter(t)
	tables(t, []int{2, 20, 90}, func(rows []resale.Row, s resale.Subject, b resale.Beliefs) {
		want := resale.Fit(rows, s, b, p).Price()
		for i := range rows {
			rows[i].Price *= 7
		}
		got := resale.Fit(rows, s, b, p).Price()
		for _, v := range [][2]float64{{got.P10, want.P10}, {got.P50, want.P50}, {got.P90, want.P90}, {got.Mean, want.Mean}} {
			if math.Abs(v[0]/v[1]/7-1) > 1e-9 {
				t.Errorf("%d rows: %g times 7 gives %g", len(rows), v[1], v[0])
			}
		}
	})
}

// One price with a digit too many moves the answer by less than 2 %, against the same table without that row.
func TestAnAbsurdPriceHardlyMovesTheAnswer(t *testing.T) {
	p := starter(t)
	tables(t, []int{10, 20, 40}, func(rows []resale.Row, s resale.Subject, b resale.Beliefs) {
		rows[len(rows)/2].Excluded = true
		without := resale.Fit(rows, s, b, p).Price().P50
		rows[len(rows)/2].Excluded = false
		rows[len(rows)/2].Price *= 10
		with := resale.Fit(rows, s, b, p).Price().P50
		if math.Abs(with/without-1) > 0.02 {
			t.Errorf("%d rows: %.0f without the row, %.0f with ten times its price", len(rows), without, with)
		}
	})
}

// A sale of a vehicle just like the subject, above or below the answer, pulls the answer towards it and never past it.
func TestALikeSalePullsTheAnswer(t *testing.T) {
	p := starter(t)
	tables(t, []int{3, 10, 40}, func(rows []resale.Row, s resale.Subject, b resale.Beliefs) {
		before := resale.Fit(rows, s, b, p).Price().P50
		for _, factor := range []float64{0.9, 0.95, 1.05, 1.1} {
			like := rows[0]
			like.ID, like.Kind, like.ModelYear, like.Mileage, like.Trim, like.More = "like", "sold", s.ModelYear, s.Mileage, s.Trim, s.More
			like.Unit, like.Price = s.Unit, money.Amount(math.Round(float64(b.Currency.FromMajor(before))*factor))
			after := resale.Fit(append([]resale.Row{like}, rows...), s, b, p).Price().P50
			if moved := math.Log(after/before) / math.Log(factor); moved <= 0 || moved > 1 {
				t.Errorf("%d rows: a like sale at %.2f moves the answer by %.2f of the way", len(rows), factor, moved)
			}
		}
	})
}

// More miles never make the vehicle dearer, on any of these tables under the priors that ship.
func TestMoreMilesNeverRaiseThePrice(t *testing.T) {
	p := starter(t)
	tables(t, []int{1, 5, 20, 90}, func(rows []resale.Row, s resale.Subject, b resale.Beliefs) {
		m := resale.Fit(rows, s, b, p)
		last := math.Inf(1)
		for miles := 0.0; miles <= 250_000; miles += 5_000 {
			s.Mileage = &miles
			if now := m.At(s).Quantile(0.5); now > last*(1+1e-12) {
				t.Fatalf("%d rows: the price rises at %.0f", len(rows), miles)
			} else {
				last = now
			}
		}
	})
}
