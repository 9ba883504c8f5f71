package valuation_test

import (
	"slices"
	"strings"
	"testing"

	"walkline/valuation"
)

// An odometer whose statement says that it is wrong is said, with the miles that are counted and what buyers take off.
func TestAMisreadOdometerIsSaid(t *testing.T) {
	k, c := shipped(t), priced()
	for _, status := range []string{"not_actual", "exceeds_limits", "unknown", "exempt"} {
		c.Lot.OdometerStatus = status
		a := value(t, c, k)
		says := func(words string) bool {
			return slices.ContainsFunc(a.Warnings, func(w string) bool { return strings.Contains(w, words) })
		}
		if wrong := status == "not_actual" || status == "exceeds_limits"; !says("reading is a floor") ||
			says("not actual, beside the title") != wrong {
			t.Errorf("%s: %q", status, a.Warnings)
		}
	}
}

func TestMissingKeysAreCounted(t *testing.T) {
	k := shipped(t)
	c := small(1)
	c.Repair.UseCatalogue = true
	yes, no := true, false
	c.Lot.Condition, c.Lot.Keys = "drives", &yes
	without := value(t, c, k)
	c.Lot.Keys = nil
	unknown := value(t, c, k)
	c.Lot.Keys = &no
	with := value(t, c, k)
	if len(with.Repair.Lines) <= len(without.Repair.Lines) || with.Repair.Mean <= unknown.Repair.Mean ||
		unknown.Repair.Mean <= without.Repair.Mean {
		t.Errorf("repair %.0f with keys, %.0f where it is not known, %.0f without", without.Repair.Mean, unknown.Repair.Mean, with.Repair.Mean)
	}
	c.Repair.UseCatalogue = false
	if a := value(t, c, k); !slices.ContainsFunc(a.Warnings, func(w string) bool { return strings.Contains(w, "no keys") }) {
		t.Errorf("no word of the missing keys: %q", a.Warnings)
	}
}

// How it runs is never read as its best where it is not known: the damage that each way raises is counted at a share.
func TestAnUnknownConditionIsNotTheBest(t *testing.T) {
	k, c := shipped(t), demoLot(t)
	mean := func(condition string) float64 {
		c.Lot.Condition = condition
		return value(t, c, k).Hidden.Mean
	}
	if unknown, best := mean("unknown"), min(mean("drives"), mean("starts"), mean("turns_over"), mean("dead")); unknown <= best {
		t.Errorf("hidden damage %.0f where it is not known, %.0f at best", unknown, best)
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
		if stale := slices.ContainsFunc(a.Warnings,
			func(w string) bool { return strings.Contains(w, "quote for lamp") && strings.Contains(w, "61 days") }); stale != q.stale {
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
