package resale_test

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"walkline/valuation/resale"
)

func TestParsePriorRefusesWhatItCantUse(t *testing.T) {
	good, err := json.Marshal(starter(t))
	if err != nil {
		t.Fatal(err)
	}
	if _, err := resale.ParsePrior(good); err != nil {
		t.Fatal(err)
	}
	for want, change := range map[string]func(*resale.Prior){
		"format":               func(p *resale.Prior) { p.Format = "walkline-resale-prior/9" },
		"no market":            func(p *resale.Prior) { p.Markets = nil },
		"drift":                func(p *resale.Prior) { p.Walk.SD = 0 },
		"\"age\"":              func(p *resale.Prior) { delete(p.Markets[0].Effects, "age") },
		"\"mileage/root\"":     func(p *resale.Prior) { p.Markets[1].Effects["mileage/root"] = resale.Effect{Mean: -0.04} },
		"\"engine_l\"":         func(p *resale.Prior) { p.Markets[0].Effects["engine_l"] = resale.Effect{SD: -1} },
		"spread \"trim\"":      func(p *resale.Prior) { delete(p.Markets[0].Spreads, "trim") },
		"degrees of freedom":   func(p *resale.Prior) { p.Markets[0].DF = 1 },
		"residual's spread or": func(p *resale.Prior) { p.Markets[0].Residual.Worth = 0 },
	} {
		var p resale.Prior
		if err := json.Unmarshal(good, &p); err != nil {
			t.Fatal(err)
		}
		change(&p)
		data, _ := json.Marshal(p)
		if _, err := resale.ParsePrior(data); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("want an error that names %s, got %v", want, err)
		}
	}
	if _, err := resale.ParsePrior([]byte(`{"format":"walkline-resale-prior/2","colour":1}`)); err == nil {
		t.Error("an unknown key passed")
	}
}

// The shipped prior agrees with the slopes published with the open data: uk -5.2 % per 10,000 miles and +10 % per model year,
// residual log sd 0.09; pl -1.3 % per 10,000 km and +13 %, 0.14; the index moves by 8.0 % over 12 months.
func TestStarterPriorAgreesWithPublishedSlopes(t *testing.T) {
	p := starter(t)
	if math.Abs(p.Walk.SD-0.080) > 0.001 {
		t.Errorf("market drift %.4f a year", p.Walk.SD)
	}
	want := map[string][3]float64{"uk2020": {-0.10, -0.052, 0.09}, "pl2012": {-0.13, -0.021, 0.14}}
	for _, m := range p.Markets {
		w, ok := want[m.Name]
		if !ok {
			continue
		}
		if math.Abs(m.Effects["age"].Mean-w[0]) > 0.015 || math.Abs(m.Effects["mileage/linear"].Mean-w[1]) > 0.006 ||
			math.Abs(m.Residual.SD-w[2]) > 0.02 {
			t.Errorf("%s: age %.3f, mileage %.3f, residual %.3f", m.Name, m.Effects["age"].Mean, m.Effects["mileage/linear"].Mean, m.Residual.SD)
		}
	}
}

// FuzzFit: no table that passes the case's checks makes the fit panic or answer with anything but rising finite prices.
func FuzzFit(f *testing.F) {
	p := starter(f)
	f.Add(int64(1_000_000), 2019, 50_000.0, "S", "rebuilt", "2024-01-01", "1.6", 3, 2019, 40_000.0)
	f.Add(int64(1), 1, 0.0, "", "", "", "", 1, 3000, 1e12)
	f.Add(int64(1<<52), 9999, 1e300, "a|b", "salvage", "0001-01-01", "x", 30, 1900, 0.0)
	f.Fuzz(func(t *testing.T, price int64, year int, miles float64, trim, title, date, extra string, n, subjectYear int,
		subjectMiles float64) {
		var rows []resale.Row
		for i := range min(max(n, 0), 30) {
			m := miles * float64(i)
			rows = append(rows, resale.Row{Price: usd.FromMajor(math.Abs(float64(price%1e9)) / float64(i+1)), ModelYear: year + i%3, Mileage: &m,
				Trim: trim[:len(trim)*(i%2)], Title: title, Date: lotDate(date), More: map[string]string{"x": extra[:len(extra)*(i%2)], "k": extra}})
		}
		s := resale.Subject{ModelYear: subjectYear, Mileage: &subjectMiles, Trim: trim, Brand: title, SaleMonth: lotDate(date),
			More: map[string]string{"x": extra, "k": "2"}}
		_, b := rebuilt()
		m := resale.Fit(rows, s, b, p)
		m.Warnings()
		got := m.Price()
		if m.Err() == nil && !(got.P10 > 0 && got.P10 <= got.P50 && got.P50 <= got.P90 && !math.IsInf(got.Mean, 0) && m.LevelSD() >= 0) {
			t.Errorf("price %+v, level sd %g", got, m.LevelSD())
		}
	})
}
