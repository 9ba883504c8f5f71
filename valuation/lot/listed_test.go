package lot_test

import (
	"reflect"
	"testing"

	"walkline/valuation/lot"
)

// A later list stands above an earlier one key by key; figures of another currency never stand beside each other.
func TestALaterListStandsAboveAnEarlierOne(t *testing.T) {
	a, b := 100.0, 200.0
	first := &lot.Listed{Areas: []string{"12"}, ValueBefore: &a, RepairEstimate: &b, Currency: "USD", Note: "n", RunOrder: 4}
	var none *lot.Listed
	for name, c := range map[string]struct{ later, want *lot.Listed }{
		"nothing":       {none, first},
		"order alone":   {&lot.Listed{RunOrder: 7}, &lot.Listed{[]string{"12"}, &a, &b, "USD", "n", 7}},
		"one figure":    {&lot.Listed{ValueBefore: &b, Currency: "USD"}, &lot.Listed{[]string{"12"}, &b, &b, "USD", "n", 4}},
		"another money": {&lot.Listed{ValueBefore: &b, Currency: "EUR"}, &lot.Listed{[]string{"12"}, &b, nil, "EUR", "n", 4}},
	} {
		if got := c.later.Over(first); !reflect.DeepEqual(got, c.want) {
			t.Errorf("%s: %+v", name, got)
		}
	}
	if got := first.Over(none); got != first || none.Said() || (&lot.Listed{RunOrder: 2}).Said() || !first.Said() {
		t.Errorf("%+v", got)
	}
}
