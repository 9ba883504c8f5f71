package hidden

import (
	"math"

	"walkline/valuation/prob"
)

// Posterior is what is believed of the lot's common factor and of each risk after the answers. It is a value: its methods
// change nothing.
//
// Bad signs tell of more than their own damage: a lot that shows many of them is worse than it looks all over. Given the
// common factor z, risks are independent (one-factor Gaussian copula) and so are the answers given the damage that is
// there; so the chance of all answers is worked out at each node of an even grid of z, and Bayes' rule over the grid gives the factor.
type Posterior struct {
	Chances []float64 // of each risk, after the answers
	risks   []Risk
	loading float64
	weights []float64   // of the nodes, summing to 1
	given   [][]float64 // of each risk, its chance at each node; nil: the copula's own, no answer tells of it
	scores  []float64   // normal score of the chance below each node; nil: the factor is as it was before the answers
	err     error
}

// The grid of the common factor: an even one, on which the trapezoid rule is exact to about 1e-9 for smooth integrands that vanish
// at its ends.
const (
	factorNodes = 65
	factorSpan  = 6.0
	factorStep  = 2 * factorSpan / (factorNodes - 1)
)

func factorNode(k int) float64 { return -factorSpan + factorStep*float64(k) }

// sign is one answer, over the risks that it tells of.
type sign struct {
	yes    bool
	risks  []int
	says   [][2]float64 // of each: the chance of "yes" when the damage is not there, and when it is
	silent float64
}

// factor is how much less often the answer is "no" when the damage of that risk is there.
func (s sign) factor(risk int) float64 { return factor(s.says[indexOf(s.risks, risk)]) }

// signs returns the answers that tell of a risk, and those of each risk.
func signs(risks []Risk, answers map[string]string) (said []sign, of [][]int) {
	at := map[string]int{}
	of = make([][]int, len(risks))
	for i, r := range risks {
		for _, e := range r.Findings {
			if answers[e.Finding] == "" {
				continue
			}
			s, known := at[e.Finding]
			if !known {
				s = len(said)
				at[e.Finding] = s
				said = append(said, sign{yes: answers[e.Finding] == "yes"})
			}
			if indexOf(said[s].risks, i) < 0 {
				said[s].risks, said[s].says = append(said[s].risks, i), append(said[s].says, [2]float64{e.IfAbsent, e.IfPresent})
				of[i] = append(of[i], s)
			}
		}
	}
	for s := range said {
		said[s].silent = silent(said[s].says)
	}
	return said, of
}

// After returns what is believed after the answers (finding -> yes | no; absent = not looked); loading is that of risks which name
// none. The order of answers and risks does not matter. Answers that cannot all be true count for nothing: [Risk.Contradicted]
// names them. Errors, by Err: ErrTied.
func After(risks []Risk, answers map[string]string, loading float64) Posterior {
	p := Posterior{risks: risks, loading: loading, given: make([][]float64, len(risks))}
	said, of := signs(risks, answers)
	all, err := ties(said, of)
	p.err = err
	likely := make([]float64, factorNodes)
	for k := range likely {
		likely[k] = 1
	}
	for _, t := range all {
		p.learn(t, likely)
	}
	p.weigh(likely)
	p.Chances = make([]float64, len(risks))
	for i, r := range risks {
		p.Chances[i] = r.Chance.Mean()
		if p.given[i] != nil || p.scores != nil {
			p.Chances[i] = p.over(p.at(i))
		}
	}
	return p
}

// Err returns nil, or ErrTied; then the answers count for nothing.
func (p Posterior) Err() error { return p.err }

// prior returns the chance of a risk at each node before the answers.
func (p Posterior) prior(i int) []float64 {
	r, q := p.risks[i], make([]float64, factorNodes)
	edge, rho := prob.Edge(r.Chance.Mean()), r.rho(p.loading)
	rest := math.Sqrt(1 - rho*rho)
	for k := range q {
		q[k] = r.Chance.Mean()
		if rho != 0 {
			q[k] = prob.NormCDF((rho*factorNode(k) - edge) / rest)
		}
	}
	return q
}

func (r Risk) rho(loading float64) float64 {
	if r.Loading != nil {
		return *r.Loading
	}
	return loading
}

// learn takes in the answers of one tie: the chances of its risks at each node, and how likely the answers are there.
func (p Posterior) learn(t tie, likely []float64) {
	chance, q, given := make([]float64, factorNodes), make([][]float64, len(t.steps)), make([][]float64, len(t.steps))
	for n, st := range t.steps {
		q[n], given[n] = p.prior(st.risk), make([]float64, factorNodes)
	}
	at, joint, most := make([]float64, len(t.steps)), make([]float64, len(t.steps)), 0.0
	for k := range chance {
		for n := range q {
			at[n] = q[n][k]
		}
		chance[k] = t.weigh(at, joint)
		most = max(most, chance[k])
		for n := range q {
			given[n][k] = at[n]
			if chance[k] > 0 {
				given[n][k] = min(1, joint[n]/chance[k])
			}
		}
	}
	if most <= 0 {
		return
	}
	for k := range chance {
		likely[k] *= chance[k] / most
	}
	for n, st := range t.steps {
		p.given[st.risk] = given[n]
	}
}

// at returns the chance of a risk at each node after the answers.
func (p Posterior) at(i int) []float64 {
	if p.given[i] != nil {
		return p.given[i]
	}
	return p.prior(i)
}

// over returns the mean of a figure of the nodes over the factor.
func (p Posterior) over(xs []float64) float64 {
	middle, sum := xs[factorNodes/2], 0.0
	for k, x := range xs {
		sum += p.weights[k] * (x - middle)
	}
	return middle + sum
}

// even is how little the answers' chance may differ between the nodes for them to tell nothing of the factor.
const even = 1e-12

// weigh sets the weights of the nodes, and the scores where the answers tell of the factor.
func (p *Posterior) weigh(likely []float64) {
	density, sum, least, most := make([]float64, factorNodes), 0.0, math.Inf(1), 0.0
	for k, l := range likely {
		density[k] = prob.NormPDF(factorNode(k)) * l
		sum += density[k]
		least, most = min(least, l), max(most, l)
	}
	p.weights = make([]float64, factorNodes)
	for k := range density {
		p.weights[k] = density[k] / sum
	}
	if most-least > even*most {
		p.scores = scoresOf(p.weights)
	}
}
