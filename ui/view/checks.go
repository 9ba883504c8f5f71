package view

import (
	"fmt"
	"strings"

	"walkline/ui/desk"
)

// Check is one item of the checklist.
type Check struct {
	ID, Kind, Text, Why string
	Answer              string // yes | no | not looked
	Fixed               bool   // the program decides, not the user (stops, the VIN)
	Minutes             string
}

// The answers to a check, "yes" speaking for trouble.
const (
	Yes       = "yes"
	No        = "no"
	NotLooked = "not looked"
)

// Checks returns the stops and the items to look at of the last valuation.
func Checks(o desk.Open) (stops, items []Check) {
	if o.Valued == nil {
		return nil, nil
	}
	for _, i := range o.Valued.Answer.Checklist {
		c := Check{ID: i.ID, Kind: i.Kind, Text: strings.TrimSpace(i.Text + " " + i.Look), Why: i.Why, Answer: NotLooked}
		if a, ok := o.Case.Findings[i.ID]; ok {
			c.Answer = a
		}
		if i.Minutes > 0 {
			c.Minutes = fmt.Sprintf("%.0f min", i.Minutes)
		}
		c.Fixed = i.Fixed
		if i.Kind == "stop" {
			stops = append(stops, c)
		} else {
			items = append(items, c)
		}
	}
	return stops, items
}
