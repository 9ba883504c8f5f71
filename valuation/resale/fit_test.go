package resale_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"reflect"
	"testing"

	"walkline/valuation/prob"
	"walkline/valuation/resale"
)

func TestOrderOfRowsIsIrrelevant(t *testing.T) {
	all, cur := prices(t, "hatch2004_public.csv")
	p := starter(t)
	for _, n := range []int{3, 40, 300} {
		rows := append([]resale.Row(nil), all[1:n+1]...)
		rows[0].ID, rows[1].ID = "", ""
		want := resale.Fit(rows, asSubject(all[0]), asking(cur), p)
		rand.New(rand.NewPCG(1, 1)).Shuffle(n, func(i, j int) { rows[i], rows[j] = rows[j], rows[i] })
		got := resale.Fit(rows, asSubject(all[0]), asking(cur), p)
		a, b := want.Price(), got.Price()
		a.Adjusted, b.Adjusted = nil, nil
		a.Warnings, b.Warnings = unplaced(a.Warnings), unplaced(b.Warnings)
		if !reflect.DeepEqual(a, b) || want.LevelSD() != got.LevelSD() {
			t.Errorf("%d rows: %+v, shuffled %+v", n, a, b)
		}
	}
}

// unplaced returns warnings without the positions of their rows, which follow the table.
func unplaced(warnings []resale.Warning) []resale.Warning {
	var out []resale.Warning
	for _, w := range warnings {
		w.Rows = nil
		out = append(out, w)
	}
	return out
}

func TestSameVehicleTwiceCountsOnce(t *testing.T) {
	all, cur := prices(t, "midsize2009_public.csv")
	p := starter(t)
	rows := append([]resale.Row(nil), all[1:13]...)
	want := resale.Fit(rows, asSubject(all[0]), asking(cur), p).Price()
	again := rows[4]
	again.ID, again.Note = "again", "relisted"
	m := resale.Fit(append(rows, again), asSubject(all[0]), asking(cur), p)
	got := m.Price()
	if got.P50 != want.P50 || got.P10 != want.P10 || got.RowsUsed != 12 {
		t.Errorf("a second advertisement moved the price from %v to %v", want.P50, got.P50)
	}
	if !mentions(m.Warnings(), "the same vehicle as another row") {
		t.Errorf("no word of the duplicate: %v", m.Warnings())
	}
	used := 0
	for _, a := range got.Adjusted {
		if a.Used {
			used++
		} else if a.Why == "" || a.Adjusted != a.Price {
			t.Errorf("unused row %+v", a)
		}
	}
	if used != 12 || len(got.Adjusted) != 13 {
		t.Errorf("%d of %d rows used", used, len(got.Adjusted))
	}
}

// mixed returns rows of every kind: sold and asked, branded, dated, with and without mileage, trims and models.
func mixed(rng *rand.Rand, n int) []resale.Row {
	var rows []resale.Row
	for range n {
		year := 2014 + rng.IntN(9)
		miles := 8_000*float64(2024-year) + 20_000*rng.Float64()
		price := 26_000 * math.Exp(-0.1*float64(2024-year)-0.04*miles/10_000+0.08*rng.NormFloat64())
		r := resale.Row{Price: usd.FromMajor(price), ModelYear: year, Mileage: &miles, Kind: []string{"asked", "sold", ""}[rng.IntN(3)],
			Date: []resale.Row{{}, {Date: "2024-03-01"}, {Date: "2022-06-15"}}[rng.IntN(3)].Date, Make: "Talvo",
			Model: []string{"Brisa", "Cordel"}[rng.IntN(2)], Trim: []string{"", "S", "LX"}[rng.IntN(3)],
			Title: []string{"", "clear", "rebuilt", "salvage"}[rng.IntN(4)],
			More:  map[string]string{"fuel": []string{"petrol", "diesel"}[rng.IntN(2)]}}
		if rng.IntN(6) == 0 {
			r.Mileage = nil
		}
		if rng.IntN(2) == 0 {
			r.Condition = ptr(float64(1 + rng.IntN(5)))
		}
		rows = append(rows, r)
	}
	return rows
}

func rebuilt() (resale.Subject, resale.Beliefs) {
	return resale.Subject{Make: "Talvo", Model: "Brisa", Trim: "LX", ModelYear: 2019, Mileage: ptr(52_000), Brand: "rebuilt",
			SaleMonth: "2024-08-01", More: map[string]string{"fuel": "diesel"}}, resale.Beliefs{
			BrandDiscount: prob.Three{Low: 0.15, Likely: 0.28, High: 0.45}, AskedToSold: prob.Three{Low: 0.9, Likely: 0.95, High: 1},
			Today: "2024-05-01", Currency: usd}
}

