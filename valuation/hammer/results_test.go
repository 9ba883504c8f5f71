package hammer_test

import (
	"testing"

	"walkline/valuation/hammer"
)

// A belief says how many results it was learned from; one that could not be used is none.
func TestABeliefCountsItsResults(t *testing.T) {
	m := hammer.Starter()
	if m.Results() != 0 {
		t.Errorf("starts with %d results", m.Results())
	}
	one := hammer.Result{Kind: hammer.Kind{Loss: []string{"flood"}}, Finished: 9000, Work: 1000, Price: 4000}
	m, _ = m.Learn([]hammer.Result{one, {Finished: 9000, Work: 9500, Price: 100}})
	if m, _ = m.Learn([]hammer.Result{one, one}); m.Results() != 3 {
		t.Errorf("%d results, want 3", m.Results())
	}
}
