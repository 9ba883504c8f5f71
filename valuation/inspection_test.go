package valuation_test

import (
	"strings"
	"testing"

	"walkline/valuation"
	"walkline/valuation/prob"
)

// A clear title waits for no rebuilt inspection, whatever the queue; one from elsewhere that says "rebuilt" counts it and says so.
// Common practice, no source.
func TestOnlyATitleThatIsInspectedWaitsForTheQueue(t *testing.T) {
	days := func(document, issued string, queue float64) (float64, string) {
		c := sure()
		c.Lot.Title.Document, c.Lot.Title.Brands, c.Lot.Title.IssuedIn, c.Lot.Title.RegisterIn = document, nil, issued, "US-TX"
		c.Time.InspectionQueueDays = prob.Certain(queue)
		a, err := valuation.Value(c, valuation.Knowledge{})
		if err != nil {
			t.Fatal(err)
		}
		return a.Days.Mean, strings.Join(a.Warnings, " ")
	}
	for _, x := range []struct {
		document, issued string
		waits, said      bool
	}{{"salvage", "US-TX", true, false}, {"clear", "US-OK", false, false}, {"rebuilt", "US-TX", false, false},
		{"rebuilt", "US-OK", true, true}, {"not yet known", "US-TX", true, true}} {
		short, _ := days(x.document, x.issued, 10)
		long, words := days(x.document, x.issued, 75)
		if (long > short) != x.waits || strings.Contains(words, "rebuilt inspection is asked for is not known") != x.said {
			t.Errorf("%s of %s: %v days, with the longer queue %v; %s", x.document, x.issued, short, long, words)
		}
	}
}
