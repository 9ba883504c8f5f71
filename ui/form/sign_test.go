package form

import (
	"reflect"
	"slices"
	"testing"

	"walkline/valuation/lot"
)

// Every key of a sign has its field: all lists with the words that the engine checks them by, and all numbers.
func TestEveryKeyOfASignHasItsField(t *testing.T) {
	var s lot.Sign
	reached := map[any]bool{}
	for _, a := range slices.Concat(usual, seldom) {
		reached[a.at(&s)] = true
		*a.at(&s) = a.codes[:1]
		for _, l := range s.Lists(&lot.Lot{}) {
			if len(l.Want) > 0 && !slices.Equal(l.Words, a.codes) {
				t.Errorf("%s offers %q, the engine knows %q", a.label, a.codes, l.Words)
			}
		}
		*a.at(&s) = nil
	}
	for _, n := range least {
		reached[n.at(&s)] = true
	}
	v := reflect.ValueOf(&s).Elem()
	for i := range v.NumField() {
		if !reached[v.Field(i).Addr().Interface()] {
			t.Errorf("%s of a sign has no field", v.Type().Field(i).Name)
		}
	}
}

// Codes are read as people write them; a number of doors is no clock point.
func TestCodesAreReadByTheirList(t *testing.T) {
	for _, x := range []struct {
		typed string
		codes []string
		want  []string
	}{{"5, 4", lot.DoorCounts, []string{"5", "4"}}, {"1, engine bay", lot.Areas, []string{"01", "engine_bay"}}} {
		if got, err := coded(x.typed, x.codes); err != nil || !slices.Equal(got, x.want) {
			t.Errorf("%q reads %q, %v", x.typed, got, err)
		}
	}
}
