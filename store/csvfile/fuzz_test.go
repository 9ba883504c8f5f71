package csvfile

import (
	"math"
	"os"
	"path/filepath"
	"reflect"
	"testing"

	"walkline/store/grid"
	"walkline/store/table"
	"walkline/valuation/lot"
	"walkline/valuation/resale"
)

// FuzzParse: whatever the bytes, nothing panics, the counts reconcile, every row taken is a sound one, importing twice adds nothing, and
// what is written is read again.
func FuzzParse(f *testing.F) {
	files, err := filepath.Glob("../../testdata/tables/*.csv")
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
	f.Add([]byte("price,note\n100,caf\xE9\n"), "windows-1252")
	f.Add([]byte("id,price,\x0b,=a\n'1,\" 1\n\",'',\n"), "")
	f.Fuzz(func(t *testing.T, data []byte, encoding string) {
		g, err := grid.Read(data, grid.Options{Encoding: encoding})
		if err != nil {
			return
		}
		r, _, err := SettleGrid(Comparables, g, table.Stated{Currency: "USD", On: "2026-11-20"})
		if err != nil {
			t.Fatal(err)
		}
		rows := checkResult(t, r)
		checkMerge(t, rows)
		if len(r.Refused) == 0 || r.Headings == 0 {
			return
		}
		if _, err := grid.Read(table.WriteRefused(r.Header(), r.Refused), grid.Options{Delimiter: ','}); err != nil {
			t.Fatalf("%d refused rows are written and not read again: %v", len(r.Refused), err)
		}
	})
}

func checkResult(t *testing.T, r table.Result[Comparable]) []resale.Row {
	t.Helper()
	rows := Rows(r)
	if r.Read != len(r.Rows)+len(r.Refused) || len(r.Lines) != len(r.Rows) {
		t.Fatalf("%d read, %d taken, %d refused", r.Read, len(r.Rows), len(r.Refused))
	}
	for _, row := range rows {
		for _, x := range []*float64{row.Mileage, row.DistanceMi, row.Condition} {
			if x != nil && (math.IsNaN(*x) || *x < 0 || *x > lot.MostMileage) {
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
	return rows
}

func checkMerge(t *testing.T, rows []resale.Row) {
	t.Helper()
	first := Merge(nil, rows)
	again := Merge(first.Rows, rows)
	if first.New != len(rows) || again.Same != len(rows) || !reflect.DeepEqual(again.Rows, first.Rows) {
		t.Fatalf("%d rows: %d new, then %d same, %d changed, %d new", len(rows), first.New, again.Same, again.Changed, again.New)
	}
}
