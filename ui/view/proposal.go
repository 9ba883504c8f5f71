package view

import (
	"fmt"

	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/valuation/learn"
)

// ProposalColumns are the columns of the table of factors.
var ProposalColumns = []Column{{"Factor", false, 210}, {"Starter", true, 70}, {"Today", true, 70}, {"Proposed", true, 80},
	{"8 times in 10", true, 120}, {"Buys", true, 50}, {"", false, 150}}

// factorText writes a factor's value.
func factorText(u learn.Unit, x float64) string {
	if u == learn.ChanceUnit {
		return Percent(x)
	}
	return fmt.Sprintf("%.2f", x)
}

// Proposals returns the rows of the table of factors.
func Proposals(r desk.TrackRecord) [][]string {
	rows := make([][]string, len(r.Proposals))
	for i, p := range r.Proposals {
		say := func(x float64) string { return factorText(p.Unit, x) }
		state := r.Seen(p)
		if state == "" && accepted(r, p.Key) {
			state = "in force"
		}
		if state == "" {
			state = NeedsWords(p)
		}
		rows[i] = []string{p.Name, say(p.Starter.At), say(p.Now.At), say(p.Proposed.At), say(p.Proposed.Low) + " to " + say(p.Proposed.High),
			fmt.Sprint(p.Buys), state}
	}
	return rows
}

// FactorRange is a proposed factor as a picture shows it: all values as times its starter value, so that all factors share an axis.
type FactorRange struct {
	Name, Figure             string
	Low, Middle, High, Today float64
	Words                    string // all of it
	Placeless                bool   // its starter value is zero: nothing is a multiple of it
}

// FactorRanges returns the rows of the picture of the factors.
func FactorRanges(r desk.TrackRecord) []FactorRange {
	out := make([]FactorRange, len(r.Proposals))
	for i, p := range r.Proposals {
		say := func(x float64) string { return factorText(p.Unit, x) }
		out[i] = FactorRange{Name: p.Name, Figure: say(p.Proposed.At) + ", " + say(p.Proposed.Low) + " to " + say(p.Proposed.High),
			Placeless: p.Starter.At <= 0,
			Words: fmt.Sprintf("%s: starter %s, today %s, proposed %s, 8 times in 10 from %s to %s, from %s.", p.Name, say(p.Starter.At),
				say(p.Now.At), say(p.Proposed.At), say(p.Proposed.Low), say(p.Proposed.High), Count(p.Buys, "buy"))}
		if out[i].Placeless {
			continue
		}
		of := func(x float64) float64 { return x / p.Starter.At }
		out[i].Low, out[i].Middle, out[i].High, out[i].Today = of(p.Proposed.Low), of(p.Proposed.At), of(p.Proposed.High), of(p.Now.At)
	}
	return out
}

// accepted reports whether what was decided last on a factor put it in force.
func accepted(r desk.TrackRecord, key string) bool {
	for i := len(r.History) - 1; i >= 0; i-- {
		if d := r.History[i]; d.Factor == key && d.What != book.Refused {
			return d.What == book.Accepted
		}
	}
	return false
}

// FewWords says how far a factor from few buys goes, and what all of it would do; empty: it goes all the way.
func FewWords(p learn.Proposal, effects []desk.Effect) string {
	if len(effects) == 0 || effects[0].Share == 1 {
		return ""
	}
	words := fmt.Sprintf("It rests on %s. Below %d it goes only so far that no open bid moves by two steps: %s of the way.",
		Count(p.Buys, "buy"),
		learn.EnoughBuys, Percent(effects[0].Share))
	if effects[0].Share == 0 {
		words = fmt.Sprintf("It rests on %s, and even a part of it would move an open bid by two steps: wait for %d, or take all of it "+
			"knowingly.",
			Count(p.Buys, "buy"), learn.EnoughBuys)
	}
	for _, e := range effects {
		if e.Whole != nil && e.Whole.Steps >= 2 {
			return words + fmt.Sprintf(" All of it would move %s by %s.", e.Name, NewPurse(e.Currency).Group(e.Whole.Moved()))
		}
	}
	return words
}

// EvidenceColumns are the columns of the buys behind a proposal.
var EvidenceColumns = []Column{{"Day", false, 104}, {"Buy", false, 150}, {"Says", true, 66}, {"Weight", true, 60}}

// Evidence returns the buys behind a proposal.
func Evidence(p learn.Proposal) [][]string {
	rows := make([][]string, len(p.Evidence))
	for i, e := range p.Evidence {
		says := factorText(p.Unit, e.Says)
		if p.Unit == learn.ChanceUnit {
			says = map[bool]string{true: "found", false: "not there"}[e.Says > 0.5]
		}
		rows[i] = []string{Day(e.On), e.Name, says, fmt.Sprintf("%.2f", e.Weight)}
	}
	return rows
}

// EffectColumns are the columns of what a proposal would change.
var EffectColumns = []Column{{"Open lot", false, 150}, {"Bid today", true, 88}, {"Would be", true, 88}, {"Change", true, 64}}

// Effects returns what a proposal would do to the walk-away bids of the lots that are still to be bid for.
func Effects(list []desk.Effect) [][]string {
	rows := make([][]string, len(list))
	for i, e := range list {
		p := NewPurse(e.Currency)
		if e.Problem != "" {
			rows[i] = []string{e.Name + ", " + e.Problem, "", "", ""}
			continue
		}
		before, after, moved := "do not bid", "do not bid", p.Group(e.Moved())
		if e.Before != nil {
			before = p.Group(*e.Before)
		}
		if e.After != nil {
			after = p.Group(*e.After)
		}
		if e.Moved() > 0 {
			moved = "+" + moved
		}
		rows[i] = []string{e.Name, before, after, moved}
	}
	return rows
}

// HistoryColumns are the columns of the history of the factors.
var HistoryColumns = []Column{{"Day", false, 104}, {"Decision", false, 90}, {"What", false, 420}}

// History returns what was decided on the factors, the latest first.
func History(r desk.TrackRecord) (rows [][]string, ids []int64) {
	for i := len(r.History) - 1; i >= 0; i-- {
		d := r.History[i]
		rows, ids = append(rows, []string{Day(desk.Day(d.At)), d.What, d.Words}), append(ids, d.ID)
	}
	return rows, ids
}
