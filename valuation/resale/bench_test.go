package resale_test

import (
	"math"
	"slices"
	"strconv"
	"testing"
	"time"

	"walkline/valuation/prob"
	"walkline/valuation/resale"
)

// manyModels returns n rows of 24 models, and the vehicle to be priced.
func manyModels(b *testing.B, n int) ([]resale.Row, resale.Subject, resale.Beliefs) {
	all, cur := prices(b, "uk2020_slice.csv")
	rows := make([]resale.Row, n)
	for i := range rows {
		rows[i] = all[i%len(all)]
		miles := *rows[i].Mileage + float64(i)
		rows[i].Mileage = &miles
	}
	return rows, asSubject(all[0]), asking(cur)
}

func benchmark(b *testing.B, n int) {
	rows, s, beliefs := manyModels(b, n)
	p := starter(b)
	for b.Loop() {
		resale.Fit(rows, s, beliefs, p).Price()
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

// A row is ticked off and on again: the whole is fitted anew. x_first is the time of that over the time of a first fit.
func BenchmarkTick400(b *testing.B)  { benchmarkTick(b, 400) }
func BenchmarkTick5000(b *testing.B) { benchmarkTick(b, 5000) }

func benchmarkTick(b *testing.B, n int) {
	rows, s, beliefs := manyModels(b, n)
	p := starter(b)
	var first, tick []time.Duration
	for b.Loop() {
		first = append(first, took(func() { resale.Fit(rows, s, beliefs, p).Price() }))
		rows[7].Excluded = true
		tick = append(tick, took(func() { resale.Fit(rows, s, beliefs, p).Price() }))
		rows[7].Excluded = false
	}
	b.ReportMetric(ratio(tick, first), "x_first")
}

// The baseline is one regression with nothing estimated beside the coefficients: least squares of the log price on year, mileage
// and engine and a column for each model, by dense QR in this module's own solver. x_qr is the time of the whole answer (screening,
// five fits, calibration, grid, warnings) over the time of the baseline.
func BenchmarkVersusQR400(b *testing.B)  { benchmarkVersusQR(b, 400) }
func BenchmarkVersusQR5000(b *testing.B) { benchmarkVersusQR(b, 5000) }

func benchmarkVersusQR(b *testing.B, n int) {
	rows, s, beliefs := manyModels(b, n)
	p := starter(b)
	var whole, plain []time.Duration
	for b.Loop() {
		whole = append(whole, took(func() { resale.Fit(rows, s, beliefs, p).Price() }))
		plain = append(plain, took(func() {
			if x, y := denseColumns(rows); len(x) > 0 {
				if _, err := prob.LeastSquares(x, y); err != nil {
					b.Fatal(err)
				}
			}
		}))
	}
	b.ReportMetric(ratio(whole, plain), "x_qr")
}

func denseColumns(rows []resale.Row) (x [][]float64, y []float64) {
	models := map[string]int{}
	for _, r := range rows {
		if _, ok := models[r.Model]; !ok {
			models[r.Model] = 3 + len(models)
		}
	}
	for _, r := range rows {
		engine, _ := strconv.ParseFloat(r.More["engine_l"], 64)
		row := make([]float64, 3+len(models))
		row[0], row[1], row[2], row[models[r.Model]] = float64(r.ModelYear-2015), *r.Mileage/10_000, engine, 1
		x, y = append(x, row), append(y, math.Log(float64(r.Price)))
	}
	return x, y
}

func took(f func()) time.Duration {
	start := time.Now()
	f()
	return time.Since(start)
}

// ratio returns the median time of a over that of b.
func ratio(a, b []time.Duration) float64 {
	slices.Sort(a)
	slices.Sort(b)
	return float64(a[len(a)/2]) / float64(b[len(b)/2])
}
