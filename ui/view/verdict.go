package view

import (
	"fmt"
	"slices"

	"walkline/ui/desk"
	"walkline/valuation"
)

// Verdict is what the right side of the worksheet says.
type Verdict struct {
	Headline string // over the figure
	Figure   string // the walk-away bid, or "Do not bid"
	Refused  bool
	Settled  bool        // false: the figure is of an older state of the case
	Binds    string      // what binds, in words
	Plans    []PlanRow   // where more than one plan is priced
	Unpriced string      // the ways out that the bid knows nothing of; empty: none
	Stop     string      // the stop line as something to do; empty: none is planned
	Lines    [][2]string // label and figure
	Drivers  []Share
	Next     []string // what is still to be entered before the lot can be valued
	Reasons  []string
	Warnings []string
	Care     string // where the cautions stand; empty: there are none
}

// Share is a cause with its part, 0..1.
type Share struct {
	Name string
	Part float64
}

// What stands for the bid until there is one: something is missing, or the lot is being valued.
const (
	NotYet  = "not yet"
	Working = "being valued"
)

// BeingValued reports whether the first valuation of the open lot is on its way.
func BeingValued(o desk.Open) bool { return o.Valued == nil && len(o.Faults) == 0 && o.Problem == "" }

// mostFaults is how many missing entries the verdict names at once.
const mostFaults = 6

// NewVerdict returns the verdict on an open lot.
func NewVerdict(o desk.Open) Verdict {
	v := Verdict{Headline: "Walk-away bid", Settled: o.Fresh}
	if len(o.Tried) > 0 {
		v.Headline = "Walk-away bid, a try"
	}
	if len(o.Faults) > 0 {
		v.Next = nextSteps(StillMissing(o))
	}
	if o.Problem != "" {
		v.Next = append(v.Next, o.Problem)
	}
	if o.Valued == nil {
		v.Figure = NotYet
		if BeingValued(o) {
			v.Figure = Working
		}
		return v
	}
	v.fill(o.Valued.Answer)
	if v.Binds != "" {
		v.Binds += freed(o)
	}
	if len(o.Valued.Answer.Needs) == 0 {
		v.Unpriced = unpriced(o.Valued.Of)
	}
	v.Care = joined(" ", careWords(len(Cautions(o))), starterWords(o.Valued.Of), guessWords(o.Valued.Answer.FirstGuess))
	return v
}

// nextSteps says what is still to be entered, the first few of many.
func nextSteps(missing []Missing) []string {
	var steps []string
	for i, m := range missing {
		if i == mostFaults {
			return append(steps, fmt.Sprintf("and %d more", len(missing)-i))
		}
		steps = append(steps, m.Words)
	}
	return steps
}

// careWords says how many cautions fit the lot, where the bid is decided.
func careWords(n int) string {
	switch n {
	case 0:
		return ""
	case 1:
		return "1 caution stands under Checks. The maker's procedure and the agency decide."
	}
	return Count(n, "caution") + " stand under Checks. The maker's procedure and the agency decide."
}

// starterWords says that the answer rests on starter values, where it does.
func starterWords(c valuation.Case) string {
	if !c.Repair.UseCatalogue && !c.Hidden.UseCatalogue {
		return ""
	}
	if c.Factors == nil || c.Factors.Empty() {
		return "It rests on starter values alone so far: what the catalogue brings in, and nothing learned from your own builds."
	}
	return "What the catalogue brings in is a starter value until you change it."
}

// guessWords says what the surveys of a first guess rest on.
func guessWords(g *valuation.FirstGuess) string {
	switch {
	case g == nil:
		return ""
	case g.Surveyed == 0:
		return "What such lots turn out to be is starter values."
	}
	return "What such lots turn out to be rests on " + Count(g.Surveyed, "lot") + " in your file and on starter values."
}

// fill writes an answer into the verdict.
func (v *Verdict) fill(a valuation.Answer) {
	p := NewPurse(a.Currency)
	v.Warnings = a.Warnings
	if len(a.Needs) > 0 {
		v.Figure, v.Next = NotYet, a.Reasons
		return
	}
	v.Plans, v.Stop = Plans(a), a.StopWords(p.Currency)
	v.Reasons = slices.DeleteFunc(slices.Clone(a.Reasons), func(r string) bool { return r == v.Stop })
	v.Figure, v.Refused = "Do not bid", true
	if a.WalkAway != nil {
		v.Figure, v.Refused = p.Show(*a.WalkAway), false
		v.Binds = "Set by: " + valuation.RuleWords[a.BindingRule]
		if a.FirstGuess != nil {
			v.Binds = "First guess. " + v.Binds
		}
	}
	if v.Refused && a.FirstGuess != nil {
		v.Reasons = append([]string{"First guess: nobody has looked at this lot."}, v.Reasons...)
	}
	at := "at this bid"
	if v.Refused {
		at = "at " + p.Group(a.Acquisition.Bid)
	}
	v.Lines = [][2]string{
		{"Chance of a loss " + at, Percent(a.Profit.LossChance)},
		{"Expected profit", p.Whole(a.Profit.Mean)},
		{"Profit, 8 times in 10", p.Range(a.Profit.P10, a.Profit.P90)},
	}
	v.Lines = append(v.Lines, winning(a, p)...)
	if a.Profit.PerHour != nil {
		v.Lines = append(v.Lines, [2]string{"Per hour of mine", p.Whole(*a.Profit.PerHour)})
	}
	v.Lines = append(v.Lines,
		[2]string{"Resale, 8 times in 10", p.Range(a.Resale.P10, a.Resale.P90)},
		[2]string{"My hours", fmt.Sprintf("%.0f", a.Hours.Mean)},
		[2]string{"Days until sold", fmt.Sprintf("%.0f to %.0f", a.Days.P10, a.Days.P90)})
	for i, d := range a.Drivers {
		if i == 3 {
			break
		}
		v.Drivers = append(v.Drivers, Share{d.Name, d.Share})
	}
}

// Fault says in the rebuilder's words what is missing or wrong.
func Fault(f valuation.Fault) string {
	if words, ok := faultWords[f.Key]; ok {
		return words
	}
	return Words(f.Key) + ": " + f.Value + ". Wanted: " + f.Want + "."
}

// faultWords put the faults of a new lot as next steps.
var faultWords = map[string]string{
	"resale":         "Resale: import comparables, or enter what it should sell for (low, likely, high).",
	"lot.model_year": "Facts: enter the model year; the comparables are brought to it.",
	"rules":          "Costs: turn on at least one house rule that a high bid breaks.",
}
