package build

import (
	"slices"

	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// Bought returns the bills as they count for the work that they were for. One below zero that names what a bill of its kind names takes
// that bill back, as returned goods do. Any other one below zero is money back, such as a core deposit or a leftover part that was sold:
// it lowers what was paid and undoes no work, so it is left out, as is a bill that was taken back whole.
func (b Build) Bought() []Receipt {
	var out []Receipt
	back := slices.Clone(b.Receipts) // what is left of those below zero
	for _, r := range b.Receipts {
		if r.Amount < 0 {
			continue
		}
		paid := r.Amount
		for i, x := range back {
			if x.Amount < 0 && x.returns(r) {
				taken := min(-x.Amount, r.Amount)
				r.Amount, back[i].Amount = r.Amount-taken, x.Amount+taken
			}
		}
		if paid == 0 || r.Amount > 0 {
			out = append(out, r)
		}
	}
	return out
}

// returns reports whether a bill below zero is for what another one bought: the same kind and words, and the same line where it names one.
func (r Receipt) returns(bought Receipt) bool {
	return r.Kind == bought.Kind && SamePart(r.What, bought.What) && (r.Line == "" || lot.SameWork(r.Line, bought.Line))
}

// MoneyBack returns what the bills below zero come to, as a sum above zero.
func (b Build) MoneyBack() money.Amount {
	return -b.Bills(func(r Receipt) bool { return r.Amount < 0 })
}
