package main

import (
	"math"
	"math/rand/v2"
	"sort"

	"walkline/valuation/prob"
	"walkline/valuation/resale"
)

// Draws from each model of a set: tables around single rows, as a buyer would gather them.
const (
	narrowTables = 5
	wideTables   = 2
	narrowYears  = 2
	tableRows    = 40
	sweeps       = 25
	perOneModel  = 24 // tables from a set that holds a single model
)

// byModel returns the rows of each make and model, and their names in order.
func byModel(rows []resale.Row) (map[string][]resale.Row, []string) {
	groups := map[string][]resale.Row{}
	for _, r := range rows {
		k := r.Make + " " + r.Model
		groups[k] = append(groups[k], r)
	}
	names := make([]string, 0, len(groups))
	for k := range groups {
		names = append(names, k)
	}
	sort.Strings(names)
	return groups, names
}

// samples draws tables from each model but those left out.
func samples(rows []resale.Row, without string) []resale.Sample {
	groups, names := byModel(rows)
	rng := rand.New(rand.NewPCG(1, 2))
	scale := 1
	if len(names) == 1 {
		scale = perOneModel / (narrowTables + wideTables)
	}
	var out []resale.Sample
	for _, name := range names {
		group := groups[name]
		for k := range scale * (narrowTables + wideTables) {
			s := drawSample(group, rng, k%(narrowTables+wideTables) < narrowTables)
			if name != without || len(names) == 1 {
				out = append(out, s)
			}
		}
	}
	return out
}

func drawSample(group []resale.Row, rng *rand.Rand, narrow bool) resale.Sample {
	at := group[rng.IntN(len(group))]
	return resale.Sample{Subject: subject(at), Rows: drawRows(group, at, rng, narrow)}
}

// drawRows returns rows of the group beside the vehicle, within a few model years of it where the table is narrow.
func drawRows(group []resale.Row, at resale.Row, rng *rand.Rand, narrow bool) []resale.Row {
	var rows []resale.Row
	for _, i := range rng.Perm(len(group)) {
		r := group[i]
		off := r.ModelYear - at.ModelYear
		if r.ID == at.ID || narrow && (off > narrowYears || off < -narrowYears) || len(rows) == tableRows {
			continue
		}
		rows = append(rows, r)
	}
	return rows
}

// start is the vague market from which the fit begins. Its condition effect can't be fitted to these data.
func start(s set) resale.Market {
	m := resale.Market{Name: s.name, Currency: s.currency.Code,
		Effects: map[string]resale.Effect{
			"age": {Mean: -0.1, SD: 0.05}, "bend": {Mean: 0, SD: 0.2}, "mileage/linear": {Mean: -0.04, SD: 0.03},
			"mileage/root": {Mean: -0.04, SD: 0.03}, "mileage/log": {Mean: -0.04, SD: 0.03},
			"condition": {Mean: 0.05, SD: 0.05}, // per step; starter value, from memory: replace it with yours
		},
		Spreads: map[string]prob.Scale{"trim": {SD: 0.08, Worth: 4}, "year": {SD: 0.05, Worth: 4}, "model": {SD: 0.3, Worth: 3},
			"number": {SD: 0.03, Worth: 3},
			"level":  {SD: 0.04, Worth: 3}, "slope": {SD: 0.02, Worth: 4}},
		Residual: prob.Scale{SD: 0.12, Worth: 8}, DF: 5,
	}
	_, names := byModel(s.rows)
	m.Models = len(names)
	for name, sd := range numberColumns(s.rows) {
		m.Effects[name] = resale.Effect{Mean: 0, SD: 0.1 / sd}
	}
	return m
}

// numberColumns returns the standard deviation of each extra column that holds numbers.
func numberColumns(rows []resale.Row) map[string]float64 {
	values := map[string][]float64{}
	words := map[string]bool{"age_months": true}
	for _, r := range rows {
		for name, v := range r.More {
			x, err := parse(v)
			if err != nil {
				words[name] = true
			}
			values[name] = append(values[name], x)
		}
	}
	out := map[string]float64{}
	for name, xs := range values {
		if sd := deviation(xs); !words[name] && sd > 0 {
			out[name] = sd
		}
	}
	return out
}

func deviation(xs []float64) float64 {
	mean, square := 0.0, 0.0
	for _, x := range xs {
		mean += x / float64(len(xs))
	}
	for _, x := range xs {
		square += (x - mean) * (x - mean) / float64(len(xs))
	}
	return math.Sqrt(square)
}

// fitMarket returns the market fitted to a set.
func fitMarket(s set) resale.Market {
	m := refit(s, "", start(s), sweeps)
	m.OLS = leastSquaresCheck(s)
	return m
}

// leastSquaresCheck returns the medians over models of the slopes of plain regressions.
func leastSquaresCheck(s set) map[string]float64 {
	groups, names := byModel(s.rows)
	var ages, miles []float64
	for _, name := range names {
		if age, mileage, err := resale.Slopes(groups[name], s.currency); err == nil {
			ages, miles = append(ages, age), append(miles, mileage)
		}
	}
	return map[string]float64{"age": mid(ages), "mileage": mid(miles)}
}

// refit returns m refined on a set without one model.
func refit(s set, without string, m resale.Market, sweeps int) resale.Market {
	tables := samples(s.rows, without)
	for range sweeps {
		m, _ = resale.Refine(tables, m, s.currency)
	}
	m.DF = bestDF(spoiledTables(tables), m, s)
	return m
}

// spoiledTables returns tables in which one price in ten is grossly wrong and some vehicles have damage that nobody says: on clean tables
// nearly normal errors foretell best, and a few such rows then ruin the answer.
func spoiledTables(tables []resale.Sample) []resale.Sample {
	out := make([]resale.Sample, len(tables))
	for i, t := range tables {
		rng := rand.New(rand.NewPCG(3, uint64(i)))
		rows := append([]resale.Row(nil), t.Rows...)
		for k := range rows {
			spoilGrossly(&rows[k], rng)
			spoilByDamage(&rows[k], rng)
		}
		out[i] = resale.Sample{Rows: rows, Subject: t.Subject}
	}
	return out
}

// bestDF returns the degrees of freedom with the best leave-one-out score, at least 4: with fewer, the scale of the errors tells too
// little of how far one price may lie off.
func bestDF(tables []resale.Sample, m resale.Market, s set) float64 {
	best, df := math.Inf(-1), m.DF
	for _, d := range []float64{4, 5, 7, 10} {
		m.DF = d
		if _, score := resale.Refine(tables, m, s.currency); score > best {
			best, df = score, d
		}
	}
	return df
}