func TestAdjustmentsAddUpToTheCent(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 3))
	p := starter(t)
	s, b := rebuilt()
	for n := 1; n < 60; n += 7 {
		for _, a := range resale.Fit(mixed(rng, n), s, b, p).Price().Adjusted {
			if sum := a.AskedToSold + a.Date + a.Mileage + a.Age + a.Trim + a.Brand + a.Engine + a.Place + a.Other; a.Price+sum != a.Adjusted {
				t.Fatalf("%d + %d is not %d: %+v", a.Price, sum, a.Adjusted, a)
			}
			if a.Weight < 0 || a.Weight > 1.0000001 {
				t.Errorf("weight %g", a.Weight)
			}
		}
	}
}

// A comparable that is the subject but for one thing is adjusted for that thing, in the right direction.
func TestAdjustmentsPointTheRightWay(t *testing.T) {
	s, b := rebuilt()
	rows := mixed(rand.New(rand.NewPCG(5, 5)), 40)
	like := resale.Row{ID: "like", Price: 1_500_000, Kind: "sold", Date: "2024-05-01", Make: "Talvo", Model: "Brisa", Trim: "LX",
		ModelYear: 2019, Mileage: ptr(52_000), Title: "rebuilt", More: s.More}
	younger, fewer, clear, asked := like, like, like, like
	younger.ModelYear, fewer.Mileage, clear.Title, asked.Kind = 2021, ptr(20_000), "clear", "asked"
	rows = append(rows, younger, fewer, clear, asked)
	got := resale.Fit(rows, s, b, starter(t)).Price().Adjusted[40:]
	if got[0].Age >= 0 || got[1].Mileage >= 0 || got[2].Brand >= 0 || got[3].AskedToSold >= 0 {
		t.Errorf("a better row isn't marked down: %+v", got)
	}
	if got[0].Mileage != 0 || got[1].Trim != 0 || got[2].AskedToSold != 0 {
		t.Errorf("adjusted for what doesn't differ: %+v", got)
	}
}

func TestMoreMilesNeverRaiseThePriceWithoutStrongEvidence(t *testing.T) {
	p := starter(t)
	rng := rand.New(rand.NewPCG(7, 7))
	b := asking(usd)
	for trial := range 30 {
		var rows []resale.Row
		for range 3 + trial {
			rows = append(rows, resale.Row{Price: usd.FromMajor(15_000 * math.Exp(0.3*rng.NormFloat64())), ModelYear: 2018 + rng.IntN(3),
				Mileage: ptr(20_000 + 60_000*rng.Float64())})
		}
		s := resale.Subject{ModelYear: 2019, Mileage: ptr(50_000), Brand: "clear"}
		m := resale.Fit(rows, s, b, p)
		last := math.Inf(1)
		for miles := 0.0; miles <= 150_000; miles += 10_000 {
			s.Mileage = ptr(miles)
			now := m.At(s).Quantile(0.5)
			if now > last+1e-6 {
				t.Fatalf("trial %d: the price rises at %g miles, on noise alone", trial, miles)
			}
			last = now
		}
	}
	var rows []resale.Row
	for i := range 400 {
		miles := 20_000 + 200*float64(i)
		rows = append(rows, resale.Row{Price: usd.FromMajor(10_000 * math.Exp(0.05*miles/10_000+0.02*rng.NormFloat64())), ModelYear: 2019,
			Mileage: &miles})
	}
	s := resale.Subject{ModelYear: 2019, Mileage: ptr(50_000), Brand: "clear"}
	m := resale.Fit(rows, s, b, p)
	low := m.At(s).Quantile(0.5)
	s.Mileage = ptr(90_000)
	if high := m.At(s).Quantile(0.5); high < 1.1*low {
		t.Errorf("400 rows that rise by 22 %% with mileage give %g after %g", high, low)
	}
}

func TestCertainBeliefsAreExact(t *testing.T) {
	all, cur := prices(t, "midsize2009_public.csv")
	rows, s, p := all[1:21], asSubject(all[0]), starter(t)
	plain := resale.Fit(rows, s, asking(cur), p).Price()
	sold := append([]resale.Row(nil), rows...)
	for i := range sold {
		sold[i].Kind = "sold"
	}
	b := asking(cur)
	b.AskedToSold = prob.Three{Low: 0.5, Likely: 0.7, High: 0.9}
	if got := resale.Fit(sold, s, b, p).Price(); math.Abs(got.P50/plain.P50-1) > 1e-9 || math.Abs(got.P90/plain.P90-1) > 1e-9 {
		t.Errorf("sold rows give %v, asked rows at factor 1 %v", got.P50, plain.P50)
	}
	b.AskedToSold = prob.Certain(0.9)
	if got := resale.Fit(rows, s, b, p).Price(); math.Abs(got.P10/plain.P10-0.9) > 1e-7 || math.Abs(got.P50/plain.P50-0.9) > 1e-7 {
		t.Errorf("factor 0.9 turns %v into %v", plain.P50, got.P50)
	}
	b.BrandDiscount, s.Brand = prob.Certain(0.3), "rebuilt"
	if got := resale.Fit(rows, s, b, p).Price(); math.Abs(got.P90/plain.P90-0.63) > 1e-7 {
		t.Errorf("factor 0.9 and discount 0.3 turn %v into %v", plain.P90, got.P90)
	}
}

