package store

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"reflect"
	"testing"

	"github.com/shopspring/decimal"

	"walkline/store/book"
	"walkline/store/casefile"
	"walkline/valuation"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// opened returns a store in a new file of the test's own folder.
func opened(t testing.TB) *Store {
	t.Helper()
	return reopened(t, filepath.Join(t.TempDir(), "lots.walk"))
}

func reopened(t testing.TB, path string) *Store {
	t.Helper()
	s, err := Open(t.Context(), path)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { s.Close() })
	return s
}

// sample returns the case of testdata/case.json, which fills every part.
func sample(t testing.TB) valuation.Case {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("testdata", "case.json"))
	if err != nil {
		t.Fatal(err)
	}
	c, faults := casefile.Read(data)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	return c
}

// do keeps a step that must succeed.
func do(t testing.TB, s *Store, step book.Step) book.Done {
	t.Helper()
	done, err := s.Do(t.Context(), step)
	if err != nil {
		t.Fatalf("%s: %v", step.Label, err)
	}
	return done
}

// added keeps a new lot as a step of the Board and returns its id.
func added(t testing.TB, s *Store, c valuation.Case) int64 {
	t.Helper()
	return do(t, s, book.Step{Subject: book.Board, Label: "new lot", New: []book.New{{Case: c}}}).Lots[0]
}

func read(t testing.TB, s *Store, id int64) book.Lot {
	t.Helper()
	l, err := s.Lot(t.Context(), id)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// edited returns the step of a change to a lot as it is stored now.
func edited(t testing.TB, s *Store, of book.Subject, label string, id int64, change func(l *book.Lot)) book.Step {
	t.Helper()
	before := read(t, s, id)
	after := before.Clone()
	change(&after)
	return book.Step{Subject: of, Label: label, Lots: []book.Change{{Before: before, After: after}}}
}

// edit keeps a change to a lot.
func edit(t testing.TB, s *Store, of book.Subject, label string, id int64, change func(l *book.Lot)) book.Done {
	t.Helper()
	return do(t, s, edited(t, s, of, label, id, change))
}

func undone(t testing.TB, s *Store, of book.Subject, label string) book.Done {
	t.Helper()
	done, err := s.Undo(t.Context(), of)
	if err != nil || !done.Did || done.Label != label {
		t.Fatalf("undo of %s: %+v, %v, want %q", of, done, err, label)
	}
	return done
}

func redone(t testing.TB, s *Store, of book.Subject, label string) book.Done {
	t.Helper()
	done, err := s.Redo(t.Context(), of)
	if err != nil || !done.Did || done.Label != label {
		t.Fatalf("redo of %s: %+v, %v, want %q", of, done, err, label)
	}
	return done
}

func entries(t testing.TB, s *Store) []book.Entry {
	t.Helper()
	list, err := s.Entries(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	return list
}

func answer(walkAway *money.Amount) valuation.Answer {
	hourly := 41.5
	return valuation.Answer{
		Format: valuation.AnswerFormat, Currency: "USD", Decision: "bid", WalkAway: walkAway, BindingRule: "max_loss_chance",
		Profit: valuation.Profit{Mean: 2100.25, LossChance: 0.14, PerHour: &hourly},
	}
}

// fill sets v and all below it to random values, so that a field that is added later and not kept is noticed.
func fill(r *rand.Rand, v reflect.Value) {
	switch v.Interface().(type) {
	case decimal.Decimal:
		v.Set(reflect.ValueOf(decimal.New(r.Int64N(1e6)*10+1, -5)))
		return
	case lot.Date:
		v.SetString([]string{"", "2026-11-20", "1999-01-31"}[r.IntN(3)])
		return
	}
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			if f := v.Type().Field(i); f.Tag.Get("json") != "-" {
				fill(r, v.Field(i))
			}
		}
	case reflect.Pointer:
		if r.IntN(3) > 0 {
			v.Set(reflect.New(v.Type().Elem()))
			fill(r, v.Elem())
		}
	case reflect.Slice:
		if n := r.IntN(5) - 1; n >= 0 {
			v.Set(reflect.MakeSlice(v.Type(), n, n))
			for i := range n {
				fill(r, v.Index(i))
			}
		}
	case reflect.Map:
		for n := r.IntN(4) - 1; n >= 0; n-- {
			if v.IsNil() {
				v.Set(reflect.MakeMap(v.Type()))
			}
			key, value := reflect.New(v.Type().Key()).Elem(), reflect.New(v.Type().Elem()).Elem()
			fill(r, key)
			fill(r, value)
			v.SetMapIndex(key, value)
		}
	default:
		fillPlain(r, v)
	}
}

func fillPlain(r *rand.Rand, v reflect.Value) {
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
		runes := []rune("aZ09 '\";,.\n\t\x00<&>éß—漢🙂\u2028")
		text := make([]rune, r.IntN(8))
		for i := range text {
			text[i] = runes[r.IntN(len(runes))]
		}
		v.SetString(string(text))
	default:
		panic("no random value for a " + v.Kind().String())
	}
}

// filled returns a random value of a type.
func filled[T any](r *rand.Rand) (v T) {
	fill(r, reflect.ValueOf(&v).Elem())
	return v
}

// equal compares two values exactly, decimals by value and not by how they are held, none apart from an empty list.
func equal[T any](t testing.TB, got, want T) {
	t.Helper()
	x, err1 := json.MarshalIndent(got, "", " ")
	y, err2 := json.MarshalIndent(want, "", " ")
	if err1 != nil || err2 != nil || string(x) != string(y) {
		t.Fatalf("they differ\ngot  %s\nwant %s", x, y)
	}
}
