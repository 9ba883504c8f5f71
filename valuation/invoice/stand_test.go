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

// walked returns the legal bids up to most, one after the other.
func walked(steps []invoice.Step, most money.Amount) (bids []money.Amount) {
	for b := invoice.Next(steps, 0); b <= most; b = invoice.Next(steps, b) {
		bids = append(bids, b)
	}
	return bids
}

// The n-th legal bid is the n-th of the walk.
func TestNthAgreesWithTheLadder(t *testing.T) {
	for name, steps := range ladders {
		for i, b := range walked(steps, 3000) {
			if got := invoice.Nth(steps, int64(i+1)); got != b {
				t.Errorf("%s: bid %d is %d, want %d", name, i+1, got, b)
			}
		}
	}
}

// What is found without walking is what a walk of every legal bid finds, for schedules that jump and fall.
func TestReachAgreesWithAWalkOfEveryBid(t *testing.T) {
	c, _ := money.Lookup("USD")
	for name, steps := range ladders {
		terms := invoice.Terms{Tax: invoice.Tax{Rate: dec("0.06"), Base: "hammer_and_fees"}, Surcharge: dec("0.03"), Fees: []invoice.Schedule{
			{Name: "a", Mode: "whole", Rows: []invoice.Row{{Flat: 90}, {From: 200, Flat: 300}, {From: 700, Flat: 10, Percent: dec("0.1")},
				{From: 1500, Flat: 5}}},
			{Name: "b", Mode: "slice", Rows: []invoice.Row{{From: 100, Percent: dec("0.5"), Maximum: amount(40)},
				{From: 900, Percent: dec("0.01")}}}}}
		bids := walked(steps, 2500)
		reach := terms.NewReach(steps, 2500, c)
		for limit := money.Amount(0); limit < 3300; limit += 7 {
			var last, above money.Amount
			for _, b := range bids {
				if terms.Total(b, c).Total <= limit {
					last = b
				}
			}
			for _, b := range bids {
				if b < last && terms.Total(b, c).Total > limit {
					above = b
					break
				}
			}
			got, ok := reach.Last(limit)
			if got != last || ok != (last > 0) {
				t.Fatalf("%s: within %d found %d, walked %d", name, limit, got, last)
			}
			if got, ok := reach.Above(limit, last); ok != (above > 0) || ok && got != above {
				t.Fatalf("%s: above %d below %d found %d, walked %d", name, limit, last, got, above)
			}
		}
	}
}

// Every amount is held against a walk of the ladder, step by step.
func TestStandAgreesWithTheLadder(t *testing.T) {
	for name, steps := range ladders {
		bids := walked(steps, 2000)
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
	if at, n := invoice.Stand(ladders["even"], -1); at != 0 || n != 0 || invoice.Before(ladders["even"], 0) != 0 ||
		invoice.Legal(ladders["even"], 0) {
		t.Errorf("%d, %d", at, n)
	}
}
