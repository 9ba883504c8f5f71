package hidden

import (
	"math"

	"walkline/valuation/prob"
)

// There is how likely a risk is at each value of the common factor.
type There struct {
	Chance float64   // before the answers: with the risk's loading it gives the chance at each factor
	Edges  []float64 // score of its own above which the damage is there, at each node of the factor; nil: no answer tells of the risk
}

// mostEdge bounds the score of a chance of nothing or of certainty.
const mostEdge = 12.0

// There returns how the i-th risk is drawn.
func (p Posterior) There(i int) There {
	t := There{Chance: p.risks[i].Chance.Mean()}
	if p.given[i] == nil {
		return t
	}
	t.Edges = make([]float64, factorNodes)
	for k, c := range p.given[i] {
		t.Edges[k] = min(max(prob.Edge(c), -mostEdge), mostEdge)
	}
	return t
}

// edge returns the score above which the damage is there at a value of the factor.
func (t There) edge(z float64) float64 {
	x := (z + factorSpan) / factorStep
	k := min(max(int(x), 0), factorNodes-2)
	return t.Edges[k] + (x-float64(k))*(t.Edges[k+1]-t.Edges[k])
}

// split returns the scenarios in which the damage is there.
func (t There) split(stream prob.Stream, lean prob.Lean, n int) []int32 {
	work, yes := make([]float64, n), make([]int32, n)
	if t.Edges == nil {
		at, _ := stream.Split(t.Chance, lean, nil, work, yes, make([]int32, n))
		return at
	}
	stream.Scores(prob.Lean{}, nil, work)
	count := 0
	for i, own := range work {
		yes[count] = int32(i)
		if own > t.edge(lean.Factor[i]) {
			count++
		}
	}
	return yes[:count]
}

// IfPresent returns the mean of the i-th risk's cost, own labour and days given the answers and that it is there.
// Source: [Risk.MeanIfPresent], the factor's distribution being that after the answers.
func (p Posterior) IfPresent(i int, rates map[string]float64) Mean {
	r := p.risks[i]
	if p.given[i] == nil && p.scores == nil {
		return r.MeanIfPresent(p.Chances[i], p.loading, rates)
	}
	return r.mean(p.shifted(i), rates)
}

// shifted returns the weights of the scores of cost, hours and days of a risk that is there.
func (p Posterior) shifted(i int) scores { return p.mixed(p.risks[i].rho(p.loading), p.at(i)) }

// mixed returns the weights of the scores that lean on the factor by that loading: each node has its share of them, about its own
// mean, its weight times the chance given (nil: 1).
func (p Posterior) mixed(rho float64, chance []float64) scores {
	rest := math.Sqrt(1 - rho*rho)
	w, sum := make(scores, meanNodes), 0.0
	for k, share := range p.weights {
		if chance != nil {
			share *= chance[k]
		}
		if share < leastShare {
			continue
		}
		for n := range w {
			w[n] += share * prob.NormPDF((node(n)-rho*factorNode(k))/rest)
		}
	}
	for _, x := range w {
		sum += x
	}
	if sum == 0 {
		return nil
	}
	for n := range w {
		w[n] /= sum
	}
	return w
}

// leastShare is the weight below which a node of the factor counts for nothing.
const leastShare = 1e-7

// Known returns the mean of a judgement and the chance of an event after the answers, each leaning on the factor by that loading.
func (p Posterior) Known(t prob.Three, chance, rho float64) (mean, likely float64) {
	if p.scores == nil || rho == 0 {
		return t.Mean(), chance
	}
	alone := Posterior{risks: []Risk{{Chance: Beta{chance, 1 - chance}}}, loading: rho}
	return p.mixed(rho, nil).mean(t), p.over(alone.prior(0))
}
