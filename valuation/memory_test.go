package valuation_test

import (
	"maps"
	"reflect"
	"slices"
	"testing"

	"walkline/valuation"
	"walkline/valuation/lot"
	"walkline/valuation/prob"
)

// edits are what a user changes while a lot is open, one of each kind.
var edits = map[string]func(*valuation.Case){
	"materials of a line": func(c *valuation.Case) { dearer(&c.Repair.Lines[0].Materials) },
	"a line's name":       func(c *valuation.Case) { c.Repair.Lines[0].Job = "nose" },
	"a line removed":      func(c *valuation.Case) { c.Repair.Lines[1].Removed = true },
	"a loading":           func(c *valuation.Case) { c.Hidden.SharedLoading = .5 },
	"a risk's chance":     func(c *valuation.Case) { c.Hidden.Risks[0].Chance.A = 5 },
	"a risk's cost":       func(c *valuation.Case) { dearer(&c.Hidden.Risks[1].Cost) },
	"a labor rate":        func(c *valuation.Case) { c.Labour.Rates["body"] = 61 },
	"freight":             func(c *valuation.Case) { dearer(&c.Buying.Freight) },
	"free days":           func(c *valuation.Case) { c.Buying.Storage.FreeDays = 1 },
	"holding":             func(c *valuation.Case) { c.Time.HoldingPerDay = 17 },
	"days to sell":        func(c *valuation.Case) { c.Time.DaysToSell = prob.Certain(33) },
	"hours a week":        func(c *valuation.Case) { c.Time.HoursPerWeek = 25 },
	"the seed":            func(c *valuation.Case) { c.Run.Seed = 77 },
	"scenarios":           func(c *valuation.Case) { c.Run.Scenarios = 1024 },
	"a comparable":        func(c *valuation.Case) { c.Resale.Rows[3].Excluded = true },
	"a price":             func(c *valuation.Case) { c.Resale.Rows[2].Price += 90000 },
	"the odometer":        func(c *valuation.Case) { miles := 90000; c.Lot.Odometer = &miles },
	"the discount":        func(c *valuation.Case) { c.Resale.BrandDiscount = prob.Certain(.3) },
	"the survey":          func(c *valuation.Case) { c.Damage = []lot.Damage{{Area: "03", Extent: "functional", Depth: "bolted"}} },
	"a rule":              func(c *valuation.Case) { c.Rules.MinProfit = usd(2000) },
}

// A row whose model year is a slip of the pen draws no band: a band to the year 2,000,000,000 would never be finished.
func TestAnImpossibleYearWidensNoBand(t *testing.T) {
	k := shipped(t)
	c := priced()
	_, before := valuation.NewMemory().Bands(c, k)
	for _, year := range []int{2_000_000_000, -1, 20190} {
		odd := c.Clone()
		odd.Resale.Rows = append(odd.Resale.Rows, odd.Resale.Rows[0])
		odd.Resale.Rows[len(odd.Resale.Rows)-1].ModelYear = year
		if _, after := valuation.NewMemory().Bands(odd, k); len(after) != len(before) {
			t.Errorf("a row of model year %d: %d years, %d without it", year, len(after), len(before))
		}
	}
}

// One memory through every edit and back gives, to the bit, what a valuation that remembers nothing gives.
func TestAMemoryChangesNoAnswer(t *testing.T) {
	k := shipped(t)
	base := priced()
	base.Repair.UseCatalogue, base.Hidden.UseCatalogue = true, true
	base.Damage = []lot.Damage{{Area: "12", Extent: "functional", Depth: "bolted"}}
	m := valuation.NewMemory()
	want := value(t, base, k)
	for _, name := range slices.Sorted(maps.Keys(edits)) {
		edited := base.Clone()
		edits[name](&edited)
		plain := value(t, edited, k)
		for _, step := range []struct {
			c    valuation.Case
			want valuation.Answer
		}{{edited, plain}, {base, want}, {edited, plain}} {
			got, err := m.Value(step.c, k)
			if err != nil {
				t.Fatal(err)
			}
			if !reflect.DeepEqual(got, step.want) {
				t.Fatalf("%s: the memory gives another answer: %v and %v", name, most(got), most(step.want))
			}
		}
		if reflect.DeepEqual(plain.Waterfall, want.Waterfall) && reflect.DeepEqual(plain.Repair, want.Repair) &&
			reflect.DeepEqual(plain.Ceilings, want.Ceilings) {
			t.Errorf("%s changes nothing: the test cannot see it", name)
		}
		miles, years := m.Bands(edited, k)
		plainMiles, plainYears := valuation.NewMemory().Bands(edited, k)
		if !slices.Equal(miles, plainMiles) || !slices.Equal(years, plainYears) || len(miles) == 0 {
			t.Errorf("%s: other bands with a memory", name)
		}
	}
}

// A reader may sort the rows of an answer without changing the next one.
func TestAnAnswerIsItsReaders(t *testing.T) {
	k, c, m := shipped(t), priced(), valuation.NewMemory()
	first, err := m.Value(c, k)
	if err != nil {
		t.Fatal(err)
	}
	slices.Reverse(first.Resale.Adjusted)
	second, err := m.Value(c, k)
	if err != nil || !reflect.DeepEqual(second, value(t, c, k)) {
		t.Error("what a reader did to one answer shows in the next", err)
	}
}
