package desk

import (
	"context"
	"errors"
	"fmt"

	"walkline/valuation"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
)

// Basket is a choice of lots whose parts are listed together.
type Basket struct {
	Words string
	Lots  []int64
}

// Baskets returns the choices that there are: the lot in hand, the lots of each mark, and all that are not archived.
func (s State) Baskets() []Basket {
	var all []Basket
	if o := s.InHand(); o != nil {
		all = append(all, Basket{"this lot", []int64{o.ID}})
	}
	whole := Basket{Words: "all lots on the Board"}
	marked := map[lot.State][]int64{}
	for _, e := range s.Entries {
		if !e.Archived {
			whole.Lots = append(whole.Lots, e.ID)
			marked[e.State] = append(marked[e.State], e.ID)
		}
	}
	for _, mark := range lot.States {
		if ids := marked[mark]; len(ids) > 0 {
			all = append(all, Basket{fmt.Sprintf("marked %q (%d)", mark, len(ids)), ids})
		}
	}
	if len(whole.Lots) > 0 {
		all = append(all, whole)
	}
	return all
}

// Shopping returns all parts over all lines of some lots, with their sources. It touches no state and may run on any goroutine. Errors: a
// lot cannot be read, or the work was cancelled.
func (d *Desk) Shopping(ctx context.Context, factors learn.Factors, lots []int64) ([]valuation.Wanted, error) {
	var cases []valuation.Case
	for _, id := range lots {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		l, err := d.Book.Lot(ctx, id)
		if err != nil {
			return nil, err
		}
		cases = append(cases, l.Case.With(factors))
	}
	return valuation.Shopping(cases, d.Knowledge()), nil
}

// ShoppingSheet returns a shopping list as PDF. Errors: this desk has no press.
func (d *Desk) ShoppingSheet(list []valuation.Wanted) ([]byte, error) {
	if d.Press == nil {
		return nil, errors.New("this desk has no press")
	}
	return d.Press.Shopping(list, d.Today())
}

// ShoppingTable returns a shopping list as CSV. Errors: this desk has no press.
func (d *Desk) ShoppingTable(list []valuation.Wanted) ([]byte, error) {
	if d.Press == nil {
		return nil, errors.New("this desk has no press")
	}
	return d.Press.Table(list), nil
}
