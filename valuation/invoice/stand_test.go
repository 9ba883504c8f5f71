package invoice_test

import (
	"testing"

	"walkline/valuation/invoice"
	"walkline/valuation/money"
)

// ladders are bid steps whose tiers do and do not meet the steps before them. Invented.
var ladders = map[string][]invoice.Step{
	"one tier": {{From: 0, Step: 25}},
	"even":     {{From: 0, Step: 25}, {From: 100, Step: 50}, {From: 1000, Step: 100}},
	"odd":      {{From: 0, Step: 30}, {From: 100, Step: 70}, {From: 200, Step: 45}, {From: 201, Step: 10}},
	"skipped":  {{From: 0, Step: 500}, {From: 100, Step: 7}, {From: 400, Step: 9}, {From: 600, Step: 11}},
}

// Every amount is held against a walk of the ladder, step by step.
func TestStandAgreesWithTheLadder(t *testing.T) {
	for name, steps := range ladders {
		bids, whole := invoice.Ladder(steps, 2000)
		if !whole {
			t.Fatal(name)
		}
		at := -1
		for b := money.Amount(0); b <= 2000-500; b++ {
			for at+1 < len(bids) && bids[at+1] <= b {
				at++
			}
			floor, before := money.Amount(0), money.Amount(0)
			if at >= 0 {
				floor, before = bids[at], bids[at]
			}
			if legal := floor == b && at >= 0; legal != invoice.Legal(steps, b) {
				t.Fatalf("%s: %d legal: %v", name, b, legal)
			} else if legal {
				before = 0
				if at > 0 {
					before = bids[at-1]
				}
			}
			if got, n := invoice.Stand(steps, b); got != floor || n != int64(at+1) {
				t.Fatalf("%s: %d stands at %d, number %d; want %d, %d", name, b, got, n, floor, at+1)
			}
			if got := invoice.Before(steps, b); got != before {
				t.Fatalf("%s: before %d is %d, want %d", name, b, got, before)
			}
			if got := invoice.After(steps, b); got != bids[at+1] {
				t.Fatalf("%s: after %d is %d, want %d", name, b, got, bids[at+1])
			}
		}
	}
}

func TestBelowNothingNoBidStands(t *testing.T) {
	if at, n := invoice.Stand(ladders["even"], -1); at != 0 || n != 0 || invoice.Before(ladders["even"], 0) != 0 || invoice.Legal(ladders["even"], 0) {
		t.Errorf("%d, %d", at, n)
	}
}
