package store

import (
	"math/rand/v2"
	"reflect"
	"testing"

	"walkline/store/book"
	"walkline/valuation/lot"
	"walkline/valuation/repair"
	"walkline/valuation/resale"
)

// TestAlikeIsDeepEqual holds the faster comparison against the standard library's, on items that differ in one field at most.
func TestAlikeIsDeepEqual(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 1))
	alikeAsDeepEqual[resale.Row](t, r)
	alikeAsDeepEqual[repair.Line](t, r)
	alikeAsDeepEqual[lot.Photo](t, r)
}

func alikeAsDeepEqual[T any](t *testing.T, r *rand.Rand) {
	t.Helper()
	for range 300 {
		a := filled[T](r)
		b, other := a, filled[T](r)
		if i := r.IntN(reflect.TypeFor[T]().NumField()); r.IntN(3) > 0 {
			reflect.ValueOf(&b).Elem().Field(i).Set(reflect.ValueOf(other).Field(i))
		}
		if got, want := alike(&a, &b), reflect.DeepEqual(a, b); got != want {
			t.Fatalf("alike %v, want %v\n%+v\n%+v", got, want, a, b)
		}
	}
}

func TestAListThatBecomesNoneIsNoStep(t *testing.T) {
	s := opened(t)
	id := added(t, s, sample(t))
	step := edited(t, s, book.Worksheet(id), "nothing", id, func(l *book.Lot) { l.Photos, l.Build.Done = []lot.Photo{}, []string{} })
	if done := do(t, s, step); done.Did || done.Merged {
		t.Errorf("%+v", done)
	}
	trim := edited(t, s, book.Worksheet(id), "brand", id, func(l *book.Lot) { l.Case.Lot.Title.Brands = []string{"rebuilt"} })
	trim.Lots[0].Before.Case.Lot.Title.Brands = []string{} // as one who makes no difference between none and an empty list
	do(t, s, trim)
}

// TestPagesOfAListAreKeptInOrder moves the items of a list of several pages about.
func TestPagesOfAListAreKeptInOrder(t *testing.T) {
	s := opened(t)
	id := added(t, s, big(3*pageItems))
	for _, cut := range [][2]int{{0, 1}, {pageItems, 2 * pageItems},
		{pageItems - 1, pageItems + 1}, {pageItems, 2*pageItems - 3}, {0, pageItems}} {
		edit(t, s, book.Worksheet(id), "fewer", id, func(l *book.Lot) {
			l.Case.Resale.Rows = append(l.Case.Resale.Rows[:cut[0]:cut[0]], l.Case.Resale.Rows[cut[1]:]...)
		})
		want := read(t, s, id)
		s = reopened(t, s.path)
		equal(t, read(t, s, id), want)
	}
	for range 5 {
		undone(t, s, book.Worksheet(id), "fewer")
	}
	equal(t, read(t, reopened(t, s.path), id).Case, big(3*pageItems))
}
