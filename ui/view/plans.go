package view

import (
	"strings"

	"walkline/valuation"
)

// PlanRow is one plan with the most that may be bid on it.
type PlanRow struct {
	Name   string
	Bid    string
	Chosen bool // the answer is of this plan
}

// planNames name the plans in few words.
var planNames = map[string]string{valuation.Rebuild: "Rebuild", valuation.AsItStands: "As it stands", valuation.ForParts: "For parts"}

// Plans returns the plans with their bids in the order in which they are tried; none where the rebuild alone is priced.
func Plans(a valuation.Answer) []PlanRow {
	if _, rebuilt := a.Plans[valuation.Rebuild]; rebuilt && len(a.Plans) == 1 {
		return nil
	}
	p := NewPurse(a.Currency)
	var rows []PlanRow
	for _, plan := range valuation.Plans {
		bid, priced := a.Plans[plan]
		if !priced {
			continue
		}
		r := PlanRow{Name: planNames[plan], Bid: "do not bid", Chosen: plan == a.Plan && a.WalkAway != nil}
		if bid != nil {
			r.Bid = p.Show(*bid)
		}
		rows = append(rows, r)
	}
	return rows
}

// planWords says the plans in one line: "For parts. Rebuild: do not bid. As it stands: USD 900."
func planWords(a valuation.Answer) string {
	var chosen string
	var others []string
	for _, r := range Plans(a) {
		if r.Chosen {
			chosen = "Plan: " + strings.ToLower(r.Name) + "."
			continue
		}
		others = append(others, r.Name+": "+r.Bid+".")
	}
	return joined(" ", chosen, strings.Join(others, " "))
}

// ProposalWords says whose the values of the ways out are, and what is proposed where there are none.
func ProposalWords(c valuation.Case) string {
	o := c.WaysOut
	stands, parts := o.AsItStands.Money != nil, o.ForParts.Money != nil
	starter := stands && o.AsItStands.Starter || parts && o.ForParts.Starter
	switch {
	case starter:
		return "Starter values, from memory, stand below until you change them. To have them proposed anew, set the money to 0 first."
	case stands && parts:
		return "Both ways are yours."
	}
	return "Proposes what is missing: for parts from the assemblies that the damage leaves sound, as it stands from what the wreck is worth " +
		"to its next buyer. From memory: replace the figures with yours."
}

// unpriced says which ways out nothing was entered for, so that the bid knows nothing of them; empty: none.
func unpriced(c valuation.Case) string {
	stands, parts := c.WaysOut.AsItStands.Money == nil, c.WaysOut.ForParts.Money == nil
	switch {
	case stands && parts:
		return "Only a rebuild is priced. Selling it as it stands (with its dents, say) or for parts may pay more."
	case stands:
		return "Not priced: selling it as it stands, with its dents, say."
	case parts:
		return "Not priced: selling it for parts."
	}
	return ""
}

// The labels of the odds of winning.
const (
	winLabel  = "Chance to win at this bid"
	gainLabel = "Expected gain of bidding"
	fromLabel = "Both go by"
	noGuess   = "no hammer guess"
)

// winning returns the odds of the walk-away bid against the guess of the hammer price.
func winning(a valuation.Answer, p Purse) [][2]string {
	chance, gain := odds(a, p)
	out := [][2]string{{winLabel, chance}, {gainLabel, gain}}
	if a.WinFrom != "" {
		out = append(out, [2]string{fromLabel, a.WinFrom})
	}
	return out
}

// odds writes the chance to win and the expected gain, or why there is none.
func odds(a valuation.Answer, p Purse) (chance, gain string) {
	if a.WinChance == nil || a.ExpectedGain == nil {
		return noGuess, noGuess
	}
	return Percent(*a.WinChance), p.Whole(*a.ExpectedGain)
}

// needNames name what a bid still needs in a word or two, by the key of the case file.
var needNames = map[string]string{"lot": "vehicle", "lot.title.document": "title document", "damage": "damage", "resale": "resale price"}

// needWords names what a bid still needs on one line; empty where it needs nothing.
func needWords(keys []string) string {
	if len(keys) == 0 {
		return ""
	}
	names := make([]string, len(keys))
	for i, k := range keys {
		names[i] = needName(k)
	}
	return "needs " + strings.Join(names, ", ")
}

func needName(key string) string {
	switch name, known := needNames[key]; {
	case known:
		return name
	case strings.HasPrefix(key, "market.exchange_rates."):
		return "exchange rate"
	}
	return Words(key)
}

// needKeys returns the keys of what an answer still needs.
func needKeys(a valuation.Answer) []string {
	var keys []string
	for _, n := range a.Needs {
		keys = append(keys, n.Key)
	}
	return keys
}
