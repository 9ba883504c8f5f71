package store

import (
	"context"
	"encoding/json"
	"math"
	"math/rand/v2"
	"path/filepath"
	"reflect"
	"testing"
	"time"

	"github.com/shopspring/decimal"

	"walkline/valuation"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// opened returns a store in a new file of the test's own folder.
func opened(t *testing.T) *Store {
	t.Helper()
	return reopened(t, filepath.Join(t.TempDir(), "lots.walk"))
}

func reopened(t *testing.T, path string) *Store {
	t.Helper()
	s, err := Open(t.Context(), path)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { s.Close() })
	return s
}

// words are the values that the columns with a closed vocabulary take.
var words = map[string][]string{
	"Area": lot.Areas, "Extent": lot.Extents, "Depth": lot.Depths, "Condition": append([]string{""}, lot.Conditions...),
	"OdometerUnit": lot.OdometerUnits, "OdometerStatus": lot.OdometerStatuses, "Kind": {"", "asked", "sold"}, "Unit": {"", "mi", "km"},
}

// fill sets v and all below it to random values, so that a field that is added later and not kept is noticed.
func fill(r *rand.Rand, v reflect.Value, field string) {
	switch v.Interface().(type) {
	case decimal.Decimal:
		v.Set(reflect.ValueOf(decimal.New(r.Int64N(1e6)*10+1, -5)))
		return
	case lot.Date:
		v.SetString([]string{"", "2026-11-20", "1999-01-31"}[r.IntN(3)])
		return
	case money.Amount:
		v.SetInt(r.Int64N(1<<60) - 1<<59)
		return
	}
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			if f := v.Type().Field(i); f.Tag.Get("json") != "-" {
				fill(r, v.Field(i), f.Name)
			}
		}
	case reflect.Pointer:
		if r.IntN(3) > 0 {
			v.Set(reflect.New(v.Type().Elem()))
			fill(r, v.Elem(), field)
		}
	case reflect.Slice:
		if n := r.IntN(5) - 1; n >= 0 {
			v.Set(reflect.MakeSlice(v.Type(), n, n))
			for i := range n {
				fill(r, v.Index(i), field)
			}
		}
	case reflect.Map:
		fillMap(r, v, field)
	default:
		fillPlain(r, v, field)
	}
}

func fillMap(r *rand.Rand, v reflect.Value, field string) {
	n := r.IntN(4) - 1
	if n < 0 {
		return
	}
	v.Set(reflect.MakeMap(v.Type()))
	for range n {
		key, value := reflect.New(v.Type().Key()).Elem(), reflect.New(v.Type().Elem()).Elem()
		fill(r, key, "")
		fill(r, value, field)
		if field == "Findings" {
			value.SetString([]string{"yes", "no"}[r.IntN(2)])
		}
		v.SetMapIndex(key, value)
	}
}

func fillPlain(r *rand.Rand, v reflect.Value, field string) {
	switch v.Kind() {
	case reflect.Bool:
		v.SetBool(r.IntN(2) == 0)
	case reflect.Int, reflect.Int64:
		v.SetInt(int64(r.Uint64()))
	case reflect.Float64:
		f := math.Inf(1)
		for math.IsInf(f, 0) || math.IsNaN(f) {
			f = math.Float64frombits(r.Uint64())
		}
		v.SetFloat([]float64{f, 0, 0.1, 1 / 3.0, 1250}[r.IntN(5)])
	case reflect.String:
		if list := words[field]; list != nil {
			v.SetString(list[r.IntN(len(list))])
			return
		}
		runes := []rune("aZ09 '\";,\n\t\x00<&>éß—漢🙂\u2028")
		text := make([]rune, r.IntN(8))
		for i := range text {
			text[i] = runes[r.IntN(len(runes))]
		}
		v.SetString(string(text))
	default:
		panic("no random value for a " + v.Kind().String())
	}
}

func randomCase(r *rand.Rand) valuation.Case {
	var c valuation.Case
	fill(r, reflect.ValueOf(&c).Elem(), "")
	return c
}

// same compares two cases exactly, decimals by value and not by how they are held.
func same(t *testing.T, got, want valuation.Case) {
	t.Helper()
	flat := func(c valuation.Case) valuation.Case {
		text, err := json.Marshal(c.Buying)
		if err != nil {
			t.Fatal(err)
		}
		c.Buying = valuation.Buying{}
		c.Lot.Sale += string(text)
		return c
	}
	if a, b := flat(got), flat(want); !reflect.DeepEqual(a, b) {
		x, _ := json.MarshalIndent(got, "", " ")
		y, _ := json.MarshalIndent(want, "", " ")
		t.Fatalf("the cases differ\ngot  %s\nwant %s", x, y)
	}
}

