package main

import (
	"math"
	"sort"

	"walkline/valuation/prob"
	"walkline/valuation/resale"
)

// matrix returns all columns that the comparables and the subject state as standardised numbers, words as one column for
// each level, and the subject's own.
func matrix(t task) (x [][]float64, own []float64) {
	x = make([][]float64, len(t.comps))
	for _, value := range readers(t) {
		at, ok := value(t.subject)
		if !ok {
			continue
		}
		column := make([]float64, len(t.comps))
		for i, r := range t.comps {
			if column[i], ok = value(r); !ok {
				column[i] = at
			}
		}
		mean, sd := prob.Mean(column), deviation(column)
		if sd == 0 {
			continue
		}
		for i, v := range column {
			x[i] = append(x[i], (v-mean)/sd)
		}
		own = append(own, (at-mean)/sd)
	}
	return x, own
}

// reader reads one number of a vehicle, if it is stated.
type reader func(resale.Row) (float64, bool)

// readers returns the columns of a task: model year, mileage, numbers, and each common word as 0 or 1.
func readers(t task) []reader {
	out := []reader{
		func(r resale.Row) (float64, bool) { return float64(r.ModelYear), true },
		func(r resale.Row) (float64, bool) {
			if r.Mileage == nil {
				return 0, false
			}
			return tenThousands(r), true
		},
	}
	words := []string{"trim"}
	for _, name := range names(t.subject.More) {
		if _, err := parse(t.subject.More[name]); err != nil {
			words = append(words, name)
			continue
		}
		out = append(out, func(r resale.Row) (float64, bool) { v, err := parse(r.More[name]); return v, err == nil })
	}
	for _, name := range words {
		for _, level := range levels(t.comps, name) {
			out = append(out, func(r resale.Row) (float64, bool) {
				if word(r, name) == level {
					return 1, true
				}
				return 0, true
			})
		}
	}
	return out
}

func word(r resale.Row, name string) string {
	if name == "trim" {
		return r.Trim
	}
	return r.More[name]
}

func names(m map[string]string) []string {
	var out []string
	for name := range m {
		out = append(out, name)
	}
	sort.Strings(out)
	return out
}

// levels returns the words of a column that at least two comparables have.
func levels(rows []resale.Row, name string) []string {
	counts := map[string]string{}
	var out []string
	for _, r := range rows {
		w := word(r, name)
		switch counts[w] {
		case "":
			counts[w] = "once"
		case "once":
			counts[w] = "more"
			out = append(out, w)
		}
	}
	sort.Strings(out)
	return out
}

// ridge forecasts by ridge regression of the log price on all columns, the penalty chosen by exact leave-one-out errors.
func ridge(t task) float64 {
	x, own := matrix(t)
	y := logs(t)
	level := prob.Mean(y)
	best, answer := math.Inf(1), level
	for _, penalty := range []float64{0.1, 0.3, 1, 3, 10, 30, 100, 300} {
		coef, inverse, err := penalised(x, y, level, penalty)
		if err != nil {
			continue
		}
		sum := 0.0
		for i, row := range x {
			e := (y[i] - level - dot(row, coef)) / (1 - 1/float64(len(y)) - form(row, inverse))
			sum += e * e
		}
		if sum < best {
			best, answer = sum, level+dot(own, coef)
		}
	}
	return math.Exp(answer)
}

func penalised(x [][]float64, y []float64, level, penalty float64) (coef, inverse []float64, err error) {
	p := len(x[0])
	if p == 0 {
		return nil, nil, nil
	}
	s, b := prob.NewSymmetric(p), make([]float64, p)
	a := s.Raw()
	for i, row := range x {
		for j, v := range row {
			b[j] += v * (y[i] - level)
			for k := j; k < p; k++ {
				a[j*p+k] += v * row[k]
			}
		}
	}
	for j := range p {
		a[j*p+j] += penalty
	}
	return s.Solve(b)
}

func logs(t task) []float64 {
	y := make([]float64, len(t.comps))
	for i, r := range t.comps {
		y[i] = math.Log(t.set.currency.Major(r.Price))
	}
	return y
}

func dot(a, b []float64) float64 {
	sum := 0.0
	for i, v := range a {
		sum += v * b[i]
	}
	return sum
}

// form returns row' m row.
func form(row, m []float64) float64 {
	sum := 0.0
	for i, v := range row {
		sum += v * dot(m[i*len(row):(i+1)*len(row)], row)
	}
	return sum
}
