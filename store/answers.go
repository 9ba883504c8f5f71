package store

import (
	"context"
	"database/sql"
	"encoding/json"
	"fmt"
	"math"
	"slices"

	"walkline/store/book"
	"walkline/valuation"
)

// NoteAnswer keeps what a valuation of a lot said, for the list of lots, as the answer to that revision of its case: where the case
// has changed since it shows as stale. An answer to an older revision than the one that is kept is let go.
// Errors: [ErrNotFound]; [ErrRefused] when the answer decides nothing or a figure is not finite.
func (s *Store) NoteAnswer(ctx context.Context, of book.Answered, a valuation.Answer) error {
	id := of.Lot
	doing := fmt.Sprintf("noting the answer for lot %d", id)
	if len(a.Needs) > 0 {
		a.Profit = valuation.Profit{} // there is none, and the list shows none without a bid
	}
	if !finite(a.Profit) {
		return fmt.Errorf("%s: %w: a figure is not finite", doing, ErrRefused)
	}
	more, err := json.Marshal(said(of, a))
	if err != nil {
		return fmt.Errorf("%s: %w (%w)", doing, ErrRefused, err)
	}
	return s.write(ctx, doing, func(tx *sql.Tx) error {
		p := place{ctx, tx}
		if err := p.row(`SELECT id FROM lots WHERE id = ? AND removed_at IS NULL`, id).Scan(&id); err != nil {
			return err
		}
		err := p.exec(`INSERT INTO answers (lot, revision, decision, walk_away, binding, loss_chance, mean_profit, per_hour, noted_at, said)
			VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
			ON CONFLICT (lot) DO UPDATE SET revision = excluded.revision, decision = excluded.decision, walk_away = excluded.walk_away,
				binding = excluded.binding, loss_chance = excluded.loss_chance, mean_profit = excluded.mean_profit,
				per_hour = excluded.per_hour, noted_at = excluded.noted_at, said = excluded.said
				WHERE excluded.revision >= answers.revision`,
			id, of.Revision, a.Decision, (*int64)(a.WalkAway), a.BindingRule, a.Profit.LossChance, a.Profit.Mean, a.Profit.PerHour, s.stamp(),
			string(more))
		if err != nil {
			return err
		}
		return p.seal("answers", `lot = ?`, id)
	})
}

// said returns what else the list shows of an answer.
func said(of book.Answered, a valuation.Answer) book.Said {
	s := book.Said{Plan: a.Plan, WinChance: a.WinChance, ExpectedGain: a.ExpectedGain,
		Rests: of.Rests, Shift: of.Shift}
	if g := a.FirstGuess; g != nil {
		s.FirstGuess, s.LookWorth = true, g.LookRate
	}
	for _, n := range a.Needs {
		s.Needs = append(s.Needs, n.Key)
	}
	return s
}

// finite reports whether the figures that the list shows are numbers.
func finite(p valuation.Profit) bool {
	figures := []float64{p.Mean, p.LossChance}
	if p.PerHour != nil {
		figures = append(figures, *p.PerHour)
	}
	return !slices.ContainsFunc(figures, func(x float64) bool { return math.IsNaN(x) || math.IsInf(x, 0) })
}
