package prob_test

import (
	"encoding/csv"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"testing"

	"walkline/valuation/prob"
)

// table reads a CSV of published or computed reference figures from testdata.
func table(t *testing.T, name string) []map[string]float64 {
	t.Helper()
	f, err := os.Open(filepath.Join("..", "..", "testdata", "reference", name))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var out []map[string]float64
	for _, r := range rows[1:] {
		m := map[string]float64{}
		for i, cell := range r {
			m[rows[0][i]], _ = strconv.ParseFloat(cell, 64)
		}
		out = append(out, m)
	}
	return out
}

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s = %.10g, want %.10g (within %g)", what, got, want, tol)
	}
}

// Source: testdata/reference/pert_triangular.csv, computed with SciPy 1.10.1 (beta distribution with lambda 4).
func TestPERTMomentsAndQuantiles(t *testing.T) {
	for _, r := range table(t, "pert_triangular.csv") {
		three := prob.Three{Low: r["a"], Likely: r["m"], High: r["b"]}
		w := r["b"] - r["a"]
		near(t, "mean", three.Mean(), r["pert_mean"], 1e-12*r["pert_mean"]+1e-12)
		near(t, "variance", three.Variance(), r["pert_var_exact"], 1e-9*r["pert_var_exact"])
		scored := three.Score()
		for q, p := range map[string]float64{"pert_q05": .05, "pert_q10": .1, "pert_q50": .5, "pert_q80": .8, "pert_q90": .9, "pert_q95": .95} {
			near(t, q, three.Quantile(p), r[q], 1e-8*w)
			near(t, "chance of "+q, three.CDF(r[q]), p, 1e-6)
			near(t, q+" by score", scored.At(prob.NormQuantile(p)), r[q], 1e-3*w)
		}
	}
}

// Source: Anderson et al., An Introduction to Management Science, ch. 9, table 9.4: t_A = 6, var_A = 1.78 by the
// textbook's ((b-a)/6)^2; the means agree, the beta's own variance differs where the judgement is lopsided.
func TestPERTTextbookMeans(t *testing.T) {
	for _, r := range table(t, "pert_textbook_table9_4.csv") {
		near(t, "mean", prob.Three{Low: r["a"], Likely: r["m"], High: r["b"]}.Mean(), r["mean"], 1e-12)
	}
	near(t, "the variance of (1,4,13)", prob.Three{Low: 1, Likely: 4, High: 13}.Variance(), 32.0/7, 1e-12)
}

// Source: testdata/reference/normal_var_cvar.csv, closed form phi(z) / (1 - b).
func TestExpectedShortfallOfTheNormal(t *testing.T) {
	const n = 1 << 17
	d := prob.NewDraws(n, 3)
	col := make([]float64, n)
	d.Column("profit", col)
	sorted := prob.Sorted(col)
	for _, r := range table(t, "normal_var_cvar.csv") {
		b := r["beta"]
		near(t, "quantile", prob.NormQuantile(b), r["z_VaR"], 1e-12)
		near(t, "shortfall", -prob.WorstMean(sorted, 1-b), r["CVaR"], 2e-3)
	}
}

// Source: Acerbi and Tasche 2002, definition 2.6 (from memory), worked by hand on ten values.
func TestExpectedShortfallOfTenValues(t *testing.T) {
	xs := []float64{-5, -3, -2, -1, 0, 1, 2, 3, 4, 10}
	for a, want := range map[float64]float64{.10: 5, .20: 4, .25: 3.6, .05: 5} {
		near(t, "shortfall", -prob.WorstMean(xs, a), want, 1e-12)
	}
}

// Source: model.md's quadrature (Milgrom and Weber 1982, symmetric common value); c(3) = 1/(2 sqrt(pi)) * 2/sqrt(3) is
// the closed form for three bidders: the mean of t under phi^2 Phi.
func TestWinnersConstant(t *testing.T) {
	for n, want := range map[int]float64{1: 0, 2: 0, 3: 0.325735, 5: 0.687915, 10: 1.112657, 20: 1.479623} {
		near(t, "c", prob.WinnersConstant(n), want, 5e-7)
	}
	near(t, "c(3) closed form", prob.WinnersConstant(3), 1/math.Sqrt(3*math.Pi), 1e-9)
}

