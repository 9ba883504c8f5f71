package main

import (
	"fmt"
	"io"
	"slices"

	"walkline/valuation"
	"walkline/valuation/money"
)

// replayed is the document of "walk replay --json".
type replayed struct {
	Format   string      `json:"format"`
	Currency string      `json:"currency"`
	Lots     []pastLot   `json:"lots"`
	Sum      replayCount `json:"sum"`
	Doubts   []string    `json:"doubts"`
}

// pastLot is one past lot; null amounts are not known, or no bid.
type pastLot struct {
	ID      int64   `json:"id"`
	Name    string  `json:"name"`
	Then    *string `json:"walk_away_then"`
	Now     *string `json:"walk_away_now"`
	Hammer  *string `json:"hammer"`
	Profit  *string `json:"profit"`
	Verdict string  `json:"verdict"`
}

// replayCount is what the replay comes to.
type replayCount struct {
	StillBought   int    `json:"still_bought"`
	Refused       int    `json:"refused"`
	LossesRefused int    `json:"losses_refused"`
	LossAvoided   string `json:"loss_avoided"`
	GainsRefused  int    `json:"gains_refused"`
	GainMissed    string `json:"gain_missed"`
	WouldBuy      int    `json:"would_be_bought"`
	StillLeft     int    `json:"still_left"`
	NotReplayed   int    `json:"not_replayed"`
	Selected      string `json:"selected"`
}

// replay is the command "walk replay": it values each past lot with today's factors.
func replay(args []string, out, errs io.Writer) int {
	o, code := readShopOrder("replay", args, errs)
	if code != done {
		return code
	}
	s, code := readShop(o.path, errs)
	if code != done {
		return code
	}
	r := s.replay()
	if o.asJSON {
		return writeJSON(out, errs, r)
	}
	return writeText(out, errs, replayText(r))
}

// replay values the past lots. Sums of money are over those in the shop's currency.
func (s *shop) replay() replayed {
	r := replayed{Format: "walkline-replay/1", Currency: s.currency(), Doubts: slices.Clone(s.doubts)}
	m := valuation.NewMemory()
	var summed []valuation.Replayed
	for _, b := range s.past {
		var c *valuation.Case
		if kept, frozen := s.frozen[b.ID]; frozen {
			c = &kept
		}
		x, err := m.Replay(b, c, s.know, s.now)
		if err != nil {
			r.Doubts = append(r.Doubts, fmt.Sprintf("%s: %v", b.Name, err))
		}
		if b.Currency != r.Currency {
			x.Profit = nil
		}
		summed = append(summed, x)
		text := func(a *money.Amount) *string { return bidText(b.Currency, a) }
		r.Lots = append(r.Lots, pastLot{b.ID, b.Name, text(x.Then), text(x.Now), text(x.Hammer), text(x.Profit), x.Verdict})
	}
	r.Sum = countOf(valuation.Sum(summed), r.Currency)
	return r
}

func countOf(s valuation.ReplaySum, currency string) replayCount {
	return replayCount{s.Bought, s.Refused, s.LossesRefused, *bidText(currency, &s.LossAvoided), s.GainsRefused,
		*bidText(currency, &s.GainMissed),
		s.WouldBuy, s.Left, s.NotReplayed, s.Selection}
}

// replayText writes the replay for a person at a terminal.
func replayText(r replayed) string {
	var p page
	p.line("What today's factors would have bid on %d past lots", len(r.Lots))
	p.line("\n%-44s %12s %12s %12s %12s  %s", "", "bid then", "bid now", "hammer", "profit", "")
	dash := func(s *string) string {
		if s == nil {
			return "-"
		}
		return *s
	}
	for _, l := range r.Lots {
		p.line("%-44.44s %12s %12s %12s %12s  %s", l.Name, dash(l.Then), dash(l.Now), dash(l.Hammer), dash(l.Profit), l.Verdict)
	}
	s := r.Sum
	p.line("\n%d would be bought again, %d refused.", s.StillBought, s.Refused)
	p.line("Of those refused, %d had lost %s %s together, %d had made %s.", s.LossesRefused, r.Currency, s.LossAvoided, s.GainsRefused,
		s.GainMissed)
	p.line("Of the lots that others took, %d would be bought at their hammer price, %d not; what they would have made is not known.",
		s.WouldBuy, s.StillLeft)
	if s.NotReplayed > 0 {
		p.line("%d cannot be replayed: no forecast was kept, or the hammer price is not known.", s.NotReplayed)
	}
	p.list("Notes", r.Doubts)
	p.line("\n%s", s.Selected)
	return p.String()
}
