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
func (l look) answers() []answer {
	event := l.event()
	var sum []answer
	for i, r := range l.informs {
		absent, present := event.No(i)
		e := experiment{prior: []float64{1 - r.chance, r.chance}, payoff: [][]float64{{r.chance * r.cost, r.chance*r.cost - r.cost}},
			says: [][]float64{{1 - absent, 1 - present}, {absent, present}}}
		sum = added(sum, e.answers())
	}
	return sum
}

// event returns the look over the chances of the moment.
func (l look) event() hidden.Look {
	var e hidden.Look
	for _, r := range l.informs {
		e.Chances, e.Yes = append(e.Chances, r.chance), append(e.Yes, r.yes)
	}
	return e
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
