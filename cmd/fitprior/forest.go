package main

import (
	"math"
	"math/rand/v2"
	"sort"
)

// Limits of the forest: the usual ones for regression (Breiman, Random Forests, Machine Learning 45 (2001) 5-32, from memory).
const (
	trees    = 100
	leafRows = 3
	tried    = 3 // one column in so many is tried at a split
)

// forest forecasts by a random forest of regression trees of the log price on all columns.
func forest(t task) float64 {
	x, own := matrix(t)
	y := logs(t)
	rng := rand.New(rand.NewPCG(7, uint64(len(y))))
	sum := 0.0
	for range trees {
		drawn := make([]int, len(y))
		for i := range drawn {
			drawn[i] = rng.IntN(len(y))
		}
		sum += descend(x, y, own, drawn, rng)
	}
	return math.Exp(sum / trees)
}

// descend grows the one branch of a tree that the subject falls into, and returns the mean of its leaf.
func descend(x [][]float64, y, own []float64, rows []int, rng *rand.Rand) float64 {
	for {
		column, edge, ok := split(x, y, rows, rng)
		if !ok {
			sum := 0.0
			for _, i := range rows {
				sum += y[i] / float64(len(rows))
			}
			return sum
		}
		var kept []int
		for _, i := range rows {
			if (x[i][column] < edge) == (own[column] < edge) {
				kept = append(kept, i)
			}
		}
		rows = kept
	}
}

// split returns the best of some columns' edges: the one with the least squares within its sides.
func split(x [][]float64, y []float64, rows []int, rng *rand.Rand) (column int, edge float64, ok bool) {
	if len(rows) < 2*leafRows {
		return 0, 0, false
	}
	best := math.Inf(1)
	order := append([]int(nil), rows...)
	p := len(x[0])
	for _, j := range rng.Perm(p)[:(p+tried-1)/tried] {
		sort.Slice(order, func(a, b int) bool { return x[order[a]][j] < x[order[b]][j] })
		left, right := tally{}, tally{}
		for _, i := range order {
			right.add(y[i], 1)
		}
		for k, i := range order[:len(order)-leafRows] {
			left.add(y[i], 1)
			right.add(y[i], -1)
			next := x[order[k+1]][j]
			if k+1 < leafRows || next == x[i][j] {
				continue
			}
			if s := left.within() + right.within(); s < best {
				best, column, edge, ok = s, j, (x[i][j]+next)/2, true
			}
		}
	}
	return column, edge, ok
}

// tally adds up values to tell their sum of squares about their mean.
type tally struct{ n, sum, square float64 }

func (t *tally) add(v, times float64) {
	t.n += times
	t.sum += times * v
	t.square += times * v * v
}

func (t tally) within() float64 { return t.square - t.sum*t.sum/math.Max(1, t.n) }
