package desk

import (
	"context"
	"errors"
	"strings"

	"walkline/valuation"
)

// KeepTerms keeps what the open lot's sale charges as the terms of that sale's yard on the Bench; a yard that is not there yet is added.
// Lots of the yard that come later take them. Refused without a sale's name, and in another currency than the Bench's.
func KeepTerms() Action {
	return keeps("keep the lot's fees as its yard's", func(ctx context.Context, d *Desk, s State, a Action) State {
		if s.Open == nil {
			return s
		}
		c, shop := s.Open.Case, valuation.Copy(s.Shop)
		name := strings.TrimSpace(c.Lot.Sale)
		switch {
		case name == "":
			return s.troubled(a.words, errors.New("the lot names no sale; enter it under Facts"))
		case c.Currency != shop.Currency:
			return s.troubled(a.words, errors.New("the lot's fees are in "+c.Currency+", the Bench's in "+shop.Currency+"; nothing converts them"))
		}
		i := shop.Yard(name)
		if i < 0 {
			i = len(shop.Yards)
			shop.Yards = append(shop.Yards, Yard{Sale: name})
		}
		shop.Yards[i].Buying = c.Clone().Buying
		return ifKept(d.keepShop(ctx, s, a, shop), "Kept as the fees of "+shop.Yards[i].Sale+". New lots of that sale take them.")
	})
}
