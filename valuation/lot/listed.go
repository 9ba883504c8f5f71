package lot

import (
	"cmp"
	"slices"
)

// Listed is what a sale's run list says of a lot beside its facts. It is the list's word and no look at the vehicle: a lot that
// nobody has looked at is guessed from it, a look stands above it, and nothing that it leaves out is "none". JSON keys are those of the
// case file.
type Listed struct {
	Areas          []string `json:"areas"`                        // damaged, codes of [Areas]
	ValueBefore    *float64 `json:"value_before" unit:"money"`    // of the whole vehicle, major units of Currency; nil: not said
	RepairEstimate *float64 `json:"repair_estimate" unit:"money"` // somebody's, major units of Currency; nil: not said
	Currency       string   `json:"currency"`                     // of both; empty: that of the case
	Note           string   `json:"note"`                         // in the list's own words
	RunOrder       int      `json:"run_order"`                    // place among the list's lots, from 1; 0: not known
}

// Said reports whether the list says anything beside the order in which its lots run.
func (l *Listed) Said() bool {
	return l != nil && (len(l.Areas) > 0 || l.ValueBefore != nil || l.RepairEstimate != nil || l.Note != "")
}

// Over returns what is known after a later list: what it says stands above what an earlier one said, and what it leaves out stays. Two
// figures of one list are in one currency, so figures of another currency go together.
func (l *Listed) Over(earlier *Listed) *Listed {
	if l == nil || earlier == nil {
		return cmp.Or(l, earlier)
	}
	all := *earlier
	if l.ValueBefore != nil || l.RepairEstimate != nil {
		if l.Currency != earlier.Currency {
			all.ValueBefore, all.RepairEstimate = nil, nil
		}
		all.ValueBefore, all.RepairEstimate = cmp.Or(l.ValueBefore, all.ValueBefore), cmp.Or(l.RepairEstimate, all.RepairEstimate)
		all.Currency = l.Currency
	}
	if len(l.Areas) > 0 {
		all.Areas = slices.Clone(l.Areas)
	}
	all.Note, all.RunOrder = cmp.Or(l.Note, all.Note), cmp.Or(l.RunOrder, all.RunOrder)
	return &all
}
