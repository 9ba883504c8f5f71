package table

import (
	"strings"
	"testing"

	"walkline/store/grid"
	"walkline/valuation/lot"
)

// thing is a row of a small kind.
type thing struct {
	Name string
	Seen lot.Date
	Year int
}

func things() *Kind[thing] {
	return &Kind[thing]{Need: []string{"name"}, Columns: []Column[thing]{
		InText("name", "name|what|nom", func(t *thing) *string { return &t.Name }),
		InDay("seen", "seen|day", func(t *thing) *lot.Date { return &t.Seen }),
		InYear("year", "year|model year", func(t *thing) *int { return &t.Year }),
		{Name: "price", Words: "price|asking price", Form: Money, Put: func(*thing, Value) error { return nil }},
	}}
}

func readThings(t *testing.T, text string, s Stated) Result[thing] {
	t.Helper()
	g, err := grid.Read([]byte(text), grid.Options{})
	if err != nil {
		t.Fatal(err)
	}
	r, err := Read(things(), g, s)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func TestHeadingsStandAnywhereInTheFirstThirtyLines(t *testing.T) {
	for _, above := range []int{0, 1, 7, 28} {
		text := strings.Repeat("a caption\n", above) + "name,seen,year\nx,2026-01-02,2016\ny,2026-01-03,2015\n"
		r := readThings(t, text, Stated{})
		if r.Headings != above+1 || len(r.Rows) != 2 || r.Lines[0] != above+2 || len(r.Skipped) != above {
			t.Errorf("%d above: %+v", above, r)
		}
	}
	at := 2
	if r := readThings(t, "name,year\nwhat,model year\nx,2016\n", Stated{Headings: &at}); r.Headings != 2 || len(r.Rows) != 1 {
		t.Errorf("stated: %+v", r)
	}
}

func TestARowThatOnlyAddsUpIsPassedOver(t *testing.T) {
	r := readThings(t, "name,year,price\na,2016,$100\nb,2015,$200\n,,$300\n,,$150\nsum of all,,$300\nTotal loss,2014,$90\n",
		Stated{Currency: "USD"})
	if len(r.Rows) != 3 || len(r.Skipped) != 3 || r.Rows[2].Name != "Total loss" {
		t.Errorf("%+v, skipped %+v, refused %+v", r.Rows, r.Skipped, r.Refused)
	}
}

func TestWhatIsStatedMustFit(t *testing.T) {
	g, err := grid.Read([]byte("name,price\na,1\n"), grid.Options{})
	if err != nil {
		t.Fatal(err)
	}
	beyond := 9
	for says, s := range map[string]Stated{
		"no column is called": {As: map[string]string{"colour": "name"}},
		"which is no field":   {As: map[string]string{"name": "colour"}}, "columns are matched": {Match: []string{"name"}},
		"no decimal mark": {Decimal: "x"}, "no order of dates": {Dates: "year last"}, "no row stands in line 9": {Headings: &beyond},
		"ISO 4217": {Currency: "dollars"},
	} {
		if _, err := Read(things(), g, s); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%s: %v", says, err)
		}
	}
}

// FuzzHeadings: whatever stands in the first lines, every row is taken, refused or passed over, and none twice.
func FuzzHeadings(f *testing.F) {
	f.Add("a caption\n\nname,seen\nx,2026-01-02\nname,seen\nTOTAL,\n")
	f.Add("asking,model\nprice (USD),year\n1,2016\n")
	f.Add("2016;x;$5\n2015;y;$6\n")
	f.Add("name\tprice\t\n\t\t\n---\t---\t---\n")
	f.Fuzz(func(t *testing.T, text string) {
		g, err := grid.Read([]byte(text), grid.Options{})
		if err != nil {
			return
		}
		r, err := Read(things(), g, Stated{Currency: "USD", On: "2026-11-20"})
		if err != nil {
			t.Fatal(err)
		}
		seen := map[int]bool{}
		for _, line := range r.Lines {
			seen[line] = true
		}
		for _, x := range r.Refused {
			seen[x.Line] = true
		}
		for _, s := range r.Skipped {
			if seen[s.Line] || s.Why == "" {
				t.Fatalf("line %d is taken and passed over: %q", s.Line, s.Why)
			}
		}
		if n := len(g.Rows) - len(r.Rows) - len(r.Refused) - len(r.Skipped); n < 0 || n > 2 || r.Headings == 0 && n > 0 {
			t.Fatalf("%d rows are neither taken, refused nor passed over, headings in line %d", n, r.Headings)
		}
	})
}

// A sentence about a cell of a million digits is a sentence.
func TestACellWithoutEndIsShownInPart(t *testing.T) {
	f := Fault{Column: "price", Value: strings.Repeat("9", 1_000_000), Reason: "too large"}
	if words := f.String(); len(words) > 300 || !strings.Contains(words, "(1000000 characters)") {
		t.Errorf("%d bytes: %.300s", len(words), words)
	}
}

func TestRowsThatAreOneCellAreNotAskedForAColumn(t *testing.T) {
	r := readThings(t, "Pell LX 66k 9.8k clean\nPell SE 71k 9.2k\n", Stated{})
	if len(r.Open) != 1 || len(r.Open[0].Options) > 0 || !strings.Contains(r.Open[0].Text, "one cell") {
		t.Errorf("%+v", r)
	}
	if r = readThings(t, "9800\n9200\n", Stated{}); len(r.Open) != 1 || len(r.Open[0].Options) != 1 {
		t.Errorf("one column of values: %+v", r.Open)
	}
}