func TestDoubtOfBeliefsWidensThePrice(t *testing.T) {
	all, cur := prices(t, "midsize2009_public.csv")
	rows, s, p := all[1:41], asSubject(all[0]), starter(t)
	s.Brand = "rebuilt"
	width := func(b resale.Beliefs) (float64, float64) {
		m := resale.Fit(rows, s, b, p)
		d := m.Distribution()
		return (d.Quantile(0.9) - d.Quantile(0.1)) / d.Quantile(0.5), m.LevelSD() / d.Mean()
	}
	b := asking(cur)
	b.BrandDiscount = prob.Certain(0.28)
	sure, sureLevel := width(b)
	b.BrandDiscount = prob.Three{Low: 0.05, Likely: 0.28, High: 0.6}
	unsure, unsureLevel := width(b)
	sd := 0.16 // of ln(1 - discount), about
	if !(unsure > sure && math.Hypot(sureLevel, sd) > 0.85*unsureLevel && math.Hypot(sureLevel, sd) < 1.15*unsureLevel) {
		t.Errorf("width %.3f and level %.3f when sure, %.3f and %.3f when not", sure, sureLevel, unsure, unsureLevel)
	}
}

func TestBrandDiscountIsLearnedFromBrandedRows(t *testing.T) {
	rng := rand.New(rand.NewPCG(11, 11))
	s, b := rebuilt()
	s.More = nil
	var rows []resale.Row
	for i := range 80 {
		year := 2016 + rng.IntN(7)
		miles := 10_000 * (1 + 7*rng.Float64())
		price := 20_000 * math.Exp(-0.1*float64(2019-year)*-1-0.04*(miles-52_000)/10_000+0.07*rng.NormFloat64())
		r := resale.Row{Price: usd.FromMajor(price), Kind: "sold", ModelYear: year, Mileage: &miles, Make: "Talvo", Model: "Brisa", Trim: "LX",
			Date: "2024-04-01", Title: "clear"}
		if i%2 == 0 {
			r.Title, r.Price = "Rebuilt", usd.FromMajor(price*0.6)
		}
		rows = append(rows, r)
	}
	branded := resale.Fit(rows, s, b, starter(t))
	s.Brand = "clear"
	clean := resale.Fit(rows, s, b, starter(t))
	if ratio := branded.Distribution().Quantile(0.5) / clean.Distribution().Quantile(0.5); math.Abs(ratio-0.6) > 0.03 {
		t.Errorf("rows with a discount of 40 %% give a factor of %.3f", ratio)
	}
}

func TestGuessStandsInWithoutRows(t *testing.T) {
	p := starter(t)
	guess := prob.Three{Low: 14_000, Likely: 16_500, High: 18_500}
	m := resale.Fit(nil, resale.Subject{ModelYear: 2019}, resale.Beliefs{Guess: &guess, Currency: usd}, p)
	if m.Err() != nil {
		t.Fatal(m.Err())
	}
	got := m.Price()
	for _, c := range [][2]float64{{got.P10, 14_000}, {got.P50, 16_500}, {got.P90, 18_500}} {
		if math.Abs(c[0]/c[1]-1) > 1e-9 {
			t.Errorf("percentile %g, guessed %g", c[0], c[1])
		}
	}
	d := m.Distribution()
	if d.Quantile(0) < 9_000 || d.Quantile(1) > 24_000 || got.RowsUsed != 0 {
		t.Errorf("the guess reaches from %g to %g", d.Quantile(0), d.Quantile(1))
	}
	if sd := m.LevelSD(); sd <= 0 || sd >= d.SD() {
		t.Errorf("level sd %g of %g", sd, d.SD())
	}
	if !mentions(m.Warnings(), "your own guess") {
		t.Errorf("warnings %v", m.Warnings())
	}
	sure := prob.Certain(12_345)
	one := resale.Fit(nil, resale.Subject{}, resale.Beliefs{Guess: &sure, Currency: usd}, p)
	if d := one.Distribution(); !d.Certain() || d.Mean() != 12_345 || one.LevelSD() != 0 {
		t.Errorf("a certain guess gives %v", one.Price())
	}
	skew := prob.Three{Low: 10_000, Likely: 10_000, High: 30_000}
	if got := resale.Fit(nil, resale.Subject{}, resale.Beliefs{Guess: &skew, Currency: usd}, p).Price(); math.Abs(got.P90-30_000) > 1 ||
		math.Abs(got.P10-10_000) > 1 {
		t.Errorf("a lopsided guess gives %+v", got)
	}
}

