package checks

import (
	"walkline/valuation/hidden"
)

// Stakes is what the looks are about: the risks, and how far the rules let the buyer go at present.
type Stakes struct {
	Risks    []hidden.Risk
	Chances  []float64         // of the risks, after the answers
	IfThere  []float64         // mean cost of each risk when it is there: money, own hours and days in one figure
	Answers  map[string]string // finding -> yes | no
	Findings []hidden.Finding
	Surplus  Surplus
	Most     float64 // greatest money out that the house rules allow now
}

// look is one finding not yet looked at, with the risks that it informs.
type look struct {
	finding hidden.Finding
	informs []informed
}

// informed is one risk as a finding tells of it.
type informed struct {
	risk   int
	chance float64 // of the risk now
	cost   float64 // if it is there
	yes    [2]float64
}

// looks returns the findings that are open and inform a risk, in the order of the findings.
func (s Stakes) looks() []look {
	at := map[string]int{}
	var all []look
	for _, f := range s.Findings {
		if s.Answers[f.ID] == "" {
			at[f.ID] = len(all)
			all = append(all, look{finding: f})
		}
	}
	for i, r := range s.Risks {
		for _, e := range r.Findings {
			if k, open := at[e.Finding]; open {
				all[k].informs = append(all[k].informs, informed{i, s.Chances[i], s.IfThere[i], [2]float64{inside(e.IfAbsent), inside(e.IfPresent)}})
			}
		}
	}
	return all
}

// certain keeps a chance that a user gave as 0 or 1 off the end, where the odds have no ratio.
const certain = 1e-9

func inside(p float64) float64 { return min(max(p, certain), 1-certain) }

// Worth returns what one look is worth, for each open finding that informs a risk.
func (s Stakes) Worth() map[string]float64 {
	worth := map[string]float64{}
	for _, l := range s.looks() {
		if len(l.informs) > 0 {
			worth[l.finding.ID] = gain(s.value, l.answers())
		}
	}
	return worth
}

// value is the surplus when the money that may go out moves by payoff.
func (s Stakes) value(payoff []float64) float64 { return s.Surplus.At(s.Most + payoff[0]) }

// answers returns what "yes" and "no" would move, over all the risks that the look informs.
//
// One answer serves several risks whose own figures need not give it the same chance. So the look is read as one event:
// it stays silent with a chance of its own times a factor for each damage that is there, each factor being the ratio of
// that risk's chances of "no" (with one risk this is its likelihood ratio, exactly). The chance of its own is set so that
// "no" comes as often as the risks say on average. A "no" then moves each risk as package hidden does; a "yes" is
// shared out between the causes that it may have. Source: noisy-or, Pearl 1988 (from memory).
func (l look) answers() []answer {
	silent := l.silent()
	var sum []answer
	for i, r := range l.informs {
		own := silent
		for j, other := range l.informs {
			if j != i {
				own *= other.hush()
			}
		}
		no := []float64{own, own * r.factor()}
		e := experiment{prior: []float64{1 - r.chance, r.chance}, payoff: [][]float64{{r.chance * r.cost, r.chance*r.cost - r.cost}},
			says: [][]float64{{1 - no[0], 1 - no[1]}, no}}
		sum = added(sum, e.answers())
	}
	return sum
}

// factor is how much less often the look says "no" when the damage is there.
func (r informed) factor() float64 { return (1 - r.yes[1]) / (1 - r.yes[0]) }

// hush is the mean of factor over whether the damage is there.
func (r informed) hush() float64 { return 1 - r.chance + r.chance*r.factor() }

// silent returns the chance of "no" when none of the damage is there.
func (l look) silent() float64 {
	mean, hush, most := 0.0, 1.0, 1.0
	for _, r := range l.informs {
		mean += (1 - r.yes[0]) * r.hush() / float64(len(l.informs))
		hush *= r.hush()
		most *= max(1, r.factor())
	}
	return min(mean/hush, 1/most)
}

// added returns the answers of one look with what they move in another risk added; their chances are the same.
func added(sum, more []answer) []answer {
	if sum == nil {
		return more
	}
	for k := range sum {
		for i := range sum[k].payoff {
			sum[k].payoff[i] += more[k].payoff[i]
		}
	}
	return sum
}

// Perfect returns what knowing of every open risk whether it is there would be worth: no look is worth more.
func (s Stakes) Perfect() float64 {
	var sets [][]answer
	for i, p := range s.Chances {
		e := experiment{prior: []float64{1 - p, p}, payoff: [][]float64{{p * s.IfThere[i], p*s.IfThere[i] - s.IfThere[i]}}}
		sets = append(sets, e.perfect().answers())
	}
	return s.together(sets)
}

// mostPerRisk bounds the looks that are counted of one risk: each doubles the answers, and more than five of one risk are
// rare. The first ones count.
const mostPerRisk = 5

// JointWorth returns what several looks together are worth. Looks that tell of the same risk overlap and are counted as
// one survey of it; a look that tells of several risks is taken as a look of its own for each.
func (s Stakes) JointWorth(findings []string) float64 {
	taken := map[string]bool{}
	for _, id := range findings {
		taken[id] = true
	}
	var sets [][]answer
	for i, r := range s.Risks {
		if set := survey(r, s.Chances[i], s.IfThere[i], taken); len(set) > 1 {
			sets = append(sets, set)
		}
	}
	return s.together(sets)
}

// survey returns the shifts that the taken findings of one risk may bring, answer by answer.
func survey(r hidden.Risk, chance, cost float64, taken map[string]bool) []answer {
	type leaf struct{ there, not float64 }
	leaves, n := []leaf{{chance, 1 - chance}}, 0
	for _, e := range r.Findings {
		if !taken[e.Finding] || n == mostPerRisk {
			continue
		}
		n++
		a, b := inside(e.IfPresent), inside(e.IfAbsent)
		var next []leaf
		for _, l := range leaves {
			next = append(next, leaf{l.there * a, l.not * b}, leaf{l.there * (1 - a), l.not * (1 - b)})
		}
		leaves = next
	}
	out := make([]answer, len(leaves))
	for i, l := range leaves {
		p := l.there + l.not
		out[i] = answer{p, []float64{cost * chance}}
		if p > 0 {
			out[i].payoff[0] -= cost * l.there / p
		}
	}
	return out
}
