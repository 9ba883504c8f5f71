package prob

import (
	"math"
	"testing"
)

// ratioTable is a worked table of the IAAO Standard on Ratio Studies: estimates, prices, and the published COD, PRD and PRB with
// as many digits as the standard prints. Read as fixtures of a public implementation of the standard; its own pages not seen.
type ratioTable struct {
	name              string
	estimates, prices []float64
	cod, prd, prb     float64
	digits            [3]int
}

var ratioTables = []ratioTable{
	{"1-1", []float64{48000, 28800, 78400, 39840, 68160, 94400, 67200, 56960, 87200, 38240, 96320, 67680, 32960, 50560, 61360, 47360,
		58080, 47040, 136000, 103200, 59040, 168000, 128000, 132000, 160000, 160000, 200000, 184000, 160000, 157200, 99200,
		200000, 64000, 192000, 190400, 65440}, []float64{138000, 59250, 157500, 74400, 114900, 159000, 111900, 93000, 138720, 59700, 146400,
		99000, 47400, 70500, 78000,
		60000, 69000, 55500, 154500, 109500, 60000, 168000, 124500, 127500, 150000, 141000, 171900, 157500, 129600, 126000,
		77700, 153000, 48750, 144000, 141000, 48000},
		29.8, 0.98, 0.232, [3]int{1, 2, 3}},
	{"1-4", []float64{87200, 38240, 96320, 68610, 32960, 50560, 61360, 47360, 56580, 47040, 136000, 98000, 56000, 159100, 128000, 132000,
		160000}, []float64{138720, 59700, 146400, 99000, 47400, 70500, 78000, 60000, 69000, 55500, 154500, 109500, 60000, 168000, 124500,
		127500, 150000},
		14.5, 0.98, 0.135, [3]int{1, 2, 3}},
	{"D-1", []float64{116700, 130300, 130200, 145500, 134100, 153900, 143400, 156900, 169000, 149200, 160100, 191400, 177200, 205500,
		206500, 243800, 211600, 242500, 258400, 265900, 305700, 291600, 312800, 352200, 354900},
		[]float64{114500, 121000, 133900, 139000, 145000, 156500, 161100, 169500, 175000, 181000, 188900, 205000, 216150, 219000,
			235000, 249000, 258900, 263000, 305900, 312500, 336000, 360000, 399900, 418500, 459000},
		7.5, 1.027, -0.12, [3]int{1, 3, 3}},
	{"D-2", []float64{45000, 100000, 165000, 180000, 250000, 330000, 315000, 400000, 495000, 450000, 550000, 660000, 585000, 700000,
		825000, 1875000}, []float64{50000, 100000, 150000, 200000, 250000, 300000, 350000, 400000, 450000, 500000, 550000, 600000, 650000, 700000,
		750000, 2500000},
		7.8, 1.056, -0.011, [3]int{1, 3, 3}},
}

func TestRatioStudyMatchesPublishedTables(t *testing.T) {
	for _, c := range ratioTables {
		s, err := NewRatioStudy(c.estimates, c.prices)
		if err != nil {
			t.Fatal(err)
		}
		for k, v := range [][2]float64{{s.COD, c.cod}, {s.PRD, c.prd}, {s.PRB, c.prb}} {
			if half := 0.5 * math.Pow10(-c.digits[k]); math.Abs(v[0]-v[1]) > half {
				t.Errorf("table %s: %s = %.5f, published %g", c.name, []string{"COD", "PRD", "PRB"}[k], v[0], v[1])
			}
		}
	}
}

// Table 1-1 of the same standard: median ratio .864, mean .900, weighted mean .915 (computed again from its figures).
func TestRatioStudyLevels(t *testing.T) {
	s, err := NewRatioStudy(ratioTables[0].estimates, ratioTables[0].prices)
	if err != nil {
		t.Fatal(err)
	}
	if s.N != 36 || math.Abs(s.Median-0.863913) > 1e-6 || math.Abs(s.Mean-0.899578) > 1e-6 || math.Abs(s.WeightedMean-0.914852) > 1e-6 {
		t.Errorf("%+v", s)
	}
}

// Ratios don't hang on the unit of money; a common factor of the estimates moves the level alone.
func TestRatioStudyScales(t *testing.T) {
	c := ratioTables[2]
	want, _ := NewRatioStudy(c.estimates, c.prices)
	var estimates []float64
	for _, a := range c.estimates {
		estimates = append(estimates, 1.25*a)
	}
	got, _ := NewRatioStudy(estimates, c.prices)
	if math.Abs(got.Median-1.25*want.Median) > 1e-12 || math.Abs(got.COD-want.COD) > 1e-9 || math.Abs(got.PRD-want.PRD) > 1e-12 ||
		math.Abs(got.PRB-want.PRB) > 1e-9 {
		t.Errorf("%+v, scaled %+v", want, got)
	}
}

func TestRatioStudyRefusesWhatHasNoRatio(t *testing.T) {
	for _, c := range [][2][]float64{{nil, nil}, {{1}, {1, 2}}, {{0}, {1}}, {{1}, {0}}, {{math.NaN()}, {1}}, {{1}, {math.Inf(1)}}} {
		if _, err := NewRatioStudy(c[0], c[1]); err == nil {
			t.Errorf("%v: no error", c)
		}
	}
	if s, err := NewRatioStudy([]float64{9, 11}, []float64{10, 10}); err != nil || !math.IsNaN(s.PRB) || s.COD < 9.99 || s.COD > 10.01 {
		t.Errorf("two pairs: %+v, %v", s, err)
	}
}
