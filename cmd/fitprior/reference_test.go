package main

import (
	"math"
	"path/filepath"
	"testing"

	"walkline/valuation/money"
	"walkline/valuation/prob"
	"walkline/valuation/resale"
)

// exact returns a task whose prices follow year and mileage to the letter: every method that can know it must find it.
func exact() task {
	cur, _ := money.Lookup("EUR")
	t := task{set: set{currency: cur}, slopes: slopes{resale.Effect{Mean: 0.08, SD: 0.05}, resale.Effect{Mean: -0.03, SD: 0.03}, 0.1}}
	draw := newNormals()
	for i := range 60 {
		miles := 50_000 + 20_000*draw()
		r := resale.Row{ModelYear: 2015 + i%5, Mileage: &miles, Trim: []string{"a", "b"}[i%2],
			More: map[string]string{"doors": []string{"3", "5"}[i/3%2]}}
		r.Price = cur.FromMajor(math.Exp(9 + 0.1*float64(r.ModelYear-2017) - 0.05*miles/10_000))
		t.comps = append(t.comps, r)
	}
	t.subject, t.comps = t.comps[0], t.comps[1:]
	return t
}

func TestReferencesFindAnExactLaw(t *testing.T) {
	task := exact()
	truth := task.set.currency.Major(task.subject.Price)
	for i, within := range []float64{0.5, 1e-4, 1e-4, 0.005, 0.1, 0.01} {
		if got := references[i].forecast(task); math.Abs(got/truth-1) > within {
			t.Errorf("%s: %.0f, the price is %.0f", references[i].name, got, truth)
		}
	}
}

// Ridge at a penalty of nothing is least squares.
func TestPenalisedMeetsLeastSquares(t *testing.T) {
	task := exact()
	x, _ := matrix(task)
	for i := range x {
		x[i] = x[i][:2] // year and mileage: the words' columns depend on one another
	}
	y := logs(task)
	y[3], y[20] = y[3]+0.3, y[20]-0.1
	level := prob.Mean(y)
	coef, _, err := penalised(x, y, level, 1e-9)
	if err != nil {
		t.Fatal(err)
	}
	var ones [][]float64
	for _, row := range x {
		ones = append(ones, []float64{1, row[0], row[1]})
	}
	want, err := prob.LeastSquares(ones, y)
	if err != nil {
		t.Fatal(err)
	}
	for j, c := range coef {
		if math.Abs(c-want.Coef[j+1]) > 1e-6 {
			t.Errorf("column %d: %.8f, least squares %.8f", j, c, want.Coef[j+1])
		}
	}
}

// Spoiled tables are what they say, and the task they come from stays as it is.
func TestSpoilings(t *testing.T) {
	s, err := readSet(filepath.Join(open, "hatch2004_public.csv"))
	if err != nil {
		t.Fatal(err)
	}
	clean := task{set: s, subject: s.rows[0], comps: s.rows[1:]}
	for i, want := range []float64{0.10, damagedShare, 0.5} {
		spoilt := spoilings[i].spoil(clean, 1)
		changed, dated := 0.0, 0
		for k, r := range spoilt.comps {
			if r.Price != clean.comps[k].Price {
				changed++
			}
			if r.Date.Known() && r.ModelYear < clean.comps[k].ModelYear {
				dated++
			}
		}
		if share := changed / float64(len(clean.comps)); math.Abs(share-want) > 0.06 {
			t.Errorf("%s: %.2f of the prices changed", spoilings[i].name, share)
		}
		if (dated > 0) != (i == 2) {
			t.Errorf("%s: %d rows dated back", spoilings[i].name, dated)
		}
	}
}
