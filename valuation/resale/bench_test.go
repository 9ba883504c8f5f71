package resale_test

import (
	"testing"

	"walkline/valuation/resale"
)

func benchmark(b *testing.B, n int) {
	all, cur := prices(b, "uk2020_slice.csv")
	p := starter(b)
	rows := make([]resale.Row, n)
	for i := range rows {
		rows[i] = all[i%len(all)]
		miles := *rows[i].Mileage + float64(i)
		rows[i].Mileage = &miles
	}
	for b.Loop() {
		resale.Fit(rows, asSubject(all[0]), asking(cur), p).Price()
	}
}

func BenchmarkFit10(b *testing.B)   { benchmark(b, 10) }
func BenchmarkFit40(b *testing.B)   { benchmark(b, 40) }
func BenchmarkFit400(b *testing.B)  { benchmark(b, 400) }
func BenchmarkFit5000(b *testing.B) { benchmark(b, 5000) }

// One model only, as most tables are.
func BenchmarkFitHatch400(b *testing.B) {
	all, cur := prices(b, "hatch2004_public.csv")
	p := starter(b)
	for b.Loop() {
		resale.Fit(all[1:401], asSubject(all[0]), asking(cur), p).Price()
	}
}
