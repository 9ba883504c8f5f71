package view

import (
	"fmt"
	"slices"

	"walkline/ui/desk"
	"walkline/valuation/checks"
	"walkline/valuation/hidden"
)

// basis says what the worth of the looks rests on.
func basis(o desk.Open) string {
	a := o.Valued.Answer
	p := NewPurse(a.Currency)
	switch a.Looks.Basis {
	case checks.Guess:
		h := o.Valued.Of.Market.HammerGuess
		words := "What a look is worth: what knowing its answer before the bid brings on average, with the hammer falling from " +
			p.Range(h.Low, h.High) +
			", most likely at " + p.Whole(h.Likely) + " (your guess)."
		if a.Looks.Perfect != nil && *a.Looks.Perfect < 1 {
			words += " Knowing everything would hardly change this bid."
		}
		return words
	case checks.StandIn:
		return "You have no guess of the hammer price. The worth is worked out as if it most likely fell at the walk-away bid, from half to " +
			"one and a half of it: good for the order, rather high as money. Enter a guess."
	}
	if o.Outline != nil {
		return "What a look is worth is known once the lot has a resale price. What each one points to is known now."
	}
	if len(checks.Stops(a.Checklist)) > 0 {
		return "A stop stands: no look changes the bid until it is cleared."
	}
	return "There is no bid and no guess of the hammer price: what a look is worth is not known. Enter a guess."
}

// rounds says what the best minutes are worth.
func rounds(o desk.Open) []string {
	p := NewPurse(o.Valued.Answer.Currency)
	var out []string
	for _, r := range o.Valued.Answer.Looks.Best {
		if len(r.Looks) == 0 {
			continue
		}
		out = append(out, fmt.Sprintf("Best %.0f minutes: %s, %.0f min, together %s", r.Minutes, Count(len(r.Looks), "look"), r.Spent,
			worthWords(r.Worth, p)))
	}
	return out
}

// loss says what the rules of total loss would call the vehicle.
func loss(o desk.Open) []string {
	t := o.Valued.Answer.TotalLoss
	if t == nil {
		return nil
	}
	p := NewPurse(o.Valued.Answer.Currency)
	out := []string{fmt.Sprintf("Repair %s at your own rates, hidden damage counted in, is %s of about %s, the price with a clear title. "+
		"That price stands for the value before the damage. An insurer uses other figures.",
		p.Code+" "+p.Whole(p.Major(t.Repair)), Percent(float64(t.Repair)/float64(t.Value)), p.Code+" "+p.Whole(p.Major(t.Value)))}
	if t.Salvage != nil {
		out[0] += " Your guess of the hammer price, " + p.Whole(p.Major(*t.Salvage)) + ", stands for the salvage value."
	}
	for _, c := range t.Callings {
		verdict := "not reached"
		switch {
		case c.Unknown:
			verdict = "not known without the salvage value"
		case c.Applies:
			verdict = "reached"
		}
		out = append(out, fmt.Sprintf("%s, %s: %s. The rule is: %s. %s %s", c.Where, c.Name, verdict, c.Test, c.Note, c.Source.Words()))
	}
	return out
}

// Walked is a part of the walk round the vehicle with its looks.
type Walked struct {
	Where   string
	Minutes string // of the looks still open
	Looks   []Check
}

// Walk puts looks in the order of one walk round the vehicle: that of the findings, those that no catalogue knows last.
func Walk(looks []Check, findings []hidden.Finding) []Walked {
	at := map[string]int{}
	minutes := map[string]float64{}
	for i, f := range findings {
		at[f.ID], minutes[f.ID] = i, f.Minutes
	}
	place := func(c Check) int {
		if i, known := at[c.ID]; known {
			return i
		}
		return len(findings)
	}
	looks = slices.Clone(looks)
	slices.SortStableFunc(looks, func(a, b Check) int { return place(a) - place(b) })
	var groups []Walked
	open := 0.0
	for _, c := range looks {
		where := c.Where
		if where == "" {
			where = "elsewhere"
		}
		if n := len(groups); n == 0 || groups[n-1].Where != where {
			groups, open = append(groups, Walked{Where: where}), 0
		}
		g := &groups[len(groups)-1]
		g.Looks = append(g.Looks, c)
		if c.Answer == NotLooked {
			open += minutes[c.ID]
		}
		g.Minutes = fmt.Sprintf("%.0f min", open)
	}
	return groups
}
