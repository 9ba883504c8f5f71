package csvfile

import (
	"encoding/json"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"walkline/valuation/resale"
)

var update = flag.Bool("update", false, "write the golden files anew")

// imported is all that one import shows.
type imported struct {
	Encoding  string
	Delimiter string
	Match     Match
	Options   Options
	Doubts    []Doubt
	Read      int
	Blank     int
	Rows      []resale.Row
	Lines     []int
	Refused   []string
}

func importOf(t *testing.T, name string, change func(Match) Match, given Options) (Table, imported, Result) {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("testdata", name))
	if err != nil {
		t.Fatal(err)
	}
	table, err := Read(data, Reading{})
	if err != nil {
		t.Fatal(err)
	}
	m := change(Propose(table.Header))
	o, doubts := ProposeOptions(table, m, given)
	r, err := Parse(table, m, o)
	if err != nil {
		t.Fatal(err)
	}
	im := imported{table.Encoding, string(table.Delimiter), m, o, doubts, r.Read, r.Blank, r.Rows, r.Lines, nil}
	for _, refused := range r.Refused {
		for _, f := range refused.Faults {
			text, _ := json.Marshal(refused.Line)
			im.Refused = append(im.Refused, "line "+string(text)+": "+f.String())
		}
	}
	return table, im, r
}

func TestImportsComeOutAsTheGoldenFilesSay(t *testing.T) {
	as := func(m Match) Match { return m }
	german := func(m Match) Match {
		return m.Set("Preis", Price).Set("Verkauft am", Date).Set("Baujahr", ModelYear).Set("Marke", Make).Set("Modell", Model).Set("Titel", Title)
	}
	for _, c := range []struct {
		name   string
		change func(Match) Match
		given  Options
	}{
		{"asked_us.csv", as, Options{}},
		{"sold_eu.csv", german, Options{Currency: "EUR", Kind: "sold", Source: "Auhof list"}},
		{"tabs_utf16.csv", as, Options{Currency: "USD"}},
	} {
		_, im, _ := importOf(t, c.name, c.change, c.given)
		got, err := json.MarshalIndent(im, "", " ")
		if err != nil {
			t.Fatal(err)
		}
		golden := filepath.Join("testdata", strings.TrimSuffix(c.name, ".csv")+".golden.json")
		if *update {
			os.WriteFile(golden, append(got, '\n'), 0o644)
		}
		want, err := os.ReadFile(golden)
		if err != nil || string(want) != string(got)+"\n" {
			t.Errorf("%s: %v\n%s", c.name, err, got)
		}
	}
}
