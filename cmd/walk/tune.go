package main

import (
	"fmt"
	"io"
	"slices"

	"walkline/valuation"
	"walkline/valuation/hindsight"
	"walkline/valuation/learn"
	"walkline/valuation/money"
)

// tuning is the document of "walk tune --json".
type tuning struct {
	Format    string           `json:"format"`
	Currency  string           `json:"currency"`
	Factors   learn.Factors    `json:"factors"` // in force
	Record    hindsight.Record `json:"record"`
	Proposals []proposed       `json:"proposals"`
	Doubts    []string         `json:"doubts"`
}

// proposed is one proposal and what it would do to the lots that are still to be bid for.
type proposed struct {
	learn.Proposal
	Effects []effect `json:"effects"`
}

// effect is one lot's walk-away bid as it is and as it would be; null: do not bid.
type effect struct {
	Lot    string  `json:"lot"`
	Before *string `json:"before"`
	After  *string `json:"after"`
}

// tune is the command "walk tune": it shows what past buys say of the forecasts and changes nothing.
func tune(args []string, out, errs io.Writer) int {
	o, code := readShopOrder("tune", args, errs)
	if code != done {
		return code
	}
	if !o.dry {
		fmt.Fprint(errs, "walk tune: say --dry-run. Factors are accepted one by one in the window, where each shows what it would change.\n")
		return faulty
	}
	s, code := readShop(o.path, errs)
	if code != done {
		return code
	}
	t := s.tuning()
	if o.asJSON {
		return writeJSON(out, errs, t)
	}
	return writeText(out, errs, tuneText(t))
}

// tuning works out the record and the proposals with their effects.
func (s *shop) tuning() tuning {
	t := tuning{Format: "walkline-tune/1", Currency: s.currency(), Factors: s.now, Doubts: s.doubts}
	t.Record = hindsight.Judge(s.past, t.Currency)
	if f := hindsight.Hammered(s.went); f.N > 0 {
		t.Record.Figures = append(t.Record.Figures, f)
	}
	m := valuation.NewMemory()
	for _, p := range learn.Propose(s.past, s.today, s.now, s.know.Starter()) {
		q := proposed{Proposal: p}
		for _, l := range s.open {
			e, err := m.Compare(l.Case, s.know, s.now, learn.Apply(s.now, p))
			if err != nil {
				t.doubt(fmt.Sprintf("%s cannot be valued: %v", l.Name, err))
				continue
			}
			q.Effects = append(q.Effects, effect{l.Name, bidText(l.Case.Currency, e.Before), bidText(l.Case.Currency, e.After)})
		}
		t.Proposals = append(t.Proposals, q)
	}
	return t
}

// doubt adds a doubt once.
func (t *tuning) doubt(text string) {
	if !slices.Contains(t.Doubts, text) {
		t.Doubts = append(t.Doubts, text)
	}
}

// bidText writes a bid, nil for none.
func bidText(currency string, a *money.Amount) *string {
	if a == nil {
		return nil
	}
	cur, _ := money.Lookup(currency)
	text := cur.Text(*a)
	return &text
}
