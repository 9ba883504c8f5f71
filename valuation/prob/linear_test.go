package prob

import (
	"math"
	"testing"
)

// Longley's employment figures and their certified fit: NIST Statistical Reference Datasets, linear regression, Longley.
var longley = [][]float64{
	{60323, 83.0, 234289, 2356, 1590, 107608, 1947}, {61122, 88.5, 259426, 2325, 1456, 108632, 1948},
	{60171, 88.2, 258054, 3682, 1616, 109773, 1949}, {61187, 89.5, 284599, 3351, 1650, 110929, 1950},
	{63221, 96.2, 328975, 2099, 3099, 112075, 1951}, {63639, 98.1, 346999, 1932, 3594, 113270, 1952},
	{64989, 99.0, 365385, 1870, 3547, 115094, 1953}, {63761, 100.0, 363112, 3578, 3350, 116219, 1954},
	{66019, 101.2, 397469, 2904, 3048, 117388, 1955}, {67857, 104.6, 419180, 2822, 2857, 118734, 1956},
	{68169, 108.4, 442769, 2936, 2798, 120445, 1957}, {66513, 110.8, 444546, 4681, 2637, 121950, 1958},
	{68655, 112.6, 482704, 3813, 2552, 123366, 1959}, {69564, 114.2, 502601, 3931, 2514, 125368, 1960},
	{69331, 115.7, 518173, 4806, 2572, 127852, 1961}, {70551, 116.9, 554894, 4007, 2827, 130081, 1962},
}

var (
	longleyCoef = []float64{-3482258.63459582, 15.0618722713733, -0.0358191792925910, -2.02022980381683,
		-1.03322686717359, -0.0511041056535807, 1829.15146461355}
	longleySE = []float64{890420.383607373, 84.9149257747669, 0.0334910077722432, 0.488399681651699,
		0.214274163161675, 0.226073200069370, 455.478499142212}
)

// Norris' ozone calibration and its certified fit: NIST Statistical Reference Datasets, linear regression, Norris.
var norrisY = []float64{0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3,
	448.9, 10.8, 557.7, 228.3, 998.0, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2, 117.6, 228.9, 668.4,
	449.2, 0.2}

var norrisX = []float64{0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6, 775.5, 666.9, 338.0,
	447.5, 11.6, 556.0, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1, 118.3, 229.2, 669.1,
	448.9, 0.5}

// digits asserts that got has at least the given number of correct significant digits.
func digits(t *testing.T, name string, got, want, least float64) {
	t.Helper()
	lre := -math.Log10(math.Abs(got-want) / math.Abs(want))
	if !(lre >= least) {
		t.Errorf("%s = %.15g, certified %.15g: %.1f correct digits, want %g", name, got, want, lre, least)
	}
}

func longleyDesign() (x [][]float64, y []float64) {
	for _, row := range longley {
		x = append(x, append([]float64{1}, row[1:]...))
		y = append(y, row[0])
	}
	return x, y
}

func TestLeastSquaresMatchesNISTLongley(t *testing.T) {
	x, y := longleyDesign()
	fit, err := LeastSquares(x, y)
	if err != nil {
		t.Fatal(err)
	}
	for j := range longleyCoef {
		digits(t, "coefficient", fit.Coef[j], longleyCoef[j], 8)
		digits(t, "standard error", fit.SE[j], longleySE[j], 8)
	}
	digits(t, "residual sd", fit.ResidualSD, 304.854073561965, 8)
	digits(t, "R2", fit.R2, 0.995479004577296, 8)
}

func TestLeastSquaresMatchesNISTNorris(t *testing.T) {
	var x [][]float64
	for _, v := range norrisX {
		x = append(x, []float64{1, v})
	}
	fit, err := LeastSquares(x, norrisY)
	if err != nil {
		t.Fatal(err)
	}
	digits(t, "B0", fit.Coef[0], -0.262323073774029, 8)
	digits(t, "B1", fit.Coef[1], 1.00211681802045, 8)
	digits(t, "SE B0", fit.SE[0], 0.232818234301152, 8)
	digits(t, "SE B1", fit.SE[1], 0.000429796848199937, 8)
	digits(t, "residual sd", fit.ResidualSD, 0.884796396144373, 8)
	digits(t, "R2", fit.R2, 0.999993745883712, 8)
}

// Wampler1: y is the sum of x^k, k = 0..5; every coefficient is 1 (NIST Statistical Reference Datasets; certified values
// from memory, and plain from the construction).
func TestLeastSquaresWampler1(t *testing.T) {
	var x [][]float64
	var y []float64
	for i := range 21 {
		row := []float64{1}
		sum := 1.0
		for range 5 {
			row = append(row, row[len(row)-1]*float64(i))
			sum += row[len(row)-1]
		}
		x, y = append(x, row), append(y, sum)
	}
	fit, err := LeastSquares(x, y)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range fit.Coef {
		digits(t, "coefficient", c, 1, 8)
	}
}

