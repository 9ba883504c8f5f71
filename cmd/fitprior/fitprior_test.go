package main

import (
	"math"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"walkline/valuation/money"
	"walkline/valuation/prob"
	"walkline/valuation/resale"
)

const open = "../../testdata/prices"

// The same data give the same file, and the file is one that the model reads.
func TestPriorsAreReproducible(t *testing.T) {
	dir := t.TempDir()
	for _, name := range []string{"midsize2009_public.csv", indexFile} {
		data, err := os.ReadFile(filepath.Join(open, name))
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(dir, name), data, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	var files [2][]byte
	for i := range files {
		out := filepath.Join(dir, "out.json")
		if err := run(dir, out, "", ""); err != nil {
			t.Fatal(err)
		}
		files[i], _ = os.ReadFile(out)
	}
	if string(files[0]) != string(files[1]) {
		t.Error("two runs differ")
	}
	p, err := resale.ParsePrior(files[0])
	if err != nil {
		t.Fatal(err)
	}
	if len(p.Markets) != 2 || p.Markets[0].Name != "any" || p.Sources[0].Rows != 293 || p.Sources[0].Citation == "" {
		t.Errorf("%+v", p.Sources)
	}
}

// A known truth is found: tables drawn with slopes that vary among models about -0.09 a year and -0.05 per 10,000 miles.
func TestRefitFindsAKnownTruth(t *testing.T) {
	cur, _ := money.Lookup("EUR")
	s := set{name: "made", currency: cur}
	draw := newNormals()
	for model := range 12 {
		age, mileage := -0.09+0.02*draw(), -0.05+0.01*draw()
		for range 60 {
			year := 2012 + int(math.Abs(3*draw()))
			miles := math.Abs(12_000*float64(2021-year) + 15_000*draw())
			log := 9.5 + 0.3*float64(model%3) + age*float64(2016-year) + mileage*(miles-50_000)/10_000 + 0.08*draw()
			s.rows = append(s.rows, resale.Row{ID: string(rune('a' + model)), Price: cur.FromMajor(math.Exp(log)), Kind: "asked", ModelYear: year,
				Mileage: &miles, Make: "made", Model: string(rune('a' + model)), More: map[string]string{}})
		}
	}
	for i := range s.rows {
		s.rows[i].ID += string(rune('0' + i))
	}
	m := fitMarket(s)
	for name, want := range map[string]float64{"age": -0.09, "mileage/linear": -0.05} {
		e := m.Effects[name]
		if math.Abs(e.Mean-want) > 0.012 || e.SD > 0.035 {
			t.Errorf("%s: %.4f with spread %.4f, truth %.3f", name, e.Mean, e.SD, want)
		}
	}
	if math.Abs(m.Residual.SD-0.08) > 0.015 || math.Abs(m.OLS["age"]+0.09) > 0.012 || m.Models != 12 {
		t.Errorf("residual %.4f, least squares %v, %d models", m.Residual.SD, m.OLS, m.Models)
	}
}

// newNormals returns a source of normal draws that is the same on every run (Lehmer's generator, sums of twelve).
func newNormals() func() float64 {
	x := uint64(20)
	return func() float64 {
		sum := -6.0
		for range 12 {
			x = x * 48271 % 2147483647
			sum += float64(x) / 2147483647
		}
		return sum
	}
}

func TestWalkIsTheYearlyChangeOfTheIndex(t *testing.T) {
	walk, months, err := fitWalk(filepath.Join(open, indexFile))
	if err != nil {
		t.Fatal(err)
	}
	if months != 319 || math.Abs(walk.SD-0.080) > 0.0005 { // 8.0 % over 12 months, as published with the open data
		t.Errorf("%d months, %.4f a year", months, walk.SD)
	}
}

func TestBroadenDoubtsWhatOneModelSays(t *testing.T) {
	few := resale.Market{Name: "one", Models: 1, Residual: prob.Scale{SD: 0.1, Worth: 8}, Effects: map[string]resale.Effect{
		"age": {Mean: -0.1, SD: 0.001}, "color=red": {Mean: 0.2, SD: 0.01}},
		Spreads: map[string]prob.Scale{"level": {SD: 0.04, Worth: 3}, "level color": {SD: 0.01, Worth: 4}}}
	many := few
	many.Name, many.Models = "many", 20
	got := broaden([]resale.Market{few, many})
	if sd := got[0].Effects["age"].SD; sd < 0.03 || got[1].Effects["age"].SD != 0.001 {
		t.Errorf("one model's slope is believed to %.4f", sd)
	}
	if _, ok := got[0].Effects["color=red"]; ok || got[0].Spreads["level"].SD != 0.01 {
		t.Error("one model's colors are believed")
	}
	if a := got[2]; a.Name != "any" || a.Currency != "" || math.Abs(a.Effects["age"].Mean+0.1) > 1e-12 || a.Models != 21 {
		t.Errorf("pooled market %+v", a)
	}
	if !reflect.DeepEqual(few.Effects["age"], resale.Effect{Mean: -0.1, SD: 0.001}) {
		t.Error("broaden changed its argument")
	}
}

func TestBadFilesAreNamed(t *testing.T) {
	for name, c := range map[string]struct{ file, body, want string }{
		"currency": {"x_public.csv", "row_id,year,price,currency\na,2019,100,XXQ\n", "XXQ"},
		"price":    {"x_public.csv", "row_id,year,price,currency\na,2019,1e5,USD\n", "row 1"},
		"year":     {"x_public.csv", "row_id,year,price,currency\na,then,100,USD\n", "model year"},
		"empty":    {"x_public.csv", "row_id\n", "no table"},
		"none":     {"x.csv", "", "no *_public.csv"},
	} {
		dir := t.TempDir()
		if err := os.WriteFile(filepath.Join(dir, c.file), []byte(c.body), 0o644); err != nil {
			t.Fatal(err)
		}
		if _, err := readSets(dir); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// The judge's own sums, on a set small enough to check: the method beats the median of the comparables.
func TestJudgeBeatsTheMedian(t *testing.T) {
	s, err := readSet(filepath.Join(open, "midsize2009_public.csv"))
	if err != nil {
		t.Fatal(err)
	}
	other, err := readSet(filepath.Join(open, "hatch2004_public.csv"))
	if err != nil {
		t.Fatal(err)
	}
	tasks, err := readTable(filepath.Join(open, "midsize2009_public_tasks.csv"))
	if err != nil {
		t.Fatal(err)
	}
	m := refit(other, "", start(other), 3)
	sets := []set{s, other}
	for _, regime := range tasksOf(sets, 0, tasks[:60], []resale.Market{{Models: 1}, m}) {
		clean := func(t task, _ int) task { return t }
		model, median := judgeModel(regime, clean), judgeMethod(regime, references[0], clean)
		if len(model.said) != len(regime) || mid(model.errors()) > mid(median.errors()) {
			t.Errorf("%v, median of the comparables %v", model, median)
		}
	}
}
