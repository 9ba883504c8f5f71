package hidden

import "slices"

// Look is one finding as one event, over all the risks that it informs.
//
// One answer serves several risks whose own figures need not give it the same chance. So the look stays silent ("no") with
// a chance of its own times a factor for each damage that is there, each factor being the ratio of that risk's chances of
// "no". The chance of its own is set so that "no" comes as often as the risks say on average. With one risk this is
// the risk's own figures, exactly. A "no" moves each risk by its own likelihood ratio; a "yes" is shared out between the
// causes that it may have. Source: noisy-or, Pearl 1988 (from memory).
type Look struct {
	Chances []float64    // of each risk before the answer
	Yes     [][2]float64 // of each: the chance of "yes" when the damage is not there, and when it is
}

// certain keeps a chance of "yes" off 1 where the other risks' factors are formed.
const certain = 1e-9

// No returns the chance of "no" when the damage of the i-th risk is not there, and when it is, the others being there or
// not as their chances say.
func (l Look) No(i int) (absent, present float64) {
	if len(l.Chances) == 1 {
		return 1 - l.Yes[0][0], 1 - l.Yes[0][1]
	}
	absent = l.Silent()
	for j := range l.Chances {
		if j != i {
			absent *= l.hush(j)
		}
	}
	return absent, absent * l.factor(i)
}

// factor is how much less often the look says "no" when the damage is there.
func (l Look) factor(i int) float64 {
	return (1 - l.Yes[i][1]) / max(1-l.Yes[i][0], certain)
}

// hush is the mean of factor over whether the damage is there.
func (l Look) hush(i int) float64 { return 1 - l.Chances[i] + l.Chances[i]*l.factor(i) }

// Silent returns the chance of "no" when none of the damage is there.
func (l Look) Silent() float64 {
	mean, hush, most := 0.0, 1.0, 1.0
	for i := range l.Chances {
		mean += (1 - l.Yes[i][0]) * l.hush(i) / float64(len(l.Chances))
		hush *= l.hush(i)
		most *= max(1, l.factor(i))
	}
	if mean >= hush/most { // also where some damage that is surely there never stays silent
		return 1 / most
	}
	return mean / hush
}

// Chances returns the chance of each risk after the answers (finding -> yes | no; absent = not looked). The order of the
// answers does not matter: each is weighed by the chances before any of them. Shape: as risks.
// Source: posterior odds = prior odds x product of likelihood ratios.
func Chances(risks []Risk, answers map[string]string) []float64 {
	looks, at := map[string]*Look{}, map[string][]int{}
	prior := make([]float64, len(risks))
	for i, r := range risks {
		prior[i] = r.Chance.Mean()
		for _, e := range r.Findings {
			if answers[e.Finding] == "" {
				continue
			}
			if looks[e.Finding] == nil {
				looks[e.Finding] = &Look{}
			}
			l := looks[e.Finding]
			l.Chances, l.Yes = append(l.Chances, prior[i]), append(l.Yes, [2]float64{e.IfAbsent, e.IfPresent})
			at[e.Finding] = append(at[e.Finding], i)
		}
	}
	out := slices.Clone(prior)
	for i, r := range risks {
		there, not := prior[i], 1-prior[i]
		for _, e := range r.Findings {
			l := looks[e.Finding]
			if l == nil {
				continue
			}
			absent, present := l.No(slices.Index(at[e.Finding], i))
			if answers[e.Finding] == "yes" {
				absent, present = 1-absent, 1-present
			}
			there, not = there*present, not*absent
		}
		if there+not > 0 { // else the answers contradict each other outright: Contradicted says so
			out[i] = there / (there + not)
		}
	}
	return out
}
