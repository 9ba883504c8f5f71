package learn

import (
	"fmt"
	"math"

	"walkline/valuation/belief"
)

// buys counts buys in words.
func buys(n int) string {
	if n == 1 {
		return "1 buy"
	}
	return fmt.Sprintf("%d buys", n)
}

// counted says how many buys there are and what they count for with their age.
func counted(q Proposal) string {
	n := len(q.Evidence)
	verb := "count"
	if n == 1 {
		verb = "counts"
	}
	return fmt.Sprintf("%s %s for %.1f: older ones count less.", buys(n), verb, q.Weight)
}

// moves says how far a factor goes and why no further.
func moves(q Proposal) []string {
	var out []string
	if q.Alone != nil {
		trust := "They are too few or too mixed to trust fully"
		if q.Pull > 0.8 {
			trust = "They are enough to trust"
		}
		out = append(out, fmt.Sprintf("They point to %s. %s, so the factor moves %.0f %% of the way there from %s.", q.say(*q.Alone), trust,
			100*q.Pull, q.say(q.Starter.At)))
	}
	if step := math.Abs(q.Proposed.At - q.Now.At); step < (q.Proposed.High-q.Proposed.Low)/4 {
		out = append(out, fmt.Sprintf("It would move from %s to %s, less than what is unsure of it (%s to %s): waiting for more buys costs "+
			"little.",
			q.say(q.Now.At), q.say(q.Proposed.At), q.say(q.Proposed.Low), q.say(q.Proposed.High)))
	}
	return out
}

// say writes a factor's value.
func (q Proposal) say(x float64) string {
	if q.Unit == ChanceUnit {
		return fmt.Sprintf("%.0f %%", 100*x)
	}
	return fmt.Sprintf("%.2f", x)
}

// why says how far a ratio moves and why.
func (f *fitted) why(key string, q Proposal) []string {
	if len(q.Evidence) == 0 {
		return []string{fmt.Sprintf("No buy of its own: it follows %s.", f.together)}
	}
	out := append([]string{counted(q)}, moves(q)...)
	if n := f.weak(key); n > 0 {
		out = append(out, fmt.Sprintf("%s of them had no forecast kept and stand against today's first guess for the same facts: weaker "+
			"evidence, "+
			"so each counts as %.1f at most.", buys(n), guessWeight))
	}
	if f.group > 0 && len(f.keys) > 1 {
		out = append(out, fmt.Sprintf("While it has few buys it leans on %s, which run at %.2f together.", f.together, math.Exp(f.post.Mean[0])))
	}
	if *q.Proposed.Spread > 0.02 {
		out = append(out, fmt.Sprintf("Builds scatter more about it than the forecasts' own ranges say: the range widens by %.0f %%.",
			100**q.Proposed.Spread))
	}
	return out
}

// weak counts the buys that speak for a key without a kept forecast.
func (f *fitted) weak(key string) (n int) {
	for _, a := range f.facts {
		for _, o := range a.ratios {
			if o.key == key && a.build.weak {
				n++
			}
		}
	}
	return n
}

// whyChance says how far a chance moves and why.
func whyChance(q Proposal, before, pooled belief.Chance, looks []look, ratio float64) []string {
	found := 0
	informed := false
	for _, l := range looks {
		if l.There {
			found++
		}
		informed = informed || l.Ratio != 1
	}
	out := []string{fmt.Sprintf("Found on %d of the %s in which it was looked for; counts as %.1f against the starter value's %.0f cases.",
		found, buys(len(looks)), q.Weight, before.A+before.B)}
	if math.Abs(ratio-1) > 0.05 {
		out = append(out, fmt.Sprintf("Similar damage is found %.2f times as often as forecast, which alone would make it %s.", ratio,
			q.say(pooled.Mean())))
	}
	if informed {
		out = append(out, "What was seen before the buy is taken into account: finding what was expected moves it less than finding what was "+
			"not.")
	}
	return append(out, moves(q)...)
}

// whySpread says what the scatter of the prices about their forecasts does to the range.
func whySpread(spread float64) string {
	switch {
	case spread > 1.03:
		return fmt.Sprintf("Prices scatter more than their forecasts said: the range widens to %.2f times its width.", spread)
	case spread < 0.97:
		return fmt.Sprintf("Prices scatter less than their forecasts said: the range narrows to %.2f times its width.", spread)
	}
	return "Prices scatter as their forecasts said: the range stays as wide as it is."
}

// slips names the sales that are left out.
func (s sales) slips() []string {
	var out []string
	for _, f := range s.left {
		out = append(out, fmt.Sprintf("%s is left out: %.3g times the forecast looks like a slip of the pen.", named(f.build), math.Exp(f.log)))
	}
	return out
}
