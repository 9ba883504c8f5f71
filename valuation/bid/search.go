package bid

// mostSecants is how many secants are drawn before the search only halves; a smooth function needs about ten.
const mostSecants = 24

// turn returns the last x from which f, which does not fall, is at most nothing: f(lo) <= 0 < f(hi) on the way in, and on the way
// out lo and hi lie no more than step apart. With a step of 1 and whole bounds it looks at whole numbers only.
// Source: the Illinois variant of the false position, Dowell and Jarratt 1971 (from memory), halving when that is slow.
func turn(lo, hi, step float64, f func(x float64) float64) float64 {
	below, above := f(lo), f(hi)
	side := 0
	for round := 0; hi-lo > step; round++ {
		x := lo + (hi-lo)*below/(below-above)
		if round >= mostSecants || !(x >= lo && x <= hi) {
			x = lo + (hi-lo)/2
		}
		x = max(lo+step, min(hi-step, whole(x, step)))
		if !(x > lo && x < hi) {
			break
		}
		y := f(x)
		if y <= 0 {
			lo, below = x, y
			if side < 0 {
				above /= 2
			}
			side = -1
		} else {
			hi, above = x, y
			if side > 0 {
				below /= 2
			}
			side = 1
		}
	}
	return lo
}

// whole returns x, cut to a whole number where the step is 1.
func whole(x, step float64) float64 {
	if step == 1 {
		return float64(int64(x))
	}
	return x
}
