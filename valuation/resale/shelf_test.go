package resale_test

import (
	"reflect"
	"slices"
	"testing"

	"walkline/valuation/lot"
	"walkline/valuation/resale"
)

// TestALotDrawsWhatIsNearest: its own model before its kin, the nearer model year, the nearer place, the later day; other models, rows
// without a year or a price, and years far off are not drawn.
func TestALotDrawsWhatIsNearest(t *testing.T) {
	row := func(maker, model string, year int, miles *float64, day string) resale.Row {
		return resale.Row{Price: 100, Make: maker, Model: model, ModelYear: year, DistanceMi: miles, Date: lot.Date(day)}
	}
	shelf := []resale.Row{
		0:  row("Ostrane", "Pell LX", 2016, nil, ""),
		1:  row("Ostrane", "Pell", 2014, nil, ""),
		2:  row("Ostrane", "Pell", 2016, ptr(90), ""),
		3:  row("ostrane ", " PELL", 2016, ptr(10), ""),
		4:  row("Ostrane", "Pell", 2016, nil, "2026-01-01"),
		5:  row("Ostrane", "Pell", 2016, nil, "2026-05-01"),
		6:  row("Ostrane", "Pellworth", 2016, nil, ""),
		7:  row("Kettrick", "Pell", 2016, nil, ""),
		8:  row("Ostrane", "Pell", 0, nil, ""),
		9:  row("Ostrane", "Pell", 1999, nil, ""),
		10: row("Ostrane", "Pell", 2017, nil, ""),
		11: row("Ostrane", "Pell", 2016, nil, "2025-01-01"),
		12: {Make: "Ostrane", Model: "Pell", ModelYear: 2016},
	}
	shelf[11].Excluded = true
	got := resale.Draw(shelf, resale.Subject{Make: "Ostrane", Model: "Pell", ModelYear: 2016})
	if want := []int{3, 2, 5, 4, 11, 10, 1, 0}; !slices.Equal(got, want) {
		t.Errorf("drawn %v, want %v", got, want)
	}
	if got := resale.Draw(shelf, resale.Subject{Make: "Ostrane", Model: "Pell"}); len(got) > 0 {
		t.Errorf("a vehicle without a year drew %v", got)
	}
}

// TestAModelAloneIsOfTheLotsMaker: tables of one maker's cars often leave the make out. A row that names the lot's model or its kin and no
// make counts as much as one that names both; another make, or another model, does not become the lot's.
func TestAModelAloneIsOfTheLotsMaker(t *testing.T) {
	for _, c := range []struct {
		maker, model string
		want         resale.Kinship
	}{
		{"", "Pell", resale.Own}, {"", "PELL ", resale.Own}, {"", "Pell LX", resale.Kin}, {"", "Garnet", resale.Other},
		{"Kettrick", "Pell", resale.Other}, {"", "", resale.Other},
	} {
		if got := (resale.Row{Make: c.maker, Model: c.model}).KinOf("Ostrane", "Pell"); got != c.want {
			t.Errorf("%q %q is %v, want %v", c.maker, c.model, got, c.want)
		}
	}
	if got := (resale.Row{Make: "Ostrane", Model: "Pell"}).KinOf("", "Pell"); got != resale.Own {
		t.Errorf("to a lot without a make it is %v", got)
	}
	named, cur := prices(t, "uk2020_slice.csv")
	named = named[:40]
	s := asSubject(named[0])
	s.Make, s.Model = "Ostrane", "Pell"
	for i := range named {
		named[i].Make, named[i].Model = s.Make, s.Model
		if i%5 == 4 {
			named[i].Model = "Garnet"
		}
	}
	alone := slices.Clone(named)
	for i := range alone {
		if alone[i].Model == "Pell" {
			alone[i].Make = ""
		}
	}
	want, got := resale.Fit(named, s, asking(cur), starter(t)).Price(), resale.Fit(alone, s, asking(cur), starter(t)).Price()
	if !reflect.DeepEqual(want, got) {
		t.Errorf("priced as %+v, with the make named as %+v", got, want)
	}
}

// TestTheShelfTeachesItsMarket: rows of one market, whose own prior is not known, give its slopes. Source: the market fitted to the whole
// of that set, in assets/priors; uk2020_slice is a part of it.
func TestTheShelfTeachesItsMarket(t *testing.T) {
	rows, cur := prices(t, "uk2020_slice.csv")
	known := starter(t, "hatch2004", "midsize2009", "pl2012", "any").Markets[0]
	p := starter(t, "uk2020")
	m, ok := resale.ShopMarket(rows, p, cur)
	if !ok || m.Models < 10 || m.Currency != cur.Code {
		t.Fatalf("%v: %+v", ok, m)
	}
	for _, name := range []string{"age", "mileage/linear"} {
		fitted, want := m.Effects[name], known.Effects[name]
		t.Logf("%s: %.4f (sd %.4f), the whole set %.4f (sd %.4f)", name, fitted.Mean, fitted.SD, want.Mean, want.SD)
		if off := fitted.Mean - want.Mean; off > want.SD || off < -want.SD {
			t.Errorf("%s: %.4f, the whole set %.4f with a spread of %.4f", name, fitted.Mean, want.Mean, want.SD)
		}
	}
	slices.Reverse(rows)
	if again, _ := resale.ShopMarket(rows, p, cur); again.Effects["age"] != m.Effects["age"] {
		t.Errorf("the order of the rows tells: %v and %v", again.Effects["age"], m.Effects["age"])
	}
	if _, ok := resale.ShopMarket(rows[:5], p, cur); ok {
		t.Error("five rows teach a market")
	}
}

func BenchmarkShopMarket(b *testing.B) {
	rows, cur := prices(b, "uk2020_slice.csv")
	p := starter(b)
	for b.Loop() {
		resale.ShopMarket(rows, p, cur)
	}
}
