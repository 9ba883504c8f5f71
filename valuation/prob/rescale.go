package prob

import "math"

// Times returns the judgement with all three points multiplied by f. Limits: f > 0.
func (t Three) Times(f float64) Three { return Three{t.Low * f, t.Likely * f, t.High * f} }

// Narrowed returns the judgement drawn in about its most likely value: share 1 leaves it, 0 makes it certain.
func (t Three) Narrowed(share float64) Three {
	return Three{t.Likely - share*(t.Likely-t.Low), t.Likely, t.Likely + share*(t.High-t.Likely)}
}

// Narrowed returns the distribution with its distances from the mean times share; the mean stays. Limits: share in (0, 1].
func (t Table) Narrowed(share float64) Table {
	if t.Certain() || share == 1 {
		return t
	}
	m := t.Mean()
	x := make([]float64, len(t.x))
	for i, q := range t.x {
		x[i] = m + share*(q-m)
	}
	return NewTable(t.p, x)
}

// Rescaled returns the distribution with its median times f and its spread about the median, on the log scale, times
// spread: each quantile q becomes median f (q / median)^spread. Limits: no value below 0, a median above 0; f, spread > 0.
func (t Table) Rescaled(f, spread float64) Table {
	median := t.Quantile(0.5)
	if t.Certain() {
		return CertainTable(median * f)
	}
	x := make([]float64, len(t.x))
	for i, q := range t.x {
		if x[i] = q * f; spread != 1 {
			x[i] = median * f * math.Pow(q/median, spread)
		}
	}
	return NewTable(t.p, x)
}
