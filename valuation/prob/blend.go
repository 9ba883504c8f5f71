package prob

// Blend returns the distribution of which each of those is equally likely, by its quantiles at the chances. Shape: chances as
// [NewTable] wants them. Limits: at least one table.
func Blend(tables []Table, chances []float64) Table {
	if len(tables) == 1 {
		return tables[0]
	}
	low, high := tables[0].x[0], tables[0].x[0]
	for _, t := range tables {
		low, high = min(low, t.x[0]), max(high, t.x[len(t.x)-1])
	}
	walks := make([]Walk, len(tables))
	for i := range tables {
		walks[i] = tables[i].Walk()
	}
	lack := func(p, x float64) float64 {
		sum := 0.0
		for i := range walks {
			c, _ := walks[i].Lower(x)
			sum += c
		}
		return sum/float64(len(walks)) - p
	}
	values := make([]float64, len(chances))
	values[0], values[len(values)-1] = low, high
	for i := 1; i < len(chances)-1; i++ {
		values[i] = crossing(values[i-1], high, (high-low)*finest, func(x float64) float64 { return lack(chances[i], x) })
	}
	return NewTable(chances, values)
}

// finest is how near a quantile of a blend is found, as a share of the range.
const finest = 1e-10

// crossing returns where f, which does not fall from a to b, crosses nothing, to within tol: from the right of it. Source: the Illinois
// variant of the false position, Dowell and Jarratt 1971 (from memory), halving every third time, for f may stand still.
func crossing(a, b, tol float64, f func(float64) float64) float64 {
	below, above, side := f(a), f(b), 0
	if below >= 0 {
		return a
	}
	for round := 1; b-a > tol; round++ {
		x := a + (b-a)*below/(below-above)
		if round%3 == 0 || !(x > a && x < b) {
			x = a + (b-a)/2
		}
		if !(x > a && x < b) {
			break
		}
		y := f(x)
		if y < 0 {
			a, below = x, y
			if side < 0 {
				above /= 2
			}
			side = -1
			continue
		}
		b, above = x, y
		if side > 0 {
			below /= 2
		}
		side = 1
	}
	return b
}

// Nodes returns n values of t that stand for its n parts of one chance each: the means of the parts are near, their mean is that of t.
func (t Three) Nodes(n int) []float64 {
	if t.Sure() {
		return []float64{t.Low}
	}
	out, sum := make([]float64, n), 0.0
	for i := range out {
		out[i] = t.Quantile((float64(i) + 0.5) / float64(n))
		sum += out[i]
	}
	for i := range out {
		out[i] = min(max(out[i]+t.Mean()-sum/float64(n), t.Low), t.High)
	}
	return out
}