func TestNothingToGoByIsRefused(t *testing.T) {
	rows := []resale.Row{{ID: "a", Price: 100_000}, {ID: "b", Price: 0, ModelYear: 2019}, {ID: "c", Price: 5, ModelYear: 2019, Excluded: true}}
	m := resale.Fit(rows, resale.Subject{ModelYear: 2019}, resale.Beliefs{Currency: usd}, starter(t))
	if !errors.Is(m.Err(), resale.ErrUnknown) {
		t.Errorf("error %v", m.Err())
	}
	got := m.Price()
	if got.P50 != 0 || got.RowsUsed != 0 || len(got.Adjusted) != 3 {
		t.Errorf("an unknown price is %+v", got)
	}
	for _, why := range []string{"no model year", "no price", "left out by hand"} {
		if !mentions(m.Warnings(), why) {
			t.Errorf("%q isn't in %v", why, m.Warnings())
		}
	}
	if m := resale.Fit(rows[:1], resale.Subject{}, resale.Beliefs{Currency: usd}, resale.Prior{}); !errors.Is(m.Err(), resale.ErrUnknown) {
		t.Errorf("error %v", m.Err())
	}
	if m := resale.Fit([]resale.Row{{Price: 5, ModelYear: 2019}}, resale.Subject{}, resale.Beliefs{Currency: usd},
		resale.Prior{}); !errors.Is(m.Err(), resale.ErrNoPrior) {
		t.Errorf("error %v", m.Err())
	}
}

func TestAtTheSubjectIsTheDistribution(t *testing.T) {
	all, cur := prices(t, "hatch2004_public.csv")
	m := resale.Fit(all[1:41], asSubject(all[0]), asking(cur), starter(t))
	a, b := m.Distribution(), m.At(asSubject(all[0]))
	for _, u := range []float64{0, 0.1, 0.5, 0.9, 1} {
		if a.Quantile(u) != b.Quantile(u) {
			t.Errorf("quantile %g: %g and %g", u, a.Quantile(u), b.Quantile(u))
		}
	}
	older := asSubject(all[0])
	older.ModelYear -= 2
	if got := m.At(older).Quantile(0.5); got > 0.9*a.Quantile(0.5) {
		t.Errorf("two years older asks %g against %g", got, a.Quantile(0.5))
	}
}

// Duan's point: exp() of the log fit is the median; the mean lies above it, by the mean of exp(residual).
func TestMeanIsSmearedNotNaive(t *testing.T) {
	all, cur := prices(t, "hatch2004_public.csv")
	m := resale.Fit(all[1:401], asSubject(all[0]), asking(cur), starter(t))
	d := m.Distribution()
	sum, n := 0.0, 4000
	for i := range n {
		sum += d.Quantile((float64(i)+0.5)/float64(n)) / float64(n)
	}
	if math.Abs(sum/d.Mean()-1) > 1e-4 || d.Mean() <= d.Quantile(0.5) {
		t.Errorf("mean %g, by its quantiles %g, median %g", d.Mean(), sum, d.Quantile(0.5))
	}
}

// The influence of a row is by how much the median moves when the row is left out, found without a refit: what a refit gives, but for
// the weights of the other rows and the spreads, which settle anew.
func TestInfluenceForetellsLeavingARowOut(t *testing.T) {
	all, cur := prices(t, "hatch2004_public.csv")
	p := starter(t)
	rows := append([]resale.Row(nil), all[1:31]...)
	whole := resale.Fit(rows, asSubject(all[0]), asking(cur), p).Price()
	var said, came, product, off float64
	for i := range rows {
		rows[i].Excluded = true
		moved := whole.P50 - resale.Fit(rows, asSubject(all[0]), asking(cur), p).Price().P50
		rows[i].Excluded = false
		influence := whole.Adjusted[i].Influence
		said, came, product = said+influence*influence, came+moved*moved, product+influence*moved
		off = max(off, math.Abs(influence-moved))
	}
	if r := product / math.Sqrt(said*came); r < 0.9 || off > 0.01*whole.P50 {
		t.Errorf("influence agrees with refits to r = %.3f, at worst %.0f of %.0f off", r, off, whole.P50)
	}
}
