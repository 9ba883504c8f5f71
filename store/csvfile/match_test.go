package csvfile

import (
	"encoding/json"
	"reflect"
	"slices"
	"strings"
	"testing"
)

func TestColumnsAreMatchedByTheirUsualNames(t *testing.T) {
	header := []string{"Ref.", "ASKING PRICE ($)", "Date_Sold", "Model-Year", "make", "Model", "Version", "Odometer [km]", "brand", "Miles away", "CONDITION", "Remarks", "Site", "Colour", "Price"}
	want := []Field{ID, Other, Date, ModelYear, Make, Model, Trim, Mileage, Title, Distance, Condition, Note, Source, Other, Price}
	m := Propose(header)
	for i, c := range m {
		if c.Field != want[i] || c.Name != header[i] {
			t.Errorf("%s is taken for %s, want %s", c.Name, c.Field, want[i])
		}
	}
	if !slices.Equal(m.Others(), []string{"ASKING PRICE ($)", "Colour"}) || !slices.Equal(m.Absent(), []Field{Kind, Unit, Excluded}) {
		t.Errorf("others %q, absent %q", m.Others(), m.Absent())
	}
}

func TestAChangedMatchMovesTheField(t *testing.T) {
	m := Propose([]string{"price", "sum"})
	moved := m.Set("sum", Price)
	if moved[0].Field != Other || moved[1].Field != Price || m[0].Field != Price {
		t.Fatalf("%v from %v", moved, m)
	}
	if ignored := moved.Set("price", Ignored).Set("sum", Ignored); ignored[0].Field != Ignored || ignored[1].Field != Ignored {
		t.Fatalf("two columns can't both be ignored: %v", ignored)
	}
}

func TestMatchesThatDoNotFitAreRefusedBeforeAnyRow(t *testing.T) {
	table, err := Read([]byte("price,sum\n1,2\n"), Reading{})
	if err != nil {
		t.Fatal(err)
	}
	for says, m := range map[string]Match{
		"another file":      {{"price", Price}},
		"both matched":      {{"price", Price}, {"sum", Price}},
		"no column":         {{"price", Other}, {"sum", Other}},
		"which is no field": {{"price", Price}, {"sum", "colour"}},
	} {
		if _, err := Parse(table, m, Canonical("USD")); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%v: %v", m, err)
		}
	}
	for says, change := range map[string]func(*Options){
		"ISO 4217": func(o *Options) { o.Currency = "dollars" }, "decimal mark": func(o *Options) { o.Marks.Decimal = "" },
		"thousands": func(o *Options) { o.Marks.Thousands = "." }, "order of dates": func(o *Options) { o.Dates = "" },
		"mi or km": func(o *Options) { o.Unit = "leagues" }, "asked or sold": func(o *Options) { o.Kind = "hoped" },
	} {
		o := Canonical("USD")
		change(&o)
		if _, err := Parse(table, Propose(table.Header), o); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%s: %v", says, err)
		}
	}
}

func TestAProfileIsRememberedAsItWasMade(t *testing.T) {
	p := Profile{"yard list", Propose([]string{"price", "sum"}).Set("sum", Price), Canonical("USD")}
	text, err := json.Marshal(p)
	if err != nil {
		t.Fatal(err)
	}
	var back Profile
	if err := json.Unmarshal(text, &back); err != nil || !reflect.DeepEqual(back, p) {
		t.Fatalf("%s: %+v, %v", text, back, err)
	}
	m := back.For([]string{"year", "sum", "price"})
	if want := (Match{{"year", ModelYear}, {"sum", Price}, {"price", Other}}); !reflect.DeepEqual(m, want) {
		t.Fatalf("%v", m)
	}
}

func TestDoubtsAreRaisedWhereTheFileCantTell(t *testing.T) {
	usd := Options{Currency: "USD", Kind: "sold", Unit: "mi", DistanceUnit: "mi"}
	for text, want := range map[string]string{
		"price,mileage\n100,\"61,200\"\n":                               "marks", // 61200 or 61.2
		"price,mileage\n\"1,200.50\",\"61,200\"\n":                      "",      // the price tells
		"price,mileage\n\"12,500\",5\n":                                 "",      // dollars have no third decimal
		"price,mileage\n1,\"61,200.5\"\n9,\"1.200,5\"\n":                "marks", // no one way fits
		"price,mileage\n1 200,61 200\n":                                 "",      // spaces part thousands
		"price,date\n1,03/04/2026\n2,04/05/2026\n":                      "dates", // March or April
		"price,date\n1,03/04/2026\n2,13/05/2026\n":                      "",      // the 13th tells
		"price,date\n1,03/04/2026\n2,2026-05-01\n":                      "dates", // two ways in one column
		"price,date\n1,03/03/2026\n":                                    "",      // both read alike
		"price,mileage,date\n1,n/a,unknown\n2,\"1,200.5\",2026-01-02\n": "",      // words settle nothing
	} {
		table, err := Read([]byte(text), Reading{})
		if err != nil {
			t.Fatal(err)
		}
		_, doubts := ProposeOptions(table, Propose(table.Header), usd)
		var got []string
		for _, d := range doubts {
			got = append(got, d.Option)
		}
		if strings.Join(got, " ") != want {
			t.Errorf("%q: %+v", text, doubts)
		}
	}
}

func TestWhatNoColumnSaysIsAsked(t *testing.T) {
	table, err := Read([]byte("price,mileage,distance away\n1,2,3\n"), Reading{})
	if err != nil {
		t.Fatal(err)
	}
	o, doubts := ProposeOptions(table, Propose(table.Header), Options{})
	var got []string
	for _, d := range doubts {
		got = append(got, d.Option)
	}
	if want := "currency unit distance_unit kind"; strings.Join(got, " ") != want {
		t.Errorf("asked %v", got)
	}
	if o.Kind != "asked" || o.Unit != "mi" || o.Currency != "" {
		t.Errorf("%+v", o)
	}
}
