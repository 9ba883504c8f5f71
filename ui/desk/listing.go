package desk

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"walkline/valuation"
)

// Listed is what the text of a listing gave.
type Listed struct {
	Case  valuation.Case // with what the text added to it
	Facts [][2]string    // what was understood: the field, and what the text says
	Left  []string       // what was not understood, or is said otherwise in the case

	before *Listed // what the text read before it gave; nil: none was
	step   bool    // it changed the lot
}

// fillingIn names the step that fills a lot in from its listing.
const fillingIn = "fill in from the listing"

// unlisted takes what a listing gave out of sight with its step, to be shown again with it; any other step leaves it in sight.
func (o *Open) unlisted(label string, undone bool) {
	if label != fillingIn {
		return
	}
	if last := len(o.unread) - 1; !undone && last >= 0 {
		o.Listed, o.unread = o.unread[last], slices.Clone(o.unread[:last])
		return
	}
	for undone && o.Listed != nil {
		l := o.Listed
		if o.Listed = l.before; l.step {
			o.unread = append(slices.Clone(o.unread), l)
			return
		}
	}
}

// FillIn puts into the open lot what the text of its listing says and what is not known yet, as one step.
func FillIn(text string) Action {
	return keeps(fillingIn, func(ctx context.Context, d *Desk, s State, a Action) State {
		if s.Open == nil {
			return s
		}
		listed, err := d.Listing(text, s.Open.Case)
		if err != nil {
			return s.troubled("read the listing", err)
		}
		was := s.Open.kept.Revision
		if len(listed.Facts) > 0 {
			edit := EditLot(a.words, func(c *valuation.Case) { *c = listed.Case })
			if s = edit.do(ctx, d, s, edit); s.Trouble != "" || s.Open == nil {
				return s
			}
		}
		o := *s.Open
		listed.before, listed.step = o.Listed, o.kept.Revision != was
		o.Listed, o.unread = &listed, nil
		return s.with(o).said(fmt.Sprintf("%d facts read from the listing. Left: %d.", len(listed.Facts), len(listed.Left)))
	}).ofOpen()
}

// onListing are the parts of a lot that the page of a listing asks for; a part is the first word of a key of the case file.
var onListing = []string{"lot", "damage", "resale"}

// Seek goes to where something that a bid still needs is entered, by its key in the case file: the page of the listing where it asks for
// that, or the section of the worksheet that does.
func Seek(key string) Action {
	return shows(func(_ context.Context, _ *Desk, s State) State {
		if s.Open == nil {
			return s
		}
		s.Sought, s.Seeks = key, s.Seeks+1
		part := partOf(key)
		if slices.Contains(onListing, part) {
			s.Place = Listing
			return s
		}
		s.Place, s.Taken.Parts, s.Travels = Worksheet, []string{part}, s.Travels+1 // shown as a step through the history is
		return s
	})
}

// partOf returns the first word of a key of the case file.
func partOf(key string) string {
	part, _, _ := strings.Cut(key, ".")
	return part
}
