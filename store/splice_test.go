package store

import (
	"reflect"
	"testing"

	"walkline/valuation/resale"
)

// TestSameRowSeesEveryField changes each field of a comparable in turn: a field that sameRow overlooked would never be saved.
func TestSameRowSeesEveryField(t *testing.T) {
	figure := 3.0
	full := resale.Row{Mileage: &figure, DistanceMi: &figure, Condition: &figure, More: map[string]string{"doors": "4"}}
	if !sameRow(full, full) || !sameRow(resale.Row{}, resale.Row{}) {
		t.Fatal("a row differs from itself")
	}
	for i := range reflect.TypeFor[resale.Row]().NumField() {
		x := full
		field := reflect.ValueOf(&x).Elem().Field(i)
		switch field.Kind() {
		case reflect.String:
			field.SetString("2026-01-01")
		case reflect.Int, reflect.Int64:
			field.SetInt(7)
		case reflect.Bool:
			field.SetBool(true)
		default:
			field.SetZero()
		}
		if sameRow(x, full) || sameRow(full, x) {
			t.Errorf("a change of %s goes unseen", reflect.TypeFor[resale.Row]().Field(i).Name)
		}
	}
}
