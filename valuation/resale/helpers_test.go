package resale_test

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/prob"
	"walkline/valuation/resale"
)

var usd = money.Currency{Code: "USD", Digits: 2}

// starter returns the shipped prior without the markets named.
func starter(t testing.TB, without ...string) resale.Prior {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("..", "..", "assets", "priors", "resale.json"))
	if err != nil {
		t.Fatal(err)
	}
	p, err := resale.ParsePrior(data)
	if err != nil {
		t.Fatal(err)
	}
	var kept []resale.Market
	for _, m := range p.Markets {
		if !strings.Contains(strings.Join(without, " "), m.Name) {
			kept = append(kept, m)
		}
	}
	p.Markets = kept
	return p
}

// readCSV returns the rows of a file of testdata by column.
func readCSV(t testing.TB, path ...string) []map[string]string {
	t.Helper()
	f, err := os.Open(filepath.Join(append([]string{"..", "..", "testdata"}, path...)...))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	recs, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var out []map[string]string
	for _, rec := range recs[1:] {
		m := map[string]string{}
		for j, v := range rec {
			m[recs[0][j]] = v
		}
		out = append(out, m)
	}
	return out
}

// prices returns the vehicles of a price set of testdata.
func prices(t testing.TB, file string) ([]resale.Row, money.Currency) {
	t.Helper()
	var rows []resale.Row
	cur := usd
	fields := " row_id make model year mileage mileage_unit trim price currency "
	for _, rec := range readCSV(t, "prices", file) {
		cur, _ = money.Lookup(rec["currency"])
		price, err := cur.Parse(rec["price"])
		if err != nil {
			t.Fatal(err)
		}
		year, _ := strconv.Atoi(rec["year"])
		miles, _ := strconv.ParseFloat(rec["mileage"], 64)
		r := resale.Row{ID: rec["row_id"], Price: price, Kind: "asked", ModelYear: year, Make: rec["make"], Model: rec["model"],
			Trim: rec["trim"], Mileage: &miles, Unit: rec["mileage_unit"], More: map[string]string{}}
		for name, v := range rec {
			if v != "" && !strings.Contains(fields, " "+name+" ") {
				r.More[name] = v
			}
		}
		rows = append(rows, r)
	}
	return rows, cur
}

// asSubject returns the vehicle of r with its price forgotten, to be asked for with a clear title.
func asSubject(r resale.Row) resale.Subject {
	return resale.Subject{Trim: r.Trim, Brand: "clear", More: r.More, Make: r.Make, Model: r.Model, ModelYear: r.ModelYear,
		Mileage: r.Mileage, Unit: r.Unit}
}

// asking is the belief that asking prices are what is wanted.
func asking(c money.Currency) resale.Beliefs {
	return resale.Beliefs{AskedToSold: prob.Certain(1), Currency: c}
}

func ptr(x float64) *float64 { return &x }

func lotDate(s string) lot.Date { return lot.Date(s) }
