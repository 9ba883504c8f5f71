package plot

import "math"

// niceTicks returns round numbers (1, 2 or 5 times a power of ten apart) that cover low..high with about count steps. A
// range of no width gets one of its own.
func niceTicks(low, high float64, count int) []float64 {
	if math.IsNaN(low+high) || math.IsInf(low, 0) || math.IsInf(high, 0) {
		return []float64{0, 1}
	}
	if high < low {
		low, high = high, low
	}
	if high == low {
		pad := max(math.Abs(low)*0.1, 1)
		low, high = low-pad, high+pad
	}
	step := niceStep((high - low) / float64(max(count, 1)))
	first, last := math.Floor(low/step+1e-9), math.Ceil(high/step-1e-9)
	var ticks []float64
	for i := first; i <= last; i++ {
		ticks = append(ticks, i*step)
	}
	return ticks
}

// niceStep returns the smallest of 1, 2, 5 times a power of ten that is not below raw.
func niceStep(raw float64) float64 {
	power := math.Pow(10, math.Floor(math.Log10(raw)))
	for _, k := range []float64{1, 2, 5} {
		if raw <= k*power*(1+1e-9) {
			return k * power
		}
	}
	return 10 * power
}
