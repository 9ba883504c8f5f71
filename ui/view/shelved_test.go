package view_test

import (
	"fmt"
	"slices"
	"testing"
	"time"

	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/ui/view"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/resale"
)

// shelf returns a state with comparables on its shelf.
func shelf(all ...book.Comparable) desk.State { return desk.State{Shelf: all} }

// shown returns the places of the rows that are shown.
func shown(v *view.Shelf) (ids []int64) {
	for i := range v.Len() {
		ids = append(ids, v.At(i).ID)
	}
	return ids
}

// TestTheShelfIsSearchedAndSorted: newest first, by figures and days where a column holds them; what is not said comes last.
func TestTheShelfIsSearchedAndSorted(t *testing.T) {
	far, near := 100_000.0, 80_000.0
	v := view.NewShelf(shelf(
		book.Comparable{ID: 1, Currency: "USD", From: "a.csv", On: "2026-11-01", Row: resale.Row{Price: 990_000, Make: "Ostrane", Model: "Pell",
			ModelYear: 2018, Date: "2026-02-01", Mileage: &far, Unit: "km"}},
		book.Comparable{ID: 2, Currency: "USD", On: "2026-11-02", Row: resale.Row{Price: 1_000_000, Make: "Kettrick", Model: "Dunlin",
			Date: "2025-12-31", Mileage: &near}, Earlier: []book.Earlier{{Price: 1_100_000}}},
		book.Comparable{ID: 3, Currency: "USD", From: "a.csv", On: "2026-11-02", Row: resale.Row{Price: 80_000, Make: "Ostrane", Model: "Vale",
			ModelYear: 2020}}))
	for _, x := range []struct {
		f    view.ShelfFilter
		want []int64
	}{
		{view.ShelfFilter{Sort: -1}, []int64{3, 2, 1}},
		{view.ShelfFilter{Sort: -1, Search: "OSTRANE 2018"}, []int64{1}},
		{view.ShelfFilter{Sort: -1, Search: "typed"}, []int64{2}},
		{view.ShelfFilter{Sort: -1, From: "a.csv"}, []int64{3, 1}},
		{view.ShelfFilter{Sort: 0}, []int64{3, 1, 2}},
		{view.ShelfFilter{Sort: 0, Down: true}, []int64{2, 1, 3}},
		{view.ShelfFilter{Sort: 2}, []int64{2, 1, 3}},
		{view.ShelfFilter{Sort: 2, Down: true}, []int64{1, 2, 3}},
		{view.ShelfFilter{Sort: 4}, []int64{1, 2, 3}}, // 100,000 km are 62,137 miles
		{view.ShelfFilter{Sort: 7}, []int64{1, 3, 2}},
		{view.ShelfFilter{Sort: 8}, []int64{2, 3, 1}},
	} {
		if v.Show(x.f); !slices.Equal(shown(v), x.want) {
			t.Errorf("%+v shows %v, want %v", x.f, shown(v), x.want)
		}
	}
}

// BenchmarkShelf searches and sorts 100,000 comparables as a keystroke does; the ratio is to a picture of the screen's sixtieth of a
// second.
func BenchmarkShelf(b *testing.B) {
	all := make([]book.Comparable, 100_000)
	for i := range all {
		all[i] = book.Comparable{ID: int64(i), Currency: "USD", On: "2026-11-02", Row: resale.Row{Price: money.Amount(i * 7919 % 100_000),
			Make: "Ostrane", Model: fmt.Sprint("Pell ", i%90), ModelYear: 2010 + i%15, Date: lot.Date("2026-10-01")}}
	}
	v := view.NewShelf(shelf(all...))
	for name, f := range map[string]view.ShelfFilter{"search": {Search: "pell 7", Sort: -1}, "sort": {Sort: 0}} {
		v.Show(f)
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				v.Show(f)
			}
			b.ReportMetric(b.Elapsed().Seconds()/float64(b.N)/(time.Second/60).Seconds(), "x_frame")
		})
	}
}