func TestACaseComesBackAsItWasAdded(t *testing.T) {
	s := opened(t)
	r := rand.New(rand.NewPCG(1, 2))
	cases := []valuation.Case{{}, valuation.Defaults()}
	for range 150 {
		cases = append(cases, randomCase(r))
	}
	for _, want := range cases {
		id, err := s.Add(t.Context(), want)
		if err != nil {
			t.Fatal(err)
		}
		got, err := s.Case(t.Context(), id)
		if err != nil {
			t.Fatal(err)
		}
		same(t, got, want)
	}
}

func TestUndoAndRedoWalkThroughEverySavedCase(t *testing.T) {
	s := opened(t)
	r := rand.New(rand.NewPCG(3, 4))
	cases := []valuation.Case{randomCase(r)}
	id, err := s.Add(t.Context(), cases[0])
	if err != nil {
		t.Fatal(err)
	}
	for range 40 {
		cases = append(cases, mutated(t, r, cases[len(cases)-1]))
		if err := s.Save(t.Context(), id, "step", cases[len(cases)-1]); err != nil {
			t.Fatal(err)
		}
	}
	path := s.path
	s.Close()
	s = reopened(t, path) // undo survives a restart
	for i := len(cases) - 2; i >= 0; i-- {
		stepTo(t, s, id, s.Undo, cases[i])
	}
	if u, err := s.Undo(t.Context(), id); err != nil || u.Done {
		t.Fatalf("undo before the first save: %+v, %v", u, err)
	}
	for i := 1; i < len(cases); i++ {
		stepTo(t, s, id, s.Redo, cases[i])
	}
	if u, err := s.Redo(t.Context(), id); err != nil || u.Done {
		t.Fatalf("redo after the last save: %+v, %v", u, err)
	}
}

// mutated returns a case that differs from c: some parts random, some lists with items moved out and in.
func mutated(t *testing.T, r *rand.Rand, c valuation.Case) valuation.Case {
	t.Helper()
	other := randomCase(r)
	from, to := documents(&other), documents(&c)
	for part := range to {
		if r.IntN(4) == 0 {
			reflect.ValueOf(to[part]).Elem().Set(reflect.ValueOf(from[part]).Elem())
		}
	}
	rows := append(c.Resale.Rows[:0:0], c.Resale.Rows...)
	if len(rows) > 1 {
		rows = append(rows[:1], rows[2:]...)
	}
	c.Resale.Rows = append(rows, other.Resale.Rows...)
	c.Lot.Number += "x"
	return c
}

func stepTo(t *testing.T, s *Store, id int64, step func(ctx context.Context, id int64) (Undone, error), want valuation.Case) {
	t.Helper()
	u, err := step(t.Context(), id)
	if err != nil || !u.Done || u.Label != "step" {
		t.Fatalf("step: %v, done %v, label %q", err, u.Done, u.Label)
	}
	same(t, u.Case, want)
	got, err := s.Case(t.Context(), id)
	if err != nil {
		t.Fatal(err)
	}
	same(t, got, want)
}

func big(rows int) valuation.Case {
	c := valuation.Defaults()
	c.Currency = "USD"
	r := rand.New(rand.NewPCG(5, 6))
	for len(c.Resale.Rows) < rows {
		c.Resale.Rows = append(c.Resale.Rows, randomCase(r).Resale.Rows...)
	}
	c.Resale.Rows = c.Resale.Rows[:rows]
	return c
}

func TestASaveOfOneFactWritesLittle(t *testing.T) {
	s := opened(t)
	c := big(400)
	id, err := s.Add(t.Context(), c)
	if err != nil {
		t.Fatal(err)
	}
	c.Lot.Trim = "LX"
	start := time.Now()
	if err := s.Save(t.Context(), id, "Trim", c); err != nil {
		t.Fatal(err)
	}
	t.Logf("one save beside 400 comparables: %v", time.Since(start))
	var bytes int
	if err := s.reader.QueryRow(`SELECT length(change) FROM steps`).Scan(&bytes); err != nil || bytes > 2000 {
		t.Fatalf("the step takes %d bytes, %v", bytes, err)
	}
	if err := s.Save(t.Context(), id, "nothing", c); err != nil {
		t.Fatal(err)
	}
	if r, err := s.Reach(t.Context(), id); err != nil || r != (Reach{CanUndo: true, Undo: "Trim"}) {
		t.Fatalf("a save of nothing made a step: %+v, %v", r, err)
	}
}

func BenchmarkSaveBeside400Comparables(b *testing.B) {
	s, err := Open(b.Context(), filepath.Join(b.TempDir(), "lots.walk"))
	if err != nil {
		b.Fatal(err)
	}
	defer s.Close()
	c := big(400)
	id, err := s.Add(b.Context(), c)
	if err != nil {
		b.Fatal(err)
	}
	for i := 0; b.Loop(); i++ {
		c.Lot.ModelYear = i
		if err := s.Save(b.Context(), id, "Year", c); err != nil {
			b.Fatal(err)
		}
	}
}
