package csvfile

import (
	"math"
	"os"
	"path/filepath"
	"reflect"
	"testing"

	"walkline/valuation/money"
	"walkline/valuation/resale"
)

// FuzzParse: whatever the bytes, nothing panics, the counts reconcile, every row taken is a sound one, importing twice adds
// nothing, and what is written is read again.
func FuzzParse(f *testing.F) {
	files, err := filepath.Glob("testdata/*.csv")
	if err != nil || len(files) == 0 {
		f.Fatal("no seeds", err)
	}
	for _, name := range files {
		data, err := os.ReadFile(name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data, "")
	}
	f.Add([]byte(three), "")
	f.Add([]byte("price,note\n100,caf\xE9\n"), Windows1252)
	f.Add([]byte("id,price,\x0b,=a\n'1,\" 1\n\",'',\n"), "")
	f.Fuzz(func(t *testing.T, data []byte, encoding string) {
		table, err := Read(data, Reading{Encoding: encoding})
		if err != nil {
			return
		}
		m := Propose(table.Header)
		if !m.Has(Price) {
			m = m.Set(table.Header[0], Price)
		}
		o, _ := ProposeOptions(table, m, Options{Currency: "USD"})
		r, err := Parse(table, m, o)
		if err != nil {
			t.Fatal(err)
		}
		checkResult(t, table, r)
		checkMerge(t, r)
		checkRoundTrip(t, r)
		again, err := Read(WriteRefused(table, r.Refused), Reading{Delimiter: ','})
		if len(r.Refused) > 0 && (err != nil || len(again.Records) != len(r.Refused)) {
			t.Fatalf("%d refused rows are written, %d read again, %v", len(r.Refused), len(again.Records), err)
		}
	})
}

func checkResult(t *testing.T, table Table, r Result) {
	t.Helper()
	if r.Read != len(r.Rows)+len(r.Refused) || r.Read != len(table.Records) || len(r.Lines) != len(r.Rows) {
		t.Fatalf("%d read, %d taken, %d refused", r.Read, len(r.Rows), len(r.Refused))
	}
	for _, row := range r.Rows {
		for _, x := range []*float64{row.Mileage, row.DistanceMi, row.Condition} {
			if x != nil && (math.IsNaN(*x) || *x < 0 || *x > longest) {
				t.Fatalf("%+v", row)
			}
		}
		if row.Price <= 0 || row.Date != "" && !row.Date.Known() {
			t.Fatalf("%+v", row)
		}
	}
	for _, refused := range r.Refused {
		if len(refused.Faults) == 0 || refused.Faults[0].Reason == "" || refused.Line < 1 {
			t.Fatalf("%+v", refused)
		}
	}
}

func checkMerge(t *testing.T, r Result) {
	t.Helper()
	first := Merge(nil, r.Rows)
	again := Merge(first.Rows, r.Rows)
	if first.New != len(r.Rows) || again.Same != len(r.Rows) || !reflect.DeepEqual(again.Rows, first.Rows) {
		t.Fatalf("%d rows: %d new, then %d same, %d changed, %d new", len(r.Rows), first.New, again.Same, again.Changed, again.New)
	}
}

func checkRoundTrip(t *testing.T, r Result) {
	t.Helper()
	if len(r.Rows) == 0 {
		return
	}
	usd, _ := money.Lookup("USD")
	table, err := Read(Write(r.Rows, usd), Reading{})
	if err != nil {
		t.Fatal(err)
	}
	back, err := Parse(table, Propose(table.Header), Canonical("USD"))
	if err != nil || len(back.Refused) > 0 {
		t.Fatalf("%+v, %v", back.Refused, err)
	}
	if !reflect.DeepEqual(withoutIDs(back.Rows), withoutIDs(r.Rows)) {
		t.Fatalf("got  %+v\nwant %+v", back.Rows, r.Rows)
	}
}

// withoutIDs leaves the ids out of a comparison: two that only look different ("7" twice, "7 (2)") are counted anew.
func withoutIDs(rows []resale.Row) []resale.Row {
	bare := append([]resale.Row{}, rows...)
	for i := range bare {
		bare[i].ID = ""
	}
	return bare
}
