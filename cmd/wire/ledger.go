package wire

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"walkline/store/book"
	"walkline/store/csvfile"
	"walkline/ui/view"
	"walkline/valuation/money"
)

// Ledger returns every movement of money and every own hour of the bought lots as CSV, by day; what has no day comes first.
func (Press) Ledger(list []book.Bought) []byte {
	var out []csvfile.Entry
	for _, b := range list {
		if cur, known := money.Lookup(b.Currency); known && b.Ours() {
			out = append(out, entriesOf(b, cur)...)
		}
	}
	slices.SortStableFunc(out, func(a, b csvfile.Entry) int { return cmp.Compare(a.Date, b.Date) })
	return csvfile.Ledger(out)
}

func entriesOf(b book.Bought, cur money.Currency) []csvfile.Entry {
	of := csvfile.Entry{Lot: b.Number, VIN: b.VIN, Vehicle: view.Vehicle(b.ModelYear, b.Make, b.Model, b.Trim),
		Wreck:    strings.Join(b.Loss, "; "),
		Currency: b.Currency}
	var out []csvfile.Entry
	add := func(entry string, fill func(*csvfile.Entry)) {
		e := of
		e.Entry, e.Date = entry, string(b.Build.Dates.Bought)
		fill(&e)
		out = append(out, e)
	}
	if b.Build.Hammer != nil {
		add("purchase", func(e *csvfile.Entry) { e.What, e.Seller, e.Out = "hammer price", b.Sale, cur.Text(*b.Build.Hammer) })
	}
	for _, c := range b.Build.Charges {
		add("charge", func(e *csvfile.Entry) { e.What, e.Seller, e.Out = c.Name, b.Sale, cur.Text(c.Amount) })
	}
	for _, r := range b.Build.Receipts {
		add("bill", func(e *csvfile.Entry) {
			e.Date, e.Kind, e.What, e.Seller, e.Number, e.Out = string(r.Date), r.Kind, r.What, r.Seller, r.Number, cur.Text(r.Amount)
			for _, f := range r.Files() {
				e.Files = strings.Trim(e.Files+"; "+f.Name, "; ")
			}
		})
	}
	for _, w := range b.Build.Hours {
		add("hours", func(e *csvfile.Entry) {
			e.Date, e.Kind, e.What, e.Hours = string(w.Date), w.Trade, w.What, plainHours(w.Hours)
		})
	}
	if b.Build.Sale.Price != nil {
		add("sale", func(e *csvfile.Entry) {
			e.Date, e.What, e.In = string(b.Build.Dates.Sold), string(b.Build.Outcome), cur.Text(*b.Build.Sale.Price)
		})
	}
	return out
}

// plainHours writes hours without a thousands mark: two decimals and no more.
func plainHours(h float64) string {
	return strings.TrimSuffix(strconv.FormatFloat(h, 'f', 2, 64), ".00")
}