// Source: Wichura's AS241 and R's qnorm, quoted to 16 digits.
func TestNormQuantile(t *testing.T) {
	near(t, "q(.25)", prob.NormQuantile(.25), -.6744897501960817, 1e-14)
	near(t, "q(.001)", prob.NormQuantile(.001), -3.090232306167813, 1e-13)
	near(t, "q(1e-20)", prob.NormQuantile(1e-20), -9.262340089798409, 1e-12)
}

func TestDrawsKeepTheirColumnWhenOthersChange(t *testing.T) {
	d := prob.NewDraws(1000, 7)
	a, b, c := make([]float64, 1000), make([]float64, 1000), make([]float64, 1000)
	d.Column("r1/hours", a)
	d.Column("r2/hours", b)
	prob.NewDraws(1000, 7).Column("r1/hours", c)
	var same, corr float64
	for i := range a {
		if a[i] != c[i] {
			t.Fatal("the same name and seed gave another column")
		}
		if a[i] == b[i] {
			same++
		}
		corr += a[i] * b[i] / 1000
	}
	if same > 20 || math.Abs(corr) > 0.12 {
		t.Errorf("two names share %v places, correlation %.3f", same, corr)
	}
	near(t, "mean", prob.Mean(a), 0, 1e-12)
	near(t, "variance", prob.Variance(a), 1, 0.01)
}

func TestTable(t *testing.T) {
	tb := prob.NewTable([]float64{0, .1, .5, .9, 1}, []float64{10, 12, 20, 26, 40})
	for _, x := range []float64{9, 10, 11, 12, 13.7, 20, 25.9, 33, 40, 41} {
		near(t, "quantile of the chance", tb.Quantile(tb.CDF(x)), math.Min(40, math.Max(10, x)), 1e-12)
	}
	const n = 200000
	var sum, sq, low float64
	for i := range n {
		x := tb.Quantile((float64(i) + .5) / n)
		sum += x / n
		sq += x * x / n
		if x <= 21 {
			low += x / n
		}
	}
	near(t, "mean", tb.Mean(), sum, 1e-4)
	near(t, "sd", tb.SD(), math.Sqrt(sq-sum*sum), 1e-3)
	near(t, "partial expectation", tb.Below(21), low, 1e-3)
	sure := prob.CertainTable(7)
	if sure.CDF(7) != 0 || sure.CDF(7.01) != 1 || sure.Quantile(.3) != 7 || sure.SD() != 0 {
		t.Error("a certain value is not certain")
	}
}

func BenchmarkScore(b *testing.B) {
	for b.Loop() {
		prob.Three{Low: 1, Likely: 4, High: 13}.Score()
	}
}

func BenchmarkColumn(b *testing.B) {
	d := prob.NewDraws(16384, 1)
	col := make([]float64, 16384)
	for b.Loop() {
		d.Column("r1", col)
	}
}

func BenchmarkShapes(b *testing.B) {
	for b.Loop() {
		for i := range 100 {
			prob.Three{Low: 0, Likely: .3, High: 1}.Quantile(float64(i+1) / 102)
		}
	}
}

// Selecting is held against sorting, over samples with ties, of one value, risen and fallen.
func TestQuantilesWithoutSortingAll(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 14))
	for n := range 400 {
		xs := make([]float64, 1+n%37+n/8)
		for i := range xs {
			switch n % 4 {
			case 0:
				xs[i] = float64(rng.IntN(5))
			case 1:
				xs[i] = float64(i)
			case 2:
				xs[i] = float64(-i)
			default:
				xs[i] = rng.NormFloat64()
			}
		}
		before := slices.Clone(xs)
		ps := []float64{0, .05, .1, .5, .9, .999, 1}
		for k, got := range prob.Quantiles(xs, ps...) {
			if want := prob.Quantile(prob.Sorted(xs), ps[k]); got != want {
				t.Fatalf("sample %d, chance %g: %g, sorted %g", n, ps[k], got, want)
			}
		}
		if !slices.Equal(xs, before) {
			t.Fatal("the sample was changed")
		}
	}
}