func TestLeastSquaresRefusesBadShapes(t *testing.T) {
	for name, c := range map[string]struct {
		x [][]float64
		y []float64
	}{
		"empty":         {nil, nil},
		"short":         {[][]float64{{1, 2}}, []float64{1}},
		"ragged":        {[][]float64{{1, 2}, {1}, {1, 3}}, []float64{1, 2, 3}},
		"unequal":       {[][]float64{{1}, {1}}, []float64{1}},
		"same column":   {[][]float64{{1, 1}, {2, 2}, {3, 3}}, []float64{1, 2, 3}},
		"nothing there": {[][]float64{{0}, {0}}, []float64{1, 2}},
	} {
		if _, err := LeastSquares(c.x, c.y); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
}

// On Longley's figures, centred and scaled, the normal equations that [Symmetric] solves agree with the certified fit.
func TestSymmetricSolvesCentredLongley(t *testing.T) {
	x, y := longleyDesign()
	n, p := len(x), len(x[0])
	mean, sd := make([]float64, p), make([]float64, p)
	for j := 1; j < p; j++ {
		for i := range n {
			mean[j] += x[i][j] / float64(n)
		}
		for i := range n {
			sd[j] += (x[i][j] - mean[j]) * (x[i][j] - mean[j])
		}
		sd[j] = math.Sqrt(sd[j])
	}
	s := NewSymmetric(p - 1)
	b := make([]float64, p-1)
	for i := range n {
		for j := 1; j < p; j++ {
			b[j-1] += (x[i][j] - mean[j]) / sd[j] * y[i]
			for k := j; k < p; k++ {
				s.Raw()[(j-1)*(p-1)+k-1] += (x[i][j] - mean[j]) / sd[j] * (x[i][k] - mean[k]) / sd[k]
			}
		}
	}
	sol, inv, err := s.Solve(b)
	if err != nil {
		t.Fatal(err)
	}
	for j := range sol {
		digits(t, "coefficient", sol[j]/sd[j+1], longleyCoef[j+1], 8)
		digits(t, "standard error", 304.854073561965*math.Sqrt(inv[j*(p-1)+j])/sd[j+1], longleySE[j+1], 8)
	}
}

func TestSymmetricRefusesIndefinite(t *testing.T) {
	s := NewSymmetric(2)
	copy(s.Raw(), []float64{1, 2, 2, 1})
	if _, _, err := s.Solve([]float64{1, 1}); err == nil {
		t.Error("an indefinite matrix was solved")
	}
}

// Brownlee's stack loss data (public, R datasets): the least-squares fits by R 4.2.2, lm with and without weights
// 1 / Air.Flow; weighting is scaling each row by the root of its weight.
func TestLeastSquaresMatchesStackLoss(t *testing.T) {
	loss := []float64{42, 37, 37, 28, 18, 18, 19, 20, 15, 14, 14, 13, 11, 12, 8, 7, 8, 8, 9, 15, 15}
	air := []float64{80, 80, 75, 62, 62, 62, 62, 62, 58, 58, 58, 58, 58, 58, 50, 50, 50, 50, 50, 56, 70}
	water := []float64{27, 27, 25, 24, 22, 23, 24, 24, 23, 18, 18, 17, 18, 19, 18, 18, 19, 19, 20, 20, 20}
	acid := []float64{89, 88, 90, 87, 87, 87, 93, 93, 87, 80, 89, 88, 82, 93, 89, 86, 72, 79, 80, 82, 91}
	for name, c := range map[string]struct {
		weighted bool
		want     []float64
		scale    float64
	}{
		"plain":    {false, []float64{-39.919674420, 0.715640200, 1.295286124, -0.152122519}, 3.243363918},
		"weighted": {true, []float64{-40.739409225, 0.718709794, 1.224774830, -0.127533325}, 0.401210461},
	} {
		var x [][]float64
		var y []float64
		for i := range loss {
			w := 1.0
			if c.weighted {
				w = 1 / math.Sqrt(air[i])
			}
			x = append(x, []float64{w, w * air[i], w * water[i], w * acid[i]})
			y = append(y, w*loss[i])
		}
		fit, err := LeastSquares(x, y)
		if err != nil {
			t.Fatal(err)
		}
		for j := range c.want {
			digits(t, name+" coefficient", fit.Coef[j], c.want[j], 8)
		}
		digits(t, name+" scale", fit.ResidualSD, c.scale, 8)
	}
}

// R's cars: log(dist) on log(speed), and Duan's smearing factor, the mean of exp(residual) (Duan, JASA 78 (1983) 605-610;
// figures computed with R 4.2.2; the data from memory, which the figures confirm).
func TestLeastSquaresAndSmearingMatchCars(t *testing.T) {
	speed := []float64{4, 4, 7, 7, 8, 9, 10, 10, 10, 11, 11, 12, 12, 12, 12, 13, 13, 13, 13, 14, 14, 14, 14, 15, 15, 15, 16, 16, 17,
		17, 17, 18, 18, 18, 18, 19, 19, 19, 20, 20, 20, 20, 20, 22, 23, 24, 24, 24, 24, 25}
	dist := []float64{2, 10, 4, 22, 16, 10, 18, 26, 34, 17, 28, 14, 20, 24, 28, 26, 34, 34, 46, 26, 36, 60, 80, 20, 26, 54, 32, 40,
		32, 40, 50, 42, 56, 76, 84, 36, 46, 68, 32, 48, 52, 56, 64, 66, 54, 70, 92, 93, 120, 85}
	var x [][]float64
	var y []float64
	for i := range speed {
		x = append(x, []float64{1, math.Log(speed[i])})
		y = append(y, math.Log(dist[i]))
	}
	fit, err := LeastSquares(x, y)
	if err != nil {
		t.Fatal(err)
	}
	smear := 0.0
	for i := range y {
		smear += math.Exp(y[i]-fit.Coef[0]-fit.Coef[1]*x[i][1]) / float64(len(y))
	}
	digits(t, "intercept", fit.Coef[0], -0.729668750, 8)
	digits(t, "slope", fit.Coef[1], 1.602391206, 8)
	digits(t, "sigma", fit.ResidualSD, 0.405267038, 8)
	digits(t, "smearing factor", smear, 1.081589832, 8)
	digits(t, "Duan's forecast at 21", smear*math.Exp(fit.Coef[0]+fit.Coef[1]*math.Log(21)), 68.5305244, 8)
}
