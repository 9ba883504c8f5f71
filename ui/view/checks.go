package view

import (
	"fmt"
	"slices"
	"strings"

	"walkline/ui/desk"
	"walkline/valuation/checks"
)

// Check is one item of the checklist.
type Check struct {
	ID, Kind, Text, Why string
	Ask, Look           string // the parts of Text: the question, and how to look
	Source              string // what it rests on
	Where               string
	Answer              string // yes | no | not looked
	Fixed               bool   // the program decides, not the user (stops, the VIN)
	Tick                bool   // ticked when it is in hand or settled: "no" trouble
	Minutes             string
	Most                int    // vehicles that may be sold, of the question after it
	Worth               string // of a look, in words; empty: not worked out
	Idle                bool   // a look that cannot change the bid
	Seen                []Seen // risks that a look answered "yes" may be certain of
}

// Seen is a risk that can be turned into a repair line.
type Seen struct{ Risk, Name string }

// The answers to a check, "yes" speaking for trouble.
const (
	Yes       = "yes"
	No        = "no"
	NotLooked = "not checked"
)

// Checks returns the stops and the items to look at of the last valuation.
func Checks(o desk.Open) (stops, items []Check) {
	o = o.Worked()
	if o.Valued == nil {
		return nil, nil
	}
	a := o.Valued.Answer
	p := NewPurse(a.Currency)
	names := map[string]string{}
	for _, r := range a.Hidden.Risks {
		names[r.ID] = r.Name
	}
	for _, i := range a.Checklist {
		c := newCheck(i, o, p)
		if c.Answer == Yes {
			for _, id := range i.Risks {
				c.Seen = append(c.Seen, Seen{id, names[id]})
			}
		}
		if i.Kind == "stop" {
			stops = append(stops, c)
		} else {
			items = append(items, c)
		}
	}
	return stops, items
}

// FirstChecks returns what nobody has answered yet, the looks that may change the bid first, then what is asked of the sale
// and the title office, then the looks that change nothing. Lists to tick are left out.
func FirstChecks(o desk.Open) []Check {
	_, items := Checks(o)
	open := slices.DeleteFunc(items, func(c Check) bool { return c.Answer != NotLooked || c.Fixed || c.Tick })
	rank := func(c Check) int {
		switch {
		case c.Kind == "inspection" && !c.Idle:
			return 0
		case c.Kind == "inspection":
			return 2
		}
		return 1
	}
	slices.SortStableFunc(open, func(a, b Check) int { return rank(a) - rank(b) })
	return open
}

func newCheck(i checks.Item, o desk.Open, p Purse) Check {
	c := Check{ID: i.ID, Kind: i.Kind, Text: strings.TrimSpace(i.Text + " " + i.Look), Ask: i.Text, Look: i.Look, Why: i.Why, Source: i.Source,
		Where: i.Where, Answer: NotLooked, Fixed: i.Fixed, Tick: i.Tick, Most: i.Most}
	if i.Tools != "" && i.Tools != "none" {
		c.Look = strings.TrimSpace(c.Look + " Tool: " + i.Tools + ".")
	}
	if a, ok := o.Case.Findings[i.ID]; ok {
		c.Answer = a
	}
	if i.Minutes > 0 {
		c.Minutes = fmt.Sprintf("%.0f min", i.Minutes)
	}
	if i.Worth != nil {
		c.Worth, c.Idle = worthWords(*i.Worth, p), *i.Worth == 0
	}
	if i.Fee > 0 {
		c.Minutes += ", fee " + p.Whole(i.Fee)
	}
	return c
}

// worthWords says what a look is worth; what is worth less than one unit of money is told apart from what is worth nothing.
func worthWords(x float64, p Purse) string {
	switch {
	case x == 0:
		return "can't change the bid"
	case x < 1:
		return "worth below " + p.Code + " 1"
	}
	return "worth " + p.Code + " " + p.Whole(x)
}

// ChecksPage is what the section of checks says.
type ChecksPage struct {
	Known   bool   // there has been a valuation
	Waits   string // what the list waits for before that
	Stops   []Check
	Clashes []Check // what does not agree
	Looks   []Check // round the vehicle, in the order of what they are worth
	Titles  []Check
	Lists   []CheckList
	Basis   string   // what the worth rests on
	Rounds  []string // the best N minutes
	Loss    []string // what the rules of total loss would call the vehicle
}

// CheckList is a list to tick off.
type CheckList struct {
	Name, Help string
	Items      []Check
}

// NewChecksPage returns what the section of checks says of an open lot.
func NewChecksPage(o desk.Open) ChecksPage {
	o = o.Worked()
	p := ChecksPage{Known: o.Valued != nil}
	if !p.Known {
		p.Waits = "The list comes as soon as damage is marked: enter the facts and the damage. If it does not, the right side says what is wrong."
		if BeingValued(o) {
			p.Waits = "The lot is being valued."
		}
		return p
	}
	var items []Check
	p.Stops, items = Checks(o)
	for _, c := range p.Stops {
		if !c.Fixed { // it stops the bid until it is answered: among the questions too
			p.Titles = append(p.Titles, c)
		}
	}
	lists := []CheckList{
		{"Bring to the sale", "Ticked: packed.", nil},
		{"Keep from the day of purchase", "For the rebuilt inspection; the list follows the lot into the build. Ticked: in hand. Check with " +
			"the agency.", nil},
		{"Your own standing as a seller", "Questions, no advice. Ticked: settled. Ask the agency.", nil},
	}
	at := map[string]int{checks.Bring: 0, checks.Keep: 1, checks.Standing: 2}
	for _, c := range items {
		n, listed := at[c.Where]
		switch {
		case c.Kind == "paper" && listed:
			lists[n].Items = append(lists[n].Items, standing(c, o))
		case c.Kind == "inspection" && c.Fixed:
			p.Clashes = append(p.Clashes, c)
		case c.Kind == "inspection":
			p.Looks = append(p.Looks, c)
		default:
			p.Titles = append(p.Titles, c)
		}
	}
	p.Lists = slices.DeleteFunc(lists, func(l CheckList) bool { return len(l.Items) == 0 })
	p.Basis, p.Rounds, p.Loss = basis(o), rounds(o), loss(o)
	return p
}

// standing puts how many vehicles were sold beside the question after it.
func standing(c Check, o desk.Open) Check {
	if c.ID != "standing_private" {
		return c
	}
	s := o.Standing
	n := s.Known
	if s.Stated != nil {
		n = max(n, *s.Stated)
		c.Ask += fmt.Sprintf(" You say %d; of the builds kept here %d were sold.", *s.Stated, s.Known)
	} else {
		c.Ask += fmt.Sprintf(" Of the builds kept here %d were sold; others are not known.", s.Known)
	}
	if n+1 > c.Most {
		c.Ask += fmt.Sprintf(" With this one it would be %d, which is more.", n+1)
	}
	return c
}