// A walk says what a look-up says, wherever it goes next.
func TestWalkOverATable(t *testing.T) {
	rng := rand.New(rand.NewPCG(8, 9))
	table := prob.NewTable([]float64{0, .1, .3, .3001, .9, 1}, []float64{-5, 1, 1, 4, 9, 40})
	sure := prob.CertainTable(7)
	walk, still := table.Walk(), sure.Walk()
	for range 2000 {
		x := -8 + 55*rng.Float64()
		if rng.IntN(4) == 0 {
			x = []float64{-5, 1, 4, 9, 40, 7}[rng.IntN(6)]
		}
		c, b := walk.Lower(x)
		wantC, wantB := table.Lower(x)
		d, e := still.Lower(x)
		wantD, wantE := sure.Lower(x)
		if c != wantC || b != wantB || d != wantD || e != wantE {
			t.Fatalf("at %g: %g and %g, want %g and %g; sure: %g and %g, want %g and %g", x, c, b, wantC, wantB, d, e, wantD, wantE)
		}
	}
}

// parts is into how many parts of one chance a column is cut below.
const parts = 8

// Columns of different names are as good as independent: over all pairs of a hundred of them, n times the squared correlation
// has the mean 1 and Pearson's statistic of an 8 x 8 table the mean of its 49 degrees of freedom, as for shuffled columns.
func TestColumnsAreIndependent(t *testing.T) {
	for _, n := range []int{1000, 4096} {
		d := prob.NewDraws(n, 1)
		cols, cut := make([][]float64, 100), make([][]uint8, 100)
		for i := range cols {
			cols[i], cut[i] = make([]float64, n), make([]uint8, n)
			d.Column(fmt.Sprint("line/", i), cols[i])
			for k, z := range cols[i] {
				cut[i][k] = uint8(prob.NormCDF(z) * parts)
			}
			if sorted := prob.Sorted(cols[i]); sorted[0] >= sorted[1] || prob.Mean(sorted) > 1e-9 {
				t.Fatal("a column misses some of its strata")
			}
		}
		var correlation, pearson, pairs float64
		for a := range cols {
			for b := range a {
				pairs++
				product := 0.0
				for k, z := range cols[a] {
					product += z * cols[b][k]
				}
				correlation += product * product / float64(n)
				pearson += statistic(cut[a], cut[b])
			}
		}
		near(t, "squared correlation", correlation/pairs, 1, 4*math.Sqrt(2/pairs))
		near(t, "Pearson's statistic", pearson/pairs, 49, 4*math.Sqrt(98/pairs))
	}
}

// statistic returns Pearson's statistic of a table of two cut columns.
func statistic(a, b []uint8) float64 {
	var cells [parts][parts]float64
	for k := range a {
		cells[a[k]][b[k]]++
	}
	expected, sum := float64(len(a))/parts/parts, 0.0
	for _, row := range cells {
		for _, count := range row {
			sum += (count - expected) * (count - expected) / expected
		}
	}
	return sum
}

// A stream read at some places says there what the whole column says.
func TestStreamAtSomePlaces(t *testing.T) {
	const n = 300
	d := prob.NewDraws(n, 5)
	factor, whole, some := make([]float64, n), make([]float64, n), make([]float64, 3)
	d.Column("lot/factor", factor)
	at := []int32{4, 177, 299}
	table := prob.Three{Low: 10, Likely: 14, High: 40}.Score()
	for _, rho := range []float64{0, .4} {
		s := d.Stream("a")
		lean := prob.Lean{Factor: factor, Rho: rho}
		s.Values(table, lean, nil, whole)
		s.Values(table, lean, at, some)
		for k, i := range at {
			if some[k] != whole[i] {
				t.Errorf("loading %g, place %d: %g, in the whole %g", rho, i, some[k], whole[i])
			}
		}
		room := func() []int32 { return make([]int32, n) }
		happened, not := s.Split(.3, lean, nil, whole, room(), room())
		again, none := s.Split(.3, lean, happened, whole, room(), room())
		if !slices.Equal(happened, again) || len(none) != 0 || len(happened) < n/5 || len(happened) > n*2/5 {
			t.Errorf("loading %g: happens %d times of %d, and %d of those", rho, len(happened), n, len(again))
		}
		both := slices.Concat(happened, not)
		slices.Sort(both)
		if len(both) != n || both[0] != 0 || both[n-1] != n-1 || !slices.IsSorted(happened) || !slices.IsSorted(not) {
			t.Errorf("loading %g: %d and %d of %d", rho, len(happened), len(not), n)
		}
	}
}
