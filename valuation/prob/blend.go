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
	below := func(x float64) float64 {
		sum := 0.0
		for _, t := range tables {
			sum += t.CDF(x)
		}
		return sum / float64(len(tables))
	}
	values := make([]float64, len(chances))
	from := low
	for i, p := range chances {
		a, b := from, high
		for range halvings {
			if m := (a + b) / 2; below(m) < p {
				a = m
			} else {
				b = m
			}
		}
		values[i], from = b, b
	}
	values[0], values[len(values)-1] = low, high
	return NewTable(chances, values)
}

// halvings bring a quantile to within a ten-thousand-millionth of the range.
const halvings = 34

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
