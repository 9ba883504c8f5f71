package checks_test

import (
	"encoding/csv"
	"os"
	"slices"
	"strings"
	"testing"

	"walkline/assets"
	"walkline/store/casefile"
	"walkline/valuation/checks"
	"walkline/valuation/money"
)

// shipped returns the packs that the program ships.
func shipped(t *testing.T) []checks.Pack {
	t.Helper()
	var packs []checks.Pack
	for _, data := range assets.Jurisdictions() {
		p, faults := casefile.Pack(data)
		if len(faults) > 0 {
			t.Fatal(p.ID, faults)
		}
		packs = append(packs, p)
	}
	return packs
}

// calling returns what one state's rule of that kind says.
func calling(t *testing.T, d checks.Damaged, state, kind string) checks.Calling {
	t.Helper()
	for _, c := range checks.TotalLoss(d, shipped(t)...) {
		if strings.HasPrefix(c.Where, state) && strings.HasPrefix(c.Name, kind) {
			return c
		}
	}
	t.Fatalf("no rule for %s, %s", state, kind)
	return checks.Calling{}
}

// Source: testdata/reference/state_total_loss_rules.csv, each with its citation there. One cent below, at and above the
// boundary of a vehicle worth 10,000.00. In binary 0.70 * 999999 lies beside its exact value: the comparison is exact.
func TestTotalLossAtTheBoundaries(t *testing.T) {
	const value = money.Amount(1_000_000)
	for _, r := range []struct {
		state, kind      string
		edge             money.Amount
		below, at, above bool
	}{
		{"Alabama", "total loss", 750_000, false, true, true},      // >= 75 %, Code of Ala. 32-8-87
		{"Michigan", "salvage", 750_000, false, true, true},        // >= 75 %, MCL 257.217c(2)
		{"Michigan", "salvage", 910_000, true, false, false},       // < 91 %
		{"Michigan", "scrap", 910_000, false, true, true},          // >= 91 %
		{"Iowa", "salvage", 700_000, false, false, true},           // > 70 %, Iowa Code 321.52
		{"North Carolina", "salvage", 750_000, false, false, true}, // > 75 %, G.S. 20-71.3(d)
		{"Oklahoma", "salvage", 600_000, false, false, true},       // > 60 %, 47 O.S. 1105
		{"Texas", "salvage", 1_000_000, false, false, true},        // > value, 501.091
		{"Colorado", "salvage", 1_000_000, false, false, true},     // > value, C.R.S. 42-6-102
		{"Virginia", "salvage", 750_000, false, false, true},       // > value - 25 %, Va. Code 46.2-1600
		{"Indiana", "salvage", 700_000, false, false, true},        // > 70 %, IC 9-22-3-3
		{"Nevada", "salvage", 650_000, false, true, true},          // >= 65 %, NRS 487
		{"Florida", "total loss", 800_000, false, true, true},      // >= 80 %, Fla. Stat. 319.30(3), from memory
	} {
		for i, want := range []bool{r.below, r.at, r.above} {
			d := checks.Damaged{Repair: r.edge + money.Amount(i-1), Value: value}
			if got := calling(t, d, r.state, r.kind); got.Applies != want || got.Unknown {
				t.Errorf("%s, %s, repair %d of %d: %+v, want applies %v", r.state, r.kind, d.Repair, value, got, want)
			}
		}
	}
}

// Amounts whose share is no whole number of cents, and one that binary fractions get wrong: 0.70 x 0.10 = 0.07.
func TestTotalLossSharesAreExact(t *testing.T) {
	for _, r := range []struct {
		repair, value money.Amount
		state         string
		want          bool
	}{
		{7, 10, "Iowa", false}, {8, 10, "Iowa", true}, {2, 3, "Alabama", false}, {3, 4, "Alabama", true}, {3, 4, "North Carolina", false},
		{70_000_000_000_007, 100_000_000_000_010, "Iowa", false}, {70_000_000_000_008, 100_000_000_000_010, "Iowa", true},
	} {
		kind := map[string]string{"Iowa": "salvage", "Alabama": "total loss", "North Carolina": "salvage"}[r.state]
		if got := calling(t, checks.Damaged{Repair: r.repair, Value: r.value}, r.state, kind); got.Applies != r.want {
			t.Errorf("%s: repair %d of %d: %v", r.state, r.repair, r.value, got.Applies)
		}
	}
}

// 49 U.S.C. 30501: salvage value + repair cost > fair market value. Va. Code 46.2-1600: repair > value - salvage value.
func TestTotalLossWithASalvageValue(t *testing.T) {
	if c := calling(t, checks.Damaged{Repair: 900_000, Value: 1_000_000}, "United States", "salvage"); !c.Unknown || c.Applies {
		t.Errorf("without a salvage value the federal rule says %+v", c)
	}
	salvage := money.Amount(300_000)
	for _, state := range []string{"United States", "Virginia"} {
		for repair, want := range map[money.Amount]bool{699_999: false, 700_000: false, 700_001: true} {
			d := checks.Damaged{Repair: repair, Value: 1_000_000, Salvage: &salvage}
			if c := calling(t, d, state, "salvage"); c.Applies != want || c.Unknown {
				t.Errorf("%s: repair %d, salvage %d: %+v", state, repair, salvage, c)
			}
		}
	}
}

func TestTotalLossWithoutAValueSaysNothing(t *testing.T) {
	if got := checks.TotalLoss(checks.Damaged{Repair: 100}, shipped(t)...); got != nil {
		t.Errorf("no value, yet %v", got)
	}
}

// Every rule stands in the reference table with its citation and the way in which it is known, and every row of the table
// has its rule.
func TestTotalLossRulesAreThoseOfTheTable(t *testing.T) {
	f, err := os.Open("../../testdata/reference/state_total_loss_rules.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	rules := checks.TotalLoss(checks.Damaged{Repair: 1, Value: 1}, shipped(t)...)
	for _, row := range rows[1:] {
		state, _, _ := strings.Cut(strings.Replace(row[0], "Federal (NMVTIS)", "United States (federal)", 1), " (")
		citation, _, _ := strings.Cut(row[6], " (")
		if !slices.ContainsFunc(rules, func(c checks.Calling) bool {
			memory := strings.HasPrefix(row[7], "from memory")
			return strings.HasPrefix(c.Where, state) && strings.HasPrefix(citation, c.Citation) && (c.Status == "from memory") == memory
		}) {
			t.Errorf("%s, %s (%s): no such rule", row[0], row[1], row[7])
		}
	}
	if len(rules) != len(rows)-1 {
		t.Errorf("%d rules, the table has %d", len(rules), len(rows)-1)
	}
}
