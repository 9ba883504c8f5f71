package checks

// experiment is an unknown with its states, the actions that may be taken, and what a look says in each state.
// Shape: prior and each row of payoff and says have one value a state.
type experiment struct {
	prior  []float64   // chance of each state
	payoff [][]float64 // a row for each action: what it brings in each state
	says   [][]float64 // a row for each answer: its chance in each state
}

// answer is one thing that a look may say: its chance, and what each action then brings on average.
type answer struct {
	chance float64
	payoff []float64
}

// answers returns what the look may say. Source: Bayes' rule; preposterior analysis, Raiffa 1968.
func (e experiment) answers() []answer {
	out := make([]answer, len(e.says))
	for k, says := range e.says {
		a := answer{payoff: make([]float64, len(e.payoff))}
		for s, p := range e.prior {
			joint := p * says[s]
			a.chance += joint
			for i := range a.payoff {
				a.payoff[i] += joint * e.payoff[i][s]
			}
		}
		for i := range a.payoff {
			if a.chance > 0 {
				a.payoff[i] /= a.chance
			}
		}
		out[k] = a
	}
	return out
}

// perfect returns the same unknown with a look that names its state.
func (e experiment) perfect() experiment {
	says := make([][]float64, len(e.prior))
	for s := range says {
		says[s] = make([]float64, len(e.prior))
		says[s][s] = 1
	}
	return experiment{e.prior, e.payoff, says}
}

// gain returns what hearing the answers before acting is worth: the mean of the best that can be had after each, less
// the best that can be had now. value gives the best from the mean payoffs of the actions. It is never negative where
// value is convex (Jensen); what float64 leaves below zero is cut.
func gain(value func(payoff []float64) float64, answers []answer) float64 {
	if len(answers) == 0 {
		return 0
	}
	now, after := make([]float64, len(answers[0].payoff)), 0.0
	for _, a := range answers {
		for i, x := range a.payoff {
			now[i] += a.chance * x
		}
		after += a.chance * value(a.payoff)
	}
	worth := after - value(now)
	if worth < leastWorth {
		return 0
	}
	return worth
}

// leastWorth is the money below which a worth is the dust of float64.
const leastWorth = 1e-6
