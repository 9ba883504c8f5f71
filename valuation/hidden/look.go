package hidden

// Look is one finding as one event, over all the risks that it informs.
//
// One answer serves several risks whose own figures need not give it the same chance. So the look stays silent ("no") with
// a chance of its own times a factor for each damage that is there, each factor being the ratio of that risk's chances of
// "no". What says "yes" with none of the damage there is a false alarm: its chance is the smallest that any of the risks
// gives it. With one risk this is the risk's own figures, exactly. A "no" moves each risk by its own likelihood ratio; a "yes"
// is shared out between the causes that it may have. Source: noisy-or, Pearl 1988 (from memory).
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
func (l Look) factor(i int) float64 { return factor(l.Yes[i]) }

func factor(yes [2]float64) float64 { return (1 - yes[1]) / max(1-yes[0], certain) }

// hush is the mean of factor over whether the damage is there.
func (l Look) hush(i int) float64 { return 1 - l.Chances[i] + l.Chances[i]*l.factor(i) }

// Silent returns the chance of "no" when none of the damage is there.
func (l Look) Silent() float64 { return silent(l.Yes) }

// silent returns that chance: one less the false alarm, and so low that no damage that is there brings "no" above 1.
func silent(yes [][2]float64) float64 {
	alarm, most := 1.0, 1.0
	for _, y := range yes {
		alarm = min(alarm, y[0])
		most *= max(1, factor(y))
	}
	return min(max(1-alarm, certain), 1/most)
}
