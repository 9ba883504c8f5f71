package valuation_test

import (
	"slices"
	"strings"
	"testing"

	"walkline/valuation"
)

// An odometer whose statement says that it is wrong says nothing of the price: the range is that of an unknown mileage.
func TestAMisreadOdometerSaysNothing(t *testing.T) {
	k := shipped(t)
	c := priced()
	c.Lot.OdometerStatus = "actual"
	actual := value(t, c, k)
	unknown := c.Clone()
	unknown.Lot.Odometer = nil
	blind := value(t, unknown, k)
	for _, status := range []string{"not_actual", "exceeds_limits"} {
		c.Lot.OdometerStatus = status
		a := value(t, c, k)
		if a.Resale.P10 != blind.Resale.P10 || a.Resale.P90 != blind.Resale.P90 || a.Resale.P90-a.Resale.P10 <= actual.Resale.P90-actual.Resale.P10 {
			t.Errorf("%s: %.0f to %.0f, unknown %.0f to %.0f, actual %.0f to %.0f", status, a.Resale.P10, a.Resale.P90, blind.Resale.P10, blind.Resale.P90, actual.Resale.P10, actual.Resale.P90)
		}
		if !slices.ContainsFunc(a.Warnings, func(w string) bool { return strings.Contains(w, "not the mileage") }) {
			t.Errorf("%s is not said: %q", status, a.Warnings)
		}
	}
}

func TestMissingKeysAreCounted(t *testing.T) {
	k := shipped(t)
	c := small(1)
	c.Repair.UseCatalogue = true
	no := false
	without := value(t, c, k)
	c.Lot.Keys = &no
	with := value(t, c, k)
	if len(with.Repair.Lines) <= len(without.Repair.Lines) || with.Repair.Mean <= without.Repair.Mean {
		t.Errorf("repair %.0f with keys, %.0f without", without.Repair.Mean, with.Repair.Mean)
	}
	c.Repair.UseCatalogue = false
	if a := value(t, c, k); !slices.ContainsFunc(a.Warnings, func(w string) bool { return strings.Contains(w, "no keys") }) {
		t.Errorf("no word of the missing keys: %q", a.Warnings)
	}
}

// A quote older than sixty days is named with its part; a fresh one is not; a day that is none is a fault.
func TestStaleQuotesAreNamed(t *testing.T) {
	for _, q := range []struct {
		day         string
		stale, good bool
	}{{"2026-09-20", true, true}, {"2026-09-21", false, true}, {"2026-11-20", false, true}, {"", false, true}, {"November", false, false}} {
		c := small(1)
		c.Repair.Lines[0].Parts[0].Options[0].Quoted = q.day
		if faults := c.Check(); (len(faults) == 0) != q.good {
			t.Errorf("%q: faults %v", q.day, faults)
		} else if !q.good {
			continue
		}
		a := value(t, c, valuation.Knowledge{})
		if stale := slices.ContainsFunc(a.Warnings, func(w string) bool { return strings.Contains(w, "quote for lamp") && strings.Contains(w, "61 days") }); stale != q.stale {
			t.Errorf("%q: stale %v in %q", q.day, stale, a.Warnings)
		}
	}
}

// A case in which a quote displaces the only sure option needs a fallback.
func TestAQuoteLeavesAPartWithoutASureOption(t *testing.T) {
	c := small(1)
	p := &c.Repair.Lines[0].Parts[0]
	p.Options[1].Chance, p.Options[1].Source, p.Options[0].Source = nil, "used", "used"
	p.Fallback = nil
	if faults := c.Check(); len(faults) != 0 {
		t.Fatal(faults)
	}
	p.Options[0].Quoted = "2026-11-01"
	if faults := c.Check(); len(faults) != 1 || !strings.Contains(faults[0].Key, "fallback") {
		t.Errorf("faults %v", faults)
	}
}
