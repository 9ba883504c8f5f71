package checks

import (
	"github.com/shopspring/decimal"

	"walkline/valuation/money"
)

// Damaged is what the total-loss rules compare, all in minor units of one currency.
type Damaged struct {
	Repair  money.Amount  // cost of the repair, as the rule counts it (see Calling.Note)
	Value   money.Amount  // value just before the damage
	Salvage *money.Amount // value as it stands now; nil: not known
}

// Calling is what one rule calls a vehicle. Its words are those of the source: check with the agency before relying on it.
type Calling struct {
	Where   string `json:"where"` // the jurisdiction in words
	Name    string `json:"name"`  // what the rule calls the vehicle where it applies
	Applies bool   `json:"applies"`
	Unknown bool   `json:"unknown"` // the rule needs the salvage value, which is not known
	Test    string `json:"test"`    // the rule in words
	Note    string `json:"note"`    // whom the rule is for and what counts as repair
	Source
}

// TotalLoss returns what each rule of the packs would call the vehicle, in their order; none when there is no value to
// compare with. Limits: amounts at or above 0.
// Assumptions: the arithmetic alone is judged, not the age of the vehicle, nor which costs a rule leaves out.
// Source: the citation of each rule; comparisons are exact, so a ratio of exactly 75 % meets ">=" and not ">".
func TotalLoss(d Damaged, packs ...Pack) []Calling {
	if d.Value <= 0 {
		return nil
	}
	var out []Calling
	for _, p := range packs {
		for _, t := range p.Thresholds {
			least, known := t.threshold(d)
			out = append(out, Calling{Where: p.Name, Name: t.Name, Note: t.Note, Source: t.Source, Test: t.Words(),
				Unknown: !known, Applies: known && t.meets(d, least)})
		}
	}
	return out
}

// Words says the rule.
func (t Threshold) Words() string {
	share := func(d decimal.Decimal) string { return d.Mul(decimal.NewFromInt(100)).String() + " %" }
	switch {
	case t.From == nil && t.SalvageShare != nil:
		return "repair above the value less the salvage value (" + share(*t.SalvageShare) + " of the value where it is not known)"
	case t.From == nil:
		return "repair and salvage value together above the value"
	case t.Below != nil:
		return "repair from " + share(*t.From) + " to below " + share(*t.Below) + " of the value"
	case t.Reached:
		return "repair at " + share(*t.From) + " of the value or more"
	}
	return "repair above " + share(*t.From) + " of the value"
}

// threshold returns the repair cost from which the rule applies, in minor units, and whether it can be known.
func (t Threshold) threshold(d Damaged) (decimal.Decimal, bool) {
	switch {
	case t.From != nil:
		return part(*t.From, d.Value), true
	case d.Salvage != nil:
		return whole(d.Value - *d.Salvage), true
	case t.SalvageShare != nil:
		return whole(d.Value).Sub(part(*t.SalvageShare, d.Value)), true
	}
	return decimal.Zero, false
}

// meets reports whether the repair cost lies in the rule's range.
func (t Threshold) meets(d Damaged, least decimal.Decimal) bool {
	cost := whole(d.Repair)
	if t.Below != nil && cost.Cmp(part(*t.Below, d.Value)) >= 0 {
		return false
	}
	return cost.Cmp(least) > 0 || t.Reached && cost.Equal(least)
}

func whole(a money.Amount) decimal.Decimal { return decimal.NewFromInt(int64(a)) }

// part returns a share of an amount, exactly.
func part(share decimal.Decimal, a money.Amount) decimal.Decimal { return share.Mul(whole(a)) }
