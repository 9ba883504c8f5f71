package checks

// cells is the number of even steps over which shifts are added up, beside a margin: each sharing reaches one step further.
const cells = 1024

// spread is a distribution over even steps from lo.
type spread struct {
	lo, step float64
	mass     []float64
}

// together returns what hearing several independent sets of answers is worth, each set moving the money by shifts whose
// mean is 0. Shifts are summed over even steps, each shared between the two steps beside it so that means are kept.
func (s Stakes) together(sets [][]answer) float64 {
	lo, hi := reach(sets)
	if hi-lo < leastWorth {
		return 0
	}
	step, margin := (hi-lo)/cells, len(sets)+1
	d := spread{lo: lo - step*float64(margin), step: step, mass: make([]float64, cells+2*margin+1)}
	share(d.mass, -d.lo/step, 1)
	for _, set := range sets {
		d.add(set)
	}
	return gain(s.value, d.answers())
}

// reach returns the least and the greatest sum of shifts.
func reach(sets [][]answer) (lo, hi float64) {
	for _, set := range sets {
		least, most := 0.0, 0.0
		for _, a := range set {
			least, most = min(least, a.payoff[0]), max(most, a.payoff[0])
		}
		lo, hi = lo+least, hi+most
	}
	return lo, hi
}

// share puts mass at a place between two steps on both, so that its mean stays.
func share(mass []float64, at, m float64) {
	i := int(at)
	f := at - float64(i)
	mass[i] += m * (1 - f)
	mass[i+1] += m * f
}

// add adds an independent set of shifts.
func (d *spread) add(set []answer) {
	next := make([]float64, len(d.mass))
	for _, a := range set {
		by := a.payoff[0] / d.step
		for i, m := range d.mass {
			if m > 0 {
				share(next, float64(i)+by, m*a.chance)
			}
		}
	}
	d.mass = next
}

// answers returns the distribution as answers.
func (d *spread) answers() []answer {
	var out []answer
	for i, m := range d.mass {
		if m > 0 {
			out = append(out, answer{m, []float64{d.lo + d.step*float64(i)}})
		}
	}
	return out
}
