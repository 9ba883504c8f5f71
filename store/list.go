package store

import (
	"bytes"
	"cmp"
	"encoding/json"
	"fmt"
	"maps"
	"math"
	"reflect"
	"slices"

	"walkline/store/book"
	"walkline/valuation/build"
	"walkline/valuation/hidden"
	"walkline/valuation/lot"
	"walkline/valuation/repair"
	"walkline/valuation/resale"
)

// list is one of the long lists of a lot: what changes in it is the items that go and those that come in their place.
type list struct {
	name       string
	of         func(l *book.Lot) any // a pointer to it
	difference func(a, b *book.Lot) (*splice, error)
	put        func(l *book.Lot, s splice) (splice, outcome, error)
}

// lists are all of them. Those of the build lie in its document.
var lists = []list{
	listOf("damage", func(l *book.Lot) *[]lot.Damage { return &l.Case.Damage }),
	listOf("lines", func(l *book.Lot) *[]repair.Line { return &l.Case.Repair.Lines }),
	listOf("risks", func(l *book.Lot) *[]hidden.Risk { return &l.Case.Hidden.Risks }),
	listOf("rows", func(l *book.Lot) *[]resale.Row { return &l.Case.Resale.Rows }),
	listOf("photos", func(l *book.Lot) *[]lot.Photo { return &l.Photos }),
	listOf("build.charges", func(l *book.Lot) *[]build.Charge { return &l.Build.Charges }),
	listOf("build.receipts", func(l *book.Lot) *[]build.Receipt { return &l.Build.Receipts }),
	listOf("build.hours", func(l *book.Lot) *[]build.Work { return &l.Build.Hours }),
	listOf("build.risks", func(l *book.Lot) *[]build.Seen { return &l.Build.Risks }),
	listOf("build.unlisted", func(l *book.Lot) *[]build.Unlisted { return &l.Build.Unlisted }),
	listOf("build.done", func(l *book.Lot) *[]string { return &l.Build.Done }),
}

func listOf[T any](name string, of func(l *book.Lot) *[]T) list {
	return list{name, func(l *book.Lot) any { return of(l) },
		func(a, b *book.Lot) (*splice, error) { return spliceOf(*of(a), *of(b)) },
		func(l *book.Lot, s splice) (made splice, came outcome, err error) {
			*of(l), made, came, err = spliced(*of(l), s)
			return made, came, err
		}}
}

// splice is how one list becomes another: from place At on, the items Out give way to the items In. Was and Is tell, of a list
// without items, none from an empty one.
type splice struct {
	At  int             `json:"at"`
	Out json.RawMessage `json:"out"`
	In  json.RawMessage `json:"in"`
	Was bool            `json:"was_none,omitempty"`
	Is  bool            `json:"is_none,omitempty"`
}

// end returns up to which place items change or move.
func (s splice) end() int {
	var out, in []json.RawMessage
	if unmarshal(s.Out, &out) != nil || unmarshal(s.In, &in) != nil || len(out) != len(in) {
		return math.MaxInt
	}
	return s.At + max(0, len(in)-1)
}

// inverse returns the splice that takes s back.
func (s splice) inverse() splice { return splice{s.At, s.In, s.Out, s.Is, s.Was} }

// spliceOf returns the shortest single splice that turns a into b, nil when there is no difference. Errors: [ErrRefused] when an
// item has no JSON form.
func spliceOf[T any](a, b []T) (*splice, error) {
	if len(a) == len(b) && (a == nil) == (b == nil) && (len(a) == 0 || &a[0] == &b[0]) {
		return nil, nil
	}
	short := min(len(a), len(b))
	head := 0
	for head < short && alike(&a[head], &b[head]) {
		head++
	}
	tail := 0
	for tail < short-head && alike(&a[len(a)-1-tail], &b[len(b)-1-tail]) {
		tail++
	}
	out, err1 := json.Marshal(a[head : len(a)-tail])
	in, err2 := json.Marshal(b[head : len(b)-tail])
	if err1 != nil || err2 != nil {
		return nil, fmt.Errorf("%w (%w)", ErrRefused, cmp.Or(err1, err2))
	}
	if bytes.Equal(out, in) && (a == nil) == (b == nil) {
		return nil, nil
	}
	return &splice{head, out, in, a == nil, b == nil}, nil
}

// spliced returns items with s done to it, where the outgoing items stand nearest to their place, and s as it was done.
func spliced[T any](items []T, s splice) ([]T, splice, outcome, error) {
	var out, in []T
	if err := cmp.Or(unmarshal(s.Out, &out), unmarshal(s.In, &in)); err != nil {
		return items, s, clashed, fmt.Errorf("%w: a step can't be read (%w)", ErrDamaged, err)
	}
	if len(out)+len(in) == 0 && (len(items) > 0 || (items == nil) == s.Is) {
		return items, s, already, nil
	}
	place, ok := find(items, out, s.At)
	if !ok {
		if _, there := find(items, in, s.At); there && len(in) > 0 {
			return items, s, already, nil
		}
		return items, s, clashed, nil
	}
	after := slices.Concat(items[:place], in, items[place+len(out):])
	if len(after) == 0 {
		after = nil
		if !s.Is {
			after = []T{}
		}
	}
	return after, splice{place, s.Out, s.In, items == nil, after == nil}, wrote, nil
}

// find returns where in items the part stands that is nearest to a place.
func find[T any](items, part []T, place int) (int, bool) {
	last := len(items) - len(part)
	if last < 0 {
		return 0, false
	}
	place = max(0, min(place, last))
	for off := range last + 1 {
		for _, i := range []int{place - off, place + off} {
			if 0 <= i && i <= last && allAlike(items[i:i+len(part)], part) {
				return i, true
			}
		}
	}
	return 0, false
}

// allAlike reports whether two runs of items of one length hold the same.
func allAlike[T any](a, b []T) bool {
	for i := range a {
		if !alike(&a[i], &b[i]) {
			return false
		}
	}
	return true
}

// alike reports whether two items hold the same, as [reflect.DeepEqual] does, in a third of its time: there may be thousands.
func alike[T any](a, b *T) bool {
	return alikeValues(reflect.ValueOf(a).Elem(), reflect.ValueOf(b).Elem())
}

func alikeValues(a, b reflect.Value) bool {
	switch a.Kind() {
	case reflect.Struct:
		for i := range a.NumField() {
			if !a.Type().Field(i).IsExported() {
				return reflect.DeepEqual(a.Interface(), b.Interface())
			}
			if !alikeValues(a.Field(i), b.Field(i)) {
				return false
			}
		}
		return true
	case reflect.String:
		return a.String() == b.String()
	case reflect.Bool:
		return a.Bool() == b.Bool()
	case reflect.Int, reflect.Int64:
		return a.Int() == b.Int()
	case reflect.Float64:
		return a.Float() == b.Float()
	case reflect.Pointer:
		return a.Pointer() == b.Pointer() || !a.IsNil() && !b.IsNil() && alikeValues(a.Elem(), b.Elem())
	}
	if x, ok := a.Interface().(map[string]string); ok {
		y := b.Interface().(map[string]string)
		return (x == nil) == (y == nil) && maps.Equal(x, y)
	}
	return reflect.DeepEqual(a.Interface(), b.Interface())
}
