package valuation

import (
	"maps"
	"reflect"
	"slices"

	"walkline/valuation/resale"
)

// Clone returns a copy of the case that shares nothing with it that can be changed.
func (c Case) Clone() Case {
	return clone(reflect.ValueOf(c)).Interface().(Case)
}

// Copy returns a copy of any of the project's documents (a catalogue, an entry of one) that shares nothing with it that can be
// changed.
func Copy[T any](v T) T { return clone(reflect.ValueOf(&v).Elem()).Interface().(T) }

// clone copies a value and all that it points to through exported fields; what hides its fields (a decimal) is a value
// that never changes.
func clone(v reflect.Value) reflect.Value {
	switch v.Kind() {
	case reflect.Pointer:
		if v.IsNil() || !v.Elem().CanInterface() {
			return v
		}
		p := reflect.New(v.Type().Elem())
		p.Elem().Set(clone(v.Elem()))
		return p
	case reflect.Slice:
		if v.IsNil() {
			return v
		}
		if rows, ok := v.Interface().([]resale.Row); ok {
			return reflect.ValueOf(cloneRows(rows))
		}
		s := reflect.MakeSlice(v.Type(), v.Len(), v.Len())
		for i := range v.Len() {
			s.Index(i).Set(clone(v.Index(i)))
		}
		return s
	case reflect.Map:
		if v.IsNil() {
			return v
		}
		m := reflect.MakeMapWithSize(v.Type(), v.Len())
		for _, k := range v.MapKeys() {
			m.SetMapIndex(k, clone(v.MapIndex(k)))
		}
		return m
	case reflect.Struct:
		s := reflect.New(v.Type()).Elem()
		s.Set(v)
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				s.Field(i).Set(clone(v.Field(i)))
			}
		}
		return s
	}
	return v
}

// cloneRows is clone for comparables, of which there may be thousands: their figures share one block of memory.
func cloneRows(rows []resale.Row) []resale.Row {
	out := slices.Clone(rows)
	figures := make([]float64, 0, 3*len(rows)) // never grows: the pointers into it stay good
	for i := range out {
		r := &out[i]
		for _, p := range []**float64{&r.Mileage, &r.DistanceMi, &r.Condition} {
			if *p != nil {
				figures = append(figures, **p)
				*p = &figures[len(figures)-1]
			}
		}
		r.More = maps.Clone(r.More)
	}
	return out
}
