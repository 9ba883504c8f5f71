package desk

import (
	"context"

	"walkline/valuation/money"
)

// Ask shows the odds at a bid. Nothing is bid by that.
func (d *Desk) Ask(_ context.Context, s State, bid money.Amount) State {
	if s.Open == nil {
		return s
	}
	o := *s.Open
	o.Asked = max(bid, 0)
	s.Notice, s.Trouble = "", ""
	return s.with(o)
}
