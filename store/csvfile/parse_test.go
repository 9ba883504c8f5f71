package csvfile

import (
	"slices"
	"strings"
	"testing"
)

// parsed reads a file in canonical notation.
func parsed(t *testing.T, text string, change func(*Options)) (Table, Result) {
	t.Helper()
	table, err := Read([]byte(text), Reading{})
	if err != nil {
		t.Fatal(err)
	}
	o := Canonical("USD")
	if change != nil {
		change(&o)
	}
	r, err := Parse(table, Propose(table.Header), o)
	if err != nil {
		t.Fatal(err)
	}
	if r.Read != len(r.Rows)+len(r.Refused) || len(r.Lines) != len(r.Rows) || r.Read != len(table.Records) {
		t.Fatalf("%d read, %d taken, %d refused", r.Read, len(r.Rows), len(r.Refused))
	}
	return table, r
}

func TestABadCellRefusesItsRowWithAReason(t *testing.T) {
	const header = "price,kind,date,year,mileage,mileage unit,distance,condition,excluded\n"
	for row, says := range map[string]string{
		",sold,2026-01-02,2019,1,mi,1,3,":         `price "": a comparable needs a price`,
		"0,sold,2026-01-02,2019,1,mi,1,3,":        "above zero",
		"-5,sold,2026-01-02,2019,1,mi,1,3,":       "above zero",
		"NaN,sold,2026-01-02,2019,1,mi,1,3,":      "not a number",
		"1.005,sold,2026-01-02,2019,1,mi,1,3,":    "decimals",
		"99999999999999999,,,,,,,,":               "larger",
		"100,maybe,2026-01-02,2019,1,mi,1,3,":     `kind "maybe": neither asked nor sold`,
		"100,sold,2026-02-30,2019,1,mi,1,3,":      "no day",
		"100,sold,2026-01-02,19,1,mi,1,3,":        "four digits",
		"100,sold,2026-01-02,2019.5,1,mi,1,3,":    "four digits",
		"100,sold,2026-01-02,0x7E3,1,mi,1,3,":     "four digits",
		"100,sold,2026-01-02,2019,-1,mi,1,3,":     "from 0",
		"100,sold,2026-01-02,2019,10000000,mi,,,": "9999999",
		"100,sold,2026-01-02,2019,1,ly,1,3,":      "neither mi nor km",
		"100,sold,2026-01-02,2019,1 km,mi,1,3,":   "the unit column says mi",
		"100,sold,2026-01-02,2019,1,mi,far,3,":    "not a number",
		"100,sold,2026-01-02,2019,1,mi,1,5.5,":    "from 1 (poor) to 5",
		"100,sold,2026-01-02,2019,1,mi,1,good,":   "not a number",
		"100,sold,2026-01-02,2019,1,mi,1,3,so-so": "neither yes nor no",
		"100,sold":          "2 cells and the header 9",
		"100,sold,,,,,,,,9": "10 cells and the header 9",
	} {
		_, r := parsed(t, header+row+"\n", nil)
		if len(r.Refused) != 1 || len(r.Refused[0].Faults) != 1 || r.Refused[0].Line != 2 || !strings.Contains(r.Refused[0].Faults[0].String(), says) {
			t.Errorf("%s: %+v", row, r.Refused)
		}
	}
}

func TestEveryFaultOfARowIsNamed(t *testing.T) {
	_, r := parsed(t, "price,year,mileage\ncall,19,far\n", nil)
	var columns []string
	for _, f := range r.Refused[0].Faults {
		columns = append(columns, f.Column)
	}
	slices.Sort(columns)
	if !slices.Equal(columns, []string{"mileage", "price", "year"}) {
		t.Fatalf("%+v", r.Refused)
	}
}

func TestStatedOptionsFillWhatRowsLeaveOut(t *testing.T) {
	_, r := parsed(t, "price,mileage,distance,id\n100,5,1.609344,7\n200,6 mi,,\n300,,,7\n", func(o *Options) {
		o.Unit, o.DistanceUnit, o.Kind, o.Source = "km", "km", "sold", "yard"
	})
	a, b, c := r.Rows[0], r.Rows[1], r.Rows[2]
	if a.Unit != "km" || *a.DistanceMi != 1 || a.Kind != "sold" || a.Source != "yard" || a.ID != "yard:7" {
		t.Errorf("%+v", a)
	}
	if b.Unit != "mi" || b.DistanceMi != nil || b.ID != "" {
		t.Errorf("%+v", b)
	}
	if c.Unit != "" || c.Mileage != nil || c.ID != "yard:7 (2)" {
		t.Errorf("%+v", c)
	}
}

func TestOtherColumnsAreKeptUnderTheirOwnKeys(t *testing.T) {
	_, r := parsed(t, "price,Engine (L),engine l,Fuel,★\n100,2.0,two,,x\n", nil)
	more := r.Rows[0].More
	if len(more) != 3 || more["engine_l"] != "2.0" || more["engine_l_2"] != "two" || more["column"] != "x" {
		t.Fatalf("%q", more)
	}
}
