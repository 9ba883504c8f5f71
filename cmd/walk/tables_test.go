package main

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"walkline/store/table"
)

// read is what a person reads in one of the tables of testdata/tables, written by hand beside it.
type read struct {
	Args    []string
	Code    int
	Rows    []map[string]any
	Refused [][2]any   // line and column
	Skipped []float64  // lines
	Open    [][]string // words of a question and one of its options
}

const tables = "../../testdata/tables"

func TestTablesAreReadAsAPersonReadsThem(t *testing.T) {
	files, err := filepath.Glob(tables + "/*.*.json")
	if err != nil || len(files) < 40 {
		t.Fatalf("%d tables, %v", len(files), err)
	}
	for _, file := range files {
		t.Run(filepath.Base(strings.TrimSuffix(file, ".json")), func(t *testing.T) { readAsWritten(t, file) })
	}
}

func readAsWritten(t *testing.T, file string) {
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	var want read
	if err := json.Unmarshal(text, &want); err != nil {
		t.Fatal(err)
	}
	for i, arg := range want.Args {
		if arg == "subject.json" {
			want.Args[i] = filepath.Join(tables, arg)
		}
	}
	code, out, errs := ran(append(want.Args, strings.TrimSuffix(file, ".json"), "--json")...)
	var got struct {
		Format  string
		Rows    []map[string]any
		Refused []map[string]any
		Skipped []map[string]any
		Open    []struct {
			Question string
			Options  []string
		}
	}
	if err := json.Unmarshal([]byte(out), &got); err != nil || errs != "" || code != want.Code || got.Format != "walkline-rows/1" {
		t.Fatalf("exit %d, %q, %v\n%s", code, errs, err, out)
	}
	if len(want.Rows) != len(got.Rows) {
		t.Errorf("%d rows, want %d: %v\nrefused %v", len(got.Rows), len(want.Rows), got.Rows, got.Refused)
	}
	for i := range min(len(want.Rows), len(got.Rows)) {
		if !reflect.DeepEqual(got.Rows[i], want.Rows[i]) {
			t.Errorf("row %d\ngot  %v\nwant %v", i, got.Rows[i], want.Rows[i])
		}
	}
	var refused, skipped []string
	for _, r := range got.Refused {
		if r["reason"] == "" {
			t.Errorf("no reason: %v", r)
		}
		refused = append(refused, fmt.Sprint([2]any{r["line"], r["column"]}))
	}
	for _, s := range got.Skipped {
		skipped = append(skipped, fmt.Sprint(s["line"]))
	}
	same(t, "refused", refused, want.Refused)
	same(t, "skipped", skipped, want.Skipped)
	if len(got.Open) != len(want.Open) {
		t.Fatalf("open: %+v, want %v", got.Open, want.Open)
	}
	for i, q := range want.Open {
		if !strings.Contains(got.Open[i].Question, q[0]) || !slices.Contains(got.Open[i].Options, q[1]) {
			t.Errorf("open: %+v, want %v", got.Open[i], q)
		}
	}
}

func TestASheetIsAskedForWhereTheFirstHoldsNoRows(t *testing.T) {
	open := []table.Question{{Key: "kind", Text: "asked or sold?"}, {Key: "as", Text: "Which column is the price?"}}
	askSheet(open, []string{"Info", "Cars 2026"})
	if open[0].Key != "kind" || open[1].Key != "sheet" || howToState(open[1]) != `(--sheet Info | "Cars 2026")` {
		t.Errorf("%+v %s", open, howToState(open[1]))
	}
	open = []table.Question{{Key: "as", Word: "price", Options: []string{"Asked", "Sold"}}, {Key: "as", Options: []string{"Asked"}}}
	if askSheet(open, []string{"Only"}); open[1].Key != "as" || howToState(open[0]) != `(--as "Asked=price", or another of ["Sold"])` {
		t.Errorf("%+v %s", open, howToState(open[0]))
	}
}

func same[T any](t *testing.T, what string, got []string, want []T) {
	t.Helper()
	var wanted []string
	for _, w := range want {
		wanted = append(wanted, fmt.Sprint(w))
	}
	slices.Sort(got)
	slices.Sort(wanted)
	if !slices.Equal(got, wanted) {
		t.Errorf("%s %v, want %v", what, got, wanted)
	}
}
