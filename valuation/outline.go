package valuation

import (
	"context"
	"slices"
	"strings"

	"walkline/valuation/money"
)

// unpriced are the beginnings of the keys that work, hidden damage and looks can be listed without: the price, and what is bid by it.
var unpriced = []string{"resale", "rules", "buying.bid_steps", "market"}

// Outlined reports whether a case with these faults can be outlined: all of them are of the price and of the bid.
func Outlined(faults []Fault) bool {
	return !slices.ContainsFunc(faults, func(f Fault) bool {
		return !slices.ContainsFunc(unpriced, func(key string) bool { return strings.HasPrefix(f.Key, key) })
	})
}

// Outline returns what can be said of a lot without a resale price: the work with its figures, the hidden damage, what to look at, and
// what a bid still needs. It names no price, no profit and no bid; what a look is worth is not known. Limits: [Outlined] holds of the
// case's faults. Errors: the answers contradict each other outright, or ctx has ended before the turn comes.
func (m *Memory) Outline(ctx context.Context, c Case, k Knowledge) (Answer, error) {
	m.mutex.Lock()
	defer m.mutex.Unlock()
	if err := ctx.Err(); err != nil {
		return Answer{}, err
	}
	w := work{c: c, k: k}
	w.currency, _ = money.Lookup(c.Currency)
	if err := w.expect(); err != nil {
		return Answer{}, err
	}
	w.items = w.list()
	w.played = m.scenes.Play(w.scene())
	a := Answer{Format: AnswerFormat, Currency: c.Currency, Repair: w.repairFigures(), Hidden: w.hiddenFigures(),
		Hours: spread(w.played.Hours), Labour: spread(w.played.Labour), Days: spread(w.played.Days), Checklist: w.items}
	a.unready(w.missing())
	return a, nil
}
