package store

import (
	"fmt"
	"maps"
	"reflect"
	"slices"

	"walkline/valuation/resale"
)

// splice is how one list becomes another: from place At on, the items Out give way to the items In.
type splice[T any] struct {
	At  int `json:"at"`
	Out []T `json:"out"`
	In  []T `json:"in"`
}

// spliceOf returns the shortest single splice that turns a into b; same tells whether two items are alike.
func spliceOf[T any](a, b []T, same func(x, y T) bool) splice[T] {
	short := min(len(a), len(b))
	head := 0
	for head < short && same(a[head], b[head]) {
		head++
	}
	tail := 0
	for tail < short-head && same(a[len(a)-1-tail], b[len(b)-1-tail]) {
		tail++
	}
	return splice[T]{At: head, Out: a[head : len(a)-tail], In: b[head : len(b)-tail]}
}

// alike tells whether two items hold the same.
func alike[T any](x, y T) bool { return reflect.DeepEqual(x, y) }

// sameRow is alike for comparables, of which there may be thousands: reflection would be most of a save.
func sameRow(x, y resale.Row) bool {
	return x.ID == y.ID && x.Price == y.Price && x.Kind == y.Kind && x.Date == y.Date && x.ModelYear == y.ModelYear &&
		x.Make == y.Make && x.Model == y.Model && x.Trim == y.Trim && sameFigure(x.Mileage, y.Mileage) && x.Unit == y.Unit &&
		x.Title == y.Title && sameFigure(x.DistanceMi, y.DistanceMi) && sameFigure(x.Condition, y.Condition) && x.Note == y.Note &&
		x.Source == y.Source && (x.More == nil) == (y.More == nil) && maps.Equal(x.More, y.More) && x.Excluded == y.Excluded
}

// sameFigure tells whether two figures are alike, or both not known.
func sameFigure(x, y *float64) bool {
	if x == nil || y == nil {
		return x == y
	}
	return *x == *y
}

func (s splice[T]) empty() bool { return len(s.Out) == 0 && len(s.In) == 0 }

// inverse returns the splice that takes s back.
func (s splice[T]) inverse() splice[T] { return splice[T]{At: s.At, Out: s.In, In: s.Out} }

// apply returns a with s done to it. Errors: a does not hold the items that are to go.
func (s splice[T]) apply(a []T) ([]T, error) {
	if s.empty() {
		return a, nil
	}
	end := s.At + len(s.Out)
	if s.At < 0 || end > len(a) {
		return nil, fmt.Errorf("%w: the history does not fit the list", ErrDamaged)
	}
	return slices.Concat(a[:s.At], s.In, a[end:]), nil
}

// insertion writes one item of a list at its place.
type insertion[T any] func(p place, position int, item T) error

// write does s to the rows of a lot in table, whose key is lot and position. Rows after the splice keep their content
// and move; they pass through negative places, so that no two ever meet.
func (s splice[T]) write(p place, table string, insert insertion[T]) error {
	if s.empty() {
		return nil
	}
	end, shift := s.At+len(s.Out), len(s.In)-len(s.Out)
	if err := p.exec(`DELETE FROM `+table+` WHERE lot = ? AND position >= ? AND position < ?`, p.lot, s.At, end); err != nil {
		return err
	}
	if shift != 0 {
		if err := p.exec(`UPDATE `+table+` SET position = -(position + ?) - 1 WHERE lot = ? AND position >= ?`, shift, p.lot, end); err != nil {
			return err
		}
		if err := p.exec(`UPDATE `+table+` SET position = -position - 1 WHERE lot = ? AND position < 0`, p.lot); err != nil {
			return err
		}
	}
	for i, item := range s.In {
		if err := insert(p, s.At+i, item); err != nil {
			return err
		}
	}
	return nil
}
