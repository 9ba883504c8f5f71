package csvfile

import (
	"reflect"
	"strings"
	"testing"

	"walkline/store/table"
	"walkline/valuation/resale"
)

// A day after that of the import is still to come; the table of a case that is valued on a past day may have later ones.
func TestADayThatIsStillToComeIsRefused(t *testing.T) {
	text := []byte("sold price,sold on\n9500,2027-03-01\n")
	if _, _, err := RowsOf(text, table.Stated{Currency: "USD", On: "2026-11-20"}); err == nil || !strings.Contains(err.Error(),
		"2027-03-01 is still to come") {
		t.Errorf("taken: %v", err)
	}
	if rows, _, err := RowsOf(text, table.Stated{Currency: "USD", On: "2026-11-20", Later: true}); err != nil || len(rows) != 1 {
		t.Errorf("valued on a past day: %v, %v", rows, err)
	}
}

// TestTypedRowsReadAsCellsDo: what is typed is read as a cell of a table is; what the row said beside stays.
func TestTypedRowsReadAsCellsDo(t *testing.T) {
	miles, far := 66120.0, 40.0
	want := resale.Row{Price: 1250000, Kind: "asked", Date: "2026-11-03", ModelYear: 2016, Make: "Ostrane", Model: "Pell", Trim: "LX",
		Mileage: &miles, Unit: "mi", Title: "rebuilt", DistanceMi: &far, Note: "one owner"}
	cells := map[string]string{"price": "$12,500 OBO", "date": "Nov 3, 2026", "model_year": "2016", "make": "Ostrane", "model": "Pell",
		"trim": "LX", "mileage": "66,120 miles", "title": "R-title", "distance": "40", "note": "one owner"}
	got, err := Typed(resale.Row{}, cells, "USD", "2026-11-20")
	if err != nil || !reflect.DeepEqual(got, want) {
		t.Errorf("%+v, %v", got, err)
	}
	kept := resale.Row{ID: "7", Source: "a.csv", More: map[string]string{"fuel": "petrol"}, Shelf: 3, Excluded: true}
	again, err := Typed(kept, cells, "USD", "2026-11-20")
	want.ID, want.Source, want.More, want.Shelf, want.Excluded = "7", "a.csv", kept.More, 3, true
	if err != nil || !reflect.DeepEqual(again, want) {
		t.Errorf("%+v, %v", again, err)
	}
	for field, text := range map[string]string{"price": "call", "model_year": "206", "mileage": "many", "title": "purple",
		"date": "03/04/2026"} {
		wrong := map[string]string{"price": "9000", field: text}
		if _, err := Typed(resale.Row{}, wrong, "USD", "2026-11-20"); err == nil ||
			!strings.Contains(err.Error(), strings.Split(field, "_")[0]) &&
				field != "price" {
			t.Errorf("%s %q: %v", field, text, err)
		}
	}
}

// TestABrandInTheColumnOfUpkeepIsWhatTheTitleSays keeps "rebuilt" from being lost there; "clean" there means washed.
func TestABrandInTheColumnOfUpkeepIsWhatTheTitleSays(t *testing.T) {
	r := parsed(t, "price,year,make,model,condition\n9000,2017,Tallow,Ridgeback,Rebuilt\n9100,2017,Tallow,Ridgeback,clean\n"+
		"9200,2017,Tallow,Ridgeback,good\n")
	for i, want := range []string{"rebuilt", "", ""} {
		if got := r.Result.Rows[i].Title; got != want {
			t.Errorf("row %d: title %q, want %q", i, got, want)
		}
	}
}
